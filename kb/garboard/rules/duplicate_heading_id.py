"""Two headings of one text have the same words, and so the same anchor.

Why: a link to the anchor leads to the first of them, also when the second was meant; and it moves
when somebody puts a section in between.

Fix: give one of them a heading of its own, such as what it is about.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.markdown_text import Heading, find_headings
from garboard.rules.prose import bodies

CODE = "duplicate-heading-id"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the headings of every text."""
    for written in bodies(book.content.texts):
        first: dict[str, Heading] = {}
        for heading in find_headings(written):
            same = first.setdefault(heading.words.casefold(), heading)
            if same is not heading:
                text = f"heading {heading.words} stands on line {same.where.line} too"
                cure = f"give one of them other words; a link to #{same.anchor} leads to the first"
                yield Diagnostic(heading.where, SEVERITY, text, cure, CODE, written.owner)
