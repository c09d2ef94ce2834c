"""A record or a component of an issued edition is gone.

Why: people at sea hold paper that names it. What was given a number is replaced, withdrawn or void,
and stays readable; who deletes it takes away why things are as they are, and who objected.

Fix: put the file back; to retire a record mark it superseded, withdrawn or void. A component that
is no longer aboard goes into retired.yml. A record whose file only moved is not gone, nor is one
whose file cannot be read: that has its own message.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import system_of
from garboard.records.edition import IssuedRecord

CODE = "record-vanished"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

UNREAD = ("unreadable-record", "unknown-kind")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for every id and tag that any edition was issued with."""
    yield from _records(book)
    yield from _components(book)


def _records(book: Book) -> Iterator[Diagnostic]:
    issued: dict[str, tuple[int, IssuedRecord]] = {}
    for edition in book.content.editions.issued:
        issued |= {key: (edition.number, one) for key, one in edition.records.items()}
    stubs = {one.id for one in book.content.stubs} | {one.where.path for one in book.content.stubs}
    for key in issued.keys() - book.records.keys():
        number, one = issued[key]
        if key in stubs or one.path in stubs:
            continue
        text = f"{key}, in edition {number}, is gone"
        cure = "restore it; to retire it mark it superseded, withdrawn or void"
        yield Diagnostic(Where(one.path), SEVERITY, text, cure, CODE, key)


def _components(book: Book) -> Iterator[Diagnostic]:
    issued: dict[str, int] = {}
    for edition in book.content.editions.issued:
        issued |= dict.fromkeys(edition.components, edition.number)
    unread = {one.where.path for one in book.content.diagnostics if one.code in UNREAD}
    for tag in issued.keys() - book.components.keys() - book.content.retired.keys():
        system = book.systems.get(system_of(tag))
        where = system.where if system else Where("handbook.yml")
        if where.path not in unread:
            text = f"{tag}, in edition {issued[tag]}, is gone"
            cure = "restore it; to retire it add it to retired.yml, with what took its place"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, tag)
