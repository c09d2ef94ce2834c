"""The links of a sheet: one over each part, named in words, in the order of flow for who goes by keyboard."""

from html import escape

from garboard.schematic.looks import spoken
from garboard.schematic.overlays import Overlay
from garboard.schematic.sheet import Box, Placed, Sheet
from garboard.systems.plant import Plant

__all__ = ["draw_links", "flow_order"]

LEAST = 40
"""Height and width of what is touched, in drawing units: 45 pixels on a screen."""


def draw_links(sheet: Sheet, plant: Plant, overlay: Overlay | None) -> str:
    """A link over each part; over an overlay only those that it names."""
    place = {tag: number for number, tag in enumerate(flow_order(plant))}
    symbols = sorted(sheet.symbols, key=lambda one: place.get(one.tag, len(place)))
    named = set(overlay.marks) | set(overlay.positions) if overlay else set()
    return "".join(
        _link(one, plant, overlay) for one in symbols if overlay is None or one.tag in named
    )


def flow_order(plant: Plant) -> tuple[str, ...]:
    """Every part, as the connections come to it from their sources on."""
    joints = (joint for pipe in plant.pipes for joint in (pipe.a, pipe.b))
    named = dict.fromkeys(joint.name for joint in joints if joint.name in plant.numbers)
    return tuple(named | dict.fromkeys(plant.numbers))


def _link(one: Placed, plant: Plant, overlay: Overlay | None) -> str:
    words = spoken(plant, one.tag, overlay.positions.get(one.tag, "") if overlay else "")
    if overlay and one.tag in overlay.marks:
        words = f"{words}, {overlay.marks[one.tag]}"
    box = _touched(one.box)
    return (
        f'<a href="find:{escape(one.tag)}" aria-label="{escape(words)}">'
        f'<rect stroke="none" pointer-events="all" x="{box.left}" y="{box.top}" width="{box.right - box.left}"'
        f' height="{box.bottom - box.top}"/></a>'
    )


def _touched(box: Box) -> Box:
    across = max(0, LEAST - (box.right - box.left)) // 2
    along = max(0, LEAST - (box.bottom - box.top)) // 2
    return Box(box.left - across, box.top - along, box.right + across, box.bottom + along)
