"""A hazard is closed while its source lives, or a deadly one is held by words alone.

Why: nothing is safer because a record says closed. And words are the weakest control there is:
who relies on nothing else must say so and have the rest accepted, in the order of MIL-STD-882E
(verify the text before citing).

Fix: reopen it, or withdraw the component that holds the energy; put in a control that does not
have to be remembered, or have what is left accepted by an approver.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.hazard import Gravity, Hazard, Rank
from garboard.records.standing import has_left, state_of

CODE = "hazard-waved-away"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

DEADLY = (Gravity.CATASTROPHIC, Gravity.CRITICAL)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at closed hazards, and at deadly ones that only words hold."""
    for hazard in book.of_kind(Hazard):
        state, place = state_of(hazard), hazard.place
        if state == "closed":
            living = [tag for tag in hazard.where_ if tag in book.components]
            if living:
                text = f"{hazard.id} is closed, but {living[0]} is live"
                cure = f"reopen it, or withdraw {living[0]}"
                yield Diagnostic(place("state"), SEVERITY, text, cure, CODE, str(hazard.id))
        elif hazard.severity in DEADLY and _only_words(hazard) and not _accepted(book, hazard):
            text = f"{hazard.id} of severity {hazard.severity} is held by words alone, "
            text += "and what is left is not accepted"
            cure = "add a control that guards or reduces, or have the residual accepted"
            yield Diagnostic(place("controls"), SEVERITY, text, cure, CODE, str(hazard.id))


def _only_words(hazard: Hazard) -> bool:
    return bool(hazard.in_place) and all(one.rank is Rank.WORDS for one in hazard.in_place)


def _accepted(book: Book, hazard: Hazard) -> bool:
    """Whether what is left was accepted; not where the machine moves the acceptance back."""
    accepted = book.state(hazard) == "accepted" and hazard.residual is not None
    return has_left(hazard) or accepted
