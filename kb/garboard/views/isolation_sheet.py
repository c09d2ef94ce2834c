"""The sheet of one isolation: what stands against it, the steps, what stays alive, how it is given back."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.names import system_of
from garboard.records.base import bare_id
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Use
from garboard.records.standing import has_left
from garboard.schematic.overlays import isolation_overlay
from garboard.systems.isolation import Isolation
from garboard.systems.isolation_faults import UNPROVED
from garboard.systems.medium import Medium
from garboard.views.inline import cell, title_of
from garboard.views.isolation_steps import giving_back, isolating_steps
from garboard.views.line_trace import layout_stamp
from garboard.views.messages import message_of, worst_first
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Message,
    Paragraph,
    Plate,
    Row,
    Run,
    Strong,
    Table,
)
from garboard.views.schematics import drawn_alone

__all__ = ["isolation_messages", "isolation_sheet", "plates", "verdict_of"]

DEFERS = (
    "Worked out from the list of connections, by a program. Walk the line first, with two people, and shut"
    " nothing on this sheet alone. It does not replace the flag state, class, the surveyor or licensed trades."
)
ALONE = (
    "A battery is never parted from an alternator or charger that gives current: the voltage can run away."
    " Common practice; the maker's manual governs."
)
GOVERNS = "A written procedure governs: "
MADE_SAFE_IN = "A written procedure makes it safe before its own work: "
SAME_POINTS = "A written procedure shuts these very points, in its own order: "
MESSAGES = 2
"""How many safety messages stand on a sheet."""


def verdict_of(found: Isolation) -> str:
    """How an isolation comes out, in a few words."""
    if not found.possible:
        return "cannot be isolated"
    if any(one.code == UNPROVED for one in found.faults):
        return "can be shut off, cannot be proved"
    return "can be shut off with fewer blocks than asked" if found.faults else "can be isolated"


def isolation_messages(book: Book, found: Isolation) -> tuple[Message, ...]:
    """The safety messages of what is worked on, emptied and stopped, worst first."""
    about = {*found.tags, *found.emptied, *found.stop}
    named = [one for one in book.of_kind(Hazard) if about & {str(tag) for tag in one.where_}]
    live = [one for one in named if not has_left(one)]
    return tuple(message_of(book, one) for one in worst_first(live)[:MESSAGES])


def isolation_sheet(book: Book, found: Isolation) -> Iterator[Block]:
    """Everything on the sheet under its messages.

    Args:
        book: The book.
        found: The isolation.
    """
    yield Paragraph((Strong(f"{verdict_of(found).capitalize()}."), f" {DEFERS}"))
    yield Paragraph(tuple(_governs(book, found)))
    if found.first:
        yield Paragraph((Strong("Stop what drives it first: "), *plates(found.first), f". {ALONE}"))
    if found.faults:
        yield Heading("What stands against it")
        yield Bullets(
            tuple((*cell(book, one.text), ": ", *cell(book, one.help), ".") for one in found.faults)
        )
    if found.possible:
        yield Heading("Steps")
        yield from isolating_steps(book, found)
    yield from _alive(found)
    yield from _lost(book, found)
    yield from _watch(book, found)
    if found.possible:
        yield from giving_back(book, found)
    yield from layout_stamp(book, system_of(found.tags[0]))
    yield from _drawn(book, found)


def _drawn(book: Book, found: Isolation) -> Iterator[Block]:
    """The stretch that goes dead, its points and what lets it out, on the sheets that show them."""
    plant = book.surveys[system_of(found.tags[0])].plant
    bleeds = [valve for bleed in found.bleeds for valve in bleed.valves]
    points = [point.tag for point in found.points]
    overlay = isolation_overlay(plant, found.tags[0], found.dead, points, bleeds)
    if found.possible:
        yield from drawn_alone(book, plant, overlay, f"{found.tags[0]}: shut off for work")


def _governs(book: Book, found: Isolation) -> Iterator[str | Link]:
    """The written procedures that make the same parts safe, or shut the very same points for others."""
    points = {*found.stop, *(one.tag for one in found.points)}
    none = True
    for one in book.of_kind(Procedure):
        if has_left(one) or not one.isolates:
            continue
        if set(found.tags) & {bare_id(tag) for tag in one.isolates}:
            said = GOVERNS if one.use is Use.ISOLATION else MADE_SAFE_IN
        elif points == {bare_id(tag) for tag in one.points}:
            said = SAME_POINTS
        else:
            continue
        none = False
        yield from (said, Link(str(one.id), f"{one.id} {one.title}"), ". ")
    if none:
        yield "No written procedure makes this part safe: write one from this sheet and have it reviewed."


def _alive(found: Isolation) -> Iterator[Block]:
    """What stays alive, sorted by what holds it back."""
    alike: dict[tuple[tuple[str, ...], str], list[str]] = {}
    for one in found.blocks:
        asked = f", {one.needed} asked for" if one.needed > 1 else ""
        key = found.holding(one.store.tag), f"{one.count}{asked}"
        alike.setdefault(key, []).append(one.store.tag)
    rows = tuple(
        Row((plates(stores), plates(points) or ("nothing",), (blocks,)))
        for (points, blocks), stores in alike.items()
    )
    columns = tuple(Column(title) for title in ("stays alive", "held back by", "blocks"))
    yield Heading("What stays alive")
    yield Table("Beyond the points", columns, rows, "nothing that reaches here")


def _lost(book: Book, found: Isolation) -> Iterator[Block]:
    lines: list[Cell] = [
        ("Without supply: ", Plate(tag), f" {title_of(book, tag)}.") for tag in found.lost
    ]
    for one in found.blind:
        if one.machines:
            would = "would start and not stop."
            lines.append(
                (Plate(one.tag), " reads the dead part: ", *plates(one.machines), " ", would)
            )
        else:
            lines.append(
                (Plate(one.tag), " reads the dead part: its alarm comes, or says nothing.")
            )
    lines += [(f"{one.level}: ", *cell(book, one.text), ".") for one in found.comes_true]
    yield Heading("What is lost meanwhile")
    yield (
        Bullets(tuple(lines))
        if lines
        else Paragraph(("Nothing that the list of connections knows.",))
    )


def _watch(book: Book, found: Isolation) -> Iterator[Block]:
    lines: list[Cell] = []
    current = any(side.medium is Medium.CURRENT for side in found.sides)
    alike: dict[tuple[str, ...], list[str]] = {}
    for tag, stores in found.watch.items():
        alike.setdefault(stores, []).append(tag)
    for stores, points in alike.items():
        leak = "" if current else " A small leak fills it again."
        behind: Cell = (". Behind it: ", *plates(stores), f".{leak}")
        lines.append(("A single block: ", *_either(points), *behind))
    shut_in = "nothing live is beyond it, but what is shut in there stays: leave it open, or lock it shut."
    lines += [
        (Plate(tag), f" {title_of(book, tag)}: {shut_in}") for tag in found.shut_in if not current
    ]
    inside = "is inside and is emptied with it."
    lines += [(Plate(tag), f" {title_of(book, tag)} {inside}") for tag in found.emptied]
    lines += [(Plate(one.tag), f" blows into {one.side} when it lifts.") for one in found.relieving]
    if lines:
        stop = "Whoever sees a reading rise stops the work."
        yield Heading("Watch while the work lasts")
        yield Bullets(tuple(lines))
        yield Paragraph((stop if current else f"Bleeds stay open. {stop}",))


def _either(tags: Iterable[str]) -> Cell:
    """Tags of which each does the same by itself."""
    runs: list[Run] = []
    for tag in tags:
        runs += [", and so is ", Plate(tag)] if runs else [Plate(tag)]
    return tuple(runs)


def plates(tags: Iterable[str]) -> Cell:
    """Tags in a row."""
    runs: list[Run] = []
    for tag in tags:
        runs += [", ", Plate(tag)] if runs else [Plate(tag)]
    return tuple(runs)
