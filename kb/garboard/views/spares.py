"""Spares: what is short, then all of them by the place where they lie, with a column to count in."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.names import system_of
from garboard.records.stock import essential_without_spare, stock_of, ways_home
from garboard.records.vessel import Spare
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Run,
    Strong,
    Table,
)

__all__ = ["spares", "spares_of"]

TITLES = (
    "part number",
    "name",
    "fits",
    "aboard",
    "least",
    "counted",
    "stands",
    "lead time",
    "does as well",
)
NOWHERE = "place not recorded"


def spares(draft: Draft) -> None:
    """The register: short ones, essential parts without any, then place by place."""
    book = draft.book
    kept = book.content.spares.values()
    short = [one for one in kept if stock_of(one).low]
    draft.add(Heading("Short of the least"))
    draft.add(_bullets(tuple(_short(one) for one in short)))
    home = ways_home(book.records.values(), ((item.by, item.to) for item in book.mentions))
    bare = list(essential_without_spare(book.components, kept, home))
    draft.add(Heading("Essential, without a spare and without a way home"))
    draft.add(
        _bullets(tuple((Plate(str(one.tag)), f" {one.name or one.kind}") for one in bare)),
        Paragraph(
            (
                "Printed, this list is for counting: write into the empty column, then into the book.",
            ),
            quiet=True,
        ),
    )
    draft.add(Heading("By place"))
    for place in sorted({_place(one) for one in kept}):
        draft.add(_table(book, place[0].upper() + place[1:], _at(kept, place), counted=True))


def _bullets(items: tuple[Cell, ...]) -> Block:
    return Bullets(items) if items else Paragraph(("None.",))


def _short(one: Spare) -> Cell:
    lead = f", {one.lead_time} to get one" if one.lead_time else ""
    return (
        Link(f"registers/spares#{one.key}", one.key),
        f" {one.name}: ",
        Strong(stock_of(one).words),
        lead,
    )


def _place(one: Spare) -> str:
    return str(one.where_ or NOWHERE)


def _at(kept: Iterable[Spare], place: str) -> list[Spare]:
    return sorted((one for one in kept if _place(one) == place), key=lambda one: str(one.key))


def spares_of(book: Book, system: str) -> Table:
    """The spares that fit something of one system, the short ones first.

    Args:
        book: The book.
        system: Its code.
    """
    found = [
        one
        for one in book.content.spares.values()
        if any(system_of(str(tag)) == system for tag in one.fits)
    ]
    ordered = sorted(found, key=lambda one: (not stock_of(one).low, str(one.key)))
    return _table(book, "Spares for it", ordered, counted=False)


def _table(book: Book, caption: str, found: Iterable[Spare], *, counted: bool) -> Table:
    """A table of spares; only the list by place has rows that links land on, and a column to count in."""
    rows = tuple(
        Row(tuple(_cells(book, one, counted=counted)), str(one.key) if counted else "")
        for one in found
    )
    titles = TITLES if counted else tuple("lies" if one == "counted" else one for one in TITLES)
    columns = tuple(
        Column(one, number=one in ("aboard", "least"), strong=one == "aboard") for one in titles
    )
    return Table(caption, columns, rows, "none kept", across=True)


def _cells(book: Book, one: Spare, *, counted: bool) -> Iterator[Cell]:
    stock = stock_of(one)
    plates: list[Run] = [run for tag in one.fits for run in (Plate(str(tag)), " ")]
    yield (str(one.key),) if counted else (Link(f"registers/spares#{one.key}", str(one.key)),)
    yield (one.name,)
    yield tuple(plates) or ("not recorded",)
    yield (str(one.aboard) if one.aboard is not None else "not counted",)
    yield (str(one.least) if one.least is not None else "not recorded",)
    yield ("____",) if counted else (_place(one),)
    yield (Strong(stock.words),) if stock.low else (stock.words,)
    yield cell(book, one.lead_time) or ("not recorded",)
    yield (", ".join(one.interchange),) if one.interchange else ()
