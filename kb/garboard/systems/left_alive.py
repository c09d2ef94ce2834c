"""What an isolation does to all that it leaves alive: users without supply, switches that feel nothing.

Shutting valves that are free to be shut is a line-up that every check has weighed already; what was found
there comes true now. Only a point that is locked open elsewhere makes a line-up nobody asked about, and
then all checks are asked again.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from garboard.systems.checks import CHECKS
from garboard.systems.enquiry import Check, Enquiry
from garboard.systems.finding import PathFinding
from garboard.systems.leaks import Held, Leaks, Way
from garboard.systems.net import net_of
from garboard.systems.plant import Plant
from garboard.systems.section import Section
from garboard.systems.stores import Store

__all__ = ["Blind", "blind_switches", "comes_true", "lost_users"]

USERS = ("consumer", "load")
SENSES = ("pressure switch", "level switch", "transmitter")
NO_SUPPLY = ("compartment", "separator", "filter", "cooler")
"""What is live and supplies nobody."""
MOVES = ("pump", "compressor")
"""What supplies only what it is supplied with, where its inlet is piped."""


@dataclass(frozen=True, slots=True)
class Blind:
    """A switch that stands in the dead stretch."""

    tag: str
    machines: tuple[str, ...]
    """Machines it stops that stay alive: they would start and not stop."""
    watches: tuple[str, ...]
    """Vessels it watches: its alarm comes, or is dead."""


def lost_users(
    leaks: Leaks, section: Section, held: Held, stopped: Collection[str]
) -> tuple[str, ...]:
    """The users that something supplies, and nothing does while the stretch is cut off, by tag.

    Args:
        leaks: The plant.
        section: The stretch.
        held: Every point.
        stopped: Machines that are stopped.
    """
    out = {leaks.plant.numbers[tag] for tag in stopped}
    before = _supplied(leaks, {}, (), ())
    after = _supplied(leaks, held, section.nodes, out)
    users = leaks.plant.of_kind(*USERS)
    return tuple(one.tag for one in users if one.nodes[0] in before - after)


def _supplied(leaks: Leaks, held: Held, dead: Collection[int], out: Collection[int]) -> set[int]:
    """The nodes that something is supplied to, whatever valves may stand open."""
    starts = [
        node for one in leaks.stores if _supplies(leaks.plant, one, out) for node in one.nodes
    ]
    return leaks.spread(
        starts, passes=lambda number: number not in out, held=held, closed=dead, way=Way.MEANT
    )


def _supplies(plant: Plant, store: Store, stopped: Collection[int]) -> bool:
    """Whether a store supplies anybody by itself: a pump with a piped inlet only hands on."""
    number = plant.numbers[store.tag]
    hands_on = store.kind in MOVES and any(plant.parts[number].positions)
    return store.kind not in NO_SUPPLY and number not in stopped and not hands_on


def blind_switches(plant: Plant, section: Section, stopped: Collection[str]) -> tuple[Blind, ...]:
    """The switches that feel the dead stretch instead of what they watch.

    Args:
        plant: The plant.
        section: The stretch.
        stopped: Machines that are stopped anyhow.
    """
    found = []
    for part in plant.of_kind(*SENSES):
        if section.nodes.isdisjoint(part.nodes):
            continue
        own = plant.components[part.tag]
        machines = tuple(
            str(tag) for tag in own.stops if tag not in stopped and tag in plant.numbers
        )
        found.append(Blind(part.tag, machines, tuple(map(str, own.watches))))
    return tuple(found)


def comes_true(
    plant: Plant,
    section: Section,
    held: Held,
    findings: Iterable[PathFinding],
    checks: Iterable[tuple[Check, bool]] = CHECKS,
) -> tuple[PathFinding, ...]:
    """What the checks find of all that stays alive while the points are shut.

    Args:
        plant: The plant.
        section: The stretch; what is found of its own parts is no matter, as they are emptied.
        held: Every point.
        findings: What the checks found of the whole plant.
        checks: The checks.
    """
    known = tuple(findings)
    inside = {part.tag for part in plant.parts if not section.nodes.isdisjoint(part.nodes)}
    shut = {plant.parts[number].tag for number in held}
    found = [
        one
        for one in known
        if one.line.shut and shut.issuperset(one.line.shut) and not one.line.turned
    ]
    if any(plant.parts[number].locked not in (None, at) for number, at in held.items()):
        found += _asked_again(plant, held, known, checks)
    told = (one for one in found if one.about not in inside)
    return tuple(dict.fromkeys(told))


def _asked_again(
    plant: Plant,
    held: Held,
    known: Iterable[PathFinding],
    checks: Iterable[tuple[Check, bool]],
) -> Iterator[PathFinding]:
    """What is found with the points held, and was not or was less grave with the locks held."""
    gravest: dict[tuple[str, str], int] = {}
    for one in known:
        if not one.locks:
            key = (one.code, one.about)
            gravest[key] = min(gravest.get(key, 9), one.level.rank)
    cut = Enquiry(plant, net=net_of(plant).with_held(held))
    for check, _ in checks:
        for one in check(cut):
            if one.level.rank < gravest.get((one.code, one.about), 9):
                yield one
