"""Write a notice to holders into handbook.yml, or the day on which one was withdrawn."""

import json
import re
from dataclasses import replace
from datetime import date
from pathlib import Path

from garboard.book import Book
from garboard.errors import GarboardError, Where
from garboard.reading.edits import Edit, replace_spans
from garboard.reading.vessel_files import read_vessel
from garboard.records.notice_message import (
    LONGEST,
    message_of,
    plain_letters,
    unsendable,
    withdrawal,
)
from garboard.records.vessel import Notice, Vessel

__all__ = [
    "add_notice",
    "edition_on",
    "look_at",
    "next_notice",
    "withdraw_notice",
    "withdrawn_today",
]

FILE = "handbook.yml"
TOP_KEY = re.compile(r"[^\s#-]")
"""How a line starts that is no part of the list above it."""


def edition_on(book: Book, day: date) -> int:
    """The edition that holders had on a day; 0 where none was issued."""
    issued = book.content.editions.issued
    return max((one.number for one in issued if one.issued <= day), default=0)


def next_notice(
    book: Book, says: str, against: tuple[str, ...], until: str | None
) -> tuple[Notice, str]:
    """The next notice, and the message that it makes.

    Args:
        book: What was read.
        says: What it tells, in words.
        against: Ids and tags that must not be relied on.
        until: A day or an event; left out, until it is withdrawn.

    Raises:
        GarboardError: It names something that is not there.
    """
    vessel = book.content.vessel
    unknown = [one for one in against if one not in book.records and one not in book.components]
    if unknown:
        raise GarboardError(
            f"there is no record or component {unknown[0]}; name what stands in the book"
        )
    numbers = [int(one.number) for one in vessel.notices if one.number.isdigit()]
    number = max(numbers, default=len(vessel.notices)) + 1
    notice = Notice(
        number=str(number),
        on=book.today,
        says=" ".join(says.split()),  # type: ignore[arg-type]  # words of a person are a mention
        against=against,  # type: ignore[arg-type]  # looked up above
        until=until,  # type: ignore[arg-type]
    )
    count = len(vessel.notices) + 1
    return notice, message_of(vessel.vessel, edition_on(book, book.today), notice, count)


def look_at(notice: Notice, message: str) -> None:
    """Refuse a message that no plain satellite message can carry.

    Raises:
        GarboardError: It is too long, holds other signs than plain letters, or says nothing.
    """
    if not notice.says:
        raise GarboardError("a notice needs words: --says TEXT")
    strange = unsendable(message)
    if strange:
        raise GarboardError(
            f"a plain message cannot carry {' '.join(strange)};"
            f" in plain letters it is: {plain_letters(notice.says)}"
        )
    if len(message) > LONGEST:
        raise GarboardError(
            f"the message has {len(message)} signs, {LONGEST} at most;"
            f" take {len(message) - LONGEST} off it, or make it two notices"
        )


def add_notice(folder: Path, book: Book, notice: Notice) -> None:
    """Write a notice as the last of handbook.yml.

    Args:
        folder: The content folder.
        book: As it was read.
        notice: What is added.

    Raises:
        GarboardError: The file has changed, or is written in a way that a line cannot be put into.
    """
    vessel = book.content.vessel
    text = _text(folder)
    edit = _placed(vessel, text, _yaml(notice))
    _write(folder, book, text, edit, (*vessel.notices, notice))


def withdrawn_today(book: Book, number: str) -> tuple[Notice, str]:
    """A notice as it would stand withdrawn today, and the message that tells it.

    Args:
        book: What was read.
        number: Of the notice.

    Raises:
        GarboardError: There is no such notice, or it was withdrawn before.
    """
    vessel = book.content.vessel
    place = next((at for at, one in enumerate(vessel.notices) if one.number == number), None)
    if place is None:
        have = ", ".join(one.number for one in vessel.notices) or "none"
        raise GarboardError(f"there is no notice {number}; there are: {have}")
    old = vessel.notices[place]
    if old.withdrawn:
        raise GarboardError(f"notice {number} was withdrawn on {old.withdrawn}")
    made = replace(old, withdrawn=book.today)
    edition = edition_on(book, book.today)
    return made, withdrawal(vessel.vessel, edition, made, place + 1)


