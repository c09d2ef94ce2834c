"""A record or page that tells how things are cites one that was superseded, withdrawn or void.

Why: what was replaced is kept so that it can be read, not so that it can be relied on.

Fix: read what differs, then cite the record that took its place. A text that names both, the old
and the one that superseded it, tells its reader enough and is let be; so are the fields that say
what came before, and records at rest, which tell of the day they were written.
"""

from collections.abc import Iterator

from garboard.book import Book, Mentioned
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.relations import TELLS_WHAT_WAS
from garboard.records.standing import has_left, is_live

CODE = "rests-on-dead-record"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at everything a live record or a page names, for what has left."""
    heirs = {name: chain[-1] for name, chain in book.heirs.items()}
    named = {(item.by, bare_id(item.to)) for item in book.mentions}
    for item in book.mentions:
        to = bare_id(item.to)
        gone = _gone(book, to, heirs.get(to))
        told = (item.by, heirs.get(to, "")) in named
        if gone and not told and _relies(book, item):
            cure = "cite a live one, or withdraw this too"
            if to in heirs:
                cure = f"read what differs, then cite {heirs[to]}"
            yield Diagnostic(item.where, SEVERITY, f"cites {to}, {gone}", cure, CODE, item.by)


def _gone(book: Book, name: str, heir: str | None) -> str:
    """How what a name stood for went; empty where it did not."""
    if name in book.content.retired and name not in book.components:
        return f"retired, replaced by {heir}" if heir else "retired"
    record = book.records.get(name)
    if record is None or not has_left(record):
        return ""
    return (
        f"{record.state} by {heir}" if heir and record.state == "superseded" else str(record.state)
    )


def _relies(book: Book, item: Mentioned) -> bool:
    """Whether what names it tells how things are now, in a place that tells it."""
    by = book.records.get(item.by)
    field = item.field.split(".")[0].split("[")[0]
    return field not in TELLS_WHAT_WAS and (by is None or is_live(by))
