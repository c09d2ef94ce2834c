"""What a pack is about: a record or written page, and all that it moves or touches."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from garboard.book import Book
from garboard.changes.touched import Touched, touched_by
from garboard.correspondence.before import Before
from garboard.correspondence.figures import Figure, figures_of
from garboard.correspondence.weakened import Shifted, gone_with, shifted
from garboard.records.alarm import Alarm
from garboard.records.base import Record, bare_id
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.relations import Names, find_references
from garboard.review.covers import Cover, Covers, Signed, name_of

__all__ = ["Subject", "subject_of"]

DIRECT = frozenset(
    "affects where_ where tag tested procedures message isolation isolates points".split()
)
"""Fields that name what a record is about, beside what it merely cites."""


@dataclass(frozen=True, slots=True)
class Subject:
    """What a pack is about."""

    book: Book
    thing: Signed
    cover: Cover
    before: Before
    tags: tuple[str, ...]
    """Parts that it is about by its own words, or whose numbers it moves."""
    touched: Touched
    numbers: tuple[Figure, ...]
    still: int
    """How many more numbers rest on it and did not move."""
    shifts: tuple[Shifted, ...]
    """Procedures, safety messages, alarms and parts that it touches, the weakened first."""

    @property
    def key(self) -> str:
        """Its id, or the path of the page."""
        return name_of(self.thing)

    @property
    def record(self) -> Record | None:
        """The record; None for a written page."""
        return self.thing if isinstance(self.thing, Record) else None


def subject_of(book: Book, thing: Signed, before: Before) -> Subject:
    """Look up all that a record or written page moves and touches.

    Args:
        book: As it stands.
        thing: The record or page.
        before: What it is compared with.
    """
    cover = Covers(book.content, book.network).of(thing)
    moves = tuple(dict.fromkeys(_moves(book, thing, before)))
    named = tuple(dict.fromkeys(_direct(book, thing)))
    tags = [name for name in named if name in book.components]
    tags += [owner for one in moves if (owner := one.partition(".")[0]) in book.components]
    tags = list(dict.fromkeys(tags))
    touched = _with_named(book, touched_by(book, moves, (name_of(thing), *tags)), named)
    looked_at = dict.fromkeys((*moves, *touched.values, *cover.values))
    numbers = figures_of(before.book, book, looked_at)
    told = _worth_showing(numbers, before, moves, cover)
    left = len(numbers) - len(told)
    old = None if before.put_back else before.book
    warns = touched.of_kind(book, "procedure", "hazard", "alarm", "fault")
    near = (*warns, *gone_with(old, book, tags), *tags)
    shifts = shifted(old, book, near)
    return Subject(book, thing, cover, before, tuple(tags), touched, told, left, shifts)


def _with_named(book: Book, touched: Touched, named: tuple[str, ...]) -> Touched:
    """With the records that it says it is about, their cards and who masters them; not their users."""
    records = {name for name in named if name in book.records}
    also = touched_by(book, (), records)
    return replace(
        touched,
        records=tuple(sorted({*touched.records, *(records & set(also.records))})),
        cards=tuple(
            dict.fromkeys((*touched.cards, *(one for one in also.cards if one.of in records)))
        ),
        people=tuple(
            dict.fromkeys(
                (*touched.people, *(one for one in also.people if bare_id(one[1]) in records))
            )
        ),
    )


def _moves(book: Book, thing: Signed, before: Before) -> Iterator[str]:
    """The values that it moves itself."""
    if isinstance(thing, Change):
        yield from thing.values
        basis = book.records.get(bare_id(str(thing.basis)))
        if isinstance(basis, Decision):
            yield from basis.sets
    elif isinstance(thing, Decision):
        yield from thing.sets
    elif isinstance(thing, Alarm) and thing.set:
        yield thing.set
    for fence in book.fences_of(name_of(thing)):
        yield from (one for one in book.values if one.startswith(f"{fence.name}."))
    if before.book:
        for fence in before.book.fences_of(name_of(thing)):
            yield from (one for one in before.book.values if one.startswith(f"{fence.name}."))


def _direct(book: Book, thing: Signed) -> Iterator[str]:
    for one in find_references(thing):
        top = one.path.partition(".")[0].partition("[")[0]
        step = one.path.startswith("steps")
        if one.names is not Names.ADDRESS and (top in DIRECT or step):
            name = bare_id(one.text)
            if name in book.components or name in book.records:
                yield name


def _worth_showing(
    numbers: tuple[Figure, ...], before: Before, moves: tuple[str, ...], cover: Cover
) -> tuple[Figure, ...]:
    """Those that moved, are moved by it or stand in its words; with no before also what has a limit."""
    own = {*moves, *cover.values}
    blind = before.book is None
    return tuple(one for one in numbers if one.moved or one.address in own or (blind and one.limit))
