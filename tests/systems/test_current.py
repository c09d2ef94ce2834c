"""The most that can flow into a place, against every cut between it and the sources."""

import random
from itertools import combinations
from math import inf

from garboard.systems.current import Circuit, bounds, conducting
from garboard.systems.net import Net, Through
from garboard.systems.plant import Part

NETS = 300


def _net(dice: random.Random) -> tuple[Net, dict[int, float]]:
    """A few nodes with fuses, switches and diodes between them, and one or two sources."""
    count = dice.randint(3, 7)
    parts = []
    for number in range(dice.randint(3, 14)):
        u, v = dice.sample(range(count), 2)
        both = ((u, v), (v, u))
        tag, kind = (
            f"DC-{number}",
            dice.choice(("fuse", "fuse", "fuse", "fuse", "switch", "diode", "cable")),
        )
        if kind == "fuse":
            cap = float(dice.choice((10, 20, 30, 40, 50)))
            parts.append(Part(tag, kind, {}, (both, ()), ("in", "pulled"), cap=cap))
        elif kind == "switch":
            parts.append(Part(tag, kind, {}, (both, ()), ("open", "shut")))
        else:
            parts.append(Part(tag, kind, {}, (((u, v),) if kind == "diode" else both,)))
    sources = {dice.randrange(count): dice.choice((inf, inf, 60.0)) for _ in range(2)}
    return Net(count, parts, {}), sources


def _narrowest_cut(net: Net, arcs: list[Through], sources: dict[int, float], place: int) -> float:
    """The least that any wall of parts between the sources and a place lets through."""
    others = [node for node in range(net.count) if node != place]
    least = inf
    for size in range(len(others) + 1):
        for wall in combinations(others, size):
            inside = set(others) - set(wall) | {place}
            through = [net.parts[n].cap for u, v, n in arcs if u not in inside and v in inside]
            least = min(least, sum(through) + sum(sources.get(node, 0.0) for node in inside))
    return least


def test_the_flow_into_a_place_is_the_narrowest_cut_before_it() -> None:
    dice = random.Random(9)  # noqa: S311 - a dice, not a key
    limited = 0
    for _ in range(NETS):
        net, sources = _net(dice)
        arcs = conducting(net)
        circuit = Circuit(net, arcs, sources)
        most = bounds(net, arcs, sources)
        for place in range(net.count):
            flow = circuit.most_into(place)

            assert flow.amperes == _narrowest_cut(net, arcs, sources, place)
            assert most[place] >= flow.amperes
            if 0 < flow.amperes < inf:
                lets = sum(net.parts[n].cap for n in flow.limits)
                assert lets + sum(sources[node] for node in flow.sources) == flow.amperes
                limited += 1
    assert limited > 300


def test_two_fuses_on_one_bus_let_both_their_currents_into_what_hangs_on_it() -> None:
    fuse = (((0, 1), (1, 0)), ())
    other = (((2, 1), (1, 2)), ())
    parts = [
        Part("DC-FU-001", "fuse", {}, fuse, ("in", "pulled"), cap=100.0),
        Part("DC-FU-002", "fuse", {}, other, ("in", "pulled"), cap=100.0),
    ]
    net = Net(3, parts, {})
    circuit = Circuit(net, conducting(net), {0: inf, 2: inf})

    both, one = circuit.most_into(1), circuit.most_into(1, without=1)

    assert (both.amperes, both.limits) == (200.0, (0, 1))
    assert (one.amperes, one.limits) == (100.0, (0,))


def _fuse(number: int, u: int, v: int, amperes: float = 10.0) -> Part:
    return Part(
        f"DC-FU-{number:03d}", "fuse", {}, (((u, v), (v, u)), ()), ("in", "pulled"), cap=amperes
    )


def test_current_sent_the_short_way_first_makes_room_for_two_longer_ways() -> None:
    source, a, b, place, p, q, m, n = range(8)
    ends = [(source, a), (b, place), (a, p), (p, q), (q, place), (source, m), (m, n), (n, b)]
    fuses = [_fuse(number, u, v) for number, (u, v) in enumerate(ends)]
    net = Net(8, [*fuses, Part("DC-DI-001", "diode", {}, (((a, b),),))], {})

    flow = Circuit(net, conducting(net), {source: inf}).most_into(place)

    assert flow.amperes == 20.0
    assert flow.carrying == tuple(range(8))


def test_what_hangs_behind_a_breaker_is_cleared_without_a_search() -> None:
    bank, bus, branch, load = range(4)
    cable = Part("DC-CW-001", "cable", {}, (((branch, load), (load, branch)),))
    net = Net(4, [_fuse(1, bank, bus, 160.0), _fuse(2, bus, branch, 20.0), cable], {})

    most = bounds(net, conducting(net), {bank: inf})

    assert most == [inf, 160.0, 20.0, 20.0]
