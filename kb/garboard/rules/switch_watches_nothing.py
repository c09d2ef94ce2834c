"""A switch that stops no machine does not say what it watches, so nobody asks what hides it.

Why: whether a shut valve can part a switch from its vessel is only asked where the vessel is named. A
low-air switch behind a stop valve looks at an empty pipe and stays silent, and so does the question.

Fix: write `watches:` and the vessel that it must feel, or `stops:` and the machine it stops.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "switch-watches-nothing"
SEVERITY = Severity.HOLD
BINDS_FROM = "in service"
WAIVABLE = True

SWITCHES = ("pressure switch", "level switch")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for switches of which no vessel and no machine is named."""
    for part in book.components.values():
        unread = {"watches", "stops"} & set(part.unread)
        if part.kind in SWITCHES and not part.watches and not part.stops and not unread:
            text = f"{part.tag} watches nothing and stops nothing, "
            text += "so it is not asked what a shut valve can hide from it"
            cure = "write watches: and the vessel it must feel, or stops: and the machine it stops"
            yield Diagnostic(part.where, SEVERITY, text, cure, CODE, part.tag)
