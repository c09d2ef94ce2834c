"""Who names a record, and which of those names may be written anew when another took its place."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from garboard.book import Book, Mentioned
from garboard.errors import Where
from garboard.reading.edits import Edit
from garboard.records.base import Record, bare_id
from garboard.records.relations import TELLS_WHAT_WAS
from garboard.records.standing import describes, has_left, kind_name

__all__ = ["Citing", "citing", "rename_edits"]

NEVER = frozenset((*TELLS_WHAT_WAS, "words", "readings", "before"))
"""Fields that tell what was, and words of other people: no other name is ever put into them."""
Lines = Callable[[str], Sequence[str]]
"""The lines of a file of the content, by its path."""


@dataclass(frozen=True, slots=True)
class Citing:
    """One place that names a record."""

    where: Where
    by: str
    """What names it: a record id, a tag, a system code or the path of a page."""
    kept: str = ""
    """Why it is let be; empty where another name may be put in its place."""


def citing(book: Book, name: str) -> tuple[Citing, ...]:
    """Every place that names a record, but for itself and what supersedes it.

    Args:
        book: The book.
        name: Its id.
    """
    found = {
        item.where: Citing(item.where, item.by, _kept(book, item))
        for item in book.mentions
        if bare_id(item.to) == name and item.by != name and _top(item) != "supersedes"
    }
    return tuple(found[where] for where in sorted(found))


def _kept(book: Book, item: Mentioned) -> str:
    """Why a name is let be."""
    if any(part in NEVER for part in _keys(item)):
        return f"`{_top(item)}` tells what was"
    if item.to != bare_id(item.to):
        return "it names a revision"
    thing = book.records.get(item.by)
    if thing is not None:
        return "" if describes(thing) else _why(thing)
    owner = book.systems.get(item.by) or book.components.get(item.by)
    written = any(page.where.path == item.by for page in book.content.pages)
    return "" if owner or written else "it is no record that describes the vessel"


def _why(thing: Record) -> str:
    return (
        f"it is {thing.state} itself"
        if has_left(thing)
        else f"a {kind_name(thing)} tells what happened"
    )


def _keys(item: Mentioned) -> list[str]:
    """The keys on the way to a field: of `options[1].why_not` they are `options` and `why_not`."""
    return [part.partition("[")[0] for part in item.field.split(".")]


def _top(item: Mentioned) -> str:
    return _keys(item)[0]


def rename_edits(book: Book, lines: Lines) -> Iterator[tuple[Edit, Citing]]:
    """The edits that put the live successor where a superseded record is named.

    Args:
        book: The book.
        lines: The lines of a file.

    Yields:
        An edit for each name that stands where it was met and may be changed.
    """
    for name, chain in book.heirs.items():
        old = book.records.get(name)
        if old is None or old.state != "superseded":
            continue
        for one in citing(book, name):
            place = None if one.kept else _at(lines(one.where.path), one.where, name)
            if place and one.by not in chain:
                yield Edit(place, name, chain[-1]), one


def _at(lines: Sequence[str], where: Where, name: str) -> Where | None:
    """Where a name really stands: at its place, or later in the same line."""
    if where.line > len(lines):
        return None
    column = lines[where.line - 1].find(name, where.column - 1)
    return None if column < 0 else Where(where.path, where.line, column + 1)
