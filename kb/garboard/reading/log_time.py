"""Read the time column of a logged file: numbers, times of the clock, or day and time.

One file says it in one way. Nothing is guessed: numbers count in what the column's name or the
record says, and a clock that has passed midnight is a time that goes back.
"""

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime

from garboard.errors import Where
from garboard.reading.csv_rows import Cell, Slip
from garboard.records.inspection import TimeUnit
from garboard.records.logged import SECONDS

__all__ = ["TimeColumn", "read_times"]

CLOCK = re.compile(r"(?P<h>[0-9]{1,3}):(?P<m>[0-5][0-9]):(?P<s>[0-5][0-9](?:\.[0-9]{1,6})?)")
DAY = re.compile(
    r"[0-9]{4}-[0-9]{2}-[0-9]{2}[T ][0-9]{2}:[0-9]{2}(?::[0-9]{2}(?:\.[0-9]{3}(?:[0-9]{3})?)?)?"
    r"(?P<zone>Z|[+-][0-9]{2}:[0-9]{2})?"
)
SAYS_UNIT = re.compile(
    r"(?:^|[\s_\[(,])(?:(?P<s>s|sec|seconds)|(?P<min>min|minutes)|(?P<h>h|hours))[\])]?$",
    re.IGNORECASE,
)
FORMS = "write seconds or minutes as numbers, 08:30:00, or 2031-02-14T08:30:00"
NUMBERS, CLOCKS, DAYS, ZONED = "a number", "a time of the clock", "day and time", "a time zone"


@dataclass(frozen=True, slots=True)
class TimeColumn:
    """The times of all rows."""

    seconds: tuple[float, ...]
    """Counted from the first; empty where one cannot be read."""
    began: datetime | None
    counts_in: TimeUnit | None
    slips: tuple[Slip, ...]


def read_times(
    head: Cell,
    head_at: Where,
    cells: Iterable[tuple[Cell, int]],
    stated: TimeUnit | None,
    number: Callable[[str], float | None],
) -> TimeColumn:
    """Read a column of times.

    Args:
        head: Its name.
        head_at: Where the head stands.
        cells: Its cells, each with its line.
        stated: In what its numbers count, as the record says.
        number: Reads a number as this file writes them; None where it is none.
    """
    reader = _Reader(head_at.path, number)
    times = list(reader.read(cells))
    unit = None
    if reader.form == NUMBERS:
        unit = stated or _unit_of(head.text)
        if unit is None:
            said = f"the numbers of column `{head.text}` do not say in what they count"
            where = Where(head_at.path, head_at.line, head.column)
            reader.slips.append(Slip(where, said, "write time_unit: s, min or h in the record"))
    if reader.slips or not times:
        return TimeColumn((), None, None, tuple(reader.slips))
    scale = SECONDS[unit] if unit else 1.0
    seconds = tuple((time - times[0]) * scale for time in times)
    return TimeColumn(seconds, reader.began, unit, ())


def _unit_of(name: str) -> TimeUnit | None:
    found = SAYS_UNIT.search(name)
    return TimeUnit(str(found.lastgroup)) if found else None


class _Reader:
    """Reads cell after cell and holds each against the first one's form."""

    def __init__(self, path: str, number: Callable[[str], float | None]) -> None:
        self.path = path
        self.number = number
        self.form = ""
        self.began: datetime | None = None
        self.slips: list[Slip] = []

    def read(self, cells: Iterable[tuple[Cell, int]]) -> Iterator[float]:
        """The times in the file's own count; what cannot be read is noted."""
        latest, before = float("-inf"), ""
        for cell, line in cells:
            where = Where(self.path, line, cell.column)
            form, time = self.one(cell.text)
            self.form = self.form or form
            if not form:
                said = f"`{cell.text[:40]}` is no time" if cell.text else "an empty cell, no time"
                self.slips.append(Slip(where, said, FORMS))
            elif form != self.form:
                said = f"`{cell.text}` is {form}, the first row has {self.form}"
                self.slips.append(Slip(where, said, "write all times in one way"))
            elif time < latest:
                cure = "put the rows in order; past midnight write the day too, 2031-02-14T23:50:00"
                self.slips.append(Slip(where, f"`{cell.text}` comes after `{before}`", cure))
            else:
                latest, before = time, cell.text
                yield time

    def one(self, text: str) -> tuple[str, float]:
        """The form of a time and what it counts; the form is empty where it is none."""
        found = CLOCK.fullmatch(text)
        if found:
            return CLOCKS, int(found["h"]) * 3600 + int(found["m"]) * 60 + float(found["s"])
        found = DAY.fullmatch(text)
        if found:
            return self.day(text, zoned=bool(found["zone"]))
        number = self.number(text)
        return (NUMBERS, number) if number is not None else ("", 0.0)

    def day(self, text: str, *, zoned: bool) -> tuple[str, float]:
        """Day and time, counted from those of the first row."""
        try:
            when = datetime.fromisoformat(text)
        except ValueError:
            return "", 0.0
        form = ZONED if zoned else DAYS
        if self.began is None:
            self.began = when
        if (self.began.tzinfo is None) is not (when.tzinfo is None):
            return form, 0.0
        return form, (when - self.began).total_seconds()
