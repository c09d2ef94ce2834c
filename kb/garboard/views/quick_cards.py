"""Quick cards: one side of A5 for one task or one alarm, or in words why there is none.

A card is refused while a STOP or HOLD stands against its record or a safety message on it, while the
record is not reviewed whole, and where it does not fit. Whether it is printed at all is for the copy to
say: from a working copy none is.

The QR code of a card is plain text, not an address: at sea there is no host, and a code that led into a
network would open nothing. It is `<id> r<revision> <digest> <page>`, such as
`SA-PR-009 r1 563c4f9f17744d1a id/SA-PR-009.html`; Find takes it as it is read or typed, and the page is
the path inside the handbook of any copy.
"""

from collections.abc import Iterable, Iterator, Mapping

from garboard.book import Book
from garboard.changes.hanging import record_of
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Record, bare_id
from garboard.records.card_room import fitted, over_one_side
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.pages import PageKind
from garboard.records.quick_card import Carded, CardPlan, CardRow, plan_of
from garboard.records.standing import has_left, kind_name
from garboard.records.vessel import Card
from garboard.review.canonical import own_digest
from garboard.review.page_state import TOLD_BELOW, page_state
from garboard.views.card_block import CardLine, QuickCard
from garboard.views.card_register import register_draft
from garboard.views.draft import Draft
from garboard.views.inline import cell, title_of
from garboard.views.messages import message_of, worst_first
from garboard.views.page import Cell, Link, Paragraph, Plate, Run, Strong
from garboard.views.shows import parts_of

__all__ = ["CARDS", "Standing", "card_drafts", "faults_of"]

CARDS = "cards/"
GRAVE = (Severity.STOP, Severity.HOLD)
Standing = Mapping[str, tuple[Diagnostic, ...]]
"""What the rules found, by what it is about and by file."""


def card_drafts(book: Book, standing: Standing, findings: list[Finding]) -> Iterator[Draft]:
    """A page for each card that hangs or is to hang, and the register of all.

    Args:
        book: The book.
        standing: What stands against each record.
        findings: Those that are still open.
    """
    refused: dict[str, tuple[str, ...]] = {}
    for card in book.content.vessel.cards:
        if card.removed is None and card.card not in refused:
            draft, why = _page(book, card, standing, findings)
            refused[card.card] = why
            yield draft
    yield register_draft(book, refused)


def faults_of(book: Book, keys: Iterable[str], standing: Standing) -> Iterator[Diagnostic]:
    """What stands against records, by their ids and their files."""
    for key in keys:
        yield from standing.get(key, ())
        record = book.records.get(key)
        if record:
            yield from standing.get(record.where.path, ())


def _page(
    book: Book, card: Card, standing: Standing, findings: list[Finding]
) -> tuple[Draft, tuple[str, ...]]:
    record = record_of(book, card)
    known = book.records.get(bare_id(card.of))
    title = known.title if known else card.of
    system = known.system if known else ""
    draft = Draft(book, f"{CARDS}{card.card}", title, str(PageKind.QUICK_CARD), system=system)
    draft.ident = card.card
    if record is None:
        why: tuple[str, ...] = (_no_source(card, known),)
        draft.add(QuickCard(card.card, card.place, refused=why))
        return draft, why
    plan = plan_of(card, record, book.content.vessel.cards)
    found = (book.records.get(one) for one in plan.messages)
    hazards = worst_first([one for one in found if isinstance(one, Hazard)])
    plan = fitted(plan, book.components, hazards)
    draft.messages = tuple(message_of(book, one) for one in hazards)
    draft.follows = (str(record.id), *plan.messages)
    draft.calculated = True
    why = tuple(
        dict.fromkeys(
            (
                *_not_in_force(record),
                *_held(draft, standing, findings),
                *over_one_side(plan, book.components, hazards),
            )
        )
    )
    if why:
        draft.add(QuickCard(card.card, card.place, title, refused=why))
    else:
        draft.add(_card(book, card, record, plan))
    draft.add(
        Paragraph(
            (
                "The page it is made from, which governs: ",
                Link(str(record.id), f"{record.id} {record.title}"),
                ". All cards: ",
                Link("registers/cards", "Quick cards"),
                ".",
            )
        )
    )
    return draft, why


def _no_source(card: Card, known: Record | None) -> str:
    if known is None:
        return f"There is no record {card.of} to make it of"
    return (
        "A card is made of a procedure, an alarm or a fault, and of an isolation through the written"
        f" procedure that governs it; {known.id} is a {kind_name(known)}"
    )


def _not_in_force(record: Carded) -> Iterator[str]:
    if has_left(record):
        yield f"{record.id} is {record.state}"


def _held(draft: Draft, standing: Standing, findings: list[Finding]) -> Iterator[str]:
    """What keeps the record from being relied on, the words of its own page first."""
    book = draft.book
    faults = tuple(faults_of(book, draft.follows, standing))
    notices = book.content.vessel.notices
    state = page_state(frozenset(draft.follows), notices, findings, parts_of(draft), faults)
    if not state.trusted:
        yield state.words
    said = state.words.casefold()
    for fault in faults:
        told = fault.code in TOLD_BELOW and not state.trusted
        if fault.severity in GRAVE and not told and fault.text.casefold() not in said:
            yield f"{fault.severity}: {fault.text}"


def _card(book: Book, card: Card, record: Carded, plan: CardPlan) -> QuickCard:
    key, revision, digest = str(record.id), record.revision or 0, own_digest(record)
    common = f"Where nothing else is said, if not: {plan.common_if_not}"
    return QuickCard(
        card.card,
        card.place,
        plan.task,
        f"part {plan.part} of {plan.parts}" if plan.parts > 1 else "",
        tuple(cell(book, one) for one in plan.before),
        cell(book, common) if plan.common_if_not else (),
        tuple(_line(book, row, named=plan.names) for row in plan.first),
        tuple(_line(book, row, named=plan.names) for row in plan.then),
        plan.text.strip(),
        Where(record.where.path, record.text_line),
        tuple(((Plate(tag),) if tag else (), _strong(cell(book, said))) for tag, said in plan.seen),
        tuple(cell(book, one) for one in plan.stop),
        f"{key} revision {revision}",
        digest,
        f"{key} r{revision} {digest} id/{key}.html",
    )


def _line(book: Book, row: CardRow, *, named: bool) -> CardLine:
    runs: list[Run] = [*cell(book, row.do)]
    if row.tag:
        runs += [" ", Plate(row.tag)]
        runs += [f" {title_of(book, row.tag)}"] if named else []
    if row.to:
        runs += [" to ", Strong(row.to)]
    if row.place:
        runs += [", ", *cell(book, row.place)]
    under: list[Cell] = []
    if row.if_not:
        lead = "" if row.if_not.startswith("If ") else "If not: "
        under.append((*((Strong(lead),) if lead else ()), *cell(book, row.if_not)))
    if row.second:
        under.append((row.second,))
    if row.hold:
        under.append(cell(book, row.hold))
    return CardLine(str(row.number), tuple(runs), _seen(book, row), tuple(under))


def _seen(book: Book, row: CardRow) -> Cell:
    if row.see is None or not row.see.value:
        return ()
    on: Cell = (Plate(row.on), " ") if row.on else ()
    within: Cell = (" within ", *cell(book, row.see.within)) if row.see.within else ()
    return (*on, *cell(book, row.see.value), *within)


def _strong(line: Cell) -> Cell:
    return tuple(Strong(run) if isinstance(run, str) else run for run in line)
