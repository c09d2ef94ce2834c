"""A job on one side of A4: the work, what can hurt, isolation as it stands now, holds, people, parts."""

from collections.abc import Iterator
from typing import TypeGuard

from garboard.book import Book
from garboard.changes.competence import alone_aboard, helped_aboard, skills_of
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.records.inspection import PlanLine
from garboard.records.job import Job, hazards_of, lines_of, procedures_of, tags_of
from garboard.records.procedure import Procedure
from garboard.records.readiness import lacks
from garboard.records.standing import has_left, refused
from garboard.records.work import MaintenanceTask, WorkPackage
from garboard.views.crew import (
    NOBODY_ALONE,
    aboard_today,
    in_a_row,
    in_charge,
    known_as,
    with_limits,
)
from garboard.views.draft import Draft
from garboard.views.fields import line_of
from garboard.views.inline import cell, day, person
from garboard.views.messages import by_word, message_of, worst_first
from garboard.views.page import (
    Block,
    Cell,
    Facts,
    Link,
    Paragraph,
    Photo,
    Plate,
    Run,
    Strong,
    ToSign,
)

__all__ = ["JOBS", "has_sheet", "is_job_sheet", "job_drafts", "job_key"]

JOBS = "jobs/"

WORST = 2
"""Safety messages that stand in full; a page of the job carries them all."""
MOST_PARTS = 8


def job_key(job: Record) -> str:
    """The key of the sheet of a job: `jobs/SA-WP-001`."""
    return f"{JOBS}{job.id}"


def is_job_sheet(key: str) -> bool:
    """Whether a page is the sheet of a job, and not the record of it."""
    return key.startswith(JOBS)


def has_sheet(record: Record) -> TypeGuard[Job]:
    """Whether a record is a job that may still be done."""
    job = isinstance(record, WorkPackage | MaintenanceTask)
    return job and not has_left(record) and not refused(record)


def job_drafts(book: Book) -> Iterator[Draft]:
    """A sheet for every work package and maintenance task that is still to be done."""
    for job in (*book.of_kind(WorkPackage), *book.of_kind(MaintenanceTask)):
        if has_sheet(job):
            draft = Draft(
                book, job_key(job), f"Job sheet: {job.title}", "job sheet", system=job.system
            )
            draft.ident = str(job.id)
            _fill(draft, job)
            yield draft


def _fill(draft: Draft, job: Job) -> None:
    book = draft.book
    found = worst_first([one for one in hazards_of(job, book.records) if not has_left(one)])
    draft.messages = tuple(message_of(book, one) for one in found[:WORST])
    draft.add(*by_word(found[WORST:]))
    if not found:
        draft.add(
            Paragraph(
                (
                    Strong("No hazard is recorded at what this job touches. "),
                    "That is no word that there is none: ask before you start.",
                )
            )
        )
    rows = (*_work(book, job), *_isolation(book, job), *_holds(book, job), *_people(book, job))
    draft.add(*_picture(book, job), Facts(rows), *_by_hand(book, job))


def _work(book: Book, job: Job) -> Iterator[tuple[str, Cell]]:
    yield "job", (Link(str(job.id), str(job.id)), f", class {job.weight}, {book.state(job)}")
    names = {
        "task": "work",
        "makes_true": "makes true",
        "done_means": "done means",
        "standby": "stand-by",
    }
    for name, label in names.items():
        line = line_of(book, job, name) if getattr(job, name, None) else ()
        if line and name == "task" and isinstance(job, MaintenanceTask) and job.every:
            line = (*line, "; every ", *cell(book, job.every))
        if line:
            yield label, line
    if isinstance(job, WorkPackage):
        asked = [line_of(book, job, name) for name in ("space", "crew", "effort")]
        runs = [run for line in asked if line for run in (*line, "; ")]
        if runs:
            yield "where, who, time", tuple(runs[:-1])
        yield from _before(book, job)
    tags = sorted(tags_of(job, book.records))
    if tags:
        more = f" and {len(tags) - MOST_PARTS} more" if len(tags) > MOST_PARTS else ""
        yield (
            "touches",
            (*(run for tag in tags[:MOST_PARTS] for run in (Plate(tag), " ")), more),
        )
    tools = getattr(job, "tools", ()) or [tool for one in _by(book, job)[:1] for tool in one.tools]
    wear = dict.fromkeys(item for one in _by(book, job) for item in one.ppe)
    bring = [f"tools: {', '.join(tools)}"] if tools else []
    bring += [f"wear: {', '.join(wear)}"] if wear else []
    if bring:
        yield "bring", (". ".join(bring),)
    parts = tuple(run for part in job.parts for run in (*_part(book, part), "; "))[:-1]
    if parts:
        yield "parts", parts


def _before(book: Book, job: WorkPackage) -> Iterator[tuple[str, Cell]]:
    """When it can be done, and what is not there yet."""
    windows = book.content.vessel.windows or {}
    window = windows.get(str(job.window))
    if window:
        yield "window", (f"{job.window}, {day(window.from_)} to {day(window.to)}",)
    elif job.window:
        yield "window", cell(book, job.window)
    if job.not_before:
        yield "not before", (day(job.not_before),)
    missing = dict.fromkeys(one.text for one in lacks(job, book.records, book.state, book.today))
    if missing:
        runs: list[Run] = [Strong("not ready: ")]
        for text in missing:
            runs += [*cell(book, text), "; "]
        yield "stands in the way", tuple(runs[:-1])


def _by(book: Book, job: Job) -> list[Procedure]:
    return [one for one in procedures_of(job, book.records) if not has_left(one)]


