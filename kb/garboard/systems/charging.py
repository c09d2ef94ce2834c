"""What charges a battery and loses it to an isolation, so that it must stand before the first point is shut.

An alternator that runs without a battery lets its voltage run away, whichever switch or fuse parted them, its
own too. A charger with a switch of its own is simply switched off first. Common practice, from no one source.
"""

from collections.abc import Iterable

from garboard.systems.leaks import Held, Leaks, Way
from garboard.systems.section import Section
from garboard.systems.stores import Store

__all__ = ["ALTERNATOR", "CHARGES", "loses_battery"]

ALTERNATOR = "alternator"
CHARGES = (ALTERNATOR, "charger")
BATTERY = "battery"
FUSE = "fuse"
"""What is no switch, though it can be a point."""


def loses_battery(
    leaks: Leaks, section: Section, held: Held, stores: Iterable[Store]
) -> tuple[str, ...]:
    """The tags of what charges a battery that the points part it from, and that has to be stopped for that.

    Args:
        leaks: The plant.
        section: The stretch that goes dead.
        held: Every point.
        stores: The stores that stay alive.
    """
    charging = [one for one in stores if one.kind in CHARGES]
    return tuple(
        one.tag
        for one in charging
        if (one.kind == ALTERNATOR or not _own_switch(leaks, one, held))
        and _is_parted(leaks, one, section, held)
    )


def _is_parted(leaks: Leaks, store: Store, section: Section, held: Held) -> bool:
    """Whether it loses a battery: as everything usually stands, or whichever way it stands."""
    usual = {number: part.usual for number, part in enumerate(leaks.plant.parts)}
    return any(
        _charged(leaks, store, stands, ())
        - _charged(leaks, store, {**stands, **held}, section.nodes)
        for stands in (usual, {})
    )


def _charged(leaks: Leaks, store: Store, held: Held, dead: Iterable[int]) -> set[str]:
    """The batteries that it charges while some parts are held, whichever way the others stand."""
    reached = leaks.spread(store.nodes, held=held, closed=frozenset(dead), way=Way.MEANT)
    return {one.tag for one in leaks.plant.of_kind(BATTERY) if not reached.isdisjoint(one.nodes)}


def _own_switch(leaks: Leaks, store: Store, held: Held) -> bool:
    """Whether a point that is no fuse holds back what charges, and no battery with it."""
    parts = leaks.plant.parts
    switches = {number: at for number, at in held.items() if parts[number].kind != FUSE}
    near = leaks.spread(store.nodes, held=switches)
    batteries = leaks.plant.of_kind(BATTERY)
    return all(near.isdisjoint(one.nodes) for one in batteries)
