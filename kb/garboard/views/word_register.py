"""The words of the trade, what the crew says for them, and what they are called for aboard."""

from garboard.book import Book
from garboard.records.vessel import Term
from garboard.views.draft import Draft
from garboard.views.listing import slug
from garboard.views.page import Cell, Column, Plate, Row, Table

__all__ = ["WORDS", "aboard", "word_register"]

WORDS = "registers/glossary"


def aboard(book: Book, word: str) -> tuple[str, ...]:
    """The parts that a word of the trade is the kind or the name of, by tag."""
    return tuple(
        tag
        for tag, part in sorted(book.components.items())
        if word.casefold() in (part.kind.casefold(), (part.name or "").casefold())
    )


def word_register(draft: Draft) -> None:
    """The page of words, from A to Z."""
    terms = sorted(draft.book.content.glossary.items(), key=lambda one: one[0].casefold())
    rows = tuple(Row(_cells(draft.book, key, term), slug(key)) for key, term in terms)
    titles = ("word", "means", "the crew says", "short", "aboard")
    draft.add(Table("Words of the trade", tuple(Column(one) for one in titles), rows))


def _cells(book: Book, key: str, term: Term) -> tuple[Cell, ...]:
    meaning: Cell = (term.means, f" Not: {term.not_}" if term.not_ else "")
    here: Cell = tuple(run for tag in aboard(book, key) for run in (Plate(tag), " "))
    return ((key,), meaning, (", ".join(term.crew_words),), (term.abbreviation or "",), here)
