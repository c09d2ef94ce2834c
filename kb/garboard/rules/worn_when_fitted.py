"""A clearance as it is fitted reaches the one at which it is worn out.

Why: then a part that was just put together by the book is already to be taken out by the same book, and
one of the two numbers is wrong.

Fix: look both up in the source again. `fitted` with its whole tolerance stays under `worn`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "worn-when-fitted"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold the widest that may be fitted against the narrowest that is worn out."""
    for part in book.components.values():
        for key, gap in (part.clearances or {}).items():
            if gap.fitted is None or gap.worn is None or gap.fitted.high < gap.worn.low:
                continue
            fitted = _with_tolerance(gap.fitted.shown, gap.fitted.tolerance)
            worn = _with_tolerance(gap.worn.shown, gap.worn.tolerance)
            name = gap.name or key.replace("_", " ")
            text = f"{name} of {part.tag} is fitted with {fitted} and worn out at {worn}"
            cure = "look both up again; fitted with all its tolerance stays under worn"
            where = part.at_place(f"clearances.{key}.worn")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, part.tag)


def _with_tolerance(shown: str, tolerance: str) -> str:
    return f"{shown} +/- {tolerance}" if tolerance else shown
