"""The register of quick cards: which hang where, what is to be reprinted, what is to be taken down."""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.changes.hanging import hangs_at, moved_since, printed_from, record_of
from garboard.records.base import bare_id
from garboard.records.vessel import Card
from garboard.review.canonical import own_digest
from garboard.views.draft import Draft
from garboard.views.inline import cell, day, person, title_of
from garboard.views.page import AgainstIt, Cell, Column, Heading, Link, Paragraph, Row, Table

__all__ = ["register_draft"]

TITLES = ("card", "of", "hangs at", "holder", "printed", "digest on it, and now", "stands")
HOW = (
    "Print a card from an issued edition: open its page there and print it on A5, 100 %, in black. Write"
    " the day, the edition and the digest of its foot into handbook.yml. From a working copy none is printed."
)


def register_draft(book: Book, refused: Mapping[str, tuple[str, ...]]) -> Draft:
    """The page of all cards, what must be done first on top.

    Args:
        book: The book.
        refused: By number, why a card cannot be printed; empty where it can.
    """
    draft = Draft(book, "registers/cards", "Quick cards", "register")
    cards = book.content.vessel.cards
    urgent = tuple(_to_do(book, card, refused.get(card.card, ())) for card in cards)
    rows = tuple(row for row in urgent if row)
    draft.add(
        Heading("Reprint list"),
        Table(
            "Take down or reprint",
            tuple(Column(title) for title in ("card", "where", "what to do", "because")),
            rows,
            "nothing: every card that hangs says what it should",
        ),
        Heading("All cards"),
        Paragraph((HOW,)),
        Table(
            "Cards",
            tuple(Column(title) for title in TITLES),
            tuple(
                Row(tuple(_row(book, card, refused.get(card.card, ()))), card.card)
                for card in cards
            ),
            "none is listed",
        ),
        AgainstIt(),
    )
    return draft


def _printed(card: Card) -> bool:
    return bool(card.digest or card.printed)


def _to_do(book: Book, card: Card, refused: tuple[str, ...]) -> Row | None:
    """What must be done about a card that hangs; nothing where it says what it should."""
    if card.removed or not _printed(card):
        return None
    moved = moved_since(book, card)
    hangs = hangs_at(book, card)
    if refused:
        what = f"Take down at {hangs}. No new one can be printed."
    elif moved and hangs != card.place:
        what = f"Take down at {hangs}, and hang a new print at {card.place}."
    elif moved:
        what = f"Take down at {hangs}, and hang a new print."
    else:
        return None
    because: Cell = ("; ".join((*moved, *refused[:1])),)
    return Row((_link(card), (hangs,), (what,), because))


def _row(book: Book, card: Card, refused: tuple[str, ...]) -> Iterator[Cell]:
    record = record_of(book, card)
    known = book.records.get(bare_id(card.of))
    steps = f", steps {card.steps}" if card.steps else ""
    revision = f" r{record.revision or 0}" if record else ""
    edition = f", edition {card.edition}" if card.edition else ""
    yield (card.card,) if card.removed else _link(card)
    yield (*cell(book, bare_id(card.of)), f"{revision} {title_of(book, bare_id(card.of))}{steps}")
    yield (card.place,)
    yield (person(book, card.holder) if card.holder else "nobody named",)
    yield (f"{day(card.printed)}{edition}" if card.printed else "not printed",)
    now = own_digest(known) if known else "no record"
    yield (f"{now}, both" if card.digest == now else f"on it {card.digest or 'none'}, now {now}",)
    yield (_stands(book, card, refused),)


def _stands(book: Book, card: Card, refused: tuple[str, ...]) -> str:
    if card.removed:
        return f"taken down on {day(card.removed)}"
    if refused:
        return f"cannot be printed: {refused[0].partition(' (')[0]}"  # whole on its own page
    if not _printed(card):
        return "not printed yet"
    if moved_since(book, card):
        return "reprint"
    if printed_from(book, card) is None:
        return "words as printed; no edition here says which steps and numbers stand on it"
    return "as printed"


def _link(card: Card) -> Cell:
    return (Link(f"cards/{card.card}", card.card),)
