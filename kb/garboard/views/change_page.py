"""A change notice: what moves, all that it reaches, and whether the notice says what becomes of each."""

from collections.abc import Iterator
from dataclasses import fields

from garboard.book import Book
from garboard.changes.notice import ROUNDS, Notice, Reached, Word, notice_of
from garboard.records.base import Class, bare_id
from garboard.records.change import Change
from garboard.records.in_kind import alike, differences
from garboard.records.inspection import Test
from garboard.records.signoff import Capacity
from garboard.views.draft import Draft
from garboard.views.fields import label_of
from garboard.views.inline import cell, day, link_to, person, shown, title_of
from garboard.views.page import (
    Block,
    Cell,
    Column,
    Facts,
    Fold,
    Heading,
    Link,
    Paragraph,
    Row,
    Run,
    Strong,
    Table,
)
from garboard.views.system_pages import system_key

__all__ = ["change_head"]

MOST_REASONS = 4
ORDER = (Word.OPEN, Word.NAMED, Word.LOOKED_AT)
"""What nobody has looked at stands first."""


def change_head(draft: Draft, record: Change) -> Iterator[Block]:
    """The notice itself.

    Args:
        draft: Its page.
        record: The change.

    Yields:
        Its class where it was raised, what it does to safety, values before and after, what it
        reaches, proofs, people.
    """
    book = draft.book
    promoted = ", ".join(
        f"{one.what} differs ({one.before}, then {one.after})" for one in differences(record)
    )
    if record.class_ and record.weight is not record.class_:
        words = f"Class {record.class_} as written, counts as {record.weight}: {promoted}."
        yield Paragraph((Strong(words),))
    why = (("what it does to safety", record.safety), ("why", record.basis))
    said = tuple((label, cell(book, words)) for label, words in why if words)
    if said:
        yield Facts(said)
    if record.values:
        yield Heading("Values, before and after")
        yield _values(book, record)
    if record.in_kind:
        yield Heading("In kind: the new thing beside the old")
        yield _in_kind(book, record)
    notice = notice_of(book, record)
    if record.weight is Class.C:
        title = f"What it reaches ({len(notice.reached)}); in kind, nobody is asked to look at it"
        yield Fold(title, (_reached(book, notice),))
    else:
        yield Heading("What it reaches, as the tool works it out")
        yield _count(notice)
        yield _reached(book, notice)
        yield from _beside(book, record, notice)
    if record.voids or record.retests:
        yield Heading("Proof that it voids, and what takes its place")
        yield _proofs(book, record)
    if notice.touched.people:
        yield Heading("Who has been shown what it reaches")
        yield _shown(book, notice)


def _values(book: Book, record: Change) -> Table:
    doers = [line for line in record.signed if line.capacity is Capacity.DOER]
    mover = f"{person(book, doers[-1].by)}, " if doers else ""
    when = f"{mover}{day(record.installed)}" if record.installed else "not installed yet"
    rows = tuple(
        Row(
            (
                (Link(address, address),),
                cell(book, shift.before),
                cell(book, shift.after),
                (shown(book, address),),
                (when,),
            )
        )
        for address, shift in record.values.items()
    )
    titles = ("value", "before", "after", "today", "moved by")
    return Table("Values that it moves", tuple(Column(one) for one in titles), rows)


def _in_kind(book: Book, record: Change) -> Table:
    rows: list[tuple[Cell, ...]] = []
    for item in fields(record.in_kind) if record.in_kind else ():
        said = getattr(record.in_kind, item.name)
        if said is None:
            rows.append(((label_of(item.name),), ("not compared",), (), ("not compared",)))
            continue
        one = isinstance(said, str)
        before, after = (said, said) if one else (said.before, said.after)
        verdict: Cell = ("alike",) if alike(before, after) else (Strong("differs"),)
        old, new = cell(book, before), cell(book, after)
        rows.append(((label_of(item.name),), old, new, verdict))
    titles = ("attribute", "old", "new", "so it is")
    columns = tuple(Column(one) for one in titles)
    return Table("Attributes compared", columns, tuple(Row(cells) for cells in rows))


