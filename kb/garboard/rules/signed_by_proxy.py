"""One person typed another's signature, and nothing shows that the other gave it.

Why: a line that anybody can type is worth what stands behind it: a signed sheet, a letter.

Fix: photograph the signed sheet and name the photograph under `evidence`; or have the signer enter
the line.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.signed import lines

CODE = "signed-by-proxy"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every line that another person entered."""
    for line in lines(book):
        signed = line.weighed.line
        proxy = signed.entered_by
        if proxy and proxy != signed.by and not (signed.evidence or "").strip():
            text = f"{proxy} entered {signed.by}'s signature of {signed.on} without evidence"
            cure = "name the photograph of the signed sheet, or have the signer enter it"
            yield Diagnostic(line.where, SEVERITY, text, cure, CODE, line.key)
