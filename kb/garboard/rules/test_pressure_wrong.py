"""A test pressure is too low to prove the rating, or too high for something in the test.

Why: a test at the working pressure proves nothing that working does not, and a gauge, a hose or a
relief valve left in the line stands only what it stands itself. A factor is asked for where the
recorded test cites its clause: 46 CFR 54.10-10 (2004) 1.5, 46 CFR 197.462 1.25, 46 CFR 56.97-40
1.5, ASME VIII-1 UG-99(b) 1.3 at the least (verify each before citing). Whether an end was blanked
is not seen here.

Fix: test at the factor of the code the item was built to, and cite the clause; take the weak part
out of the test or blank it off.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.value import Citation, Value
from garboard.errors import Diagnostic, Severity
from garboard.records.component import Component
from garboard.records.inspection import Test
from garboard.records.standing import has_left
from garboard.rules.recorded import as_written, is_pressure, margin, recorded
from garboard.rules.runs import RELIEF

CODE = "test-pressure-wrong"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

ROUNDING = 0.001
"""Share by which a rounded test pressure may stand below the factor."""


@dataclass(frozen=True, slots=True)
class Clause:
    """What one clause of one edition asks of a test with water."""

    clause: str
    edition: str
    """A word that the edition must hold; empty where every edition asks the same."""
    factor: float


CLAUSES = (
    Clause("54.10-10", "2004", 1.5),
    Clause("197.462", "", 1.25),
    Clause("56.97-40", "", 1.5),
    Clause("UG-99(b)", "", 1.3),
)


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare each test pressure with the rating, its clause, and what stands in the test."""
    for part in book.components.values():
        test, rated = recorded(book, part, "test"), recorded(book, part, "rated")
        if test and rated and is_pressure(test):
            yield from _too_low(book, part, test, rated)
    for record in book.of_kind(Test):
        if not has_left(record):
            yield from _too_high(book, record)


def _too_low(book: Book, part: Component, test: Value, rated: Value) -> Iterator[Diagnostic]:
    above = margin(book, rated, test)
    said = f"{part.tag} is tested at {as_written(test)}, rated {as_written(rated)}"
    if above is not None and above <= 0:
        cure = "test above the rating, by the factor of its code, or correct the wrong one"
        yield Diagnostic(test.where, SEVERITY, said, cure, CODE, part.tag)
        return
    for source in test.sources:
        clause = _clause_of(book, source)
        if clause and rated.type == test.type and test.si is not None and rated.si is not None:
            least = clause.factor * rated.si
            if test.si < least * (1 - ROUNDING):
                shown = f"{test.unit.from_si(least):.6g} {test.unit.text}"
                text = f"{said}; {source.source} {source.clause} asks for {clause.factor:g} times"
                cure = f"test at {shown}, or cite the clause it was built to"
                yield Diagnostic(test.where, SEVERITY, text, cure, CODE, part.tag)
                return


def _clause_of(book: Book, cited: Citation) -> Clause | None:
    source = book.content.sources.get(cited.source)
    edition = (source.edition if source else None) or ""
    for clause in CLAUSES:
        if cited.clause.startswith(clause.clause) and clause.edition in edition:
            return clause
    return None


def _too_high(book: Book, record: Test) -> Iterator[Diagnostic]:
    """What a test record names as tested and cannot stand the pressure of the criterion."""
    aim = next((word for word in (record.criterion or "").split() if word.endswith(".test")), "")
    test = book.values.get(aim)
    if test is None or not is_pressure(test):
        return
    for number, item in enumerate(record.tested):
        part = book.components.get(item.tag)
        limit = _stands(book, part) if part and not aim.startswith(f"{item.tag}.") else None
        if limit and (margin(book, test, limit) or 0) < 0:
            text = f"test {test.text}, {item.tag} stands {as_written(limit)}"
            cure = f"take {item.tag} out, or blank it; or record what it really stands"
            where = record.place(f"tested[{number}].tag")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))


def _stands(book: Book, part: Component) -> Value | None:
    """The most that a part may see in a test."""
    if part.kind in RELIEF:
        return recorded(book, part, "set")
    scale = recorded(book, part, "range.to")
    return scale or recorded(book, part, "test") or recorded(book, part, "rated")