def _part(book: Book, part: str) -> Cell:
    """A part with how many are aboard and where they lie."""
    spare = book.content.spares.get(part)
    if spare is None:
        return cell(book, part)
    aboard = "how many is not recorded" if spare.aboard is None else f"{spare.aboard} aboard"
    where = f", {spare.where_}" if spare.where_ else ""
    said: Run = f"{aboard}{where}" if spare.aboard else Strong(f"{aboard}{where}")
    return (Link(f"registers/spares#{part}", part), f" {spare.name}: ", said)


def _isolation(book: Book, job: Job) -> Iterator[tuple[str, Cell]]:
    """Which procedure isolates, and whether it may be used today."""
    runs: list[Run] = []
    for one in _by(book, job):
        if not _isolates(job, one):
            continue
        wrong = _wrong_with(book, one)
        runs += [Strong("Do not use it as it stands: ")] if wrong else []
        runs += [Link(str(one.id), str(one.id)), f" {one.title}, revision {one.revision}: "]
        runs += [*cell(book, wrong), ". "] if wrong else ["issued, every signature on it stands. "]
    if runs:
        runs.append("Prove zero yourself.")
    else:
        runs = [
            Strong("None is named for this job. "),
            "Open nothing that holds pressure, voltage, water or fuel: ask the person in charge first.",
        ]
    yield "isolation today", tuple(runs)


def _isolates(job: Job, one: Procedure) -> bool:
    if isinstance(job, WorkPackage) and job.isolation:
        return str(one.id) == str(job.isolation)
    return bool(one.isolates or one.points)


def _wrong_with(book: Book, one: Procedure) -> str:
    """Why an isolation procedure may not be used today; empty where it may."""
    state = book.state(one)
    reviewed = book.reviews.get(str(one.id))
    if state != "issued":
        setback = book.setbacks.get(str(one.id))
        return f"{state}, because {setback.because}" if setback else f"{state}, not issued"
    if reviewed and reviewed.lapsed:
        moved = [str(each) for line in reviewed.lapsed for each in line.moved]
        return f"a signature lapsed: {'; '.join(dict.fromkeys(moved))}"
    if reviewed and reviewed.rests_on:
        return f"it rests on what has lapsed: {', '.join(reviewed.rests_on)}"
    return ""


def _holds(book: Book, job: Job) -> Iterator[tuple[str, Cell]]:
    """Hold points before and during the work: of the plan, and inside its procedures."""
    lines: list[Cell] = [_hold(book, line) for line in lines_of(job, book.records)]
    for one in _by(book, job):
        for number, step in enumerate(one.steps, 1):
            if step.hold:
                link = Link(str(one.id), str(one.id))
                lines.append((f"step {number} of ", link, ": ", *cell(book, step.hold)))
    runs = [run for line in lines for run in (*line, ". ")]
    if runs or isinstance(job, WorkPackage):
        yield "hold points", tuple(runs) or ("none is written for this job",)


def _hold(book: Book, line: PlanLine) -> Cell:
    state = book.state(line)
    said: Run = (
        "released" if state == "released" else Strong(f"{state}, not released: do not go past")
    )
    party = f"; the {person(book, line.party)} releases it" if line.party else ""
    return (Link(str(line.id), str(line.id)), f" {line.title}: ", said, party)


def _picture(book: Book, job: Job) -> Iterator[Block]:
    """One picture: of the job, else of a part it touches."""
    for medium in job.media[:1]:
        yield Photo(medium.photo, medium.view or job.title, medium.view or job.title)
        return
    parts = (book.components.get(tag) for tag in sorted(tags_of(job, book.records)))
    for part in parts:
        photo = _photo(book, part) if part else ""
        if part and photo:
            words = f"{part.tag} {part.name or part.kind}"
            yield Photo(photo, words, words)
            return


def _photo(book: Book, part: Component) -> str:
    plate = book.content.sources.get(str(part.plate)) if part.plate else None
    return part.photo or (plate.photo if plate and plate.photo else "")


def _people(book: Book, job: Job) -> Iterator[tuple[str, Cell]]:
    """What must be shown, who aboard has, whom to ask."""
    rows: list[tuple[str, Cell]] = []
    needed = str(job.competence or "")
    rows.append(("must be able to", cell(book, needed) or ("not recorded",)))
    rows += [(str(one.id), _can(book, one)) for one in _by(book, job)]
    text = f"{needed} {getattr(job, 'crew', '') or ''}".casefold()
    roles = dict.fromkeys(one.role for one in book.content.people.values())
    for role in roles:
        if role.casefold() in text:
            there = [one for one in aboard_today(book) if one.role == role]
            names = in_a_row(known_as(book, one) for one in there)
            rows.append((role, (names or Strong("nobody written down as aboard today"),)))
    leads = in_a_row(known_as(book, each) for each in in_charge(book))
    asks = [leads or "nobody in charge is written down as aboard"]
    if job.author:
        asks.append(f"who wrote it: {person(book, job.author)}")
    rows.append(("ask", ("; ".join(asks),)))
    yield from rows


def _can(book: Book, one: Procedure) -> Cell:
    found = skills_of(book, one)
    alone, helped = alone_aboard(book, found), helped_aboard(book, found)
    runs: list[Run] = []
    if alone:
        runs.append(f"alone: {in_a_row(with_limits(book, each) for each in alone)}. ")
    else:
        runs += [Strong(NOBODY_ALONE), " "]
    if helped:
        runs.append(f"With help: {in_a_row(with_limits(book, each) for each in helped)}.")
    return tuple(runs)


def _by_hand(book: Book, job: Job) -> Iterator[Block]:
    rows: list[Cell] = [("isolated, locked, zero proved",)]
    if lines_of(job, book.records):
        rows.append(("hold points released",))
    rows += [("done; isolation off, line-up restored",), ("looked at by a second person",)]
    yield ToSign("To sign", ("name, day, hour",), tuple(rows))
