"""Rigid pipe between what moves and what does not."""

from collections.abc import Iterator

from garboard.records.system import Moves
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import nodes_of
from garboard.systems.medium import Medium
from garboard.systems.net import Row
from garboard.systems.plant import Part, Plant
from garboard.systems.search import way_to
from garboard.systems.shortest import first_ways
from garboard.systems.telling import listed

__all__ = ["find_no_flexible"]

MOST_NAMED = 4
"""Parts of the rigid way that a sentence names."""


def find_no_flexible(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Take the hoses out, and ask whether one rigid piece holds two mounts of which one moves."""
    plant = enquiry.plant
    mounted = [part for part in plant.parts if _mount(plant, part) and part.nodes]
    if plant.medium is Medium.CURRENT or len({_mount(plant, part) for part in mounted}) < 2:
        return
    rows = _rigid(plant)
    piece = _pieces(rows)
    held: dict[int, dict[str, Part]] = {}
    for part in mounted:
        if not part.flexible:
            held.setdefault(piece[part.nodes[0]], {}).setdefault(_mount(plant, part), part)
    for by_mount in held.values():
        for mount, part in by_mount.items():
            others = [other for name, other in by_mount.items() if name != mount]
            if _moves(plant, mount) and others:
                yield _finding(plant, rows, part, others)


def _mount(plant: Plant, part: Part) -> str:
    return plant.components[part.tag].mount or ""


def _moves(plant: Plant, mount: str) -> bool:
    known = (plant.system.mounts or {}).get(mount)
    return known is not None and known.moves is not Moves.NEVER


def _rigid(plant: Plant) -> list[Row]:
    """What is rigidly joined with each node, through any part that carries movement."""
    rows: list[Row] = [[] for _ in range(plant.count)]
    for number, part in enumerate(plant.parts):
        first, *others = part.nodes or (0,)
        for node in () if part.flexible else others:
            rows[first].append((node, number))
            rows[node].append((first, number))
    return rows


def _pieces(rows: list[Row]) -> list[int]:
    """Number of the rigid piece that each node belongs to."""
    piece = [-1] * len(rows)
    for start in range(len(rows)):
        todo = [start] if piece[start] < 0 else []
        while todo:
            node = todo.pop()
            if piece[node] < 0:
                piece[node] = start
                todo += [other for other, _ in rows[node]]
    return piece


def _finding(plant: Plant, rows: list[Row], part: Part, others: list[Part]) -> PathFinding:
    """One moving mount in a rigid piece with others: the nearest of them is named."""
    reached, came = first_ways(rows, part.nodes[:1])
    ways = [
        (way_to(came, node), other) for other in others for node in other.nodes if node in reached
    ]
    way, other = min(ways, key=lambda item: len(item[0]))
    mine, theirs = _mount(plant, part), _mount(plant, other)
    ends = {part.tag, other.tag}
    between = [plant.parts[n].tag for _, _, n in way if plant.parts[n].tag not in ends]
    text = (
        f"{part.tag} stands on {mine}, which moves, and is piped rigidly to {other.tag} on {theirs}"
    )
    if 0 < len(between) <= MOST_NAMED:
        text += f" by way of {listed(dict.fromkeys(between))}"
    return PathFinding(
        code="no-flexible",
        level=Level.DANGER,
        of=about(plant, part.tag),
        text=text,
        help=f"fit a hose or bellows between {mine} and {theirs}, or correct what stands on which",
        endangers=(other.tag,),
        nodes=nodes_of(way, part.nodes[0]),
    )
