"""The steps of a procedure as rows to tick: grouped by where one stands, each with its branch and its marks."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from garboard.book import Book
from garboard.calc.dimensions import TIME
from garboard.records.figure import figure_of
from garboard.records.hazard import Hazard
from garboard.records.inspection import PlanLine, Point
from garboard.records.procedure import Procedure, Second
from garboard.records.procedure import Step as ProcedureStep
from garboard.views.inline import cell, link_to, person, title_of
from garboard.views.messages import message_of
from garboard.views.page import Cell, Link, Plate, Run, Step, Steps, Strong
from garboard.views.runs import plain

__all__ = ["LONGEST_GROUP", "step_rows"]

SECOND_WORDS = {
    Second.CONCURRENT: "A second person looks on while it is done.",
    Second.INDEPENDENT: "A second person checks it alone afterwards.",
}
LONGEST_GROUP: Final = 9
"""So many rows stand together; more at one place are parted evenly."""
NAMED_STEP = re.compile(r"\bstep (\d+)\b")


def step_rows(book: Book, record: Procedure) -> Steps:
    """The steps of a procedure, in the order written.

    Args:
        book: The book.
        record: The procedure.
    """
    rows = [_row(book, record, number) for number in range(1, len(record.steps) + 1)]
    end = f"{record.title} complete."
    return Steps(tuple(_grouped(record, rows)), end, revision=record.revision or 0)


def _grouped(record: Procedure, rows: list[Step]) -> Iterator[Step]:
    """Rows with the heading of their group on the first of each."""
    groups: list[tuple[str, list[Step]]] = []
    for row, step in zip(rows, record.steps, strict=True):
        at = str(step.at or "")
        if not groups or (at and at != groups[-1][0]):
            groups.append((at, []))
        groups[-1][1].append(row)
    for at, group in groups:
        parts = -(-len(group) // LONGEST_GROUP)
        for part in range(parts):
            first, end = (len(group) * each // parts for each in (part, part + 1))
            for place, row in enumerate(group[first:end]):
                shown = "" if row.place == at else row.place
                yield replace(row, place=shown, under="" if place else _heading(at, part))


def _heading(at: str, part: int) -> str:
    """Over a group: where one stands, and that it goes on there."""
    if not at:
        return "Continued" if part else ""
    return f"At: {at}, continued" if part else f"At: {at}"


def _row(book: Book, record: Procedure, number: int) -> Step:
    step = record.steps[number - 1]
    hazard = book.records.get(step.message) if step.message else None
    component = book.components.get(step.tag) if step.tag else None
    item: Cell = (Plate(step.tag), " ", title_of(book, step.tag)) if step.tag else ()
    return Step(
        number=str(number),
        do=step.do,
        item=item,
        place=str(step.at or (component.place if component else "") or ""),
        to=step.to or "",
        see=_seen(book, step),
        within=plain(cell(book, step.see.within)) if step.see else "",
        seconds=_seconds(book, step),
        if_not=_if_not(book, record, step),
        message=message_of(book, hazard) if isinstance(hazard, Hazard) else None,
        second=SECOND_WORDS.get(step.second, "") if step.second else "",
        hold=tuple(_mark(book, step.hold)) if step.hold else (),
        anchor=f"step-{number}",
    )


def _seen(book: Book, step: ProcedureStep) -> Cell:
    if not step.see:
        return ()
    on: Cell = (Plate(step.see.tag), " ") if step.see.tag else ()
    return (*on, *cell(book, step.see.value))


def _seconds(book: Book, step: ProcedureStep) -> int:
    """What a clock counts down; 0 where the step says no time, or says it in words."""
    if not step.see or not step.see.within:
        return 0
    figure = figure_of(book.values, step.see.within)
    return round(figure.si) if figure and figure.type.dimension == TIME else 0


def _if_not(book: Book, record: Procedure, step: ProcedureStep) -> Cell:
    """The branch: it begins with If, and what it names is a link; a name alone brings its title."""
    written = str(step.if_not or "").strip()
    if not written:
        return ()
    said = cell(book, written)
    if written in book.records:
        said = (Link(written, f"{written} {title_of(book, written)}"),)
    said = tuple(_with_steps(book, record, said))
    return said if written.startswith("If ") else (Strong("If not:"), " ", *said)


def _with_steps(book: Book, record: Procedure, said: Cell) -> Iterator[Run]:
    """`step 4` leads to that step, `step 4 of SA-PR-002` to one of another procedure."""
    for place, run in enumerate(said):
        if not isinstance(run, str):
            yield run
            continue
        done = 0
        for found in NAMED_STEP.finditer(run):
            after = (
                said[place + 1] if run[found.end() :] == " of " and place + 1 < len(said) else ""
            )
            other = book.records.get(after.target) if isinstance(after, Link) else record
            if isinstance(other, Procedure) and 0 < int(found[1]) <= len(other.steps):
                yield from filter(None, (run[done : found.start()], _to_step(other, found)))
                done = found.end()
        if done < len(run):
            yield run[done:]


def _to_step(procedure: Procedure, found: re.Match[str]) -> Link:
    return Link(f"{procedure.id}#step-{found[1]}", found[0])


def _mark(book: Book, line: str) -> Iterator[Run]:
    """A hold, witness or other point of the inspection plan, in words."""
    known = book.records.get(line)
    plan = known if isinstance(known, PlanLine) else None
    title = title_of(book, line)
    named: Cell = (link_to(book, line), f" {title}" if title else "")
    who = f"the {person(book, plan.party)}" if plan and plan.party else "the named party"
    if plan and plan.point is Point.WITNESS:
        yield from (f"Witness point: call {who} to see it, and go on when called. ", *named)
    elif plan and plan.point in (Point.REVIEW, Point.SURVEILLANCE):
        yield from (f"Looked at by {who} as the inspection plan says: ", *named)
    else:
        yield from (f"Hold point: do not go on before {who} has released ", *named)
