"""An alarm and a fault: what is seen or heard, then at once what is done first.

What stands against the page is told in short at its head and whole below the first action.
"""

from collections.abc import Iterator

from garboard.names import is_identifier
from garboard.records.alarm import Alarm, Check, Fault
from garboard.views.at_once import Look
from garboard.views.draft import Draft
from garboard.views.fields import line_of
from garboard.views.inline import cell, title_of
from garboard.views.page import (
    AgainstIt,
    Block,
    Cell,
    DoFirst,
    Facts,
    Heading,
    Link,
    Looks,
    Paragraph,
    Plate,
    Run,
    Strong,
)

__all__ = ["alarm_head", "fault_head"]

ON = ("next", "go on")
"""Answers that mean the look after this one."""


def alarm_head(draft: Draft, record: Alarm) -> Iterator[Block]:
    """An alarm: its exact wording as the title, what to do first, what it means.

    Args:
        draft: Its page.
        record: The alarm.
    """
    book = draft.book
    if record.wording:
        draft.title = record.wording
    else:
        yield Paragraph((Strong("What the panel says is not recorded."),))
    if record.first:
        yield DoFirst("Do first", tuple(cell(book, one) for one in record.first))
    else:
        yield Paragraph((Strong("What is done first is not recorded."),))
    yield AgainstIt()
    named = (
        ("means", "it means"),
        ("consequence", "if nobody acts"),
        ("time_to_act", "time to act"),
        ("confirm", "see that it is true"),
        ("automatic", "happens by itself"),
    )
    rows: list[tuple[str, Cell]] = [("in words", (record.title,))] if record.wording else []
    rows += [(label, line_of(book, record, name)) for name, label in named]
    rows.append(("raised by", _raised_by(draft, record)))
    if record.set:
        rows.append(
            (f"set, {record.direction or 'direction not recorded'}", cell(book, record.set))
        )
    rows.append(("alarm priority", (str(record.priority or "not recorded"),)))
    yield Facts(tuple((label, line) for label, line in rows if line))


def _raised_by(draft: Draft, record: Alarm) -> Cell:
    if not record.tag:
        return ("not recorded",)
    return (Plate(record.tag), *_name_and_place(draft, record.tag))


def _name_and_place(draft: Draft, tag: str) -> tuple[str, ...]:
    part = draft.book.components.get(tag)
    words = ", ".join(word for word in (part.name, part.place) if word) if part else ""
    return (f" {words}",) if words else ()


def fault_head(draft: Draft, record: Fault) -> Iterator[Block]:
    """A fault: what the crew says, the safe state, the looks in order, when to stop.

    Args:
        draft: Its page.
        record: The fault.
    """
    book = draft.book
    if record.symptoms:
        yield Paragraph(
            ("The crew says: ", "; ".join(f"\u201c{word}\u201d" for word in record.symptoms))
        )
    if record.safe_first:
        yield DoFirst("Make it safe first", (cell(book, record.safe_first),))
    else:
        yield Paragraph((Strong("What makes it safe first is not recorded."),))
    yield AgainstIt()
    if record.checks:
        yield Heading("Checks, in order")
        last = len(record.checks)
        yield Looks(
            tuple(
                _look(draft, number, one, last) for number, one in enumerate(record.checks, start=1)
            )
        )
    if record.stop_when:
        yield Heading("Stop and call", anchor="stop-and-call")
        yield Paragraph((Strong("When: "), *cell(book, record.stop_when), "."))


def _look(draft: Draft, number: int, check: Check, last: int) -> Look:
    part: Cell = (" ", Plate(check.tag), *_name_and_place(draft, check.tag)) if check.tag else ()
    return Look(
        number,
        (*cell(draft.book, check.do), *part),
        cell(draft.book, check.see) or ("what is to be seen is not recorded",),
        tuple(_answer(draft, check.yes, number, last)),
        tuple(_answer(draft, check.no, number, last)),
    )


def _answer(draft: Draft, answer: str | None, number: int, last: int) -> Iterator[Run]:
    """What an answer leads to: the next look as a link, a record with its title, else its words."""
    if answer is None:
        yield "not recorded: stop and call"
        return
    words, ends = answer.strip(), next((on for on in ON if _ends(answer, on)), None)
    if ends is None:
        yield from cell(draft.book, words)
        if is_identifier(words):
            yield f" {title_of(draft.book, words)}"
        return
    yield from cell(draft.book, words[: -len(ends)])
    if number < last:
        yield Link(f"{draft.key}#look-{number + 1}", f"go to check {number + 1}")
    else:
        yield Link(f"{draft.key}#stop-and-call", "that was the last check: stop and call")


def _ends(answer: str, word: str) -> bool:
    """Whether an answer is this word, or ends with it after a colon."""
    words = answer.strip()
    return words == word or words.endswith(f": {word}")
