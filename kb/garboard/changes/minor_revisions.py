"""Which revisions of a procedure changed words only, and which claims of that cannot be believed.

Whoever was shown a procedure can still do it after its words were mended. So that nobody is taken for
skilled by a slip of the pen, every revision counts as major unless the procedure says otherwise, and
what it says is held against the last edition.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.step_diff import Held, guards_moved, steps_moved
from garboard.records.procedure import Procedure
from garboard.review.canonical import said
from garboard.review.issued import issued_record

__all__ = ["believed_minor", "claims_refused"]

DONE_OTHERWISE = (
    *("use", "when", "people", "ppe", "isolation", "isolates", "points", "restores", "stop_if"),
    *("competence", "tools"),
)
"""What somebody does or needs otherwise when it moves, beside the steps."""
MOST_NAMED = 3


def believed_minor(book: Book, procedure: Procedure) -> frozenset[int]:
    """The revisions of a procedure that changed words only, as far as that can be believed.

    Args:
        book: With the last edition.
        procedure: As it stands.
    """
    refused = {number for number, _ in claims_refused(book, procedure)}
    return frozenset(procedure.minor) - refused


def claims_refused(book: Book, procedure: Procedure) -> Iterator[tuple[int, str]]:
    """Every revision that is said to be minor and cannot be taken for it, with the reason.

    Args:
        book: With the last edition.
        procedure: As it stands.
    """
    edition = book.edition
    issued = edition.records.get(str(procedure.id)) if edition else None
    old = issued_record(book.content.editions, issued) if issued else None
    before = old if isinstance(old, Procedure) else None
    since = range(before.revision + 1 if before else 1, procedure.revision + 1)
    only_words = all(number in procedure.minor for number in since)
    for number in dict.fromkeys(procedure.minor):
        if not 0 < number <= procedure.revision:
            yield number, f"it is revision {procedure.revision}"
        elif before is None or edition is None:
            continue
        elif number <= before.revision and number not in before.minor:
            yield number, f"edition {edition.number} was issued without that word"
        elif number in since and only_words:
            moved = _moved(book, before, procedure)
            if moved:
                yield number, f"since edition {edition.number} {moved}"


def _moved(book: Book, before: Procedure, after: Procedure) -> str:
    """What is done otherwise than in the last edition, in words; empty where only words differ."""
    told = []
    if said(before.steps) != said(after.steps):
        held = Held(book, book, before, after)
        numbers = {
            one.number_after or one.number_before: f"step {one.number_after}"
            if one.number_after
            else f"the old step {one.number_before}"
            for one in steps_moved(held)
        }
        guards = (one.what for one in guards_moved(held))
        told += [*numbers.values(), *guards] or ["a step"]
    told += [
        name.replace("_", " ")
        for name in DONE_OTHERWISE
        if said(getattr(before, name)) != said(getattr(after, name))
    ]
    if not told:
        return ""
    more = f" and {len(told) - MOST_NAMED} more" if len(told) > MOST_NAMED else ""
    return f"{', '.join(told[:MOST_NAMED])}{more} changed"
