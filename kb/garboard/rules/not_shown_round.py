"""Somebody is aboard whom nobody has shown round.

Why: they do not know what can hurt them here, where the way out is and whom to call, and nobody else
knows that they do not. The ISM Code (6.3) asks that people new to a ship are made familiar with their
duties before they take them up (verify before citing).

Fix: walk through the first-day page with them and write the day and who did it under `orientation:` in
people.yml; or write the day on which they left.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.signoff import Capacity

CODE = "not-shown-round"
SEVERITY = Severity.WARN
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at everybody who is written down as aboard; who is in charge shows the others."""
    for key, person in book.content.people.items():
        present = person.time_aboard(book.today)
        if present is None or Capacity.IN_CHARGE in person.may or person.shown_round(book.today):
            continue
        text = (
            f"{key} is aboard since {present.from_}, and nobody wrote down having shown them round"
        )
        cure = "show them round and write the day and by whom, or the day they left"
        where = person.places.get("aboard", person.where)
        yield Diagnostic(where, SEVERITY, text, cure, CODE, key)
