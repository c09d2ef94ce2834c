"""Somebody signs in a capacity, for a class or in a system that people.yml does not give them.

Why: who may approve is settled before the work, not by whoever is near when it is done.

Fix: have somebody sign who may; or let the one in charge widen what this person may do, in
people.yml, and say why in a decision.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class, Record
from garboard.records.people import PersonEntry
from garboard.records.signoff import Capacity
from garboard.rules.signed import Line, lines

CODE = "signer-lacks-authority"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

FREE = (Capacity.ANY_HAND, Capacity.AUTHOR)
"""Anybody may raise a finding, and write."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare each signature with what its person may do."""
    for line in lines(book):
        signed = line.weighed.line
        person = book.content.people.get(signed.by)
        if person is None or signed.capacity in FREE:
            continue
        lack = _lack(line, person)
        if lack:
            cure = "have somebody sign who may, or widen people.yml by a decision"
            text = f"{signed.by} signs as {signed.capacity}, and may not {lack}"
            yield Diagnostic(line.where, SEVERITY, text, cure, CODE, line.key)


def _lack(line: Line, person: PersonEntry) -> str:
    signed, thing = line.weighed.line, line.thing
    if signed.capacity not in person.may:
        may = ", ".join(person.may) or "sign nothing"
        return f"act so (may: {may})"
    weight = thing.weight if isinstance(thing, Record) else Class.B
    if person.class_ and weight < person.class_:
        return f"do so for class {weight} (up to class {person.class_})"
    if person.systems and thing.system not in person.systems:
        return f"do so in {thing.system} (in {', '.join(person.systems)})"
    return ""
