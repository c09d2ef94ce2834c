"""A class A finding is closed before its cause, its extent and the cure are known.

Why: what is put right in one place comes back in the next. ISM Code 10.2 asks for the cause, NRC
IP 92720 for the extent and for a look whether the cure worked.

Fix: ask where else, look, and write both; have somebody who did not do the work verify it, and
give the day on which it is looked at again; or reopen the finding.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.records.finding import Finding
from garboard.records.signoff import Capacity
from garboard.records.standing import state_of

CODE = "finding-closed-early"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

CURES = {
    "cause": "ask why it came about",
    "extent": "ask where else",
    "another's verification": "have somebody verify it who did not do it",
    "a day to look again": "give the day on which one looks whether it worked",
}


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every class A finding that is written as closed, whatever it counts as."""
    for finding in book.of_kind(Finding):
        if state_of(finding) != "closed" or finding.weight is not Class.A:
            continue
        missing = list(_missing(finding))
        if missing:
            text = f"{finding.id} is closed without {', '.join(missing)}"
            cure = f"{CURES[missing[0]]}, or reopen it"
            where = finding.place("state")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(finding.id))


def _missing(finding: Finding) -> Iterator[str]:
    if not finding.cause:
        yield "cause"
    if finding.extent is None or not finding.extent.looked:
        yield "extent"
    doers = {line.by for line in finding.signed if line.capacity is Capacity.DOER}
    verifiers = {line.by for line in finding.signed if line.capacity is Capacity.VERIFIER}
    if not verifiers - doers:
        yield "another's verification"
    if finding.effective_on is None:
        yield "a day to look again"
