"""Something is named that is not declared: an id, a tag, a value, a source, a person, a file.

Why: a name that leads nowhere is a proof that is not there. Most are slips of one figure, and the
figure may belong to the valve beside it.

Fix: write the nearest known name if that is what was meant, or declare what is named.
"""

from collections.abc import Iterator
from dataclasses import replace

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import ADDRESS, is_identifier, nearest
from garboard.records.component import QUANTITIES
from garboard.records.relations import Names
from garboard.rules.citing import cited_sources
from garboard.rules.named_things import named_things
from garboard.rules.register import Register, missing, register_of

CODE = "reference-to-nothing"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look up everything that is named, in fields, text and calculations."""
    register = register_of(book)
    yield from (_of_a_spoilt_log(register, item) for item in book.raised(CODE))
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


def _of_a_spoilt_log(register: Register, item: Diagnostic) -> Diagnostic:
    """The same, or what is so where the value would come from a log that cannot be read as written."""
    found = ADDRESS.search(item.text)
    if found is None or not register.in_spoilt_log(found["owner"]):
        return item
    text = f"`{found[0]}` is not computed: the log of {found['owner']} cannot be read as written"
    return replace(item, text=text, help="mend the log, whose faults stand at their rows")
