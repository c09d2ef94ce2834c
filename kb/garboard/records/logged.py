"""What a logged file of a test holds, once it was read: rows in time, channels with unit and kind.

A log is whole or it gives no number: a channel with one cell that cannot be read as written stands
under `lost`, because its lowest reading may be the one that is missing.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from garboard.calc.quantity import read_quantity
from garboard.calc.units import Unit
from garboard.calc.value import Citation, Given
from garboard.errors import Where
from garboard.records.inspection import TimeUnit

__all__ = ["LASTED", "SECONDS", "SORTS", "Log", "LoggedChannel", "log_values", "show_moment"]

SECONDS = {TimeUnit.SECONDS: 1.0, TimeUnit.MINUTES: 60.0, TimeUnit.HOURS: 3600.0}
"""In one of each."""
SORTS = ("first", "last", "lowest", "highest")
"""What of a channel is a value: `SA-TR-017.p_lowest`."""
LASTED = "lasted"
"""The name of the value that says how long a log runs."""


@dataclass(frozen=True, slots=True)
class LoggedChannel:
    """One column of readings, a number in every row."""

    column: str
    """As the head of the file has it."""
    name: str
    """Under which its values are quoted; empty where there is none."""
    of: str
    """What was read."""
    unit: Unit
    numbers: tuple[float, ...]
    """In that unit."""
    written: tuple[str, ...]
    """As written, a decimal comma turned into a point."""
    places: tuple[int, ...]
    """The sign of its line at which each begins, from 1."""
    instrument: str | None = None
    accuracy: str = ""
    """How far a reading may be out, as written."""

    def row_of(self, sort: str) -> int:
        """The row of its first, last, lowest or highest reading; of several alike the first."""
        if sort in ("first", "last"):
            return 0 if sort == "first" else len(self.numbers) - 1
        pick = min if sort == "lowest" else max
        return self.numbers.index(pick(self.numbers))

    def si(self, row: int) -> float:
        """A reading in SI units; of a pressure that counts from the air in Pa above it."""
        return self.unit.to_si(self.numbers[row])

    def shown(self, row: int) -> str:
        """A reading as written, with its unit."""
        return f"{self.written[row]} {self.unit.text}".rstrip()


@dataclass(frozen=True, slots=True)
class Log:
    """A logged file that was read."""

    path: str
    lines: tuple[int, ...]
    """The line of the file on which each row stands."""
    seconds: tuple[float, ...]
    """Of each row, counted from the first; empty where the rows cannot be read as written."""
    channels: tuple[LoggedChannel, ...] = ()
    lost: tuple[str, ...] = ()
    """Columns that were asked for and cannot be read as written."""
    began: datetime | None = None
    """When the first row was taken, where the file says the day."""
    counts_in: TimeUnit | None = None
    """In what its numbers count; None where it gives times of the clock."""

    @property
    def lasts(self) -> float:
        """From the first row to the last, in seconds."""
        return self.seconds[-1]

    @property
    def ended(self) -> datetime | None:
        """When the last row was taken, where the file says the day."""
        return self.began + timedelta(seconds=self.lasts) if self.began else None

    def place(self, channel: LoggedChannel, row: int) -> Where:
        """Where a reading stands in the file."""
        return Where(self.path, self.lines[row], channel.places[row])

    def lasted(self) -> tuple[str, str]:
        """How long it ran, number and unit: in its own unit, or in the largest that needs no rounding."""
        if self.counts_in:
            return _plain(self.lasts / SECONDS[self.counts_in]), str(self.counts_in)
        for unit in (TimeUnit.HOURS, TimeUnit.MINUTES):
            text = f"{self.lasts / SECONDS[unit]:.2f}".rstrip("0").rstrip(".")
            if float(text) >= 1 and float(text) * SECONDS[unit] == self.lasts:
                return text, str(unit)
        return _plain(self.lasts), "s"


def _plain(number: float) -> str:
    return f"{number:.9f}".rstrip("0").rstrip(".")


def show_moment(seconds: float) -> str:
    """A time since the first row, for a reader.

    >>> show_moment(76_200.0), show_moment(90.0), show_moment(12.5), show_moment(0.0)
    ('21 h 10 min', '1 min 30 s', '12.5 s', '0 s')
    """
    hours, rest = divmod(round(seconds, 3), 3600)
    minutes, left = divmod(rest, 60)
    parts = [(hours, "h"), (minutes, "min"), (round(left, 3), "s")]
    return " ".join(f"{number:g} {unit}" for number, unit in parts if number) or "0 s"


def log_values(log: Log, test: str) -> Iterator[tuple[str, Given]]:
    """The values that a log gives, by address: of each channel four, and how long it ran.

    Args:
        log: What was read.
        test: Id of the test, which is their source.

    Raises:
        CalcFault: A number or an accuracy cannot be read as a quantity.
    """
    source = (Citation(test),)
    for channel in log.channels:
        for sort in SORTS if channel.name else ():
            row = channel.row_of(sort)
            band = f" +/- {channel.accuracy}" if channel.accuracy else ""
            address, where = f"{test}.{channel.name}_{sort}", log.place(channel, row)
            given = _given(f"{channel.shown(row)}{band}", where, address)
            label = f"{sort} of {channel.of}"
            yield address, replace(given, label=label, sources=source)
    if log.seconds:
        address = f"{test}.{LASTED}"
        number, unit = log.lasted()
        given = _given(f"{number} {unit}", Where(log.path, log.lines[-1]), address)
        yield address, replace(given, label="how long the log runs", sources=source)


def _given(text: str, where: Where, address: str) -> Given:
    return read_quantity(text, where, address.partition(".")[0]).given(address, where)
