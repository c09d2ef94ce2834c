"""Safety messages, made from hazards: the signal word is computed, never typed."""

from collections.abc import Iterator
from itertools import groupby

from garboard.book import Book
from garboard.records.hazard import Hazard
from garboard.records.signal_word import signal_word
from garboard.views.inline import cell
from garboard.views.page import Block, Link, Message, Paragraph, Run, Strong

__all__ = ["by_word", "message_of", "worst_first"]

ORDER = ("DANGER", "WARNING", "CAUTION", "NOTICE")


def message_of(book: Book, hazard: Hazard) -> Message:
    """The message of a hazard, its four parts in order."""
    said = hazard.message
    missing = ("not recorded",)
    return Message(
        signal_word(hazard),
        cell(book, said.hazard if said else hazard.source) or missing,
        cell(book, said.harm if said else hazard.sequence) or missing,
        cell(book, said.avoid if said else None) or missing,
        str(hazard.id),
    )


def worst_first(hazards: list[Hazard]) -> list[Hazard]:
    """Hazards by signal word, then by id."""
    return sorted(hazards, key=lambda one: (ORDER.index(signal_word(one)), str(one.id)))


def by_word(hazards: list[Hazard], *more: Run) -> Iterator[Block]:
    """Hazards that do not stand in full, by signal word and title, a line a word.

    Args:
        hazards: The worst first.
        more: What the last line ends with.
    """
    lines = [(word, list(found)) for word, found in groupby(hazards, signal_word)]
    for at, (word, found) in enumerate(lines, 1):
        runs: list[Run] = [Strong(f"{word} as well: ")]
        for one in found:
            runs += [Link(str(one.id), one.title), "; "]
        yield Paragraph((*runs[:-1], ".", *(more if at == len(lines) else ())))
