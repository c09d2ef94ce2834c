"""Readings of one quantity over time: where it is drifting, drawn and said, never judged."""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Value
from garboard.records.measured import Measurement
from garboard.views.axes import Axis
from garboard.views.inline import day, short_day
from garboard.views.page import Cell, Drawing
from garboard.views.plot import Frame
from garboard.views.ranges import difference, ends

__all__ = ["drift_plot"]


def drift_plot(book: Book, address: str) -> Iterator[Drawing]:
    """The readings of a quantity against their days.

    Args:
        book: The book.
        address: Of the quantity.

    Yields:
        One drawing, or none where it was read on fewer than two days under its present setting.
    """
    value, source = book.values.get(address), book.source_of(address)
    readings = [
        one for one in book.measured.get(source, ()) if one.on is not None and one.moved is None
    ]
    if value is None or value.si is None or len({one.on for one in readings}) < 2:
        return
    caption = f"{value.label or address}, over time"
    place = re.sub(r"[^a-z0-9]+", "-", address.casefold())
    frame = _draw(book, value, source, readings, f"drift-{place}")
    days = (readings[0].on, readings[-1].on)
    marks = [(one.toordinal(), short_day(one)) for one in days if one]
    yield Drawing(
        f"{caption[0].upper()}{caption[1:]}",
        frame.svg(caption, marks),
        tuple(_sentences(book, value, source, readings)),
    )


def _draw(book: Book, value: Value, source: str, readings: list[Measurement], name: str) -> Frame:
    unit = value.unit
    points = [(float(one.on.toordinal()), unit.from_si(one.si)) for one in readings if one.on]
    design = unit.from_si(value.si or 0.0)
    band = [unit.from_si(end) for end in (value.low, value.high) if end is not None]
    demands = book.demands.get(source, ())
    limits = [unit.from_si(one.limit) for one in demands]
    heights = [y for _, y in points]
    frame = Frame(
        Axis.around([x for x, _ in points], "day of reading", 0.1),
        Axis.around([*heights, *band, *limits, design], unit.text or "count"),
        name,
    )
    if len(band) == 2 and band[0] < band[1]:
        frame.hatch(*band, leaning=False)
    frame.level(design, thick=False)
    for demand, at in zip(demands, limits, strict=True):
        frame.hatch(*((frame.up.low, at) if demand.least else (at, frame.up.high)))
        frame.level(at)
        frame.label(frame.across.high, at, f"limit {demand.text}", above=demand.least, end=True)
    far_at_end = abs(heights[-1] - design) > abs(heights[0] - design)
    side = frame.across.high if far_at_end else frame.across.low
    frame.label(side, design, f"design {value.text}", above=True, end=far_at_end)
    frame.curve(points)
    for one, (x, y) in zip(readings, points, strict=True):
        frame.point(x, y, out=one.out)
    return frame


def _sentences(
    book: Book, value: Value, source: str, readings: list[Measurement]
) -> Iterator[Cell]:
    first, last = readings[0], readings[-1]
    moved = difference(value, last.si - first.si)
    way = "rose by" if last.si > first.si else "fell by"
    how = f"it {way} {moved}" if moved else "it did not move"
    yield (
        f"From {day(first.on)} to {day(last.on)} {how}:"
        f" {', '.join(f'{one.text} ({day(one.on)})' for one in readings)}.",
    )
    found = ends(value, value.low, value.high)
    yield (
        f"Design {value.text}{f', between {found}'.replace(' to ', ' and ', 1) if found else ''}.",
    )
    for demand in book.demands.get(source, ()):
        left = (last.si - demand.limit) * (1 if demand.least else -1)
        gap = difference(value, left)
        words = f"{gap} inside" if left > 0 else f"{gap} past" if gap else "at"
        yield (f"At the last reading it is {words} the limit, {demand.words}.",)
    yield ("A drift is shown and not judged: whether it may go on is for a person to say.",)
