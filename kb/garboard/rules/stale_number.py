"""The text of a quoted value is not what the value says now.

Why: the sentence around a number was written for that number. A page that says 9 starts where the
calculation says 4 is believed, because it is a sentence.

Fix: read the page around it, then let `garboard refresh` write the number as it is now. A record at
rest that tells what happened keeps the number of its day, and today's is shown beside it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.quoting import agrees
from garboard.calc.show import show_in
from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity
from garboard.reading.references import ValueLink
from garboard.records.standing import is_history

CODE = "stale-number"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every quoted value with the value."""
    for written in book.content.texts:
        owner = book.records.get(written.owner)
        if owner is not None and is_history(owner):
            continue
        for link in written.links:
            value = book.values.get(link.address)
            if value is not None and value.si is not None and (fault := _fault(value, link)):
                yield Diagnostic(link.text_where, SEVERITY, *fault, CODE, written.owner)


def _fault(value: Value, link: ValueLink) -> tuple[str, str] | None:
    """What is wrong with one quotation, and the cure; None where it says what the value says."""
    shown = show_in(value, link.unit) if link.unit else value.text
    if shown is None:
        text = f"{link.address} is {value.text}, which cannot be shown in {link.unit}"
        return text, f"ask for a unit of the same kind, or take ?in={link.unit} out"
    if agrees(link.text, shown, has_unit=bool(link.unit or value.unit.text)):
        return None
    typed_unit = "" if link.unit else link.text.strip().partition(" ")[2]
    if typed_unit and agrees(link.text, show_in(value, typed_unit) or "", has_unit=True):
        text = f"text says {link.text}, {link.address} is shown as {shown}"
        return text, f"write value:{link.address}?in={typed_unit}, or run garboard refresh"
    text = f"text says {link.text}, {link.address} is {shown}"
    return text, "read the page around it, then run garboard refresh"
