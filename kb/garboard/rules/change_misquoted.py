"""A change says a value was, or is, something else than the book says.

Why: `before` is what a later reader looks for on an old label, and `after` is what was authorised. A
slip of a figure in either sends somebody to the wrong setting.

Fix: read both from the plant and correct the one that is wrong; where the value was moved again, write
the change that did it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.fault import CalcFault
from garboard.calc.quantity import Quantity, read_quantity
from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.change import Change
from garboard.records.installed import changes_of_value
from garboard.records.standing import has_left, refused
from garboard.review.band import half_of_the_last_figure

CODE = "change-misquoted"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold both ends of every move of a value against what the book says, and said."""
    for change in book.of_kind(Change):
        if has_left(change) or refused(change):
            continue
        for address, shift in change.values.items():
            now = _said_now(book, change, address)
            then = _said_then(book, change, address)
            if now and not _agree(shift.after, now.text, now):
                text = f"{change.id} says {address} is {shift.after}, the book says {now.text}"
                cure = (
                    f"read it on the plant and correct one, or write the change that set {now.text}"
                )
                yield _fault(change, f"values.{address}.after", text, cure)
            if then and not _agree(shift.before, then):
                edition = book.edition.number if book.edition else 0
                text = (
                    f"{change.id} says {address} was {shift.before}, edition {edition} said {then}"
                )
                cure = f"write before: {then}, or write the change that came between"
                yield _fault(change, f"values.{address}.before", text, cure)


def _fault(change: Change, path: str, text: str, cure: str) -> Diagnostic:
    return Diagnostic(change.place(path), SEVERITY, text, cure, CODE, str(change.id))


def _said_now(book: Book, change: Change, address: str) -> Value | None:
    """What the book says, where this change was the last to move it."""
    moves = changes_of_value(book.of_kind(Change), address)
    if not moves or moves[-1][1].id != change.id:
        return None
    return book.values.get(address)


def _said_then(book: Book, change: Change, address: str) -> str:
    """What the last edition said, where nothing but this change can have moved it since."""
    edition = book.edition
    day = change.installed or change.drafted or book.today
    if edition is None or address not in edition.values or edition.issued >= day:
        return ""
    moves = changes_of_value(book.of_kind(Change), address)
    between = any(edition.issued < on <= day and one.id != change.id for on, one in moves)
    return "" if between else edition.values[address].text


def _agree(told: str, said: str, value: Value | None = None) -> bool:
    """Whether a figure is another one, as far as its last figure goes; words are compared as words."""
    one, other = _read(told), _read(said)
    if one is None or other is None:
        return " ".join(told.split()) in (" ".join(said.split()), value.address if value else "")
    exact = value.si if value and value.si is not None else other.si
    near = max(half_of_the_last_figure(one), half_of_the_last_figure(other))
    return one.type == other.type and abs(one.si - exact) <= near * (1 + 1e-9)


def _read(text: str) -> Quantity | None:
    try:
        return read_quantity(text, Where(""))
    except CalcFault:
        return None
