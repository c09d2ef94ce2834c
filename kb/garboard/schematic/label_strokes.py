"""Words on a sheet: tags in bold with their values under them, names along pipes, frames of what moves."""

from collections.abc import Collection, Iterable
from html import escape

from garboard.schematic.letters import LINE
from garboard.schematic.sheet import Frame, Label, Sheet
from garboard.systems.plant import Plant

__all__ = ["LABEL_LINE", "draw_frames", "draw_labels"]

LABEL_LINE = LINE - 2
"""From the tag to its value, in drawing units."""


def draw_labels(sheet: Sheet, plant: Plant, of: Collection[str] = ()) -> str:
    """Every label of a sheet; the tag of a part is bold, what it does or holds is not.

    Args:
        sheet: The sheet.
        plant: The system.
        of: Only the labels beside these parts, on paper of their own, over whatever is there.
    """
    code = f"{plant.system.code}-"
    words = "".join(
        (_paper(one) if of else "")
        + _label(
            one, bold=one.of in plant.numbers and one.lines[:1] == (one.of.removeprefix(code),)
        )
        for one in sheet.labels
        if not of or (one.of in of and not _within(one, sheet))
    )
    return f'<g fill="currentColor" stroke="none">{words}</g>'


def _paper(one: Label) -> str:
    box = one.box
    return (
        f'<rect class="paper" fill="#ffffff" x="{box.left}" y="{box.top}" width="{box.right - box.left}"'
        f' height="{box.bottom - box.top - 4}"/>'
    )


def _within(one: Label, sheet: Sheet) -> bool:
    """Whether a label stands inside a symbol, where no frame reaches it."""
    x, y = (one.box.left + one.box.right) / 2, (one.box.top + one.box.bottom) / 2
    boxes = (symbol.box for symbol in sheet.symbols if symbol.tag == one.of)
    return any(box.left < x < box.right and box.top < y < box.bottom for box in boxes)


def _label(one: Label, *, bold: bool) -> str:
    x, y = one.at
    anchor = f' text-anchor="{one.anchor}"' if one.anchor != "start" else ""
    turned = f' transform="rotate(-90,{x},{y})"' if one.upright else ""
    drawn = ""
    for number, words in enumerate(one.lines):
        weight = ' font-weight="700"' if bold and not one.slanted and number == 0 else ""
        drawn += f'<text x="{x}" y="{y + LABEL_LINE * number}"{anchor}{weight}{turned}>{escape(words)}</text>'
    return drawn


def draw_frames(frames: Iterable[Frame]) -> str:
    """Dotted frames round what stands on a mount that moves, each with the reason."""
    return "".join(_frame(one) for one in frames)


def _frame(one: Frame) -> str:
    box = one.box
    return (
        f'<rect x="{box.left}" y="{box.top}" width="{box.right - box.left}" height="{box.bottom - box.top}"'
        ' stroke-width="1.6" stroke-linecap="round" stroke-dasharray="1 6"/>'
        f'<text x="{one.label_at[0]}" y="{one.label_at[1]}" fill="currentColor" stroke="none">'
        f"{escape(one.words)}</text>"
    )
