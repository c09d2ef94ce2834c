"""What a number is worked out from, back to what people wrote, and which of that is a guess."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.calc.value import ASSUMED, Citation, Value
from garboard.records.vessel import Seen

__all__ = ["feeding", "guessed", "is_input"]


def feeding(book: Book, addresses: Iterable[str]) -> Iterator[Value]:
    """Values and all they are worked out from, each once, the nearest first."""
    waiting, seen = list(dict.fromkeys(addresses)), set[str]()
    for address in waiting:
        value = book.values.get(address)
        if value is not None and address not in seen:
            seen.add(address)
            waiting.extend(value.uses)
            yield value


def is_input(value: Value) -> bool:
    """Whether a person wrote it down, alone or in a sum of plain numbers such as `2 * 250 L`."""
    return not value.uses


def guessed(book: Book, sources: Iterable[Citation]) -> str:
    """Why a number with these sources is a guess: `assumed`, or the source that was remembered."""
    for citation in sources:
        if citation.source == ASSUMED:
            return ASSUMED
        source = book.content.sources.get(citation.source)
        if source is not None and source.seen is Seen.REMEMBERED:
            return f"from {citation.source}, which was remembered"
    return ""
