"""The legend of a sheet: the lines, symbols and marks that are used on it, and no others."""

from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from garboard.records.component_kinds import position_word
from garboard.schematic.letters import width_of
from garboard.schematic.line_styles import line_style
from garboard.schematic.looks import look_of
from garboard.schematic.marks import WIDE, frame_of
from garboard.schematic.overlays import Band, Overlay
from garboard.schematic.shapes import SHAPES
from garboard.schematic.sheet import STEP, Box, Point, Sheet
from garboard.schematic.symbol import Look
from garboard.schematic.symbols import draw_symbol
from garboard.systems.plant import Plant

__all__ = ["Entry", "Legend", "legend_entries", "set_out"]

ROOM = 48
"""For a sample, in drawing units."""
ROW = 30
GAP = 8
BETWEEN = 22
SHOWN_BY_NAME = ("receiver", "tank", "consumer", "load", "compartment", "tee", "bus")
"""Kinds that are told by the words in or beside them."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of a legend."""

    sample: str
    """Drawn about its middle, in a room of 48 by 28 units."""
    words: str


def legend_entries(sheet: Sheet, plant: Plant, overlay: Overlay | None) -> tuple[Entry, ...]:
    """What the legend of a sheet must explain: marks of the overlay first, then pipes, then symbols."""
    marks = _marks(overlay) if overlay else ()
    return (*marks, *_pipes(sheet, plant), *_symbols(sheet, plant))


def _pipes(sheet: Sheet, plant: Plant) -> Iterator[Entry]:
    services = plant.system.services or {}
    drawn = {one.service for one in sheet.lines} | {one.service for one in sheet.bars}
    for name in (*services, *sorted(drawn - set(services))):
        if name in drawn:
            style = line_style(name, services)
            yield Entry(f'<path {style.attributes} d="M-22,0H22"/>', name or "service not written")


def _symbols(sheet: Sheet, plant: Plant) -> Iterator[Entry]:
    seen: set[tuple[str, bool, bool]] = set()
    for one in sheet.symbols:
        look = look_of(plant, one.tag)
        key = (one.kind, look.shut, look.locked)
        if key in seen or one.kind in SHOWN_BY_NAME:
            continue
        seen.add(key)
        part = plant.part(one.tag)
        words = one.kind
        if part is not None and len(part.names) > 1 and not look.closed:
            words += f", {position_word(one.kind, part.names[part.usual])}"
        if look.locked:
            words += ", locked"
        yield Entry(_sample(one.kind, look), f"{words}{_letters(one.kind, look)}")


def _letters(kind: str, look: Look) -> str:
    return f" ({look.letters})" if draw_symbol(kind, look).letters and look.letters else ""


def _sample(kind: str, look: Look) -> str:
    """A symbol made small enough for its line; its letters would be too small to read."""
    shape = SHAPES[kind]
    scale = min(
        0.75, 22 / (STEP * max(1, shape.half_width)), 15 / (STEP * max(1, shape.half_height))
    )
    return f'<g transform="scale({scale:.2g})">{draw_symbol(kind, look).strokes}</g>'


def _marks(overlay: Overlay) -> Iterator[Entry]:
    room = Box(-13, -8, 13, 8)
    for mark in dict.fromkeys(overlay.marks.values()):
        yield Entry(
            f'<g class="mark" stroke="#a3121c" transform="scale(.8)">{frame_of(mark, room)}</g>',
            str(mark),
        )
    for band in dict.fromkeys(overlay.bands.values()):
        yield Entry(_band(band), str(band))


def _band(band: Band) -> str:
    if band is Band.DEAD:
        return '<path stroke-width="2" stroke-dasharray="4 6" d="M-22,0H22"/>'
    broken_up = ' stroke-dasharray="9 6"' if band is Band.CHARGED else ""
    off = WIDE // 2 - 1
    edges = f'stroke-width="2.5"{broken_up} d="M-22,-{off}H22M-22,{off}H22"'
    return (
        f'<path class="mark" stroke="#a3121c" {edges}/>' + '<path stroke-width="4" d="M-22,0H22"/>'
    )


@dataclass(frozen=True, slots=True)
class Legend:
    """Entries set out in columns from top to foot."""

    columns: tuple[tuple[Entry, ...], ...]
    lefts: tuple[int, ...]
    """Where each column begins."""

    @property
    def height(self) -> int:
        """In drawing units."""
        return ROW * max((len(one) for one in self.columns), default=0)

    def draw(self, corner: Point) -> str:
        """The legend, its corner at a place."""
        left, top = corner
        return "".join(
            _entry(entry, (left + across, top + ROW * number + ROW // 2))
            for column, across in zip(self.columns, self.lefts, strict=True)
            for number, entry in enumerate(column)
        )


def set_out(entries: tuple[Entry, ...], width: int) -> Legend:
    """A legend in as few rows as fit a width [drawing units]."""
    for rows in range(1, len(entries) + 1):
        columns = tuple(entries[at : at + rows] for at in range(0, len(entries), rows))
        widths = [ROOM + GAP + max(width_of(one.words) for one in column) for column in columns]
        if sum(widths) + BETWEEN * (len(widths) - 1) <= width or rows == len(entries):
            lefts = [round(sum(widths[:n]) + BETWEEN * n) for n in range(len(widths))]
            return Legend(columns, tuple(lefts))
    return Legend((), ())


def _entry(entry: Entry, at: Point) -> str:
    x, y = at
    words = f'<text x="{x + ROOM + GAP}" y="{y + 5}" fill="currentColor" stroke="none">'
    sample = f'<g transform="translate({x + ROOM // 2},{y})">{entry.sample}</g>'
    return f"{sample}{words}{escape(entry.words)}</text>"
