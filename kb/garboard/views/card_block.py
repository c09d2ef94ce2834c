"""Blocks that are made to be printed and hung: a quick card, a sheet of labels."""

from dataclasses import dataclass

from garboard.errors import Where
from garboard.views.runs import Cell

__all__ = ["CardLine", "Label", "LabelSheet", "QuickCard"]


@dataclass(frozen=True, slots=True)
class CardLine:
    """One thing that is done, and the state to see."""

    number: str
    do: Cell
    see: Cell = ()
    under: tuple[Cell, ...] = ()
    """What if it is not so, who looks as well, what holds it up."""


@dataclass(frozen=True, slots=True)
class QuickCard:
    """One side of A5. Its safety messages are those of its page."""

    number: str
    place: str
    """Where it hangs."""
    task: str = ""
    part: str = ""
    """`part 1 of 2`, or empty."""
    before: tuple[Cell, ...] = ()
    """What it means, or what is needed."""
    common: Cell = ()
    """What is done wherever a line does not say otherwise."""
    first: tuple[CardLine, ...] = ()
    then: tuple[CardLine, ...] = ()
    text: str = ""
    """Contributed Markdown under *Then*."""
    where: Where = Where("")  # noqa: RUF009 - frozen
    """Of the first line of that text."""
    seen: tuple[tuple[Cell, Cell], ...] = ()
    """Plate, which may be missing, and what it shows."""
    stop: tuple[Cell, ...] = ()
    governs: str = ""
    """`SA-PR-004 revision 7`"""
    digest: str = ""
    """Short digest of the record it is of."""
    code: str = ""
    """What its QR code says."""
    refused: tuple[str, ...] = ()
    """Why there is no card; then nothing else stands on it."""


@dataclass(frozen=True, slots=True)
class Label:
    """A label for one part: its QR code says the tag alone."""

    tag: str
    name: str


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """Labels to be printed and cut out."""

    labels: tuple[Label, ...]
