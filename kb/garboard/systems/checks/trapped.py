"""Pressure that valves can shut in and that no single movement lets out."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from garboard.errors import Where
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import LineUp
from garboard.systems.medium import Medium, medium_word
from garboard.systems.net import adjacency
from garboard.systems.plant import Part, Plant
from garboard.systems.search import reach
from garboard.systems.telling import Worth, listed, worths_of
from garboard.systems.trapping import let_out

__all__ = ["find_trapped_pressure"]

HOLDERS = ("receiver", "separator", "tank", "hose")
INSTRUMENTS = ("gauge", "pressure switch", "level switch", "transmitter")
RELIEFS = ("relief valve", "bursting disc")
USERS = ("consumer",)
NAMED_FIRST = (HOLDERS, (*INSTRUMENTS, *RELIEFS), USERS)
"""After whom a section is named; headers come between the first and the second."""


@dataclass(frozen=True, slots=True)
class _Section:
    """What stays joined with every valve shut."""

    nodes: frozenset[int]
    parts: tuple[Part, ...]
    """Whatever has an end in it, in file order."""
    headers: tuple[str, ...]
    medium: str
    """In words."""
    holds: float
    """The most that it can hold [Pa above the atmosphere]."""


def find_trapped_pressure(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Ask every node whether one movement lets out what can be shut in there."""
    plant = enquiry.plant
    if plant.medium is Medium.CURRENT and not plant.system.services:
        return
    out = let_out(enquiry.net, plant.open_air)
    shut_in = {n for n in range(plant.count) if n not in out and _is_harmful(enquiry, n)}
    if shut_in:
        worths = worths_of(plant)
        for section in _sections(enquiry, shut_in):
            yield _finding(enquiry, section, worths)


def _is_harmful(enquiry: Enquiry, node: int) -> bool:
    limit = enquiry.plant.harmless.get(enquiry.plant.medium_at(node))
    if limit is None or enquiry.relaxed.at[node] <= limit:
        return False
    return enquiry.highest[node] > limit


def _sections(enquiry: Enquiry, shut_in: Collection[int]) -> Iterator[_Section]:
    """The nodes in groups that no valve parts."""
    plant, net = enquiry.plant, enquiry.net
    both = [*net.fixed, *((v, u, number) for u, v, number in net.fixed)]
    rows = adjacency(net.count, [(u, v, n) for u, v, n in both if u in shut_in and v in shut_in])
    headers: dict[int, list[str]] = {}
    for name, node in plant.headers.items():
        headers.setdefault(node, []).append(name)
    at: dict[int, list[int]] = {}
    for number, part in enumerate(plant.parts):
        for node in part.nodes:
            at.setdefault(node, []).append(number)
    seen: set[int] = set()
    for node in sorted(shut_in):
        if node in seen:
            continue
        nodes = reach(rows, [node])
        seen |= nodes
        numbers = sorted({number for one in nodes for number in at.get(one, ())})
        worst = max(nodes, key=lambda one: enquiry.highest[one])
        yield _Section(
            frozenset(nodes),
            tuple(plant.parts[number] for number in numbers),
            tuple(name for one in sorted(nodes) for name in headers.get(one, ())),
            medium_word(plant.system, plant.services[worst]) or plant.medium_at(worst),
            enquiry.highest[worst],
        )


def _finding(enquiry: Enquiry, section: _Section, worths: Mapping[float, Worth]) -> PathFinding:
    plant = enquiry.plant
    name = _name(section)
    edges = tuple(part for part in section.parts if _parts_it(part, section))
    shut = tuple(part.tag for part in edges if enquiry.net.is_free(plant.numbers[part.tag]))
    worth, number = worths.get(section.holds, ("more than may stay shut in", "highest"))
    text = f"{name} can hold {section.medium} at {worth}"
    if edges:
        text += f", shut in by {listed(part.tag for part in edges)}"
    text += ", and no single valve lets it out"
    if not enquiry.settled:
        text += "; too many three-way valves to try every line-up: check by hand"
    return PathFinding(
        code="trapped-pressure",
        level=_level(section),
        of=about(plant, name, _where(plant, name)),
        text=text,
        help="fit a bleed or drain to it, or take out a valve that shuts it in",
        line=LineUp(shut=shut),
        nodes=tuple(sorted(section.nodes)),
        numbers=(number,),
    )


def _parts_it(part: Part, section: _Section) -> bool:
    """Whether a part stands at the edge of a section: something of it leads elsewhere."""
    return any(
        (u in section.nodes) != (v in section.nodes) for arcs in part.positions for u, v in arcs
    )


def _name(section: _Section) -> str:
    """A section is named after what it would hurt most to open."""
    inside = [part for part in section.parts if not _parts_it(part, section)]
    for kinds in NAMED_FIRST:
        for part in section.parts if kinds is HOLDERS else inside:
            if part.kind in kinds:
                return part.tag
        if kinds is HOLDERS and section.headers:
            return section.headers[0]
    return section.parts[0].tag if section.parts else ""


def _level(section: _Section) -> Level:
    if any(part.kind in HOLDERS for part in section.parts):
        return Level.DANGER
    closed = [part for part in section.parts if part.kind not in INSTRUMENTS]
    only = len(closed) < len(section.parts) and all(part.movable for part in closed)
    return Level.NOTE if only and not section.headers else Level.WARNING


def _where(plant: Plant, about: str) -> Where:
    component = plant.components.get(about)
    return component.where if component else plant.system.place(f"headers.{about}")
