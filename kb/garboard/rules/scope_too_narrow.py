"""A check says what it left out, and nobody else has checked that part.

Why: a page that looks reviewed is believed whole.

Fix: have that part checked by somebody who can, and signed with its scope; or take it off the page.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.signed import lines

CODE = "scope-too-narrow"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at what standing checks left out."""
    for line in lines(book):
        left_out = [
            part for part in line.weighed.line.not_checked if part in line.reviewed.not_checked
        ]
        if line.weighed.stands and left_out:
            text = f"not checked by the {line.weighed.line.capacity}: {', '.join(left_out)}"
            cure = "have it checked and signed, or leave it out"
            yield Diagnostic(line.where, SEVERITY, text, cure, CODE, line.key)
