"""Names that stand for no record, tag or value: files, instruments, mounts, rounds, part numbers.

Each is looked up in its own list, and nearest names are sought there alone.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.errors import Where
from garboard.names import meant_tag
from garboard.records.base import Record
from garboard.records.inspection import Test
from garboard.records.pages import WrittenPage
from garboard.records.system import OUTSIDE, End, Joins, System

__all__ = ["NamedThing", "named_things"]


@dataclass(frozen=True, slots=True)
class NamedThing:
    """One such name, and where it should be found."""

    name: str
    known: Collection[str]
    what: str
    """What is said of it where it is not there: `is in no folder`."""
    where: Where
    by: str


def named_things(book: Book) -> Iterator[NamedThing]:
    """Every such name of a handbook."""
    yield from _pictures(book)
    yield from _signers(book)
    yield from _instruments(book)
    yield from _system_words(book)
    yield from _parts(book)


def _owners(book: Book) -> Iterator[tuple[Record | WrittenPage, str]]:
    """Records and pages, and what each is called."""
    for record in book.records.values():
        yield record, str(record.id)
    for page in book.content.pages:
        yield page, page.where.path


def _pictures(book: Book) -> Iterator[NamedThing]:
    photos, lost = book.content.photos, "is no picture in the content folder"
    for owner, by in _owners(book):
        for number, picture in enumerate(owner.media):
            where = owner.place(f"media[{number}].photo")
            yield NamedThing(picture.photo, photos, lost, where, by)
    for part in book.components.values():
        if part.photo:
            yield NamedThing(part.photo, photos, lost, part.at_place("photo"), part.tag)
    for source in book.content.sources.values():
        if source.photo:
            where = source.places.get("photo", source.where)
            yield NamedThing(source.photo, photos, lost, where, source.key)


def _signers(book: Book) -> Iterator[NamedThing]:
    for owner, by in _owners(book):
        for number, line in enumerate(owner.signed):
            where = owner.place(f"signed[{number}].by")
            yield NamedThing(line.by, book.content.people, "is not in people.yml", where, by)


def _instruments(book: Book) -> Iterator[NamedThing]:
    known, unknown = book.content.vessel.instruments or {}, "is no instrument in handbook.yml"
    for test in book.of_kind(Test):
        used = {
            f"readings[{number}].instrument": reading.instrument
            for number, reading in enumerate(test.readings)
        }
        if test.log:
            where, by = test.place("log.file"), str(test.id)
            lost = "is no CSV file in the content folder"
            yield NamedThing(test.log.file, book.content.logs, lost, where, by)
            for column, channel in test.log.channels.items():
                used[f"log.channels.{column}.instrument"] = channel.instrument
        for path, name in used.items():
            if name:
                yield NamedThing(name, known, unknown, test.place(path), str(test.id))


def _system_words(book: Book) -> Iterator[NamedThing]:
    rounds = [name for system in book.systems.values() for name in system.rounds or {}]
    for part in book.components.values():
        system = book.systems.get(part.system)
        mounts = (system.mounts if system else None) or {}
        if part.mount:
            where, said = part.at_place("mount"), "is none of the mounts of its system"
            yield NamedThing(part.mount, mounts, said, where, part.tag)
        if part.round:
            where, said = part.at_place("round"), "is no watch round of any system"
            yield NamedThing(part.round, rounds, said, where, part.tag)
    for code, system in book.systems.items():
        services = system.services or {}
        for run in system.runs:
            if run.service:
                said = "is none of the services of its system"
                yield NamedThing(run.service, services, said, run.where, code)
            for end in run.ends:
                if end.joins is Joins.UNKNOWN:
                    known = _joinable(book, system, end)
                    said = "is no component, header or place outside"
                    yield NamedThing(end.name, known, said, end.where, code)


def _parts(book: Book) -> Iterator[NamedThing]:
    """Part numbers that a part is put together with."""
    known, lost = book.content.spares, "is no part number in spares.yml"
    for part in book.components.values():
        for number, name in enumerate(part.renew):
            yield NamedThing(name, known, lost, part.at_place(f"renew[{number}]"), part.tag)
        for key, joint in (part.joints or {}).items():
            if joint.gasket:
                where = part.at_place(f"joints.{key}.gasket")
                yield NamedThing(joint.gasket, known, lost, where, part.tag)


def _joinable(book: Book, system: System, end: End) -> Collection[str]:
    """What an end of a run could name; the one tag alone where it is plainly that."""
    short = [tag.removeprefix(f"{system.code}-") for tag in book.components]
    meant = meant_tag(end.name)
    if meant in short or meant in book.components:
        return (meant,)
    return (*short, *(system.headers or {}), *OUTSIDE)
