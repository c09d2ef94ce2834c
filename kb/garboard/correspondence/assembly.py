"""A pack put together: its parts in their order, the brief at the head, the digests at the foot."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.correspondence.before import Before, is_new
from garboard.correspondence.doubts import (
    against,
    capacities,
    not_checked,
    open_findings,
    questions,
    unchecked,
)
from garboard.correspondence.matter import (
    SEVERITIES,
    about_line,
    class_words,
    hazards_of,
    matter,
    outcome,
    weight,
)
from garboard.correspondence.pack import Line, Pack, Part, Sort, fact, say
from garboard.correspondence.reach import (
    alarms,
    cards,
    numbers,
    procedures,
    rests_on_it,
    tests,
    where_else,
)
from garboard.correspondence.reply_sheet import reply_sheet
from garboard.correspondence.subject import Subject, subject_of
from garboard.records.signal_word import signal_word
from garboard.review.covers import Signed
from garboard.review.seals import seal_of
from garboard.views.draft import DEFERRAL
from garboard.views.inline import cell
from garboard.views.runs import plain

__all__ = ["make_pack"]

ORDER = (
    matter,
    weight,
    outcome,
    numbers,
    rests_on_it,
    procedures,
    alarms,
    cards,
    tests,
    where_else,
    against,
    not_checked,
    questions,
)
MOST_MOVED = 3


def make_pack(book: Book, thing: Signed, before: Before) -> Pack:
    """Put a pack together.

    Args:
        book: As it stands today.
        thing: What is to be reviewed.
        before: What it is compared with.
    """
    subject = subject_of(book, thing, before)
    seal = seal_of(subject.key, subject.cover)
    parts = (*(one(subject) for one in ORDER), _digests(subject))
    return Pack(
        vessel=book.content.vessel.vessel,
        title=f"{subject.key} {thing.title}".strip(),
        about=about_line(subject),
        made=f"Working copy as of {book.today.isoformat()}. {before.words}",
        seal=seal,
        brief=Part("In short", tuple(_brief(subject))),
        parts=parts,
        form=reply_sheet(seal, subject.cover, capacities(subject.record)),
    )


def _brief(subject: Subject) -> Iterator[Line]:
    """What changes, how dangerous it is, which number lost margin."""
    yield fact("what", _what(subject))
    record = subject.record
    if record:
        yield fact("class", class_words(record))
    worst = next(iter(hazards_of(subject)), None)
    if worst is None:
        yield fact("worst", "no hazard is recorded at what it touches")
    else:
        grave = (
            f"severity {worst.severity.value} {SEVERITIES[worst.severity]}"
            if worst.severity
            else ""
        )
        harm = worst.message.harm if worst.message else worst.sequence
        said = plain(cell(subject.book, worst.message.hazard if worst.message else worst.source))
        hurt = f"hurts {worst.harms}" if worst.harms else ""
        words = (said, plain(cell(subject.book, harm)), grave, hurt)
        told = "; ".join(one.rstrip(" .") for one in words if one)
        yield Line(Sort.FACT, f"{signal_word(worst)} {worst.id}: {told}", "worst")
    yield Line(Sort.FACT, _margin(subject), "margin")
    lost = [how.about for how in subject.shifts if how.weaker]
    if lost:
        yield fact("weaker", f"what warns or guards got weaker in {', '.join(lost)}")
    left = unchecked(subject)
    counted = f"{len(open_findings(subject))} open findings; not checked: {', '.join(left) or 'see part 12'}"
    yield fact("open", counted)


def _what(subject: Subject) -> str:
    moved = [one for one in subject.numbers if one.moved]
    own = [
        one
        for one in moved
        if subject.book.values.get(one.address, None) and _is_own(subject, one.address)
    ]
    told = [
        f"{one.address} from {one.before} to {one.after}" for one in (own or moved)[:MOST_MOVED]
    ]
    new = "new: " if is_new(subject.before, subject.thing) else ""
    numbers_ = f"; {'; '.join(told)}" if told else ""
    return f"{new}{subject.thing.title}{numbers_}"


def _is_own(subject: Subject, address: str) -> bool:
    owner = address.partition(".")[0]
    return owner in subject.tags or any(
        fence.name == owner for fence in subject.book.fences_of(subject.key)
    )


def _margin(subject: Subject) -> str:
    """The number that lost most margin, or why none can be named."""
    broken = [
        one for one in subject.numbers if one.margin_after is not None and one.margin_after < 0
    ]
    first = next(iter(subject.numbers), None)
    if first and first.margin_lost > 0:
        fall = f"{first.margin(first.margin_before)} to {first.margin(first.margin_after)}"
        name = first.address + (f" ({first.label})" if first.label else "")
        said = f"{name} loses most: {fall} of its limit, {first.limit}"
    elif subject.before.book is None:
        said = f"nothing was issued before, so no loss can be told{_least(subject)}"
    else:
        won = [one for one in subject.numbers if one.margin_lost < 0]
        said = "no number lost margin" + (
            f"; {won[-1].address} gained: {won[-1].margin(won[-1].margin_before)} to "
            f"{won[-1].margin(won[-1].margin_after)}"
            if won
            else ""
        )
    names = ", ".join(dict.fromkeys(one.address for one in broken))
    return f"{said}; does not hold at the worst: {names}" if broken else said


def _least(subject: Subject) -> str:
    """The number with the least room today."""
    known = [one for one in subject.numbers if one.margin_after is not None]
    least = min(known, key=lambda one: one.margin_after or 0.0, default=None)
    if least is None:
        return ""
    return (
        f"; the least today: {least.address}, {least.margin(least.margin_after)} of {least.limit}"
    )


def _digests(subject: Subject) -> Part:
    """What a reply is bound to."""
    cover = subject.cover
    lines = [
        say("A reply is bound to these. When one of them moves, it can no longer be confirmed."),
        fact("its own words", cover.whole),
        *(fact(name, text) for name, text in cover.saw.items()),
        say(DEFERRAL),
    ]
    return Part("Digests: what you see here", tuple(lines), cut=12)
