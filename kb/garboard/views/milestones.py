"""What the work leads to: each milestone of handbook.yml, and all that must be done before it, the first first.

What is done is reckoned as a work package reckons its needs. What stands in words only, nobody but whoever is
there can see.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date

from garboard.book import Book
from garboard.records.base import bare_id, date_of
from garboard.records.readiness import is_there, lacks
from garboard.records.vessel import Milestone
from garboard.records.work import WorkPackage
from garboard.views.draft import Draft
from garboard.views.inline import cell, day, link_to, linked, title_of
from garboard.views.page import (
    Cell,
    Column,
    Facts,
    Heading,
    Link,
    Paragraph,
    Row,
    Run,
    Strong,
    Table,
)
from garboard.views.tables import stands

__all__ = ["milestones"]

NONE = "No milestone is written under `milestones` in handbook.yml."
BY_EYE = "not known here: go and see"
COLUMNS = ("what must be done", "stands", "first", "for")


@dataclass(slots=True)
class _Needed:
    """One thing that must be done, and what for."""

    name: str
    """An id, or words."""
    for_: list[str] = field(default_factory=list)
    """Ids of the work packages that need it; empty where the milestone itself does."""


def milestones(draft: Draft) -> None:
    """Every milestone, the earliest first; those without a day last."""
    book = draft.book
    declared = book.content.vessel.milestones or {}
    if not declared:
        draft.add(Paragraph((NONE,)))
    for name in sorted(declared, key=lambda one: _when(declared[one])):
        _one(draft, name, declared[name])


def _when(milestone: Milestone) -> date:
    return date_of(milestone.by) or date.max


def _one(draft: Draft, name: str, milestone: Milestone) -> None:
    book = draft.book
    needed = list(_needed(book, milestone))
    open_ = [one for one in needed if not _done(book, one.name)]
    title = name.replace("-", " ")
    left = f"{len(open_)} of {len(needed)} things are not done or not known to be."
    by = date_of(milestone.by)
    said = day(by or milestone.by)
    late = by is not None and by < book.today and open_
    when: Cell = (Strong(f"{said}, which is past"),) if late else (said,)
    what = (("what it is", cell(book, milestone.what)),) if milestone.what else ()
    draft.add(
        Heading(f"{title[:1].upper()}{title[1:]}"),
        Facts(
            (*what, ("by", when), ("stands", (Strong(left) if open_ else "All of it is done.",)))
        ),
        Table(
            f"Before {title}",
            tuple(Column(title) for title in COLUMNS),
            tuple(Row(tuple(_cells(book, one))) for one in needed),
            "nothing is named",
        ),
    )


def _needed(book: Book, milestone: Milestone) -> Iterator[_Needed]:
    """All that must be done, what something else waits for before that."""
    found: dict[str, _Needed] = {}
    done: list[str] = []

    def follow(name: str, whose: str, above: tuple[str, ...]) -> None:
        one = found.setdefault(name, _Needed(name))
        if whose and whose not in one.for_:
            one.for_.append(whose)
        work = book.records.get(bare_id(name))
        if isinstance(work, WorkPackage) and not _done(book, name) and name not in above:
            for need in work.needs:
                follow(str(need), str(work.id), (*above, name))
        if name not in done:
            done.append(name)

    for need in milestone.needs:
        follow(str(need), "", ())
    yield from (found[name] for name in done)


def _done(book: Book, name: str) -> bool:
    record = book.records.get(bare_id(name))
    return record is not None and is_there(record, book.state)


def _cells(book: Book, one: _Needed) -> Iterator[Cell]:
    record = book.records.get(bare_id(one.name))
    if record is None:
        yield linked(book, one.name)
        yield (BY_EYE,)
        yield ()
    else:
        yield (link_to(book, str(record.id)), f" {title_of(book, str(record.id))}")
        state = stands(book, record)
        yield (f"done: {state}",) if _done(book, one.name) else (Strong(state),)
        yield tuple(_first(book, one.name))
    yield tuple(_links(one.for_)) or ("the milestone itself",)


def _first(book: Book, name: str) -> Iterator[Run]:
    """What a work package waits for."""
    work = book.records.get(bare_id(name))
    if not isinstance(work, WorkPackage) or _done(book, name):
        return
    lacking = list(lacks(work, book.records, book.state, book.today))
    for place, lack in enumerate(lacking):
        yield "; " if place else ""
        yield from linked(book, lack.first)
    if not lacking:
        yield "nothing that is known here"


def _links(names: list[str]) -> Iterator[Run]:
    for place, name in enumerate(names):
        yield ", " if place else ""
        yield Link(name, name)
