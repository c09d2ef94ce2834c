"""People as pages name them: by role, and two of one role told apart by their times aboard.

A number would have to be looked up, and would move when somebody left; the day somebody came is known
aboard, stays the same, and is nobody's name.
"""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.changes.competence import Skill, alone_aboard, helped_aboard, skills_of
from garboard.changes.minor_revisions import minor_claims
from garboard.records.people import PersonEntry
from garboard.records.procedure import Procedure
from garboard.records.signoff import Capacity
from garboard.views.inline import day
from garboard.views.page import Cell, Paragraph, Run, Strong

__all__ = [
    "aboard_today",
    "anchor_of",
    "claimed_minor",
    "in_a_row",
    "in_charge",
    "known_as",
    "time_words",
    "who_can",
    "with_limits",
]

NOBODY_ALONE = "Nobody aboard can do this alone."


def known_as(book: Book, person: PersonEntry) -> str:
    """The role of somebody, with the time aboard where another one has the same role."""
    same = [one for one in book.content.people.values() if one.role == person.role]
    if len(same) < 2:
        return person.role
    words = f"{person.role}, {time_words(book, person)}"
    alike = [one.key for one in same if time_words(book, one) == time_words(book, person)]
    return f"{words} ({alike.index(person.key) + 1})" if len(alike) > 1 else words


def time_words(book: Book, person: PersonEntry) -> str:
    """Since when somebody is aboard, or when they were."""
    present = person.time_aboard(book.today)
    if present:
        back = "back " if person.left(book.today) else ""
        return f"{back}aboard since {day(present.from_)}"
    coming = min((one.from_ for one in person.aboard if one.from_ > book.today), default=None)
    if coming:
        return f"comes aboard {day(coming)}"
    gone = max(person.aboard, key=lambda one: one.from_, default=None)
    return f"ashore since {day(gone.to)}" if gone else "no time aboard written down"


def anchor_of(book: Book, person: PersonEntry) -> str:
    """Where a link lands that leads to somebody: role and number in the list, never the key."""
    same = [one.key for one in book.content.people.values() if one.role == person.role]
    number = f"-{same.index(person.key) + 1}" if len(same) > 1 else ""
    words = "".join(sign if sign.isalnum() else " " for sign in person.role.casefold())
    return f"{'-'.join(words.split()) or 'somebody'}{number}"


def aboard_today(book: Book) -> list[PersonEntry]:
    """Those whose time aboard is written down and covers today."""
    return [one for one in book.content.people.values() if one.time_aboard(book.today)]


def in_charge(book: Book) -> list[PersonEntry]:
    """Those aboard today who may act as the one in charge."""
    return [one for one in aboard_today(book) if Capacity.IN_CHARGE in one.may]


def in_a_row(words: Iterable[str], between: str = "; ") -> str:
    """Several names in one line; semicolons, because a name may hold a comma."""
    return between.join(dict.fromkeys(words))


def with_limits(book: Book, one: Skill) -> str:
    """Somebody with what binds their word: limits, and the day until which it holds."""
    beside = [one.shown.limits] if one.shown.limits else []
    if one.shown.until:
        beside.append(f"until {day(one.shown.until)}")
    name = known_as(book, one.person)
    return f"{name} ({', '.join(beside)})" if beside else name


def claimed_minor(book: Book, procedure: Procedure) -> Iterator[Paragraph]:
    """One line for each revision that is said to have changed words only and is not believed.

    Args:
        book: With every issued edition.
        procedure: As it stands.
    """
    for one in minor_claims(book, procedure):
        if not one.believed:
            said = (
                f"but {one.refused}"
                if one.refused
                else f"nothing to hold it against: {one.unproved}"
            )
            yield Paragraph(
                (
                    Strong(f"Revision {one.number} is claimed minor, {said}."),
                    " It counts as major: show it again.",
                )
            )


def who_can(book: Book, procedure: Procedure) -> Paragraph:
    """One line: who aboard can do a procedure today, alone and with help.

    Args:
        book: With people and their times aboard.
        procedure: As it stands.
    """
    found = skills_of(book, procedure)
    alone, helped = alone_aboard(book, found), helped_aboard(book, found)
    runs: list[Run] = [Strong("Who aboard can do it: ")]
    if alone:
        names = in_a_row(with_limits(book, one) for one in alone)
        runs += [f"alone: {names}. "]
    elif found:
        runs += [Strong(NOBODY_ALONE), " "]
    else:
        runs += [Strong("nobody is written down as having shown this procedure.")]
    if helped:
        runs.append(f"With help: {in_a_row(with_limits(book, one) for one in helped)}.")
    cell: Cell = tuple(runs)
    return Paragraph(cell)
