"""Safety devices: relief valves, bursting discs, and every switch that stops or watches something."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.component import Component
from garboard.records.inspection import Test
from garboard.records.safety_device import is_safety_device
from garboard.views.inline import cell, day, person, shown
from garboard.views.page import Cell, Column, Link, Plate, Row, Strong, Table

__all__ = ["safety_device_table"]


def safety_device_table(book: Book, system: str = "") -> Table:
    """What a surveyor asks: set value, what it guards, last test, by whom, when due.

    Args:
        book: The book.
        system: A system code; empty for the whole vessel.
    """
    rows = tuple(
        Row(_row(book, tag, part), tag)
        for tag, part in book.components.items()
        if is_safety_device(part) and system in ("", part.system)
    )
    titles = ("tag", "name", "set", "guards", "rated", "last test", "due")
    columns = tuple(Column(title, strong=title == "set") for title in titles)
    return Table("Safety devices", columns, rows)


def _row(book: Book, tag: str, part: Component) -> tuple[Cell, ...]:
    guarded = (*part.protects, *part.watches, *part.stops)
    plates = [run for one in guarded for run in (Plate(one), " ")]
    limit = next(
        (name for name in ("set", "cuts_out", "rated") if f"{tag}.{name}" in book.values), ""
    )
    weakest = [
        shown(book, f"{one}.rated") for one in part.protects if f"{one}.rated" in book.values
    ]
    due = part.item.due if part.item else None
    late: Cell = (Strong("past due: "),) if due and due < book.today else ()
    return (
        (Plate(tag),),
        (part.name or part.kind,),
        (shown(book, f"{tag}.{limit}"),) if limit else ("not recorded",),
        tuple(plates) or ("not recorded",),
        tuple(run for one in weakest for run in (one, " ")) or ("none",),
        _last_test(book, tag, part),
        (*late, day(due)),
    )


def _last_test(book: Book, tag: str, part: Component) -> Cell:
    tests = [test for test in _tests_of(book, tag) if test.on]
    if tests:
        last = max(tests, key=lambda test: test.on.isoformat() if test.on else "")
        words = f" {day(last.on)}, {person(book, last.did)}: {last.result or 'no result recorded'}"
        return (Link(str(last.id), str(last.id)), words)
    if part.item and part.item.tested:
        return (f"{day(part.item.tested)}, by certificate",)
    return cell(book, "not recorded")


def _tests_of(book: Book, tag: str) -> Iterator[Test]:
    return (test for test in book.of_kind(Test) if any(item.tag == tag for item in test.tested))
