"""A revision is said to have changed words only, and more than words changed.

Why: whoever was shown the procedure before goes on counting as able to do it. If a step moved, the old
way is still in their hands, and the list of people says they know the new one.

Fix: take the number out of `minor:`, and show the procedure again; or put the steps back. Judged are
the steps with all that guards them, when it starts, how it ends, when to stop, people, isolation,
tools and protective gear. Until it is mended the revision counts as major.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.minor_revisions import claims_refused
from garboard.errors import Diagnostic, Severity
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left

CODE = "revision-not-minor"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold every claim of words only against the last edition."""
    for record in book.of_kind(Procedure):
        if not record.minor or has_left(record):
            continue
        key = str(record.id)
        for number, reason in claims_refused(book, record):
            text = f"revision {number} of {key} is said to be minor, but {reason}"
            cure = f"take {number} out of minor: and show {key} again, or put back what changed"
            yield Diagnostic(record.place("minor"), SEVERITY, text, cure, CODE, key)
