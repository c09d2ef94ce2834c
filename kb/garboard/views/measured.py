"""What was measured beside what was designed: one scale for a quantity, and a table of the readings."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.calc.units import Unit
from garboard.calc.value import Value
from garboard.records.calibration import Calibrated
from garboard.records.measured import Measurement
from garboard.views.figures import Ladder, RungSort
from garboard.views.inline import day, person, short_day
from garboard.views.page import Cell, Column, Link, Plate, Row, Run, Strong, Table
from garboard.views.ranges import ends, spread_words
from garboard.views.scale import Height, ladder_to_scale
from garboard.views.zones import Mark, zone_marks

__all__ = [
    "demands_on",
    "measured_table",
    "quantity_ladder",
    "quantity_tables",
    "reading_marks",
    "zone_ladder",
]

MOST_PLATES = 3
BESIDE = ("rating", "relief", "trip", "high alarm", "low alarm")
"""What of a pressure zone stands on the scale of one quantity in it."""


def measured_table(book: Book, readings: Iterable[Measurement]) -> Table:
    """Every reading in words, by quantity and day, of any number of quantities.

    Args:
        book: Where values and roles are looked up.
        readings: Of quantities that have a design value.
    """
    rows = tuple(
        Row(((f"{_name(book, one.named)}: {_designed(book, one.named)}",), *_said(book, one)))
        for one in readings
    )
    columns = (Column("designed"), *COLUMNS)
    return Table("Measured against designed", columns, rows, "nothing measured")


def quantity_tables(book: Book, readings: Iterable[Measurement]) -> Iterator[Table]:
    """The same, a table for each quantity."""
    grouped: dict[str, list[Measurement]] = {}
    for one in readings:
        grouped.setdefault(one.named, []).append(one)
    for named, own in grouped.items():
        caption = f"Measured: {_name(book, named)}, designed {_designed(book, named)}"
        yield Table(caption, COLUMNS, tuple(Row(_said(book, one)) for one in own))


COLUMNS = (
    Column("read", number=True),
    Column("stands"),
    Column("when, by whom, test"),
    Column("instrument"),
)


def _said(book: Book, one: Measurement) -> tuple[Cell, ...]:
    link = Link(str(one.test.id), str(one.test.id))
    return (
        (Strong(one.text),),
        stands(one),
        (f"{day(one.on)}, {person(book, one.test.did)}, ", link),
        _instrument(book, one),
    )


def _name(book: Book, address: str) -> str:
    value = book.values.get(address)
    return (value.label if value else "") or address


def _designed(book: Book, address: str) -> str:
    value = book.values.get(address)
    if value is None:
        return "not recorded"
    return f"{value.text}, {spread_words(value)}"


def _instrument(book: Book, one: Measurement) -> Cell:
    named = one.reading.instrument
    if named is None:
        return (Strong("none named"),)
    known: Run = Plate(named) if named in book.components else named
    held = one.calibration
    if held.state is Calibrated.IN_DATE:
        until = f", due {day(held.due)}" if held.due else ""
        return (known, f", calibration in date that day{until}")
    why = f": {held.why}" if held.why else ""
    return (known, ", ", Strong(f"calibration {held.state}"), why)


def stands(one: Measurement) -> Cell:
    """How a reading stands against what the book says now, in words."""
    if one.moved:
        link = Link(str(one.moved.id), str(one.moved.id))
        return ("read before ", link, " gave it another value")
    said: list[Run] = []
    if not one.inside:
        said.append(Strong("outside the tolerance"))
    for demand in one.broken:
        said += ["; " if said else "", Strong(f"outside the limit, {demand.words}")]
    if not said:
        return ("in tolerance",)
    if one.finding is None:
        return (*said, "; no finding says so")
    return (*said, "; see ", Link(str(one.finding.id), str(one.finding.id)))


def demands_on(book: Book, address: str) -> Iterator[Height]:
    """What calculations demand of a quantity, as marks."""
    for demand in book.demands.get(address, ()):
        block = demand.requirement.block
        word = "at least" if demand.least else "at most"
        yield Height(demand.limit, word, (demand.text,), ("asked by ", Link(block, block)))


def reading_marks(readings: Iterable[Measurement]) -> Iterator[Height]:
    """Readings of the present setting, as marks."""
    for one in readings:
        if one.moved is None:
            sort = RungSort.OUT if one.out else RungSort.MEASURED
            about: Cell = (f"{short_day(one.on)}, ", Link(str(one.test.id), str(one.test.id)))
            if one.out:
                about = (*about, ", ", Strong("out"))
            if one.finding:
                about = (*about, ", see ", Link(str(one.finding.id), str(one.finding.id)))
            yield Height(one.si, "measured", (one.text,), about, sort, strong=one.out)


def quantity_ladder(book: Book, address: str) -> Iterator[Ladder]:
    """The scale of one quantity: design, limits, what its zone sets, what was measured.

    Args:
        book: The book.
        address: Of the quantity, as a part or a calculation has it.

    Yields:
        One ladder, or none where there is only the design value.
    """
    value = book.values.get(address)
    if value is None or value.si is None:
        return
    source = book.source_of(address)
    design = _design(value)
    marks = [
        *demands_on(book, source),
        *reading_marks(book.measured.get(source, ())),
        *_neighbours(book, value, source),
    ]
    if marks:
        yield ladder_to_scale(_caption(value), (design, *marks), value.unit)


def _design(value: Value) -> Height:
    band = None
    if value.low is not None and value.high is not None and value.low < value.high:
        band = (value.low, value.high)
    about = (
        (f"between {ends(value, *band).replace(' to ', ' and ', 1)}",)
        if band
        else (spread_words(value),)
    )
    return Height(
        value.si or 0.0, "design", (Strong(value.text),), about, RungSort.DESIGN, band=band
    )


def _caption(value: Value) -> str:
    words = value.label or value.address
    unit = f", {value.unit.text}" if value.unit.text else ""
    return f"{words[0].upper()}{words[1:]}{unit}: designed, limited, measured"


def _neighbours(book: Book, value: Value, source: str) -> Iterator[Height]:
    """What else is set in the pressure zone of a part."""
    tag = value.address.partition(".")[0]
    part = book.components.get(tag)
    system = book.systems.get(part.system) if part else None
    for marks in zone_marks(book, system) if system else ():
        here = any(mark.value.address == value.address for mark in marks)
        if here:
            yield from _merged(
                [
                    mark
                    for mark in _weakest(marks)
                    if mark.word in BESIDE and book.source_of(mark.value.address) != source
                ]
            )


def _weakest(marks: list[Mark]) -> list[Mark]:
    """Of several ratings the least, which is reached first; all other marks."""
    rated = [mark.value.si or 0.0 for mark in marks if mark.word == "rating"]
    least = min(rated, default=0.0)
    return [mark for mark in marks if mark.word != "rating" or mark.value.si == least]


def zone_ladder(book: Book, marks: list[Mark]) -> Ladder:
    """The scale of a pressure zone: everything set in it, with the newest reading of each.

    The day of a reading is left to the table of readings and the test, so that a row is one line on paper.

    Args:
        book: The book.
        marks: At least one.
    """
    unit = marks[0].value.unit
    what = "pressures above the atmosphere" if unit.text.endswith("(g)") else "values"
    caption = f"From the top, to scale: {what}{_in(unit)}"
    owners: dict[str, str] = {}
    for mark in marks:
        owners.setdefault(book.source_of(mark.value.address), mark.part.tag)
    read = [
        Height(one.si, one.word, one.cell, (Plate(tag), ", ", *one.about[1:]), one.sort, one.strong)
        for source, tag in owners.items()
        for one in reading_marks(book.measured.get(source, ())[-1:])
    ]
    return ladder_to_scale(caption, (*_merged(marks), *read), unit)


def _in(unit: Unit) -> str:
    return f", {unit.text}" if unit.text else ""


def _merged(marks: list[Mark]) -> Iterator[Height]:
    """Marks of one word and one value are one."""
    merged: dict[tuple[str, str], list[Mark]] = {}
    for mark in marks:
        merged.setdefault((mark.word, mark.value.text), []).append(mark)
    for (word, text), alike in merged.items():
        value, normal = alike[0].value, word == "normal"
        low, high = value.low, value.high
        band = (
            (low, high) if normal and low is not None and high is not None and low < high else None
        )
        sort = RungSort.DESIGN if normal else RungSort.LIMIT
        yield Height(
            value.si or 0.0,
            word,
            (Strong(text),),
            _plates(alike),
            sort,
            strong=not normal,
            band=band,
        )


def _plates(marks: list[Mark]) -> Cell:
    runs: list[Plate | str] = []
    for mark in marks[:MOST_PLATES]:
        runs += [Plate(mark.part.tag), " "]
    more = len(marks) - MOST_PLATES
    return (*runs, f"and {more} more") if more > 0 else tuple(runs)
