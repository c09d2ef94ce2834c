"""Where a link in a text can lead: pages, pictures, and what is kept but never published."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from posixpath import basename, dirname, join, normpath, splitext
from urllib.parse import unquote

from garboard.book import Book
from garboard.names import IDENTIFIER, nearest
from garboard.reading.content import Written
from garboard.records.base import Record
from garboard.rules.markdown_text import find_headings
from garboard.rules.prose import bodies

__all__ = ["Shelves", "shelves_of"]

FURNITURE = frozenset(("sheet", "sources", "standing", "used-on"))
"""Anchors that every page has."""
RECORD_FILE = re.compile(rf"(?P<id>{IDENTIFIER.pattern})(?!\d)")
"""How the file of a record starts, folded to capitals."""
NEAR = 0.75
"""How like a name must be to be offered: a slip or two, and no other page."""


@dataclass(frozen=True, slots=True)
class Shelves:
    """Every path that a link can name."""

    book: Book
    pages: Mapping[str, Record | None]
    """Files that become pages; None for one that is no record."""
    texts: Mapping[str, Written]
    """The Markdown of each page, by path of its file."""

    def path_of(self, name: str, seen_from: str) -> str:
        """The path in the content folder that a relative link means."""
        return normpath(join(dirname(seen_from), unquote(name)))

    def named(self, name: str) -> str | None:
        """The file of what an id names; empty for other keys that lead somewhere, None for none."""
        if record := self.book.records.get(name):
            return record.where.path
        folders = self.book.content.vessel.folders.values()
        key_of_view = "." not in name and name.partition("/")[0] in (*folders, "registers", "id")
        return "" if key_of_view or self.book.declared(name) else None

    def near(self, path: str, *, picture: bool) -> str | None:
        """The path that was most likely meant: of the same name elsewhere, else of a like name.

        Figures are never guessed: what differs in them is another record or another day.
        """
        found = self.book.content.photos if picture else self.pages
        by_path = {one.casefold(): one for one in found}
        if same := by_path.get(path.casefold()):
            return same
        ident = RECORD_FILE.match(_stem(path).upper())
        if not picture and ident and (record := self.book.records.get(ident["id"])):
            return record.where.path
        alike = (one for one in sorted(found, reverse=True) if _figures(one) == _figures(path))
        by_name = {_letters(one): one for one in alike}
        name = nearest(_letters(path), by_name, NEAR)
        return by_name[name] if name is not None else None

    def anchors(self, path: str) -> set[str]:
        """What a link can name on the page of a file."""
        text, record = self.texts.get(path), self.pages.get(path)
        found = set(FURNITURE)
        if text is not None:
            found |= {heading.anchor for heading in find_headings(text)}
            blocks = [fence.name for fence in self.book.fences_of(text.owner)]
            found |= {*blocks, *(one for one in self.book.values if one.split(".")[0] in blocks)}
        if record is not None:
            found |= {
                key.rstrip("_").replace("_", "-") for key in type(record).__dataclass_fields__
            }
        return found


def _stem(path: str) -> str:
    return splitext(basename(path))[0].casefold()


def _figures(path: str) -> str:
    return re.sub(r"\D+", " ", _stem(path)).strip()


def _letters(path: str) -> str:
    return re.sub(r"[\W\d_]+", " ", _stem(path)).strip()


def shelves_of(book: Book) -> Shelves:
    """Everything that a link in a book's texts can lead to."""
    content = book.content
    records = (*content.records.values(), *content.doubles, *content.unfiled)
    pages: dict[str, Record | None] = {record.where.path: record for record in records}
    pages |= {page.where.path: None for page in content.pages}
    pages |= {stub.where.path: None for stub in content.stubs}
    return Shelves(book, pages, {one.where.path: one for one in bodies(content.texts)})
