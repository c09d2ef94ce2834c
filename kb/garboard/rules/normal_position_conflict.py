"""Two places say different things about how a valve usually stands.

Why: whoever walks the line with the list in hand puts the valve where that list says, and the
next one puts it back.

Fix: keep the component list's and correct the other; where the plant has really changed, raise a
change and correct both.
"""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.change import TemporaryModification
from garboard.records.component import Component
from garboard.records.procedure import Procedure, Use
from garboard.records.standing import has_left, state_of
from garboard.rules.line_ups import folded, state_positions

CODE = "normal-position-conflict"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

ENDS_ELSEWHERE = (Use.ABNORMAL, Use.EMERGENCY, Use.LAY_UP)
"""What such a procedure ends in is not how things usually stand."""
USUAL_STATES = ("usual", "normal")
RIGGED = ("authorised", "fitted", "emergency", "expired")
"""As written: what is rigged stays rigged when its paper lapses."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold the component list against locks, operating states and the ends of procedures."""
    rigged = {
        tag
        for record in book.of_kind(TemporaryModification)
        if state_of(record) in RIGGED
        for tag in record.where_
    }
    parts = {tag: part for tag, part in book.components.items() if part.usual and tag not in rigged}
    for part in parts.values():
        if part.locked and folded(part.locked, part.kind) != folded(part.usual, part.kind):
            text = f"{part.tag} is usually {part.usual}, locked {part.locked}"
            yield _found(part, text)
    known = state_positions(book)
    yield from _usual_states(book, parts, known)
    for procedure in book.of_kind(Procedure):
        if procedure.use not in ENDS_ELSEWHERE and not has_left(procedure):
            yield from _ends(procedure, parts, known)


def _usual_states(
    book: Book,
    parts: Mapping[str, Component],
    known: Mapping[str, Mapping[str, Mapping[str, str]]],
) -> Iterator[Diagnostic]:
    """An operating state that contradicts itself, or that is called usual and is not."""
    for code, system in book.systems.items():
        for name, state in (system.operating_states or {}).items():
            where = system.place(f"operating_states.{name}")
            for both in state.open:
                if both in state.shut:
                    text = f"{both} is both open and shut in {name}"
                    cure = "take it out of one of the two lists"
                    yield Diagnostic(where, SEVERITY, text, cure, CODE, both)
            for tag, position in known[code][name].items() if name in USUAL_STATES else ():
                part = parts.get(tag)
                if part and position != folded(part.usual, part.kind):
                    yield _found(part, f"{tag} is usually {part.usual}, {position} in {name}")


def _ends(
    procedure: Procedure,
    parts: Mapping[str, Component],
    known: Mapping[str, Mapping[str, Mapping[str, str]]],
) -> Iterator[Diagnostic]:
    """A procedure that ends with a valve neither as usual nor as in any operating state."""
    if not isinstance(procedure.restores, Mapping):
        return
    for tag, position in procedure.restores.items():
        part = parts.get(tag)
        if part is None:
            continue
        end = folded(position, part.kind)
        if end == folded(part.usual, part.kind):
            continue
        states = known.get(part.system, {}).values()
        if all(state.get(tag) != end for state in states):
            text = f"{tag} is usually {part.usual}, {procedure.id} leaves it {position}"
            where = procedure.places.get(f"restores.{tag}", procedure.place("restores"))
            cure = "keep the component list's, or raise a change"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))


def _found(part: Component, text: str) -> Diagnostic:
    cure = "keep the component list's, or raise a change"
    return Diagnostic(part.at_place("usual"), SEVERITY, text, cure, CODE, part.tag)
