"""The words of the trade, what the crew says for them, and what they are called for aboard."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.component import Component
from garboard.records.vessel import Term
from garboard.views.draft import Draft
from garboard.views.listing import slug
from garboard.views.page import Cell, Column, Plate, Row, Table

__all__ = ["WORDS", "aboard", "is_called", "word_register"]

WORDS = "registers/glossary"


def is_called(part: Component, word: str) -> bool:
    """Whether a word of the trade is the kind of a part, its name, or the end of its name.

    `shell valve` is what a *General service shell valve* is, `navigation light` what *Navigation lights* are.
    """
    name, said = (part.name or "").casefold(), word.casefold()
    ends = any(f" {name}".endswith(f" {said}{many}") for many in ("", "s"))
    return said == part.kind.casefold() or ends


def aboard(book: Book, word: str) -> tuple[str, ...]:
    """The parts that a word of the trade is said of, by tag."""
    return tuple(tag for tag, part in sorted(book.components.items()) if is_called(part, word))


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
