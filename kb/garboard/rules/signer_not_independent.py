"""One person holds two capacities that must be two persons.

Why: nobody finds their own mistake by looking again. Checking and verifying is done by another
person, apart from the doer (DOE-STD-1036-93; DOE-STD-6003-96).

Fix: ask another person who may act in that capacity; the line that stands there stays.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class, Record
from garboard.records.finding import Finding
from garboard.records.inspection import Test
from garboard.records.signoff import Capacity
from garboard.rules.signed import Line, lines

CODE = "signer-not-independent"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

JUDGES = (Capacity.CHECKER, Capacity.APPROVER)
PROVES = (Capacity.VERIFIER, Capacity.WITNESS)
ENDS = {"closed": "closes", "not accepted": "refuses"}


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the person of each signature with those who did the work."""
    for line in lines(book):
        said = next(_clashes(book, line), None)
        if said:
            able = [
                key
                for key, person in book.content.people.items()
                if line.weighed.line.capacity in person.may and key != line.weighed.line.by
            ]
            cure = f"ask {' or '.join(able[:3])}" if able else "ask another person"
            yield Diagnostic(line.where, SEVERITY, said, cure, CODE, line.key)


def _clashes(book: Book, line: Line) -> Iterator[str]:
    signed, thing = line.weighed.line, line.thing
    by, capacity = signed.by, signed.capacity
    if capacity in JUDGES and by == thing.author:
        yield f"{by} wrote it and signed as {capacity}"
    if capacity in PROVES and by in _doers(thing):
        yield f"{by} did it and signed as {capacity}"
    if capacity is Capacity.APPROVER and _class(thing) is Class.A:
        checkers = {each.by for each in thing.signed if each.capacity is Capacity.CHECKER}
        if by in checkers:
            yield f"{by} checked and approved a class A record"
    if isinstance(thing, Finding) and signed.to in ENDS:
        authors = {found.author for found in map(book.records.get, thing.against) if found}
        if by in authors:
            yield f"{by} {ENDS[signed.to]} a finding against {by}'s own work"


def _doers(thing: object) -> set[str]:
    if not isinstance(thing, Record):
        return set()
    doers = {line.by for line in thing.signed if line.capacity is Capacity.DOER}
    if isinstance(thing, Test) and thing.did:
        doers.add(thing.did)
    return doers


def _class(thing: object) -> Class:
    return thing.weight if isinstance(thing, Record) else Class.B
