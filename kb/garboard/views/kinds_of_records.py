"""The page that tells whoever writes what each kind of record asks, and how it moves from state to state.

It is made from the questions and the table of moves that the reader of files itself goes by.
"""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from garboard.book import Book
from garboard.calc.value import Given
from garboard.reading.shapes import Key, keys_of, members_of, words_for
from garboard.records.base import Asked, Record
from garboard.records.kinds import KINDS, Kind
from garboard.records.questions import meaning_of, questions_of
from garboard.records.signoff import Capacity
from garboard.records.states import Machine, Move
from garboard.views.draft import Draft
from garboard.views.page import Column, Heading, Paragraph, Row, Table

__all__ = ["inner_rows", "plain", "records_draft"]

CODE = re.compile(r"`([^`]*)`")
BY_COMMAND = "signed"
"""What no hand writes: its parts are not told."""


def records_draft(book: Book) -> Draft:
    """Every kind of record, with what it asks and how it moves."""
    draft = Draft(book, "manual/kinds-of-records", "Kinds of records", "manual")
    draft.add(
        Paragraph(
            (
                'garboard new "open item" SA --title "..." starts one, with these questions as comments in'
                " it. A key behind a colon stands inside the key before it, NAME is a name of your own:"
                " steps: see: tag is the tag under see: of one of the steps.",
            )
        )
    )
    common = {item.name for item in fields(Record)}
    for kind in KINDS:
        draft.add(Heading(f"{kind.letters} {kind.name}"), Paragraph((meaning_of(kind.record),)))
        draft.add(_questions(f"What {_a(kind.name)} says", kind, common, own=True))
        draft.add(_moves(kind), Paragraph((_ends(kind.machine),)))
    draft.add(Heading("Every record"))
    draft.add(_questions("What any record may say", None, common, own=False))
    return draft


def _a(noun: str) -> str:
    """A noun behind its article.

    >>> _a("alarm"), _a("test")
    ('an alarm', 'a test')
    """
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"


def _questions(caption: str, kind: Kind | None, common: set[str], *, own: bool) -> Table:
    record = kind.record if kind else Record
    questions, keys = questions_of(record), keys_of(record)
    rows = []
    for item in fields(record):
        key = keys.get(item.name.rstrip("_"))
        if key is None or item.metadata.get("beside") or (item.name in common) is own:
            continue
        asked = item.metadata.get("asked", Asked())
        rows.append(_row(key.key, key, questions, _wanted(asked, kind)))
        if key.key != BY_COMMAND:
            rows += inner_rows(key.key, key.hint)
    titles = ("key", "question", "written as", "wanted")
    return Table(caption, tuple(Column(title) for title in titles), tuple(rows))


def inner_rows(before: str, hint: Any) -> Iterator[Row]:  # noqa: ANN401 - a type hint
    """What is written inside a key, each a row of its own.

    Args:
        before: The key as it is told.
        hint: The type of what it holds.
    """
    kind, named = _inside(hint)
    if kind is None:
        return
    questions = questions_of(kind)
    for key in keys_of(kind).values():
        told = f"{before}: {'NAME: ' if named else ''}{key.key}"
        yield _row(told, key, questions, "always" if key.required else "where it helps")
        yield from inner_rows(told, key.hint)


def _inside(hint: Any) -> tuple[type | None, bool]:  # noqa: ANN401 - a type hint
    """The class that a type holds, itself or in a list or mapping; whether each has a name of its own."""
    if isinstance(hint, type) and is_dataclass(hint):
        return (None, False) if hint is Given else (hint, False)
    members = members_of(hint)
    for part in (members.part, members.item):
        if part is not None and (kind := _inside(part)[0]):
            return kind, False
    return (_inside(members.entry)[0], True) if members.entry is not None else (None, False)


def _row(told: str, key: Key, questions: Any, wanted: str) -> Row:  # noqa: ANN401 - a mapping of texts
    cells = (told, plain(questions.get(key.name, "")), words_for(key.hint), wanted)
    return Row(tuple((one,) for one in cells))


def _wanted(asked: Asked, kind: Kind | None) -> str:
    if asked.later:
        return "later, when it has happened"
    if asked.before_leaving_start:
        return f"before it leaves {kind.machine.start}" if kind else "before its first move"
    if asked.classes:
        done = " or ".join(kind.machine.rest) if kind else "done"
        return f"of class {' and '.join(asked.classes)}, before it is {done}"
    return "where it helps"


def _moves(kind: Kind) -> Table:
    mark = "point" if kind.name == "plan line" else "class"
    rows = tuple(
        Row(((state,), ("; ".join(_told(move, mark) for move in moves),)))
        for state, moves in kind.machine.moves.items()
    )
    columns = (Column("from"), Column("to, and in what capacity it is signed"))
    return Table(f"How {_a(kind.name)} moves", columns, rows)


def _told(move: Move, mark: str) -> str:
    if move.by is Capacity.MACHINE:
        return f"{move.to}, by itself"
    only = f" where it is {mark} {' or '.join(move.only)}" if move.only else ""
    return f"{move.to}, {move.by}{only}"


def _ends(machine: Machine) -> str:
    said = f"It starts as {machine.start}. Nothing more is owed when it is {' or '.join(machine.rest)}."
    if machine.lapses:
        said += f" It lapses by itself from {' or '.join(machine.lapses)}, when what was signed has moved."
    if machine.ends:
        said += f" An approver can end it at any time: {' or '.join(machine.ends)}."
    return said


def plain(text: str) -> str:
    """A question with its words to be written in quotation marks instead of marks of code.

    >>> plain("What could be done? `leave it` among them.")
    'What could be done? \u201cleave it\u201d among them.'
    """
    return CODE.sub("\u201c\\1\u201d", text)
