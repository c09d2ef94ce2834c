"""The ladder of settings of one part: what is normal, what warns, what shuts down, what lets go."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from garboard.book import Book
from garboard.calc.value import Value
from garboard.records.alarm import Alarm, Direction
from garboard.records.component import Component
from garboard.records.standing import has_left
from garboard.rules.recorded import recorded
from garboard.rules.runs import find_views, relief_of

__all__ = ["LEAST", "Pair", "Rung", "find_pairs"]

LEAST = "least needed"
"""What a user of a store needs at the least."""


@dataclass(frozen=True, slots=True)
class Rung:
    """One setting on the ladder of a part."""

    name: str
    """As a person says it: `high alarm`."""
    tag: str
    """The component that has it."""
    value: Value


@dataclass(frozen=True, slots=True)
class Pair:
    """Two settings of which one must stand above the other."""

    lower: Rung
    upper: Rung
    may_be_equal: bool = False


Level = list[Rung]


def find_pairs(book: Book) -> Iterator[Pair]:
    """The pairs of settings that must stand in order, part by part."""
    views, guards = find_views(book), relief_of(book)
    watched: dict[str, list[Component]] = {}
    for tag, seen in views.items():
        for name in seen:
            watched.setdefault(name, []).append(book.components[tag])
    least, alarms = _least_needed(book), _alarms(book)
    for part in book.components.values():
        looking = [part, *watched.get(part.tag, [])]
        high, low = _alarm_levels(book, looking, alarms)
        lift = _named(book, guards.get(part.tag, []), "set", "setting")
        yield from _own_switch(book, part)
        yield from _upwards(book, part, looking, (low, high, lift))
        yield from _all(least.get(part.tag, []), low)


def _alarm_levels(
    book: Book, looking: Sequence[Component], alarms: Mapping[str, list[tuple[Alarm, Value]]]
) -> tuple[Level, Level]:
    """High and low alarms on a part, from the components that look at it and from alarm pages."""
    high = _named(book, looking, "alarm_high", "high alarm")
    low = _named(book, looking, "alarm_low", "low alarm")
    for one in looking:
        for alarm, value in alarms.get(one.tag, []):
            rung = Rung(f"{alarm.direction} alarm", one.tag, value)
            (high if alarm.direction is Direction.HIGH else low).append(rung)
    return high, low


def _upwards(
    book: Book, part: Component, looking: Sequence[Component], known: tuple[Level, Level, Level]
) -> Iterator[Pair]:
    low, high, lift = known
    bottom = _named(book, [part], "low", "lower end of normal")
    normal = _named(book, [part], "normal", "normal")
    top = _named(book, [part], "high", "upper end of normal")
    trip = _named(book, looking, "trip", "trip")
    low_trip = trip if low and not high else []
    high_trip = trip if high and not low else []
    rungs = (low_trip, low, bottom, normal, top, high, high_trip, lift)
    touching = ((low, bottom), (bottom, normal), (normal, top), (top, high))
    yield from _next_above(rungs, touching)
    switches = _pressure_switches(looking)
    stops = _named(book, switches, "cuts_out", "cut-out") + ([] if low_trip else trip)
    yield from _all(stops, lift)
    if not lift:
        rated = _named(book, [part], "rated", "rating")
        yield from _all(stops + high or top or normal, rated, may_be_equal=True)
    yield from _all(low, _named(book, switches, "cuts_in", "cut-in"))


def _next_above(rungs: Sequence[Level], touching: Sequence[tuple[Level, Level]]) -> Iterator[Pair]:
    """Each rung with those of the next level that has any, each measure on a ladder of its own."""
    measures = dict.fromkeys(rung.value.type.dimension for level in rungs for rung in level)
    for measure in measures:
        present = [
            (level, [rung for rung in level if rung.value.type.dimension == measure])
            for level in rungs
        ]
        for (below, lower), (above, upper) in pairwise(item for item in present if item[1]):
            equal = any(below is one and above is other for one, other in touching)
            yield from _all(lower, upper, may_be_equal=equal)


def _all(lower: Iterable[Rung], upper: Sequence[Rung], *, may_be_equal: bool = False) -> list[Pair]:
    return [Pair(one, other, may_be_equal) for one in lower for other in upper]


def _own_switch(book: Book, part: Component) -> list[Pair]:
    """Where a pressure switch starts its machine, and where it stops it."""
    switches = _pressure_switches([part])
    lower = _named(book, switches, "cuts_in", "cut-in")
    return _all(lower, _named(book, switches, "cuts_out", "cut-out"))


def _pressure_switches(parts: Iterable[Component]) -> list[Component]:
    """A level switch that empties a well cuts in above where it cuts out, and is left out."""
    return [part for part in parts if part.kind == "pressure switch"]


def _named(book: Book, parts: Iterable[Component], name: str, said: str) -> Level:
    values = ((part, recorded(book, part, name)) for part in parts)
    return [Rung(said, part.tag, value) for part, value in values if value]


def _alarms(book: Book) -> dict[str, list[tuple[Alarm, Value]]]:
    """Alarm pages that say where and on which side they come, by tag."""
    found: dict[str, list[tuple[Alarm, Value]]] = {}
    for alarm in book.of_kind(Alarm):
        value = book.values.get(alarm.set or "")
        if value and value.si is not None and alarm.direction and alarm.tag and not has_left(alarm):
            found.setdefault(alarm.tag, []).append((alarm, value))
    return found


def _least_needed(book: Book) -> dict[str, Level]:
    """The least that a user needs, by the store that is charged where it is supplied."""
    found: dict[str, Level] = {}
    for system in book.systems.values():
        for state in (system.operating_states or {}).values():
            users = [book.components[tag] for tag in state.supplies if tag in book.components]
            needs = _named(book, users, "low", LEAST)
            for store in state.charged:
                found.setdefault(store, []).extend(needs)
    return found
