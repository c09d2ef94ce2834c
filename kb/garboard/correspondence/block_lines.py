"""Blocks of a page as lines of a pack: the same words, without links and drawings."""

import re
from collections.abc import Callable, Iterable, Iterator

from garboard.correspondence.pack import Line, Sort, fact, point, say
from garboard.views.page import (
    Block,
    Bullets,
    Calculation,
    Facts,
    Heading,
    Message,
    Paragraph,
    Prose,
    Table,
    WorkedLine,
)
from garboard.views.runs import plain

__all__ = ["in_lines", "message_lines"]


NEW_LINE = re.compile(r"\n(?=[ \t]*(?:\n|[-*+] |\d{1,3}[.)] |#|\||>))")
"""Where contributed text starts a new paragraph, row or item."""
SPEAKS_ALONE = ("do", "of", "")
"""Columns whose words need no label in front."""


def in_lines(blocks: Iterable[Block], fill: Callable[[str], str] = str) -> Iterator[Line]:
    """Every word of some blocks; pictures and drawings have none and stay in the handbook.

    Args:
        blocks: Of a page.
        fill: Puts the values that a text quotes in their places.
    """
    heading = ""
    for block in blocks:
        match block:
            case Heading():
                heading = block.text
                yield Line(Sort.HEADING, block.text)
            case Table():
                if block.caption.casefold() != heading.casefold():
                    yield Line(Sort.HEADING, block.caption)
                yield from _rows(block)
            case Calculation():
                yield from _worked(block)
            case Prose():
                yield from _written(fill(block.text))
            case _:
                yield from _in_words(block)


def _in_words(block: Block) -> Iterator[Line]:
    match block:
        case Paragraph():
            yield say(plain(block.runs))
        case Bullets():
            yield from (point(plain(item)) for item in block.items)
        case Facts():
            yield from (fact(label, plain(cell)) for label, cell in block.rows)
        case Message():
            yield from message_lines(block)
        case _:
            return


def message_lines(message: Message) -> Iterator[Line]:
    """A safety message, its parts in order."""
    yield Line(Sort.STRONG, f"{message.word} {message.source}: {plain(message.hazard)}")
    yield say(" ".join(_ended(plain(cell)) for cell in (message.harm, message.avoid)))


def _ended(text: str) -> str:
    return text if text.endswith((".", "!", "?")) else f"{text}."


def _written(text: str) -> Iterator[Line]:
    """Contributed text, paragraph by paragraph, to the letter."""
    for paragraph in NEW_LINE.split(text):
        if paragraph.strip():
            yield Line(Sort.VERBATIM, " ".join(paragraph.split()))


def _rows(table: Table) -> Iterator[Line]:
    if not table.rows:
        yield say(table.empty)
    titles = [column.title for column in table.columns]
    for number, row in enumerate(table.rows, 1):
        cells = tuple(
            (title, plain(cell)) for title, cell in zip(titles, row.cells, strict=True) if cell
        )
        (title, first), *rest = cells or (("", "nothing recorded"),)
        name = first if title in SPEAKS_ALONE else f"{title} {first}"
        if title == "do" and rest and rest[0][0] == "tag":
            name = f"{name} {rest.pop(0)[1]}"
        yield Line(Sort.FIGURES, f"{number}. {name}", cells=tuple(rest))


def _worked(block: Calculation) -> Iterator[Line]:
    yield Line(Sort.HEADING, f"Calculation {block.name}")
    for line in block.lines:
        yield Line(Sort.FACT, _said(line), line.name or line.kind)


def _said(line: WorkedLine) -> str:
    text = line.text.replace("\n", " ")
    result = line.result if line.result and not text.endswith(line.result) else ""
    parts = (text, result, line.range, line.verdict, line.fault)
    words = "; ".join(part for part in parts if part)
    refs = "".join(f" [{number}]" for number in line.sources)
    label = f" ({line.label})" if line.label and line.label not in words else ""
    return f"{words}{label}{refs}".strip()
