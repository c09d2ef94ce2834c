"""A side of what an isolation procedure makes safe is not let out, or not seen at zero by its steps.

Question: is every side of the stretch (each port of what is shut, passes one way or holds back, by itself)
opened to the air by a step, and read at zero on a gauge or test cock of its own after that?

Why: 29 CFR 1915.163(a) asks for drains on the dead side, open and watched; 29 CFR 1910.147(d)(5) for stored
energy to be let go. A gauge before a check valve says nothing of the pipe after it. Of current common
practice, no source, asks for a meter that is proved before and after.

Bad: points shut, then "Wait 10 min", with the drain of the receiver left shut.

Good: "Open SA-HV-004, see SA-PI-001 at 0 bar(g)", after the points are locked.

Fix: add the steps that the message names. Where a side has no bleed or no gauge, fit one; until then a
concession says how the last union is cracked, slowly, and who reviewed that.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.isolations import Written, in_words, written_isolations
from garboard.rules.steps import sees_zero
from garboard.systems.medium import Medium
from garboard.systems.sides import Side

CODE = "isolation-unproved"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the bleed and the zero of every side."""
    for written in written_isolations(book):
        for text, cure in _unproved(book, written):
            where, about = written.procedure.place("steps"), str(written.procedure.id)
            yield Diagnostic(where, SEVERITY, text, cure, CODE, about)


def _unproved(book: Book, written: Written) -> Iterator[tuple[str, str]]:
    sides = written.worked.sides
    if any(side.medium is Medium.CURRENT for side in sides):
        if not any(sees_zero(book, step) for step in written.procedure.steps):
            text = f"no step measures that {in_words(written.worked.tags)} is dead"
            yield text, "add a step that measures 0 V, with the meter proved before and after it"
        return
    for side in sides:
        bled = written.bled_at(side)
        if bled is None:
            yield f"no step lets out {side.name}", _let_out(side)
        elif not written.seen_at_zero(book, side, bled):
            yield f"no step sees {side.name} at zero after it is let out", _see(side)


def _let_out(side: Side) -> str:
    if not side.bleeds:
        return (
            "fit a drain or vent there, or have it conceded that its last union is cracked slowly"
        )
    ways = " or ".join(in_words(bleed.valves) for bleed in side.bleeds)
    return f"add a step that opens {ways}, or have it conceded how it is let out"


def _see(side: Side) -> str:
    if not side.shows:
        return "fit a gauge or test cock there, or have it conceded how the open bleed is watched"
    return (
        f"add a step that sees 0 on {' or '.join(side.shows)}, or have it conceded how it is seen"
    )
