"""A revision is said to have changed words only, and more than words changed, or nothing can tell.

Why: whoever was shown the procedure before goes on counting as able to do it. If a step moved, the old
way is still in their hands, and the list of people says they know the new one.

Fix: take the number out of `minor:`, and show the procedure again; or put the steps back. Judged are
the steps with all that guards them, their safety messages and the numbers they quote, when it starts, how
it ends, when to stop, people, isolation, tools and protective gear, against the newest edition that holds
an earlier revision. Where none does, an earlier signature is asked; it can only show that nothing moved, or
that a message or a number did. A claim with nothing to hold it against is a note. Until it is mended, or
shown again, the revision counts as major.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.minor_revisions import minor_claims
from garboard.errors import Diagnostic, Severity
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left

CODE = "revision-not-minor"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold every claim of words only against the last text that is known from before it."""
    for record in book.of_kind(Procedure):
        if has_left(record):
            continue
        key, where = str(record.id), record.place("minor")
        for one in minor_claims(book, record):
            if one.refused:
                text = f"revision {one.number} of {key} is said to be minor, but {one.refused}"
                cure = f"take {one.number} out of minor: and show {key} again, or put back what changed"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, key)
            elif one.unproved:
                text = (
                    f"revision {one.number} of {key} is claimed minor, nothing to hold it against:"
                    f" {one.unproved}; it counts as major"
                )
                cure = f"show {key} again and write the day, or take {one.number} out of minor:"
                yield Diagnostic(where, Severity.NOTE, text, cure, CODE, key)
