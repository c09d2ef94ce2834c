"""What is laid over a sheet: a finding, an isolation, a line-up, what a change makes new or takes away.

Each mark is a shape first, so that it is read in a print of ink alone: a casing along a pipe, a pipe broken
up, a square frame for what is shut and a round one for what is open, a double frame for what is in danger.
Colour comes after.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from garboard.records.system import OperatingState
from garboard.schematic.looks import position_of
from garboard.systems.finding import PathFinding
from garboard.systems.net import Net, Through, adjacency
from garboard.systems.plant import Plant
from garboard.systems.search import reach

__all__ = [
    "Band",
    "Mark",
    "Overlay",
    "finding_overlay",
    "gone_overlay",
    "isolation_overlay",
    "new_overlay",
    "state_overlay",
]


class Band(StrEnum):
    """What is drawn along a pipe."""

    DANGER = "the way in danger"
    """A casing with unbroken edges, tinted."""
    CHARGED = "under pressure in this line-up"
    """A casing with broken edges."""
    DEAD = "shut off and emptied"
    """The pipe itself thin and broken."""


class Mark(StrEnum):
    """What is drawn round a part."""

    SHUT = "shut"
    """A square frame."""
    OPEN = "open"
    """A round frame."""
    TURNED = "turned as shown"
    """A frame with its corners cut."""
    DANGER = "in danger"
    """A double frame."""
    FAULT = "at fault"
    """A double frame with a cross in its corner."""
    RUNNING = "running"
    """A round frame."""
    NEW = "new or changed"
    """A heavy square frame."""
    GONE = "taken away"
    """A dashed frame, struck through."""


@dataclass(frozen=True, slots=True)
class Overlay:
    """Marks on a sheet."""

    name: str
    """Begins its ids; unlike that of any other overlay of a page."""
    title: str
    """What it shows, for the title block."""
    bands: Mapping[int, Band] = field(default_factory=dict)
    """By node."""
    marks: Mapping[str, Mark] = field(default_factory=dict)
    """By full tag."""
    positions: Mapping[str, str] = field(default_factory=dict)
    """How a part is shown where it is not as usual, by full tag."""
    words: tuple[str, ...] = ()
    """Lines of the title block."""


def finding_overlay(plant: Plant, found: PathFinding) -> Overlay:
    """The way in danger, the valves in the positions that cause it, what is in danger or at fault."""
    marks: dict[str, Mark] = {}
    marks |= dict.fromkeys(found.at_fault, Mark.FAULT)
    marks |= dict.fromkeys((found.about, *found.endangers), Mark.DANGER)
    marks |= dict.fromkeys(found.line.shut, Mark.SHUT) | dict.fromkeys(found.line.open, Mark.OPEN)
    marks |= {tag: Mark.TURNED for tag, _ in found.line.turned}
    positions = _shown(plant, found.line.open, found.line.shut) | dict(found.line.turned)
    header = plant.headers.get(found.about)
    nodes = (*found.nodes, *(() if header is None else (header,)))
    drawn = (f"As drawn here: {found.line.words}",) if found.line.words else ()
    return Overlay(
        name=f"finding-{found.fingerprint}",
        title="What the check found",
        bands=dict.fromkeys(nodes, Band.DANGER),
        marks={tag: mark for tag, mark in marks.items() if tag in plant.numbers},
        positions=positions,
        words=(f"{found.code}, {found.level}: {found.text}", *drawn),
    )


def isolation_overlay(
    plant: Plant, tag: str, dead: Iterable[int], points: Iterable[str], bleeds: Iterable[str]
) -> Overlay:
    """A section shut off for work: thin and broken, its points framed shut, its bleeds framed open.

    Args:
        plant: The plant.
        tag: What is worked on.
        dead: Nodes of the section.
        points: What is shut and locked, full tags.
        bleeds: What is opened to empty it, full tags.
    """
    points, bleeds = tuple(points), tuple(bleeds)
    return Overlay(
        name=f"isolation-{tag}".lower(),
        title=f"{tag} shut off for work",
        bands=dict.fromkeys(dead, Band.DEAD),
        marks=dict.fromkeys(points, Mark.SHUT) | dict.fromkeys(bleeds, Mark.OPEN),
        positions=_shown(plant, bleeds, points),
        words=(
            f"Shut and locked: {', '.join(points) or 'nothing'}",
            f"Opened to empty it: {', '.join(bleeds) or 'nothing'}",
        ),
    )


def state_overlay(plant: Plant, name: str, state: OperatingState) -> Overlay:
    """The valves as one operating state lines them up, what runs, and what is then under pressure."""
    positions = _shown(plant, map(str, state.open), map(str, state.shut))
    positions |= {str(tag): position for tag, position in (state.turned or {}).items()}
    known = set(plant.numbers)
    moved = {tag for tag in positions if tag in known and _moved(plant, tag, positions[tag])}
    running = [str(tag) for tag in state.running if str(tag) in known]
    marks = {tag: _mark_of(plant, tag, positions[tag]) for tag in sorted(moved)}
    marks |= dict.fromkeys(running, Mark.RUNNING)
    charged = [str(tag) for tag in state.charged if str(tag) in known]
    live = _live(plant, positions, (*running, *charged))
    return Overlay(
        name=f"state-{''.join(each if each.isalnum() else '-' for each in name)}".lower(),
        title=f"Lined up: {name}",
        bands=dict.fromkeys(sorted(live), Band.CHARGED),
        marks=marks,
        positions={tag: positions[tag] for tag in sorted(moved)},
        words=(
            f"Not as usual: {', '.join(sorted(moved)) or 'nothing'}",
            f"Running: {', '.join(running) or 'nothing'}. Charged: {', '.join(charged) or 'nothing'}",
        ),
    )


def new_overlay(plant: Plant, tags: Iterable[str]) -> Overlay:
    """What a change brings or moves, on the sheet as it is after it."""
    new = [tag for tag in tags if tag in plant.numbers]
    words = (f"New, or joined or set otherwise: {', '.join(new) or 'nothing'}",)
    return Overlay("after", "After the change", marks=dict.fromkeys(new, Mark.NEW), words=words)


def gone_overlay(plant: Plant, tags: Iterable[str]) -> Overlay:
    """What a change takes away or moves, on the sheet as it was before it."""
    gone = [tag for tag in tags if tag in plant.numbers]
    words = (f"Taken away, or joined or set otherwise: {', '.join(gone) or 'nothing'}",)
    return Overlay("before", "Before the change", marks=dict.fromkeys(gone, Mark.GONE), words=words)


def _shown(plant: Plant, opened: Iterable[str], shut: Iterable[str]) -> dict[str, str]:
    """Positions by their own names: a fuse is in or pulled."""
    found = {}
    for tags, end in ((opened, 0), (shut, -1)):
        for tag in tags:
            part = plant.part(tag)
            if part is not None and part.movable:
                found[tag] = part.names[end]
    return found


def _moved(plant: Plant, tag: str, position: str) -> bool:
    part = plant.parts[plant.numbers[tag]]
    return position_of(part, position) != part.usual


def _mark_of(plant: Plant, tag: str, position: str) -> Mark:
    part = plant.parts[plant.numbers[tag]]
    if part.coupled:
        return Mark.TURNED
    return Mark.OPEN if part.positions[position_of(part, position)] else Mark.SHUT


def _live(plant: Plant, positions: Mapping[str, str], starts: Iterable[str]) -> set[int]:
    """The nodes that hold pressure: what runs or is charged reaches them in this line-up."""
    held = {
        number: position_of(part, positions.get(part.tag, ""))
        for number, part in enumerate(plant.parts)
        if part.movable
    }
    net = Net(plant.count, plant.parts, held)
    arcs: list[Through] = list(net.fixed)
    made = {source.tag: source.node for source in plant.sources}
    begin: list[int] = []
    for tag in starts:
        begin += [made[tag]] if tag in made else plant.parts[plant.numbers[tag]].nodes
    return reach(adjacency(plant.count, arcs), begin)
