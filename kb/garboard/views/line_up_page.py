"""Line-ups and valves: every valve of a system, how it stands in each operating state, and how to get there."""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.records.component import Component, Fails
from garboard.records.system import OperatingState, System
from garboard.systems.plant import Plant
from garboard.systems.safe_order import Movement, Order, between_states
from garboard.systems.ways import Ways
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.line_trace import layout_stamp
from garboard.views.line_up import movable_parts, plant_of, stands_in
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Facts,
    Heading,
    Paragraph,
    Plate,
    Row,
    Strong,
    Table,
)
from garboard.views.positions import board_word

__all__ = ["line_ups"]

TO_DO = {"open": "Open", "shut": "Shut", "running": "Start", "stopped": "Stop", "on": "Switch on"}
TO_DO |= {"off": "Switch off", "pulled": "Pull", "in": "Put in"}
TICK = "[\N{NO-BREAK SPACE}\N{NO-BREAK SPACE}\N{NO-BREAK SPACE}]"
VALVES = ("tag", "name", "place", "usual", "fails, held, on which round")
LINE_UP = ("tag", "name", "place", "stands", "note", "seen")


def line_ups(draft: Draft, system: System) -> None:
    """Valve list, a table to tick for each operating state, the moves between them."""
    book = draft.book
    movable = movable_parts(book, system.code)
    rows = tuple(Row(_valve_row(book, part), part.tag) for part in movable)
    draft.add(
        Table("Valves, switches and machines", tuple(Column(title) for title in VALVES), rows)
    )
    plant = plant_of(book, system.code)
    states = system.operating_states or {}
    for name, state in states.items():
        draft.add(Heading(f"Line-up: {name}"))
        draft.add(*_line_up(book, system.code, state))
    if plant and len(states) > 1:
        draft.add(Heading("From one state to another"), *_moves(book, plant, states))


def _valve_row(book: Book, part: Component) -> tuple[Cell, ...]:
    fails = "stays where it is" if part.fails is Fails.STAYS else f"fails {part.fails}"
    held = (
        fails if part.fails else "",
        f"locked {board_word(part, part.locked)}" if part.locked else "",
        part.secured or "",
        f"round: {part.round}" if part.round else "",
    )
    return (
        (Plate(part.tag),),
        (part.name or part.kind,),
        cell(book, part.place or "not recorded"),
        (board_word(part, part.usual) or "not recorded",),
        cell(book, ", ".join(one for one in held if one)),
    )


def _line_up(book: Book, code: str, state: OperatingState) -> Iterator[Block]:
    facts = (("charged", state.charged), ("supplied", state.supplies))
    said: list[tuple[str, Cell]] = [("when", cell(book, state.note))] if state.note else []
    said += [(name, cell(book, ", ".join(tags))) for name, tags in facts if tags]
    if said:
        yield Facts(tuple(said))
    rows = []
    for one in stands_in(book, code, state):
        part, usual = one.part, board_word(one.part, one.part.usual)
        notes = (
            f"usually {usual}" if usual != one.position else "",
            "locked" if one.locked else "",
        )
        cells: tuple[Cell, ...] = (
            (Plate(part.tag),),
            (part.name or part.kind,),
            cell(book, part.place or "not recorded"),
            (one.position or "not said",),
            (", ".join(note for note in notes if note),),
            (TICK,),
        )
        rows.append(Row(cells))
    columns = tuple(Column(title, strong=title == "stands") for title in LINE_UP)
    yield Table("How everything stands, to be ticked on the spot", columns, tuple(rows))


def _moves(book: Book, plant: Plant, states: Mapping[str, OperatingState]) -> Iterator[Block]:
    """From the first state to every other, and back."""
    first, *others = states
    ways = Ways(plant)
    yield Paragraph(
        (
            "The fewest movements, in an order in which no machine fills a vessel without relief or unseen"
            " by its switch, or runs against a shut outlet, and no alternator or charger is left without a"
            " battery. This is no procedure: where one is written for it, follow that. Wait and read at each."
            f" Any other change goes by way of {first}.",
        )
    )
    for other in others:
        for one, to in ((first, other), (other, first)):
            yield Heading(f"From {one} to {to}", 3)
            yield from _order(book, between_states(ways, states[one], states[to]))
    yield from layout_stamp(book, plant.system.code)


def _order(book: Book, order: Order) -> Iterator[Block]:
    if order.movements:
        yield Bullets(tuple(_movement(book, step) for step in order.movements), ordered=True)
    elif order.found:
        yield Paragraph(("Nothing is moved.",))
    elif order.gave_up:
        said = f"Not settled: {order.tried} states were looked at, and there are more."
        yield Paragraph((Strong(said), " Write a procedure, and have it reviewed."))
    else:
        said = "No order was found that is safe all the way."
        yield Paragraph((Strong(said), " Write a procedure that stops the machines first."))
    if order.found and order.loses:
        yield Paragraph(("On the way not supplied: ", *cell(book, ", ".join(order.loses)), "."))


def _movement(book: Book, step: Movement) -> Cell:
    part = book.components[step.tag]
    word = board_word(part, step.to)
    called = f" {part.name}" if part.name else ""
    turned = "" if word in TO_DO else f" to {word}"
    warned: Cell = (" (", *cell(book, part.note), ")") if part.note else ()
    return (f"{TO_DO.get(word, 'Turn')} ", Plate(step.tag), f"{called}{turned}", *warned)
