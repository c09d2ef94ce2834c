"""Watch rounds in walking order: of one system, of the vessel, and as a log sheet for paper."""

import re
from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.names import is_identifier
from garboard.records.pages import PageKind
from garboard.records.system import RoundStop, System
from garboard.records.walks import Walk, WalkStop, round_names, walk_of, watches_of
from garboard.views.draft import Draft
from garboard.views.inline import cell, title_of
from garboard.views.log_sheet import LogLine, LogSheet
from garboard.views.page import (
    Block,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Strong,
    Table,
)

__all__ = ["FOLDER", "round_drafts", "rounds"]

FOLDER = "rounds"
TITLES = ("stop", "place", "look or read", "must be", "if not")
MOST_ACROSS = 12
"""Columns to write in that one sheet has room for."""
STORED_NOWHERE = "Readings are written on the printed log sheet; this book keeps none of them."
LAST = "nobody said where it lies on the way: walked last"


def rounds(draft: Draft, system: System) -> None:
    """The watch rounds of one system, each with its log sheet.

    Args:
        draft: The page to fill.
        system: Whose.
    """
    book = draft.book
    shared = round_names(book.systems)
    if not system.rounds:
        draft.add(Paragraph(("No watch round is recorded for this system.",)))
        return
    draft.add(Paragraph((STORED_NOWHERE,), quiet=True))
    for name in system.rounds:
        draft.add(Heading(name.capitalize()))
        if len(shared[name]) > 1:
            whole = Link(round_key(name), f"{name.capitalize()}, the whole vessel")
            draft.add(Paragraph(("Part of a longer walk: ", whole, "."), quiet=True))
        walk = walk_of(name, [system], book.components)
        draft.add(*_walked(book, walk, f"{system.title}: {name}"))


def round_drafts(book: Book) -> Iterator[Draft]:
    """A page for each round that crosses systems.

    Args:
        book: The book.
    """
    order = book.content.vessel.rounds or {}
    for name, codes in round_names(book.systems).items():
        if len(codes) < 2:  # the page of its system has all of it
            continue
        title = name.capitalize()
        draft = Draft(book, round_key(name), title, str(PageKind.WATCH_ROUND))
        systems = [book.systems[code] for code in codes]
        draft.add(Paragraph((STORED_NOWHERE,), quiet=True))
        if name not in order:
            draft.add(Paragraph((Strong(f"The way is not recorded: {_how_to_order(name)}."),)))
        walk = walk_of(name, systems, book.components, order.get(name, ()))
        draft.add(*_walked(book, walk, title))
        draft.add(*_own_pages(systems))
        yield draft


def round_key(name: str) -> str:
    """The key of the page of a round.

    >>> round_key("sea watch")
    'rounds/sea-watch'
    """
    return f"{FOLDER}/{re.sub(r'[^a-z0-9]+', '-', name.casefold()).strip('-') or 'round'}"


def _how_to_order(name: str) -> str:
    return f"system after system; `rounds: {{{name}: [places in walking order]}}` in handbook.yml says it"


def _own_pages(systems: Iterable[System]) -> Iterator[Block]:
    links: list[str | Link] = ["Its parts: "]
    for system in systems:
        links += [", "] if len(links) > 1 else []
        links.append(Link(f"{system.folder.rsplit('/', 1)[-1]}/watch-rounds", system.title))
    yield Paragraph((*links, "."), quiet=True)


def _walked(book: Book, walk: Walk, title: str) -> Iterator[Block]:
    """A round: the sheet for paper first, then the list for the screen, which stands in its stead."""
    every = ", ".join(walk.intervals)
    for times in _across(walk):
        yield LogSheet(
            title, every, times, tuple(_log_line(book, one, times) for one in walk.stops)
        )
    rows = tuple(Row(tuple(_cells(book, one))) for one in walk.stops)
    yield Table(f"Every {every}, in walking order", tuple(map(Column, TITLES)), rows)


def _across(walk: Walk) -> Iterator[tuple[str, ...]]:
    """The columns of each sheet: the times of a day, as many on a sheet as there is room for."""
    each = [watches_of(every) for every in walk.intervals]
    clock = sorted({time for times in each for time in times if time})
    times = tuple(clock) or max(each, key=len, default=("",))
    for first in range(0, len(times), MOST_ACROSS):
        yield times[first : first + MOST_ACROSS]


def _log_line(book: Book, one: WalkStop, times: tuple[str, ...]) -> LogLine:
    own = watches_of(one.every)
    due = tuple("" in own or time in own for time in times)
    stop, _, look, band, if_not = _cells(book, one)
    area, _, spot = one.place.partition(",")
    return LogLine(stop, area.strip(), spot.strip(), look, band, if_not, due)


def _cells(book: Book, one: WalkStop) -> Iterator[Cell]:
    stop = one.stop
    yield (Plate(stop.tag),) if stop.tag else (one.system,)
    place = cell(book, one.place) or ("not recorded",)
    yield place if one.on_the_way else (*place, f" ({LAST})")
    yield _looked_at(book, stop)
    yield _band(book, stop)
    yield _if_not(book, stop)


def _looked_at(book: Book, stop: RoundStop) -> Cell:
    """What is looked at, what is read, or the name of the part where neither is said."""
    look, read = cell(book, stop.look), cell(book, stop.read)
    between = (": ",) if look and read else ()
    return (*look, *between, *read) or ((title_of(book, stop.tag),) if stop.tag else ())


def _band(book: Book, stop: RoundStop) -> Cell:
    """From where to where, in values that the book keeps; then the words beside them."""
    low, high = cell(book, stop.low), cell(book, stop.high)
    if low and high:
        band: Cell = (*low, " to ", *high)
    elif low:
        band = ("not below ", *low)
    else:
        band = ("not above ", *high) if high else ()
    words = cell(book, stop.within)
    return (*band, ", ", *words) if band and words else band or words


def _if_not(book: Book, stop: RoundStop) -> Cell:
    """What is done if it is not so; an id alone brings its title."""
    said = str(stop.if_not or "")
    if is_identifier(said) and said in book.records:
        return (Link(said, f"{said} {title_of(book, said)}"),)
    return cell(book, said)
