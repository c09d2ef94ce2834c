"""A step asks for two actions, or for something that nobody can see done.

Why: "check the valve" is ticked by looking at it. A step that names one action and one state to
see can be done in the dark by somebody who has never seen the plant.

Fix: make two steps of it; name the tag and the state, such as "Shut" and "shut"; for a bolt give
the torque, for a level the figure.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.procedure import Step
from garboard.rules.steps import MOVES, live_procedures

CODE = "vague-step"
SEVERITY = Severity.WARN
BINDS_FROM = "in test"
WAIVABLE = True

LINK = re.compile(r"\(value:[^()]*(?:\([^()]*\)[^()]*)*\)")
TWO = re.compile(rf"\b(?:and|then|, )\s*(?:then\s+)?({'|'.join(MOVES)})\b", re.IGNORECASE)
VAGUE = re.compile(
    r"\b(check(?:ed)?|ensure|as (?:required|necessary|appropriate)"
    r"|if (?:required|necessary|possible)"
    r"|tight(?:ly)?|normal(?:ly)?|properly|carefully|adequate(?:ly)?|sufficient(?:ly)?"
    r"|approximately)\b",
    re.IGNORECASE,
)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the words of every step."""
    for procedure in live_procedures(book):
        for number, step in enumerate(procedure.steps):
            for field, written in _words(step):
                words = LINK.sub("", written)
                vague = VAGUE.search(words)
                second = TWO.search(words) if field == "do" else None
                if vague:
                    text = f"step {number + 1} says `{vague[0]}`"
                    cure = "say what is done and what is then seen, or take the step out"
                elif second:
                    text = f"step {number + 1} asks for two actions: `{words}`"
                    cure = f"make a step of its own of `{second[1]}`"
                else:
                    continue
                where = procedure.place(f"steps[{number}].{field}")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))


def _words(step: Step) -> Iterator[tuple[str, str]]:
    yield "do", step.do
    if step.to:
        yield "to", step.to
    if step.see and step.see.value:
        yield "see.value", step.see.value
