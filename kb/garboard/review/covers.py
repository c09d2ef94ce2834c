"""What a signature on a record covers, as it stands now.

It covers the record's own words; every value that it quotes, sets or works out from; the answers of
its requirements; and the own words of what it rests on, one step and no further. What it merely
mentions is not covered: else one edit would ask for a review of the whole book.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from garboard.calc.network import Network
from garboard.calc.value import Requirement, Value
from garboard.names import ADDRESS, is_identifier
from garboard.reading.content import Content
from garboard.reading.fences import find_fences
from garboard.reading.written import Written
from garboard.records.base import Record, bare_id
from garboard.records.inspection import Test
from garboard.records.pages import WrittenPage
from garboard.records.relations import Names, Reference, find_references
from garboard.review.canonical import SHORT, digest_of, left_out, own_digest, whole_digest
from garboard.review.comments import without_comments

__all__ = ["RESTING", "Cover", "Covers", "Signed", "name_of"]

Signed = Record | WrittenPage

RESTING = frozenset(
    "basis procedure procedures isolation message criterion line departs_from method_source into".split()
)
"""Fields that name what a record rests on."""
IN_TEXT = re.compile(rf"(?<![A-Za-z0-9_./-]){ADDRESS.pattern}(?![A-Za-z0-9_-])")


@dataclass(frozen=True, slots=True)
class Cover:
    """What a signature of today would cover."""

    own: str
    """Digest of the record's own words."""
    values: Mapping[str, str] = field(default_factory=dict)
    """Address to the value as shown, a written one with its tolerance."""
    answers: Mapping[str, str] = field(default_factory=dict)
    """`block: n >= 6` to how it stands."""
    records: Mapping[str, str] = field(default_factory=dict)
    """Id, tag or source that it rests on, to the digest of its own words; a logged file by path."""
    whole: str = ""
    """The digest of the record's own words in full length; a line with a proof keeps it."""

    @property
    def saw(self) -> dict[str, str]:
        """All but its own words, as a signature keeps it."""
        return {**self.values, **self.answers, **self.records}


class Covers:
    """Works out what signatures cover; each digest once."""

    def __init__(self, content: Content, network: Network) -> None:
        self.content = content
        self.network = network
        self.digests: dict[str, str] = {}
        self.owners = {fence.name: fence.owner for fence in content.fences}
        self.blocks: dict[str, list[str]] = {}
        for name, owner in self.owners.items():
            self.blocks.setdefault(owner, []).append(name)
        self.required: dict[str, list[Requirement]] = {}
        for one in network.requirements:
            self.required.setdefault(one.block, []).append(one)
        self.set_by: dict[str, list[Value]] = {}
        for address, value in network.values.items():
            self.set_by.setdefault(address.partition(".")[0], []).append(value)
        self.texts: dict[str, list[Written]] = {}
        for written in content.texts:
            self.texts.setdefault(written.owner, []).append(written)

    def of(self, thing: Signed) -> Cover:
        """What a signature on a record or written page would cover now."""
        key = name_of(thing)
        left = left_out(type(thing))  # type: ignore[arg-type]  # a class is hashable
        named = [one for one in find_references(thing) if _top(one.path) not in left]
        whole = whole_digest(thing)
        return Cover(
            whole[:SHORT],
            {one: as_seen(self.value(one)) for one in self.addresses(key, left, named)},
            dict(self.answers(key)),
            {
                **{name: self.digest(name) for name in self.resting(key, named)},
                **self.logged(thing),
            },
            whole,
        )

    def addresses(self, key: str, left: frozenset[str], named: list[Reference]) -> list[str]:
        """The values that it quotes, sets or works out from, in order of address."""
        found: set[str] = set()
        for written in self.texts.get(key, ()):
            if "." in written.text and _top(written.field) not in left:
                found.update(link.address for link in written.links)
                text = written.text if written.field else _prose(written.text)
                found.update(match[0] for match in IN_TEXT.finditer(text))
        found.update(one.text for one in named if one.names is Names.ADDRESS)
        found.update(self.in_fences(key))
        return sorted(found & self.network.values.keys())

    def value(self, address: str) -> Value:
        """A value; for a property that is drawn from elsewhere, the one that it is drawn from."""
        value, seen = self.network.values[address], {address}
        while not value.given and value.address.partition(".")[0] not in self.owners:
            behind = next((one for one in value.uses if one in self.network.values), "")
            if not behind or behind in seen:
                break
            seen.add(behind)
            value = self.network.values[behind]
        return value

    def in_fences(self, key: str) -> Iterator[str]:
        """The values that its fences set, and those from elsewhere that they use."""
        for block in self.blocks.get(key, ()):
            for required in self.required.get(block, ()):
                yield from required.uses
            for value in self.set_by.get(block, ()):
                yield value.address
                yield from value.uses

    def answers(self, key: str) -> Iterator[tuple[str, str]]:
        """How its requirements stand."""
        for block in self.blocks.get(key, ()):
            for required in self.required.get(block, ()):
                yield f"{block}: {required.text}", str(required.verdict)

    def resting(self, key: str, named: list[Reference]) -> list[str]:
        """What it rests on: records, parts and sources that are declared, each once."""
        found: dict[str, None] = {}
        for one in named:
            last = one.path.rpartition(".")[2].partition("[")[0]
            if one.names is not Names.ADDRESS and last in RESTING:
                found[bare_id(one.text)] = None
        for block in self.blocks.get(key, ()):
            for line in (*self.required.get(block, ()), *self.set_by.get(block, ())):
                found.update(dict.fromkeys(bare_id(one.source) for one in line.sources))
        found.pop(key, None)
        return sorted(name for name in found if self.thing(name) is not None)

    def logged(self, thing: Signed) -> dict[str, str]:
        """The readings of a test that stand in a file of their own, by its path."""
        path = thing.log.file if isinstance(thing, Test) and thing.log else ""
        text = self.content.logs.get(path)
        return {} if text is None else {path: digest_of("\n".join(text.split()))}

    def digest(self, name: str) -> str:
        """The digest of a record, part or source by name; each is worked out once."""
        if name not in self.digests:
            self.digests[name] = own_digest(self.thing(name))
        return self.digests[name]

    def thing(self, name: str) -> object | None:
        """What an id, tag or source stands for."""
        if is_identifier(name):
            return self.content.records.get(name) or self.content.components.get(name)
        return self.content.sources.get(name)


def as_seen(value: Value) -> str:
    """A value as a signature keeps it: as shown, and of a written one how sure it is."""
    if value.given and value.tolerance and value.si is not None:
        return f"{value.text} +/- {value.tolerance}"
    return value.text


def _top(path: str) -> str:
    """The key of the file that a path stands under: of `done[0].as_found` it is `done`."""
    return path.partition(".")[0].partition("[")[0]


def _prose(text: str) -> str:
    """Markdown without its fences, whose lines are weighed by themselves, and its comments."""
    lines = text.split("\n")
    for first, last in find_fences(text, "").spans:
        lines[first : last + 1] = [""] * (last + 1 - first)
    return without_comments("\n".join(lines))


def name_of(thing: Signed) -> str:
    """A record by its id, a page or unfiled record by its path."""
    if isinstance(thing, Record) and thing.id:
        return thing.id
    return thing.where.path
