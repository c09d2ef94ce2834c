"""Whether a measuring instrument was in calibration on a day.

An instrument is a key of `instruments` in handbook.yml, or the tag of a gauge that is fitted: of that
the certificate of the item counts.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from garboard.records.component import Component
from garboard.records.vessel import Instrument

__all__ = ["Calibrated", "Calibration", "calibration_of"]


class Calibrated(StrEnum):
    """How an instrument stood on a day, in the words of a page."""

    IN_DATE = "in date"
    LAPSED = "lapsed"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Calibration:
    """How an instrument stood on a day, and why."""

    state: Calibrated
    why: str
    """`due 12 months on`; empty where it was in date. Begins as a message of the rules does."""
    due: date | None = None


def calibration_of(
    named: str | None,
    on: date | None,
    instruments: Mapping[str, Instrument],
    components: Mapping[str, Component],
) -> Calibration:
    """How the instrument of a reading stood on the day it was read.

    Args:
        named: As the reading names it; None where it names none.
        on: The day of the reading; None where nobody wrote it down.
        instruments: By their key in handbook.yml.
        components: By tag, for gauges that are fitted.
    """
    if named is None:
        return Calibration(Calibrated.UNKNOWN, "a reading names no instrument")
    part = components.get(named)
    if part is not None:
        item = part.item
        return _between(named, item.tested if item else None, item.due if item else None, on)
    known = instruments.get(named)
    if known is None:
        return Calibration(Calibrated.UNKNOWN, f"{named} is no instrument of the handbook")
    return _between(named, known.calibrated, known.due, on)


def _between(name: str, calibrated: date | None, due: date | None, on: date | None) -> Calibration:
    if calibrated is None:
        why = f"{name} has no day on which it was calibrated"
        return Calibration(Calibrated.UNKNOWN, why, due)
    if on is None:
        return Calibration(Calibrated.UNKNOWN, "", due)
    if due is not None and due < on:
        return Calibration(Calibrated.LAPSED, f"{name} was due {due}, read {on}", due)
    if calibrated > on:
        why = f"{name} was first calibrated {calibrated}, read {on}"
        return Calibration(Calibrated.LAPSED, why, due)
    return Calibration(Calibrated.IN_DATE, "", due)
