"""A watch round as it is walked: the stops of all systems that have a round of that name, in one order.

Each system keeps its own stops, because who changes a gauge changes its stop. What belongs to none of
them is the way through the vessel: `rounds` in handbook.yml names the places in walking order, and a
stop belongs to the longest of those that its own place begins with. At one place the order of the
files stands. Stops at a place that nobody named are walked last, and the page says so.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from garboard.records.component import Component
from garboard.records.system import RoundStop, System

__all__ = ["Walk", "WalkStop", "round_names", "walk_of", "watches_of"]

HOURS_OF_DAY: Final = 24
LEAST: Final = 0.5
"""Shorter than this many hours there is no column for each time."""
UNTOLD: Final = 4
"""Columns without a time, where something comes round by an event."""
HOURS = re.compile(r"(?P<count>\d+(?:\.\d+)?) h")
DAYS = re.compile(r"\d+ (?:d|days?|weeks?|months?|years?)")


@dataclass(frozen=True, slots=True)
class WalkStop:
    """One stop of a round as it is walked."""

    stop: RoundStop
    system: str
    """Code of the system whose stop it is."""
    every: str
    place: str
    """Where one stands; empty where nobody said."""
    on_the_way: bool
    """Whether the way through the vessel comes past its place; always within one system."""


@dataclass(frozen=True, slots=True)
class Walk:
    """A round as it is walked."""

    name: str
    stops: tuple[WalkStop, ...]

    @property
    def intervals(self) -> tuple[str, ...]:
        """How often each part of it is walked, without repetition, in order of the stops."""
        return tuple(dict.fromkeys(one.every for one in self.stops))


def round_names(systems: Mapping[str, System]) -> Mapping[str, tuple[str, ...]]:
    """The rounds of the vessel: name to the codes of the systems that have one of that name."""
    found: dict[str, list[str]] = {}
    for code, system in systems.items():
        for name in system.rounds or {}:
            found.setdefault(name, []).append(code)
    return {name: tuple(codes) for name, codes in found.items()}


def walk_of(
    name: str,
    systems: Sequence[System],
    components: Mapping[str, Component],
    places: Sequence[str] = (),
) -> Walk:
    """Join the rounds of one name.

    Args:
        name: Of the round.
        systems: Those that may have one of that name.
        components: By tag, for where a stop is.
        places: In walking order; none where the round keeps to one system.

    Returns:
        Every stop once, place by place.
    """
    found = list(_stops(name, systems, components, places))
    order = {place: number for number, place in enumerate(places)}
    ranked = [(order.get(_named(one.place, places), len(order)), one) for one in found]
    return Walk(name, tuple(one for _, one in sorted(ranked, key=lambda pair: pair[0])))


def _stops(
    name: str,
    systems: Sequence[System],
    components: Mapping[str, Component],
    places: Sequence[str],
) -> Iterator[WalkStop]:
    for system in systems:
        walked = (system.rounds or {}).get(name)
        for stop in walked.order if walked else ():
            part = components.get(stop.tag) if stop.tag else None
            place = stop.at or (part.place if part else None) or ""
            known = not places or bool(_named(place, places))
            yield WalkStop(stop, system.code, walked.every if walked else "", place, known)


def _named(place: str, places: Sequence[str]) -> str:
    """The longest of some places that another one begins with; empty where there is none."""
    said = place.casefold()
    fits = [
        one
        for one in places
        if said.startswith(one.casefold()) and not said[len(one) : len(one) + 1].isalnum()
    ]
    return max(fits, key=len, default="")


def watches_of(every: str) -> tuple[str, ...]:
    """The times of a day at which something is done that is done so often.

    Args:
        every: `4 h`, `1 d`, `before each start`.

    Returns:
        One mark for each time of the day. Without a time of day empty ones: one where it is done
        once a day or more seldom, several where it comes round by an event.

    >>> watches_of("4 h"), watches_of("1 d"), watches_of("before each start")
    (('00', '04', '08', '12', '16', '20'), ('',), ('', '', '', ''))
    """
    said = every.strip()
    found = HOURS.fullmatch(said)
    step = float(found["count"]) if found else 0.0
    if LEAST <= step < HOURS_OF_DAY:
        times = (number * step for number in range(int(HOURS_OF_DAY / step + 1e-9)))
        return tuple(_clock(at) for at in times)
    return ("",) if step or DAYS.fullmatch(said) else ("",) * UNTOLD


def _clock(hours: float) -> str:
    minutes = round(hours % 1 * 60)
    return f"{int(hours):02}:{minutes:02}" if minutes else f"{int(hours):02}"
