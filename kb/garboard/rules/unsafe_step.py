"""A step leads to a state in which the plant can hurt somebody.

Question: walked on the layout from the operating state in `when`, is there a step after which a
machine can fill a vessel that has no relief valve for its rating, or one that its stop switch does not
feel; runs against a shut outlet without relief; or pressure can reach what stands open? A valve that nobody
said the position of counts as standing the worst way.

Why: each step was right when it was written, and the order was changed. 29 CFR 1917.155(b) asks for
relief without a valve between; 46 CFR 56.07-10(a)(2) lets the weakest part set the limit; 29 CFR
1910.147(d) is for the order of an isolation. To walk a procedure on the drawing first is good practice,
no text claimed.

Bad: Start, SA-CP-001; Open, SA-HV-002, the only way to the receiver and its relief valve.

Good: Open, SA-HV-002; Start, SA-CP-001.

Fix: change the order, or say in `when` from which operating state it starts. Steps that were not understood
moved nothing in this walk, and are listed on the page of the procedure.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.systems.forbidden import Fault, Trouble, gathered
from garboard.systems.walked import Walked

CODE = "unsafe-step"
SEVERITY = Severity.STOP
BINDS_FROM = "building"
WAIVABLE = True

CURES = {
    Fault.UNRELIEVED: "open the way to a relief valve set at or below it first",
    Fault.UNSEEN: "open the way to the switch that stops it first",
    Fault.SHUT_IN: "open its outlet before it is started",
    Fault.REACHED: "refit it first",
}


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every trouble that a walk met, but for what is opened up under pressure."""
    for walked in book.walks.values():
        for stage in walked.walk.stages:
            for trouble in gathered(stage.troubles):
                if trouble.fault is not Fault.OPENED:
                    yield _found(walked, stage.action.number, trouble)


def _found(walked: Walked, step: int, trouble: Trouble) -> Diagnostic:
    procedure = walked.procedure
    other = "take the step out" if walked.begins else "say in `when` from which state it starts"
    where = procedure.place(f"steps[{step - 1}].do")
    text, cure = f"after step {step} {trouble.text}", f"{CURES[trouble.fault]}, or {other}"
    return Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))
