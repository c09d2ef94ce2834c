"""A small sheet set out by hand, so that drawing is tried without placing."""

from collections.abc import Mapping

from garboard.schematic.shapes import SHAPES
from garboard.schematic.sheet import (
    STEP,
    Box,
    Frame,
    Heading,
    Label,
    Line,
    OffSheet,
    Outlet,
    Placed,
    Point,
    Sheet,
)
from garboard.systems.plant import Plant
from tests.systems.pieces import AIR, plant_of

__all__ = ["HOSTILE", "PIECE", "piece", "placed", "sheet_of"]

HOSTILE = '"><script>alert(1)</script>'
PIECE = f"""{AIR}status: sketch
services:
  start air: {{line: heavy}}
  drain: {{line: dash-dot}}
mounts:
  frame: {{moves: always, why: rubber feet}}
components:
  CP-001: {{kind: compressor, name: Compressor, type: piston, makes: 42 bar(g), mount: frame}}
  HV-001: {{kind: stop valve, name: Filling valve, usual: open, locked: open}}
  AR-001: {{kind: receiver, name: Receiver, rated: 33 bar(g), volume: 250 L}}
  RV-001: {{kind: relief valve, set: 32 bar(g)}}
  PI-001: {{kind: gauge, range: {{from: 0 bar(g), to: 60 bar(g)}}}}
  HV-002: {{kind: drain valve, usual: shut}}
headers:
  filling line: {{service: start air}}
connections:
  - {{run: CP-001 > filling line > HV-001 > AR-001, service: start air}}
  - AR-001.relief > RV-001
  - AR-001.gauge > PI-001
  - {{run: AR-001.drain > HV-002 > bilge, service: drain}}
"""
"""A compressor, a locked valve, a receiver with its relief valve, gauge and drain."""


def piece() -> Plant:
    return plant_of(PIECE)


def placed(
    tag: str, kind: str, at: Point, ports: Mapping[str, Point], heading: Heading = Heading.RIGHT
) -> Placed:
    """A symbol with its middle at a place; ports from its middle, else as its kind has them."""
    shape = SHAPES[kind]
    wide, high = STEP * shape.half_width, STEP * shape.half_height
    if heading in (Heading.UP, Heading.DOWN) and not shape.stands:
        wide, high = high, wide
    x, y = at
    ends = tuple((name, (x + dx, y + dy)) for name, (dx, dy) in ports.items())
    return Placed(tag, kind, at, heading, Box(x - wide, y - high, x + wide, y + high), ends)


def sheet_of(plant: Plant) -> Sheet:
    """The piece on a sheet."""
    across: Mapping[str, Point] = {"in": (-24, 0), "out": (24, 0)}
    down: Mapping[str, Point] = {"in": (0, -24), "out": (0, 24)}
    standing: Mapping[str, Point] = {"in": (0, 24)}
    of_receiver = {"in": (-84, 0), "relief": (-36, -36), "gauge": (36, -36), "drain": (0, 36)}
    symbols = (
        placed("SA-CP-001", "compressor", (84, 240), {"out": (24, 0)}),
        placed("SA-HV-001", "stop valve", (240, 240), across),
        placed("SA-AR-001", "receiver", (420, 240), of_receiver),
        placed("SA-RV-001", "relief valve", (384, 120), standing, Heading.UP),
        placed("SA-PI-001", "gauge", (456, 120), standing, Heading.UP),
        placed("SA-HV-002", "drain valve", (420, 324), down, Heading.DOWN),
    )
    ports = {(one.tag, name): at for one in symbols for name, at in one.ports}
    node = {(part.tag, port): number for part in plant.parts for port, number in part.ports.items()}

    def pipe(
        a: tuple[str, str], b: tuple[str, str] | Point, service: str = "start air", **more: object
    ) -> Line:
        end = ports[b] if isinstance(b[0], str) else b
        return Line(node[a], service, (ports[a], end), **more)  # type: ignore[arg-type]

    lines = (
        pipe(
            ("SA-CP-001", "out"),
            ("SA-HV-001", "in"),
            arrow=((160, 240), Heading.RIGHT),
            hops=((180, 240),),
        ),
        pipe(("SA-HV-001", "out"), ("SA-AR-001", "in"), arrow=((296, 240), Heading.RIGHT)),
        pipe(("SA-AR-001", "relief"), ("SA-RV-001", "in")),
        pipe(("SA-AR-001", "gauge"), ("SA-PI-001", "in"), "sensing"),
        pipe(("SA-AR-001", "drain"), ("SA-HV-002", "in"), "drain"),
        pipe(("SA-HV-002", "out"), (420, 384), "drain"),
    )
    return Sheet(
        number=1,
        of=2,
        system="SA",
        width=600,
        height=432,
        symbols=symbols,
        lines=lines,
        bars=(),
        dots=((200, 240),),
        outlets=(Outlet("bilge", (420, 384), Heading.DOWN, node["SA-HV-002", "out"]),),
        off_sheet=(
            OffSheet(
                "filling line", (200, 300), Heading.DOWN, node["SA-HV-001", "in"], 2, inwards=False
            ),
        ),
        labels=(
            Label(
                "SA-CP-001",
                (84, 190),
                "middle",
                ("CP-001", "makes 42 bar(g)"),
                Box(30, 178, 140, 212),
            ),
            Label(
                "SA-HV-001",
                (240, 204),
                "middle",
                ("HV-001", "locked open"),
                Box(200, 192, 290, 222),
            ),
            Label(
                "SA-AR-001",
                (420, 238),
                "middle",
                ("AR-001", "250 L, 33 bar(g)"),
                Box(350, 222, 500, 256),
            ),
            Label("SA-RV-001", (366, 112), "end", ("RV-001", "32 bar(g)"), Box(290, 100, 366, 132)),
            Label("SA-HV-002", (440, 330), "start", ("HV-002",), Box(440, 316, 500, 332)),
            Label(
                "filling line",
                (150, 262),
                "middle",
                ("filling line",),
                Box(110, 250, 190, 266),
                slanted=True,
            ),
        ),
        frames=(Frame("frame", "moves: rubber feet", Box(48, 168, 140, 276), (52, 294)),),
        crossings=1,
    )
