"""A requirement fails, or holds by so little that it is worth saying.

Why: a limit is where somebody expects harm. One that is met only if every input is exactly as
written is not met on a cold morning with a worn gauge.

Fix: change what moves the result most, or ask a concession with its conditions. At the worst corner
it must hold; a margin under 5 % of the limit, or one that is there only at nominal, is a warning
(common practice, no source).
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Requirement, Value, Verdict
from garboard.errors import Diagnostic, Severity
from garboard.rules.upstream import feeding, is_input

CODE = "outside-limit"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

THIN = 5.0
"""Per cent of the limit."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Judge every requirement, and every normal value against its own limits."""
    for line in book.network.requirements:
        if said := _standing(line):
            severity, text = said
            yield Diagnostic(line.where, severity, text, _cure(book, line), CODE, line.block)
    for part in book.components.values():
        normal = book.values.get(part.address("normal"))
        for name in ("low", "high"):
            limit = book.values.get(part.address(name))
            if normal and limit and _past(normal, limit, name):
                text = f"{part.tag} is normally at {normal.text}, its {name} limit is {limit.text}"
                cure = (
                    f"change normal or {name}, whichever was written wrongly, or ask a concession"
                )
                yield Diagnostic(normal.where, SEVERITY, text, cure, CODE, part.tag)


def _standing(line: Requirement) -> tuple[Severity, str] | None:
    """How a requirement stands, where it does not hold well."""
    both = f"{line.left} against {line.right}"
    if line.verdict is Verdict.FAILS:
        return Severity.HOLD, f"{line.text} fails: {both}"
    if line.verdict is Verdict.NOMINAL:
        text = f"{line.text} holds only at nominal: {both}, margin at worst {line.margin}"
        return Severity.WARN, text
    share = line.margin_percent
    if line.verdict is Verdict.HOLDS and share is not None and share < THIN:
        return Severity.WARN, f"{line.text} holds by {line.margin}, {share:.1f} %: {both}"
    return None


def _cure(book: Book, line: Requirement) -> str:
    """What to change: the inputs that the requirement hangs on, widest tolerance first."""
    inputs = [
        value for value in feeding(book, line.uses) if is_input(value) and value.si is not None
    ]
    inputs.sort(key=_width, reverse=True)
    names = " or ".join(value.address for value in inputs[:2])
    return f"change {names}, or ask a concession" if names else "change it, or ask a concession"


def _width(value: Value) -> float:
    """How uncertain an input is, as a share of itself."""
    if not value.si or value.low is None or value.high is None:
        return 0.0
    return (value.high - value.low) / abs(value.si)


def _past(normal: Value, limit: Value, name: str) -> bool:
    if normal.si is None or limit.si is None or normal.type != limit.type:
        return False
    return normal.si < limit.si if name == "low" else normal.si > limit.si
