"""A finding says that the danger is immediate, and nothing keeps people from it.

Why: the cure may take a month; the rope across the passage takes a minute, and it must be there
now.

Fix: stop, make it safe, and write who did what on which day under `interim`; where the danger is
not immediate, have whoever found it say so.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.finding import Danger, Finding

CODE = "danger-uncontained"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every finding that counts as open and whose danger is immediate."""
    for finding in book.of_kind(Finding):
        if finding.danger is Danger.IMMEDIATE and book.is_live(finding) and not _held(finding):
            text = f"{finding.id} is an immediate danger and has no interim measure"
            cure = "stop, make safe, record it under `interim`; or have its finder lower `danger`"
            where = finding.place("danger")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(finding.id))


def _held(finding: Finding) -> bool:
    return finding.interim is not None and bool(finding.interim.measure.strip())
