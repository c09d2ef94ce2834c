"""The logged file of a test: each channel drawn over time with its criterion, in sentences, as a table."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.units import as_difference
from garboard.names import is_tag
from garboard.records.criterion import Bound, read_number
from garboard.records.inspection import Test
from garboard.records.logged import LASTED, SORTS, Log, LoggedChannel, show_moment
from garboard.records.logged_criterion import channel_bounds, find_strayed
from garboard.views.axes import Axis
from garboard.views.inline import cell, day, shown
from garboard.views.page import (
    Block,
    Cell,
    Column,
    Drawing,
    Heading,
    Paragraph,
    Plate,
    Row,
    Strong,
    Table,
)
from garboard.views.plot import Frame

__all__ = ["log_blocks"]

SCALES = ((3 * 3600.0, 3600.0, "h"), (180.0, 60.0, "min"), (0.0, 1.0, "s"))
"""From how many seconds on the axis counts in which unit."""
MOMENT = re.compile(r"\b(?:at|after) (?P<number>\d+(?:\.\d+)?) (?P<unit>s|min|h)\b")
SECONDS = {"s": 1.0, "min": 60.0, "h": 3600.0}
Spot = tuple[float, float, str]
"""Seconds from the first row, SI, and the reading as written."""


def log_blocks(book: Book, test: Test) -> Iterator[Block]:
    """What was logged in a test.

    Args:
        book: Where values and instruments are looked up.
        test: The record.

    Yields:
        A heading, then for each channel its plot and a table; nothing where nothing was logged.
    """
    log = book.content.logged.get(str(test.id))
    if test.log is None:
        return
    yield Heading("As logged")
    if log is None or not log.seconds:
        said = f"The file {test.log.file} cannot be read as written, so nothing of it is drawn."
        yield Paragraph((Strong(said),))
        return
    yield Paragraph(_about(test, log))
    if log.lost:
        said = f"Not read: {', '.join(log.lost)}. What stands against this page says why."
        yield Paragraph((Strong(said),))
    for number, channel in enumerate(log.channels):
        yield _drawing(book, test, log, channel)
        yield _table(book, test, log, channel, with_time=number == 0)


def _about(test: Test, log: Log) -> Cell:
    """Which file, how many rows, when."""
    days = ""
    if log.began and log.ended:
        first, last = log.began, log.ended
        days = f", from {day(first.date())} {first:%H:%M} to {day(last.date())} {last:%H:%M}"
    rows = len(log.seconds)
    counted = f"{rows} row{'' if rows == 1 else 's'} over {show_moment(log.lasts)}{days}"
    return (f"{log.path}: {counted}. {_quoted(test, log)}",)


def _quoted(test: Test, log: Log) -> str:
    named = [one.name for one in log.channels if one.name]
    bare = [one.column for one in log.channels if not one.name]
    said = [f"Quoted as {test.id}.{named[0]}_first and so on."] if named else []
    if bare:
        said.append(f"{', '.join(bare)}: no name to quote it by.")
    return " ".join(said)


@dataclass(frozen=True, slots=True)
class _Track:
    """One channel with all that is drawn of it."""

    test: Test
    log: Log
    channel: LoggedChannel
    bounds: tuple[Bound, ...]
    spots: tuple[Spot, ...]
    """Readings of a person beside it."""


def _drawing(book: Book, test: Test, log: Log, channel: LoggedChannel) -> Drawing:
    bounds = channel_bounds(book.values, test, log, channel)
    track = _Track(test, log, channel, bounds, tuple(_spots(book, test, log, channel)))
    caption = f"{channel.of}, as logged"
    return Drawing(
        f"{caption[0].upper()}{caption[1:]}",
        _draw(track).svg(f"{caption}, {test.id}"),
        tuple(_sentences(book, track)),
    )


def _draw(track: _Track) -> Frame:
    """The frame with band, limits, curve and discs."""
    log, channel, unit = track.log, track.channel, track.channel.unit
    _, scale, counted = next(one for one in SCALES if log.lasts >= one[0])
    ends = [end for one in track.bounds for end in (one.low, one.high) if end is not None]
    beside = [unit.from_si(si) for si in (*ends, *(si for _, si, _ in track.spots))]
    name = f"log-{track.test.id}-{channel.name or channel.column}"
    frame = Frame(
        Axis(0.0, log.lasts / scale or 1.0, f"{counted} from the first row"),
        Axis.around((*channel.numbers, *beside), unit.text or "count"),
        re.sub(r"[^a-z0-9]+", "-", name.casefold()),
    )
    for bound in track.bounds:
        _band(frame, bound, channel)
    times = (seconds / scale for seconds in log.seconds)
    frame.curve(zip(times, channel.numbers, strict=True))
    for seconds, si, _ in track.spots:
        frame.point(seconds / scale, unit.from_si(si))
    return frame


def _band(frame: Frame, bound: Bound, channel: LoggedChannel) -> None:
    """What the criterion allows, dotted, with a line at each end, named where the curve is farther."""
    unit = channel.unit
    low, high = (None if end is None else unit.from_si(end) for end in (bound.low, bound.high))
    foot, head = frame.up.low if low is None else low, frame.up.high if high is None else high
    frame.hatch(foot, head, leaning=False)
    for at, side in ((low, "at least"), (high, "at most")):
        if at is not None:
            frame.level(at)
            text = f"{side} {_tidy(at)} {unit.text}".rstrip()
            at_end = abs(channel.numbers[-1] - at) >= abs(channel.numbers[0] - at)
            place = frame.across.high if at_end else frame.across.low
            frame.label(place, at, text, above=side == "at least", end=at_end)


def _tidy(number: float) -> str:
    return f"{number:.6g}"


def _spots(book: Book, test: Test, log: Log, channel: LoggedChannel) -> Iterator[Spot]:
    """Readings of the record that say at which moment, where only this channel can be meant."""
    if sum(one.unit.type == channel.unit.type for one in log.channels) != 1:
        return
    for number, reading in enumerate(test.readings):
        found = MOMENT.search(reading.of)
        value = read_number(book.values, reading.value, test.place(f"readings[{number}].value"))
        if found and value and value.type == channel.unit.type:
            seconds = float(found["number"]) * SECONDS[found["unit"]]
            if seconds <= log.lasts:
                yield seconds, (value.low + value.high) / 2, reading.value


def _sentences(book: Book, track: _Track) -> Iterator[Cell]:
    log, channel = track.log, track.channel
    yield (_course(log, channel),)
    for bound in track.bounds:
        strayed = find_strayed(track.test, log, channel, bound)
        if strayed is None:
            yield (f"Criterion {bound.shown}, drawn as a dotted band: kept.",)
        else:
            yield (
                f"Criterion {bound.shown}, drawn as a dotted band: ",
                Strong("not kept"),
                f", {strayed.words}.",
            )
    if not track.bounds:
        yield ("The criterion sets no bound to it that could be drawn.",)
    if track.spots:
        read = ", ".join(f"{text} {_moment(seconds)}" for seconds, _, text in track.spots)
        yield (f"Read beside it by a person, marked as discs: {read}.",)
    if channel.instrument:
        fitted = is_tag(channel.instrument) and channel.instrument in book.components
        name = Plate(channel.instrument) if fitted else channel.instrument
        known = (book.content.vessel.instruments or {}).get(channel.instrument)
        yield ("Logged with ", name, f", {known.what}." if known and known.what else ".")


def _course(log: Log, channel: LoggedChannel) -> str:
    """From where to where it went, and its ends."""
    first, last, low, high = (channel.row_of(sort) for sort in SORTS)
    unit = as_difference(channel.unit)
    gap = float(f"{channel.numbers[last] - channel.numbers[first]:.6g}")
    went = f"{'rose' if gap > 0 else 'fell'} by {abs(gap):g} {unit.text}".rstrip()
    moved = went if gap else "ended where it began"
    return (
        f"From {channel.shown(first)} to {channel.shown(last)} in {show_moment(log.lasts)}: it {moved}."
        f" Lowest {channel.shown(low)} {_when(log, low)}, highest {channel.shown(high)} {_when(log, high)}."
    )


def _when(log: Log, row: int) -> str:
    return _moment(log.seconds[row])


def _moment(seconds: float) -> str:
    return f"at {show_moment(seconds)}" if seconds else "at the start"


def _table(book: Book, test: Test, log: Log, channel: LoggedChannel, *, with_time: bool) -> Table:
    """First, last, lowest, highest and how long; each where a link to its value lands."""
    rows = []
    for sort in SORTS:
        row = channel.row_of(sort)
        address = f"{test.id}.{channel.name}_{sort}" if channel.name else ""
        value: Cell = (shown(book, address),) if address in book.values else (channel.shown(row),)
        rows.append(Row(((sort,), value, (_when(log, row),)), address))
    address = f"{test.id}.{LASTED}"
    lasted = cell(book, address) if address in book.values else (show_moment(log.lasts),)
    rows.append(Row((("lasted",), lasted, ("first row to last",)), address if with_time else ""))
    tolerance = f", good to {channel.accuracy}" if channel.accuracy else ""
    columns = (Column(channel.of), Column("value", number=True, strong=True), Column("when"))
    return Table(f"{channel.name or channel.column}: {channel.of}{tolerance}", columns, tuple(rows))
