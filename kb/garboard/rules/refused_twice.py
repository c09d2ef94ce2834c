"""Two people raised the same finding, and both were refused.

Why: once may be a misunderstanding; when a second pair of eyes sees the same thing, the answer is
owed to what they saw.

Fix: take one of them up again and have it looked at on the plant by somebody who refused neither;
or write into both what makes it right.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.finding import Finding
from garboard.records.standing import state_of

CODE = "refused-twice"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare refused findings with one another."""
    seen: dict[tuple[str, str], Finding] = {}
    for finding in book.of_kind(Finding):
        if state_of(finding) != "not accepted" or not finding.requirement:
            continue
        said: set[str] = set()
        for thing in (*finding.where_, *finding.against):
            first = seen.setdefault((str(finding.requirement), str(thing)), finding)
            if _finder(first) != _finder(finding) and str(first.id) not in said:
                said.add(str(first.id))
                text = f"{first.id} and {finding.id} say the same of {thing}, both were refused"
                cure = "take one up again, or write into both what makes it right"
                where = finding.place("state")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(finding.id))


def _finder(finding: Finding) -> str | None:
    return finding.found.by if finding.found else finding.author
