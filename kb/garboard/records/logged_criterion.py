"""A criterion held against a logged channel: what binds it, and where the log leaves that.

A log holds the way up and the way down as well. So the rows before the first one within the bounds
are not judged, unless the criterion says `throughout`. Where it says how long, `held 30 min`, the log
needs one unbroken stretch of that length within; else every row from the first one within on counts.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from garboard.calc.fault import CalcFault
from garboard.calc.kinds import Type
from garboard.calc.quantity import read_quantity
from garboard.calc.value import Value
from garboard.errors import Where
from garboard.records.criterion import LINK, Bound, find_bounds
from garboard.records.inspection import Test
from garboard.records.logged import Log, LoggedChannel, show_moment

__all__ = ["Strayed", "channel_bounds", "find_strayed", "held_for"]

CLAUSES = re.compile(r"[,;] ")
THROUGHOUT = re.compile(
    r"\b(?:throughout|all the time|at all times|at any time|at no time|always|never)\b",
    re.IGNORECASE,
)
HELD = re.compile(
    r"\b(?:held|hold|holds|for|over|during)(?: for)?(?: at least)? (?P<time>\d+(?:\.\d+)? (?:s|min|h))\b"
)
HAIR = 1e-6
"""Seconds that the times of a log may be out by counting in hours."""


@dataclass(frozen=True, slots=True)
class Strayed:
    """Where a log leaves its criterion."""

    row: int
    words: str
    """What is so there, with the time."""


def channel_bounds(
    values: Mapping[str, Value], test: Test, log: Log, channel: LoggedChannel
) -> tuple[Bound, ...]:
    """The bounds that the criterion of a test sets to one channel of its log.

    A clause that names a channel binds that one; any other binds the only channel of its kind. Where
    two channels could be meant, none is.

    Args:
        values: What the addresses in the criterion stand for.
        test: The record.
        log: Its log.
        channel: One of its channels.
    """
    alike = [one for one in log.channels if one.unit.type == channel.unit.type]
    found: list[Bound] = []
    for clause in CLAUSES.split(LINK.sub(r"\1", test.criterion or "")):
        named = [one for one in alike if _names(clause, one)]
        if channel in named or (not named and len(alike) == 1):
            found += _of_type(values, clause, test.place("criterion"), channel.unit.type)
    return tuple(found)


def _names(clause: str, channel: LoggedChannel) -> bool:
    words = {re.escape(one) for one in (channel.name, channel.column, channel.of) if one}
    return re.search(rf"(?<!\w)(?:{'|'.join(sorted(words))})(?!\w)", clause) is not None


def _of_type(
    values: Mapping[str, Value], clause: str, where: Where, wanted: Type
) -> Iterator[Bound]:
    return (bound for bound in find_bounds(values, clause, where) if bound.type == wanted)


def held_for(test: Test) -> float | None:
    """For how long its criterion must hold, in seconds; None where it does not say."""
    found = HELD.search(test.criterion or "")
    try:
        return read_quantity(found["time"], test.place("criterion")).si if found else None
    except CalcFault:
        return None


def find_strayed(test: Test, log: Log, channel: LoggedChannel, bound: Bound) -> Strayed | None:
    """Where a channel leaves a bound that it had to keep; None where it keeps it.

    Args:
        test: Whose criterion it is.
        log: Its log.
        channel: One of its channels.
        bound: That binds it.
    """
    within = [bound.holds(channel.si(row)) for row in range(len(channel.numbers))]
    held = held_for(test)
    if not any(within):
        best = _nearest(channel, bound)
        return Strayed(best, f"{_read(log, channel, best)} at best")
    if held is not None:
        return _held(log, channel, within, held)
    whole = THROUGHOUT.search(test.criterion or "") is not None
    start = 0 if whole else within.index(True)
    row = next((row for row in range(start, len(within)) if not within[row]), None)
    return None if row is None else Strayed(row, _read(log, channel, row))


def _held(log: Log, channel: LoggedChannel, within: Sequence[bool], held: float) -> Strayed | None:
    """Where the longest stretch within ends, if it is too short."""
    longest, ends = -1.0, 0
    start: int | None = None
    for row, holds in enumerate(within):
        if not holds:
            start = None
            continue
        start = row if start is None else start
        length = log.seconds[row] - log.seconds[start]
        if length > longest:
            longest, ends = length, row
    if longest >= held - HAIR:
        return None
    after = min(ends + 1, len(within) - 1)
    words = f"{_read(log, channel, after)}, held {show_moment(longest)} of {show_moment(held)}"
    return Strayed(after, words)


def _nearest(channel: LoggedChannel, bound: Bound) -> int:
    """The row that comes nearest to a bound that none keeps."""

    def gap(row: int) -> float:
        si = channel.si(row)
        below = bound.low - si if bound.low is not None else 0.0
        above = si - bound.high if bound.high is not None else 0.0
        return max(below, above)

    return min(range(len(channel.numbers)), key=gap)


def _read(log: Log, channel: LoggedChannel, row: int) -> str:
    name = channel.name or channel.column
    return f"{name} is {channel.shown(row)} at {show_moment(log.seconds[row])}"
