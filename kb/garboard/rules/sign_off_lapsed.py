"""Something that a signature covers is no longer as it was signed.

Why: a signature is one person's word that one thing, as it then stood, was checked. Where the thing
has moved, nobody has checked what stands there now.

A signature that was typed and bears no digest is bound to nothing, and counts as lapsed.

Fix: have it checked again and signed; the line that lapsed stays as it is. Or put back what moved.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.signed import Line, lines

CODE = "sign-off-lapsed"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

MOST_SHOWN = 3


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the newest signature of each capacity."""
    for line in lines(book):
        if not (line.weighed.counts and line.weighed.moved):
            continue
        cure = "have it checked again and sign it, or put back what moved"
        if not line.weighed.line.digest:
            cure = f"sign it with `garboard sign {line.key}`, which writes the digest"
        yield Diagnostic(line.where, SEVERITY, _said(line), cure, CODE, line.key)


def _said(line: Line) -> str:
    signed, moved = line.weighed.line, line.weighed.moved
    shown = "; ".join(str(each) for each in moved[:MOST_SHOWN])
    more = len(moved) - MOST_SHOWN
    rest = f"; and {more} more" if more > 0 else ""
    return f"{signed.capacity}'s signature of {signed.on} lapsed: {shown}{rest}"
