"""The editions: which were issued, until when each holds and why, what stood against it, who has it.

A page about an edition is made from the edition itself, so it cannot be in that edition's own list
of pages: a list cannot hold the digest of the page that it stands on.
"""

from collections import Counter
from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.errors import Severity
from garboard.records.edition import Edition, Fired
from garboard.records.notice_message import standing
from garboard.records.vessel import Holder
from garboard.views.draft import Draft
from garboard.views.inline import cell, day, days_in_words
from garboard.views.manual import honest_limits
from garboard.views.page import (
    Bullets,
    Cell,
    Column,
    Facts,
    Fold,
    Heading,
    Link,
    Paragraph,
    Row,
    Strong,
    Table,
)
from garboard.views.roles import in_roles

__all__ = ["edition_drafts", "edition_key", "is_about_editions"]

ALL = "editions"
SHORT = 12
"""Signs of a digest that a page shows; the file has all of them."""
TOLD = (Severity.STOP, Severity.HOLD, Severity.WARN)


def edition_key(number: int) -> str:
    """The key of the page about an edition."""
    return f"{ALL}/{number}"


def is_about_editions(key: str) -> bool:
    """Whether a page is about editions, and so in no list of pages of one."""
    return key == ALL or key.startswith(f"{ALL}/")


def edition_drafts(book: Book, issued: Edition | None = None) -> Iterator[Draft]:
    """The page of all editions, and of each its page and its list of pages.

    Args:
        book: What was read; of an edition that was laid out, with those before it.
        issued: That edition.
    """
    known = (*book.content.editions.issued, *((issued,) if issued else ()))
    yield _all(book, known)
    for edition in known:
        yield _one(book, edition)
        yield _pages(book, edition)


def _all(book: Book, known: tuple[Edition, ...]) -> Draft:
    draft = Draft(book, ALL, "Editions", "editions")
    if book.edition:
        since = f"since edition {book.edition.number}"
        draft.add(Paragraph((Link(f"{ALL}/since-{book.edition.number}", f"What changed {since}"),)))
    rows = tuple(
        Row(
            (
                (Link(edition_key(one.number), f"Edition {one.number}"),),
                (day(one.issued),),
                (day(one.valid_until),),
                cell(book, days_in_words(one.ends)),
                (_role(one, one.by),),
                _counted(one),
                (one.seal[:SHORT],),
            ),
            f"edition-{one.number}",
        )
        for one in reversed(known)
    )
    titles = ("edition", "issued", "valid until", "because", "issued by", "holds", "seal")
    columns = tuple(Column(title, strong=title == "valid until") for title in titles)
    draft.add(
        Table("Newest first", columns, rows, "none was issued yet"),
        Paragraph(
            (
                "What holders were told since: ",
                Link("registers/notices", "Notices to holders"),
                f", {len(standing(book.content.vessel))} of which stand.",
            )
        ),
        Paragraph((honest_limits(book),)),
    )
    return draft


def _counted(edition: Edition) -> Cell:
    unreviewed = sum(not one.trusted for one in edition.pages)
    return (
        f"{len(edition.pages)} pages, {unreviewed} of them not fully reviewed;"
        f" {len(edition.records)} records, {len(edition.values)} numbers",
    )


def _role(edition: Edition, key: str) -> str:
    """A role of those days; the key itself is never printed."""
    return edition.people.get(key, "somebody not in the list of people")


def _one(book: Book, edition: Edition) -> Draft:
    draft = Draft(book, edition_key(edition.number), f"Edition {edition.number}", "edition")
    facts: list[tuple[str, Cell]] = [
        ("issued", (f"{day(edition.issued)}, by the {_role(edition, edition.by)}",)),
        ("valid until", (Strong(day(edition.valid_until)),)),
        ("because", cell(book, edition.ends)),
        ("holds", _counted(edition)),
        ("seal", (edition.seal,)),
        ("proof", ("made with the issuer's key" if edition.proof else "none: no key was used",)),
        ("edition before it", (edition.previous or "none",)),
        (
            "pages",
            (
                Link(
                    f"{edition_key(edition.number)}-pages", f"{len(edition.pages)} effective pages"
                ),
            ),
        ),
    ]
    draft.add(Facts(tuple(facts)), Paragraph((honest_limits(book),)))
    draft.add(Heading("Holders and their copies"), _holders(book, edition))
    draft.add(Heading("Cards that hang"), _cards(book, edition))
    draft.add(Heading("Notices since"), _notices(book, edition))
    draft.add(Heading("What stood against it"), *_against(book, edition))
    draft.add(Heading("What is declared to be missing"), _gaps(book, edition))
    return draft


