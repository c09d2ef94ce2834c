"""Read the logged file of a test: its rows in time, each channel in the unit that the record names.

Strict as all reading: what is no number, a cell left empty, a time that goes back is said with its
line and column, and such a channel gives no value. Everything else is read all the same.
"""

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from garboard.calc.fault import CalcFault
from garboard.calc.units import read_unit
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import nearest
from garboard.reading.csv_rows import CsvRows, Slip, read_rows
from garboard.reading.log_time import read_times
from garboard.reading.strict_yaml import CODE, shorten
from garboard.records.inspection import Channel, LoggedFile, Test
from garboard.records.logged import LASTED, Log, LoggedChannel, log_values

__all__ = ["ReadLog", "read_log"]

NUMBER = re.compile(
    r"(?P<sign>[-+]?)(?P<figures>[0-9]{1,30}(?:[.,][0-9]{1,30})?)(?P<power>[eE][-+]?[0-9]{1,2})?"
)
NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]*")
FIELDS = frozenset((*Test.__dataclass_fields__, LASTED))
"""Names that a test has for something else."""


@dataclass(frozen=True, slots=True)
class ReadLog:
    """A log, and every fault that was met in it."""

    log: Log
    diagnostics: tuple[Diagnostic, ...]


def read_log(test: Test, logged: LoggedFile, text: str) -> ReadLog:
    """Read the logged file of a test.

    Args:
        test: The record.
        logged: Its `log`.
        text: Of the file, with plain line feeds.
    """
    return _Reader(test, logged, read_rows(text, logged.file)).read()


