"""A concession was given for a finding of the layout that is no longer there as it was.

Question: is what was waived still exactly what is found?

Why: leave was given with certain valves, certain parts and certain numbers in view. The fingerprint
of a finding is made of these; when one of them moves, somebody must look again before anything is
waived, and what is found now stands with its full weight until then.

Bad: a concession with `fingerprint: 0123456789abcdef`, given before the switch was tapped elsewhere.

Good: the same concession closed, and a new one asked for with the fingerprint that is printed now.

Fix: close the concession where the finding is gone; where another has taken its place, read that one
and ask again with its fingerprint. `garboard check` prints it, and so does the page of findings.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.change import Concession
from garboard.systems.finding import PathFinding

CODE = "fingerprint-lapsed"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the finding that each granted concession of the layout waives."""
    for record in book.of_kind(Concession):
        if book.state(record) != "granted":
            continue
        meant = [
            found
            for surveyed in book.surveys.values()
            for found in surveyed.findings
            if found.code == record.departs_from and found.about in record.where_
        ]
        fault = _fault(record, meant)
        if fault:
            where = record.place("fingerprint" if record.fingerprint else "departs_from")
            yield Diagnostic(where, SEVERITY, *fault, CODE, str(record.id))


def _fault(record: Concession, meant: list[PathFinding]) -> tuple[str, str] | None:
    """What is wrong with the fingerprint of a concession, and the cure."""
    now = [found.fingerprint for found in meant]
    if record.fingerprint in now or (record.fingerprint is None and not now):
        return None
    printed = " or ".join(dict.fromkeys(now))
    if record.fingerprint is None:
        text = f"{record.id} waives nothing: a finding of the layout is waived by its fingerprint alone"
        return text, f"have the finding looked at, and ask again with fingerprint {printed}"
    what = f"{record.departs_from} about {', '.join(record.where_) or 'nothing'}"
    text = f"{record.id} waives {what} as {record.fingerprint}; no such finding is there now"
    if now:
        return text, f"read what is found now, {printed}: ask again for that, or mend it"
    return text, "close the concession, or write the fingerprint that `garboard check` prints"
