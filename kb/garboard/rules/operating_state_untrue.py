"""An operating state says what its line-up does not do.

Question: with every valve where the state has it and every other at its usual position, does each user
in `supplies` get something from what is charged or runs; are the stores in `charged` shut in; and can each
valve stand as it is listed?

Why: the line-up is printed, ticked valve by valve and believed. A user that is called supplied and is not finds
out at the worst moment (good practice, no text claimed).

Bad: starting: open SA-HV-008; supplies SA-EN-001; SA-HV-006 is usually shut and in no list.

Good: starting: open SA-HV-006, SA-HV-008; supplies SA-EN-001.

Fix: put the missing valve into the state, or take out what it does not do. A valve that is in no list and
has no usual position counts as not passing to a user.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.systems.modes import find_untrue

CODE = "operating-state-untrue"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold every operating state against the layout of its system."""
    for code, surveyed in book.surveys.items():
        system = surveyed.plant.system
        for name, one in find_untrue(surveyed.plant):
            place = f"operating_states.{name}"
            where = system.places.get(f"{place}.{one.field}", system.place(place))
            text = f"in `{name}` {one.text}"
            yield Diagnostic(where, SEVERITY, text, one.help, CODE, one.about or code)
