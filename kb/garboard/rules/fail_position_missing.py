"""A powered valve does not say what it does when its power or air goes, or nothing says what then.

Why: the day the power fails is the day nobody has time to find out; a fuel valve that stays where
it was and one that shuts are two different emergencies.

Fix: write `fails: open`, `shut` or `stays` after trying it, and the loss under `loss` of its
system.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.alarm import Fault
from garboard.records.component import Component
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left
from garboard.records.system import System

CODE = "fail-position-missing"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

POWERED = re.compile(
    r"\b(solenoid|electric|motor\w*|actuated|air[- ]operated|pneumatic)\b", re.IGNORECASE
)
VALVES = (
    "stop valve",
    "drain valve",
    "vent valve",
    "cock",
    "quick-closing valve",
    "stop-check valve",
    "three-way valve",
    "regulator",
)
LOSS = re.compile(
    r"\b(loss of|lost|no|without|dead|fail\w*)\b.*\b(air|power|current|oil)\b", re.IGNORECASE
)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every valve that something moves, and at what its system says of a loss."""
    unsaid: dict[str, Component] = {}
    for part in book.components.values():
        if not _powered(part):
            continue
        if part.fails is None:
            text = f"{part.tag} does not say how it fails"
            cure = "state open, shut or stays, and test it"
            where = part.at_place("kind")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, part.tag)
        else:
            unsaid.setdefault(part.system, part)
    for code, part in unsaid.items():
        system = book.systems.get(code)
        if system is not None and not _loss_is_told(book, system):
            text = f"{part.tag} fails {part.fails}, and {code} says nothing of that loss"
            cure = "write what happens then under `loss` of the system, or a fault page for it"
            yield Diagnostic(part.at_place("fails"), SEVERITY, text, cure, CODE, part.tag)


def _powered(part: Component) -> bool:
    return part.kind == "solenoid valve" or (
        part.kind in VALVES and part.type is not None and POWERED.search(part.type) is not None
    )


def _loss_is_told(book: Book, system: System) -> bool:
    """Whether the system, a procedure or a fault says what happens when power or air is lost."""
    if system.loss:
        return True
    kinds = (Procedure, Fault)
    told = (record for kind in kinds for record in book.of_kind(kind) if not has_left(record))
    return any(record.system == system.code and LOSS.search(record.title) for record in told)
