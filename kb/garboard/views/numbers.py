"""Every number of the handbook as a row of plain data, for programs, spreadsheets and notebooks."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.kinds import words
from garboard.calc.sheet import Sheet, WorkedLine
from garboard.calc.units import Unit
from garboard.calc.value import Citation, Value
from garboard.names import is_identifier
from garboard.views.contents import Target
from garboard.views.inline import title_of
from garboard.views.page import Page

__all__ = ["NumberRow", "SourceCited", "in_unit", "number_rows"]

DIGITS = 12
"""Significant digits of a number in its own unit; in SI every bit is kept."""


@dataclass(frozen=True, slots=True)
class SourceCited:
    """Where a number comes from."""

    source: str
    """A key of sources.yml, the id of a record, a tag, or `assumed`."""
    clause: str
    title: str
    edition: str
    read: str
    """original, secondary or remembered; empty where nobody said."""


@dataclass(frozen=True, slots=True)
class NumberRow:
    """One number, with everything a reader needs to trust it or not."""

    address: str
    """How it is quoted: `receiver-sizing.n`, `SA-RV-001.set`, `site.atmosphere`."""
    label: str
    """What it is."""
    text: str
    """As the handbook shows it; `not computed` where it is not."""
    unit: str
    """Of value, low, high and the usual ends; empty for a plain number."""
    kind: str
    """What it measures and counts from: gauge pressure, absolute pressure, amount of free air."""
    value: float | None
    low: float | None
    """The ends when everything is at its worst."""
    high: float | None
    usual_low: float | None
    """What it usually lies between."""
    usual_high: float | None
    si: float | None
    """The same five in SI units, to the last bit; a gauge pressure in Pa above the atmosphere."""
    si_low: float | None
    si_high: float | None
    si_usual_low: float | None
    si_usual_high: float | None
    origin: str
    """given, given by a method, worked out, or drawn from another address."""
    tolerance: str
    """As written; empty where none is stated."""
    sources: tuple[SourceCited, ...]
    uses: tuple[str, ...]
    """Addresses it is worked out from directly."""
    written: str
    """Its line as written; empty where it stands in no calculation."""
    worked: str
    """Its line worked out: symbols = numbers = result."""
    page: str
    """Path and place of its page in the site."""
    block: str
    """The calculation it stands in."""
    record: str
    """The record or part it belongs to."""
    review: str
    """How far that page may be relied on, in its own words."""
    fault: str
    """Why it is not computed."""


def number_rows(
    book: Book, pages: tuple[Page, ...], targets: Mapping[str, Target]
) -> Iterator[NumberRow]:
    """A row for each number, in order of address.

    Args:
        book: The book.
        pages: Every page of the handbook.
        targets: Where each name leads.
    """
    lines = dict(_lines(book))
    reviews = {page.path: page.review.words for page in pages}
    for address, value in sorted(book.values.items()):
        target = targets[address]
        block = address.partition(".")[0]
        sheet = book.network.sheets.get(block)
        line = lines.get(address)
        low, high = value.usual or (None, None)
        ends = _finite((value.si, value.low, value.high, low, high))
        yield NumberRow(
            address,
            value.label,
            value.text,
            value.unit.text,
            _kind(value),
            *in_unit(value.unit, ends),
            *ends,
            _origin(value, address, book),
            value.tolerance,
            tuple(_cited(book, one) for one in value.sources),
            value.uses,
            line.written if line else "",
            line.worked if line and value.si is not None else "",
            f"{target.path}.html#{target.anchor}" if target.anchor else f"{target.path}.html",
            block if sheet else "",
            sheet.owner if sheet else block if is_identifier(block) else "",
            reviews.get(target.path, ""),
            value.fault.text if value.fault else "",
        )


Ends = tuple[float | None, float | None, float | None, float | None, float | None]


def in_unit(unit: Unit, ends: Ends) -> Ends:
    """A number and its ends in a unit, without the last figures of a float.

    Args:
        unit: The unit.
        ends: In SI: the number, its ends at worst, its usual ends.
    """
    a, b, c, d, e = (None if si is None else float(f"{unit.from_si(si):.{DIGITS}g}") for si in ends)
    return a, b, c, d, e


def _finite(ends: Ends) -> Ends:
    """Ends that are numbers; what has no end is not known."""
    a, b, c, d, e = (None if si is None or not math.isfinite(si) else si for si in ends)
    return a, b, c, d, e


def _kind(value: Value) -> str:
    said = words(value.type)
    return said.removeprefix("an ").removeprefix("a ")


def _origin(value: Value, address: str, book: Book) -> str:
    source = book.source_of(address)
    if source != address:
        return f"drawn from {source}"
    if value.given and address.partition(".")[0] in book.network.sheets and address.count(".") > 1:
        return "given by a method"
    return "given" if value.given else "worked out"


def _lines(book: Book) -> Iterator[tuple[str, WorkedLine]]:
    for sheet in book.network.sheets.values():
        for line in sheet.lines:
            yield from _within(sheet, line, "")


def _within(sheet: Sheet, line: WorkedLine, before: str) -> Iterator[tuple[str, WorkedLine]]:
    if line.name:
        yield f"{sheet.name}.{before}{line.name}", line
    for step in line.steps:
        yield from _within(sheet, step, f"{line.name}.")


def _cited(book: Book, citation: Citation) -> SourceCited:
    known = book.content.sources.get(citation.source)
    if known is None:
        title = title_of(book, citation.source)
        return SourceCited(citation.source, citation.clause, title, "", "")
    seen = str(known.seen) if known.seen else ""
    return SourceCited(citation.source, citation.clause, known.title, known.edition or "", seen)
