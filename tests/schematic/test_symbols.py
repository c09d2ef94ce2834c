"""Every kind has a symbol that keeps to its room and shows how its part stands."""

from dataclasses import replace
from pathlib import Path

import pytest

from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.schematic.placed_symbols import draw_placed, turned
from garboard.schematic.shapes import SHAPES
from garboard.schematic.sheet import STEP, Box, Heading
from garboard.schematic.symbol import Look
from garboard.schematic.symbols import LEADS, SYMBOLS, draw_symbol
from garboard.systems.behaviour import BEHAVIOURS, Passes
from tests.mkdocs_garboard.browser import asked
from tests.schematic.pieces import placed

SHUT = [
    kind for kind, one in BEHAVIOURS.items() if one.passes in (Passes.CLOSABLE, Passes.STOP_CHECK)
]
LOCKED = [kind for kind, one in BEHAVIOURS.items() if one.lockable and kind != "fuse"]
"""A fuse is pulled and kept; there is nothing on it to lock."""
LINES_AT_EDGE = 3
"""Half of the thickest outline and of a bar, in drawing units."""


def test_every_kind_has_a_symbol_and_a_room() -> None:
    assert set(SYMBOLS) == set(COMPONENT_KINDS) == set(SHAPES)
    assert set(LEADS) <= set(COMPONENT_KINDS)


@pytest.mark.parametrize("kind", SHUT)
def test_what_is_shut_looks_other_than_what_is_open(kind: str) -> None:
    assert draw_symbol(kind, Look(shut=True)) != draw_symbol(kind, Look())


@pytest.mark.parametrize("kind", LOCKED)
def test_what_is_locked_shows_its_lock_open_and_shut(kind: str) -> None:
    for shut in (False, True):
        assert draw_symbol(kind, Look(shut=shut, locked=True)) != draw_symbol(kind, Look(shut=shut))


@pytest.mark.parametrize("kind", ["three-way valve", "changeover"])
def test_each_position_of_what_is_turned_looks_its_own_way(kind: str) -> None:
    apart = ({"a"}, {"b"}, {"a", "b", "common"})

    drawn = {draw_symbol(kind, Look(closed=frozenset(ports))).strokes for ports in apart}

    assert len(drawn) == 3


def test_every_symbol_keeps_to_its_room(tmp_path: Path) -> None:
    looks = (Look(), Look(shut=True), Look(locked=True), Look(shut=True, locked=True))
    drawn = "".join(
        f'<g id="{kind}/{number}">{draw_symbol(kind, look).strokes}</g>'
        for kind in SYMBOLS
        for number, look in enumerate(looks)
    )
    page = tmp_path / "symbols.html"
    page.write_text(f'<!doctype html><svg viewBox="-100 -100 200 200">{drawn}</svg>', "utf-8")

    script = "var r={};document.querySelectorAll('g').forEach(function(g){var b=g.getBBox();r[g.id]=[b.x,b.y,b.x+b.width,b.y+b.height]});return r"
    boxes = asked(page, script)

    assert len(boxes) == len(SYMBOLS) * len(looks)
    outside = [name for name, box in boxes.items() if not _within(name.split("/")[0], box)]
    assert outside == []


def _within(kind: str, box: list[float]) -> bool:
    """Within the room of the kind and as far as its ports lie."""
    shape = SHAPES[kind]
    wide, high = STEP * shape.half_width, STEP * shape.half_height
    ends = [(STEP * x, STEP * y) for x, y in shape.ports.values()]
    left, right = min(-wide, *(x for x, _ in ends), -1), max(wide, *(x for x, _ in ends), 1)
    top, foot = min(-high, *(y for _, y in ends), -1), max(high, *(y for _, y in ends), 1)
    slack = LINES_AT_EDGE
    return (
        box[0] >= left - slack
        and box[1] >= top - slack
        and box[2] <= right + slack
        and box[3] <= foot + slack
    )


@pytest.mark.parametrize("heading", list(Heading))
def test_a_valve_is_turned_as_its_pipes_end(heading: Heading) -> None:
    quarter = list(Heading).index(heading)
    ends = {
        name: turned((STEP * x, STEP * y), quarter, False)
        for name, (x, y) in SHAPES["check valve"].ports.items()
    }

    drawn = draw_placed(placed("SA-NV-001", "check valve", (100, 100), ends, heading), Look())

    assert (f"rotate({90 * quarter})" in drawn) == bool(quarter)


def test_a_valve_whose_ports_lie_mirrored_is_mirrored() -> None:
    ends = {"common": (-24, 0), "a": (24, 0), "b": (0, -24)}

    drawn = draw_placed(placed("SA-TV-001", "three-way valve", (100, 100), ends), Look())

    assert "scale(1,-1)" in drawn


def test_letters_stay_upright_in_a_symbol_that_is_turned() -> None:
    ends = {"in": (0, -24), "out": (0, 24)}

    drawn = draw_placed(
        placed("SA-SV-001", "solenoid valve", (100, 100), ends, Heading.DOWN), Look()
    )

    turned_part, _, letters = drawn.partition("</g>")
    assert "rotate(90)" in turned_part
    assert "<text" not in turned_part
    assert 'x="116" y="105"' in letters


@pytest.mark.parametrize("heading", [Heading.UP, Heading.LEFT])
def test_an_instrument_is_read_from_its_letters_to_its_number_whichever_way_it_heads(
    heading: Heading,
) -> None:
    gauge = placed("SA-PI-001", "gauge", (100, 100), {"in": (0, 24)}, heading)

    drawn = draw_placed(gauge, Look(letters="PI", number="001"))

    assert (
        drawn.index('y="97"') < drawn.index(">PI<") < drawn.index('y="113"') < drawn.index(">001<")
    )


def test_a_relief_valve_that_blows_free_says_so() -> None:
    assert draw_symbol("relief valve", Look(blows=True)) != draw_symbol("relief valve")


def test_a_bus_is_as_long_as_its_room() -> None:
    bus = replace(placed("DC-BB-001", "bus", (100, 100), {}), box=Box(100, 40, 100, 300))

    assert 'd="M100,40V300"' in draw_placed(bus, Look())
