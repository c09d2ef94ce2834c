"""A hazard has no control, or a control that nothing proves.

Why: a guard that nobody has tried is a hope. What stands between the energy and the hand is
tested like anything else.

Fix: name the test that shows the control works; where it fails, put in another control or lower
what it is ranked as. A control that is there no more stays in the list, with `removed`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import is_identifier
from garboard.records.base import bare_id
from garboard.records.hazard import Control, Hazard
from garboard.records.inspection import Result, Test
from garboard.records.standing import has_left, state_of

CODE = "control-unverified"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the proof of every control of every hazard that is open."""
    for hazard in book.of_kind(Hazard):
        if has_left(hazard) or state_of(hazard) == "closed":
            continue
        about = str(hazard.id)
        if not hazard.in_place:
            text = f"{about} has no control"
            cure = "say what stands between the energy and the harm, or have the hazard closed"
            yield Diagnostic(hazard.place("controls"), SEVERITY, text, cure, CODE, about)
        for number, control in enumerate(hazard.controls):
            fault = _fault(book, control) if control.removed is None else ""
            if fault:
                cure = "name the test that proves it, or say since when and why it is removed"
                where = hazard.place(f"controls[{number}]")
                yield Diagnostic(where, SEVERITY, fault, cure, CODE, about)


def _fault(book: Book, control: Control) -> str:
    """What is wrong with the proof of a control; empty where nothing is."""
    named = is_identifier(bare_id(control.what))
    said = f"{control.what if named else f'`{control.what}`'} as control"
    if control.verified is None:
        return f"{said} has no test"
    proof = book.records.get(bare_id(control.verified))
    if not isinstance(proof, Test):
        return ""
    if has_left(proof) or state_of(proof) == "rejected":
        return f"{said} rests on {proof.id}, which is {proof.state}"
    if proof.result in (Result.FAIL, Result.INCOMPLETE):
        return f"{said} rests on {proof.id}, whose result is {proof.result}"
    return ""
