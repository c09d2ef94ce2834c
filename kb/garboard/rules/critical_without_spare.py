"""Something essential has no spare aboard, and no page says how to get home without it.

Why: ISM Code 10.3 asks which equipment a sudden failure of would endanger the vessel, and what is
done about it. At sea there is no shop.

Fix: put a spare aboard and list what it fits in spares.yml; or write a fault page whose
`get_home` tells how the vessel comes back without it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.stock import essential_without_spare, ways_home

CODE = "critical-without-spare"
SEVERITY = Severity.WARN
BINDS_FROM = "in service"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the spare of everything essential, then for the way home without it."""
    home = ways_home(book.records.values(), ((item.by, item.to) for item in book.mentions))
    spares = book.content.spares.values()
    for part in essential_without_spare(book.components, spares, home):
        text = f"{part.tag} is essential, has no spare aboard and no way home without it"
        cure = "put a spare aboard, or write a fault page with `get_home` that names it"
        yield Diagnostic(part.at_place("essential"), SEVERITY, text, cure, CODE, part.tag)
