"""The first day aboard: what could hurt, who is in charge, what is shown, what may be touched.

Two sheets of A4 that somebody walks through with a newcomer. What is said to everybody alike stands
here as common practice of ships, without a source; all else comes from the records.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.alarm import Alarm
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Second, Use
from garboard.records.standing import has_left
from garboard.records.system import ServiceStatus, System
from garboard.views.crew import in_a_row, in_charge, known_as
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.messages import by_word, message_of, worst_first
from garboard.views.page import (
    Block,
    Column,
    Heading,
    Link,
    Paragraph,
    Row,
    Run,
    Strong,
    Table,
    ToSign,
)
from garboard.views.runs import plain
from garboard.views.system_pages import system_key

__all__ = ["first_day"]

WORST = 3
"""Dangers that stand in full, or one hazard where none is a danger; all others are named below them."""
MOST_WORDS = 4
TOUCH = {
    ServiceStatus.IN_SERVICE: "what you have been shown, by its procedures",
    ServiceStatus.IN_TEST: "nothing alone: it runs for tests only",
    ServiceStatus.BUILDING: "nothing without the person in charge: it is being built",
    ServiceStatus.SKETCH: "nothing: it is not built",
}
STOP = (
    "Anyone may stop work. Say \u201cstop\u201d; nobody has to agree first, and nobody asks who was right"
    " before it is safe."
)
RAISE = (
    "What is not as this book says, or looks wrong to you, is a finding. Tell the person in charge, at once"
    " where somebody could be hurt; then write what you saw, where (the plate on the part), day and hour."
    " Nobody changes your words."
)


def first_day(draft: Draft) -> None:
    """The page."""
    book = draft.book
    found = worst_first([one for one in book.of_kind(Hazard) if not has_left(one)])
    messages = tuple(message_of(book, one) for one in found)
    full = max(1, min(WORST, sum(one.word == "DANGER" for one in messages)))
    draft.messages = messages[:full]
    draft.add(*by_word(found[full:], " ", Link("registers/hazards", "All hazards"), "."))
    draft.add(Heading("Stop, and say so"), Paragraph((Strong(STOP),)), Paragraph((RAISE,)))
    draft.add(*_in_charge(book), *_alarms(book), *_systems(book), *_not_alone(book))
    draft.add(*_orientation(book), *_words(book, draft))


def _in_charge(book: Book) -> Iterator[Block]:
    yield Heading("Who is in charge")
    names = in_a_row(known_as(book, one) for one in in_charge(book))
    defers = ", ".join(book.content.vessel.defers_to)
    above = f" Whatever this book says, these decide: {defers}." if defers else ""
    nobody = "Nobody in charge is written down as aboard today: ask first."
    yield Paragraph((Strong(f"{names}, aboard today." if names else nobody), above))


def _alarms(book: Book) -> Iterator[Block]:
    """Each alarm as the panel words it, with the first thing to do."""
    found = sorted(
        (one for one in book.of_kind(Alarm) if not has_left(one)),
        key=lambda one: one.wording or one.title,
    )
    yield Heading("Alarms, and what to do first")
    rows = tuple(
        Row(
            (
                (Link(str(one.id), one.wording or one.title),),
                cell(book, one.first[0]) if one.first else ("call the person in charge",),
            )
        )
        for one in found
    )
    titles = ("the panel says", "do first")
    yield Table("", tuple(Column(one) for one in titles), rows, "No alarm is recorded.")
    yield Paragraph(("Any other alarm, and any you do not know: call the person in charge.",))


def _systems(book: Book) -> Iterator[Block]:
    """Systems by what binds them, those that run first."""
    yield Heading("What you may touch")
    rows = []
    for status, words in TOUCH.items():
        found = [one for one in book.systems.values() if _status(book, one) is status]
        if found:
            names = [run for one in found for run in (Link(system_key(one), one.title), "; ")]
            rows.append(Row(((Strong(str(status)),), tuple(names[:-1]), (words,))))
    titles = ("it is", "system", "you may")
    yield Table("", tuple(Column(one) for one in titles), tuple(rows), "No system is recorded.")


def _status(book: Book, system: System) -> ServiceStatus:
    return book.held.get(system.code, system.status)


def _not_alone(book: Book) -> Iterator[Block]:
    """What nobody new does alone: all of it, and some of it nobody at all."""
    yield Heading("What you may not do alone")
    yield Paragraph(
        (
            Strong("Everything that has a procedure, "),
            "until somebody who can do it alone has watched you and wrote it down: ",
            Link("people/who-may-do-what", "who may do what"),
            ". Never go alone into a closed space, and never take off a lock or a tag that is not yours.",
        )
    )
    two = [one for one in book.of_kind(Procedure) if not has_left(one) and _needs_two(one)]
    if two:
        said = "1 procedure asks" if len(two) == 1 else f"{len(two)} procedures ask"
        words = f"{said} for two people or more; each says so before its step 1."
        yield Paragraph((words,))


def _needs_two(one: Procedure) -> bool:
    """Whether a procedure says itself that one person is not enough."""
    seconds = any(step.second not in (None, Second.NONE) for step in one.steps)
    number = (one.people or "").split(maxsplit=1)
    alone = not number or number[0].casefold().rstrip(",;") in ("one", "1", "any")
    return seconds or not alone or one.use is Use.ISOLATION


def _orientation(book: Book) -> Iterator[Block]:
    items = book.content.vessel.orientation
    yield Heading("What you are shown today")
    if not items:
        yield Paragraph(
            (Strong("No list is written."), " It stands under orientation: in handbook.yml.")
        )
        return
    yield ToSign(
        "Walked through together",
        ("signed by both, day",),
        tuple(cell(book, one) for one in items),
        "shown",
    )
    yield Paragraph(
        ("Afterwards the person who showed you writes the day into the list of people.",),
        quiet=True,
    )


def _words(book: Book, draft: Draft) -> Iterator[Block]:
    """The words of this vessel that stand on this page."""
    said = " ".join(_said(draft)).casefold()
    found = [
        (word, term)
        for word, term in book.content.glossary.items()
        if word.casefold() in said and term.crew_words
    ]
    yield Heading("Words of this vessel")
    runs: list[Run] = []
    for word, term in found[:MOST_WORDS]:
        runs += [Strong(word), f": {term.means} (the crew: {', '.join(term.crew_words)}). "]
    yield Paragraph((*runs, Link("registers/glossary", "All words")))


def _said(draft: Draft) -> Iterator[str]:
    """The words that are on the page so far."""
    for message in draft.messages:
        yield from (plain(one) for one in (message.hazard, message.harm, message.avoid))
    for block in draft.blocks:
        if isinstance(block, Table):
            yield from (plain(one) for row in block.rows for one in row.cells)
        elif isinstance(block, ToSign):
            yield from (plain(one) for one in block.rows)
        elif isinstance(block, Paragraph):
            yield plain(block.runs)
