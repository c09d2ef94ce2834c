"""How everything stands when a procedure is done: the mode it restores, part by part, to be ticked."""

from collections.abc import Iterable, Iterator, Mapping

from garboard.book import Book
from garboard.records.procedure import Procedure
from garboard.systems.positions import PLAIN, positions_said
from garboard.views.inline import cell, title_of
from garboard.views.line_up import stands_in
from garboard.views.page import (
    Block,
    Facts,
    Heading,
    Link,
    Paragraph,
    Plate,
    Step,
    Steps,
    Strong,
)
from garboard.views.positions import board_word
from garboard.views.system_pages import system_key

__all__ = ["end_state"]

MOVED = "What the steps moved"
REST = "All the others"


def end_state(book: Book, record: Procedure) -> Iterator[Block]:
    """The end of a procedure, as rows that a person can verify.

    Args:
        book: The book.
        record: The procedure; nothing is said where it restores nothing.

    Yields:
        The named mode and every position it means; or the positions that are written.
    """
    restores = record.restores
    if not restores:
        return
    yield Heading("How everything stands at the end")
    system = book.systems.get(record.system)
    states = (system.operating_states if system else None) or {}
    state = states.get(restores) if isinstance(restores, str) else None
    if state is not None and system is not None:
        note = f" ({state.note})" if state.note else ""
        line_ups = Link(system_key(system, "line-ups"), "Line-ups and valves")
        yield Paragraph((Strong(str(restores)), *cell(book, note), ". See ", line_ups, "."))
        held = (("charged", state.charged), ("supplied", state.supplies))
        facts = tuple((name, cell(book, ", ".join(tags))) for name, tags in held if tags)
        if facts:
            yield Facts(facts)
        stands = [(str(one.part.tag), one.position) for one in stands_in(book, system.code, state)]
        yield from _rows(book, _moved_first(record, stands))
    elif isinstance(restores, Mapping):
        yield from _rows(book, _worded(book, restores.items()))
    else:
        yield Paragraph(cell(book, restores))
        yield from _rows(book, _worded(book, positions_said(restores)))


def _moved_first(
    record: Procedure, stands: list[tuple[str, str]]
) -> Iterator[tuple[str, str, str]]:
    """What the steps moved, then the rest: tag, position, heading over the first of each."""
    moved = {str(step.tag) for step in record.steps if step.tag}
    first = [one for one in stands if one[0] in moved]
    others = [one for one in stands if one[0] not in moved]
    for heading, group in ((MOVED, first), (REST if first else "", others)):
        for place, (tag, position) in enumerate(group):
            yield tag, position or "not said", "" if place else heading


def _worded(book: Book, said: Iterable[tuple[str, str]]) -> Iterator[tuple[str, str, str]]:
    """Positions as somebody wrote them, of parts that there are."""
    for tag, word in said:
        part = book.components.get(tag)
        if part is None:
            continue
        position = board_word(part, word)
        known = (*PLAIN, "on", "off", "in", "pulled", *(part.positions or {}))
        if position in known:
            yield tag, position, ""


def _rows(book: Book, stands: Iterable[tuple[str, str, str]]) -> Iterator[Block]:
    rows = tuple(
        Step(
            number="",
            do="",
            item=(Plate(tag), " ", title_of(book, tag)),
            place=str(book.components[tag].place or ""),
            see=(position,),
            under=heading,
            ticked=f"{tag} {position}, seen",
        )
        for tag, position, heading in stands
    )
    if rows:
        yield Steps(rows, numbered=False)
