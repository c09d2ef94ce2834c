"""A page for each boundary, and for each system the list of what can be isolated and what cannot."""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.records.pages import PageKind
from garboard.records.system import System
from garboard.systems.boundaries import Boundary, boundaries_of
from garboard.systems.isolation_faults import INCOMPLETE
from garboard.views.draft import Draft
from garboard.views.inline import cell, title_of
from garboard.views.isolation_sheet import isolation_messages, isolation_sheet, plates, verdict_of
from garboard.views.line_trace import layout_stamp
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Row,
    Table,
)

__all__ = [
    "IsolationsOf",
    "is_isolation",
    "isolation_drafts",
    "isolation_key",
    "isolations_in",
    "part_isolation",
]

IsolationsOf = Mapping[str, tuple[Boundary, ...]]
"""By system code."""
FOLDER = "isolate"


def isolations_in(book: Book) -> IsolationsOf:
    """The boundaries of every system that has connections."""
    return {
        code: boundaries_of(one) for code, one in book.surveys.items() if book.systems[code].runs
    }


def isolation_key(boundary: Boundary) -> str:
    """The key of the page of a boundary."""
    return f"{FOLDER}/{boundary.key}"


def is_isolation(key: str) -> bool:
    """Whether a page is that of a boundary.

    >>> is_isolation("isolate/SA-AR-001")
    True
    """
    return key.startswith(f"{FOLDER}/")


def part_isolation(book: Book, isolations: IsolationsOf, tag: str) -> Iterator[Block]:
    """What the page of a part says of its isolation.

    Args:
        book: The book.
        isolations: The boundaries.
        tag: Of the part.
    """
    part = book.components[tag]
    for boundary in isolations.get(part.system, ()):
        if tag in boundary.tags:
            yield Heading("To work on it")
            yield Paragraph(tuple(_leads_to(boundary)))
            if not boundary.isolation.possible:
                yield Bullets(tuple(_why_not(book, boundary)))


def _leads_to(boundary: Boundary) -> Iterator[str | Link]:
    verdict = verdict_of(boundary.isolation)
    yield f"It {verdict}"
    if boundary.isolation.possible:
        yield from (": ", Link(isolation_key(boundary), f"Isolate {boundary.key}"), ".")
    else:
        yield ":"


def _why_not(book: Book, boundary: Boundary) -> Iterator[Cell]:
    for one in boundary.isolation.faults:
        if one.code == INCOMPLETE:
            yield (*cell(book, one.text), ": ", *cell(book, one.help), ".")


def isolation_drafts(book: Book, isolations: IsolationsOf) -> Iterator[Draft]:
    """The list of each system, and a page for each boundary that can be shut off."""
    for code, boundaries in isolations.items():
        system = book.systems[code]
        yield _index(book, system, boundaries)
        for boundary in boundaries:
            if boundary.isolation.possible:
                yield _page(book, system, boundary)


def _page(book: Book, system: System, boundary: Boundary) -> Draft:
    title = f"Isolate {boundary.key} {title_of(book, boundary.key)}"
    draft = Draft(book, isolation_key(boundary), title, str(PageKind.ISOLATION), system=system.code)
    draft.calculated = True
    draft.messages = isolation_messages(book, boundary.isolation)
    others = boundary.tags[1:]
    if others:
        draft.add(Paragraph(("The same points make safe: ", *plates(others), ".")))
    draft.add(*isolation_sheet(book, boundary.isolation))
    return draft


def _index(book: Book, system: System, boundaries: tuple[Boundary, ...]) -> Draft:
    key = f"{system.folder.rsplit('/', 1)[-1]}/isolations"
    draft = Draft(book, key, "Isolations", "isolations", system=system.code)
    draft.calculated = True
    can = [one for one in boundaries if one.isolation.possible]
    cannot = [one for one in boundaries if not one.isolation.possible]
    titles = ("to work on", "shut and locked", "how far", "sheet")
    rows = tuple(Row(tuple(_row(one)), one.key) for one in can)
    draft.add(
        Paragraph(("To work on any of the parts in a row, the same points are shut.",)),
        Table("Can be shut off", tuple(Column(title) for title in titles), rows, "nothing"),
    )
    reasons = tuple(Row((plates(one.tags), _reasons(book, one)), one.key) for one in cannot)
    columns = (Column("part"), Column("why, and what then"))
    draft.add(Table("Cannot be isolated", columns, reasons, "nothing"))
    draft.add(*layout_stamp(book, system.code))
    return draft


def _row(boundary: Boundary) -> Iterator[Cell]:
    found = boundary.isolation
    points = (*found.first, *found.stop, *(one.tag for one in found.points))
    yield plates(boundary.tags)
    yield plates(points) or ("nothing live is joined with it",)
    yield (verdict_of(found),)
    yield (Link(isolation_key(boundary), f"Isolate {boundary.key}"),)


def _reasons(book: Book, boundary: Boundary) -> Cell:
    return tuple(run for line in _why_not(book, boundary) for run in (*line, " "))
