"""Two books held together: what is different, what caused it, and what must be done about it.

The door of this room. A comparison is a function of two books and of nothing else.
"""

from collections.abc import Mapping

from garboard.book import Book
from garboard.calc.method import Method
from garboard.changes.behind import Behind
from garboard.changes.cautions import cautions_moved, procedure_steps_moved
from garboard.changes.comparison import Comparison, Side
from garboard.changes.effects import (
    cards_to_print,
    pages_moved,
    people_to_tell,
    spares_moved,
    tests_voided,
)
from garboard.changes.inventory import entries_moved
from garboard.changes.joins import joins_moved
from garboard.changes.layout_moved import layout_moved
from garboard.changes.numbers import numbers_moved
from garboard.changes.replay import replayed
from garboard.changes.requirements import limits_moved
from garboard.changes.tracing import balanced_numbers, inputs_of, traced_limits, traced_numbers
from garboard.records.edition import Edition

__all__ = ["LIMITS", "compare"]

LIMITS = (
    "Compared is what was entered, both books worked out by this one version of the program. A change"
    " that nobody wrote down is not here, nor is what a photograph shows. What is said to be weakened"
    " or strengthened follows from a few plain rules; whether it is safe is for people to say. It is"
    " no approval."
)
"""Stands under every comparison."""


def compare(
    old: Book,
    new: Book,
    methods: Mapping[str, Method],
    of_old: Edition | None = None,
    of_new: Edition | None = None,
) -> Comparison:
    """All that differs between two books.

    Args:
        old: The older one.
        new: The newer one.
        methods: The bundled methods by name, to work the old calculations out again.
        of_old: The edition that the older one is; None for a working copy.
        of_new: The edition that the newer one is. Of two editions the lists of pages are compared.
    """
    entries = entries_moved(old, new)
    behind = Behind(new, entries)
    limits = limits_moved(old, new)
    numbers = numbers_moved(old, new, limits)
    trials = replayed(old, new, methods)
    cautions = cautions_moved(old, new)
    steps = procedure_steps_moved(old, new)
    listed = (_pages(of_old), _pages(of_new)) if of_old and of_new else None
    return Comparison(
        before=_side(old, of_old),
        after=_side(new, of_new),
        numbers=tuple(traced_numbers(numbers, old, new, trials, behind)),
        balanced=tuple(balanced_numbers(old, new, trials)),
        limits=tuple(traced_limits(limits, old, trials)),
        inputs=inputs_of(trials, behind),
        cautions=tuple(cautions),
        steps=tuple(steps),
        layout=tuple(layout_moved(old, new, behind)),
        joins=tuple(joins_moved(old, new)),
        entries=tuple(entries),
        cards=tuple(cards_to_print(old, new)),
        people=tuple(people_to_tell(new, steps, cautions)),
        tests=tuple(tests_voided(old, new, numbers)),
        pages=tuple(pages_moved(new, numbers, entries, listed)),
        spares=tuple(spares_moved(new, entries)),
    )


def _side(book: Book, edition: Edition | None) -> Side:
    number = edition.number if edition else 0
    return Side(edition=number, on=book.today, unread=len(book.content.stubs))


def _pages(edition: Edition) -> Mapping[str, tuple[str, str]]:
    """Title and digest of each page of an edition; pages that compare editions left out."""
    return {
        one.key: (one.title, one.digest)
        for one in edition.pages
        if not one.key.startswith("editions/")
    }
