"""A procedure as it is done: what is needed, then messages and steps, then how everything stands."""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Second
from garboard.records.procedure import Step as ProcedureStep
from garboard.views.crew import who_can
from garboard.views.draft import Draft
from garboard.views.fields import line_of
from garboard.views.inline import cell, title_of
from garboard.views.messages import message_of
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Facts,
    Heading,
    Paragraph,
    Plate,
    Step,
    Steps,
    Strong,
)
from garboard.views.runs import plain

__all__ = ["procedure_head"]

SECOND_WORDS = {
    Second.CONCURRENT: "A second person looks on while it is done.",
    Second.INDEPENDENT: "A second person checks it alone afterwards.",
}
BEFORE = ("when", "people", "competence", "tools", "parts", "ppe", "time", "isolation")
"""What stands before step 1."""


def procedure_head(draft: Draft, record: Procedure) -> Iterator[Block]:
    """The procedure itself.

    Args:
        draft: Its page.
        record: The procedure.

    Yields:
        Purpose, what is needed, the steps with their messages, the end state.
    """
    book = draft.book
    if record.purpose:
        yield Paragraph((Strong("When it is done: "), *cell(book, record.purpose)))
    rows = [(name, line_of(book, record, name)) for name in BEFORE]
    named = {"when": "start from", "ppe": "wear"}
    needed = tuple((named.get(name, name), line) for name, line in rows if line)
    if needed:
        yield Heading("Before step 1")
        yield Facts(needed)
    yield who_can(book, record)
    if record.isolates or record.points:
        yield Facts(
            tuple(
                (label, line_of(book, record, name))
                for name, label in (("isolates", "makes safe"), ("points", "isolation points"))
                if getattr(record, name)
            )
        )
    if record.stop_if:
        yield Paragraph((Strong("Stop and call if: "), *cell(book, record.stop_if)))
    yield Heading("Steps")
    yield Steps(
        tuple(_step(book, number, step) for number, step in enumerate(record.steps, 1)),
        f"{record.title} complete.",
    )
    if record.restores:
        yield Heading("How everything stands at the end")
        yield from _restores(book, record)


def _step(book: Book, number: int, step: ProcedureStep) -> Step:
    hazard = book.records.get(step.message) if step.message else None
    component = book.components.get(step.tag) if step.tag else None
    item: Cell = (Plate(step.tag), " ", title_of(book, step.tag)) if step.tag else ()
    hold = cell(book, step.hold) if step.hold else ()
    return Step(
        number=str(number),
        do=step.do,
        item=item,
        place=str(step.at or (component.place if component else "") or ""),
        to=step.to or "",
        see=_seen(book, step),
        within=_within(book, step),
        if_not=plain(cell(book, step.if_not)),
        message=message_of(book, hazard) if isinstance(hazard, Hazard) else None,
        second=SECOND_WORDS.get(step.second, "") if step.second else "",
        hold=("Hold point: do not go on before it is released: ", *hold) if hold else (),
    )


def _seen(book: Book, step: ProcedureStep) -> Cell:
    if not step.see:
        return ()
    on: Cell = (Plate(step.see.tag), " ") if step.see.tag else ()
    return (*on, *cell(book, step.see.value))


def _within(book: Book, step: ProcedureStep) -> str:
    return plain(cell(book, step.see.within)) if step.see else ""


def _restores(book: Book, record: Procedure) -> Iterator[Block]:
    if isinstance(record.restores, Mapping):
        yield Bullets(
            tuple((Plate(tag), f" {position}") for tag, position in record.restores.items())
        )
    else:
        yield Paragraph(cell(book, record.restores))
