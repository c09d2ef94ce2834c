"""A procedure was walked through on the plant before something in it was changed.

Why: the valve that was reached on the walk may now stand behind a pipe, or turn the other way.

Fix: walk it again on the plant as it is; where the change does not touch any of its steps, say so
in the change by taking the component out of `affects`. The day of the walk is that of the
verifier's line.
"""

from collections.abc import Iterator
from datetime import date

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.change import Change
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left, refused, state_of
from garboard.rules.steps import live_procedures

CODE = "walk-through-stale"
SEVERITY = Severity.HOLD
BINDS_FROM = "in service"
WAIVABLE = True

WALKED = ("walked through", "approved", "issued")


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the day of each walk with every later change to a component in the procedure."""
    changes = [
        change
        for change in book.of_kind(Change)
        if change.installed and not has_left(change) and not refused(change)
    ]
    for procedure in live_procedures(book):
        walked = _walked(procedure)
        if walked is None:
            continue
        inside = {
            str(tag)
            for step in procedure.steps
            for tag in (step.tag, step.see and step.see.tag)
            if tag
        }
        for change in changes:
            touched = inside & {name.split(".")[0] for name in (*change.affects, *change.values)}
            if change.installed and change.installed > walked and touched:
                text = f"{procedure.id} was walked {walked}, {min(touched)} changed"
                text += f" {change.installed} by {change.id}"
                cure = f"walk it again, or take {min(touched)} out of {change.id}"
                where = procedure.place("state")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))
                break


def _walked(procedure: Procedure) -> date | None:
    """The day of the last walk; it was walked on that day even where its signatures have lapsed."""
    if state_of(procedure) not in WALKED:
        return None
    return max((line.on for line in procedure.signed if line.to == "walked through"), default=None)
