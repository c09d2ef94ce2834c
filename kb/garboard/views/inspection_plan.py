"""The inspection and test plan: what is looked at, by whom, against what, what proves it, what it stops."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.records.base import bare_id
from garboard.records.holds import is_open_hold, is_tied, tests_of
from garboard.records.inspection import PlanLine, Point, Result, Test
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left, state_of
from garboard.records.states import LEAVING
from garboard.records.work import WorkPackage
from garboard.views.inline import cell, person, short_day
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Row,
    Run,
    Strong,
    Table,
)

__all__ = ["holds_in_the_way", "plan_table", "proof_words"]

RESULTS = {Result.PASS: "passed", Result.FAIL: "failed", Result.INCOMPLETE: "incomplete"}


def holds_in_the_way(book: Book, lines: Iterable[PlanLine]) -> Iterator[Block]:
    """The holds that stand, with who releases each and what waits for it.

    Args:
        book: The book.
        lines: Of the plan of a system or of a component.
    """
    yield Heading("Work may not go on past")
    held = [line for line in lines if is_open_hold(line)]
    if not held:
        yield Paragraph(("No hold point of the plan stands unreleased.",))
        return
    yield Bullets(tuple(_in_the_way(book, line) for line in held))


def _in_the_way(book: Book, line: PlanLine) -> Cell:
    waits = _stops(book, line)
    return (
        Link(str(line.id), str(line.id)),
        f" {line.title}: ",
        Strong(f"{state_of(line)}, not released"),
        f"; released by the {person(book, line.party)}, nobody else. ",
        *(("It stops ", *waits, ".") if waits else ("No work package names it.",)),
    )


def plan_table(book: Book, lines: Iterable[PlanLine], caption: str) -> Table:
    """Lines of the plan in their order, with all that proves them.

    Args:
        book: The book.
        lines: In the order of the plan.
        caption: Says of what.
    """
    titles = ("line", "point", "criterion", "tests", "stops")
    rows = tuple(
        Row(
            (
                (Link(str(line.id), str(line.id)), f" {line.title}"),
                (f"{_point(book, line)}: ", *_stands(book, line)),
                cell(book, line.criterion) or ("none written",),
                _tests(book, line),
                _stops(book, line) or ("nothing",),
            ),
            str(line.id),
        )
        for line in lines
    )
    return Table(caption, tuple(Column(one) for one in titles), rows, "no line of a plan")


def _point(book: Book, line: PlanLine) -> str:
    party = person(book, line.party) if line.party else "a party nobody has named"
    words = {
        Point.HOLD: f"hold, work stops until the {party} releases it",
        Point.WITNESS: f"witness, the {party} is called and may come",
        Point.REVIEW: f"review, the {party} reads the papers",
        Point.SURVEILLANCE: f"surveillance, the {party} looks now and then",
    }
    return words[line.point] if line.point else "not recorded"


def _stands(book: Book, line: PlanLine) -> Cell:
    """Its state, since when and by whom."""
    state = state_of(line)
    moves = [one for one in line.signed if one.to == state]
    last = max(moves, key=lambda one: one.on, default=None)
    since = f", {short_day(last.on)}, {person(book, last.by)}" if last else ""
    said: Run = Strong(state) if is_open_hold(line) or state == "rejected" else state
    return (said, since)


def _tests(book: Book, line: PlanLine) -> Cell:
    found = sorted(
        tests_of(line, book.of_kind(Test)), key=lambda one: (str(one.on or "9999"), str(one.id))
    )
    known = {str(one.id) for one in found}
    runs: list[Run] = []
    for one in found:
        runs += ["; " if runs else "", *proof_words(one)]
    for name in line.record:
        if bare_id(name) not in known:
            runs += ["; " if runs else "", f"{name}, not recorded"]
    return tuple(run for run in runs if run) or (Strong("none yet"),)


def proof_words(test: Test) -> Cell:
    """One test in a line: when, what came out, whether anybody accepted it, which one it follows.

    Args:
        test: The record.
    """
    came = RESULTS[test.result] if test.result else "no result yet"
    said: Run = came if test.result is Result.PASS else Strong(came)
    state = state_of(test)
    rests = state in ("accepted", "rejected", *LEAVING)
    after: Cell = (
        (", after ", Link(bare_id(test.follows), bare_id(test.follows))) if test.follows else ()
    )
    return (
        Link(str(test.id), str(test.id)),
        f" {short_day(test.on)}: ",
        said,
        f", {state}" if rests else ", not accepted yet",
        *after,
    )


def _stops(book: Book, line: PlanLine) -> Cell:
    """Work packages and steps that wait for a hold; nothing waits for another point or a released one."""
    if not is_open_hold(line):
        return ()
    runs: list[Run] = []
    for work in book.of_kind(WorkPackage):
        if is_tied(work, line) and not has_left(work):
            link = Link(str(work.id), str(work.id))
            runs += [", " if runs else "", link, f" ({state_of(work)})"]
    for procedure in book.of_kind(Procedure):
        for number, step in enumerate(procedure.steps, 1):
            if step.hold and bare_id(step.hold) == line.id and not has_left(procedure):
                link = Link(str(procedure.id), str(procedure.id))
                runs += [", " if runs else "", link, f" at step {number}"]
    return tuple(run for run in runs if run)
