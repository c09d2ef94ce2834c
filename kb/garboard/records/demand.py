"""What a `require` line demands of one quantity, so that a reading can be held against it.

Only a line that compares one name with one name or one quantity says this of itself: `n >= 6`,
`BG-PU-002.delivers >= pump.fire_l_min`. Of a sum or a choice nothing is said.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from garboard.calc.fault import CalcFault
from garboard.calc.kinds import Type
from garboard.calc.quantity import read_quantity
from garboard.calc.value import Requirement, Value
from garboard.errors import Where

__all__ = ["Demand", "demands_of", "sign_of"]

SIDES = re.compile(r"(?P<left>[^<>]+?)\s*(?P<sign><=|>=|<|>)\s*(?P<right>[^<>]+)")
TURNED = {"<": ">", "<=": ">=", ">": "<", ">=": "<="}
HAIR = 1e-9
"""Relative: the last figures of a float are no reason."""


@dataclass(frozen=True, slots=True)
class Demand:
    """That a quantity be at least, or at most, something."""

    address: str
    """Of the quantity."""
    sign: str
    """`<`, `<=`, `>` or `>=`, the quantity on its left."""
    limit: float
    """In SI, as given."""
    text: str
    """The limit as shown."""
    type: Type
    requirement: Requirement

    @property
    def least(self) -> bool:
        """Whether less is forbidden, rather than more."""
        return self.sign.startswith(">")

    @property
    def words(self) -> str:
        """`at least 6`."""
        word = {">=": "at least", ">": "more than", "<=": "at most", "<": "less than"}[self.sign]
        return f"{word} {self.text}"

    def holds(self, si: float) -> bool:
        """Whether a reading, in SI, is on the right side.

        At the limit itself it holds where the line says so.
        """
        gap = si - self.limit if self.least else self.limit - si
        if abs(gap) <= HAIR * max(abs(si), abs(self.limit)):
            return self.sign.endswith("=")
        return gap > 0


def sign_of(requirement: Requirement) -> str:
    """Which comparison a requirement is; empty where it holds more than one, as a choice does.

    A requirement as it is written is `left sign right`.
    """
    found = SIDES.fullmatch(requirement.text.strip())
    return found["sign"] if found else ""


def demands_of(
    requirements: Iterable[Requirement], values: Mapping[str, Value]
) -> Iterator[Demand]:
    """What requirements demand of single quantities, each side that is one looked at in turn.

    Args:
        requirements: `require` lines, judged.
        values: By address.
    """
    for one in requirements:
        found = SIDES.fullmatch(one.text.strip())
        if not found:
            continue
        left, right = (_side(one, found[name], values) for name in ("left", "right"))
        if left is None or right is None or left.type != right.type:
            continue
        if left.address:
            yield Demand(left.address, found["sign"], right.si, one.right, right.type, one)
        if right.address:
            sign = TURNED[found["sign"]]
            yield Demand(right.address, sign, left.si, one.left, left.type, one)


@dataclass(frozen=True, slots=True)
class _Side:
    si: float
    type: Type
    address: str = ""


def _side(requirement: Requirement, text: str, values: Mapping[str, Value]) -> _Side | None:
    for address in (f"{requirement.block}.{text.strip()}", text.strip()):
        value = values.get(address)
        if value is not None:
            return None if value.si is None else _Side(value.si, value.type, address)
    try:
        typed = read_quantity(text.strip(), Where(""))
    except CalcFault:
        return None
    return _Side(typed.si, typed.type)
