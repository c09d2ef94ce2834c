"""A step left out, or two that change places, lead to harm before any reading would show it.

Question: walked on the layout once for each step left out and once for each pair of neighbours
exchanged, does it come to a state that must never be, and that the procedure as written does not come
to, before a gauge shows something else than it should, or a valve that is looked at stands otherwise? A
second person counts as well: independent, at the step that was left out; concurrent, at the one that is
done too early.

Why: people skip a step, and turn two round; it is the commonest slip there is (good practice, no text
claimed). A procedure for class A work forgives one of them.

Bad: Shut, SA-HV-006; Remove the cover, SA-FI-001.

Good: Shut, SA-HV-006, second: independent; Open, SA-HV-012, see SA-PI-003 at 0 bar(g); Remove the cover.

Fix: read a second time, or look at the position of a valve, before the step that harms; or have a
second person look. What every slip comes to stands on the page of the procedure.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.systems.slips import Slip
from garboard.systems.walked import Walked

CODE = "slip-uncaught"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every slip that nothing shows."""
    for walked in book.walks.values():
        for slip in walked.slips:
            if slip.uncaught:
                yield _found(walked, slip)


def _found(walked: Walked, slip: Slip) -> Diagnostic:
    procedure = walked.procedure
    first = slip.steps[0]
    where = procedure.place(f"steps[{first - 1}].do")
    text = f"{slip.told}, {walked.harm_of(slip)}, and no reading shows it before"
    cure = "add a reading before the harm, or an independent second person at the step"
    if not slip.left_out:
        cure = "add a reading before both, or a concurrent second person at the later step"
    return Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))
