"""Quantities meet that cannot: units that do not fit, or a number of another sort than asked for.

Why: litres added to bar give a number all the same, and it looks like any other. A line that does
not fit in its units is wrong, whatever it says. A relief valve that is set to litres is held against
no rating, and the layout looks as if it had no relief valve at all.

Fix: check the units and brackets of both sides; what stands after `in` must be a unit
of the result. Settings and ratings of what holds pressure are written in bar(g) or bar(a).
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.kinds import PRESSURE, Type, words
from garboard.errors import Diagnostic, Severity
from garboard.records.component import Component
from garboard.records.part_measures import fits, wanted_words

CODE = "dimension-clash"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met in the fences, and hold each number of a part against its property."""
    yield from book.raised(CODE)
    for part in book.components.values():
        for name in (*(name for name, _ in part.givens()), *(name for name, _ in part.aliases())):
            value = book.values.get(part.address(name))
            if value is not None and not fits(part.kind, name, value.type):
                yield _misfit(part, name, value.type, value.text)


def _misfit(part: Component, name: str, found: Type, shown: str) -> Diagnostic:
    wanted = wanted_words(part.kind, name)
    text = f"{part.tag}.{name} is {shown}, {words(found)}; {name} of a {part.kind} is {wanted}"
    cure = "write it with the unit on the plate or the certificate"
    if found.dimension == PRESSURE and "pressure" in wanted:
        cure = "write bar(g) where it is counted from the atmosphere, bar(a) where from nothing"
    return Diagnostic(part.at_place(name), SEVERITY, text, cure, CODE, str(part.tag))
