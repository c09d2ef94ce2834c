"""Something that a record or a signature said in an issued edition stands there no more.

Why: first words, objections, refused options, readings and the number that was true before are what
a later reader looks for when something goes wrong. Whoever writes them otherwise, or takes out a
signature, makes the past look better than it was.

Fix: put it back, as the edition has it. What has to be said otherwise is said beside it: a further
reading, an answer to an objection, a control with `removed`, a signature that says more. Raising the
revision does not excuse it. Kept are, of a finding its words and pictures; of a decision objections
and refused options; of a change the values before it and the day it became true; of a test readings,
the file they were logged in, and a failure; of a hazard its controls; of a maintenance task how
things were found; and every signature, also of a system's status and of a written page. What the
author of a draft proposes is not kept yet.
"""

import json
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Record
from garboard.records.edition import Edition, IssuedRecord, IssuedText
from garboard.records.inspection import Test
from garboard.records.pages import WrittenPage
from garboard.records.system import System
from garboard.review.kept import LOGGED, lost_lines, lost_words

CODE = "kept-words-lost"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

MOST_SHOWN = 60


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold every record, system and written page against the last edition."""
    if book.edition is None:
        return
    number = book.edition.number
    for key, issued in book.edition.records.items():
        record = book.records.get(key)
        if record is not None:
            yield from _of_record(record, issued, number)
            yield from _of_log(book, record, issued, book.edition)
    for code, of_system in book.edition.systems.items():
        system = book.systems.get(code)
        if system is not None and not _unread(system, "signed") and not _broken(book, system):
            yield from _of_lines(system, code, of_system.signed, number)
    for path, text in book.edition.written.items():
        page = _page(book, path, text)
        if page is not None and not _unread(page, "signed"):
            yield from _of_lines(page, page.where.path, text.signed, number)


def _of_record(record: Record, issued: IssuedRecord, number: int) -> Iterator[Diagnostic]:
    about = str(record.id)
    for one in lost_words(issued.kept, record) if issued.kept else ():
        if not _unread(record, one.field):
            text = f"{about} {one.field} said {_shown(one.told)} in edition {number}, and no more"
            cure = "put it back; what is to be said otherwise stands beside it"
            yield Diagnostic(record.place(one.field), SEVERITY, text, cure, CODE, about)
    if issued.signed and not _unread(record, "signed"):
        yield from _of_lines(record, about, issued.signed, number)


def _of_lines(
    thing: Record | WrittenPage | System, about: str, issued: tuple[str, ...], number: int
) -> Iterator[Diagnostic]:
    """Signatures of a thing that are gone or say something else."""
    for told in lost_lines(issued, thing.signed):
        line = json.loads(told)
        text = f"the signature as {line['capacity']} of {line['on']}, in edition {number}, is gone"
        text += " or says something else"
        cure = "put the line back as it was issued; who signs anew adds a line"
        yield Diagnostic(thing.place("signed"), SEVERITY, text, cure, CODE, about)


def _of_log(
    book: Book, record: Record, issued: IssuedRecord, edition: Edition
) -> Iterator[Diagnostic]:
    """Readings of a test that were logged in a file: it may grow, and be moved."""
    path = issued.kept.get(LOGGED)
    if path is None or not isinstance(record, Test) or _unread(record, LOGGED):
        return
    digest = edition.files.get(path, "")
    file = record.log.file if record.log else ""
    if digest and book.content.digests.get(file) == digest:
        return
    was, now = book.content.editions.text_of(digest), book.content.logs.get(file, "")
    if was is None or not now.startswith(was.rstrip()):
        about = str(record.id)
        text = f"{about} was logged in {path} in edition {edition.number}, "
        text += "and those readings stand there no more"
        cure = "put the file back; a further run goes into a file of its own"
        yield Diagnostic(record.place(LOGGED), SEVERITY, text, cure, CODE, about)


def _page(book: Book, path: str, issued: IssuedText) -> WrittenPage | None:
    """The written page that a path stood for; where it was moved, the one of its kind and system."""
    there = next((one for one in book.content.pages if one.where.path == path), None)
    if there is not None or not issued.signed:
        return there
    known = book.edition.written if book.edition else {}
    alike = (
        one
        for one in book.content.pages
        if (str(one.page or ""), one.system) == (issued.page, issued.system)
        and one.where.path not in known
    )
    return next(alike, None)


def _unread(thing: Record | WrittenPage | System, field: str) -> bool:
    """Whether a field was written and could not be read, which has its own message."""
    return any(one == field or one.startswith((f"{field}[", f"{field}.")) for one in thing.unread)


def _broken(book: Book, system: System) -> bool:
    """Whether nothing of a system's file could be read."""
    where: Where = system.where
    return not system.places and any(
        one.where.path == where.path for one in book.content.diagnostics
    )


def _shown(told: str) -> str:
    """What was said, short: a text in quotes, the parts of a thing one after the other."""
    said = json.loads(told)
    parts = said.values() if isinstance(said, dict) else (said,)
    words = ", ".join(str(part) for part in parts)
    return f"`{words if len(words) <= MOST_SHOWN else words[:MOST_SHOWN] + ' ...'}`"
