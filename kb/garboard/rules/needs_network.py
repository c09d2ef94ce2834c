"""A page loads a picture, a script or anything else from elsewhere.

Why: at sea nothing comes from elsewhere. The page then shows a hole where the plate or the drawing
should be, and on some devices nothing at all.

Fix: copy the file into the content folder and name it by its path there. When an edition is published
the finished site is looked through as well, and one that loads anything from elsewhere is not handed out.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.content import Written
from garboard.rules.markdown_text import find_links, find_raw_tags
from garboard.rules.prose import bodies

CODE = "needs-network"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False
AT_ISSUE = True

ELSEWHERE = re.compile(r"(?:https?|ftp|wss?):|//", re.IGNORECASE)
LOADS = re.compile(
    r"\b(?:src|srcset|data|poster|background)\s*=\s*[\"']?\s*(?P<address>[^\s\"'>]+)", re.IGNORECASE
)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every picture, and at what raw HTML would load."""
    for written in bodies(book.content.texts):
        for where, address in dict.fromkeys(_loaded(written)):
            if ELSEWHERE.match(address):
                text = f"{written.owner} loads {address}"
                cure = "copy it in, and write its path; or say in words what it shows"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, written.owner)


def _loaded(written: Written) -> Iterator[tuple[Where, str]]:
    for link in find_links(written):
        if link.picture and not link.raw:
            yield link.where, link.target
    for tag in find_raw_tags(written):
        for found in LOADS.finditer(tag.attributes):
            yield tag.where, found["address"]
