"""What a decision chose is none of the options it lists.

Why: whoever reads it later sees what was refused and why, and not what was weighed when this was
taken; the choice has no reasons against it on record.

Fix: write what was chosen in the words of its option, or add it to the options.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import nearest
from garboard.records.decision import Decision
from garboard.records.standing import has_left

CODE = "chosen-not-an-option"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold what was chosen against the options of each decision that lists any."""
    for decision in book.of_kind(Decision):
        options = {_folded(one.option): str(one.option) for one in decision.options}
        chosen = decision.chosen
        if not chosen or not options or has_left(decision) or _folded(chosen) in options:
            continue
        near = nearest(_folded(chosen), options)
        text = f"{decision.id} chose \u201c{chosen}\u201d, which is none of its options"
        cure = f"write \u201c{options[near]}\u201d" if near else "write it as its option has it"
        where = decision.place("chosen")
        cure = f"{cure}, or add what was chosen to the options"
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(decision.id))


def _folded(text: str) -> str:
    return " ".join(text.split()).casefold()
