"""A system as drawn: its sheets, what the checks found laid over them, its line-ups, and the same in words."""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Severity
from garboard.records.inspection import Result, Test
from garboard.records.system import OperatingState, System
from garboard.schematic.overlays import Overlay, finding_overlay, state_overlay
from garboard.schematic.sheet import Sheet
from garboard.schematic.svg import draw_sheet
from garboard.schematic.title_block import TitleBlock
from garboard.schematic.words import believed
from garboard.systems.finding import PathFinding
from garboard.systems.plant import Plant
from garboard.views.inline import cell, day
from garboard.views.page import Block, Bullets, Cell, Link, Paragraph, Schematic, Strong

__all__ = [
    "believed_blocks",
    "drawn_alone",
    "finding_blocks",
    "sheet_blocks",
    "shown_on",
    "state_blocks",
]

ID = re.compile(r'\sid="([^"]*)"')
LINE_TRACE = "line trace"
NOT_TRACED = "Lines: no line trace on record."
NONE_FOUND = "The checks of the layout found nothing. That does not mean that it is safe."


def sheet_blocks(book: Book, system: System) -> Iterator[Schematic]:
    """Every sheet of a system, as it usually stands."""
    plant = book.surveys[system.code].plant
    for sheet in book.sheets[system.code]:
        yield _drawn(book, plant, sheet, f"{system.title}: schematic")


def finding_blocks(book: Book, system: System) -> Iterator[Block]:
    """What the checks found, the gravest first, each with its valves and its way on the drawing."""
    surveyed = book.surveys[system.code]
    for found in surveyed.findings:
        yield Paragraph(tuple(_finding(book, found)))
        if found.level.severity is not Severity.NOTE:
            overlay = finding_overlay(surveyed.plant, found)
            yield from _laid_over(book, surveyed.plant, overlay, f"{found.about}: {found.code}")
    if not surveyed.findings and surveyed.plant.pipes:
        yield Paragraph((NONE_FOUND,))


def _finding(book: Book, found: PathFinding) -> Iterator[str | Strong | Link]:
    yield Strong(f"{found.level}: ".upper())
    yield from cell(book, found.text)  # type: ignore[misc]
    yield ". "
    yield from cell(book, f"{found.help[:1].upper()}{found.help[1:]}")  # type: ignore[misc]
    yield f". Rule {found.code}, finding {found.fingerprint}."


def state_blocks(
    book: Book, system: System, name: str, state: OperatingState
) -> Iterator[Schematic]:
    """One operating state, on the sheets it concerns."""
    plant = book.surveys[system.code].plant
    overlay = state_overlay(plant, name, state)
    yield from _laid_over(book, plant, overlay, f"{system.title}: lined up, {name}")


def believed_blocks(book: Book, system: System) -> Iterator[Block]:
    """What the tool believes, for a person to hold against the pipes."""
    plant = book.surveys[system.code].plant
    said = tuple(_sentence(book, words) for words in believed(plant))
    if said:
        yield Paragraph(("Right only if the connections are. Hold it against the pipes.",))
        yield Bullets(said)


def shown_on(book: Book, tag: str, key: str) -> Cell:
    """Links to the sheets that show a part.

    Args:
        book: The book.
        tag: The part.
        key: Key of the page that the sheets of its system stand on.
    """
    found: list[str | Link] = []
    for sheet in book.sheets.get(tag[:2], ()):
        if any(one.tag == tag for one in sheet.symbols):
            words = f"sheet {sheet.number} of {sheet.of}"
            found += [*([", "] if found else []), Link(f"{key}#{_name(sheet)}", words)]
    return tuple(found)


def drawn_alone(book: Book, plant: Plant, overlay: Overlay, caption: str) -> Iterator[Schematic]:
    """An overlay on a page that the sheets themselves do not stand on."""
    for sheet in _concerned(book, plant, overlay):
        yield _drawn(book, plant, sheet, caption, overlay, on_base=False)


def _laid_over(book: Book, plant: Plant, overlay: Overlay, caption: str) -> Iterator[Schematic]:
    """An overlay on a page that the sheets stand on."""
    for sheet in _concerned(book, plant, overlay):
        yield _drawn(book, plant, sheet, caption, overlay)


def _concerned(book: Book, plant: Plant, overlay: Overlay) -> Iterator[Sheet]:
    """The sheets that show something of an overlay."""
    for sheet in book.sheets[plant.system.code]:
        nodes = {one.node for one in sheet.lines} | {one.node for one in sheet.bars}
        tags = {one.tag for one in sheet.symbols}
        if tags & set(overlay.marks) or nodes & set(overlay.bands):
            yield sheet


def _drawn(  # noqa: PLR0913 - all of it is said once here
    book: Book,
    plant: Plant,
    sheet: Sheet,
    title: str,
    overlay: Overlay | None = None,
    *,
    on_base: bool = True,
) -> Schematic:
    block = TitleBlock(title, trace=_traced(book, plant.system))
    drawn = draw_sheet(sheet, plant, block, overlay, on_base=on_base and overlay is not None)
    ids = tuple(ID.findall(drawn.svg))
    of = f", sheet {sheet.number} of {sheet.of}" if sheet.of > 1 else ""
    return Schematic(f"{title}{of}", drawn.svg, ids)


def _traced(book: Book, system: System) -> str:
    """When the lines were last traced, in words for the title block."""
    traces = [
        one
        for one in book.of_kind(Test)
        if one.system == system.code
        and one.what == LINE_TRACE
        and one.on
        and one.result is Result.PASS
    ]
    last = max(traces, key=lambda one: (str(one.on), str(one.id)), default=None)
    return f"Lines last traced: {last.id}, {day(last.on)}." if last else NOT_TRACED


def _name(sheet: Sheet) -> str:
    return f"{sheet.system}-{sheet.number}".lower()


def _sentence(book: Book, words: str) -> Cell:
    return (*cell(book, words), ".")
