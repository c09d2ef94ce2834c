"""How a system is laid out: drawn, its parts with their places, its connections as sentences."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.component import QUANTITIES, Component
from garboard.records.system import End, Joins, Run, System
from garboard.views.draft import Draft
from garboard.views.inline import cell, shown
from garboard.views.line_trace import layout_stamp
from garboard.views.page import Bullets, Cell, Column, Heading, Plate, Row, Table
from garboard.views.page import Run as RunOf
from garboard.views.positions import board_word
from garboard.views.schematics import drawn_blocks

__all__ = ["layout", "numbers_of", "run_sentence"]


def layout(draft: Draft, system: System) -> None:
    """The drawing and what is told of it, parts, named lines, connections."""
    book = draft.book
    draft.add(*drawn_blocks(book, system))
    parts = [part for part in book.components.values() if part.system == system.code]
    draft.add(
        Table(
            "Parts",
            tuple(Column(title) for title in ("tag", "name", "kind", "place", "usual", "numbers")),
            tuple(Row(_part_row(book, part), part.tag) for part in parts),
        )
    )
    if system.headers:
        draft.add(_headers(book, system))
    draft.add(Heading("How they are joined"))
    draft.add(Bullets(tuple(run_sentence(run) for run in system.runs)))
    draft.add(*layout_stamp(book, system.code))


def _headers(book: Book, system: System) -> Table:
    """Pipes, ducts and bars that have a name."""
    rows = []
    for name, header in (system.headers or {}).items():
        size = header.size.shown if header.size else "not recorded"
        cells: tuple[Cell, ...] = (
            cell(book, header.tag or "none"),
            (name,),
            cell(book, header.service),
            (size,),
            cell(book, header.place),
        )
        rows.append(Row(cells, str(header.tag or "")))
    columns = tuple(Column(title) for title in ("tag", "name", "service", "size", "place"))
    return Table("Named lines", columns, tuple(rows))


def _part_row(book: Book, part: Component) -> tuple[Cell, ...]:
    usual = board_word(part, part.usual)
    locked = f", locked {board_word(part, part.locked)}" if part.locked else ""
    return (
        (Plate(part.tag),),
        (part.name or "not recorded",),
        (part.kind,),
        (part.place or "not recorded",),
        (f"{usual}{locked}",) if usual or locked else (),
        tuple(numbers_of(book, part)),
    )


def numbers_of(book: Book, part: Component) -> Iterator[RunOf]:
    """Every number recorded of a part: `rated 33 bar(g), set 30 bar(g)`."""
    first = True
    for name in (*QUANTITIES, "range.to"):
        address = f"{part.tag}.{name}"
        if address in book.values:
            yield f"{'' if first else ', '}{_word(name)} "
            yield shown(book, address)
            first = False


def _word(name: str) -> str:
    return "scale to" if name == "range.to" else name.replace("_", " ")


def run_sentence(run: Run) -> Cell:
    """A run as a sentence: from one part through others to the last."""
    first, *middle, last = run.ends
    runs: list[RunOf] = ["From ", *_end(first)]
    for place, end in enumerate(middle):
        runs += [" through " if place == 0 else ", ", *_end(end)]
    runs += [" to ", *_end(last)]
    if run.service:
        runs.append(f" ({run.service})")
    return (*runs, ".")


def _end(end: End) -> Iterator[RunOf]:
    if end.joins is Joins.PART:
        yield Plate(end.name)
        if end.port:
            yield f" ({end.port})"
    elif end.joins is Joins.HEADER:
        yield f"the {end.name}"
    else:
        yield end.name
