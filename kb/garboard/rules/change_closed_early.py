"""A change is closed while something still shows the old value, or is proved by an old test.

Why: whoever is aboard believes the card on the wall and does as they were shown. 29 CFR 1910.119(l)
asks that people are told and trained, and procedures brought up to date, before the start.

Fix: correct what shows the old value, have it signed again, reprint the card, test again, show the
people; or set the change back to proved until it is done.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.competence import skills
from garboard.changes.notice import Notice, Word, notice_of
from garboard.errors import Diagnostic, Severity
from garboard.names import is_identifier
from garboard.records.base import bare_id
from garboard.records.change import Change
from garboard.records.in_kind import alike
from garboard.records.standing import describes, state_of
from garboard.rules.proofs import tested_again

CODE = "change-closed-early"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

MOST_NAMED = 3


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every change that is closed."""
    for change in book.of_kind(Change):
        if state_of(change) != "closed":
            continue
        notice = notice_of(book, change)
        owed = list(
            dict.fromkeys(
                (
                    *_old_words(book, change, notice),
                    *_old_signatures(book, change, notice),
                    *_old_cards(book, change, notice),
                    *_old_proofs(book, change),
                    *_old_training(book, change),
                )
            )
        )
        if owed:
            more = f", and {len(owed) - MOST_NAMED} more" if len(owed) > MOST_NAMED else ""
            text = f"{change.id} is closed, and {'; '.join(owed[:MOST_NAMED])}{more}"
            cure = "bring it up to date, or set the change back to proved"
            yield Diagnostic(change.place("state"), SEVERITY, text, cure, CODE, str(change.id))


def _procedures(change: Change) -> tuple[str, ...]:
    listed = () if isinstance(change.procedures, str) else change.procedures or ()
    return tuple(bare_id(name) for name in listed)


def _old_words(book: Book, change: Change, notice: Notice) -> Iterator[str]:
    """Typed numbers that are the old one, in what the change reaches; labels and spares too."""
    touched = notice.touched
    tells = {key for key in touched.records if describes(book.records[key])}
    owners = {
        *tells,
        *_procedures(change),
        *touched.pages,
        *touched.tags,
        *touched.spares,
        *touched.systems,
    }
    for written in book.content.texts:
        for number in written.numbers if written.owner in owners else ():
            for shift in change.values.values():
                if alike(number.text, shift.before) and not alike(shift.before, shift.after):
                    yield f"{written.owner} says {number.text}"


def _old_signatures(book: Book, change: Change, notice: Notice) -> Iterator[str]:
    """What was checked at the old value, and not again since."""
    for one in notice.reached:
        reviewed = book.reviews.get(one.key)
        for weighed in reviewed.lapsed if reviewed and one.sort != "test" else ():
            for moved in weighed.moved:
                shift = change.values.get(moved.what)  # type: ignore[call-overload]  # any text may be asked for
                if shift and alike(moved.before.partition(" +/- ")[0], shift.before):
                    yield f"{one.key} was signed at {shift.before}"


def _old_cards(book: Book, change: Change, notice: Notice) -> Iterator[str]:
    reached = {one.key for one in notice.reached if one.word is not Word.LOOKED_AT}
    for card in book.content.vessel.cards:
        of = bare_id(card.of)
        if card.removed or not (card.card in reached or of in _procedures(change)):
            continue
        reviewed = book.reviews.get(of)
        if card.printed and change.installed and card.printed < change.installed:
            yield f"card {card.card} was printed {card.printed}, before {change.installed}"
        elif card.digest and reviewed and not reviewed.cover.whole.startswith(card.digest):
            yield f"card {card.card} carries another text of {of}"


def _old_proofs(book: Book, change: Change) -> Iterator[str]:
    voided = [name for name in change.voids if is_identifier(bare_id(name))]
    if voided and not tested_again(book, change):
        yield f"{voided[0]} is voided with no re-test passed since"


def _old_training(book: Book, change: Change) -> Iterator[str]:
    concerned = _procedures(change)
    for one in skills(book) if concerned else ():
        key = str(one.procedure.id)
        if key in concerned and one.majors and one.person.may_be_aboard(book.today):
            now = one.procedure.revision
            yield f"{one.person.key} was shown {key} r{one.shown.revision}, it is r{now}"
