"""A relief valve is set above the rating of something it protects.

Why: past the rating the shell gives way first, and nobody chose where. 46 CFR 154.801 asks it of
tanks, ASME VIII of vessels (verify before citing). What `protects` names is looked at, at the
worse end of both tolerances and with the atmosphere between a gauge reading and an absolute
pressure. What a shut valve leaves within reach of a relief valve is looked for in the layout.

Fix: lower the set pressure, or record the true rating with a photograph of the maker's plate.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity
from garboard.records.component import Component
from garboard.rules.recorded import as_written, line_of, margin, recorded
from garboard.rules.runs import RELIEF

CODE = "relief-above-rating"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every relief setting with the rating of each part it says it protects."""
    for relief in book.components.values():
        lift = recorded(book, relief, "set")
        if lift is None or relief.kind not in RELIEF:
            continue
        for tag in relief.protects:
            vessel = book.components.get(tag)
            rated = recorded(book, vessel, "rated") if vessel else None
            if vessel and rated and (margin(book, lift, rated) or 0) < 0:
                yield _found(relief, lift, vessel, rated)


def _found(relief: Component, lift: Value, vessel: Component, rated: Value) -> Diagnostic:
    text = f"{relief.tag} is set to {as_written(lift)}, {vessel.tag} is rated {as_written(rated)}"
    most = f"{rated.text} or less"
    if lift.tolerance or rated.tolerance:
        most += " at the worst of both tolerances"
    cure = f"set it to {most}, or fix {line_of(rated, lift.where)} from the plate"
    return Diagnostic(lift.where, SEVERITY, text, cure, CODE, relief.tag)
