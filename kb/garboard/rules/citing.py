"""Who cites which source for which number, and where."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.value import Citation
from garboard.errors import Where

__all__ = ["Cited", "cited_sources"]


@dataclass(frozen=True, slots=True)
class Cited:
    """One source, cited in one place."""

    by: str
    """The record id, tag or page that cites it."""
    source: str
    where: Where
    clause: str = ""
    """What stands behind its key between the brackets."""


def cited_sources(book: Book) -> Iterator[Cited]:
    """Every source cited for a number: in fences, in component data, in the vessel's conditions.

    The plate of a component, which stands for the sources of its numbers, is a field of its own.
    """
    for sheet in book.network.sheets.values():
        for line in sheet.lines:
            yield from _each(sheet.owner, line.sources, line.where)
    for address, value in book.values.items():
        owner = address.partition(".")[0]
        if owner not in book.network.sheets:
            written = tuple(item for item in value.sources if item.where)
            yield from _each(owner, written, value.where)


def _each(by: str, sources: tuple[Citation, ...], where: Where) -> Iterator[Cited]:
    for citation in sources:
        yield Cited(by, citation.source, citation.where or where, citation.clause)
