"""What can be signed: a filed record or a written page that was read whole, and only one of a name."""

from pathlib import Path

from garboard.book import Book
from garboard.errors import GarboardError
from garboard.names import nearest
from garboard.records.base import Record
from garboard.records.pages import WrittenPage
from garboard.review.covers import Signed, name_of

__all__ = ["find_signable"]

READING = ("unreadable-record", "unreadable-line", "unknown-kind")
"""Faults that leave a part of the file unread."""


def find_signable(book: Book, name: str, folder: Path) -> Signed:
    """The record or written page of a name.

    Args:
        book: What was read.
        name: An id; the path of a written page, in the content folder or from here.
        folder: The content folder.

    Raises:
        GarboardError: There is none, it has no id yet, or it could not be read whole.
    """
    path = _inside(name, folder)
    unread = next(
        (one for one in book.content.stubs if name == one.id or path == one.where.path), None
    )
    if unread:
        raise GarboardError(f"{unread.where.path} could not be read; see garboard check, then sign")
    thing = _find(book, name, path)
    twins = [one for one in book.content.doubles if one.id == name]
    if twins:
        raise GarboardError(f"{name} is the id of two records, here and at {twins[0].where}")
    _refuse_unread(book, thing)
    return thing


def _inside(name: str, folder: Path) -> str:
    """A path as the content knows it."""
    try:
        return Path(name).resolve().relative_to(folder.resolve()).as_posix()
    except (OSError, ValueError):
        return Path(name).as_posix()


def _find(book: Book, name: str, path: str) -> Signed:
    content = book.content
    record = content.records.get(name)
    if record:
        return record
    pages = {page.where.path: page for page in content.pages}
    found: WrittenPage | None = pages.get(path) or pages.get(name)
    if found:
        return found
    if any(one.where.path in (path, name) for one in content.unfiled):
        raise GarboardError(f"{name} has no id yet; file it before anybody signs it")
    filed = next((one for one in content.records.values() if one.where.path in (path, name)), None)
    if filed:
        raise GarboardError(f"{name} is {filed.id}; sign it by its id")
    if name in content.components:
        raise GarboardError(f"{name} is a part; sign the record that says something of it")
    near = nearest(name, (*content.records, *pages))
    raise GarboardError(
        f"there is no record or page {name!r}" + (f"; did you mean {near}?" if near else "")
    )


def _refuse_unread(book: Book, thing: Signed) -> None:
    """Refuse what has a part that nobody can have seen as it was meant.

    Raises:
        GarboardError: It has.
    """
    faults = (*book.content.diagnostics, *book.network.diagnostics)
    fault = next(
        (one for one in faults if one.where.path == thing.where.path and one.code in READING), None
    )
    if fault or thing.unread:
        where = fault.where if fault else thing.place(thing.unread[0])
        why = fault.text if fault else f"{thing.unread[0]} cannot be read"
        what = "page" if not isinstance(thing, Record) else "record"
        raise GarboardError(
            f"{name_of(thing)} was not read whole, so nobody can sign the {what}: {where}: {why}"
        )
