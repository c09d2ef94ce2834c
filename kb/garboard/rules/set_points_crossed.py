"""Two settings of one part stand in the wrong order: an alarm comes after the trip it warns of.

Question: do normal, high alarm, trip, relief and rating go up like the rungs of a ladder, each at the
worse end of its tolerance? Does low alarm stand under normal, above the least that a user of the store
needs and below the point at which its machine cuts in? In the layout each switch that stops a machine is
held against the relief valve that opens first of those it is always joined to. Where a control switch
cuts out is only held below relief and rating: it may stand below the high alarm or above it.

Why: where two have changed places the later one never speaks, or speaks every day until nobody listens.
Common practice, no source.

Bad: `PS-003: {stops: CP-001, cuts_out: 33 bar(g)}` and `RV-001: {set: 33 bar(g)}` on one line.

Good: the same switch with `cuts_out: 30 bar(g) +/- 0.5 bar`.

Fix: move the setting that is out of order, or correct the number that was written wrong.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.rules.ladder import LEAST, Pair, find_pairs
from garboard.rules.paths import GRADED, path_diagnostics
from garboard.rules.recorded import as_written, margin

CODE = "set-points-crossed"
SEVERITY = Severity.HOLD
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare each rung with the next one above it, and each switch with the relief valves it is joined to."""
    said: set[tuple[str, str]] = set()
    told: set[tuple[Where, str]] = set()
    for pair in find_pairs(book):
        key = (pair.lower.value.address, pair.upper.value.address)
        between = margin(book, pair.lower.value, pair.upper.value)
        crossed = between is not None and (between < 0 or (between == 0 and not pair.may_be_equal))
        if crossed and key not in said:
            said.add(key)
            told.add((pair.lower.value.where, pair.upper.tag))
            yield _found(pair)
    yield from path_diagnostics(
        book, CODE, lambda found: any((found.of.where, tag) in told for tag in found.at_fault)
    )


def _found(pair: Pair) -> Diagnostic:
    lower, upper = pair.lower, pair.upper
    text = f"{lower.name} of {lower.tag} is {as_written(lower.value)}, "
    text += f"{upper.name} of {upper.tag} is {as_written(upper.value)}"
    cure, moved = f"put the {lower.name} below the {upper.name}", lower
    if lower.name == LEAST:  # what a user needs cannot be put lower
        cure, moved = f"raise the {upper.name}", upper
    cure += ", or correct the one that is written wrong"
    return Diagnostic(moved.value.where, SEVERITY, text, cure, CODE, moved.tag)
