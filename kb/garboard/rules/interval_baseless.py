"""A maintenance interval rests on nothing, or a stand-by was never tried.

Why: an interval that nobody can give a reason for is the first one to be stretched. And a
stand-by that has never run is a spare part with pipes on it (ISM Code 10.3).

Fix: say where the interval comes from, with the maker's book or the rule under `sources`, or with
the times it was done; try the stand-by and write the day.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import IDENTIFIER
from garboard.records.standing import has_left
from garboard.records.work import Basis, MaintenanceTask

CODE = "interval-baseless"
SEVERITY = Severity.WARN
BINDS_FROM = "in service"
WAIVABLE = True

TRIED = re.compile(rf"\b\d{{4}}-\d{{2}}-\d{{2}}\b|{IDENTIFIER.pattern}")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the basis of every interval, and at every stand-by."""
    for task in book.of_kind(MaintenanceTask):
        if has_left(task):
            continue
        about, why = str(task.id), _baseless(task)
        if task.every and why:
            text = f"{about} is done every {task.every}, {why}"
            cure = "say where the interval comes from, or ask the maker"
            where = task.place("every")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
        if task.standby and (not TRIED.search(task.standby) or "never" in task.standby.casefold()):
            text = f"the stand-by of {about} is `{task.standby}`: no day on which it was tried"
            cure = "try it and write the day, or say that there is none"
            where = task.place("standby")
            yield Diagnostic(where, Severity.HOLD, text, cure, CODE, about)


def _baseless(task: MaintenanceTask) -> str:
    """What the interval lacks; empty where nothing."""
    if task.basis is None:
        return "without a basis"
    if task.basis is Basis.EXPERIENCE:
        return "" if task.done or task.sources else "by experience, and was never done"
    return "" if task.sources else f"by the {task.basis}, and no source is named"
