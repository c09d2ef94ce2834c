"""A system as drawn: its sheets, what the checks found laid over them, its line-ups, and the same in words."""

import re
from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.errors import Severity
from garboard.records.system import OperatingState, System
from garboard.schematic.overlays import Overlay, finding_overlay, state_overlay
from garboard.schematic.paper import UNDER_TITLE, UNDER_WORDS, draw_for_paper
from garboard.schematic.sheet import MOST_HIGH, Sheet
from garboard.schematic.svg import DrawnSheet
from garboard.schematic.title_block import TitleBlock
from garboard.schematic.words import believed
from garboard.systems.finding import PathFinding
from garboard.systems.plant import Plant
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.line_trace import trace_words
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Heading,
    Link,
    Paragraph,
    Schematic,
    Strong,
)

__all__ = [
    "ID",
    "believed_blocks",
    "drawn_alone",
    "drawn_blocks",
    "finding_blocks",
    "line_up_sheets",
    "sheet_blocks",
    "shown_on",
    "state_blocks",
]

ID = re.compile(r'\sid="([^"]*)"')
MOST_DRAWN = 8
"""Findings that are drawn on the page of a system, so that it stays small."""
NONE_FOUND = "The checks of the layout found nothing. That does not mean that it is safe."


def drawn_blocks(book: Book, system: System) -> Iterator[Block]:
    """The sheets of a system, what the tool believes of it, and what the checks found laid over them."""
    if not system.runs or system.code not in book.surveys:
        return
    yield from sheet_blocks(book, system)
    yield Heading("What the layout is believed to do")
    yield from believed_blocks(book, system)
    yield Heading("What the checks of the layout found")
    yield from finding_blocks(book, system)
    yield Heading("Parts and lines")


def sheet_blocks(book: Book, system: System) -> Iterator[Schematic]:
    """Every sheet of a system, as it usually stands."""
    plant = book.surveys[system.code].plant
    for sheet in book.sheets[system.code]:
        title = f"{system.title}: schematic"
        block = TitleBlock(title, trace=_trace_line(book, system.code))
        first = UNDER_TITLE if sheet.number == 1 else MOST_HIGH
        yield from _blocks(sheet, title, draw_for_paper(sheet, plant, block, first=first))


def finding_blocks(book: Book, system: System) -> Iterator[Block]:
    """What the checks found, the gravest first, each with its valves and its way on the drawing."""
    surveyed = book.surveys[system.code]
    grave = [one for one in surveyed.findings if one.level.severity is not Severity.NOTE]
    if not surveyed.findings:
        yield Paragraph((NONE_FOUND,))
    if len(grave) > MOST_DRAWN:
        yield Paragraph((f"Drawn are the {MOST_DRAWN} gravest of {len(grave)}.",))
    for found in surveyed.findings:
        yield Paragraph(_finding(book, found))
        if found in grave[:MOST_DRAWN]:
            overlay = finding_overlay(surveyed.plant, found)
            yield from _laid_over(book, surveyed.plant, overlay, f"{found.about}: {found.code}")


def _finding(book: Book, found: PathFinding) -> Cell:
    help_ = f"{found.help[:1].upper()}{found.help[1:]}"
    rule = Link(f"manual/rules/{found.code}", found.code)
    return (
        Strong(f"Found, {found.level}: "),
        *cell(book, found.text),
        ". ",
        *cell(book, help_),
        ". Rule ",
        rule,
        f", fingerprint {found.fingerprint}.",
    )


def line_up_sheets(draft: Draft, system: System) -> None:
    """Fill a page with the sheets as they usually stand, then with each operating state laid over them."""
    book = draft.book
    draft.add(*sheet_blocks(book, system))
    for name, state in (system.operating_states or {}).items():
        draft.add(Heading(f"Lined up: {name}"))
        if state.note:
            draft.add(Paragraph(cell(book, state.note)))
        draft.add(*state_blocks(book, system, name, state))


def state_blocks(
    book: Book, system: System, name: str, state: OperatingState
) -> Iterator[Schematic]:
    """One operating state on the sheets it concerns; the sheets themselves stand before it on the page."""
    plant = book.surveys[system.code].plant
    overlay = state_overlay(plant, name, state)
    yield from _laid_over(book, plant, overlay, f"{system.title}: lined up, {name}")


def believed_blocks(book: Book, system: System) -> Iterator[Block]:
    """What the tool believes, for a person to hold against the plant."""
    plant = book.surveys[system.code].plant
    said = tuple(_sentence(book, words) for words in believed(plant))
    yield Paragraph(("Right only if the connections are. Hold it against the plant.",))
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
        yield from _drawn(book, plant, sheet, caption, overlay, on_base=False)


def _laid_over(book: Book, plant: Plant, overlay: Overlay, caption: str) -> Iterator[Schematic]:
    """An overlay on a page that the sheets stand on."""
    for sheet in _concerned(book, plant, overlay):
        yield from _drawn(book, plant, sheet, caption, overlay)


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
    overlay: Overlay,
    *,
    on_base: bool = True,
) -> Iterator[Schematic]:
    block = TitleBlock(title, trace=_trace_line(book, plant.system.code))
    first = UNDER_WORDS if on_base else MOST_HIGH
    drawn = draw_for_paper(sheet, plant, block, overlay, on_base=on_base, first=first)
    return _blocks(sheet, title, drawn)


def _blocks(sheet: Sheet, title: str, drawn: Iterable[DrawnSheet]) -> Iterator[Schematic]:
    of = f", sheet {sheet.number} of {sheet.of}" if sheet.of > 1 else ""
    for one in drawn:
        part = f", {one.part}" if one.part else ""
        yield Schematic(f"{title}{of}{part}", one.svg, tuple(ID.findall(one.svg)), one.only)


def _trace_line(book: Book, system: str) -> str:
    words = trace_words(book, system)
    return f"{words[0].upper()}{words[1:]}."


def _name(sheet: Sheet) -> str:
    return f"{sheet.system}-{sheet.number}".lower()


def _sentence(book: Book, words: str) -> Cell:
    return (*cell(book, words), ".")
