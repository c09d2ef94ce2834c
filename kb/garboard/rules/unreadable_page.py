"""What is to be seen is told by a colour alone, or a text is hard to read small, aloud or in a hurry.

Why: about one man in twelve tells red from green badly (from memory, verify before citing), a red torch takes
the colours from everybody, and a printed sheet has none (WCAG 2.2, 1.4.1). On a phone one column of a table
stands under the other, and who is read to hears headings, links and pictures without what is around them
(WCAG 2.2, 1.1.1, 1.3.1, 2.4.4).

Fix: say beside the colour where it is, what is written on it, or that it is lit: `upper lamp RUN, green, lit`.
Write a heading above each column, what a link leads to, what a picture shows; leave out no level of heading;
part a step that takes more than 120 words in one piece.

The colour is a HOLD, the others are a WARN. Pictures without any text are `image-without-text`; contrast and
the size of targets are ours, not the author's, and are held by the tests of the pages. A colour inside a longer
sentence is not judged; nor is whether a description is a good one.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.alarm import Fault
from garboard.records.standing import has_left
from garboard.records.system import System
from garboard.rules.plain_reading import hard_to_read
from garboard.rules.steps import live_procedures

CODE = "unreadable-page"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

COLOURS = frozenset("red green yellow amber orange blue white black brown grey".split())
SAYS_NO_MORE = frozenset(
    "lamp light led colour lit shows is the a an goes turns comes on and or".split()
)
"""Words that tell nobody which of two lamps it is."""
WORD = re.compile(r"[^\W\d_]+|\d")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at what is to be seen in steps, faults and rounds, then at every text."""
    for about, text, where in _seen(book):
        words = {word.casefold() for word in WORD.findall(text)}
        named = words & COLOURS
        if named and not words - COLOURS - SAYS_NO_MORE:
            yield Diagnostic(
                where,
                SEVERITY,
                f"`{text}` tells what is seen by colour alone",
                "say as well where it is, what is written on it, or that it is lit and the other is not",
                CODE,
                about,
            )

    for one in hard_to_read(book):
        yield Diagnostic(one.where, Severity.WARN, one.text, one.cure, CODE, one.about)


def _seen(book: Book) -> Iterator[tuple[str, str, Where]]:
    """What is to be seen, anywhere: whose, the words, where they stand."""
    for procedure in live_procedures(book):
        for number, step in enumerate(procedure.steps):
            if step.see and step.see.value:
                place = procedure.place(f"steps[{number}].see.value")
                yield str(procedure.id), str(step.see.value), place
    for fault in (one for one in book.of_kind(Fault) if not has_left(one)):
        for number, check in enumerate(fault.checks):
            if check.see:
                yield str(fault.id), str(check.see), fault.place(f"checks[{number}].see")
    for system in book.systems.values():
        yield from ((system.code, *stop) for stop in _on_rounds(system))


def _on_rounds(system: System) -> Iterator[tuple[str, Where]]:
    for name, walk in (system.rounds or {}).items():
        for number, stop in enumerate(walk.order):
            for key in ("look", "read", "within"):
                if said := getattr(stop, key):
                    yield str(said), system.place(f"rounds.{name}.order[{number}].{key}")
