"""Pressure zones of a system, and the set values that stand in each: what belongs on one ladder."""

from collections import defaultdict
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.kinds import Type
from garboard.calc.value import Value
from garboard.records.alarm import Alarm, Direction
from garboard.records.component import Component
from garboard.records.system import End, Joins, Run, System

__all__ = ["RUNGS", "Mark", "zone_marks"]

RUNGS = {
    "rated": "rating",
    "set": "setting",
    "trip": "trip",
    "alarm_high": "high alarm",
    "cuts_out": "stops at",
    "high": "high",
    "normal": "normal",
    "cuts_in": "starts at",
    "low": "low",
    "alarm_low": "low alarm",
}
"""Properties that are marks on a ladder, and their words."""

RELIEF = ("relief valve", "bursting disc")
HOLDS = ("receiver", "tank", "separator", "filter", "cooler", "battery", "bus")
"""Parts whose rating is a mark of its own; of all others the weakest in the zone is one."""
KEPT_APART = ("regulator",)
"""Parts with another pressure on each side."""


@dataclass(frozen=True, slots=True)
class Mark:
    """One value on a ladder."""

    value: Value
    word: str
    part: Component


def _zones(book: Book, system: System) -> dict[str, str]:
    """Parts that see the same pressure when every valve is open; a regulator parts two zones."""
    parent: dict[str, str] = {}

    def root(name: str) -> str:
        while parent.setdefault(name, name) != name:
            name = parent[name]
        return name

    for run in system.runs:
        for left, right in zip(run.ends, run.ends[1:], strict=False):
            parent[root(_side(book, run, left, "out"))] = root(_side(book, run, right, "in"))
    return {name.removesuffix(" out"): root(name) for name in list(parent)}


def _side(book: Book, run: Run, end: End, side: str) -> str:
    """The name of a zone's end: open air belongs to no other run, a regulator has two sides."""
    part = book.components.get(end.name)
    if part and part.kind in KEPT_APART:
        return f"{end.name} {side}"
    return f"{end.name} {run.written}" if end.joins is Joins.OUTSIDE else end.name


def zone_marks(book: Book, system: System) -> list[list[Mark]]:
    """The marks of each pressure zone and kind of quantity, the fullest first.

    Args:
        book: The book.
        system: One of its systems.
    """
    zones = _zones(book, system)
    groups: dict[tuple[str, Type], list[Mark]] = defaultdict(list)
    for tag, part in book.components.items():
        for name in RUNGS if part.system == system.code else ():
            value = book.values.get(f"{tag}.{name}")
            if value and value.si is not None:
                mark = Mark(value, _word(book, part, name), part)
                groups[zones.get(tag, ""), value.type].append(mark)
    return [_telling(marks) for marks in sorted(groups.values(), key=len, reverse=True)]


def _telling(marks: list[Mark]) -> list[Mark]:
    """Every mark but the ratings of fittings, of which only the weakest says anything."""
    fittings = [mark for mark in marks if mark.word == "rating" and mark.part.kind not in HOLDS]
    least = min((mark.value.si or 0.0 for mark in fittings), default=0.0)
    strong = [mark for mark in fittings if (mark.value.si or 0.0) > least]
    return [mark for mark in marks if mark not in strong]


def _word(book: Book, part: Component, name: str) -> str:
    if name != "set":
        return RUNGS[name]
    if part.kind in RELIEF:
        return "relief"
    for alarm in book.of_kind(Alarm):
        if alarm.set == f"{part.tag}.set":
            return "high alarm" if alarm.direction is Direction.HIGH else "low alarm"
    return "setting"
