"""The words of the trade, what the crew says for them, and what they are called for aboard."""

from collections.abc import Iterator

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
    short = any(term.abbreviation for _, term in terms)
    rows = tuple(
        Row(tuple(_cells(draft.book, key, term, short=short)), slug(key)) for key, term in terms
    )
    titles = ("word", "means", "the crew says", *(["short"] if short else []), "aboard")
    draft.add(Table("Words of the trade", tuple(Column(one) for one in titles), rows))


def _cells(book: Book, key: str, term: Term, *, short: bool) -> Iterator[Cell]:
    yield (key,)
    yield (term.means, f"; not {term.not_}" if term.not_ else "")
    yield (", ".join(term.crew_words),)
    if short:
        yield (term.abbreviation or "",)
    yield tuple(run for tag in aboard(book, key) for run in (Plate(tag), " "))