class _Reader:
    """Reads one file."""

    def __init__(self, test: Test, logged: LoggedFile, table: CsvRows) -> None:
        self.test = test
        self.logged = logged
        self.table = table
        self.names = [cell.text for cell in table.head]
        self.mark = ""
        """The decimal sign that the first number with one has, where both are legal."""
        self.faults: list[Diagnostic] = []

    def read(self) -> ReadLog:
        """The whole file."""
        table = self.table
        self.note(table.slips)
        log = Log(self.logged.file, table.lines, (), lost=tuple(self.logged.channels))
        whole = not table.slips
        at = self.column(self.logged.time) if self.names else None
        if at is not None:
            cells = [(row[at], line) for row, line in zip(table.rows, table.lines, strict=True)]
            stated = self.logged.time_unit
            times = read_times(table.head[at], table.head_at, cells, stated, self.number)
            self.note(times.slips)
            whole = whole and bool(times.seconds)
            log = replace(log, seconds=times.seconds, began=times.began, counts_in=times.counts_in)
        read = [self.channel(name, one) for name, one in self.logged.channels.items()]
        found = [one for one in read if one is not None]
        if whole and at is not None:
            kept = [one for one in found if self.fits(log, one)]
            lost = set(self.logged.channels) - {one.column for one in kept}
            log = replace(log, channels=tuple(kept), lost=tuple(sorted(lost)))
        else:
            log = replace(log, seconds=())
        return ReadLog(log, tuple(self.faults))

    def note(self, slips: Iterable[Slip]) -> None:
        """Make faults of slips."""
        for slip in slips:
            self.refuse(slip.where, slip.text, slip.cure)

    def refuse(self, where: Where, text: str, cure: str) -> None:
        """Note a fault."""
        about = str(self.test.id or "")
        self.faults.append(Diagnostic(where, Severity.STOP, text, cure, CODE, about))

    def column(self, name: str) -> int | None:
        """The place of a column; None where there is none or two, which is then noted."""
        count, where = self.names.count(name), self.table.head_at
        if count == 1:
            return self.names.index(name)
        if count:
            again = [cell for cell in self.table.head if cell.text == name][1]
            said = f"two columns are called `{shorten(name)}`"
            self.refuse(Where(where.path, where.line, again.column), said, "rename one of them")
            return None
        near = nearest(name, self.names)
        known = ", ".join(one for one in self.names if one)
        said = f"there is no column `{shorten(name)}`, which {self.test.id} names"
        cure = f"write {near} there" if near else f"name one that is there: {shorten(known)}"
        self.refuse(where, said, f"{cure}, or take it out")
        return None

    def number(self, text: str) -> float | None:
        """A number as this file writes them; None where it is none."""
        found = NUMBER.fullmatch(text)
        mark = next((sign for sign in ",." if sign in text), "")
        if found is None or (mark == "," and self.table.separator == ","):
            return None
        self.mark = self.mark or mark
        if mark and mark != self.mark:
            return None
        number = float(text.replace(",", "."))
        return number if math.isfinite(number) else None

    def channel(self, name: str, channel: Channel) -> LoggedChannel | None:
        """One channel; None where it cannot be read as written."""
        at = self.column(name) if self.names else None
        quoted = self.quoted(name, channel)
        before = len(self.faults)
        try:
            unit = read_unit(channel.unit or "", self.place(name, "unit"))
        except CalcFault as fault:
            self.faults.append(replace(fault.diagnostic, about=str(self.test.id or "")))
            return None
        if at is None or quoted is None:
            return None
        numbers: list[float] = []
        for row, line in zip(self.table.rows, self.table.lines, strict=True):
            number = self.reading(row[at].text, Where(self.logged.file, line, row[at].column))
            if number is not None:
                numbers.append(number)
        if len(self.faults) > before or not numbers:
            return None
        cells = [row[at] for row in self.table.rows]
        return LoggedChannel(
            name,
            quoted,
            channel.of,
            unit,
            tuple(numbers),
            tuple(cell.text.replace(",", ".").removeprefix("+") for cell in cells),
            tuple(cell.column for cell in cells),
            channel.instrument,
            channel.accuracy or "",
        )

    def reading(self, text: str, where: Where) -> float | None:
        """One cell; None where it is no number, which is then noted."""
        number = self.number(text)
        if number is not None:
            return number
        said = f"`{shorten(text)}` is no number" if text else "an empty cell"
        cure = "write the number alone; the unit stands in the record"
        if not text:
            cure = "write what was read, or take the row out and say so in the text"
        elif "," in text and self.table.separator == ",":
            cure = "part the columns with semicolons where numbers have decimal commas"
        elif NUMBER.fullmatch(text):
            said = f"`{shorten(text)}` has another decimal sign than the numbers before it"
            cure = "write all numbers alike, and no sign between thousands"
        self.refuse(where, said, cure)
        return None

    def place(self, column: str, field: str) -> Where:
        """Where the record says something of a column."""
        path = f"log.channels.{column}"
        return self.test.places.get(f"{path}.{field}", self.test.place(path))

    def quoted(self, column: str, channel: Channel) -> str | None:
        """The name under which a channel is quoted; None where it is not to be read with it.

        A column whose name is none can be read and drawn, and not quoted.
        """
        name = channel.name or column
        where = self.place(column, "name")
        if not NAME.fullmatch(name):
            said = f"`{shorten(name)}` is no name, so nothing can quote what column it is"
            cure = "add a name of letters, figures and _, as name: p, or leave it unquoted"
            fault = Diagnostic(where, Severity.NOTE, said, cure, CODE, str(self.test.id or ""))
            self.faults.append(fault)
            return ""
        if name in FIELDS:
            said = f"a channel is called `{name}`, which a test has for something else"
            self.refuse(where, said, "add another name, as name: p, or rename the column")
            return None
        others = [key for key, one in self.logged.channels.items() if (one.name or key) == name]
        if others[0] != column:
            said = f"two channels are called `{name}`"
            self.refuse(where, said, "give one of them another name")
            return None
        return name

    def fits(self, log: Log, channel: LoggedChannel) -> bool:
        """Whether its readings and its accuracy are quantities; if not, that is noted."""
        try:
            _ = dict(log_values(replace(log, channels=(channel,)), str(self.test.id or "")))
            if channel.accuracy and not channel.name:
                _ = dict(log_values(replace(log, channels=(replace(channel, name="x"),)), ""))
        except CalcFault as fault:
            field = "accuracy" if channel.accuracy else "unit"
            where = self.place(channel.column, field)
            about = str(self.test.id or "")
            self.faults.append(replace(fault.diagnostic, where=where, about=about))
            return False
        return True
