"""A procedure ends with a valve in another position than the one it says it restores, or names none.

Why: the next one to start the plant takes it to stand as it always does. What names no operating state
and no part says nothing that can be looked at.

Where the system has a layout and `when` names an operating state, the steps are walked on it, and it is the
end of that walk that counts; what was opened up must be refitted as well.

Fix: add the step that puts it back; or write into `restores` how it really stands, and why that
is right. An isolation is left on by its last step and is looked at only where it names the operating state
it ends in; whether it comes off before the work is proved is not seen here either.
"""

import re
from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import IDENTIFIER, nearest
from garboard.records.procedure import Procedure, Use
from garboard.rules.line_ups import folded, state_positions
from garboard.rules.steps import end_position, live_procedures
from garboard.systems.positions import PLAIN, positions_said
from garboard.systems.state import stands
from garboard.systems.walked import Walked

CODE = "line-up-not-restored"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True

THE_REST = re.compile(
    r"\b(others?|the rest|everything|all)\b.*\b(as before|as found|usual)\b", re.IGNORECASE
)

States = Mapping[str, Mapping[str, Mapping[str, str]]]


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare where the steps leave each part with where the procedure says it stands."""
    states = state_positions(book)
    for procedure in live_procedures(book):
        own = states.get(procedure.system, {})
        named = isinstance(procedure.restores, str) and procedure.restores in own
        yield from _names_nothing(book, procedure)
        if not procedure.steps or (procedure.use is Use.ISOLATION and not named):
            continue
        walked = book.walks.get(str(procedure.id))
        ends = _ends(book, procedure) | _walked_ends(walked)
        for tag, wanted in _wanted(book, procedure, states, ends).items():
            at = ends.get(tag) or _start(book, procedure, states, tag)
            if at and wanted and at != wanted:
                text = f"{procedure.id} ends with {tag} {at}, it restores {wanted}"
                where = procedure.places.get(f"restores.{tag}", procedure.place("restores"))
                cure = "add the step, or correct `restores`"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))
        if walked and procedure.restores:
            yield from _left_open(walked)


def _names_nothing(book: Book, procedure: Procedure) -> Iterator[Diagnostic]:
    """A `restores` in words that are no operating state, name no part and leave nothing as it was."""
    said, system = procedure.restores, book.systems.get(procedure.system)
    states = (system.operating_states if system else None) or {}
    if not isinstance(said, str) or not states or said in states or THE_REST.search(said):
        return
    if any(tag in book.components for tag in IDENTIFIER.findall(said)):
        return
    text = f"{procedure.id} restores \u201c{said}\u201d: no operating state of {procedure.system}, and no part"
    cure = f"write {nearest(said, states) or ' or '.join(states)}, or tags with their positions"
    yield Diagnostic(procedure.place("restores"), SEVERITY, text, cure, CODE, str(procedure.id))


def _left_open(walked: Walked) -> Iterator[Diagnostic]:
    """What was opened up or taken out, and is not refitted by a step that names it."""
    procedure = walked.procedure
    for tag in walked.left_open:
        text = f"{procedure.id} ends with {tag} opened up, and no step refits it"
        cure = f"name {tag} in the step that refits it, or say in `restores` that it stays open"
        if not re.search(rf"\b{tag}\b", str(procedure.restores)):
            where = procedure.place("restores")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))


def _ends(book: Book, procedure: Procedure) -> dict[str, str]:
    """Where the steps leave what they move."""
    found: dict[str, str] = {}
    for step in procedure.steps:
        position = end_position(step)
        if step.tag and position:
            found[step.tag] = folded(position, _kind(book, step.tag))
    return found


def _walked_ends(walked: Walked | None) -> dict[str, str]:
    """Where a walk from a known state leaves what it moved, whatever the words were."""
    if walked is None or not walked.begins:
        return {}
    plant, start, end = walked.plant, walked.walk.start, walked.walk.end
    ends = {part.tag: stands(plant, end, part.tag) for part in plant.parts}
    return {tag: at for tag, at in ends.items() if at and at != stands(plant, start, tag)}


def _wanted(
    book: Book, procedure: Procedure, states: States, ends: Mapping[str, str]
) -> dict[str, str]:
    """Where each part should stand that the procedure moves or names."""
    restores = procedure.restores
    if restores is None:
        return {}
    if isinstance(restores, Mapping):
        return {str(tag): folded(word, _kind(book, tag)) for tag, word in restores.items()}
    state = states.get(procedure.system, {}).get(restores)
    if state is not None:
        return {tag: state.get(tag) or _usual(book, tag) for tag in {**state, **ends}}
    said = {tag: word for tag, word in _said(book, restores) if _is_position(book, tag, word)}
    if THE_REST.search(restores):
        before = {tag: _start(book, procedure, states, tag) for tag in ends}
        return before | said
    return said


def _said(book: Book, restores: str) -> Iterator[tuple[str, str]]:
    """Tags in a text, each with the word behind it."""
    for tag, word in positions_said(restores):
        yield tag, folded(word, _kind(book, tag))


def _is_position(book: Book, tag: str, word: str) -> bool:
    part = book.components.get(tag)
    return part is not None and (word in PLAIN or word in (part.positions or {}))


def _start(book: Book, procedure: Procedure, states: States, tag: str) -> str:
    """Where a part stands before the first step, as far as it is known; else empty."""
    state = states.get(procedure.system, {}).get(procedure.when or "", {})
    return state.get(tag) or _usual(book, tag)


def _usual(book: Book, tag: str) -> str:
    part = book.components.get(tag)
    return folded(part.usual, part.kind) if part and part.usual else ""


def _kind(book: Book, tag: str) -> str:
    part = book.components.get(tag)
    return part.kind if part else ""
