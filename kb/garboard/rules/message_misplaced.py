"""A hazard is met in a procedure before its message, or its message stands in no step.

Why: a message below the step it guards is read by the one who has already done it; one in the
text at the foot is read by nobody. ANSI Z535.6 (verify the text before citing) wants it directly
before.

Fix: put `message` into the first step that opens, starts or lets out what the hazard is about;
where the step does not meet it, take the component out of the hazard's `where`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import bare_id
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left, state_of
from garboard.rules.steps import live_procedures, releases

CODE = "message-misplaced"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the step that first meets each hazard with the one that first warns of it."""
    hazards = [
        hazard
        for hazard in book.of_kind(Hazard)
        if hazard.message and not has_left(hazard) and state_of(hazard) != "closed"
    ]
    below: dict[str, set[str]] = {}
    for written in book.content.texts:
        if not written.field:
            below.setdefault(written.owner, set()).update(item.name for item in written.names)
    for procedure in live_procedures(book):
        named = below.get(str(procedure.id), set())
        for hazard in hazards:
            yield from _placed(book, procedure, hazard, below=str(hazard.id) in named)


def _placed(
    book: Book, procedure: Procedure, hazard: Hazard, *, below: bool
) -> Iterator[Diagnostic]:
    steps = list(enumerate(procedure.steps, 1))
    warns = [n for n, step in steps if step.message and bare_id(step.message) == hazard.id]
    where_met = {str(name) for name in hazard.where_}
    meets = [n for n, step in steps if str(step.tag) in where_met and releases(book, step)]
    about = str(procedure.id)
    if warns and meets and meets[0] < warns[0]:
        text = f"{hazard.id} stands after step {meets[0]}, which meets it"
        where = procedure.place(f"steps[{warns[0] - 1}].message")
        cure = f"move it into step {meets[0]}, or put that step later"
        yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
    elif meets and not warns:
        tag = procedure.steps[meets[0] - 1].tag
        text = f"step {meets[0]} meets {hazard.id} at {tag}, no step warns of it"
        where = procedure.place(f"steps[{meets[0] - 1}].tag")
        cure = f"put `message: {hazard.id}` into it, or take {tag} out of the hazard"
        yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
    elif below and not warns and steps:
        text = f"{hazard.id} stands in the text below the steps of {about}, no step warns of it"
        where = Where(procedure.where.path, procedure.text_line)
        cure = "put its message into the step that meets it, or take it out of the text"
        yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
