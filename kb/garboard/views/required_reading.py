"""What each person has to read: what moved since they were last aboard, or where a newcomer starts."""

from collections.abc import Iterator
from datetime import date

from garboard.book import Book
from garboard.changes.since_day import Moved, moved_since
from garboard.records.notice_message import standing
from garboard.records.people import PersonEntry
from garboard.records.procedure import Procedure
from garboard.records.signoff import Capacity
from garboard.records.standing import has_left
from garboard.views.crew import anchor_of, known_as
from garboard.views.draft import Draft
from garboard.views.inline import cell, day, person
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Row,
    Strong,
    Table,
    ToSign,
)

__all__ = ["FIRST_DAY", "required_reading"]

FIRST_DAY = "people/first-day"
READ = ("read on", "by, by hand")


def required_reading(draft: Draft) -> None:
    """A part for everybody who is or was aboard, those aboard today first."""
    book = draft.book
    people = [one for one in book.content.people.values() if one.aboard]
    people.sort(key=lambda one: one.time_aboard(book.today) is None)
    draft.add(
        Paragraph(
            (
                "Read your part before you work. It lists what moved since you were last aboard, gravest"
                " first. People are named by role; find yourself by the day you came.",
            )
        ),
        Bullets(
            tuple(
                (Link(f"{draft.key}#{anchor_of(book, one)}", known_as(book, one)),)
                for one in people
            )
        ),
    )
    if not people:
        draft.add(Paragraph(("Nobody's time aboard is written down in people.yml.",)))
    for one in people:
        name = known_as(book, one)
        draft.add(
            Heading(f"{name[:1].upper()}{name[1:]}", anchor=anchor_of(book, one)),
            *_part(book, one),
        )


def _part(book: Book, one: PersonEntry) -> Iterator[Block]:
    since, why = _known_until(book, one)
    if since is None:
        yield from _newcomer(book, one)
        return
    round_ = one.shown_round(book.today)
    if round_ is None and Capacity.IN_CHARGE not in one.may:
        yield Paragraph((Strong("Nobody wrote down having shown this person round."), *_start()))
    elif round_ and one.left(book.today) and round_.on <= (one.left(book.today) or round_.on):
        shown = f"Shown round {day(round_.on)} by the {person(book, round_.by)}, not since"
        yield Paragraph((f"{shown} coming back.",))
    found = moved_since(book, since, one.systems)
    caption = f"Moved since {day(since)}, {why}"
    if not found:
        yield Paragraph((f"Nothing moved since {day(since)}, {why}.",))
        return
    titles = ("read", "what", "when", "what moved")
    yield Table(
        caption, tuple(Column(each) for each in titles), tuple(_row(book, m) for m in found)
    )
    yield ToSign("Read, and asked about what was not plain", READ, (("all of this list",),))


def _known_until(book: Book, one: PersonEntry) -> tuple[date | None, str]:
    """The last day of which somebody knows what moved, and what makes it that day; None: of none."""
    left, round_ = one.left(book.today), one.shown_round(book.today)
    known: tuple[date | None, str] = (None, "")
    if left:
        known = (left, "the last day aboard")
    elif round_:
        known = (round_.on, "the day they were shown round")
    elif Capacity.IN_CHARGE in one.may:
        known = (min(each.from_ for each in one.aboard), "the day they came")
    if one.read_to and (known[0] is None or one.read_to > known[0]):
        known = (one.read_to, "the day up to which they have read")
    return known


def _start() -> Cell:
    return (" Start with ", Link(FIRST_DAY, "the first day"), ", with somebody beside.")


def _newcomer(book: Book, one: PersonEntry) -> Iterator[Block]:
    """Somebody who has never been shown round: the first day, what stands, every procedure of their work."""
    yield Paragraph((Strong("Nobody wrote down having shown this person round."), *_start()))
    notices = standing(book.content.vessel)
    if notices:
        yield Bullets(
            tuple((Strong(f"Notice {each.number}: "), *cell(book, each.says)) for each in notices)
        )
    procedures = [
        each
        for each in book.of_kind(Procedure)
        if not has_left(each) and (not one.systems or each.system in one.systems)
    ]
    where = "of their systems" if one.systems else "of every system, as none is named for them"
    yield Paragraph(
        (f"Then the {len(procedures)} procedures {where}, one after the other, as the work comes:",)
    )
    for code, system in book.systems.items():
        rows = tuple(
            Row(((Link(str(each.id), str(each.id)),), (each.title,), cell(book, each.purpose)))
            for each in procedures
            if each.system == code
        )
        if rows:
            titles = ("read", "what", "for")
            yield Table(system.title, tuple(Column(each) for each in titles), rows)
    yield ToSign("Read with somebody beside", READ, (("the first-day page",), ("the procedures",)))


def _row(book: Book, one: Moved) -> Row:
    if one.sort == "notice":
        link = Link(f"registers/notices#notice-{one.key}", f"notice {one.key}")
    else:
        link = Link(one.key, one.key)
    grave: Cell = (Strong(one.sort),) if one.rank < 2 else (one.sort,)
    return Row(((link,), (*grave, f": {one.title}"), (day(one.on),), cell(book, one.what)))
