"""The title block of a sheet: what it is, which sheet, how far it was reviewed and traced, what it is not."""

from dataclasses import dataclass
from html import escape

from garboard.schematic.letters import LINE, broken
from garboard.schematic.sheet import Point, Sheet

__all__ = ["Row", "TitleBlock", "draw_title_block", "title_rows"]

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
class Row:
    """One ruled row."""

    lines: tuple[str, ...]
    bold: bool

    @property
    def height(self) -> int:
        """In drawing units."""
        return LINE * len(self.lines) + EDGE


def title_rows(
    block: TitleBlock, sheet: Sheet, more: tuple[str, ...], width: int
) -> tuple[Row, ...]:
    """The rows of a title block.

    Args:
        block: What it says.
        sheet: The sheet it stands on.
        more: Lines of an overlay.
        width: Of the block, in drawing units.
    """
    tags = f"All tags {sheet.system}- unless written in full."
    which = f"{sheet.system}, sheet {sheet.number} of {sheet.of}. {tags}"
    rows = ((block.title, True), (block.review, True), *((words, False) for words in more))
    said = (*rows, (which, False), (block.trace, False), (NOT_SO, False))
    return tuple(
        Row(tuple(broken(words, width - 2 * EDGE, bold=bold)), bold)
        for words, bold in said
        if words
    )


def draw_title_block(rows: tuple[Row, ...], corner: Point, width: int) -> str:
    """A title block, ruled into rows.

    Args:
        rows: What it says.
        corner: Left and top of it.
        width: In drawing units.
    """
    left, y = corner
    drawn: list[str] = []
    for row in rows:
        drawn.append(
            f'<path stroke-width="1.8" d="M{left},{y}H{left + width}V{y + row.height}H{left}Z"/>'
        )
        weight = ' font-weight="700"' if row.bold else ""
        for number, words in enumerate(row.lines):
            at = y + LINE * (number + 1)
            drawn.append(
                f'<text x="{left + EDGE}" y="{at}" fill="currentColor" stroke="none"{weight}>'
                f"{escape(words)}</text>"
            )
        y += row.height
    return "".join(drawn)
