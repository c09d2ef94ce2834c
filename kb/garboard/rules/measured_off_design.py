"""A reading of a test lies outside the tolerance of its design value, and no finding says so.

Why: a gauge that reads 29 where the book says 32 means that one of them is wrong, and the one who
read it is the only one who knows.

Fix: raise a finding that names the test or the component. Where no tolerance is stated, half of the
last figure of the value or of the reading is allowed, whichever says less.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity
from garboard.names import is_tag
from garboard.records.finding import Finding
from garboard.records.inspection import Test
from garboard.records.standing import has_left, is_live, refused
from garboard.rules.figure import Figure, figure_of, within_tolerance
from garboard.rules.installed import changes_of_value, last_since

CODE = "measured-off-design"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every reading with the value it is of."""
    for test in book.of_kind(Test):
        for number, reading in enumerate(() if has_left(test) else test.readings):
            figure = figure_of(book, reading.value)
            design = _design(book, reading.of, figure) if figure else None
            if figure is None or design is None or within_tolerance(design, figure):
                continue
            if _moved_since(book, design, test) or _found(book, test, design):
                continue
            bounds = f" +/- {design.tolerance}" if design.tolerance else ""
            text = f"{design.address} reads {figure.text}, design {design.text}{bounds}"
            cure = f"raise a finding that names {test.id}, or correct the design value by a change"
            where = test.place(f"readings[{number}].value")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))


def _design(book: Book, of: str, figure: Figure) -> Value | None:
    """The value that a reading is of: the one it names, or the setting of its component."""
    names = (f"{of}.set", f"{of}.normal") if is_tag(of) else (of,)
    found = (book.values.get(name) for name in names)
    return next((value for value in found if value and value.type == figure.type), None)


def _moved_since(book: Book, design: Value, test: Test) -> bool:
    """Whether a change gave it another value after the test, whose reading was of the old one."""
    return bool(test.on and last_since(changes_of_value(book, design.address), test.on))


def _found(book: Book, test: Test, design: Value) -> bool:
    """Whether a finding names the test, or an open or later one names the component."""
    owner = design.address.partition(".")[0]
    for finding in book.of_kind(Finding):
        names = {item.to for item in book.mentions if item.by == finding.id}
        day = finding.found.on if finding.found else None
        recent = is_live(finding) or bool(day and test.on and day >= test.on)
        if not refused(finding) and (test.id in names or (owner in names and recent)):
            return True
    return False