def _count(notice: Notice) -> Paragraph:
    told = {word: sum(one.word is word for one in notice.reached) for word in ORDER}
    total = len(notice.reached)
    words = (
        f"{total} {'thing' if total == 1 else 'things'}: {told[Word.NAMED]} named in this notice, "
        f"{told[Word.LOOKED_AT]} looked at and in need of no change, "
    )
    left = f"{told[Word.OPEN]} not yet looked at"
    return Paragraph((words, Strong(left) if told[Word.OPEN] else left, "."))


def _reached(book: Book, notice: Notice) -> Table:
    ordered = sorted(notice.reached, key=lambda one: ORDER.index(one.word))
    rows = tuple(
        Row((_thing(book, one), (one.sort,), _why(book, one), _word(one))) for one in ordered
    )
    titles = ("thing", "what it is", "because of", "notice")
    columns = tuple(Column(title) for title in titles)
    return Table("Reached", columns, rows, "nothing that is entered")


def _beside(book: Book, record: Change, notice: Notice) -> Iterator[Paragraph]:
    """What was looked at and is not reached: more care than was asked, or a slip of a name."""
    known = {one.key for one in notice.reached} | {card.of for card in notice.touched.cards}
    others = [name for name in record.looked_at if bare_id(name) not in known]
    if others:
        runs: list[Run] = [run for name in others for run in (", ", *cell(book, name))]
        words = "Looked at as well, though nothing that is entered leads there: "
        yield Paragraph((words, *runs[1:], "."), quiet=True)


def _thing(book: Book, one: Reached) -> Cell:
    if one.sort == ROUNDS:
        system = book.systems[one.key]
        return (Link(system_key(system, "watch-rounds"), f"{system.title}: rounds"),)
    if one.sort == "spare":
        spare = book.content.spares[one.key]
        return (Link(f"registers/spares#{one.key}", one.key), f" {spare.name}")
    if one.sort == "card":
        (card, *_) = (each for each in book.content.vessel.cards if each.card == one.key)
        printed = f"printed {day(card.printed)}" if card.printed else "day of printing not recorded"
        return (f"{one.key}, hangs at: {card.place}; {printed}",)
    if one.sort == "written page":
        titles = [page.title for page in book.content.pages if page.where.path == one.key]
        return (Link(one.key, titles[0] or one.key),)
    return (link_to(book, one.key), f" {title_of(book, one.key)}")


def _why(book: Book, one: Reached) -> Cell:
    runs: list[Run] = []
    for name in one.why[:MOST_REASONS]:
        run = Link(name, name) if name in book.values else link_to(book, name)
        runs += [", ", run] if runs else [run]
    more = len(one.why) - MOST_REASONS
    return (*runs, f" and {more} more") if more > 0 else tuple(runs)


def _word(one: Reached) -> Cell:
    if one.word is Word.OPEN:
        return (Strong(str(one.word)),)
    if one.word is Word.NAMED:
        return (f"named under {label_of(one.field)}",)
    return (str(one.word),)


def _proofs(book: Book, record: Change) -> Table:
    rows = []
    for names, role in ((record.voids, "voided"), (record.retests, "takes its place")):
        for name in names:
            test = book.records.get(bare_id(name))
            about: tuple[Cell, ...] = ((title_of(book, bare_id(name)),), ("not recorded",), ("",))
            if isinstance(test, Test):
                result = str(test.result or "no result yet")
                about = ((test.title,), (day(test.on),), (result,))
            rows.append(Row(((link_to(book, name),), *about, (role,))))
    titles = ("test", "title", "on", "result", "here it is")
    columns = tuple(Column(title) for title in titles)
    return Table("Tests", columns, tuple(rows))


def _shown(book: Book, notice: Notice) -> Table:
    rows = []
    for key, procedure in notice.touched.people:
        record = book.records.get(bare_id(procedure))
        for one in book.content.people[key].competence:
            if one.procedure == procedure:
                which = f"revision {one.revision}, it is {record.revision if record else 'gone'}"
                level = one.level or "not recorded"
                link: Cell = (link_to(book, procedure),)
                rows.append(Row(((person(book, key),), link, (level,), (which,), (day(one.on),))))
    titles = ("who", "what", "how well", "revision", "when")
    return Table("Shown", tuple(Column(title) for title in titles), tuple(dict.fromkeys(rows)))
