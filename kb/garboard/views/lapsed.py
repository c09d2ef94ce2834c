"""Of a record whose review has lapsed: what moved, and which decisions, cards, tests hang on that."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.touched import Touched, touched_by
from garboard.names import is_identifier
from garboard.records.base import Record
from garboard.records.kinds import kind_of
from garboard.review.signoffs import Moved
from garboard.views.inline import cell, day, link_to, shown, title_of
from garboard.views.page import (
    Block,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Run,
    Table,
)

__all__ = ["lapsed_blocks"]

ORDER = ("decision", "procedure", "alarm", "hazard", "test")
"""What is acted on stands before what is merely read."""
MOST_REASONS = 4


def lapsed_blocks(book: Book, record: Record) -> Iterator[Block]:
    """What moved under a lapsed review, and what it reaches beside this record.

    Args:
        book: The book.
        record: A filed record; nothing is yielded where no signature of it has lapsed.
    """
    reviewed = book.reviews.get(str(record.id))
    moved = [item for each in reviewed.lapsed for item in each.moved] if reviewed else []
    if not moved:
        return
    unique = tuple({item.what: item for item in moved}.values())
    yield Heading("What moved since it was signed")
    yield _moved_table(book, unique)
    own = str(record.id)
    named = [item.what if is_identifier(item.what) else own for item in unique if not item.is_value]
    touched = touched_by(book, [item.what for item in unique if item.is_value], named)
    rows = tuple(_touched_rows(book, touched, own))
    yield Table(
        "What else hangs on what moved",
        tuple(Column(title) for title in ("what it is", "which", "because of")),
        rows,
        "nothing that is entered",
    )
    yield Paragraph(
        ("Worked out from what is entered. Look at each before the new signature.",), quiet=True
    )


def _moved_table(book: Book, moved: tuple[Moved, ...]) -> Table:
    rows = []
    for item in moved:
        name = _name(book, item.what)
        now = (shown(book, item.what),) if item.what in book.values else (item.after or "gone",)
        seen = item.before if item.is_value else "other words"
        rows.append(Row((name, (seen or "not seen",), now if item.is_value else ("changed",))))
    columns = tuple(Column(title) for title in ("what", "when it was signed", "now"))
    return Table("Moved", columns, tuple(rows))


def _touched_rows(book: Book, touched: Touched, own: str) -> Iterator[Row]:
    found: list[tuple[int, str, str]] = []
    for key in touched.records:
        kind = kind_of(book.records[key])
        if key != own and kind is not None:
            place = ORDER.index(kind.name) if kind.name in ORDER else len(ORDER)
            found.append((place, kind.name, key))
    for _, sort, key in sorted(found):
        which: Cell = (link_to(book, key), f" {title_of(book, key)}")
        yield Row(((sort,), which, _because(book, touched.because.get(key, ()))))
    for card in touched.cards:
        printed = f", printed {day(card.printed)}" if card.printed else ""
        yield Row(
            (
                ("card",),
                (f"{card.card}, hangs at {card.place}{printed}",),
                cell(book, card.of or ""),
            )
        )
    for tag in touched.tags:
        yield Row((("part",), (Plate(tag),), ("its recorded number",)))


def _name(book: Book, what: str) -> Cell:
    """A value by its address and not by what it is worth; a record by its id."""
    return (Link(what, what),) if what in book.values else cell(book, what)


def _because(book: Book, names: tuple[str, ...]) -> Cell:
    runs: list[Run] = []
    for name in names[:MOST_REASONS]:
        runs += [", ", *_name(book, name)]
    more = len(names) - MOST_REASONS
    return (*runs[1:], f" and {more} more") if more > 0 else tuple(runs[1:])
