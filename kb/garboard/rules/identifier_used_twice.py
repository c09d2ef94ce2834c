"""An id, a tag or the name of a calculation is given twice, or again after it was retired.

Why: ids and tags share one register. A string that means two things sends a hand to the wrong
valve, and a test of the one is read as proof of the other.

Fix: take the next free number for the newer one. What was retired stays retired, because old papers
and labels still carry it.
"""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where

CODE = "identifier-used-twice"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Go through the register of ids and tags, and the names of the calculations."""
    retired = book.content.retired
    names = [item.name for item in book.content.declared]
    for name, where, first in _again((item.name, item.where) for item in book.content.declared):
        cure = f"take {_next_free(name, (*names, *retired))}"
        if first is not None:
            yield _at(where, f"{name} is also at {first}", cure, name)
        elif name in retired:
            day = f" on {retired[name].on}" if retired[name].on else ""
            yield _at(where, f"{name} was retired{day}, and stands here again", cure, name)
    for name, where, first in _again((fence.name, fence.where) for fence in book.content.fences):
        if first is not None:
            cure = "give one of them another name; what quotes it must say which is meant"
            yield _at(where, f"the calculation {name} is also at {first}", cure, name)
    vessel = book.content.vessel
    cards = [(one.card, vessel.place(f"cards[{n}].card")) for n, one in enumerate(vessel.cards)]
    for name, where, first in _again(cards):
        if first is not None:
            cure = "give each card that hangs, or hung, a number of its own"
            yield _at(where, f"card {name} is also at {first}", cure, name)


def _again(declared: Iterable[tuple[str, Where]]) -> Iterator[tuple[str, Where, Where | None]]:
    """Each name with its place, and the first place of one that was there before."""
    seen: dict[str, Where] = {}
    for name, where in declared:
        yield name, where, seen.get(name)
        seen.setdefault(name, where)


def _next_free(name: str, taken: Iterable[str]) -> str:
    """The lowest number above all that were ever given with the same letters."""
    stem = name[:6]
    highest = max(int(other[6:]) for other in taken if other[:6] == stem and other[6:].isdigit())
    return f"{stem}{highest + 1:03}"


def _at(where: Where, text: str, cure: str, about: str) -> Diagnostic:
    return Diagnostic(where, SEVERITY, text, cure, CODE, about)
