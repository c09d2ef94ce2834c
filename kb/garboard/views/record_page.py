"""The page of one record: what its kind shows first, its fields, its text, what rests on it."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Citation
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.calculation import Calculation as CalculationRecord
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.inspection import Test
from garboard.records.kinds import kind_of
from garboard.records.procedure import Procedure
from garboard.records.signoff import standing_objections
from garboard.records.standing import state_of
from garboard.records.states import LAPSED
from garboard.records.work import MaintenanceTask
from garboard.review.proof import Proof
from garboard.views.alarm_page import alarm_head, fault_head
from garboard.views.as_issued import as_issued
from garboard.views.change_page import change_head
from garboard.views.draft import Draft
from garboard.views.fields import field_blocks, line_of
from garboard.views.finding_page import finding_head
from garboard.views.inline import cell, day, days_in_words, person
from garboard.views.job_sheet import has_sheet, job_key
from garboard.views.lapsed import lapsed_blocks
from garboard.views.log_plot import log_blocks
from garboard.views.maintenance import task_head
from garboard.views.messages import message_of
from garboard.views.page import (
    AgainstIt,
    Block,
    Bullets,
    Cell,
    Facts,
    Fold,
    Heading,
    Link,
    Paragraph,
    Photo,
    Strong,
)
from garboard.views.procedure_page import procedure_head
from garboard.views.runs import plain
from garboard.views.superseded import left_blocks
from garboard.views.text import text_blocks
from garboard.views.waiting import waiting_blocks
from garboard.views.walked import walked_blocks

__all__ = ["record_draft"]

SHOWN_AT_HEAD: dict[type[Record], frozenset[str]] = {
    Procedure: frozenset(
        "purpose use steps restores stop_if when people competence tools parts ppe time isolation"
        " isolates points".split()
    ),
    Alarm: frozenset(
        ("wording", "tag", "set", "direction", "priority", "means", "consequence", "first")
    )
    | {"time_to_act", "confirm", "automatic"},
    Fault: frozenset(("symptoms", "safe_first", "checks", "stop_when")),
    Hazard: frozenset(("message",)),
    Decision: frozenset(("question", "chosen", "options", "objections")),
    Test: frozenset(("log",)),
    MaintenanceTask: frozenset(
        ("task", "tag", "every", "basis", "procedure", "parts", "competence", "standby", "done")
    ),
    Finding: frozenset(("words", "found", "credit", "interim", "extent", "actions")),
    Change: frozenset(("safety", "basis", "values", "voids", "retests", "in_kind", "looked_at")),
}


def record_draft(book: Book, record: Record) -> Draft:
    """Start the page of a filed record.

    Args:
        book: The book it stands in.
        record: A record with an id.
    """
    kind = kind_of(record)
    draft = Draft(
        book, str(record.id), record.title, kind.name if kind else "record", system=record.system
    )
    draft.source_path = record.where.path
    draft.last_change = _last_change(record)
    draft.nav = (kind.plural if kind else "records",)
    draft.add(*left_blocks(book, record), *_moved_back(book, record))
    draft.add(*_head(draft, record), *_signed_objections(book, record))
    draft.add(*waiting_blocks(book, str(record.id)))
    own = tuple(field_blocks(book, record, SHOWN_AT_HEAD.get(type(record), frozenset())))
    text = tuple(text_blocks(draft, record.text, record.where, record.text_line))
    own += tuple(log_blocks(book, record)) if isinstance(record, Test) else ()
    answer_first = isinstance(record, CalculationRecord)
    draft.add(*(text + own if answer_first else own + text))
    if isinstance(record, Procedure):
        draft.add(*walked_blocks(book, record))
    draft.add(*_pictures(record), *lapsed_blocks(book, record), *_envelope(book, record))
    if isinstance(record, (CalculationRecord, Procedure, Hazard, Alarm, Fault)):
        draft.calculated = True
    draft.cite(*(Citation(source) for source in record.sources))
    return draft


def _head(draft: Draft, record: Record) -> Iterator[Block]:
    book = draft.book
    if isinstance(record, Procedure):
        yield from procedure_head(draft, record)
        yield AgainstIt()
    elif isinstance(record, Alarm):
        yield from alarm_head(draft, record)
    elif isinstance(record, Fault):
        yield from fault_head(draft, record)
    elif isinstance(record, Hazard) and record.message:
        yield message_of(book, record)
    elif isinstance(record, Decision):
        yield from _decision_head(book, record)
    elif isinstance(record, Finding):
        yield from finding_head(draft, record)
    elif isinstance(record, Change):
        yield from change_head(draft, record)
    elif isinstance(record, MaintenanceTask):
        yield Paragraph((Link(job_key(record), "Job sheet to print"),))
        yield from task_head(draft, record)
    elif has_sheet(record):
        yield Paragraph((Link(job_key(record), "Job sheet to print"),))


def _moved_back(book: Book, record: Record) -> Iterator[Block]:
    """What no longer holds of its state, first on the page; a lapsed review stands in the title block."""
    setback = book.setbacks.get(str(record.id))
    if setback and setback.state != LAPSED:
        said = f"Counts as {setback.state}, not as {setback.written}: "
        yield Paragraph((Strong(said), *cell(book, days_in_words(setback.because)), "."))


def _decision_head(book: Book, record: Decision) -> Iterator[Block]:
    if record.question:
        yield Paragraph((Strong("Question: "), *cell(book, record.question)))
    if record.chosen:
        yield Paragraph((Strong("Chosen: "), *cell(book, record.chosen)))
    refused = [option for option in record.options if option.why_not]
    if refused:
        yield Heading("Not chosen, and why")
        yield Bullets(
            tuple(
                (*cell(book, option.option), ": ", *cell(book, option.why_not))
                for option in refused
            )
        )
    if record.objections:
        yield Heading("Objections, in their own words")
        yield Bullets(tuple(_objection(book, one) for one in record.objections))


def _signed_objections(book: Book, record: Record) -> Iterator[Block]:
    """Objections that were signed, where nobody can miss them."""
    standing = standing_objections(record.signed)
    if standing:
        yield Heading("Objections that stand")
        yield Bullets(
            tuple(
                (
                    Strong(f"{person(book, line.by)}, {line.capacity}, {day(line.on)}: "),
                    *("\u201c", *cell(book, line.words or "no words given"), "\u201d"),
                )
                for line in standing
            )
        )


def _objection(book: Book, objection: object) -> Cell:
    by, words = line_of(book, objection, "by"), line_of(book, objection, "words")
    answer, answered_by = (
        line_of(book, objection, "answer"),
        line_of(book, objection, "answered_by"),
    )
    stop = "" if plain(words).endswith((".", "!", "?")) else "."
    said: Cell = (*by, ": \u201c", *words, f"\u201d{stop} ")
    if not answer:
        return (*said, "Not answered.")
    return (*said, "Answer", *((" of the ", *answered_by) if answered_by else ()), ": ", *answer)


def _pictures(record: Record) -> Iterator[Block]:
    for medium in record.media:
        words = [
            medium.view or record.title,
            medium.tag or "",
            day(medium.on) if medium.on else "undated",
        ]
        yield Photo(
            medium.photo, medium.view or record.title, ", ".join(word for word in words if word)
        )


def _envelope(book: Book, record: Record) -> Iterator[Block]:
    rows: list[tuple[str, Cell]] = [
        ("class", (_class_words(record),)),
        ("state", cell(book, _state_words(book, record))),
        ("author", (person(book, record.author),)),
        ("drafted", (day(record.drafted),)),
    ]
    if record.revision:
        rows.append(("revision", (str(record.revision),)))
    for name in ("affects", "supersedes", "follows", "effective"):
        line = line_of(book, record, name)
        if line:
            rows.append((name, line[:1] if name == "supersedes" else line))
    rows += as_issued(book, record)
    yield Heading("This record")
    yield Facts(tuple(rows))
    if record.gaps:
        yield Heading("Known to be missing")
        yield Bullets(tuple(cell(book, gap) for gap in record.gaps))
    if record.signed:
        yield Fold(f"Signatures ({len(record.signed)})", (_signatures(book, record),))


def _signatures(book: Book, record: Record) -> Block:
    lines = []
    reviewed = book.reviews.get(str(record.id))
    signatures = reviewed.signatures if reviewed else ()
    proved = {each.number for each in signatures if each.proof is Proof.FITS}
    for number, line in enumerate(record.signed):
        moved = f", moved to \u201c{line.to}\u201d" if line.to else ""
        scope = f"; checked: {', '.join(line.scope)}" if line.scope else ""
        left = f"; not checked: {', '.join(line.not_checked)}" if line.not_checked else ""
        words = f"{line.capacity}: {person(book, line.by)}, {day(line.on)}{moved}"
        verdict = f"; {line.verdict}" if line.verdict else ""
        said = (": \u201c", *cell(book, line.words), "\u201d") if line.words else ()
        proof = "; proved by key" if number in proved else ""
        lines.append((f"{words}{verdict}{scope}{left}{proof}", *said))
    return Bullets(tuple(lines))


def _state_words(book: Book, record: Record) -> str:
    """The state as written, and what it counts as today with the reason."""
    setback = book.setbacks.get(str(record.id))
    if setback is None:
        return state_of(record)
    return f"{setback.written}; counts as {setback.state}, because {days_in_words(setback.because)}"


def _class_words(record: Record) -> str:
    words = {
        "A": "A, safety-significant",
        "B": "B, function-significant",
        "C": "C, minor or in kind",
    }
    if record.class_ is None:
        return "none stated: counts as A"
    counts = "" if record.weight is record.class_ else f"; counts as {record.weight}"
    return f"{words[record.class_]}{counts}"


def _last_change(record: Record) -> str:
    dates = [line.on for line in record.signed]
    if record.drafted:
        dates.append(record.drafted)
    return f"{day(max(dates))}, its last entry." if dates else ""
