"""No signed walk leads to the state that a record says it is in.

Why: a state is a claim about what people did. Typed alone it is worth nothing, and the next reader
takes it for done.

Fix: have the step signed that is missing, in order of date; or set the state back to where the
signatures lead.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Record
from garboard.records.kinds import kind_of
from garboard.records.standing import mark_of, state_of
from garboard.review.walk import Walk, walk

CODE = "illegal-state-move"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Walk every record from its start by its signatures."""
    for record in book.records.values():
        kind = kind_of(record)
        if kind is None:
            continue
        found = walk(kind.machine, record.signed, state_of(record), mark_of(record))
        if not found.leads:
            text, cure = _said(record, found)
            path = "state" if found.stuck is None else f"signed[{found.stuck}]"
            yield Diagnostic(record.place(path), SEVERITY, text, cure, CODE, str(record.id))


def _said(record: Record, found: Walk) -> tuple[str, str]:
    if found.stuck is not None:
        line = record.signed[found.stuck]
        may = ", ".join(found.open) or "nowhere"
        text = f"{record.id} is moved to {line.to} as {line.capacity}, from {found.reached}"
        return text, f"from there signatures lead to {may}; sign the step that is missing"
    state = state_of(record)
    wanted = f", no {found.wants} signed" if found.wants else ""
    text = f"{record.id} says {state}{wanted}"
    return text, f"have the step signed, or set the state to {found.reached}"
