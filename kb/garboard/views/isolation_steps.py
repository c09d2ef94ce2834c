"""The steps of an isolation: stop, shut, let out, prove; and how everything is given back."""

from collections.abc import Iterator
from dataclasses import replace

from garboard.book import Book
from garboard.records.component_kinds import SWITCHES, position_word
from garboard.systems.isolation import Isolation, Point
from garboard.systems.isolation_order import charging_points, order_of_shutting
from garboard.systems.medium import Medium
from garboard.views.inline import cell, title_of
from garboard.views.page import (
    Block,
    Cell,
    Column,
    Heading,
    Paragraph,
    Plate,
    Row,
    Step,
    Steps,
    Table,
)

__all__ = ["giving_back", "isolating_steps"]

SECOND = "A second person checks every step alone, afterwards."
NO_KEY = "Where no lock fits, take away what starts it and keep it on you."
LEFT_OPEN = "Slowly, standing aside, and left open until the work is done."
COLUMNS = ("do", "stands", "seen by two")
LOCK = "lock no. ______"
FUSE = "fuse"
CHARGING_FIRST = "What charges is switched off before its battery, and put back after it."
GIVES_CURRENT = {
    "alternator": "Stop what drives it, or switch its field off, lock and tag",
    "charger": "Switch off where it is fed, lock and tag",
}
"""How a source of current is stopped, that has no handle of its own."""
RELEASED = "If it does not read 0: a bleed is blocked or a point leaks. Stop and call."
STILL_FED = "If it does not read 0: something still feeds it. Stop and call."
ZERO_TWICE = "0, and still 0 after a wait"


def isolating_steps(book: Book, found: Isolation) -> Iterator[Block]:
    """The steps in their order, numbered through; what holds for all of a group is said once before it."""
    current = any(side.medium is Medium.CURRENT for side in found.sides)
    if_it_stays = STILL_FED if current else RELEASED
    groups = (
        ("Stop", NO_KEY, [_stop(book, tag) for tag in (*found.first, *found.stop)]),
        ("Shut and lock", _no_lock(found), [_shut(book, one) for one in order_of_shutting(found)]),
        ("Let it out", LEFT_OPEN, list(_let_out(book, found))),
        ("Prove it", if_it_stays, list(_prove(book, found, current=current))),
    )
    yield Paragraph((SECOND,))
    number = 0
    for title, said, made in groups:
        if made:
            numbered = [replace(step, number=str(at)) for at, step in enumerate(made, number + 1)]
            number += len(made)
            yield Heading(title, 3)
            yield Paragraph((said,))
            yield Steps(tuple(numbered))
    for side in found.sides:
        if not side.shown:
            yield Paragraph((f"Nothing shows {side.name} at zero: do not take it for proved.",))


def _item(book: Book, tag: str) -> Cell:
    return (Plate(tag), " ", title_of(book, tag))


def _place(book: Book, tag: str) -> str:
    part = book.components.get(tag)
    return str(part.place or "") if part else ""


def _note(book: Book, tag: str) -> Cell:
    """What else must be known of a part, as its author wrote it."""
    part = book.components.get(tag)
    return ("Note: ", *cell(book, part.note), ".") if part and part.note else ()


def _stop(book: Book, tag: str) -> Step:
    part = book.components.get(tag)
    current = GIVES_CURRENT.get(part.kind if part else "")
    return Step(
        number="",
        do=current or "Stop, lock and tag",
        item=_item(book, tag),
        place=_place(book, tag),
        note=_note(book, tag),
        see=(f"{'gives no current' if current else 'stands'}, {LOCK}",),
    )


def _shut(book: Book, point: Point) -> Step:
    position = position_word(point.kind, point.position)
    verbs = {
        "pulled": "Pull, keep and tag",
        "shut": "Shut, lock and tag",
        "off": "Switch off, lock and tag",
    }
    do = verbs.get(position, "Turn, lock and tag")
    see: Cell = (f"{position}, {LOCK}",)
    if point.kind == FUSE:
        see = ("out, and on the person who works",)
    return Step(
        number="",
        do=do,
        item=_item(book, point.tag),
        place=_place(book, point.tag),
        to="" if position in verbs else position,
        note=_note(book, point.tag),
        see=see,
    )


def _no_lock(found: Isolation) -> str:
    """What is done where no lock fits, of the kinds of points that there are."""
    kinds = {one.kind for one in found.points}
    said = []
    if 0 < len(charging_points(found)) < len(found.points):
        said.append(CHARGING_FIRST)
    if kinds - {FUSE, *SWITCHES}:
        said.append("Where no lock fits a valve, take its handle off and keep it on you.")
    if kinds & set(SWITCHES):
        said.append("Where no lock fits a switch, pull the fuse before it or part its cable.")
    if FUSE in kinds:
        said.append("Never pull a fuse while current flows.")
    return " ".join(said)


def _let_out(book: Book, found: Isolation) -> Iterator[Step]:
    for tag in dict.fromkeys(tag for bleed in found.bleeds for tag in bleed.valves):
        worked = "It is what is worked on: believe the gauge alone." if tag in found.tags else ""
        yield Step(
            number="",
            do="Open",
            item=_item(book, tag),
            place=_place(book, tag),
            see=("open",),
            note=(worked,) if worked else (),
        )


def _prove(book: Book, found: Isolation, *, current: bool) -> Iterator[Step]:
    for tag in found.shows:
        yield Step(
            number="", do="Read", item=_item(book, tag), place=_place(book, tag), see=(ZERO_TWICE,)
        )
    if current:
        yield Step("", "Prove the meter on something that is live", (), see=("its voltage",))
        work = "Measure where the work is: each pole to the other, and each to the hull"
        yield Step("", work, (), see=("0 V",))
        yield Step("", "Prove the meter again", (), see=("its voltage",))


def giving_back(book: Book, found: Isolation) -> Iterator[Block]:
    """Everything in reverse, each with the position it ends in and a blank for the two who saw it."""
    worked = set(found.tags)
    bleeds = dict.fromkeys(tag for bleed in found.bleeds for tag in reversed(bleed.valves))
    rows = [(_shut_again(book, tag), tag, _usual(book, tag)) for tag in bleeds if tag not in worked]
    points = reversed(order_of_shutting(found))
    rows += [(_opened(one), one.tag, position_word(one.kind, one.usual)) for one in points]
    rows += [
        ("Take the lock off, last of all:", tag, "ready") for tag in (*found.stop, *found.first)
    ]
    yield Heading("Giving back")
    yield Paragraph(
        (
            "Everything refitted, tools counted, everybody away from it. Whoever put a lock on takes it off."
            " What was worked on stands as is usual.",
        )
    )
    yield Table(
        "In this order",
        tuple(Column(title, strong=title == "stands") for title in COLUMNS),
        tuple(
            Row(((do, " ", *_item(book, tag)), (usual,), ("____ ____",))) for do, tag, usual in rows
        ),
        "nothing was moved",
    )


def _opened(point: Point) -> str:
    usual = position_word(point.kind, point.usual)
    if point.usual == point.position:
        return f"Take the lock off, and leave {usual}:"
    verbs = {"open": "Take the lock off, and open slowly:", "in": "Put back"}
    return verbs.get(usual, f"Take the lock off, and put to {usual}:")


def _shut_again(book: Book, tag: str) -> str:
    return "Shut" if _usual(book, tag) == "shut" else f"Leave {_usual(book, tag)}:"


def _usual(book: Book, tag: str) -> str:
    part = book.components.get(tag)
    return str(part.usual or "shut") if part else "shut"