def _gaps(book: Book, edition: Edition) -> Paragraph | Fold:
    """What its makers knew not to be in it."""
    if not edition.gaps:
        return Paragraph(("None entered.",))
    listed = Bullets(tuple(cell(book, gap) for gap in edition.gaps))
    return Fold(f"{len(edition.gaps)} declared gaps", (listed,))


def _holders(book: Book, edition: Edition) -> Table:
    """Who was to get a copy, and what they have and have acknowledged by today."""
    today = {one.copy: one for one in book.content.vessel.holders}
    rows = tuple(
        Row(
            (
                (one.copy,),
                (edition.people.get(one.where, one.where),),
                (one.medium or "not recorded",),
                *_held(today.get(one.copy)),
            )
        )
        for one in edition.holders
    )
    titles = ("copy", "where", "medium", "given", "has edition", "last acknowledged")
    return Table("Controlled copies", tuple(Column(title) for title in titles), rows)


def _held(holder: Holder | None) -> tuple[Cell, ...]:
    if holder is None:
        gone: Cell = ("no longer a holder",)
        return (gone, gone, gone)
    return (
        (day(holder.given),),
        (holder.edition or "not recorded",),
        (holder.acknowledged or "nothing",),
    )


def _cards(book: Book, edition: Edition) -> Table:
    rows = tuple(
        Row(((one.card,), cell(book, one.of), (one.place,), (one.digest[:SHORT],)))
        for one in edition.cards
    )
    columns = tuple(Column(title) for title in ("card", "of", "place", "digest of what it is of"))
    return Table("Cards", columns, rows, "none hung")


def _notices(book: Book, edition: Edition) -> Table:
    rows = tuple(
        Row(
            (
                (Link("registers/notices", one.number),),
                (day(one.on),),
                cell(book, one.says),
                (f"withdrawn {day(one.withdrawn)}" if one.withdrawn else "stands",),
            )
        )
        for one in book.content.vessel.notices
        if one.on >= edition.issued
    )
    columns = tuple(Column(title) for title in ("notice", "on", "says", "now"))
    return Table("Notices from its day on", columns, rows, "none")


def _against(book: Book, edition: Edition) -> Iterator[Paragraph | Fold]:
    """What the rules said, by severity, folded, and since which edition each has been standing."""
    counts = Counter(one.severity for one in edition.fired)
    said = ", ".join(f"{counts[severity]} {severity}" for severity in Severity)
    yield Paragraph((f"{said}. What is only a note stands in the file of the edition.",))
    for severity in TOLD:
        found = [one for one in edition.fired if one.severity is severity]
        if found:
            yield Fold(f"{severity}: {len(found)}", (_fired(book, edition, found),))


def _fired(book: Book, edition: Edition, found: Iterable[Fired]) -> Table:
    rows = tuple(
        Row(
            (
                cell(book, in_roles(one.text, edition.people)),
                (one.code,),
                (f"edition {one.since}, {one.on}",),
            )
        )
        for one in found
    )
    columns = tuple(Column(title) for title in ("what is", "rule", "since"))
    return Table("", columns, rows)


def _pages(book: Book, edition: Edition) -> Draft:
    """The list of effective pages, with the digest of what each says."""
    key = f"{edition_key(edition.number)}-pages"
    draft = Draft(book, key, f"Effective pages of edition {edition.number}", "list of pages")
    rows = tuple(
        Row(((f"{one.path}: {one.title}",), (_state(one.review),), (one.digest[:SHORT],)))
        for one in edition.pages
    )
    columns = tuple(Column(title) for title in ("page", "review", "digest"))
    draft.add(
        Paragraph(
            (
                "A page that is not in this list, or says something else than when it was issued, is no"
                " page of this edition. The digests are of what a page says, however it is drawn.",
            )
        ),
        Fold(f"{len(rows)} pages", (Table("Effective pages", columns, rows),)),
    )
    return draft


def _state(words: str) -> str:
    return words.partition(".")[0]
