"""Blocks of pages that are opened in a hurry: what is done first, the looks of a fault, large ways in."""

from dataclasses import dataclass

from garboard.views.runs import Cell, Link

__all__ = [
    "AgainstIt",
    "DoFirst",
    "Look",
    "Looks",
    "MessagesHere",
    "Tiles",
    "WayIn",
    "WaysIn",
]


@dataclass(frozen=True, slots=True)
class Tiles:
    """Large targets that lead somewhere: systems, registers, pages of a system."""

    tiles: tuple[tuple[Link, str], ...]
    """Link and the line under it."""
    small: bool = False
    """Two beside each other on a phone, for a page that must not be long."""


@dataclass(frozen=True, slots=True)
class DoFirst:
    """What is done, or known, before anything else is read."""

    title: str
    """`Do first`, `Make it safe first`; or the answer in one sentence."""
    actions: tuple[Cell, ...]
    """In order; several are numbered."""
    numbered: bool = True
    """False: lines that belong to the title, of which none comes first."""


@dataclass(frozen=True, slots=True)
class Look:
    """One look at one thing of a fault, and the way on for both answers."""

    number: int
    do: Cell
    """Verb, plate, name, place."""
    see: Cell
    """What is to be seen."""
    yes: Cell
    no: Cell

    @property
    def anchor(self) -> str:
        """Where a link lands that leads here from another look."""
        return f"look-{self.number}"


@dataclass(frozen=True, slots=True)
class Looks:
    """The looks of a fault, in order."""

    looks: tuple[Look, ...]


@dataclass(frozen=True, slots=True)
class AgainstIt:
    """Where a page in a hurry says in full what its head says in short.

    A page with this block is read in a hurry: its title block and its notices are cut to their first
    words, so that the first action stands on the first screen, and nothing of them is dropped.
    """


@dataclass(frozen=True, slots=True)
class MessagesHere:
    """Where the safety messages of a page stand, close together, if not at its head.

    On a page that is read to learn what a system is, and on which nobody acts.
    """


@dataclass(frozen=True, slots=True)
class WayIn:
    """A large target for somebody in a hurry: its words, and under them the first action."""

    link: Link
    first: str
    """The first action, in words: no link can stand inside a link."""
    about: tuple[str, ...] = ()
    """Further lines: system, place, priority."""
    against: str = ""
    """What stands against the page it leads to, in its own words; filled in once that is known."""


@dataclass(frozen=True, slots=True)
class WaysIn:
    """A list of large targets, one under another."""

    ways: tuple[WayIn, ...]
    close: bool = False
    """Set close together, and what stands against each in its first words only."""
