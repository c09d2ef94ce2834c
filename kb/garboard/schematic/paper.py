"""A drawing for the screen and for paper, where it is cut if its letters would be under 9 points.

A cut says what it leaves out. Two pieces that belong together show a common strip, and in the middle of
it the same match line of dashes and dots, with the number of the piece that it goes on in.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from garboard.schematic.captions import short_tag
from garboard.schematic.cuts import LEAST_WIDE, Room, focus, meet, stretches, within
from garboard.schematic.letters import LINE, width_of
from garboard.schematic.overlays import Overlay
from garboard.schematic.sheet import MOST_HIGH, MOST_WIDE, TEXT, Box, Sheet
from garboard.schematic.svg import DrawnSheet, draw_sheet, drawn_with, foot_of, picture_id
from garboard.schematic.title_block import TitleBlock
from garboard.systems.plant import Plant

__all__ = ["UNDER_TITLE", "UNDER_WORDS", "draw_for_paper"]

UNDER_TITLE = MOST_HIGH * 104 // 160
"""Drawing units from head to foot where the head of its page stands above a drawing."""
UNDER_WORDS = MOST_HIGH * 130 // 160
"""The same where a heading and what it is about do."""
MATCH_LINE = 'stroke-width="1.6" stroke-dasharray="18 5 3 5"'
BESIDE = 4
"""From a match line to its words."""


def draw_for_paper(  # noqa: PLR0913 - what a drawing is of, and where it stands
    sheet: Sheet,
    plant: Plant,
    title: TitleBlock,
    overlay: Overlay | None = None,
    *,
    on_base: bool = False,
    first: int = MOST_HIGH,
) -> tuple[DrawnSheet, ...]:
    """A sheet drawn whole, and after it the pieces that paper shows in its stead.

    Args:
        sheet: What stands on it.
        plant: The system.
        title: What its title block says.
        overlay: What is laid over it.
        on_base: The sheet itself was drawn before on the same page: take it from there.
        first: Drawing units from head to foot that the first sheet of paper holds.

    Returns:
        The whole alone, where its letters are large enough on paper.
    """
    whole = draw_sheet(sheet, plant, title, overlay, on_base=on_base)
    if sheet.width <= MOST_WIDE and whole.height <= first:
        return (whole,)
    for least in (LEAST_WIDE, MOST_WIDE):  # wider, its legend is lower
        pieces = tuple(_pieces(sheet, plant, title, overlay, focus(sheet, overlay, least),
                               whole=whole.name, first=first, on_base=on_base))  # fmt: skip
        if len(pieces) == 1:
            break
    return (replace(whole, only="screen"), *pieces)


def _pieces(  # noqa: PLR0913 - the same, and what of it is kept
    sheet: Sheet,
    plant: Plant,
    title: TitleBlock,
    overlay: Overlay | None,
    kept: Box,
    *,
    whole: str,
    first: int,
    on_base: bool,
) -> Iterator[DrawnSheet]:
    """What is kept of a sheet, as many pieces as paper needs; legend and title block on the last."""
    if overlay:
        overlay = replace(overlay, words=(*overlay.words, *_left_out(sheet, kept)))
    shown = _reduced(sheet, kept)
    across = stretches(kept.left, kept.right, Room(MOST_WIDE), MOST_WIDE)
    wide = max(right - left for left, right in across)
    _, high = foot_of(replace(shown, width=wide), plant, title, overlay, only_marks=on_base)
    along = stretches(kept.top, kept.bottom, Room(first, high - shown.height))
    boxes = [Box(left, top, right, foot) for top, foot in along for left, right in across]
    for number, box in enumerate(boxes, 1):
        name = f"{whole}-part-{number}"
        wide, high = box.right - box.left, box.bottom - box.top
        lines = "".join(_match_lines(sheet, boxes, number - 1))
        picture = (
            f'<svg width="{wide}" height="{high}" viewBox="{box.left} {box.top} {wide} {high}">'
            f'<use href="#{picture_id(sheet, overlay)}"/>{lines}</svg>'
        )
        foot = ""
        if number == len(boxes):
            end = replace(shown, width=wide, height=high)
            foot, high = foot_of(end, plant, title, overlay, only_marks=on_base)
        svg = f'<svg class="schematic-sheet" id="{name}" {drawn_with(wide, high)}>{picture}{foot}</svg>'
        yield DrawnSheet(svg, name, high, only="paper", part=_part(number, len(boxes)))


def _part(number: int, count: int) -> str:
    goes_on = "it goes on at the line of dashes and dots"
    return f"part {number} of {count}: {goes_on}" if count > 1 else ""


def _reduced(sheet: Sheet, kept: Box) -> Sheet:
    """What a legend has to explain, as large as what is kept."""
    lines = (one for one in sheet.lines if any(meet(Box(*at, *at), kept) for at in one.points))
    bars = (one for one in sheet.bars if meet(Box(*one.start, *one.end), kept))
    return replace(
        sheet,
        width=kept.right - kept.left,
        height=kept.bottom - kept.top,
        symbols=tuple(one for one in sheet.symbols if meet(one.box, kept)),
        lines=tuple(lines),
        bars=tuple(bars),
    )


def _left_out(sheet: Sheet, kept: Box) -> Iterator[str]:
    """The parts that are not on what was cut out, and where they are."""
    out = [one.tag for one in sheet.symbols if not within(one.box, kept)]
    if out:
        tags = ", ".join(short_tag(tag, sheet.system) for tag in sorted(out))
        yield f"Cut to fit the paper. Not shown, or in part: {tags}; whole under Layout and parts."


def _match_lines(sheet: Sheet, boxes: list[Box], at: int) -> Iterator[str]:
    """The lines that a piece has in common with those beside it."""
    box = boxes[at]
    for number, other in enumerate(boxes, 1):
        words = f"goes on in part {number}"
        same_column = other.left == box.left and other is not box and meet(box, other)
        if same_column:
            y = _clearest(sheet, box, max(box.top, other.top), min(box.bottom, other.bottom))
            yield f'<path {MATCH_LINE} d="M{box.left},{y}H{box.right}"/>'
            yield _said(sheet, box, y - BESIDE if other.top < box.top else y + LINE, words)
        elif other.top == box.top and other is not box and meet(box, other):
            x = (max(box.left, other.left) + min(box.right, other.right)) // 2
            yield f'<path {MATCH_LINE} d="M{x},{box.top}V{box.bottom}"/>'
            yield _said(sheet, replace(box, left=x + BESIDE), box.top + LINE, words)


def _clearest(sheet: Sheet, box: Box, top: int, foot: int) -> int:
    """The height in a strip at which a match line goes through the fewest symbols and words."""
    taken = [one.box for one in sheet.symbols] + [one.box for one in sheet.labels]
    middle = (top + foot) // 2

    def struck(y: int) -> tuple[int, int]:
        line = Box(box.left, y - 2, box.right, y + 2)
        return sum(meet(line, one) for one in taken), abs(y - middle)

    return min(range(top + LINE, foot - LINE), key=struck)


def _said(sheet: Sheet, box: Box, y: int, words: str) -> str:
    """Words along a match line, the furthest to the left where nothing stands."""
    wide = round(width_of(words, bold=True))
    taken = [one.box for one in sheet.symbols] + [one.box for one in sheet.labels]
    taken += [Box(*_ordered(a, b)) for line in sheet.lines for a, b in pairwise(line.points)]
    taken += [Box(*_ordered(one.start, one.end)) for one in sheet.bars]
    places = (
        Box(x, y - TEXT, x + wide, y + 4) for x in range(box.left + 6, box.right - wide, TEXT)
    )
    spot = next((one for one in places if not any(meet(one, other) for other in taken)), None)
    if spot is None:
        return ""
    return f'<text x="{spot.left}" y="{y}" fill="currentColor" stroke="none" font-weight="700">{words}</text>'


def _ordered(a: tuple[int, int], b: tuple[int, int]) -> tuple[int, int, int, int]:
    return min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])
