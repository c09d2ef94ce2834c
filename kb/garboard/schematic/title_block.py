"""The title block of a sheet: what it is, which sheet, how far it was reviewed and traced, what it is not."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from html import escape

from garboard.schematic.letters import LINE, broken, width_of
from garboard.schematic.sheet import Point, Sheet

__all__ = ["Cell", "TitleBlock", "draw_title_block", "title_cells"]

NOT_SO = "Diagram only: not to scale, not a pipe route."
EDGE = 8
"""Between the words and the rule, in drawing units."""


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What the title block of a drawing says, as plain words."""

    title: str
    """`Starting air: schematic`"""
    review: str = ""
    """The review state, where nothing beside the drawing says it."""
    trace: str = ""
    """When the lines were last traced, or that they never were."""


@dataclass(frozen=True, slots=True)
class Cell:
    """One ruled cell."""

    left: int
    top: int
    width: int
    height: int
    lines: tuple[str, ...]
    bold: bool


def title_cells(
    block: TitleBlock, sheet: Sheet, more: tuple[str, ...], width: int
) -> tuple[Cell, ...]:
    """A title block set out in rows of cells, as few as it goes, its corner at 0, 0.

    Args:
        block: What it says.
        sheet: The sheet it stands on.
        more: Lines of an overlay, each a row of its own.
        width: Of the block, in drawing units.
    """
    tags = f"all tags {sheet.system}- unless written in full"
    which = f"{sheet.system}, sheet {sheet.number} of {sheet.of}; {tags}"
    said = ((block.title, True), (block.review, True), (which, False), (block.trace, False))
    rows: list[list[tuple[str, bool]]] = [[]]
    for words, bold in (*said, (NOT_SO, False)):
        if words:
            if rows[-1] and _wide([*rows[-1], (words, bold)]) > width:
                rows.append([])
            rows[-1].append((words, bold))
    cells: list[Cell] = []
    for row in (*rows[:1], *([(words, False)] for words in more), *rows[1:]):
        cells += _set(row, cells[-1].top + cells[-1].height if cells else 0, width)
    return tuple(cells)


def _wide(row: Iterable[tuple[str, bool]]) -> float:
    return sum(width_of(words, bold=bold) + 2 * EDGE for words, bold in row)


def _set(row: Sequence[tuple[str, bool]], top: int, width: int) -> list[Cell]:
    """One row: each cell as wide as its words, the last as wide as what is left."""
    cells: list[Cell] = []
    left = 0
    for number, (words, bold) in enumerate(row):
        last = number == len(row) - 1
        wide = width - left if last else round(width_of(words, bold=bold)) + 2 * EDGE
        lines = tuple(broken(words, wide - 2 * EDGE, bold=bold)) if last else (words,)
        cells.append(Cell(left, top, wide, LINE * len(lines) + EDGE, lines, bold))
        left += wide
    high = max(cell.height for cell in cells)
    return [replace(cell, height=high) for cell in cells]


def draw_title_block(cells: Iterable[Cell], corner: Point) -> str:
    """A title block, its corner at a place."""
    return "".join(_drawn(cell, corner) for cell in cells)


def _drawn(cell: Cell, corner: Point) -> str:
    x, y = corner[0] + cell.left, corner[1] + cell.top
    box = f'<rect x="{x}" y="{y}" width="{cell.width}" height="{cell.height}"/>'
    weight = ' font-weight="700"' if cell.bold else ""
    return box + "".join(
        f'<text x="{x + EDGE}" y="{y + LINE * (number + 1)}" fill="currentColor" stroke="none"{weight}>'
        f"{escape(words)}</text>"
        for number, words in enumerate(cell.lines)
    )
