"""Read the text of a CSV file into a head and rows of cells, each with its place.

Columns are parted by commas or by semicolons, as the head shows. Lines before the head that begin
with `#` are remarks. A quoted cell stands on one line. What does not fit the head is refused.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from garboard.errors import Where

__all__ = ["MOST_ROWS", "Cell", "CsvRows", "Slip", "read_rows"]

MOST_ROWS = 100_000
MOST_COLUMNS = 100
LONGEST_LINE = 5_000
"""Signs; a row of a logger comes nowhere near it."""
REMARK = "#"
QUOTED = re.compile(r'\s*"(?P<text>(?:[^"]|"")*)"\s*')


class Cell(NamedTuple):
    """One cell without the blanks about it, and the sign of its line at which it begins."""

    text: str
    column: int


class Slip(NamedTuple):
    """What is wrong, where, and what to do."""

    where: Where
    text: str
    cure: str


@dataclass(frozen=True, slots=True)
class CsvRows:
    """A file as a head and its rows."""

    separator: str
    head: tuple[Cell, ...]
    """Empty where there is none that can be read."""
    head_at: Where
    rows: tuple[tuple[Cell, ...], ...]
    lines: tuple[int, ...]
    """The line of each row."""
    slips: tuple[Slip, ...]


class _UnclosedError(Exception):
    """A quote is not closed on its line; carries the sign at which it opens."""

    def __init__(self, column: int) -> None:
        super().__init__(column)
        self.column = column


def read_rows(text: str, path: str) -> CsvRows:
    """Read a file.

    Args:
        text: With plain line feeds and without a byte order mark.
        path: Of the file, for places.

    Returns:
        Every row that fits the head, and a slip for each that does not.
    """
    lines = text.rstrip("\n").split("\n")
    first = next((at for at, line in enumerate(lines) if _counts(line)), None)
    if first is None:
        slip = Slip(Where(path), "no head and no rows", "write the names of the columns, then rows")
        return CsvRows(",", (), Where(path), (), (), (slip,))
    separator = ";" if ";" in lines[first] else ","
    slips: list[Slip] = []
    head = _cells(lines[first], separator, Where(path, first + 1), slips)
    if not head:
        return CsvRows(separator, (), Where(path, first + 1), (), (), tuple(slips))
    if len(head) < 2 or len(head) > MOST_COLUMNS:
        said = f"the head has {len(head)} column{'' if len(head) == 1 else 's'}"
        cure = "part the columns with commas, or with semicolons where numbers have decimal commas"
        slips.append(Slip(Where(path, first + 1), said, cure))
        return CsvRows(separator, (), Where(path, first + 1), (), (), tuple(slips))
    rows: list[tuple[Cell, ...]] = []
    places: list[int] = []
    for at, line in enumerate(lines[first + 1 :], first + 2):
        if at - first - 2 == MOST_ROWS:
            said = f"more than {MOST_ROWS} rows"
            slips.append(
                Slip(Where(path, at), said, "log less often, or split the test into several")
            )
            break
        cells = _row(line, separator, Where(path, at), len(head), slips)
        if cells:
            rows.append(cells)
            places.append(at)
    if not rows and not slips:
        slips.append(Slip(Where(path, first + 1), "a head and no rows", "write the rows under it"))
    return CsvRows(
        separator, head, Where(path, first + 1), tuple(rows), tuple(places), tuple(slips)
    )


def _counts(line: str) -> bool:
    bare = line.strip()
    return bool(bare) and not bare.startswith(REMARK)


def _row(
    line: str, separator: str, where: Where, wanted: int, slips: list[Slip]
) -> tuple[Cell, ...]:
    """The cells of a row; none where they do not fit the head, which is then noted."""
    if not line.strip():
        slips.append(Slip(where, "an empty row", "delete it, or write what was read"))
        return ()
    cells = _cells(line, separator, where, slips)
    if not cells or len(cells) == wanted:
        return cells
    said = f"{len(cells)} cells under {wanted} columns"
    cure = "write one cell for each column"
    if separator == "," and len(cells) > wanted:
        cure = "part the columns with semicolons where numbers have decimal commas"
    slips.append(Slip(where, said, cure))
    return ()


def _cells(line: str, separator: str, where: Where, slips: list[Slip]) -> tuple[Cell, ...]:
    if len(line) > LONGEST_LINE:
        said = f"a line of {len(line)} signs, more than {LONGEST_LINE}"
        slips.append(Slip(where, said, "see whether this is the file of the log"))
        return ()
    if '"' not in line:
        return tuple(_plain(line, separator))
    try:
        return tuple(_quoted(line, separator))
    except _UnclosedError as stop:
        place = Where(where.path, where.line, stop.column)
        cure = "close it before the next column; a cell stands on one line"
        slips.append(Slip(place, "a quote that does not hold one whole cell", cure))
        return ()


def _plain(line: str, separator: str) -> Iterator[Cell]:
    start = 0
    for part in line.split(separator):
        text = part.strip()
        yield Cell(text, start + len(part) - len(part.lstrip()) + 1)
        start += len(part) + 1


def _quoted(line: str, separator: str) -> Iterator[Cell]:
    """The cells of a line some of which stand in quotes.

    Raises:
        _UnclosedError: A quote holds no whole cell.
    """
    start = 0
    while start <= len(line):
        found = QUOTED.match(line, start)
        end = found.end() if found else line.find(separator, start)
        end = len(line) if end < 0 else end
        part = line[start:end]
        if (found and end < len(line) and line[end] != separator) or (not found and '"' in part):
            raise _UnclosedError(start + part.index('"') + 1)
        text = found["text"].replace('""', '"') if found else part
        yield Cell(text.strip(), start + len(part) - len(part.lstrip()) + 1)
        start = end + 1
