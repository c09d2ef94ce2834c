"""A class A record is approved while an open class A finding stands against it.

Why: somebody saw a danger in just this, and nobody has yet said what became of it.

Fix: close the finding by its own steps, or take the record back until it is.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.records.finding import Finding
from garboard.records.signoff import Capacity
from garboard.records.standing import has_left, refused
from garboard.rules.signed import lines

CODE = "approved-over-danger"
SEVERITY = Severity.STOP
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare approvals of class A records with the class A findings against them that count as open."""
    against: dict[str, list[str]] = {}
    for finding in book.of_kind(Finding):
        if finding.weight is Class.A and book.is_live(finding) and not refused(finding):
            for name in finding.against:
                against.setdefault(name, []).append(str(finding.id))
    for line in lines(book):
        record = book.records.get(line.key)
        approves = line.weighed.counts and line.weighed.line.capacity is Capacity.APPROVER
        if record is None or record.weight is not Class.A or has_left(record) or not approves:
            continue
        for finding_id in against.get(line.key, ()):
            text = f"{line.key} is approved, and {finding_id} against it is open"
            cure = "close the finding by its steps, or take the record back to its draft"
            yield Diagnostic(line.where, SEVERITY, text, cure, CODE, line.key)
