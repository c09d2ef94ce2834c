"""Who may do what: by procedure, who aboard can do it today; by role, capacities, classes and systems."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.competence import (
    Skill,
    alone_aboard,
    helped_aboard,
    skills,
    skills_by_procedure,
)
from garboard.records.base import Class
from garboard.records.people import PersonEntry
from garboard.records.procedure import Procedure
from garboard.records.signoff import Capacity
from garboard.records.standing import has_left
from garboard.views.crew import aboard_today, in_a_row, known_as, time_words, with_limits
from garboard.views.draft import Draft
from garboard.views.inline import day, person
from garboard.views.page import (
    Bullets,
    Cell,
    Column,
    Facts,
    Heading,
    Link,
    Paragraph,
    Row,
    Strong,
    Table,
)

__all__ = ["fell_words", "who_may_do_what"]

SAID_OF_LEVELS = (
    "With help means beside somebody who can do it alone. What was seen of an older revision counts for"
    " less: who could do it alone or teach it then can do it with help, who could do it with help has"
    " not been shown it. A revision that changed words only takes nothing away where an"
    " issued text from before it shows that."
)


def who_may_do_what(draft: Draft) -> None:
    """The page."""
    book = draft.book
    found = skills_by_procedure(book)
    procedures = [one for one in book.of_kind(Procedure) if not has_left(one)]
    nobody = [one for one in procedures if not alone_aboard(book, found.get(str(one.id), []))]
    draft.add(
        Paragraph(("People are shown by role only, two of one role by their times aboard.",)),
        Facts(
            (
                ("aboard today", (in_a_row(known_as(book, one) for one in aboard_today(book)),)),
                ("procedures", (f"{len(procedures)}",)),
                ("nobody aboard can do alone", (Strong(f"{len(nobody)}"),)),
            )
        ),
        Paragraph((SAID_OF_LEVELS,), quiet=True),
        Heading("By procedure, today"),
    )
    for code, system in book.systems.items():
        rows = tuple(_row(book, one, found) for one in procedures if one.system == code)
        if rows:
            titles = ("procedure", "alone", "with help")
            draft.add(Table(system.title, tuple(Column(one) for one in titles), rows))
    draft.add(*_fallen(book), Heading("By role"), _roles(book))


def _row(book: Book, procedure: Procedure, found: dict[str, list[Skill]]) -> Row:
    shown = found.get(str(procedure.id), [])
    alone, helped = alone_aboard(book, shown), helped_aboard(book, shown)
    names: Cell = (in_a_row(with_limits(book, one) for one in alone),)
    if not alone:
        names = (Strong("Nobody aboard can do this alone"),)
    helps = in_a_row(with_limits(book, one) for one in helped) or "nobody aboard"
    link = Link(str(procedure.id), str(procedure.id))
    return Row(((link, f" {procedure.title}"), names, (helps,)), str(procedure.id))


def _fallen(book: Book) -> Iterator[Heading | Bullets | Paragraph]:
    """What counts as less than was seen, and why."""
    yield Heading("What counts as less than was seen")
    lines = tuple(_fell(book, one) for one in skills(book) if one.fell)
    yield Bullets(lines) if lines else Paragraph(("Nothing: all was seen of what is in force.",))


def _fell(book: Book, one: Skill) -> Cell:
    key = str(one.procedure.id)
    name = known_as(book, one.person)
    return (f"{name}: ", Link(key, key), f" {one.procedure.title}. {fell_words(one)}")


def fell_words(one: Skill) -> str:
    """Why what somebody has shown counts as less, and since when, in sentences."""
    seen = f" {day(one.shown.on)}" if one.shown.on else ""
    words = f"Seen{seen} in revision {one.shown.revision}: {one.written}."
    if one.majors:
        since = f" since {day(one.since)}" if one.since else ", not yet signed as issued"
        numbers = ", ".join(str(number) for number in one.majors)
        which = "Revision" if len(one.majors) == 1 else "Revisions"
        each = "is" if len(one.majors) == 1 else "are"
        words += f" {which} {numbers} {each} major{since}: it has to be shown again."
        if one.unproved:
            claimed = ", ".join(str(number) for number in one.unproved)
            words += f" ({claimed}: claimed minor, nothing to hold it against.)"
    if one.doubt:
        words += f" That cannot be: {one.doubt}."
    if one.ran_out:
        words += f" It held until {day(one.shown.until)}."
    return f"{words} Counts as {one.counts_as}."


def _roles(book: Book) -> Table:
    titles = ("role", "time aboard", "may act as", "class", "systems", "trades", "shown round")
    rows = tuple(_role(book, one) for one in book.content.people.values())
    return Table("Roles, capacities and how far they reach", tuple(map(Column, titles)), rows)


def _role(book: Book, one: PersonEntry) -> Row:
    shown = one.shown_round(book.today)
    by = f"{day(shown.on)}, by the {person(book, shown.by)}" if shown else ""
    round_: Cell = (by,)
    if not shown and one.time_aboard(book.today) and Capacity.IN_CHARGE not in one.may:
        round_ = (Strong("nobody wrote it down"),)
    times = "; ".join(
        f"{day(each.from_)} to {day(each.to) if each.to else 'today'}" for each in one.aboard
    )
    return Row(
        (
            (one.role,),
            (times or time_words(book, one),),
            (", ".join(str(capacity) for capacity in one.may) or "signs nothing",),
            (f"up to {one.class_}" if one.class_ not in (None, Class.A) else "every class",),
            (", ".join(one.systems) or "all",),
            (", ".join(one.disciplines),),
            round_,
        )
    )
