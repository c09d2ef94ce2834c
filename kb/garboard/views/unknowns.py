"""What nobody knows yet, by system, and who could find it out."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from garboard.book import Book
from garboard.records.standing import has_left
from garboard.views.draft import Draft
from garboard.views.inline import cell, person, shown
from garboard.views.page import Cell, Column, Heading, Link, Paragraph, Plate, Row, Run, Table

__all__ = ["unknowns"]

ANYBODY = "anybody who stands there: look, and write it down"
NOBODY = "nobody is named"
VESSEL = ""


@dataclass(frozen=True, slots=True)
class Unknown:
    """One thing that is not known."""

    system: str
    """Its code; empty for the whole vessel."""
    sort: str
    what: Cell
    where: Cell
    who: str
    """By role: who could find it out."""


def unknowns(draft: Draft) -> None:
    """Fill the register: a table a system, with how many things are not known in each."""
    book = draft.book
    found: dict[str, list[Unknown]] = defaultdict(list)
    for one in (*_gaps(book), *_assumed(book), *_not_computed(book), *_not_recorded(book)):
        found[one.system if one.system in book.systems else VESSEL].append(one)
    for code in (*book.systems, VESSEL):
        title = book.systems[code].title if code else "The whole vessel"
        own = found[code]
        draft.add(Heading(f"{title}: {len(own)}"))
        if own:
            draft.add(_table(own))
        else:
            draft.add(
                Paragraph(("Nothing is entered as unknown. That does not mean that all is known.",))
            )


def _table(found: list[Unknown]) -> Table:
    rows = tuple(Row((one.what, (one.sort,), one.where, (one.who,))) for one in found)
    titles = ("what is not known", "sort", "stands in", "who could find out")
    return Table("", tuple(Column(title) for title in titles), rows)


def _role(book: Book, key: str | None) -> str:
    return person(book, key) if key else NOBODY


def _gaps(book: Book) -> Iterator[Unknown]:
    sort = "known to be missing"
    for code, system in book.systems.items():
        for gap in system.gaps:
            yield Unknown(code, sort, cell(book, gap), (system.title,), NOBODY)
    for record in book.records.values():
        if not has_left(record):
            for gap in record.gaps:
                where: Cell = (Link(str(record.id), str(record.id)), f" {record.title}")
                yield Unknown(
                    record.system, sort, cell(book, gap), where, _role(book, record.author)
                )
    for page in book.content.pages:
        for gap in page.gaps:
            who = _role(book, page.author)
            yield Unknown(page.system, sort, cell(book, gap), (page.title,), who)


def _owner(book: Book, address: str) -> tuple[str, Cell, str]:
    """System, place and author of whatever a value belongs to."""
    name = address.partition(".")[0]
    if name in book.components:
        part = book.components[name]
        return part.system, (Plate(name), f" {part.name or part.kind}"), NOBODY
    sheet = book.network.sheets.get(name)
    record = book.records.get(sheet.owner) if sheet else None
    if record is None:
        return VESSEL, (address,), NOBODY
    where: Cell = (Link(str(record.id), str(record.id)), f" {record.title}")
    return record.system, where, _role(book, record.author)


def _assumed(book: Book) -> Iterator[Unknown]:
    for value in book.values.values():
        if value.assumed:
            code, where, who = _owner(book, value.address)
            yield Unknown(
                code, "assumed", (shown(book, value.address), f" {value.label}"), where, who
            )


def _not_computed(book: Book) -> Iterator[Unknown]:
    for value in book.values.values():
        if value.si is None:
            code, where, who = _owner(book, value.address)
            why = value.fault.text if value.fault else "no reason given"
            yield Unknown(code, "not computed", (f"{value.address}: {why}",), where, who)


def _not_recorded(book: Book) -> Iterator[Unknown]:
    """Parts without a place or a photograph: one line a system, with every tag."""
    shown_on = {str(one.tag) for record in book.records.values() for one in record.media if one.tag}
    for code, system in book.systems.items():
        parts = {tag: part for tag, part in book.components.items() if part.system == code}
        lost = [tag for tag, part in parts.items() if not part.place]
        unseen = [tag for tag, part in parts.items() if not part.photo and tag not in shown_on]
        for what, tags in (("place", lost), ("photograph", unseen)):
            if tags:
                words = tuple(_shorter(what, tags, tuple(parts)))
                yield Unknown(code, "not recorded", words, (system.title,), ANYBODY)


def _shorter(what: str, lost: Sequence[str], parts: Sequence[str]) -> Iterator[Run]:
    """Which parts lack something; where most do, which few have it."""
    known = [tag for tag in parts if tag not in set(lost)]
    yield f"{what} of {len(lost)} of {len(parts)} parts"
    if len(known) < len(lost):
        yield ", all but" if known else ""
    else:
        yield ":"
    for tag in known if len(known) < len(lost) else lost:
        yield " "
        yield Plate(tag)
