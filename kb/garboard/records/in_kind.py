"""Whether a replacement is in kind: which attribute of the new thing is not that of the old.

Numbers are compared as quantities, so that 1 bar and 100 kPa are alike whatever they are counted from,
as long as both leave it out or both say it. All else is compared as words.
"""

from collections.abc import Iterator
from dataclasses import dataclass, fields
from typing import TYPE_CHECKING

from garboard.calc.fault import CalcFault
from garboard.calc.quantity import Quantity, read_quantity
from garboard.errors import Where

if TYPE_CHECKING:
    from garboard.records.change import Change

__all__ = ["Difference", "alike", "differences"]

NEAR = 1e-9
"""Share of the larger of two numbers below which they are equal."""
UNSAID = "(d)"
"""Stands in for what both pressures leave unsaid."""


@dataclass(frozen=True, slots=True)
class Difference:
    """One attribute that is not as it was."""

    what: str
    """The attribute, or the address of a value that is moved."""
    before: str
    after: str
    path: str
    """Where it stands in the record, `in_kind.fails`."""


def differences(change: "Change") -> Iterator[Difference]:
    """What is not alike in a change that may claim to be in kind.

    Args:
        change: Of any class; what it does not say is taken to be alike.

    Yields:
        The attributes of `in_kind` in their order, then the values that are moved.
    """
    for item in fields(change.in_kind) if change.in_kind else ():
        said = getattr(change.in_kind, item.name)
        if said is not None and not isinstance(said, str) and not alike(said.before, said.after):
            yield Difference(item.name, said.before, said.after, f"in_kind.{item.name}")
    for address, shift in change.values.items():
        if not alike(shift.before, shift.after):
            yield Difference(address, shift.before, shift.after, f"values.{address}")


def alike(before: str, after: str) -> bool:
    """Whether two figures say the same.

    >>> alike("1 bar", "100 kPa"), alike("1 bar(g)", "100 kPa"), alike("trips open", "Trips  open")
    (True, False, True)
    """
    one, other = _read(before), _read(after)
    if one is None and other is None:
        one, other = _read(f"{before}{UNSAID}"), _read(f"{after}{UNSAID}")
    if one is None or other is None:
        return " ".join(before.split()).casefold() == " ".join(after.split()).casefold()
    return one.type == other.type and all(
        abs(first - second) <= NEAR * max(abs(first), abs(second))
        for first, second in ((one.low, other.low), (one.si, other.si), (one.high, other.high))
    )


def _read(text: str) -> Quantity | None:
    try:
        return read_quantity(text, Where(""))
    except CalcFault:
        return None
