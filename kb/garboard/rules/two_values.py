"""One property has two values that are both meant to be true.

Why: everybody reads one of the two places. Whoever sets the switch and whoever tests it read
different ones.

Fix: keep the number in one place and quote it in the other. What is compared: a value with what the
last installed change made it; a number in a fence with the data of the component it cites; two
numbers of one name from one source; an alarm with its vessel's data; a test with its plan line.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.doubles import doubles

CODE = "two-values"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare everything that is said twice."""
    for pair in doubles(book):
        if pair.differ:
            one, other = pair.first, pair.second
            text = f"{other.words} here, {one.words} at {one.where}"
            cure = "keep the one that is true, and quote it in the other place"
            yield Diagnostic(other.where, SEVERITY, text, cure, CODE, pair.about)
