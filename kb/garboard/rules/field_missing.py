"""A field is absent that the state, the class or the kind of a thing asks for.

Why: what is not asked in time is not remembered later, and a rule can only test what is written
down. What is asked for grows with the record: little at the start, all of it at rest.

Fix: fill the fields in; the question of each is in the manual, and in the file that `garboard new`
makes. What nobody knows is no reason to guess: set the record back to its start state, or give a
number with [assumed].
"""

from collections.abc import Iterator
from dataclasses import fields

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Asked, Record
from garboard.records.calculation import Calculation
from garboard.records.component import QUANTITIES, Component
from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.records.standing import has_left, kind_name, state_of
from garboard.records.states import at_rest, start_state

CODE = "field-missing"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

OF_OTHER_RULES = {(Calculation, "second")}
"""Fields whose absence another rule reports by itself."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Ask every record and every component for what it owes."""
    for record in book.records.values():
        missing = [] if has_left(record) else list(_owed(record))
        if missing:
            text = f"{_described(record)} in state {state_of(record)} wants {', '.join(missing)}"
            cure = f"fill in what it wants, or set it back to {start_state(kind_name(record))}"
            where = record.place("state" if record.state else "id")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))
    for part in book.components.values():
        missing = list(_blank(part))
        if missing:
            text = f"{part.kind} {part.tag} wants {', '.join(missing)}"
            cure = "fill in what it wants, or raise an open item that names it"
            if not {"range", *QUANTITIES}.isdisjoint(missing):
                cure = "fill in what it wants; a number nobody has read yet is given with [assumed]"
            yield Diagnostic(part.where, SEVERITY, text, cure, CODE, part.tag)


def _described(record: Record) -> str:
    kind = kind_name(record)
    if record.class_:
        counts = "" if record.weight is record.class_ else f", which counts as {record.weight},"
        return f"class {record.class_} {kind} {record.id}{counts}"
    return f"{kind} {record.id}, which states no class and counts as A,"


def _owed(record: Record) -> Iterator[str]:
    """The keys that its state, as written, and its class ask for and that are empty."""
    kind, state = kind_name(record), state_of(record)
    started, rests = state != start_state(kind), at_rest(kind, state)
    for item in fields(record):
        asked = item.metadata.get("asked", Asked())
        wanted = (asked.before_leaving_start and started) or (
            rests and record.weight in asked.classes
        )
        key = item.name.rstrip("_")
        known = key in record.unread or (type(record), key) in OF_OTHER_RULES
        if wanted and not known and getattr(record, item.name) in (None, "", (), {}):
            yield key


def _blank(part: Component) -> Iterator[str]:
    """The properties that its kind asks for and that are empty."""
    kind = COMPONENT_KINDS.get(part.kind)
    for name in kind.asks if kind else ():
        if name not in part.unread and getattr(part, name) in (None, "", (), {}):
            yield name
