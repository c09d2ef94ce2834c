"""One person holds more than half of a system's checks.

Why: what one pair of eyes overlooks it overlooks everywhere.

Fix: ask somebody else to check a part of it; a fresh reader finds what a tired one has got used to.
"""

from collections import Counter
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.signed import Line, lines
from garboard.rules.signer_not_independent import JUDGES

CODE = "single-pair-of-eyes"
SEVERITY = Severity.WARN
BINDS_FROM = "in test"
WAIVABLE = True

FEWEST = 4
"""Checks of a system from which on the share says anything; a choice of this house."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Count standing checks by system and person."""
    held: dict[str, list[Line]] = {}
    for line in lines(book):
        if line.weighed.stands and line.weighed.line.capacity in JUDGES and line.thing.system:
            held.setdefault(line.thing.system, []).append(line)
    for code, found in held.items():
        person, count = Counter(line.weighed.line.by for line in found).most_common(1)[0]
        if len(found) >= FEWEST and count * 2 > len(found) and code in book.systems:
            text = f"{person} holds {count} of the {len(found)} checks of {code}"
            cure = "ask somebody else to check a part of it"
            yield Diagnostic(book.systems[code].where, SEVERITY, text, cure, CODE, code)
