"""Two people raised the same finding, and both were refused.

Why: once may be a misunderstanding; when a second pair of eyes sees the same thing, the answer is
owed to what they saw. It is the same finding where it falls short of the same requirement in
one place; or where one that was refused was raised again by another person.

Fix: take one of them up again and have it looked at on the plant by somebody who refused neither;
or write into both what makes it right.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import key_of
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
        if state_of(finding) != "not accepted":
            continue
        if again := _raised_again(finding):
            text = f"{finding.id} was refused to {again}, who raised it after another"
            cure = "take it up again, or write into it what makes it right"
            where = finding.place("state")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(finding.id))
        said: set[str] = set()
        same = key_of(str(finding.requirement or ""))
        for thing in (*finding.where_, *finding.against) if same else ():
            first = seen.setdefault((same, str(thing)), finding)
            if _finder(first) != _finder(finding) and str(first.id) not in said:
                said.add(str(first.id))
                text = f"{first.id} and {finding.id} say the same of {thing}, both were refused"
                cure = "take one up again, or write into both what makes it right"
                where = finding.place("state")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(finding.id))


def _finder(finding: Finding) -> str | None:
    return finding.found.by if finding.found else finding.author


def _raised_again(finding: Finding) -> str:
    """Another person who raised it after a refusal and was refused as well; empty where nobody was."""
    steps = sorted(finding.signed, key=lambda line: line.on)
    refused, others = False, ""
    for line in steps:
        if line.to == "raised" and refused and line.by != _finder(finding):
            others = line.by
        if line.to == "not accepted":
            refused = True
            if others:
                return others
    return ""
