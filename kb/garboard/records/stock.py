"""Spares: what is aboard against what there must be, and what is essential and has none."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass

from garboard.records.alarm import Fault
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.records.standing import has_left
from garboard.records.vessel import Spare

__all__ = ["Stock", "essential_without_spare", "stock_of", "ways_home"]


@dataclass(frozen=True, slots=True)
class Stock:
    """How a spare stands, in words."""

    words: str
    low: bool
    """Fewer than there must be, or nobody knows."""


def stock_of(spare: Spare) -> Stock:
    """Hold what is aboard against the least.

    >>> from garboard.errors import Where
    >>> stock_of(Spare(key="X", where=Where("spares.yml"), name="hose", aboard=0, least=1))
    Stock(words='none aboard, 1 needed', low=True)
    """
    if spare.aboard is None:
        return Stock("nobody has counted them", low=True)
    aboard = f"{spare.aboard or 'none'} aboard"
    if spare.least is None:
        return Stock(f"{aboard}, least not recorded", low=spare.aboard == 0)
    if spare.aboard < spare.least:
        return Stock(f"{aboard}, {spare.least} needed", low=True)
    return Stock(f"{aboard}, enough", low=False)


def essential_without_spare(
    components: Mapping[str, Component], spares: Iterable[Spare], home: Collection[str]
) -> Iterator[Component]:
    """Every essential part that has no spare aboard, and no page that says how to get home without it.

    Args:
        components: By tag.
        spares: All spares.
        home: What the ways home name.
    """
    aboard = {tag for spare in spares if spare.aboard for tag in spare.fits}
    for part in components.values():
        if part.essential and part.tag not in aboard and part.tag not in home:
            yield part


def ways_home(records: Iterable[Record], named: Iterable[tuple[str, str]]) -> frozenset[str]:
    """Everything that a live fault page with `get_home` names.

    Args:
        records: All records.
        named: Who names what, and what is named.
    """
    pages = {
        str(one.id)
        for one in records
        if isinstance(one, Fault) and one.get_home and not has_left(one)
    }
    return frozenset(to for by, to in named if by in pages)
