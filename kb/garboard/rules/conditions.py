"""Conditions of a concession that can be worked out: a value and the bound it must keep to.

`SA-RV-001.set at most 30 bar(g)`, alone or as a clause among others. All other words are left to a
person.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.names import ADDRESS
from garboard.records.change import Concession
from garboard.records.criterion import LINK, find_bounds

__all__ = ["broken_conditions"]

SUBJECT = re.compile(rf"\s*(?P<address>{ADDRESS.pattern})(?: (?:is|stays|remains))?(?= )")
CLAUSE = re.compile(r"[;,] |\. |\n| and (?=[A-Z]{2}-[A-Z]{2}-\d{3}\.)")


def broken_conditions(book: Book, concession: Concession) -> Iterator[str]:
    """What no longer holds of what it was granted on: `SA-RV-001.set is 32 bar(g), not at most 30 bar(g)`."""
    where = concession.place("conditions")
    for clause in CLAUSE.split(LINK.sub(r"\1", concession.conditions or "")):
        found = SUBJECT.match(clause)
        value = book.values.get(found["address"]) if found else None
        if found is None or value is None or value.low is None or value.high is None:
            continue
        for bound in find_bounds(book.values, clause[found.end() :].rstrip(".;, "), where):
            holds = bound.holds(value.low) and bound.holds(value.high)
            if bound.type == value.type and not holds:
                yield f"{found['address']} is {value.text}, not {bound.shown}"
