"""A reading of a test lies outside its design value or outside a limit, and no finding says so.

Why: a gauge that reads 29 where the book says 32 means that one of them is wrong, and the one who
read it is the only one who knows.

Fix: raise a finding that names the test or the component. Where no tolerance is stated, half of the
last figure of the value or of the reading is allowed, whichever says less. A limit is one that a
`require` line sets to the quantity itself, at its value as given; a reading outside it wants a finding
even within the tolerance of the design. A slow drift towards a limit is drawn and not judged.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.measured import Measurement

CODE = "measured-off-design"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every reading with the value it is of, and with what is demanded of that value."""
    for readings in book.measured.values():
        for one in readings:
            if one.out and one.finding is None:
                text, cure = _past_limit(one) if one.broken else _off_design(book, one)
                where = one.test.place(f"readings[{one.number}].value")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(one.test.id))


def _off_design(book: Book, one: Measurement) -> tuple[str, str]:
    design = book.values[one.named]
    bounds = f" +/- {design.tolerance}" if design.tolerance else ""
    text = f"{design.address} reads {one.text}, design {design.text}{bounds}"
    return (
        text,
        f"raise a finding that names {one.test.id}, or correct the design value by a change",
    )


def _past_limit(one: Measurement) -> tuple[str, str]:
    demand = one.broken[0]
    asked = demand.requirement
    text = f"{one.named} reads {one.text}, {asked.block} asks {demand.words}"
    return text, f"raise a finding that names {one.test.id}; the limit stands at {asked.where}"
