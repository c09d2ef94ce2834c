"""A change of class C replaces a thing by one that differs.

Why: a part that fits is not a part that is the same. The accident is in the attribute nobody
compared: the valve that fails open where the old one failed shut. 29 CFR 1910.119(l) lets only a
replacement in kind go without review.

Fix: raise it to class B and have it checked, or fit a part that is alike. Until then it counts as B.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.records.change import Change
from garboard.records.in_kind import differences
from garboard.records.standing import has_left, refused

CODE = "not-in-kind"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare each attribute of every change of class C, old with new."""
    for change in book.of_kind(Change):
        if change.class_ is not Class.C or has_left(change) or refused(change):
            continue
        for one in differences(change):
            text = (
                f"not alike in \u201c{one.what}\u201d: {one.before}, then {one.after};"
                f" {change.id} counts as class B"
            )
            cure = "raise it to class B and have it checked, or fit one that is alike"
            yield Diagnostic(change.place(one.path), SEVERITY, text, cure, CODE, str(change.id))
