"""No signed walk leads to the state that a record or a system says it is in.

Why: a state is a claim about what people did. Typed alone it is worth nothing, and the next reader
takes it for done.

Fix: have the step signed that is missing, in order of date; or set the state back to where the
signatures lead. A walk may set out from the start, with all signatures, or from the state of the last
edition with those that came since; but not from one that the edition itself had no signatures for.
"""

from collections.abc import Iterator, Sequence

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.kinds import kind_of
from garboard.records.signoff import SignOff
from garboard.records.standing import mark_of, state_of
from garboard.review.service_status import MACHINE, lines_since
from garboard.review.walk import Walk, walk

CODE = "illegal-state-move"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Walk every record and every system by its signatures."""
    yield from _records(book)
    yield from _systems(book)


def _records(book: Book) -> Iterator[Diagnostic]:
    issued = book.edition.records if book.edition else {}
    typed = {one.about for one in book.edition.fired if one.code == CODE} if book.edition else set()
    for key, record in book.records.items():
        kind = kind_of(record)
        if kind is None:
            continue
        mark, state = mark_of(record), state_of(record)
        found = walk(kind.machine, record.signed, state, mark)
        if not found.leads and key in issued and key not in typed:
            was = issued[key]
            since = lines_since(record.signed, was.signed)
            if walk(kind.machine, since, state, mark, was.state).leads:
                continue
        if not found.leads:
            text, cure = _said(key, record.signed, state, found)
            path = "state" if found.stuck is None else f"signed[{found.stuck}]"
            yield Diagnostic(record.place(path), SEVERITY, text, cure, CODE, key)


def _systems(book: Book) -> Iterator[Diagnostic]:
    """The service status; one that was merely set back since the edition has a rule of its own."""
    for code, system in book.systems.items():
        found = walk(MACHINE, system.signed, str(system.status), "A")
        if not found.leads and code not in book.held and "status" in system.places:
            text, cure = _said(code, system.signed, str(system.status), found)
            path = "status" if found.stuck is None else f"signed[{found.stuck}]"
            yield Diagnostic(system.place(path), SEVERITY, text, cure, CODE, code)


def _said(name: str, signed: Sequence[SignOff], state: str, found: Walk) -> tuple[str, str]:
    if found.stuck is not None:
        line = signed[found.stuck]
        may = ", ".join(found.open) or "nowhere"
        text = f"{name} is moved to {line.to} as {line.capacity}, from {found.reached}"
        return text, f"from there signatures lead to {may}; sign the step that is missing"
    wanted = f", no {found.wants} signed" if found.wants else ""
    text = f"{name} says {state}{wanted}"
    return text, f"have the step signed, or set the state to {found.reached}"
