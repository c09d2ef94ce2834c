"""A library of graphs, of which the core knows nothing, says the same on random nets and on a large plant."""

import math
import random
from collections.abc import Iterator

import networkx as nx
import pytest

from garboard.systems.current import SOURCE, Circuit, conducting
from garboard.systems.dominators import shared_before
from garboard.systems.net import Net, net_of
from garboard.systems.plant import Part
from garboard.systems.search import fewest_barriers, reach
from tests.systems.large_plants import AIR, BILGE, BOARD, Sort
from tests.systems.pieces import read_piece
from tests.systems.random_plants import draw, put_together

SEEDS = range(300)


def nets() -> Iterator[Net]:
    """Small random nets, and large ones like those of a ship."""
    for seed in SEEDS:
        yield put_together(draw(seed, coupled=seed % 2 == 0)).net
    for sort in (AIR, BILGE, BOARD):
        yield net_of(sort.plant(300))


def directed(net: Net) -> "nx.DiGraph[int]":
    graph: nx.DiGraph[int] = nx.DiGraph()
    graph.add_nodes_from(range(net.count))
    graph.add_edges_from((u, v) for n in range(len(net.parts)) for u, v in net.arcs(n))
    return graph


def test_reach_is_what_the_library_reaches() -> None:
    for net in nets():
        graph, start = directed(net), net.count // 2

        assert reach(net.any_position(), [start]) == nx.descendants(graph, start) | {start}


def test_the_fewest_barriers_are_the_shortest_weighted_ways() -> None:
    def cost(number: int, forwards: bool) -> int | None:  # noqa: FBT001 - as the search calls it
        return 0 if forwards else (1 if net.parts[number].one_way else None)

    for net in nets():
        graph = directed(net)
        nx.set_edge_attributes(graph, 0, "price")
        back = [a for n, p in enumerate(net.parts) if p.one_way for a in net.arcs(n)]
        graph.add_edges_from((v, u, {"price": 1}) for u, v in back if not graph.has_edge(v, u))
        start = net.count // 2

        found = fewest_barriers(net, [start], cost).count

        known = nx.single_source_dijkstra_path_length(graph, start, weight="price")
        assert found == [known.get(node) for node in range(net.count)]


def test_what_every_way_runs_through_is_the_library_s_dominator() -> None:
    for net in nets():
        graph, start = directed(net), net.count // 2
        known = dict(nx.immediate_dominators(graph, start))
        known.pop(start, None)

        found = shared_before([sorted(graph[node]) for node in range(net.count)], start)

        assert {node: one for node, one in enumerate(found) if one is not None} == known


def fused(dice: random.Random) -> tuple[Net, dict[int, float]]:
    """A small net of fuses, some of them large, and a few sources."""
    count = dice.randint(3, 9)
    parts = []
    for number in range(dice.randint(count, 2 * count)):
        u, v = dice.sample(range(count), 2)
        arcs = ((u, v),) if dice.random() < 0.2 else ((u, v), (v, u))
        amperes = float(dice.choice((10, 16, 63, 100, 160)))
        parts.append(Part(f"FU-{number:03}", "fuse", {"in": u, "out": v}, (arcs,), cap=amperes))
    sources = {node: float(dice.choice((40, 100))) for node in dice.sample(range(count), 2)}
    return Net(count, parts, {}), sources


def test_the_most_current_into_a_place_is_the_library_s_maximum_flow() -> None:
    dice = random.Random(3)  # noqa: S311 - the same nets at every run
    for _ in SEEDS:
        net, sources = fused(dice)
        graph: nx.DiGraph[int] = nx.DiGraph()
        graph.add_nodes_from(range(-1, net.count))
        for u, v, number in [*conducting(net), *((SOURCE, n, n) for n in sources)]:
            room = sources[v] if u == SOURCE else net.parts[number].cap
            before = graph.get_edge_data(u, v, {"capacity": 0.0})["capacity"]
            graph.add_edge(u, v, capacity=before + room)
        place = dice.randrange(net.count)

        found = Circuit(net, conducting(net), sources).most_into(place)

        assert math.isclose(found.amperes, nx.maximum_flow_value(graph, SOURCE, place))


@pytest.mark.parametrize("sort", [AIR, BILGE, BOARD], ids=lambda sort: sort.medium)
def test_a_node_is_what_the_library_finds_joined(sort: Sort) -> None:
    """Every end of every run, once by the laying and once as the pieces of a graph of pipes."""
    plant = sort.plant(300)
    system, *_ = read_piece(sort.text(300), sort.code)
    graph: nx.Graph[object] = nx.Graph()
    for pipe in plant.pipes:
        graph.add_edge(pipe.a, pipe.b)

    together = list(nx.connected_components(graph))

    assert len(plant.pipes) == sum(len(run.ends) - 1 for run in system.runs)
    nodes = [
        {node for node, here in enumerate(plant.joints) if ends & set(here)} for ends in together
    ]
    assert all(len(found) == 1 for found in nodes)
    assert len({min(found) for found in nodes}) == len(together)
