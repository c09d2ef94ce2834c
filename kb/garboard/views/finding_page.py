"""A finding: its first words to the letter, what became of it, what is done, and where else it could be."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.finding_steps import refused_and_right, steps_of
from garboard.changes.where_else import Elsewhere, Look, WhereElse, actions_of, where_else
from garboard.records.finding import Action, Danger, Finding
from garboard.records.standing import is_history
from garboard.views.draft import Draft
from garboard.views.fields import line_of
from garboard.views.inline import cell, day, link_to, person, title_of, to_the_letter
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Facts,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Strong,
    Table,
)
from garboard.views.tables import stands

__all__ = ["finding_head"]


def finding_head(draft: Draft, record: Finding) -> Iterator[Block]:
    """The finding as it was said, and what happened since.

    Args:
        draft: Its page.
        record: The finding.

    Yields:
        What keeps people safe while the danger is immediate; the first words; who; the steps; the
        actions; where else it could be.
    """
    book = draft.book
    immediate = record.danger is Danger.IMMEDIATE and not is_history(record)
    if immediate:
        yield _danger(book, record)
    if record.words:
        yield Paragraph(("\u201c", *to_the_letter(book, record.words), "\u201d"))
    yield from _who(book, record)
    if record.interim and not immediate:
        yield Paragraph((Strong("Until it is put right: "), *_interim(book, record)))
    yield from _since(book, record)
    yield from _actions(book, record)
    yield from _where_else(book, record)


def _danger(book: Book, record: Finding) -> Paragraph:
    if record.interim is None:
        return Paragraph((Strong("Danger now, and nothing that keeps people safe is recorded."),))
    return Paragraph((Strong("Danger now. Until it is put right: "), *_interim(book, record)))


def _interim(book: Book, record: Finding) -> Cell:
    one = record.interim
    if one is None:
        return ()
    return (*cell(book, one.measure), f" ({person(book, one.by)}, {day(one.on)})")


def _who(book: Book, record: Finding) -> Iterator[Block]:
    if record.found:
        during: Cell = (
            (", during ", *cell(book, record.found.during)) if record.found.during else ()
        )
        words = f"Found by {person(book, record.found.by)} on {day(record.found.on)}"
        yield Paragraph((words, *during), quiet=True)
    if record.credit:
        yield Paragraph((f"Caught by: {person(book, record.credit)}",), quiet=True)


def _since(book: Book, record: Finding) -> Iterator[Block]:
    steps = steps_of(record)
    if len(steps) > 1:
        turned = refused_and_right(record)
        yield Heading("What happened since")
        if turned:
            words = (
                f"Refused by {person(book, turned.refused.by)}, raised again by"
                f" {person(book, turned.raised.by)}, and right after all."
            )
            yield Paragraph((Strong(words),))
        rows = tuple(
            Row(
                (
                    (day(one.on),),
                    (one.what,),
                    (_role(person(book, one.by), one.capacity),),
                    ("\u201c", *to_the_letter(book, one.words), "\u201d") if one.words else (),
                )
            )
            for one in steps
        )
        columns = tuple(Column(title) for title in ("on", "step", "by", "in their words"))
        yield Table("Step by step", columns, rows)


def _role(role: str, capacity: str) -> str:
    return f"{role}, {capacity}" if capacity else role


def _actions(book: Book, record: Finding) -> Iterator[Block]:
    actions = actions_of(book, record)
    if not actions:
        return
    yield Heading("What is done about it")
    late = [part for one in actions for part in _overdue(book, one)]
    if late:
        yield Bullets(tuple(late))
    for one in actions:
        yield Paragraph((Link(str(one.id), str(one.id)), f" {one.title}"))
        yield Facts(
            (
                ("do", cell(book, one.action)),
                ("owner", line_of(book, one, "owner")),
                ("due", (day(one.due),)),
                ("aim", cell(book, one.aim) or ("not recorded",)),
                ("state", (stands(book, one),)),
                ("look for", cell(book, one.look_for) or ("not recorded",)),
                ("look on", (day(one.look_on),)),
                ("result", cell(book, one.result) or ("none yet",)),
            )
        )


def _overdue(book: Book, action: Action) -> Iterator[Cell]:
    """What of an action should have happened by now."""
    link = Link(str(action.id), str(action.id))
    begun = book.state(action) in ("agreed", "in hand")
    if begun and not action.evidence and action.due and action.due < book.today:
        yield (
            Strong("Overdue: "),
            link,
            f" was due {day(action.due)} and is {stands(book, action)}",
        )
    looks = action.look_on and action.look_on < book.today
    if looks and not action.result and not is_history(action):
        yield (
            Strong("Nobody has looked whether it worked: "),
            link,
            f" was to be looked at on {day(action.look_on)}",
        )


def _where_else(book: Book, record: Finding) -> Iterator[Block]:
    found = where_else(book, record)
    extent = record.extent
    if not found.places and extent is None:
        return
    yield Heading("Where else")
    if extent:
        rows: list[tuple[str, Cell]] = [("asked", cell(book, extent.asked))]
        rows += [
            (name, line_of(book, extent, name))
            for name in ("looked", "found")
            if getattr(extent, name)
        ]
        yield Facts(tuple(rows))
    if found.places:
        yield _progress(found)
        columns = tuple(Column(one) for one in ("part", "system", "how alike", "what became of it"))
        table = tuple(Row(_place(book, one)) for one in found.places)
        yield Table("Parts where the same could be", columns, table)
    elif any(tag in book.components for tag in record.where_):
        yield Paragraph(("No other part of its kind is recorded in any system.",), quiet=True)
    known = {one.by for one in found.places if one.look is Look.REASON}
    free = [
        (f"{words}: ", *cell(book, why))
        for words, why in ((extent.not_looked if extent else None) or {}).items()
        if str(why) not in known
    ]
    if free:
        yield Paragraph(("Not looked at either, with the reason:",))
        yield Bullets(tuple(free))


def _progress(found: WhereElse) -> Paragraph:
    """How many parts of the same kind were looked at, in words."""
    total, left = len(found.places), len(found.open)
    reasons = sum(one.look is Look.REASON for one in found.places)
    sent = sum(one.look is Look.ACTION for one in found.places)
    words = (
        f"Looked at {found.looked} of {total} {'part' if total == 1 else 'parts'} of the same kind"
    )
    more = [
        f"{count} {what}"
        for count, what in ((sent, "left to an action"), (reasons, "not, with a reason"))
        if count
    ]
    open_: Cell = ("; ", Strong(f"{left} not looked at and no reason given")) if left else ()
    return Paragraph((", ".join((words, *more)), *open_, "."))


def _place(book: Book, one: Elsewhere) -> tuple[Cell, ...]:
    part = book.components[one.tag]
    system = book.systems.get(part.system)
    became: Cell = (str(one.look),)
    if one.look is Look.OPEN:
        became = (Strong(str(one.look)),)
    elif one.look is Look.ACTION:
        became = (f"{one.look}: ", link_to(book, one.by))
    elif one.look is Look.REASON:
        became = ("not looked at: ", *cell(book, one.by))
    name: Cell = (Plate(one.tag), f" {title_of(book, one.tag)}")
    return name, (system.title if system else part.system,), (str(one.like),), became
