"""A test that looks for leaks, told from one that proves strength; and how high it may go with gas.

Two limits, up to which a gas in it is no more than the day's work:

- 25 psi(g), 1.72 bar(g): 46 CFR 56.97-1(b)(3) lets a gas test that only looks for large leaks go so far (read
  as restated, not in the original; verify before citing).
- The rating of every part tested, where each holds gas in service anyway and has passed a strength test with
  water before, so that nothing sees more than it does every day (common practice, no source).
"""

import re
from collections.abc import Iterable, Iterator
from typing import Final

from garboard.book import Book
from garboard.calc.fault import CalcFault
from garboard.calc.kinds import PRESSURE, Kind
from garboard.calc.quantity import read_quantity
from garboard.calc.value import Value
from garboard.errors import Where
from garboard.names import ADDRESS
from garboard.records.inspection import PlanLine, Result, Test
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left
from garboard.rules.recorded import recorded
from garboard.systems.medium import Medium, medium_of

__all__ = ["LOW", "LOW_SHOWN", "ROUNDING", "highest_said", "is_tightness", "within_daily_work"]

LOW_SHOWN: Final = "25 psi(g)"
LOW: Final = 25 * 6_894.757
"""Gauge [Pa]; factor of NIST SP 811, appendix B.8. A number, so that an unchanged handbook loads no units."""
ROUNDING: Final = 0.005
"""Share by which a rounded pressure may stand above a limit: 1.73 bar(g) is 25 psi(g)."""
TIGHT: Final = re.compile(r"\b(leaks?|leakage|tightness|soap|bubbles?)\b", re.IGNORECASE)
STRENGTH: Final = re.compile(
    r"\b(strength|proof|hydro\w*|overpressure)\b|\bpressure[- ]test", re.IGNORECASE
)
PRESSURE_SAID: Final = re.compile(r"\d+(?:\.\d+)?\s?(?:mbar|bar|kPa|MPa|Pa|psi)\(g\)")
WATER: Final = re.compile(r"\bwater\b", re.IGNORECASE)


def is_tightness(words: str) -> bool:
    """Whether a test only looks for leaks; one that says both proves strength.

    >>> is_tightness("leak test with soap"), is_tightness("pressure test, no leaks")
    (True, False)
    """
    return bool(TIGHT.search(words)) and not STRENGTH.search(words)


def highest_said(book: Book, record: Test | PlanLine | Procedure) -> tuple[float, str] | None:
    """The highest gauge pressure that a record says of its test, in Pa and as written; None where none is.

    What stands in its text counts only where its fields say none: a text tells of other tests as well.
    """
    for texts in (_fields(book, record), (record.text,)):
        found = [one for text in texts for one in _pressures(book, text)]
        if found:
            return max(found)
    return None


def within_daily_work(book: Book, test: Test, pressure: float) -> bool:
    """Whether a test goes no higher than parts that hold gas anyway are rated, each proved with water before.

    Args:
        book: The book.
        test: The test.
        pressure: The highest it goes to [Pa(g)].
    """
    parts = [book.components.get(one.tag) for one in test.tested]
    known = [part for part in parts if part is not None]
    return (
        bool(known)
        and len(known) == len(parts)
        and all(
            part.system in book.systems
            and medium_of(book.systems[part.system]) is Medium.GAS
            and (rated := recorded(book, part, "rated")) is not None
            and (most := _gauge(rated)) is not None
            and pressure <= most * (1 + ROUNDING)
            and _proved(book, str(part.tag), test)
            for part in known
        )
    )


def _proved(book: Book, tag: str, test: Test) -> bool:
    """Whether a part passed a strength test with water, not after this one."""
    return any(
        one.result is Result.PASS
        and not has_left(one)
        and WATER.search(one.medium or "")
        and not is_tightness(f"{one.what} {one.title}")
        and any(item.tag == tag for item in one.tested)
        and (one.on is None or test.on is None or one.on <= test.on)
        for one in book.of_kind(Test)
        if one.id != test.id
    )


def _fields(book: Book, record: Test | PlanLine | Procedure) -> Iterator[str]:
    """What a record says of how it is done, apart from its text."""
    match record:
        case Test():
            yield from (str(one) for one in (record.what, record.title, record.criterion) if one)
            yield from (str(one.value) for one in record.readings if one.value)
            logged = f"{record.id}."
            yield from (one for one in book.values if one.startswith(logged) and "_highest" in one)
        case PlanLine():
            yield from (
                str(one) for one in (record.activity, record.method, record.criterion) if one
            )
        case Procedure():
            yield from filter(None, (record.title, record.purpose, record.stop_if))
            for step in record.steps:
                yield f"{step.do} {step.to or ''} {step.see.value if step.see else ''}"


def _pressures(book: Book, text: str) -> Iterable[tuple[float, str]]:
    """The gauge pressures in a text, typed or quoted."""
    for found in PRESSURE_SAID.finditer(text):
        try:
            quantity = read_quantity(
                " ".join(re.split(r"\s|(?<=\d)(?=[a-zA-Z])", found[0])), Where(""), ""
            )
        except CalcFault:
            continue
        yield quantity.high, found[0]
    for found in ADDRESS.finditer(text):
        value = book.values.get(found[0])
        most = _gauge(value) if value else None
        if value and most is not None:
            yield most, value.text


def _gauge(value: Value) -> float | None:
    """A gauge pressure [Pa]; None for anything else."""
    if value.type.dimension != PRESSURE or value.type.kind is not Kind.READING:
        return None
    return value.si
