"""Something essential has no spare aboard, and no page says how to get home without it.

Why: ISM Code 10.3 asks which equipment a sudden failure of would endanger the vessel, and what is
done about it. At sea there is no shop.

Fix: put a spare aboard and list what it fits in spares.yml; or write a fault page whose
`get_home` tells how the vessel comes back without it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.alarm import Fault
from garboard.records.standing import has_left

CODE = "critical-without-spare"
SEVERITY = Severity.WARN
BINDS_FROM = "in service"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the spare of everything essential, then for the way home without it."""
    aboard = {tag for spare in book.content.spares.values() if spare.aboard for tag in spare.fits}
    faults = {fault.id for fault in book.of_kind(Fault) if fault.get_home and not has_left(fault)}
    ways_home = {item.to for item in book.mentions if item.by in faults}
    for part in book.components.values():
        if part.essential and part.tag not in aboard and part.tag not in ways_home:
            text = f"{part.tag} is essential, has no spare aboard and no way home without it"
            cure = "put a spare aboard, or write a fault page with `get_home` that names it"
            where = part.at_place("essential")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, part.tag)
