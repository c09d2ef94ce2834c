"""Operating states held against the layout: what each says of itself, and what is true of its line-up."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import chain

from garboard.records.system import OperatingState
from garboard.systems.forbidden import Trouble, find_forbidden
from garboard.systems.medium import Medium
from garboard.systems.plant import Plant
from garboard.systems.positions import folded
from garboard.systems.state import State, start_of
from garboard.systems.telling import listed
from garboard.systems.ways import Ways

__all__ = ["Untrue", "find_unsafe", "find_untrue", "known_states"]


@dataclass(frozen=True, slots=True)
class Untrue:
    """One thing that an operating state says and its line-up does not do."""

    field: str
    """Of the state: `supplies`."""
    about: str
    """Full tag."""
    text: str
    help: str


def known_states(plant: Plant) -> Mapping[str, OperatingState]:
    """The operating states of a system that has a layout; none where it has none."""
    return (plant.system.operating_states or {}) if plant.parts else {}


def find_unsafe(plant: Plant) -> Iterator[tuple[str, tuple[Trouble, ...]]]:
    """Every operating state by its name, with what is wrong with standing so."""
    ways = Ways(plant)
    for name, line_up in known_states(plant).items():
        state = ways.begin(start_of(plant, line_up))
        yield name, tuple(find_forbidden(ways, state))


def find_untrue(plant: Plant) -> Iterator[tuple[str, Untrue]]:
    """Every operating state that says what is not so, by its name."""
    ways = Ways(plant)
    for name, line_up in known_states(plant).items():
        state = start_of(plant, line_up)
        yield from ((name, one) for one in _positions(plant, line_up))
        yield from ((name, one) for one in _charged(ways, state, line_up))
        yield from ((name, one) for one in _supplies(ways, state, line_up))


def _positions(plant: Plant, line_up: OperatingState) -> Iterator[Untrue]:
    """Positions that a valve does not have."""
    turned = {str(tag): position for tag, position in (line_up.turned or {}).items()}
    named = chain(((tag, "open") for tag in line_up.open), ((tag, "shut") for tag in line_up.shut))
    for tag, position in chain(named, turned.items()):
        part = plant.part(tag)
        if part is None or not part.movable or folded(position, part.kind) in part.names:
            continue
        field = "turned" if tag in turned else position
        text = f"{tag} cannot stand {position}; it has {listed(part.names)}"
        yield Untrue(field, tag, text, f"write {listed(part.names, 'or')}, or take it out")


def _charged(ways: Ways, state: State, line_up: OperatingState) -> Iterator[Untrue]:
    """Closed stores that are called charged and stand open to the air."""
    vented = ways.vented(state) - ways.air if ways.plant.medium is not Medium.CURRENT else set()
    for tag in line_up.charged:
        part = ways.plant.part(tag)
        if part is not None and set(part.nodes) & vented and part.nodes[0] not in ways.air:
            text = f"{tag} is called charged, and this line-up leaves it open to the air"
            yield Untrue("charged", tag, text, "shut the way out, or take it out of `charged`")


def _supplies(ways: Ways, state: State, line_up: OperatingState) -> Iterator[Untrue]:
    """Users that no charged store and no running machine reaches."""
    plant = ways.plant
    stores = [part for tag in line_up.charged if (part := plant.part(tag)) is not None]
    starts = {node for part in stores for node in part.nodes}
    starts |= {source.node for source in ways.live(state) if source.machine}
    if not line_up.charged:
        starts |= ways.fed_by(state)
    starts |= {part.nodes[0] for part in plant.of_kind("sea")}
    reached = ways.reached(state, starts)
    for tag in line_up.supplies:
        part = plant.part(tag)
        if part is not None and not set(part.nodes) & reached:
            text = f"{tag} is called supplied, and nothing that is charged or runs reaches it"
            yield Untrue("supplies", tag, text, "open the way to it, or take it out of `supplies`")
