"""Something is named that is not declared: an id, a tag, a value, a source, a person, a file.

Why: a name that leads nowhere is a proof that is not there. Most are slips of one figure, and the
figure may belong to the valve beside it.

Fix: write the nearest known name if that is what was meant, or declare what is named.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import is_identifier, nearest
from garboard.records.component import QUANTITIES
from garboard.records.relations import Names
from garboard.rules.citing import cited_sources
from garboard.rules.named_things import named_things
from garboard.rules.register import missing, register_of

CODE = "reference-to-nothing"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look up everything that is named, in fields, text and calculations."""
    yield from book.raised(CODE)
    register = register_of(book)
    for item in book.mentions:
        unnamed = item.field == "connections" and not is_identifier(item.to)
        if not unnamed and (fault := register.fault(item.names, item.to, item.by)):
            yield Diagnostic(item.where, SEVERITY, *fault, CODE, item.by)
    for cited in cited_sources(book):
        if fault := register.fault(Names.SOURCE, cited.source):
            yield Diagnostic(cited.where, SEVERITY, *fault, CODE, cited.by)
    for written in book.content.texts:
        for name in written.names:
            number = name.name in book.components and nearest(name.property, QUANTITIES)
            address = f"{name.name}.{name.property}"
            if number and (fault := register.fault(Names.ADDRESS, address)):
                yield Diagnostic(name.where, SEVERITY, *fault, CODE, written.owner)
    for thing in named_things(book):
        if fault := missing(thing.name, thing.known, thing.what):
            yield Diagnostic(thing.where, SEVERITY, *fault, CODE, thing.by)
