"""Who names what, and where: every id, tag, address and source that anything written mentions."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from garboard.errors import Where
from garboard.reading.content import Content
from garboard.records.relations import Names, find_references
from garboard.records.system import Joins

__all__ = ["Mentioned", "mentions_in"]


@dataclass(frozen=True, slots=True)
class Mentioned:
    """One name, found in one place."""

    by: str
    """What names it: a record id, a tag, a system code or the path of a page."""
    to: str
    names: Names
    where: Where
    field: str
    """Field path; `text` for the Markdown, `calc` for a fence."""


def mentions_in(content: Content) -> Iterator[Mentioned]:
    """Every name in every record, part, list and text, in the order of the files."""
    for record in (*content.records.values(), *content.doubles, *content.unfiled):
        yield from _in_fields(record, record.id or record.where.path, record.place)
    for tag, part in content.components.items():
        yield from _in_fields(part, tag, part.at_place)
    yield from _in_fields(content.vessel, "handbook.yml", content.vessel.place)
    for table in (content.people, content.sources, content.spares, content.retired):
        for key, entry in table.items():
            yield from _in_fields(entry, key, _places_of(entry.places, entry.where))
    for code, system in content.systems.items():
        yield from _in_fields(system, code, system.place)
        for end in (end for run in system.runs for end in run.ends):
            if end.joins in (Joins.PART, Joins.UNKNOWN):
                yield Mentioned(code, end.name, Names.TAG, end.where, "connections")
    yield from _in_texts(content)


def _in_texts(content: Content) -> Iterator[Mentioned]:
    for written in content.texts:
        by, field = written.owner, written.field or "text"
        for link in written.links:
            yield Mentioned(by, link.address, Names.ADDRESS, link.where, field)
        for name in written.names:
            yield Mentioned(by, name.name, Names.IDENTIFIER, name.where, field)


def _places_of(places: Mapping[str, Where], start: Where) -> Callable[[str], Where]:
    return lambda path: places.get(path, start)


def _in_fields(thing: object, by: str, place: Callable[[str], Where]) -> Iterator[Mentioned]:
    for found in find_references(thing):
        yield Mentioned(by, found.text, found.names, place(found.path), found.path)
