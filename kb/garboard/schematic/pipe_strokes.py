"""Pipes as SVG: paths that run on from their ports into the symbols, hops, junctions, arrows of flow."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import pairwise

from garboard.records.system import Service
from garboard.schematic.line_styles import LineStyle, line_style
from garboard.schematic.shapes import SHAPES
from garboard.schematic.sheet import Heading, Line, OffSheet, Outlet, Placed, Point, Sheet
from garboard.schematic.symbols import LEADS

__all__ = ["TURNS", "draw_pipes", "node_paths"]

HOP = 6
"""Radius of a hop over another pipe, in drawing units."""
TURNS: Mapping[Heading, int] = {
    Heading.RIGHT: 0,
    Heading.DOWN: 90,
    Heading.LEFT: 180,
    Heading.UP: 270,
}
"""Degrees, as SVG turns: with the hands of a clock."""
AHEAD: Mapping[Heading, Point] = {
    Heading.RIGHT: (1, 0),
    Heading.DOWN: (0, 1),
    Heading.LEFT: (-1, 0),
    Heading.UP: (0, -1),
}
BAR_WIDTH = 7


def draw_pipes(sheet: Sheet, services: Mapping[str, Service] | None) -> str:
    """Every pipe, bar, junction, arrow and open end of a sheet."""
    leads = _leads(sheet.symbols)
    styled: dict[LineStyle, list[str]] = {}
    for one in sheet.lines:
        styled.setdefault(line_style(one.service, services), []).append(_path(one, leads))
    drawn = [f'<path {style.attributes} d="{"".join(paths)}"/>' for style, paths in styled.items()]
    bars = "".join(f"M{_at(one.start)}L{_at(one.end)}" for one in sheet.bars)
    if bars:
        drawn.append(f'<path stroke-width="{BAR_WIDTH}" stroke-linecap="square" d="{bars}"/>')
    if any(one.arrow for one in sheet.lines):
        drawn.append(f'<path fill="currentColor" stroke="none" d="{_arrows(sheet.lines)}"/>')
    drawn += [
        f'<circle cx="{x}" cy="{y}" r="4.5" fill="currentColor" stroke="none"/>'
        for x, y in sheet.dots
    ]
    drawn += [_outlet(one) for one in sheet.outlets]
    drawn += [_off_sheet(one) for one in sheet.off_sheet]
    return "".join(drawn)


def node_paths(sheet: Sheet, nodes: Iterable[int], *, under: bool = True) -> str:
    """All that is drawn of some nodes, as one path without hops.

    Args:
        sheet: The sheet.
        nodes: Which.
        under: It lies under the symbols, so that it may run on into a vessel.
    """
    wanted = set(nodes)
    vessels = {one.tag for one in sheet.symbols if SHAPES[one.kind].vessel}
    leads = _leads(one for one in sheet.symbols if under or one.tag not in vessels)
    paths = [_path(one, leads, hops=False) for one in sheet.lines if one.node in wanted]
    paths += [f"M{_at(one.start)}L{_at(one.end)}" for one in sheet.bars if one.node in wanted]
    return "".join(paths)


def _leads(symbols: Iterable[Placed]) -> dict[Point, Point]:
    """By port: where a pipe that ends there ends as drawn."""
    return {
        at: _inwards(one, at, LEADS.get(one.kind, 0))
        for one in symbols
        for _, at in one.ports
        if LEADS.get(one.kind, 0)
    }


def _inwards(symbol: Placed, at: Point, far: float) -> Point:
    """A point further in from a port, at right angles to the side of its room that it lies nearest."""
    x, y = at
    box = symbol.box
    gaps = (
        (abs(x - box.left), (1, 0)),
        (abs(x - box.right), (-1, 0)),
        (abs(y - box.top), (0, 1)),
        (abs(y - box.bottom), (0, -1)),
    )
    gap, (dx, dy) = min(gaps)
    beyond = gap if not (box.left <= x <= box.right and box.top <= y <= box.bottom) else 0
    step = round(far + beyond)
    middle = symbol.at
    most = abs(middle[0] - x) if dx else abs(middle[1] - y)
    return x + dx * min(step, most), y + dy * min(step, most)


def _path(one: Line, leads: Mapping[Point, Point], *, hops: bool = True) -> str:
    first, last = one.points[0], one.points[-1]
    points = list(one.points)
    if first in leads:
        points.insert(0, leads[first])
    if last in leads:
        points.append(leads[last])
    over = set(one.hops) if hops else set()
    pieces = [f"M{_at(points[0])}"]
    for here, there in pairwise(points):
        if here != there:
            pieces += _piece(here, there, over)
    return "".join(pieces)


def _piece(here: Point, there: Point, over: set[Point]) -> Iterator[str]:
    """A straight piece, over each pipe that it hops."""
    (x, y), (to_x, to_y) = here, there
    along = 1 if (to_x, to_y) > (x, y) else -1
    if y == to_y:
        crossed = sorted(at for at in over if at[1] == y and min(x, to_x) < at[0] < max(x, to_x))
        for at, _ in crossed[::along]:
            sweep = 1 if along > 0 else 0
            yield f"H{at - along * HOP}A{HOP},{HOP} 0 0 {sweep} {at + along * HOP},{y}"
        yield f"H{to_x}"
        return
    crossed = sorted(at for at in over if at[0] == x and min(y, to_y) < at[1] < max(y, to_y))
    for _, at in crossed[::along]:
        sweep = 1 if along > 0 else 0
        yield f"V{at - along * HOP}A{HOP},{HOP} 0 0 {sweep} {x},{at + along * HOP}"
    yield f"V{to_y}"


def _arrows(lines: Iterable[Line]) -> str:
    return "".join(_arrow(*one.arrow) for one in lines if one.arrow)


def _arrow(at: Point, heading: Heading) -> str:
    """A filled arrowhead about a point.

    >>> _arrow((10, 20), Heading.DOWN)
    'M10,28L16,14H4Z'
    """
    (x, y), (dx, dy) = at, AHEAD[heading]
    tip = f"M{x + 8 * dx},{y + 8 * dy}"
    side = f"L{x - 6 * dx + 6 * dy},{y - 6 * dy + 6 * dx}"
    return tip + side + (f"V{y - 6 * dx}Z" if dx else f"H{x - 6 * dy}Z")


def _outlet(one: Outlet) -> str:
    """The open end of a pipe: a funnel, its mouth towards what comes."""
    (x, y), turn = one.at, TURNS[one.heading] - 90
    turned = f" rotate({turn})" if turn else ""
    return (
        f'<path class="o" fill="#ffffff" stroke-width="1.8" d="M-9,0H9L4,9H-4Z"'
        f' transform="translate({x},{y}){turned}"/>'
    )


def _off_sheet(one: OffSheet) -> str:
    """A pennant that points where the flow goes, with the number of the other sheet in it."""
    (x, y), turn = one.at, TURNS[one.heading]
    turned = f" rotate({turn})" if turn else ""
    shape = "M24,-11H7L0,0L7,11H24Z" if one.inwards else "M0,-11H17L24,0L17,11H0Z"
    ahead, off = AHEAD[one.heading], 14 if one.inwards else 10
    number = (
        f'<text x="{x + off * ahead[0]}" y="{y + off * ahead[1] + 5}" text-anchor="middle"'
        f' fill="currentColor" stroke="none" font-weight="700">{one.sheet}</text>'
    )
    return (
        f'<path class="o" fill="#ffffff" stroke-width="1.8" d="{shape}"'
        f' transform="translate({x},{y}){turned}"/>{number if one.sheet else ""}'
    )


def _at(point: Point) -> str:
    return f"{point[0]},{point[1]}"
