"""Something is named that is not declared: an id, a tag, a value, a source, a person, a file.

Why: a name that leads nowhere is a proof that is not there. Most are slips of one figure, and the
figure may belong to the valve beside it.

Fix: write the nearest known name if that is what was meant, or declare what is named.
"""

from collections.abc import Iterator
from dataclasses import replace

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import ADDRESS, IDENTIFIER, is_identifier, is_tag, nearest, system_of
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
    """Look up everything that is named; where a system cannot be read say so once and how much leads to it."""
    lost = {code: 0 for code in book.systems if _unread(book, code)}
    for item in _leading_nowhere(book):
        found = IDENTIFIER.search(item.text)
        if found and is_tag(found[0]) and system_of(found[0]) in lost:
            lost[system_of(found[0])] += 1
        else:
            yield item
    for code, names in lost.items():
        if names:
            text = f"no part of {code} could be read, so {names} places that name one were not looked up"
            where = Where(_file(book, code))
            yield Diagnostic(where, SEVERITY, text, "mend this file first", CODE, code)


def _file(book: Book, code: str) -> str:
    return f"{book.systems[code].folder}/system.yml"


def _unread(book: Book, code: str) -> bool:
    """Whether a system has no part because its file has a fault."""
    parts = any(part.system == code for part in book.components.values())
    return not parts and any(
        item.where.path == _file(book, code) and item.severity is Severity.STOP
        for item in book.content.diagnostics
    )


def _leading_nowhere(book: Book) -> Iterator[Diagnostic]:
    """Every name that is not declared."""
    register = register_of(book)
    yield from (_of_a_spoilt_log(register, item) for item in book.raised(CODE))
    for item in book.mentions:
        unnamed = item.field == "connections" and not is_identifier(item.to)
        if not unnamed and (fault := register.fault(item.names, item.to, item.by)):
            yield Diagnostic(item.where, SEVERITY, *fault, CODE, item.by)
    for cited in cited_sources(book):
        if fault := register.of_source(cited.source, cited.clause):
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
