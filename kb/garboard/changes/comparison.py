"""What differs between two books, as plain data: made once, kept, drawn on a page, printed, mailed.

Everything stands in words and numbers as they were shown, so that it can be read long after either
book is gone.
"""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from garboard.schematic.svg import Only

__all__ = [
    "Affected",
    "Alone",
    "Caution",
    "Comparison",
    "DrawnJoins",
    "Entry",
    "Input",
    "LayoutChange",
    "Limit",
    "Number",
    "Rejoined",
    "Side",
    "Sort",
    "StepChange",
    "Strength",
]


class Sort(StrEnum):
    """What became of something between two books."""

    NEW = "new"
    GONE = "gone"
    CHANGED = "changed"
    MOVED = "moved"
    """Of a step: the same words in another place. Of a number: another value or range."""
    REWRITTEN = "written otherwise"
    """The same to the last bit, in other digits or another unit."""
    STILL = "not moved"
    BALANCED = "the same in the end"
    """Changes that would have moved it make up for each other."""


class Strength(StrEnum):
    """Which way a safety message, or what guards a step, went; the weakened first."""

    WEAKENED = "weakened"
    CHANGED = "changed"
    """Only people can say which way."""
    STRENGTHENED = "strengthened"


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One of the two books."""

    edition: int
    """Its number; 0 for a working copy."""
    on: date
    """The day it was judged by."""
    unread: int = 0
    """Files in it that this version cannot read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Alone:
    """What one changed input does by itself: the old book with nothing but that exchanged."""

    input: int
    """Which of the inputs, from 0."""
    text: str
    """What the result, or the margin with its verdict, comes to then."""
    change: str = ""
    """How far that is from before; empty where it is the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """One thing that somebody wrote otherwise: a number, a line of a calculation, a requirement."""

    address: str
    """Of the value, or of the block for a requirement."""
    before: str
    """As written; empty where it is new."""
    after: str
    """As written; empty where it is gone."""
    not_tried: str = ""
    """Why it could not be tried alone; empty where it was."""
    behind: tuple[str, ...] = ()
    """Records newer than the old book that set or name it, and what these answer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One requirement, before and after."""

    block: str
    before: str
    """As written, `n >= 6`; empty where it is new."""
    after: str
    """As written; empty where nobody asks it any more."""
    stood: str
    """Its verdict before, and after."""
    stands: str
    margin_before: str
    margin_after: str
    lost: str = ""
    """How much of the margin is gone, `2`, `0.5 bar`; with a minus where there is more of it."""
    worse: int = 0
    """How many steps the verdict fell, from holds to nominal to fails; negative: it rose."""
    share: float | None = None
    """What is lost, in per cent of the limit; of the margin where the limit allows no per cent."""
    asks: str = ""
    """Who asks it: the comment and the sources of the line."""
    values: tuple[str, ...] = ()
    """The addresses it holds against each other."""
    alone: tuple[Alone, ...] = ()

    @property
    def visible(self) -> bool:
        """Whether a reader sees that it is not as it was."""
        before = (self.before, self.stood, self.margin_before)
        return before != (self.after, self.stands, self.margin_after)

    @property
    def key(self) -> str:
        """What it is called among the others."""
        return f"{self.block}: {self.after or self.before}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """One value whose shown text or bits differ, that appeared, or that went."""

    address: str
    label: str
    sort: Sort
    given: bool
    """Somebody wrote it down; else it was worked out."""
    before: str = ""
    after: str = ""
    range_before: str = ""
    range_after: str = ""
    change: str = ""
    """`+3 bar`; empty where there is no difference to state."""
    percent: str = ""
    """`+12 %`; empty where per cent mean nothing, as of a thermometer."""
    note: str = ""
    limits: tuple[str, ...] = ()
    """Keys of the limits it is held against."""
    alone: tuple[Alone, ...] = ()
    rest: str = ""
    """What the changes tried alone do not add up to."""
    behind: tuple[str, ...] = ()

    @property
    def inner(self) -> bool:
        """Whether it is a step within a method that no limit holds."""
        return not self.given and self.address.count(".") > 1 and not self.limits


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A record, part, system, written page, source or spare that is not as it was."""

    name: str
    kind: str
    title: str
    sort: Sort
    weight: str = ""
    state_before: str = ""
    state_after: str = ""
    revision_before: int = 0
    revision_after: int = 0
    fields: tuple[str, ...] = ()
    """What in it differs, by name."""
    signed: tuple[str, ...] = ()
    """Signatures that were added, by capacity, role and day."""
    replaced_by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One thing about a safety message, an alarm or the guard of a step that is not as it was."""

    about: str
    """Id of the record, or tag of the part."""
    title: str
    weight: str
    strength: Strength
    what: str
    before: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepChange:
    """One step of a procedure that is not as it was, or not where it was."""

    procedure: str
    title: str
    sort: Sort
    number_before: int = 0
    """From 1; 0 where it is new."""
    number_after: int = 0
    before: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnJoins:
    """One sheet of a system that is joined otherwise, with what differs marked."""

    caption: str
    svg: str
    """Made by the core, without links: what it shows may be gone."""
    only: Only = ""
    """Shown on the screen alone, or on paper alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rejoined:
    """A system whose parts are joined otherwise."""

    system: str
    """Its code."""
    title: str
    new: tuple[str, ...] = ()
    """Parts that were in no connection before; full tags."""
    gone: tuple[str, ...] = ()
    """Parts that are in none any more."""
    moved: tuple[str, ...] = ()
    """Parts at a join that came or went."""
    parted: tuple[str, ...] = ()
    """Joins that are gone, each as a sentence."""
    joined: tuple[str, ...] = ()
    """Joins that are new."""
    before: tuple[DrawnJoins, ...] = ()
    """The sheets of the older book that the difference touches."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Affected:
    """Something that must be seen to because of the differences."""

    name: str
    """Number of the card, role of the person, id of the test, key of the page, part number."""
    what: str
    """Place of the card, procedure of the person, title."""
    why: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutChange:
    """One finding of the layout of a system that is gone, new, or found otherwise."""

    code: str
    about: str
    """Tag of the part, or the name of a header."""
    sort: Sort
    level_before: str = ""
    level_after: str = ""
    before: str = ""
    """What was found; empty where it is new."""
    after: str = ""
    behind: tuple[str, ...] = ()
    """Records newer than the old book that name a part of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """All that differs between two books."""

    before: Side
    after: Side
    numbers: tuple[Number, ...] = ()
    """Those with the most margin lost first."""
    balanced: tuple[Number, ...] = ()
    limits: tuple[Limit, ...] = ()
    """The same order."""
    inputs: tuple[Input, ...] = ()
    cautions: tuple[Caution, ...] = ()
    """Weakened ones first."""
    steps: tuple[StepChange, ...] = ()
    layout: tuple[LayoutChange, ...] = ()
    """By the rule, then by what they are about."""
    joins: tuple[Rejoined, ...] = ()
    entries: tuple[Entry, ...] = ()
    cards: tuple[Affected, ...] = ()
    people: tuple[Affected, ...] = ()
    tests: tuple[Affected, ...] = ()
    pages: tuple[Affected, ...] = ()
    spares: tuple[Affected, ...] = ()

    @property
    def empty(self) -> bool:
        """Whether nothing at all differs."""
        found = (self.numbers, self.balanced, self.limits, self.inputs, self.cautions, self.steps)
        effects = (
            self.layout,
            self.joins,
            self.entries,
            self.cards,
            self.people,
            self.tests,
            self.pages,
            self.spares,
        )
        return not any((*found, *effects))

    def limit(self, key: str) -> Limit:
        """The limit of a key.

        Raises:
            KeyError: There is none.
        """
        for one in self.limits:
            if one.key == key:
                return one
        raise KeyError(key)