def withdraw_notice(folder: Path, book: Book, made: Notice) -> None:
    """Write the day on which a notice was withdrawn.

    Args:
        folder: The content folder.
        book: As it was read.
        made: The notice as it then stands.

    Raises:
        GarboardError: The file has changed, or is written in a way that it cannot be put into.
    """
    vessel = book.content.vessel
    place = [one.number for one in vessel.notices].index(made.number)
    where = vessel.place(f"notices[{place}]")
    text = _text(folder)
    line = text.split("\n")[where.line - 1]
    added = f"withdrawn: {made.withdrawn}"
    if line[where.column - 1 : where.column] == "{":
        edit = Edit(Where(FILE, where.line, where.column + 1), "", f"{added}, ")
    else:
        edit = Edit(where, "", f"{added}\n{' ' * (where.column - 1)}")
    _write(folder, book, text, edit, (*vessel.notices[:place], made, *vessel.notices[place + 1 :]))


def _text(folder: Path) -> str:
    text = (folder / FILE).read_bytes().decode("utf-8-sig")
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _yaml(notice: Notice) -> str:
    """A notice as one line of handbook.yml."""
    parts = [
        f"number: {json.dumps(notice.number)}",
        f"on: {notice.on}",
        f"says: {json.dumps(notice.says, ensure_ascii=False)}",
    ]
    if notice.against:
        parts.append(f"against: [{', '.join(notice.against)}]")
    if notice.until:
        parts.append(f"until: {json.dumps(notice.until, ensure_ascii=False)}")
    return f"- {{{', '.join(parts)}}}\n"


def _placed(vessel: Vessel, text: str, line: str) -> Edit:
    """Where a new notice goes: behind the last one, or at the end of the file under a key of its own.

    Raises:
        GarboardError: The notices are written on one line.
    """
    lines = text.split("\n")
    start_of = vessel.places.get("notices")
    if start_of is None:
        last = len(lines)
        start = "" if not lines[-1] else "\n"
        return Edit(Where(FILE, last, len(lines[-1]) + 1), "", f"{start}\nnotices:\n  {line}")
    first = vessel.places.get("notices[0]")
    if first is None or lines[start_of.line - 1][start_of.column - 1] != "-":
        raise GarboardError(
            f"{start_of} writes its notices on one line; give each a line of its own that starts with - first"
        )
    after = next(
        (at for at in range(start_of.line + 1, len(lines) + 1) if TOP_KEY.match(lines[at - 1])),
        len(lines) + 1,
    )
    at = after - 1
    while at > first.line and (not lines[at - 1].strip() or lines[at - 1].startswith("#")):
        at -= 1
    start = "" if at < len(lines) else "\n"
    where = Where(FILE, at + 1, 1) if at < len(lines) else Where(FILE, at, len(lines[at - 1]) + 1)
    return Edit(where, "", f"{start}{' ' * max(0, first.column - 3)}{line}")


def _write(folder: Path, book: Book, text: str, edit: Edit, wanted: tuple[Notice, ...]) -> None:
    """Write an edit, once it is seen that the file then says what it should and nothing else.

    Raises:
        GarboardError: It would not.
    """
    lines = text.split("\n")
    line = lines[edit.where.line - 1]
    at = edit.where.column - 1
    lines[edit.where.line - 1] = line[:at] + edit.new + line[at:]
    read = read_vessel("\n".join(lines), FILE)
    if read.vessel.notices != wanted:
        raise GarboardError(f"{edit.where} is written in a way that a notice cannot be put into")
    replace_spans(folder, FILE, [edit], book.content.digests[FILE])
