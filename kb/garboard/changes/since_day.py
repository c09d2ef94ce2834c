"""What moved since a day, gravest first: what somebody who was away has to read before they work.

What stands in nobody's way is left out: decisions, calculations, open items, findings of class B and C.
They reach the vessel as a change, a procedure or a hazard, and those are here.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date

from garboard.book import Book
from garboard.names import system_of
from garboard.records.base import Class, Record, bare_id
from garboard.records.change import Change, TemporaryModification
from garboard.records.edition import Edition
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.signal_word import signal_word
from garboard.records.standing import has_left, refused, state_of

__all__ = ["Moved", "moved_since"]

MOST_VALUES = 3
INSTALLED = ("installed", "proved", "closed")


@dataclass(frozen=True, slots=True)
class Moved:
    """One thing that is not as it was."""

    key: str
    """Id of the record, or number of the notice."""
    sort: str
    """`notice`, `safety finding`, `hazard`, `change`, `procedure`, `temporary modification`."""
    title: str
    on: date
    what: str
    """What moved, in one line, with the numbers before and after."""
    rank: int
    """What is read first has the lowest."""


def moved_since(book: Book, day: date, systems: tuple[str, ...] = ()) -> tuple[Moved, ...]:
    """Everything that moved after a day and up to today.

    Args:
        book: The book.
        day: The last day of which somebody knows.
        systems: Codes of the systems it is asked for; of none, for the whole vessel.

    Returns:
        Gravest first, then the newest.
    """
    makers: tuple[Callable[[Book, date], Iterator[tuple[Record | None, Moved]]], ...] = (
        *(_notices, _findings, _hazards, _changes, _rigged, _procedures),
    )
    found = [
        moved
        for maker in makers
        for record, moved in maker(book, day)
        if moved.on <= book.today and (record is None or _concerns(record, systems))
    ]
    return tuple(sorted(found, key=lambda one: (one.rank, -one.on.toordinal(), one.key)))


def _concerns(record: Record, systems: tuple[str, ...]) -> bool:
    """Whether something is about one of some systems; what is about none is everybody's."""
    about = {record.system, *(system_of(bare_id(str(one))) for one in record.affects)} - {""}
    return not systems or not record.system or bool(about & set(systems))


def _notices(book: Book, day: date) -> Iterator[tuple[None, Moved]]:
    for one in book.content.vessel.notices:
        withdrawn = one.withdrawn
        if withdrawn and withdrawn <= book.today:
            if withdrawn > day:
                what = f"withdrawn; it said: {one.says}"
                yield None, Moved(one.number, "notice", "withdrawn", withdrawn, what, 6)
        elif one.on > day:
            against = f"DO NOT USE {', '.join(one.against)}. " if one.against else ""
            yield None, Moved(one.number, "notice", "stands", one.on, f"{against}{one.says}", 0)


def _findings(book: Book, day: date) -> Iterator[tuple[Record, Moved]]:
    for one in book.of_kind(Finding):
        on = one.found.on if one.found else one.drafted
        if one.weight is not Class.A or has_left(one) or on is None or on <= day:
            continue
        live = book.is_live(one)
        what = f"{book.state(one)}; {one.words or one.title}"
        if one.interim:
            what += f" Until it is put right: {one.interim.measure}"
        yield one, Moved(str(one.id), "safety finding", one.title, on, what, 1 if live else 5)


def _hazards(book: Book, day: date) -> Iterator[tuple[Record, Moved]]:
    before = _edition_on(book, day)
    for one in book.of_kind(Hazard):
        word = signal_word(one)
        says = str(one.message.hazard if one.message else one.source or one.title)
        if has_left(one):
            continue
        if one.drafted and one.drafted > day:
            what = f"new, {word}: {says}"
            yield one, Moved(str(one.id), "hazard", one.title, one.drafted, what, 2)
            continue
        signed = [line.on for line in one.signed if line.on > day]
        issued = before.records.get(str(one.id)) if before else None
        reviewed = book.reviews.get(str(one.id))
        if issued and reviewed and signed and issued.digest != reviewed.cover.whole:
            what = f"revision {issued.revision}, now {one.revision}, {word}: {says}"
            yield one, Moved(str(one.id), "hazard", one.title, min(signed), what, 2)


def _changes(book: Book, day: date) -> Iterator[tuple[Record, Moved]]:
    for one in book.of_kind(Change):
        state = state_of(one)
        if state not in INSTALLED or refused(one):
            continue
        days = [line.on for line in one.signed if line.to in INSTALLED]
        days += [one.installed] if one.installed else []
        if not days or max(days) <= day:
            continue
        moved = [
            f"{address} {shift.before}, now {shift.after}" for address, shift in one.values.items()
        ]
        more = f" and {len(moved) - MOST_VALUES} more" if len(moved) > MOST_VALUES else ""
        what = "; ".join(moved[:MOST_VALUES]) + more if moved else str(one.safety or one.title)
        new = one.installed is None or one.installed > day
        told = state if new else f"installed before, {state} since"
        rank = {Class.A: 3, Class.B: 6, Class.C: 7}[one.weight]
        yield one, Moved(str(one.id), "change", one.title, max(days), f"{told}: {what}", rank)


def _rigged(book: Book, day: date) -> Iterator[tuple[Record, Moved]]:
    for one in book.of_kind(TemporaryModification):
        on = one.fitted.on if one.fitted else None
        if on and on > day and book.is_live(one):
            hung = f"; tag {one.tag_hung}" if one.tag_hung else ""
            what = f"rigged for now: {one.what or one.title}{hung}"
            yield one, Moved(str(one.id), "temporary modification", one.title, on, what, 3)


def _procedures(book: Book, day: date) -> Iterator[tuple[Record, Moved]]:
    before = _edition_on(book, day)
    for one in book.of_kind(Procedure):
        on = max((line.on for line in one.signed if line.to == "issued"), default=None)
        if has_left(one) or on is None or on <= day:
            continue
        known = before.records.get(str(one.id)) if before else None
        because = [
            str(change.id)
            for change in book.of_kind(Change)
            if isinstance(change.procedures, tuple)
            and str(one.id) in map(bare_id, change.procedures)
        ]
        what = "new" if known is None or known.state != "issued" else "issued again"
        if known and known.revision != one.revision:
            what = f"revision {known.revision}, now {one.revision}"
        elif known is None and one.revision:
            what = f"revision {one.revision}"
        if because:
            what += f", after {', '.join(because)}"
        rank = 4 if one.weight is Class.A else 6
        yield one, Moved(str(one.id), "procedure", one.title, on, f"{what}: {_for(one)}", rank)


def _for(one: Procedure) -> str:
    return str(one.purpose or one.title)


def _edition_on(book: Book, day: date) -> Edition | None:
    """The edition that was in force on a day; None where none had been issued."""
    issued = [one for one in book.content.editions.issued if one.issued <= day]
    return issued[-1] if issued else None
