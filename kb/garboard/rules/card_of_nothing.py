"""A quick card is of a record that no card is made of, or of steps that the procedure does not have.

Why: such a card is printed without the steps it was hung for, or not at all, and whoever looks for it at
night finds an empty place.

Fix: name the procedure, alarm or fault that is done there, and steps that it has.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.hanging import record_of
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.procedure import Procedure
from garboard.records.standing import kind_name

CODE = "card-of-nothing"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold every card that hangs against its record."""
    vessel = book.content.vessel
    for number, card in enumerate(vessel.cards):
        named = book.records.get(bare_id(card.of))
        if card.removed or named is None:
            continue
        record = record_of(book, card)
        key = str(named.id)
        if record is None:
            text = f"card {card.card} is of {key}, and no card is made of a {kind_name(named)}"
            cure = "name the procedure, alarm or fault that is done there, or take the card out"
            yield Diagnostic(vessel.place(f"cards[{number}].of"), SEVERITY, text, cure, CODE, key)
        elif isinstance(record, Procedure) and card.steps and "steps" not in record.unread:
            last, count = int(card.steps.rpartition("-")[2]), len(record.steps)
            if last > count:
                text = f"card {card.card} has steps {card.steps}, {key} has {count}"
                where = vessel.place(f"cards[{number}].steps")
                cure = f"write steps that are there, up to {count}"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, key)
