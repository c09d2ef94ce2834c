"""What is declared in a handbook, and what is said of a name that is not."""

import re
from collections.abc import Collection
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.value import ASSUMED
from garboard.names import is_identifier, is_record_id, nearest
from garboard.records.base import bare_id
from garboard.records.relations import Names

__all__ = ["Register", "register_of"]

SOURCE_NEAR = 0.75
"""How like a key of sources.yml a name must be to be taken for it: another book is no slip."""


@dataclass(frozen=True, slots=True)
class Register:
    """Every name that means something, by what it means."""

    book: Book
    records: Collection[str]
    tags: Collection[str]

    def fault(self, names: Names, name: str, by: str = "") -> tuple[str, str] | None:
        """What is wrong with a name, and the cure; None where it is declared.

        Args:
            names: What sort of thing it should name.
            name: As written.
            by: What names it, which is never offered as the cure.
        """
        if names is Names.PERSON:
            return missing(name, self.book.content.people, "is not in people.yml")
        if names is Names.ADDRESS:
            return self.of_address(name)
        name = bare_id(name)
        if name in self.records or name in self.tags or name in self.book.content.retired:
            return None
        if names is Names.SOURCE and not is_identifier(name):
            return self.of_source(name)
        if names is Names.TAG or not is_record_id(name):
            return _said(name, "is in no component list", _near(name, self.tags, by))
        return _said(name, "is no record of this handbook", _near(name, self.records, by))

    def of_source(self, name: str, clause: str = "") -> tuple[str, str] | None:
        """What is wrong with a source, by its key and what stands behind it; no other figures are offered."""
        if is_identifier(bare_id(name)):
            return self.fault(Names.SOURCE, name)
        known = (*self.book.content.sources, ASSUMED)
        if name in known:
            return None
        figures = re.sub(r"\D", "", name)
        alike = (one for one in known if re.sub(r"\D", "", one) == figures)
        near = nearest(name, alike, SOURCE_NEAR)
        if clause and not near:
            name = f"[{name} {clause}] begins with `{name}`, which"
        return _said(name, "is not in sources.yml", near)

    def of_address(self, address: str) -> tuple[str, str] | None:
        """What is wrong with the address of a value."""
        owner, _, name = address.partition(".")
        part = self.book.components.get(owner)
        if address in self.book.values or self.unread(owner, name) or getattr(part, name, None):
            return None
        blocks = (*self.book.network.sheets, "site")
        if owner in self.tags or owner in blocks or owner in self.book.content.logged:
            known = [one for one in self.book.values if one.startswith(f"{owner}.")]
            return missing(address, known, f"is no value: {owner} has no {name}")
        if is_record_id(owner):
            return missing(address, self.book.values, f"is no value: {owner} is a record")
        if is_identifier(owner):
            return _said(owner, "is in no component list", _near(owner, self.tags, ""))
        return missing(owner, blocks, "is the name of no calculation")

    def unread(self, owner: str, name: str) -> bool:
        """Whether it was written and could not be read, which has its own message."""
        part, sheet = self.book.components.get(owner), self.book.network.sheets.get(owner)
        if owner == "site":
            return f"site.{name}" in self.book.content.vessel.unread
        return (
            (part is not None and name in part.unread)
            or (sheet is not None and bool(sheet.faults))
            or self.in_spoilt_log(owner)
        )

    def in_spoilt_log(self, owner: str) -> bool:
        """Whether a test has a log of which something could not be read as written."""
        log = self.book.content.logged.get(owner)
        return log is not None and bool(log.lost)


def register_of(book: Book) -> Register:
    """The register of a book; files that cannot be read count with the id they were given."""
    declared = {item.name for item in book.content.declared}
    declared |= {stub.id for stub in book.content.stubs}
    headers = {
        header.tag
        for system in book.systems.values()
        for header in (system.headers or {}).values()
        if header.tag
    }
    tags = {*book.components, *headers, *(name for name in declared if not is_record_id(name))}
    return Register(book, {*book.records, *filter(is_record_id, declared)}, tags)


def missing(name: str, known: Collection[str], what: str) -> tuple[str, str] | None:
    """What is said of a name that is not among the known ones; None where it is."""
    return None if name in known else _said(name, what, nearest(name, known))


def _near(name: str, known: Collection[str], by: str) -> str | None:
    """An id or tag that differs in one sign, or in two that changed places, and of records one of its kind."""
    alike = [one for one in known if one != by and _slip(one, name) and _one_kind(one, name)]
    return min(alike, key=lambda one: (one[:6] != name[:6], one), default=None)


def _one_kind(one: str, other: str) -> bool:
    """Whether both are of one kind of record; the letters of a part are slips like any other."""
    apart = one[3:5] != other[3:5] and sorted(one[3:5]) != sorted(other[3:5])
    return not (apart and is_record_id(one) and is_record_id(other))


def _slip(one: str, other: str) -> bool:
    apart = [place for place, (a, b) in enumerate(zip(one, other, strict=False)) if a != b]
    swapped = len(apart) == 2 and [one[n] for n in apart] == [other[n] for n in reversed(apart)]
    return len(one) == len(other) and (len(apart) == 1 or swapped)


def _said(name: str, what: str, near: str | None) -> tuple[str, str]:
    cure = f"write {near}, or add it" if near else "add it, or take the name out"
    return f"{name} {what}", cure
