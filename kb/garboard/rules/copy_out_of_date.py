"""A holder has an edition that is past its day, or has not acknowledged a notice that stands.

Why: a notice that nobody read protects nobody, and a copy on the shelf does not know that it is old
(ISM Code 11.2).

Fix: give the holder the newest edition and send the notice again; write under `holders` which edition
the copy is and what was acknowledged last, `notice 3` or `edition 2`.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.edition import Edition
from garboard.records.notice_message import standing
from garboard.records.vessel import Holder, Notice

CODE = "copy-out-of-date"
SEVERITY = Severity.WARN
BINDS_FROM = "sketch"
WAIVABLE = True
AT_ISSUE = True

NUMBERED = re.compile(r"(?:(?P<what>edition|notice) )?(?P<number>\d{1,6})\b", re.IGNORECASE)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at what each holder has, and has acknowledged."""
    vessel = book.content.vessel
    for number, holder in enumerate(vessel.holders):
        where = vessel.place(f"holders[{number}]")
        for text, cure in (*_past(book, holder), *_unread(book, holder)):
            yield Diagnostic(where, SEVERITY, text, cure, CODE, vessel.where.path)


def _past(book: Book, holder: Holder) -> Iterator[tuple[str, str]]:
    held = _edition(book, holder.edition)
    if held and held.valid_until < book.today:
        text = f"copy {holder.copy} is edition {held.number}, which ran out on {held.valid_until}"
        yield text, "give the holder the newest edition, or ask for the copy back"


def _unread(book: Book, holder: Holder) -> Iterator[tuple[str, str]]:
    if not (holder.given or holder.edition):
        return
    for notice in standing(book.content.vessel):
        if not _acknowledged(book, holder, notice):
            text = f"copy {holder.copy} has not acknowledged notice {notice.number} of {notice.on}"
            cure = (
                f"send it again, and write acknowledged: notice {notice.number} when it is answered"
            )
            yield text, cure


def _acknowledged(book: Book, holder: Holder, notice: Notice) -> bool:
    """Whether the last thing acknowledged is this notice, a later one, or an edition issued since."""
    said = NUMBERED.match((holder.acknowledged or "").strip())
    if said is None:
        return False
    if (said["what"] or "notice").casefold() == "notice":
        return notice.number.isdigit() and int(said["number"]) >= int(notice.number)
    edition = book.content.editions.numbered(int(said["number"]))
    return edition is not None and edition.issued > notice.on


def _edition(book: Book, said: str | None) -> Edition | None:
    found = NUMBERED.match((said or "").strip())
    return book.content.editions.numbered(int(found["number"])) if found else None
