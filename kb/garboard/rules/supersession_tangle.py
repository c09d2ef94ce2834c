"""Records supersede one another in a loop, or two live ones supersede the same.

Why: whoever follows the chain from an old record must arrive at one that is true now. With two
successors two readers do different things, each with a record to show for it.

Fix: let one supersede the other, or withdraw one; a record replaces one of its own kind.
"""

from collections import defaultdict
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Record
from garboard.records.standing import has_left, kind_name, refused

CODE = "supersession-tangle"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Follow every `supersedes`."""
    heirs: dict[str, list[Record]] = defaultdict(list)
    for record in book.records.values():
        if record.supersedes is None:
            continue
        old = book.records.get(record.supersedes)
        if old is not None and type(old) is not type(record):
            text = f"{record.id} supersedes {old.id}, a {kind_name(old)}"
            cure = f"name a {kind_name(record)}, or cite {old.id} where it belongs"
            yield _at(record, text, cure)
        elif ring := _ring(book, record):
            if record.id == min(ring):
                rest = ", which supersedes ".join((*ring[1:], ring[0]))
                text = f"{ring[0]} supersedes {rest}"
                yield _at(record, text, "take one `supersedes` out, so that the newest stands last")
        elif not has_left(record) and not refused(record):
            heirs[record.supersedes].append(record)
    for old_id, live in heirs.items():
        for later in live[1:]:
            text = f"{live[0].id} and {later.id} both supersede {old_id}"
            cure = f"let one supersede the other, or withdraw {later.id}"
            yield _at(later, text, cure)


def _ring(book: Book, start: Record) -> tuple[str, ...]:
    """The ids of the loop that a record is part of, from it on; empty where there is none."""
    chain: list[str] = []
    record: Record | None = start
    while record is not None and record.id not in chain:
        chain.append(str(record.id))
        record = book.records.get(record.supersedes or "")
    return tuple(chain) if record is start else ()


def _at(record: Record, text: str, cure: str) -> Diagnostic:
    where = record.place("supersedes")
    return Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))
