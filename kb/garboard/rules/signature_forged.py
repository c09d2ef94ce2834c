"""A signature is not proved by the key of the person whose name it bears.

Why: anybody who can edit a file can type a line in another's name. Who has a key in `allowed_signers`
has said that their word comes with a proof; a line in their name without one, with one that does not
fit, or edited since, is not theirs. Where ssh-keygen is missing nothing is proved, and that is said.

Fix: have the person sign again with their key; or put the line back as it was signed. A key that was
lost ends by its `valid-before`: lines of earlier days keep their proof.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.allowed_signers import ALLOWED_SIGNERS
from garboard.review.proof import Proof
from garboard.rules.signed import Line, lines

CODE = "signature-forged"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the proof of every line, and at the file that says whose keys count."""
    for where, wrong in book.content.signers.unread:
        cure = 'write: key of people.yml, ssh-ed25519 and the key; valid-after="20310312" before it'
        yield Diagnostic(where, SEVERITY, wrong, cure, CODE, ALLOWED_SIGNERS)
    unknown = 0
    for line in lines(book):
        unknown += line.weighed.proof is Proof.UNKNOWN
        text = _said(book, line)
        if text:
            cure = "have it signed again with the key, or put the line back as it was signed"
            yield Diagnostic(line.where, SEVERITY, text, cure, CODE, line.key)
    if unknown:
        proofs = "1 proof was" if unknown == 1 else f"{unknown} proofs were"
        text = f"ssh-keygen is not on this machine: {proofs} not looked at, and nothing is taken for proved"
        cure = "install it, or build where it is"
        yield Diagnostic(Where(ALLOWED_SIGNERS), Severity.NOTE, text, cure, CODE, ALLOWED_SIGNERS)


def _said(book: Book, line: Line) -> str:
    signed = line.weighed.line
    whose = f"{signed.by}'s signature of {signed.on}"
    if line.weighed.proof is Proof.OWED:
        return f"{whose} has no proof, and {signed.by} has a key for that day"
    if line.weighed.proof is not Proof.FORGED:
        return ""
    if not book.content.signers.of(signed.by, signed.on):
        return f"{whose} has a proof, and {signed.by} has no key for that day in {ALLOWED_SIGNERS}"
    return f"the proof of {whose} does not fit this line"
