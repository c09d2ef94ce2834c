"""What came of a procedure when it was walked on the layout of its system, at the foot of its page."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.procedure import Procedure
from garboard.systems.forbidden import gathered
from garboard.systems.plant import Plant
from garboard.systems.slips import Slip
from garboard.systems.state import State, stands
from garboard.systems.walked import Walked
from garboard.views.inline import cell
from garboard.views.line_trace import layout_stamp
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Facts,
    Heading,
    Paragraph,
    Row,
    Strong,
    Table,
)
from garboard.views.positions import position_of

__all__ = ["walked_blocks"]

ANYHOW = (
    "nowhere that is said: `when` names no operating state, and a valve that no step names counts as standing"
    " the worst way"
)


def walked_blocks(book: Book, procedure: Procedure) -> Iterator[Block]:
    """From where it was walked, what it met, how it ends, which slips something catches.

    Args:
        book: The book.
        procedure: One of its procedures; nothing is said where no step of it touches the layout.
    """
    walked = book.walks.get(str(procedure.id))
    if walked is None or not any(stage.action.part is not None for stage in walked.walk.stages):
        return
    yield Heading("Walked on the layout")
    yield Facts(tuple(_facts(book, walked)))
    met = [
        cell(book, f"step {stage.action.number}: {trouble.text}")
        for stage in walked.walk.stages
        for trouble in gathered(stage.troubles)
    ]
    if met:
        yield Paragraph((Strong("It leads to a forbidden state:"),))
        yield Bullets(tuple(met))
    yield from _slips(book, walked)
    yield from layout_stamp(book, procedure.system)


def _facts(book: Book, walked: Walked) -> Iterator[tuple[str, Cell]]:
    held = walked.begins in book.records
    begins = f"where {walked.begins} leaves it" if held else walked.begins
    yield "walked from", cell(book, begins or ANYHOW)
    ends = _moved(walked.plant, walked.walk.start, walked.walk.end)
    moved = [position_of(book, tag, position) for tag, position in ends]
    yield "ends as it began, but for", cell(book, ", ".join(moved) or "nothing")
    if walked.left_open:
        yield "still opened up", cell(book, ", ".join(walked.left_open))
    if walked.walk.not_followed:
        numbers = ", ".join(str(number) for number in walked.walk.not_followed)
        step = "step" if len(walked.walk.not_followed) == 1 else "steps"
        yield "not followed", (f"{step} {numbers}: nothing drawn here is moved there",)


def _moved(plant: Plant, start: State, end: State) -> Iterator[tuple[str, str]]:
    """What stands otherwise at the end."""
    for part in plant.parts:
        now = stands(plant, end, part.tag)
        if now and now != stands(plant, start, part.tag):
            yield part.tag, now


def _slips(book: Book, walked: Walked) -> Iterator[Block]:
    """Each slip that harms, with what shows it; how many were tried that do not."""
    harmful = [slip for slip in walked.slips if slip.met is not None]
    rows = tuple(Row(_slip_row(book, walked, slip)) for slip in harmful)
    columns = ("slip", "comes to", "what catches it before")
    if rows:
        caption = "One step left out, or two neighbours exchanged"
        yield Table(caption, tuple(Column(title) for title in columns), rows)
    others = len(walked.slips) - len(harmful)
    if others:
        which = "other slip" if harmful else "slip"
        told = f"1 {which} changes" if others == 1 else f"{others} {which}s change"
        yield Paragraph((f"{told} how it stands on the way, without reaching a forbidden state.",))


def _slip_row(book: Book, walked: Walked, slip: Slip) -> tuple[Cell, ...]:
    steps = walked.procedure.steps
    if slip.left_out:
        said = f"step {slip.steps[0]} left out: {steps[slip.steps[0] - 1].do}"
        tag = steps[slip.steps[0] - 1].tag
        told = f"{said} {tag}" if tag else said
    else:
        told = f"steps {slip.steps[0]} and {slip.steps[1]} exchanged"
    caught = "the second person" if slip.watched else "nothing"
    if slip.caught is not None:
        see = steps[slip.caught - 1].see if slip.caught <= len(steps) else None
        on = see.tag if see and see.tag else steps[slip.caught - 1].tag
        caught = f"step {slip.caught}: {on} shows it"
    words = cell(book, caught)
    return (
        cell(book, told),
        cell(book, walked.harm_of(slip)),
        (Strong(caught),) if caught == "nothing" else words,
    )
