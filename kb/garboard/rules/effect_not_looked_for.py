"""The day is past on which somebody was to look whether a cure worked, and nothing says what was seen.

Why: an action that was done is not one that helped. The day is set so that the look is not forgotten in
the relief that it is done.

Fix: look, and write what was seen under `result` of the action; or set a later day, with the reason in
the text. It holds from thirty days on.
"""

from collections.abc import Iterator
from datetime import timedelta

from garboard.book import Book
from garboard.changes.effect import overdue_looks
from garboard.errors import Diagnostic, Severity
from garboard.records.finding import Action

CODE = "effect-not-looked-for"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

PATIENCE = timedelta(days=30)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every look that is owed."""
    for look in overdue_looks(book):
        what = ""
        if isinstance(look.of, Action) and look.of.look_for:
            what = f" ({look.of.look_for})"
        text = f"{look.of.id} was to be looked at on {look.on}{what}, no result is written"
        cure = "look and write the result, or set a later day and say why"
        if not isinstance(look.of, Action):
            cure = "look and write the result into an action of it, or set a later day and say why"
        grave = SEVERITY if look.on + PATIENCE < book.today else Severity.WARN
        yield Diagnostic(look.of.place(look.field), grave, text, cure, CODE, str(look.of.id))
