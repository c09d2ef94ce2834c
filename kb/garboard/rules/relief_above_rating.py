"""A relief valve is set above the rating of something it protects.

Question: is any relief valve set higher than the lowest rating that it stands for? What its `protects`
names is looked at, at the worse end of both tolerances and with the atmosphere between a gauge reading
and an absolute pressure. In the layout every vessel is looked at that is always joined to one such valve
and to none set low enough for certain; what a shut valve leaves without any is `relief-cut-off`.

Why: past the rating the shell gives way first, and nobody chose where. Set at or below the highest
pressure the vessel may work at: 46 CFR 54.15-10(a) and (c); the weakest part limits: 46 CFR 56.07-10;
46 CFR 154.801 asks it of tanks, ASME VIII of vessels (all: verify before citing).

Bad: `RV-002: {set: 32 bar(g)}` on a receiver with `rated: 30 bar(g)`.

Good: `RV-002: {set: 29 bar(g) +/- 0.5 bar}` on the same receiver.

Fix: lower the set pressure, or record the true rating with a photograph of the maker's plate.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity
from garboard.records.component import Component
from garboard.rules.paths import GRADED, path_diagnostics
from garboard.rules.recorded import as_written, line_of, margin, recorded
from garboard.rules.runs import RELIEF

CODE = "relief-above-rating"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every relief setting with each rating it says it protects, and with what it is joined to."""
    said: set[tuple[str, str]] = set()
    for relief in book.components.values():
        lift = recorded(book, relief, "set")
        if lift is None or relief.kind not in RELIEF:
            continue
        for tag in relief.protects:
            vessel = book.components.get(tag)
            rated = recorded(book, vessel, "rated") if vessel else None
            if vessel and rated and (margin(book, lift, rated) or 0) < 0:
                said.add((relief.tag, vessel.tag))
                yield _found(relief, lift, vessel, rated)
    yield from path_diagnostics(
        book, CODE, lambda found: any((tag, found.about) in said for tag in found.at_fault)
    )


def _found(relief: Component, lift: Value, vessel: Component, rated: Value) -> Diagnostic:
    text = f"{relief.tag} is set to {as_written(lift)}, {vessel.tag} is rated {as_written(rated)}"
    most = f"{rated.text} or less"
    if lift.tolerance or rated.tolerance:
        most += " at the worst of both tolerances"
    cure = f"set it to {most}, or fix {line_of(rated, lift.where)} from the plate"
    return Diagnostic(lift.where, SEVERITY, text, cure, CODE, relief.tag)
