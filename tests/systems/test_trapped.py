"""What stays shut in: against every movement tried, and by what a section is named."""

import random
from itertools import product

import pytest

from garboard.systems.finding import Level, PathFinding
from garboard.systems.net import Net
from garboard.systems.plant import Part
from garboard.systems.trapping import let_out
from tests.systems.pieces import short, survey_of

NETS = 400
Position = dict[int, int]


def _net(dice: random.Random, *, turning: bool) -> tuple[Net, set[int]]:
    count = dice.randint(3, 7)
    parts = []
    kinds = ["stop valve", "stop valve", "check valve", "hose", "regulator", "plug"]
    for number in range(dice.randint(2, 8)):
        u, v = dice.sample(range(count), 2)
        both = ((u, v), (v, u))
        tag, kind = f"SA-{number}", dice.choice([*kinds, *["three-way valve"] * turning])
        if kind == "three-way valve":
            w = dice.randrange(count)
            parts.append(Part(tag, kind, {}, (both, ((u, w), (w, u))), ("a", "b")))
        elif kind in ("stop valve", "plug"):
            parts.append(Part(tag, kind, {}, (both, ()), ("open", "shut")))
        elif kind == "hose":
            parts.append(Part(tag, kind, {}, (both,)))
        else:
            carries = kind != "regulator"
            parts.append(Part(tag, kind, {}, (((u, v),),), carries_relief=carries))
    return Net(count, parts, {}), {dice.randrange(count)}


def _in_air(net: Net, at: Position, air: set[int]) -> set[int]:
    """The nodes that reach the open air in one state."""
    good, grown = set(air), True
    while grown:
        arcs = [
            arc
            for n, part in enumerate(net.parts)
            if part.carries_relief
            for arc in part.positions[at[n]]
        ]
        more = {u for u, v in arcs if v in good} - good
        good |= more
        grown = bool(more)
    return good


def _let_out_by_trying(net: Net, air: set[int]) -> set[int]:
    """Every valve shut and every turned one anywhere: what one movement brings to the open air."""
    found = set(range(net.count))
    turned = [n for n, part in enumerate(net.parts) if part.coupled]
    for positions in product(range(2), repeat=len(turned)):
        at = {n: len(part.positions) - 1 for n, part in enumerate(net.parts)}
        at |= dict(zip(turned, positions, strict=True))
        here = _in_air(net, at, air)
        for n, part in enumerate(net.parts):
            if part.movable and part.kind != "plug":
                for to in range(len(part.positions)):
                    here |= _in_air(net, at | {n: to}, air)
        found &= here
    return found


def test_what_one_movement_lets_out_is_found_by_trying_every_movement() -> None:
    dice = random.Random(5)  # noqa: S311 - a dice, not a key
    stays = 0
    for _ in range(NETS):
        net, air = _net(dice, turning=False)

        assert let_out(net, air) == _let_out_by_trying(net, air)
        stays += net.count - len(let_out(net, air))
    assert stays > 400


def test_with_three_way_valves_nothing_is_called_let_out_that_is_not() -> None:
    dice = random.Random(6)  # noqa: S311 - a dice, not a key
    over_cautious = turned = 0
    for _ in range(NETS):
        net, air = _net(dice, turning=True)

        assert let_out(net, air) <= _let_out_by_trying(net, air)
        over_cautious += let_out(net, air) != _let_out_by_trying(net, air)
        turned += bool(net.coupled)
    assert turned > 150
    assert over_cautious < NETS / 10


FILLED = """
system: SA
medium: {medium}
status: building
services: {{signals: {{medium: direct current}}, oil: {{medium: oil}}}}
components:
  SH-001: {{kind: pressure source, makes: 9 bar(g)}}
  HV-001: {{kind: stop valve}}
  {more}
headers: {{line: {{}}}}
connections:
  - SH-001 > HV-001 > {run}
"""


def trapped(more: str, run: str, medium: str = "air") -> dict[str, PathFinding]:
    """The trapped sections behind one stop valve, by short name."""
    text = FILLED.format(more=more.replace("\n", "\n  "), run=run, medium=medium)
    found = survey_of(text).findings
    by_name = {short(one.about): one for one in found if one.code == "trapped-pressure"}
    by_name.pop("SH-001", None)
    return by_name


GAUGE = "PI-001: {kind: gauge, range: {from: 0 bar(g), to: 16 bar(g)}}\n"
USER = "US-001: {kind: consumer}\n"


@pytest.mark.parametrize(
    ("more", "run", "name", "level"),
    [
        (GAUGE, "PI-001", "PI-001", Level.NOTE),
        (GAUGE, "line > PI-001", "line", Level.WARNING),
        (USER + GAUGE, "US-001\n  - US-001 > PI-001", "PI-001", Level.WARNING),
        (USER, "US-001", "US-001", Level.WARNING),
        (USER + "HS-001: {kind: hose}\n", "line > HS-001 > US-001", "HS-001", Level.DANGER),
        (
            "RV-001: {kind: relief valve, set: 9 bar(g)}\n" + USER,
            "US-001 > RV-001",
            "RV-001",
            Level.WARNING,
        ),
        ("HV-002: {kind: stop valve}\n" + USER, "HV-002 > US-001", "HV-001", Level.WARNING),
    ],
)
def test_a_section_is_named_after_what_it_would_hurt_most_to_open(
    more: str, run: str, name: str, level: Level
) -> None:
    found = trapped(more, run)

    assert found[name].level == level
    assert "SA-HV-001" in found[name].line.shut


def test_turning_a_three_way_valve_to_the_open_air_is_one_movement() -> None:
    turns = "TV-001: {kind: three-way valve}\nHS-001: {kind: hose}\n"

    to_air = trapped(turns, "HS-001 > TV-001.common\n  - TV-001.a > bilge\n  - TV-001.b > deck")
    to_none = trapped(
        turns + USER, "HS-001 > TV-001.common\n  - TV-001.a > US-001\n  - TV-001.b > line"
    )

    assert to_air == {}
    assert to_none["HS-001"].level == Level.DANGER


def test_each_service_has_the_limit_of_its_own_medium() -> None:
    as_oil = FILLED.replace(
        "- SH-001 > HV-001 > {run}", "- {{run: SH-001 > HV-001 > {run}, service: oil}}"
    )
    text = as_oil.format(more=USER, run="US-001", medium="air")

    assert [one.code for one in survey_of(text).findings if one.code == "trapped-pressure"] == []
    assert trapped(USER, "US-001")["US-001"].level == Level.WARNING
    assert trapped(USER, "US-001", "oil") == {}
