"""Freeze a handbook into an edition: what it says, how it stood, and until when it may be relied on."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

import msgspec

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.handbook import Handbook
from garboard.reading.edition_file import sealed
from garboard.reading.text_file import digest_of
from garboard.reading.whole_folder import Files
from garboard.records.base import Record, bare_id
from garboard.records.edition import (
    Edition,
    Fired,
    IssuedCard,
    IssuedHolder,
    IssuedPage,
    IssuedRecord,
    IssuedSystem,
    IssuedText,
    IssuedValue,
)
from garboard.records.pages import WrittenPage
from garboard.records.signoff import SignOff
from garboard.records.standing import kind_name, state_of
from garboard.records.system import System
from garboard.review.canonical import whole_digest
from garboard.review.covers import name_of
from garboard.review.kept import kept_words, signed_line
from garboard.views.editions import is_about_editions
from garboard.views.page import WORKING, Page, Review

__all__ = ["freeze", "page_digest"]


def freeze(handbook: Handbook, files: Files, by: str, valid_until: date, ends: str) -> Edition:
    """An edition of a handbook as it stands, sealed.

    Args:
        handbook: What was read, judged and laid out.
        files: Every file of the content.
        by: Who issues it: a key of people.yml.
        valid_until: The last day on which it may be relied on.
        ends: Why on that day.
    """
    book = handbook.book
    content, before = book.content, book.edition
    digests = {path: digest_of(text.encode("utf-8")) for path, text in files.texts.items()}
    known = {digest for one in content.editions.issued for digest in one.texts}
    number = before.number + 1 if before else 1
    return sealed(
        Edition(
            number=number,
            issued=book.today,
            by=by,
            valid_until=valid_until,
            ends=ends,
            previous=before.seal if before else "",
            vessel=content.vessel.vessel,
            defers_to=content.vessel.defers_to,
            systems={code: _system(book, one) for code, one in book.systems.items()},
            records={key: _record(one) for key, one in book.records.items()},
            written={one.where.path: _written(one) for one in content.pages},
            components={tag: whole_digest(part) for tag, part in book.components.items()},
            values={
                address: IssuedValue(text=one.text, label=one.label, given=one.given)
                for address, one in book.values.items()
            },
            answers={
                f"{one.block}: {one.text}": str(one.verdict) for one in book.network.requirements
            },
            pages=tuple(_page(one) for one in handbook.pages if not is_about_editions(one.key)),
            fired=tuple(_fired(one, number, book) for one in handbook.diagnostics),
            people={key: one.role for key, one in content.people.items()},
            holders=tuple(
                IssuedHolder(copy=one.copy, where=one.where, medium=one.medium or "")
                for one in content.vessel.holders
            ),
            cards=tuple(_cards(book)),
            gaps=tuple(_gaps(book)),
            files=digests | dict(files.photos),
            texts={
                digests[path]: tuple(text.split("\n"))
                for path, text in files.texts.items()
                if digests[path] not in known
            },
        )
    )


def _system(book: Book, system: System) -> IssuedSystem:
    status = str(book.status_of(system.code))
    return IssuedSystem(title=system.title, status=status, signed=_signed(system.signed))


def _written(page: WrittenPage) -> IssuedText:
    return IssuedText(page=str(page.page or ""), system=page.system, signed=_signed(page.signed))


def page_digest(page: Page) -> str:
    """The digest of what a page says, whichever edition it stands in.

    Returns:
        The SHA-256, 64 signs.
    """
    bare = replace(page, copy=WORKING, review=Review(page.review.words))
    return digest_of(msgspec.json.encode(bare, order="sorted"))


def _record(record: Record) -> IssuedRecord:
    return IssuedRecord(
        kind=kind_name(record),
        title=record.title,
        weight=str(record.weight),
        state=state_of(record),
        revision=record.revision,
        digest=whole_digest(record),
        path=record.where.path,
        signed=_signed(record.signed),
        kept=dict(kept_words(record)),
    )


def _signed(lines: Iterable[SignOff]) -> tuple[str, ...]:
    return tuple(signed_line(line) for line in lines)


def _page(page: Page) -> IssuedPage:
    return IssuedPage(
        key=page.key,
        path=page.path,
        title=page.title,
        review=page.review.words,
        trusted=page.review.trusted,
        digest=page_digest(page),
    )


def _fired(fault: Diagnostic, number: int, book: Book) -> Fired:
    """A fault, and since which edition it has been standing; as a note it stood for nothing."""
    earlier = min(
        (
            one
            for one in (book.edition.fired if book.edition else ())
            if (one.code, one.about) == (fault.code, fault.about)
            and (one.severity is Severity.NOTE) is (fault.severity is Severity.NOTE)
        ),
        key=lambda one: one.since,
        default=None,
    )
    return Fired(
        code=fault.code,
        severity=fault.severity,
        about=fault.about,
        where=str(fault.where),
        text=fault.text,
        since=earlier.since if earlier else number,
        on=earlier.on if earlier else book.today,
    )


def _cards(book: Book) -> list[IssuedCard]:
    """The cards that hang, with the digest of what each should say."""
    hanging = [one for one in book.content.vessel.cards if one.removed is None]
    return [
        IssuedCard(
            card=one.card,
            of=one.of,
            place=one.place,
            digest=whole_digest(book.records[bare_id(one.of)]),
        )
        for one in hanging
        if bare_id(one.of) in book.records
    ]


def _gaps(book: Book) -> list[str]:
    """What is declared to be missing, each with what it is missing of."""
    things: tuple[tuple[str, tuple[str, ...]], ...] = (
        *((name_of(one), one.gaps) for one in book.records.values()),
        *((one.title, one.gaps) for one in book.systems.values()),
        *((name_of(one), one.gaps) for one in book.content.pages),
    )
    return [f"{name}: {gap}" for name, gaps in things for gap in gaps]
