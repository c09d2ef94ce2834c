"""The fields of any record as blocks: labels and lines, lists, tables.

The type of a field decides how it is drawn, so that a new kind of record has a page by itself.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import Field, fields, is_dataclass
from functools import cache
from typing import Any, get_args, get_type_hints

from garboard.book import Book
from garboard.records.base import Person, Record
from garboard.records.hazard import Gravity, IfIgnored, Likelihood
from garboard.records.inspection import Point
from garboard.views.inline import cell, person
from garboard.views.page import Block, Bullets, Cell, Column, Facts, Heading, Row, Table

__all__ = ["field_blocks", "label_of", "line_of", "table_of"]

ENVELOPE = frozenset(item.name for item in fields(Record))
SAID = {"did": "done by", "party": "released by"}
"""Fields whose names need another word to be read as a label."""
LONG = 3
"""A list of more lines than this is drawn as a list of its own."""


def label_of(name: str) -> str:
    """A field's name as words.

    >>> label_of("time_to_act"), label_of("where_"), label_of("did")
    ('time to act', 'where', 'done by')
    """
    return SAID.get(name, name.rstrip("_").replace("_", " "))


def _people_fields(kind: type) -> frozenset[str]:
    """Fields that name people, who are shown by their role."""
    return _people_of(kind)


@cache
def _people_of(kind: type) -> frozenset[str]:
    hints = get_type_hints(kind)
    return frozenset(name for name, hint in hints.items() if Person in _flat(hint))


def _flat(hint: Any) -> Iterator[Any]:  # noqa: ANN401 - a type hint
    yield hint
    for inner in get_args(hint):
        yield from _flat(inner)


def field_blocks(
    book: Book, record: Record, leave_out: frozenset[str] = frozenset()
) -> Iterator[Block]:
    """The fields of a record that are its kind's own, in the order of the kind.

    Args:
        book: Where values and roles are looked up.
        record: What is shown.
        leave_out: Fields that the page shows in its own way.

    Yields:
        One Facts block for what fits a line, then a heading and a block for each list or table.
    """
    short: list[tuple[str, Cell]] = []
    later: list[Block] = []
    for item in fields(record):
        value = getattr(record, item.name)
        if item.name in ENVELOPE | leave_out or value is None or value in ((), {}):
            continue
        block = _wide(book, record, item, value)
        if block is None:
            short.append((label_of(item.name), line_of(book, record, item.name)))
        else:
            later += [Heading(label_of(item.name).capitalize()), block]
    if short:
        yield Facts(tuple(short))
    yield from later


def _wide(book: Book, record: Record, item: Field[Any], value: Any) -> Block | None:  # noqa: ANN401 - any field value
    if isinstance(value, tuple) and is_dataclass(value[0]):
        return table_of(book, label_of(item.name), value)
    if isinstance(value, Mapping):
        return _mapping(book, label_of(item.name), value)
    if isinstance(value, tuple) and (len(value) > LONG or any(len(str(one)) > 40 for one in value)):
        people = item.name in _people_fields(type(record))
        return Bullets(tuple(_one(book, one, people=people) for one in value))
    return None


def line_of(book: Book, thing: Any, name: str) -> Cell:  # noqa: ANN401 - a record or a part of one
    """One field of a record, or of a part of one, as a line."""
    return _one(book, getattr(thing, name), people=name in _people_fields(type(thing)))


def _one(book: Book, value: Any, *, people: bool) -> Cell:  # noqa: ANN401 - any field value
    if is_dataclass(value) and not isinstance(value, type):
        return _joined([_labelled(book, value, item.name) for item in fields(value)], ", ")
    if isinstance(value, tuple):
        return _joined([_one(book, one, people=people) for one in value], ", ")
    if isinstance(value, (Gravity, IfIgnored, Likelihood, Point)):
        return (value.words,)
    if people and value is not None:
        return (person(book, str(value)),)
    return cell(book, value)


def _labelled(book: Book, thing: Any, name: str) -> Cell:  # noqa: ANN401 - a part of a record
    line = line_of(book, thing, name)
    return (f"{label_of(name)} ", *line) if line else ()


def _joined(lines: Sequence[Cell], between: str) -> Cell:
    runs: list[Any] = []
    for line in lines:
        if line and runs:
            runs.append(between)
        runs.extend(line)
    return tuple(runs)


def table_of(book: Book, caption: str, rows: Sequence[Any]) -> Table:
    """A table of alike parts: a column for each field that any of them fills."""
    names = [item.name for item in fields(rows[0]) if any(getattr(row, item.name) for row in rows)]
    return Table(
        caption.capitalize(),
        tuple(Column(label_of(name)) for name in names),
        tuple(Row(tuple(line_of(book, row, name) for name in names)) for row in rows),
    )


def _mapping(book: Book, caption: str, value: Mapping[Any, Any]) -> Block:
    inner = next(iter(value.values()))
    if is_dataclass(inner):
        table = table_of(book, caption, list(value.values()))
        rows = tuple(
            Row((cell(book, key), *row.cells)) for key, row in zip(value, table.rows, strict=True)
        )
        return Table(table.caption, (Column("value"), *table.columns), rows)
    return Facts(tuple((str(key), cell(book, text)) for key, text in value.items()))
