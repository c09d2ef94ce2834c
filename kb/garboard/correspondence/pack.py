"""A review pack as data: parts in a fixed order, each a row of lines.

Both forms in which it goes out, plain text and one page, draw these same lines, so that no reviewer
sees more than another. Lines are words of no markup.
"""

from dataclasses import dataclass, field, replace
from enum import StrEnum

from garboard.records.reply import Seal

__all__ = ["Line", "Pack", "Part", "Sort", "fact", "point", "say"]


class Sort(StrEnum):
    """How a line is set."""

    SAY = "say"
    STRONG = "strong"
    HEADING = "heading"
    POINT = "point"
    FACT = "fact"
    """A label and what stands against it."""
    FIGURES = "figures"
    """A row of a table: each cell with its own label, so that it reads in any mail."""
    VERBATIM = "verbatim"
    """Somebody's own words, to the letter."""
    DRAWING = "drawing"
    """A drawing in the page; in plain text its caption alone, as its words stand before it."""
    FORM = "form"
    """A line of the reply form: never folded or indented."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a pack, as long as it needs to be."""

    sort: Sort
    text: str = ""
    label: str = ""
    cells: tuple[tuple[str, str], ...] = ()
    """Label and figure; for FIGURES."""
    drawing: str = ""
    """SVG made by the core, trusted; for DRAWING."""


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a pack."""

    title: str
    lines: tuple[Line, ...]
    cut: int = 0
    """When it is shortened: 1 the first; 0 never."""
    left_out: int = 0
    """How many of its lines were left out."""

    def shortened(self, keep: int) -> "Part":
        """The part with no more than so many lines, the first ones."""
        if not self.cut or len(self.lines) <= keep:
            return self
        out = self.left_out + len(self.lines) - keep
        return replace(self, lines=self.lines[:keep], left_out=out)


@dataclass(frozen=True, slots=True)
class Pack:
    """What goes out to a reviewer."""

    vessel: str
    title: str
    """`SA-CN-002 Second low-air switch, and a higher setting`"""
    about: str
    """Kind, class and state in one line."""
    made: str
    """As of which day, and against what it was compared."""
    seal: Seal
    brief: Part
    """What half a minute must give."""
    parts: tuple[Part, ...]
    form: Part
    left_out: tuple[str, ...] = field(default=())
    """What is not in it for its size, in words."""

    @property
    def all_parts(self) -> tuple[Part, ...]:
        """Everything in the order in which it is read."""
        return (self.brief, *self.parts, self.form)


def say(text: str) -> Line:
    """A plain line."""
    return Line(Sort.SAY, text)


def point(text: str) -> Line:
    """One of a list."""
    return Line(Sort.POINT, text)


def fact(label: str, text: str) -> Line:
    """A label and what stands against it."""
    return Line(Sort.FACT, text, label)
