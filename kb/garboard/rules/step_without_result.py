"""A step of class A moves something and does not say what is then seen, or what if it is not.

Why: who does not know what should happen cannot see that it did not.

Fix: write `see`, the tag and what it shows, and `if_not`, what is done when it does not; where
nothing can be seen, say so and have a second person look.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.rules.steps import changes_state, live_procedures

CODE = "step-without-result"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every step of class A that moves something."""
    for procedure in live_procedures(book):
        if procedure.weight is not Class.A:
            continue
        for number, step in enumerate(procedure.steps):
            seen = step.see is not None and (step.see.tag or step.see.value)
            unread = {f"steps[{number}].{key}" for key in ("see", "if_not")} & set(procedure.unread)
            missing = [] if seen or f"steps[{number}].see" in unread else ["see"]
            missing += [] if step.if_not or f"steps[{number}].if_not" in unread else ["if_not"]
            if missing and changes_state(step):
                text = f"step {number + 1} of {procedure.id} has no {' and no '.join(missing)}"
                cure = "say what is seen, and what if not; or take the step out"
                where = procedure.place(f"steps[{number}].do")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))
