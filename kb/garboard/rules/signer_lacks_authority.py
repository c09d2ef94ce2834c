"""Somebody signs in a capacity, for a class or in a system that people.yml does not give them.

Why: who may approve is settled before the work, not by whoever is near when it is done.

Fix: have somebody sign who may; or let the one in charge widen what this person may do, in
people.yml, and say why in a decision.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Class, Record
from garboard.records.signoff import Capacity, SignOff
from garboard.rules.signed import lines

CODE = "signer-lacks-authority"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

FREE = (Capacity.ANY_HAND, Capacity.AUTHOR)
"""Anybody may raise a finding, and write."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare each signature with what its person may do."""
    yield from _of_systems(book)
    for line in lines(book):
        signed = line.weighed.line
        person = book.content.people.get(signed.by)
        if person is None or signed.capacity in FREE:
            continue
        thing = line.thing
        weight = thing.weight if isinstance(thing, Record) else Class.B
        lack = person.lacks(signed.capacity, thing.system, weight)
        if lack:
            yield _said(line.where, signed, lack, line.key)


def _of_systems(book: Book) -> Iterator[Diagnostic]:
    """The signatures on a service status."""
    for code, system in book.systems.items():
        for number, signed in enumerate(system.signed):
            person = book.content.people.get(signed.by)
            lack = person.lacks(signed.capacity, code) if person else ""
            if lack:
                yield _said(system.place(f"signed[{number}]"), signed, lack, code)


def _said(where: Where, signed: SignOff, lack: str, about: str) -> Diagnostic:
    cure = "have somebody sign who may, or widen people.yml by a decision"
    text = f"{signed.by} signs as {signed.capacity}, and may not {lack}"
    return Diagnostic(where, SEVERITY, text, cure, CODE, about)
