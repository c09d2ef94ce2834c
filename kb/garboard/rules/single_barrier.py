"""An isolation procedure has fewer blocks towards something live than the service asks for.

Question: how many locked points stand on the way with the fewest, from each live store to the work, and is that
what `blocks` of the services on that way says?

Why: one valve passes a little sooner or later; where that kills, two are shut with the space between let
out. 29 CFR 1915.163(a) asks for two valves where the pipe is welded in. Which services want two is the
builder's to say: `blocks: 2`.

Bad: service `start air` with `blocks: 2`, and only SA-HV-009 between the receivers and the work.

Good: SA-HV-009 and a second valve or blank in the same line, both among the points.

Fix: add a second point, or a blank. What cannot be had now needs a concession that says who watches the bleed.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.isolations import in_words, written_isolations
from garboard.systems.blocks import blocks_to

CODE = "single-barrier"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Count the blocks of every isolation towards every live store."""
    for written in written_isolations(book):
        work = written.worked.section.work
        outer = [one.tag for one in written.worked.points if one.outer]
        for one in blocks_to(written.leaks, work, written.held, written.leaks.stores):
            if one.count == 0 or one.enough or not written.is_live(book, one.store):
                continue
            between = f"only {in_words(one.points)} between {one.store.tag} and the work"
            text = f"{between}, where {one.needed} blocks are asked for"
            more = (
                f"add {in_words(outer)} to the points" if outer else "fit a second valve or a blank"
            )
            cure = f"{more}, or have it conceded who watches the bleed"
            where, about = written.procedure.place("points"), str(written.procedure.id)
            yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
