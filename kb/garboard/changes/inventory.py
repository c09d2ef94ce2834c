"""Records, parts, systems, written pages, sources and spares that are new, gone or not as they were."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import fields
from typing import Any

from garboard.book import Book
from garboard.changes.comparison import Entry, Sort
from garboard.changes.wording import role_of
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.records.signoff import SignOff
from garboard.records.standing import kind_name, state_of
from garboard.records.system import System
from garboard.review.canonical import said
from garboard.review.covers import name_of

__all__ = ["entries_moved", "fields_moved"]

APART = ("state", "revision", "signed")
"""Fields that an entry tells by themselves."""


def entries_moved(old: Book, new: Book) -> list[Entry]:
    """Everything that is not as it was, records first, each sort in order of name."""
    return [*_records(old, new), *_others(old, new)]


def _entry(book: Book, before: Record | None, after: Record | None) -> Entry | None:
    """What became of one record; None where nothing differs.

    Args:
        book: The newer book, for the roles of those who signed.
        before: As it was, if it was there.
        after: As it is, if it is there.
    """
    known = after or before
    if known is None:
        return None
    signed = _signed(book, before.signed if before else (), after.signed if after else ())
    differing = fields_moved(before, after) if before and after else ()
    states = state_of(before) if before else "", state_of(after) if after else ""
    issues = before.revision if before else 0, after.revision if after else 0
    if (
        before
        and after
        and not (differing or signed or states[0] != states[1])
        and issues[0] == issues[1]
    ):
        return None
    return Entry(
        name=str(known.id or known.where.path),
        kind=kind_name(known),
        title=known.title,
        sort=_sort(before, after),
        weight=str(known.weight),
        state_before=states[0],
        state_after=states[1],
        revision_before=issues[0],
        revision_after=issues[1],
        fields=differing,
        signed=signed,
        replaced_by=_replaced_by(book, known) if after else "",
    )


def fields_moved(before: object, after: object) -> tuple[str, ...]:
    """The fields of a record, part or system that say something else, by name.

    Where the whole text of a record differs, `text`; where runs of pipe do, `connections`.
    """
    found = []
    for item in fields(before):  # type: ignore[arg-type]  # a dataclass of records
        one, other = getattr(before, item.name), getattr(after, item.name, None)
        if item.name in APART or one == other:
            continue
        name = item.name.rstrip("_").replace("_", " ")
        if item.name == "text":
            if " ".join(one.split()) != " ".join(str(other).split()):
                found.append(name)
        elif item.name == "runs":
            if [run.written for run in one] != [run.written for run in other or ()]:
                found.append("connections")
        elif not item.metadata.get("beside") and _plain(one) != _plain(other):
            found.append(name)
    return tuple(found)


def _plain(value: Any) -> Any:  # noqa: ANN401 - what a field holds
    return None if value is None else said(value)


def _sort(before: object, after: object) -> Sort:
    if before is None:
        return Sort.NEW
    return Sort.GONE if after is None else Sort.CHANGED


def _signed(book: Book, before: Iterable[SignOff], after: Iterable[SignOff]) -> tuple[str, ...]:
    known = tuple(before)
    return tuple(
        f"{line.capacity} ({role_of(book, line.by)}) {line.on.isoformat()}"
        for line in after
        if line not in known
    )


def _replaced_by(book: Book, record: Record) -> str:
    """What supersedes a record in this book."""
    found = (one.id for one in book.records.values() if one.supersedes == record.id)
    return str(next(found, "")) if record.id else ""


def _records(old: Book, new: Book) -> Iterator[Entry]:
    for key in sorted({*old.records, *new.records}):
        found = _entry(new, old.records.get(key), new.records.get(key))
        if found:
            yield found


def _others(old: Book, new: Book) -> Iterator[Entry]:
    pages = [{name_of(one): one for one in book.content.pages} for book in (old, new)]
    rows: tuple[tuple[str, Mapping[str, Any], Mapping[str, Any], Callable[[Any], str]], ...] = (
        ("part", old.components, new.components, _name_of_part),
        ("system", old.systems, new.systems, lambda one: str(one.title)),
        ("written page", pages[0], pages[1], lambda one: str(one.title or one.where.path)),
        ("source", old.content.sources, new.content.sources, lambda one: str(one.title)),
        ("spare", old.content.spares, new.content.spares, lambda one: str(one.name)),
    )
    for kind, before, after, title in rows:
        for name in sorted({*before, *after}):
            one, other = before.get(name), after.get(name)
            differing = fields_moved(one, other) if one and other else ()
            states = _status(one), _status(other)
            if one and other and not differing and states[0] == states[1]:
                continue
            yield Entry(
                name=name,
                kind=kind,
                title=title(other or one),
                sort=_sort(one, other),
                state_before=states[0],
                state_after=states[1],
                fields=tuple(each for each in differing if each != "status"),
            )


def _name_of_part(part: Component) -> str:
    return part.name or part.kind


def _status(thing: object) -> str:
    return str(thing.status) if isinstance(thing, System) else ""
