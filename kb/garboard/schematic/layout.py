"""Lay a system out on sheets: place, route, label; where a close drawing has no room, a wider one."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from garboard.calc.value import Given
from garboard.records.component import Component
from garboard.schematic.captions import NAMED_INSIDE, VESSELS, caption_of, inside_words, short_tag
from garboard.schematic.frames import framed
from garboard.schematic.labels import Labelling
from garboard.schematic.nets import OFF_SHEET, OUTLET, Circuit, Piece, circuit_of, sheet_circuit
from garboard.schematic.pipes import bars_of, dots_of, lines_of
from garboard.schematic.place import Place
from garboard.schematic.placing import place_circuit
from garboard.schematic.route import Routes, route
from garboard.schematic.sheet import (
    COLUMN,
    MOST_WIDE,
    ROW,
    STEP,
    Box,
    OffSheet,
    Outlet,
    Placed,
    Sheet,
)
from garboard.schematic.shift import shifted
from garboard.schematic.split import sheets_of
from garboard.schematic.stand import Captions
from garboard.schematic.trunk import is_upright
from garboard.systems.plant import Plant

__all__ = ["lay_out_sheets"]

SPREADS = (0, -1, 1, 2, 4, 8)
"""Steps more between neighbours, one after the other, until everything has room; a step less where all
that is wrong is that the sheet is too wide."""
NO_WAY = 100
"""How much worse a pipe without a way is than a label without room."""
WIDE = (MOST_WIDE // STEP - 2, 88, 76, 64)
"""Steps between the outermost symbols of a sheet, the next where words made it wider after all."""
HERE = -1
"""Sheet of a named end that goes on at another end of its own sheet."""
AIR = 8
"""Drawing units between the words inside a symbol and its outline, on each side."""


def lay_out_sheets(plant: Plant, components: Mapping[str, Component]) -> tuple[Sheet, ...]:
    """The sheets of the drawing of a system.

    Args:
        plant: The system.
        components: What is recorded of its parts, by full tag.

    Returns:
        None for a system without connections, else one or more.
    """
    circuit = circuit_of(plant, components)
    if not circuit.pieces:
        return ()
    captions = {piece: _caption(plant, components, piece) for piece in circuit.pieces}
    before: Mapping[Piece, int] = {}
    laid: tuple[Sheet, ...] = ()
    for wide in WIDE:
        sheets = sheets_of(circuit, captions, wide)
        if sheets == before:
            continue
        before = sheets
        laid = _sheets(plant, components, circuit, dict(captions), sheets)
        if all(sheet.width <= MOST_WIDE for sheet in laid):
            break
    return laid


def _sheets(
    plant: Plant,
    components: Mapping[str, Component],
    circuit: Circuit,
    captions: dict[Piece, tuple[str, ...]],
    sheets: Mapping[Piece, int],
) -> tuple[Sheet, ...]:
    """The sheets, each with what stands on it."""
    count = max(sheets.values())
    laid = []
    for number in range(1, count + 1):
        own = sheet_circuit(circuit, sheets, number)
        for piece in own.pieces:
            captions.setdefault(piece, _caption(plant, components, piece))
        sheet = _lay(plant, components, own, captions)
        ends = tuple(
            replace(end, sheet=number) if end.sheet == HERE else end for end in sheet.off_sheet
        )
        laid.append(replace(sheet, number=number, of=count, off_sheet=ends))
    return tuple(laid)


def _caption(plant: Plant, components: Mapping[str, Component], piece: Piece) -> tuple[str, ...]:
    """The words beside a piece; none where they stand inside it."""
    if piece.part:
        component = components[piece.name]
        return () if component.kind in VESSELS else caption_of(plant, component)
    way = "from" if piece.ends[0].leaves else "to"
    on = f"{way} sheet {piece.sheet}" if piece.sheet else ""
    name = short_tag(piece.name, plant.system.code)
    return tuple(line for line in (name, on) if line)


def _lay(
    plant: Plant, components: Mapping[str, Component], circuit: Circuit, captions: Captions
) -> Sheet:
    """One sheet, as close as it goes."""
    pins = {
        name: (header.from_, header.to)
        for name, header in (plant.system.headers or {}).items()
        if header.from_ and header.to
    }
    found: list[tuple[int, Sheet]] = []
    for spread in SPREADS:
        if spread < 0 and (found[0][0] or found[0][1].width <= MOST_WIDE):
            continue
        place = place_circuit(circuit, captions, pins, spread)
        routes = route(place)
        sheet, missed = _drawn(plant, components, place, routes, captions)
        missed += NO_WAY * len(routes.missed)
        found.append((missed, sheet))
        if not missed and (spread < 0 or sheet.width <= MOST_WIDE):
            break
        if spread < 0:
            break
    return min(found, key=lambda one: (one[0], max(one[1].width, MOST_WIDE)))[1]


def _drawn(
    plant: Plant,
    components: Mapping[str, Component],
    place: Place,
    routes: Routes,
    captions: Captions,
) -> tuple[Sheet, int]:
    """A sheet in drawing units, and how many of its labels had no room."""
    lines = lines_of(place, routes)
    labelling = Labelling(place, lines)
    for piece in place.circuit.pieces:
        if piece.part and piece.kind in (*VESSELS, *NAMED_INSIDE):
            box = labelling.box_of(piece)
            wide = box.right - box.left - 2 * AIR
            words = inside_words(plant, components[piece.name], wide)
            if words:
                labelling.inside(piece, words)
    for piece in sorted(place.circuit.pieces, key=is_upright):
        if captions[piece]:
            labelling.beside(piece, captions[piece])
    frames = tuple(framed(plant, labelling))
    _name_headers(plant, place, routes, labelling)
    goes_on = tuple(_goes_on(place, routes))
    for end in goes_on:
        x, y = end.at
        name = short_tag(end.name, plant.system.code)
        labelling.along_pipe(end.name, f"goes on at {name}", [(x, x, y)])
    sheet = Sheet(
        number=1,
        of=1,
        system=plant.system.code,
        width=0,
        height=0,
        symbols=tuple(_symbols(place)),
        lines=lines,
        bars=bars_of(place),
        dots=dots_of(place, routes),
        outlets=tuple(_outlets(place)),
        off_sheet=(*_off_sheet(place), *goes_on),
        labels=tuple(labelling.labels),
        frames=frames,
        crossings=len(routes.crossings),
    )
    return shifted(sheet), labelling.missed


def _name_headers(plant: Plant, place: Place, routes: Routes, labelling: Labelling) -> None:
    """The name of every header, along its bar or its longest pipe."""
    for net in place.circuit.nets:
        for name in net.headers:
            named = _header_words(plant, name)
            if net in place.bars:
                labelling.along_bar(name, named, *place.bars[net])
            else:
                runs = [
                    (min(one[0], other[0]), max(one[0], other[0]), one[1])
                    for path in routes.paths[net]
                    for one, other in zip(path.points, path.points[1:], strict=False)
                    if one[1] == other[1]
                ]
                units = [(a * STEP, b * STEP, y * STEP) for a, b, y in _joined(runs)]
                if units:
                    labelling.along_pipe(name, named, units)


def _joined(runs: list[tuple[int, int, int]]) -> list[tuple[int, int, int]]:
    """Unit steps of pipe across, joined to straight runs."""
    found: list[tuple[int, int, int]] = []
    for left, right, y in sorted(set(runs), key=lambda run: (run[2], run[0])):
        if found and found[-1][1] == left and found[-1][2] == y:
            found[-1] = (found[-1][0], right, y)
        else:
            found.append((left, right, y))
    return found


def _header_words(plant: Plant, name: str) -> str:
    """The name of a header with its size."""
    header = (plant.system.headers or {}).get(name)
    size = header.size.shown if header and isinstance(header.size, Given) else ""
    return f"{name} {size}".strip()


def _symbols(place: Place) -> Iterator[Placed]:
    for piece in place.circuit.pieces:
        if piece.part:
            x, y = place.at[piece]
            ports = [(end.port, place.ports[end][0]) for end in piece.ends]
            yield Placed(
                tag=piece.name,
                kind=piece.kind,
                at=(x * STEP, y * STEP),
                heading=place.headings[piece],
                box=Box(*(number * STEP for number in place.boxes[piece])),
                ports=tuple((port, (x * STEP, y * STEP)) for port, (x, y) in ports),
                pinned=piece.pin is not None,
                draft=(round(x / COLUMN, 2), round(y / ROW, 2)),
            )


def _outlets(place: Place) -> Iterator[Outlet]:
    node_of = {end.piece: net.node for net in place.circuit.nets for end in net.ends}
    for piece in place.circuit.pieces:
        if piece.kind == OUTLET:
            (x, y), _ = place.ports[piece.ends[0]]
            heading = place.headings[piece]
            yield Outlet(piece.name, (x * STEP, y * STEP), heading, node_of[piece])


def _off_sheet(place: Place) -> Iterator[OffSheet]:
    node_of = {end.piece: net.node for net in place.circuit.nets for end in net.ends}
    for piece in place.circuit.pieces:
        if piece.kind == OFF_SHEET:
            (x, y), _ = place.ports[piece.ends[0]]
            yield OffSheet(
                name=piece.name,
                at=(x * STEP, y * STEP),
                heading=place.headings[piece],
                node=node_of[piece],
                sheet=piece.sheet,
                inwards=piece.ends[0].leaves,
            )


def _goes_on(place: Place, routes: Routes) -> Iterator[OffSheet]:
    """A pipe that no way was found for is two named ends: a drawing must not leave it out."""
    for net in place.circuit.nets:
        missed = [end for end in net.ends if end in routes.missed]
        if not missed:
            continue
        stays = next(end for end in (*place.trunk.trunk_ends[net], *net.ends) if end not in missed)
        name = net.headers[0] if net.headers else stays.piece.name
        for end in (stays, *missed):
            (x, y), way = place.ports[end]
            at = (x * STEP, y * STEP)
            yield OffSheet(name, at, way, net.node, HERE, inwards=not end.leaves)
