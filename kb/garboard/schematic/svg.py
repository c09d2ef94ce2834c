"""A sheet as SVG: pipes, symbols, labels, links, legend, title block, and what an overlay lays over it.

Every stroke and letter has its drawing attributes, so that a plain renderer shows the sheet as it is;
classes only let a theme recolour paper, marks and tint. There is no style and no script in it, and all that
comes from a contributor is escaped. A second drawing of the same sheet on one page takes the first as its
base and adds its marks alone. The bytes depend on the data and nothing else.
"""

from dataclasses import dataclass, replace
from html import escape
from typing import Literal

from garboard.schematic.label_strokes import draw_frames, draw_labels
from garboard.schematic.legend import legend_entries, set_out
from garboard.schematic.links import draw_links
from garboard.schematic.looks import look_of
from garboard.schematic.marks import draw_bands, draw_dead, draw_marks
from garboard.schematic.node_services import services_of
from garboard.schematic.overlays import Overlay
from garboard.schematic.pipe_strokes import draw_pipes
from garboard.schematic.placed_symbols import draw_placed
from garboard.schematic.sheet import TEXT, Placed, Sheet
from garboard.schematic.title_block import TitleBlock, draw_title_block, title_cells
from garboard.systems.plant import Plant

__all__ = [
    "DrawnSheet",
    "Only",
    "as_file",
    "base_id",
    "draw_sheet",
    "drawn_with",
    "foot_of",
    "picture_id",
]

MARGIN = 12
"""Round the foot of a sheet, in drawing units."""
NAMESPACE = "http://www.w3.org/2000/svg"
SHOWN = 8 / 7
"""Pixels to a drawing unit, so that letters are 16 pixels high on a screen."""

Only = Literal["", "screen", "paper"]


@dataclass(frozen=True, slots=True)
class DrawnSheet:
    """A drawn sheet."""

    svg: str
    name: str
    """Its id, and the start of every other id in it."""
    height: int
    """Legend and title block included, in drawing units."""
    only: Only = ""
    """Where it is shown, if not on the screen and on paper alike."""
    part: str = ""
    """Which piece of a drawing it is, for the words above it."""


def base_id(sheet: Sheet) -> str:
    """Id of what a further drawing of the same sheet takes as its base: `sa-1-base`."""
    return f"{sheet.system}-{sheet.number}-base".lower()


def picture_id(sheet: Sheet, overlay: Overlay | None) -> str:
    """Id of a sheet with what is laid over it, without legend and title block."""
    own = f"{sheet.system}-{sheet.number}-{overlay.name}-picture" if overlay else ""
    return own.lower() or base_id(sheet)


def draw_sheet(
    sheet: Sheet,
    plant: Plant,
    title: TitleBlock,
    overlay: Overlay | None = None,
    *,
    on_base: bool = False,
) -> DrawnSheet:
    """Draw a sheet.

    Args:
        sheet: What stands on it.
        plant: The system.
        title: What its title block says.
        overlay: What is laid over it.
        on_base: The sheet itself was drawn before on the same page: take it from there.
    """
    sheet = _with_services(sheet, plant)
    name = f"{sheet.system}-{sheet.number}{f'-{overlay.name}' if overlay else ''}".lower()
    words = overlay.words if overlay else ()
    foot, high = foot_of(sheet, plant, title, overlay, only_marks=on_base)
    under, over = (
        (draw_bands(sheet, overlay), _over(sheet, plant, overlay)) if overlay else ("", "")
    )
    base = base_id(sheet) if on_base or not overlay else f"{name}-base"
    body = f'<use href="#{base}"/>' if on_base else f'<g id="{base}">{_base(sheet, plant)}</g>'
    if overlay:
        body = f'<g id="{picture_id(sheet, overlay)}">{under}{body}{over}</g>'
    said = f"{title.title}, sheet {sheet.number} of {sheet.of}"
    said = f"{overlay.title}: {said}" if overlay else said
    svg = (
        f'<svg class="schematic-sheet" id="{name}" role="graphics-document"'
        f' aria-labelledby="{name}-t" aria-describedby="{name}-d" {drawn_with(sheet.width, high)}>'
        f'<title id="{name}-t">{escape(said)}</title>'
        f'<desc id="{name}-d">{escape(_described(sheet, words))}</desc>'
        f'<rect class="paper" fill="#ffffff" stroke="none" width="{sheet.width}" height="{high}"/>'
        f'<g aria-hidden="true">{body}{foot}</g>'
        f"{draw_links(sheet, plant, overlay)}</svg>"
    )
    return DrawnSheet(svg, name, high)


