"""The thing that was tested is not the one that is fitted.

Why: a certificate follows the serial number, not the place. The relief valve in the locker has a
fine one.

Fix: test the one that is fitted, or fit the one that was tested; where a number was copied
wrongly, photograph the plate and correct it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import key_of
from garboard.records.inspection import Test
from garboard.rules.proofs import proofs_by_tag

CODE = "serial-mismatch"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the serial fitted in each place with those on its passed tests, line by line."""
    for tag, tests in proofs_by_tag(book).items():
        part = book.components.get(tag)
        fitted = part.item.serial if part and part.item else None
        for alike in _by_line(tests) if fitted else ():
            serials = [
                (test, number, serial) for test in alike for number, serial in _of(test, tag)
            ]
            if not serials or any(serial == fitted for _, _, serial in serials):
                continue
            test, number, serial = serials[-1]
            text = f"{test.id} tested {tag} {serial}, fitted is {fitted}"
            cure = f"test {fitted}, or correct the number from the plate"
            where = test.place(f"tested[{number}].serial")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))


def _by_line(tests: list[Test]) -> list[list[Test]]:
    """Tests of one line of the plan, or of one sort: a pressure test and a lifting test apart."""
    found: dict[str, list[Test]] = {}
    for test in tests:
        found.setdefault(test.line or key_of(test.what or ""), []).append(test)
    return list(found.values())


def _of(test: Test, tag: str) -> Iterator[tuple[int, str]]:
    """The serials that a test gives for a component, with their places."""
    for number, item in enumerate(test.tested):
        if item.tag == tag and item.serial:
            yield number, item.serial
