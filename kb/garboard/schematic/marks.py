"""The marks of an overlay as SVG: what lies under the sheet, and what lies over it."""

from garboard.schematic.overlays import Band, Mark, Overlay
from garboard.schematic.pipe_strokes import node_paths
from garboard.schematic.sheet import Box, Sheet

__all__ = ["draw_bands", "draw_dead", "draw_marks", "frame_of"]

WIDE, INSIDE = 20, 15
"""Width of the casing along a pipe, and of what is inside its edges, in drawing units."""
ROOM = 3
"""Between a symbol and its frame."""


def draw_bands(sheet: Sheet, overlay: Overlay) -> str:
    """What lies under the pipes: casings along the way in danger, and along what is under pressure."""
    drawn = ""
    for band, edge, inside in (
        (Band.CHARGED, 'class="mark" stroke="#15202b" stroke-dasharray="9 6"', 'class="paper"'),
        (Band.DANGER, 'class="mark" stroke="#a3121c"', 'class="tint"'),
    ):
        path = node_paths(sheet, (n for n, each in overlay.bands.items() if each is band))
        if path:
            fill = "#ffffff" if band is Band.CHARGED else "#f8d7d9"
            drawn += (
                f'<path {edge} stroke-width="{WIDE}" d="{path}"/>'
                f'<path {inside} stroke="{fill}" stroke-width="{INSIDE}" d="{path}"/>'
            )
    return drawn


def draw_dead(sheet: Sheet, overlay: Overlay) -> str:
    """Over the pipes: a dead section is wiped out and drawn again, thin and broken."""
    dead = [node for node, each in overlay.bands.items() if each is Band.DEAD]
    path = node_paths(sheet, dead, under=False)
    if not path:
        return ""
    wiped = f'<path class="paper" stroke="#ffffff" stroke-width="11" d="{path}"/>'
    return wiped + f'<path stroke-width="2" stroke-dasharray="4 6" d="{path}"/>'


def draw_marks(sheet: Sheet, overlay: Overlay) -> str:
    """Frames round the parts that an overlay names."""
    return "".join(
        frame_of(overlay.marks[one.tag], one.box)
        for one in sheet.symbols
        if one.tag in overlay.marks
    )


def frame_of(mark: Mark, box: Box) -> str:
    """One frame.

    Args:
        mark: Which.
        box: The room of the symbol.
    """
    return DRAWN[mark](_wider(box, ROOM))


def _rectangle(box: Box, more: str = "", corner: int = 0) -> str:
    round_ = f' rx="{corner}"' if corner else ""
    return (
        f'<rect x="{box.left}" y="{box.top}" width="{box.right - box.left}"'
        f' height="{box.bottom - box.top}"{round_}{more}/>'
    )


def _square(box: Box) -> str:
    return _rectangle(box, ' stroke-width="3"')


def _round(box: Box) -> str:
    return _rectangle(
        box, ' stroke-width="3"', min(box.right - box.left, box.bottom - box.top) // 2
    )


def _cut(box: Box) -> str:
    x, y, right, foot, c = box.left, box.top, box.right, box.bottom, 9
    path = f"M{x + c},{y}H{right - c}L{right},{y + c}V{foot - c}L{right - c},{foot}H{x + c}"
    return f'<path stroke-width="3" d="{path}L{x},{foot - c}V{y + c}Z"/>'


def _double(box: Box) -> str:
    wide = ' stroke-width="2.6"'
    return _rectangle(box, wide) + _rectangle(_wider(box, 5), wide)


def _fault(box: Box) -> str:
    x, y = box.right + 6, box.top - 6
    return (
        _double(box)
        + f'<path stroke-width="4" d="M{x - 14},{y + 14}L{x + 4},{y - 4}M{x - 14},{y - 4}L{x + 4},{y + 14}"/>'
    )


def _new(box: Box) -> str:
    x, y = box.right, box.top
    plus = f'<path stroke-width="4" d="M{x - 9},{y}H{x + 9}M{x},{y - 9}V{y + 9}"/>'
    return _rectangle(box, ' stroke-width="5"') + plus


def _gone(box: Box) -> str:
    struck = f'<path stroke-width="3" d="M{box.left},{box.bottom}L{box.right},{box.top}"/>'
    return _rectangle(box, ' stroke-width="2.4" stroke-dasharray="7 5"') + struck


DRAWN = {
    Mark.SHUT: _square,
    Mark.OPEN: _round,
    Mark.RUNNING: _round,
    Mark.TURNED: _cut,
    Mark.DANGER: _double,
    Mark.FAULT: _fault,
    Mark.NEW: _new,
    Mark.GONE: _gone,
}


def _wider(box: Box, by: int) -> Box:
    return Box(box.left - by, box.top - by, box.right + by, box.bottom + by)
