"""A step opens something that may hold energy before it is isolated, seen at zero and warned of.

Why: a flange slackened on a line that somebody believed empty. 29 CFR 1910.147(d) asks for the
isolation first, then for stored energy to be let go and seen to be gone.

Where the system has a layout, the steps are walked on it as well, from the operating state in `when`: a
part that may still hold pressure, or that an open way feeds, is not proved by the words alone.

Fix: put the isolation, a reading of 0 and the message of the hazard before the step; shut what
feeds it. A bleed opened to prove zero is no opening up; whether an isolation cuts off every
source, `isolation-incomplete` asks. Say in `when` from which operating state it starts: without
one, a valve that no step names counts as standing the worst way.
"""

from collections.abc import Iterator, Sequence

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.procedure import Procedure, Step, Use
from garboard.rules.line_ups import folded
from garboard.rules.steps import live_procedures, opens_up, sees_zero, verb
from garboard.systems.forbidden import Trouble
from garboard.systems.telling import listed

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
    """Walk every procedure: in words to the first step that opens something up, then on the layout."""
    for procedure in live_procedures(book):
        missing, first = _by_words(book, procedure)
        if missing:
            opened = procedure.steps[first].tag
            text = f"step {first + 1} opens {opened} with no {listed(missing, 'or')} before it"
            needed = [ARTICLES[name] for name in missing]
            cure = f"put {listed(needed)} before it, or take the step out"
            yield _at(procedure, first + 1, text, cure)
        said = first + 1 if missing and missing != ["message"] else 0
        walked = book.walks.get(str(procedure.id))
        for met in walked.walk.met if walked else ():
            if met.at_opening and met.step != said:
                text = f"step {met.step} opens {met.trouble.about}, {met.trouble.text}"
                yield _at(procedure, met.step, text, _cure(met.trouble))


def _by_words(book: Book, procedure: Procedure) -> tuple[list[str], int]:
    """What is missing before the first step that opens something up, and its index."""
    for number, step in enumerate(procedure.steps):
        if opens_up(book, step):
            return list(_missing(book, procedure, procedure.steps[:number], step)), number
    return [], 0


def _cure(trouble: Trouble) -> str:
    if trouble.unknown:
        return f"shut {listed(trouble.unknown)} before it, or say in `when` how it stands"
    if trouble.open:
        tags = listed(trouble.open, "or")
        return f"shut {tags} and read 0 before it, or take the step out"
    return "let it out and read 0 before it, or take the step out"


def _at(procedure: Procedure, number: int, text: str, cure: str) -> Diagnostic:
    where = procedure.place(f"steps[{number - 1}].do")
    return Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))


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