def drawn_with(wide: int, high: int) -> str:
    """What a drawing of a size [drawing units] is drawn with."""
    return (
        f'viewBox="0 0 {wide} {high}" width="{round(wide * SHOWN)}" height="{round(high * SHOWN)}"'
        f' color="#15202b" font-family="sans-serif" font-size="{TEXT}" fill="none"'
        ' stroke="currentColor" stroke-linejoin="round" stroke-width="1.8"'
    )


def as_file(svg: str) -> str:
    """A drawing as a file of its own, which says what it is written in; in a page it must name no address."""
    return svg.replace("<svg ", f'<svg xmlns="{NAMESPACE}" ', 1)


def foot_of(
    sheet: Sheet, plant: Plant, title: TitleBlock, overlay: Overlay | None, *, only_marks: bool
) -> tuple[str, int]:
    """Legend and title block under the picture, and the whole height."""
    entries = legend_entries(sheet, plant, overlay)
    if only_marks and overlay:
        entries = entries[: len({*overlay.marks.values()}) + len({*overlay.bands.values()})]
    room = sheet.width - 2 * MARGIN
    legend = set_out(entries, room)
    cells = title_cells(title, sheet, overlay.words if overlay else (), room)
    top = sheet.height + MARGIN
    title_top = top + legend.height + (MARGIN if entries else 0)
    foot = (
        f'<path stroke-width="1.2" d="M{MARGIN},{sheet.height}H{sheet.width - MARGIN}"/>'
        + legend.draw((MARGIN, top))
        + draw_title_block(cells, (MARGIN, title_top))
    )
    return foot, title_top + max(cell.top + cell.height for cell in cells) + MARGIN


def _with_services(sheet: Sheet, plant: Plant) -> Sheet:
    """The sheet with a service for every pipe that has one by what it is joined with."""
    known = services_of(plant)
    lines = tuple(replace(one, service=one.service or known[one.node]) for one in sheet.lines)
    bars = tuple(replace(one, service=one.service or known[one.node]) for one in sheet.bars)
    return replace(sheet, lines=lines, bars=bars)


def _described(sheet: Sheet, words: tuple[str, ...]) -> str:
    """What who cannot see it is told first; the same in sentences stands beside the drawing."""
    told = f"{len(sheet.symbols)} parts, each a link to its page, in the order of flow."
    return " ".join((*(f"{line}." for line in words), told))


def _base(sheet: Sheet, plant: Plant) -> str:
    labelled = {one.of for one in sheet.labels if one.lines and one.of.endswith(one.lines[0])}
    symbols = "".join(
        draw_placed(one, look_of(plant, one.tag, numbered=one.tag not in labelled))
        for one in _in_order(sheet.symbols)
    )
    return (
        f"{draw_frames(sheet.frames)}{draw_pipes(sheet, plant.system.services)}{symbols}"
        f"{draw_labels(sheet, plant)}"
    )


def _in_order(symbols: tuple[Placed, ...]) -> list[Placed]:
    """Vessels first: what stands on one covers it."""
    return sorted(symbols, key=lambda one: one.kind not in ("receiver", "tank", "compartment"))


def _over(sheet: Sheet, plant: Plant, overlay: Overlay) -> str:
    """The dead section, the parts that stand otherwise than usual, the frames, and their tags over them."""
    moved = "".join(
        draw_placed(one, look_of(plant, one.tag, overlay.positions[one.tag]), covers=True)
        for one in sheet.symbols
        if one.tag in overlay.positions
    )
    marks = draw_marks(sheet, overlay)
    framed = f'<g class="mark" stroke="#a3121c">{marks}</g>' if marks else ""
    named = draw_labels(sheet, plant, overlay.marks) if marks else ""
    return f"{draw_dead(sheet, overlay)}{moved}{framed}{named}"
