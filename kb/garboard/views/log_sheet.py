"""The log sheet of a watch round: what is written by hand, on paper only."""

from dataclasses import dataclass

from garboard.views.runs import Cell

__all__ = ["LogLine", "LogSheet"]


@dataclass(frozen=True, slots=True)
class LogLine:
    """One stop, with a box for each time it is come to."""

    stop: Cell
    """Plate, or what stands in its stead."""
    area: str
    """The space that one stands in; said once for all stops in it."""
    spot: str
    """Where in it."""
    look: Cell
    """What is looked at or read."""
    band: Cell
    """Between which values it must be; beside the boxes."""
    if_not: Cell
    due: tuple[bool, ...]
    """For each column, whether it is come to then."""


@dataclass(frozen=True, slots=True)
class LogSheet:
    """One sheet for one day. Nothing that is written on it is kept here."""

    title: str
    every: str
    times: tuple[str, ...]
    """Heads of the columns; an empty one is written by hand."""
    lines: tuple[LogLine, ...]
