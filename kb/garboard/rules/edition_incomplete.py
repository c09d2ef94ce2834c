"""An edition would be issued without an end, without holders, or without saying of what vessel.

Why: an edition that has no last day is believed for ever, and one that nobody is listed to hold can
never be called back (ISM Code 11.2).

Fix: write `edition: {life: 12 months}`, the name under `vessel` and each copy under `holders` in
handbook.yml, each with a number of its own.
"""

from collections import Counter
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.life import end_of_life

CODE = "edition-incomplete"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True
AT_ISSUE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at what handbook.yml says of the vessel, its editions and their holders."""
    vessel = book.content.vessel
    for where, text, cure in (*_name(book), *_life(book), *_holders(book)):
        yield Diagnostic(where, SEVERITY, text, cure, CODE, vessel.where.path)


def _name(book: Book) -> Iterator[tuple[Where, str, str]]:
    vessel = book.content.vessel
    if not vessel.vessel.strip():
        yield vessel.place("vessel"), "the vessel has no name", "write it under vessel"


def _life(book: Book) -> Iterator[tuple[Where, str, str]]:
    vessel = book.content.vessel
    life = vessel.edition.life if vessel.edition else None
    if not life:
        cure = "write edition: {life: 12 months}"
        yield vessel.place("edition"), "an edition would have no last day: no life is given", cure
    elif end_of_life(book.today, life) is None:
        text = f"an edition would have no last day: its life is `{life}`"
        yield vessel.place("edition.life"), text, "write a count of days, weeks, months or years"


def _holders(book: Book) -> Iterator[tuple[Where, str, str]]:
    vessel = book.content.vessel
    if not vessel.holders:
        cure = 'write holders: [{copy: "1", where: wheelhouse, medium: paper}], an entry a copy'
        yield vessel.place("holders"), "nobody is listed to hold a copy", cure
    counts = Counter(one.copy for one in vessel.holders)
    for number, one in enumerate(vessel.holders):
        if counts[one.copy] > 1:
            where = vessel.place(f"holders[{number}].copy")
            yield where, f"copy {one.copy} is listed {counts[one.copy]} times", "give each its own"
