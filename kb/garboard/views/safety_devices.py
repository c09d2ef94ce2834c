"""Safety devices: what must work by itself, what it guards, when it was last proved, when it is due."""

from collections.abc import Iterator
from dataclasses import replace

from garboard.book import Book
from garboard.calc.value import Value
from garboard.records.calibration import Calibrated, calibration_of
from garboard.records.component import Component
from garboard.records.inspection import Result, Test
from garboard.records.margins import margin
from garboard.records.safety_device import is_safety_device
from garboard.records.standing import has_left
from garboard.views.draft import Draft
from garboard.views.inline import day, person, shown
from garboard.views.page import (
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Run,
    Strong,
    Table,
)
from garboard.views.ranges import difference

__all__ = ["safety_device_table", "safety_devices"]

SETTINGS = ("set", "cuts_out", "trip", "rated")
"""Where a device says at what it acts, the first that it has."""
TITLES = ("device", "acts at", "guards", "limit", "margin", "last test", "next due")
AIR = "site.atmosphere"
NONE = "none recorded"


def safety_devices(draft: Draft) -> None:
    """The register of the vessel: what has no proof or is late first, then system by system."""
    book = draft.book
    draft.add(
        Paragraph(
            (
                "Margin: how far the limit stands above what the device acts at, with both at their worse"
                " end. A date says that it was tested, not that it will work tonight.",
            )
        )
    )
    for code, system in book.systems.items():
        table = safety_device_table(book, code, "What guards what, and its last test")
        if table.rows:
            draft.add(Heading(system.title), table)


def safety_device_table(book: Book, system: str, caption: str = "Safety devices") -> Table:
    """The safety devices of one system.

    Args:
        book: The book.
        system: Its code.
        caption: Over the table.
    """
    rows = tuple(
        Row(tuple(_cells(book, str(tag), part)), str(tag))
        for tag, part in book.components.items()
        if is_safety_device(part) and part.system == system
    )
    return Table(
        caption, tuple(map(Column, TITLES)), rows, "no safety device is recorded", across=True
    )


def _cells(book: Book, tag: str, part: Component) -> Iterator[Cell]:
    guarded = tuple(dict.fromkeys(map(str, (*part.protects, *part.watches, *part.stops))))
    acts = _acts_at(book, tag)
    limit = _limit(book, acts, guarded)
    yield (Plate(tag), f" {part.name or part.kind}")
    yield (shown(book, acts.address),) if acts else ("not recorded",)
    yield _plates(guarded) or ("not recorded",)
    yield (replace(shown(book, limit[1].address), strong=True),) if limit else (NONE,)
    yield _margin(acts, limit)
    last = _last_of(book, tag)
    yield (*_last_test(book, last, part), *_paper(part, last))
    yield _next_due(book, last, part)


def _plates(tags: tuple[str, ...]) -> Cell:
    runs: list[Run] = []
    for tag in tags:
        runs += [" "] if runs else []
        runs.append(Plate(tag))
    return tuple(runs)


def _acts_at(book: Book, tag: str) -> Value | None:
    found = (book.values.get(f"{tag}.{name}") for name in SETTINGS)
    return next((value for value in found if value is not None), None)


def _limit(book: Book, acts: Value | None, guarded: tuple[str, ...]) -> tuple[float, Value] | None:
    """The nearest rating of anything guarded that can be compared, with the margin below it."""
    found = []
    for tag in guarded:
        rated = book.values.get(f"{tag}.rated")
        left = margin(acts, rated, book.values.get(AIR)) if acts and rated else None
        if rated and left is not None:
            found.append((left, rated))
    return min(found, key=lambda pair: (pair[0], pair[1].address), default=None)


def _margin(acts: Value | None, limit: tuple[float, Value] | None) -> Cell:
    if acts is None or limit is None:
        return ("cannot be told",)
    words = difference(acts, limit[0])
    if limit[0] < 0:
        return (Strong(f"{words} past it"),)
    return (words or Strong("none"),)


def _next_due(book: Book, last: Test | None, part: Component) -> Cell:
    """The day of the item; after a test that did not pass it says nothing any more."""
    due = part.item.due if part.item else None
    if last and last.result is not Result.PASS:
        return (Strong("now: the last test did not pass"), *((f"; was {day(due)}",) if due else ()))
    late: Cell = (Strong("overdue since "),) if due and due < book.today else ()
    return (*late, day(due)) if due else ("no day recorded",)


def _paper(part: Component, last: Test | None) -> Cell:
    """The certificate of what is fitted, where a test stands before it."""
    paper = part.item.certificate if part.item else None
    return (f"; certificate {paper}",) if paper and last else ()


def _last_of(book: Book, tag: str) -> Test | None:
    dated = [
        (test.on, str(test.id), test)
        for test in book.of_kind(Test)
        if test.on and not has_left(test) and any(item.tag == tag for item in test.tested)
    ]
    return max(dated, key=lambda one: one[:2])[2] if dated else None


def _last_test(book: Book, last: Test | None, part: Component) -> Cell:
    if last:
        verdict = str(last.result or "no result recorded")
        result: Run = verdict if last.result is Result.PASS else Strong(verdict)
        who = f"by {person(book, last.did)}, {_calibrated(book, last)}"
        return (Link(str(last.id), str(last.id)), f" {day(last.on)}: ", result, f", {who}")
    if part.item and part.item.tested:
        paper = f" {part.item.certificate}" if part.item.certificate else ""
        return (f"{day(part.item.tested)}, by certificate{paper}; no test in this book",)
    return (Strong("none recorded"),)


def _calibrated(book: Book, test: Test) -> str:
    """Whether every instrument of a test was in calibration that day."""
    held = book.content.vessel.instruments or {}
    logged = test.log.channels.values() if test.log else ()
    named = {one.instrument for one in (*test.readings, *logged) if one.instrument}
    if not named:
        return "no instrument named"
    states = {calibration_of(one, test.on, held, book.components).state for one in named}
    if states == {Calibrated.IN_DATE}:
        return "instrument in calibration"
    if Calibrated.LAPSED in states:
        return "instrument out of calibration"
    return "calibration of the instrument not known"
