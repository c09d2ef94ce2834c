"""A step opens something that may hold energy before it is isolated, seen at zero and warned of.

Why: a flange slackened on a line that somebody believed empty. 29 CFR 1910.147(d) asks for the
isolation first, then for stored energy to be let go and seen to be gone.

Fix: put the isolation, a reading of 0 and the message of the hazard before the step. A bleed
opened to prove zero is no opening up. Only the order of the steps is looked at; whether an
isolation cuts off every source, `isolation-incomplete` asks.
"""

from collections.abc import Iterator, Sequence

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.procedure import Procedure, Step, Use
from garboard.rules.line_ups import folded
from garboard.rules.steps import live_procedures, opens_up, sees_zero, verb

CODE = "opened-unproved"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

ISOLATES = ("lock", "isolate", "shut", "close")
BREAKS_CURRENT = ("fuse", "breaker", "switch", "changeover")
SWITCHES_OFF = ("pull", "remove", "lock", "switch off")
"""To open a breaker is no such word: open is on to one person and off to the next."""

ARTICLES = {
    "isolation": "an isolation",
    "reading of 0": "a reading of 0",
    "message": "the message of its hazard",
}


def check(book: Book) -> Iterator[Diagnostic]:
    """Walk every procedure to the first step that opens something up."""
    for procedure in live_procedures(book):
        for number, step in enumerate(procedure.steps):
            if not opens_up(book, step):
                continue
            before = procedure.steps[:number]
            missing = list(_missing(book, procedure, before, step))
            if missing:
                text = f"step {number + 1} opens {step.tag} with no {_listed(missing)} before it"
                needed = [ARTICLES[name] for name in missing]
                cure = f"put {_listed(needed, 'and')} before it, or take the step out"
                where = procedure.place(f"steps[{number}].do")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))
            break


def _missing(book: Book, procedure: Procedure, before: Sequence[Step], step: Step) -> Iterator[str]:
    """What should stand before the step and does not."""
    held = book.records.get(bare_id(procedure.isolation)) if procedure.isolation else None
    in_force = held if isinstance(held, Procedure) and held.use is Use.ISOLATION else None
    if in_force is None and not any(_isolates(book, one) for one in before):
        yield "isolation"
    proofs = (*before, *(in_force.steps if in_force else ()))
    if not any(sees_zero(book, one) for one in proofs):
        yield "reading of 0"
    if not any(one.message for one in (*before, step)):
        yield "message"


def _isolates(book: Book, step: Step) -> bool:
    part = book.components.get(step.tag or "")
    if part is not None and part.kind in BREAKS_CURRENT:
        return verb(step.do) in SWITCHES_OFF or folded(step.to, part.kind) == "shut"
    return verb(step.do) in ISOLATES


def _listed(names: Sequence[str], last: str = "or") -> str:
    head = ", ".join(names[:-1])
    return f"{head} {last} {names[-1]}" if head else names[-1]
