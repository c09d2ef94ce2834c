"""A hose or bellows is past the day it must be replaced, or nobody knows how old it is.

Why: rubber ages whether it works or not, and a hose looks the same the day before it lets go.

Fix: replace it and write the day; where it is sound and the day cannot be kept, ask for a
concession with conditions. Without a date read the code on the hose, which tells when it was
made.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "hose-out-of-date"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True

AGEING = ("hose", "bellows")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the dates of everything that ages."""
    for part in book.components.values():
        if part.kind not in AGEING:
            continue
        if part.expires and part.expires < book.today:
            text = f"{part.tag} had to be replaced by {part.expires}"
            cure = "replace it and write the day, or ask for a concession with conditions"
            where = part.at_place("expires")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, part.tag)
        elif not part.fitted and not part.expires:
            text = f"{part.tag} has no date on which it was fitted"
            cure = "write `fitted`, or read the day it was made from the hose and write `expires`"
            where = part.at_place("kind")
            yield Diagnostic(where, Severity.WARN, text, cure, CODE, part.tag)
