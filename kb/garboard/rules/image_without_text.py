"""A picture in a text has no words of its own.

Why: somebody reads the page aloud, or by voice, or on a sheet where the picture did not print. What
only the picture says, they are not told.

Basis: WCAG 2.2, 1.1.1.

Fix: write between the brackets what it shows: ![gauge of receiver 1, needle at the red line](...).
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.markdown_text import find_links
from garboard.rules.prose import bodies

CODE = "image-without-text"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every picture in every text."""
    for written in bodies(book.content.texts):
        for link in find_links(written):
            if link.picture and not link.raw and link.target and not link.text.strip():
                text = f"picture {link.target} has no text"
                cure = "describe it between the brackets: what it shows, and from where"
                yield Diagnostic(link.where, SEVERITY, text, cure, CODE, written.owner)
