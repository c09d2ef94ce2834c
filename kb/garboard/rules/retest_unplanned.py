"""A change voids a test, and no test takes its place, or no work package plans the one that does.

Why: a void proof leaves a hole that looks like a record. What is in nobody's plan is done by nobody.

Fix: name the new test under `retests` of the change, and that test, its plan line or the change in a
work package; once it is passed nothing more is asked. Where nothing of the proof is touched, take
the test out of `voids`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.change import Change
from garboard.records.inspection import Test
from garboard.records.standing import has_left, refused
from garboard.records.work import WorkPackage
from garboard.rules.proofs import is_proof

CODE = "retest-unplanned"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at what every change voids."""
    packages = [
        str(work.id)
        for work in book.of_kind(WorkPackage)
        if not has_left(work) and not refused(work)
    ]
    named = {item.to for work in packages for item in book.mentions if item.by == work}
    planned = {bare_id(name) for name in named}
    for change in book.of_kind(Change):
        if not change.voids or has_left(change) or refused(change):
            continue
        voided = " and ".join(change.voids)
        if not change.retests:
            text = f"{change.id} voids {voided}, and no test takes its place"
            cure = "name it under retests, or take out of voids what it does not touch"
            yield Diagnostic(change.place("voids"), SEVERITY, text, cure, CODE, str(change.id))
        for number, name in enumerate(change.retests):
            test = book.records.get(bare_id(name))
            if not isinstance(test, Test) or is_proof(test):
                continue
            if not planned & {str(test.id), bare_id(test.line or ""), str(change.id)}:
                text = f"{change.id} voids {voided}, {test.id} is not passed and in no work package"
                cure = f"name {test.id} in the package that plans it, or take it out of retests"
                where = change.place(f"retests[{number}]")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(change.id))
