"""A started record: the few lines that make it legal, and every other field as a question.

What is asked stands as a comment, in the order in which it is wanted; who can answer takes the `#`
away. A blank reads back as a record without a fault.
"""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import fields
from datetime import date
from enum import Enum
from typing import Any

from garboard.calc.value import Given
from garboard.reading.shapes import Key, keys_of, members_of, words_for
from garboard.reading.yaml_refusals import quote
from garboard.records.base import Asked, Record
from garboard.records.kinds import Kind, Place
from garboard.records.questions import meaning_of, questions_of

__all__ = ["blank", "next_id", "path_for", "plain"]

NOT_ASKED = {"id", "revision", "signed"}
"""Given by the commands, and not asked."""
PLAIN = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ,./()-]*[A-Za-z0-9)]|[A-Za-z0-9]")
FIRST = "first of all"
BODY = "<!-- One sentence at least: what is it about? -->"
HINT = "# Take the # away in front of what you can answer; the rest may stay a question."


def blank(  # noqa: PLR0913 - the lines that are written at once
    kind: Kind,
    system: str,
    ident: str,
    title: str,
    *,
    author: str = "",
    drafted: date | None = None,
) -> str:
    """Start a record.

    Args:
        kind: Of which kind.
        system: Code of the system.
        ident: Its id; empty for one that is not filed yet.
        title: A noun phrase.
        author: Key of the person who starts it.
        drafted: The day; left out where the name of the file says it.
    """
    known = {"id": ident, "title": title, "system": system, "author": author}
    lines = ["---", f"# {kind.name.capitalize()}. {meaning_of(kind.record)}", HINT]
    lines += [f"{key}: {plain(text)}" for key, text in known.items() if text]
    if not ident:
        lines.append(f"kind: {kind.name}")
    if drafted:
        lines.append(f"drafted: {drafted.isoformat()}")
    written = {key for key, text in known.items() if text} | ({"drafted"} if drafted else set())
    questions = questions_of(kind.record)
    for heading, keys in _groups(kind, written | NOT_ASKED):
        lines += ["", f"# -- {heading} --"]
        for key in keys:
            lines += _asked(key, questions.get(key.name, ""))
    return "\n".join((*lines, "---", BODY, ""))


def _groups(kind: Kind, written: set[str]) -> Iterator[tuple[str, list[Key]]]:
    """The fields in the order in which they are wanted."""
    keys = keys_of(kind.record)
    envelope = {item.name for item in fields(Record)}
    groups: dict[str, list[Key]] = {}
    for item in fields(kind.record):
        key = keys.get(item.name.rstrip("_"))
        if item.metadata.get("beside") or key is None or key.key in written:
            continue
        asked = item.metadata.get("asked", Asked())
        heading = _heading(asked, kind, item.name, own=item.name not in envelope)
        groups.setdefault(heading, []).append(key)
    yield from sorted(groups.items(), key=lambda group: _rank(group[0]))


def _heading(asked: Asked, kind: Kind, key: str, *, own: bool) -> str:
    if key == "class_":
        return FIRST
    if asked.later:
        return "filled in later, when it has happened"
    if asked.before_leaving_start:
        return f"wanted before it leaves the state {kind.machine.start}"
    if asked.classes:
        classes = " and ".join(asked.classes)
        return f"wanted of class {classes} before it comes to rest"
    return "where it helps" if own else "of every record, where it applies"


def _rank(heading: str) -> tuple[int, str]:
    order = (FIRST, "wanted before", "wanted of", "where it helps", "filled in", "of every")
    return next(n for n, start in enumerate(order) if heading.startswith(start)), heading


def _asked(key: Key, question: str) -> list[str]:
    """One field as a question."""
    choice = _choice(key.hint)
    lines = [f"# {question}{choice}"]
    members = members_of(key.hint)
    part = members_of(members.item).part if members.lists else members.part
    if part is None:
        lines = [f"# {question}{choice}{_shape(members.entry, of_each=True)}"]
        empty = " []" if members.lists and not members.words else ""
        return [*lines, f"#{key.key}:{empty}"]
    lines.append(f"#{key.key}:")
    questions = questions_of(part)
    lead = "#  - " if members.lists else "#  "
    for inner in keys_of(part).values():
        asks = f"{questions.get(inner.name, '')}{_choice(inner.hint)}{_shape(inner.hint)}"
        lines.append(f"{lead}{inner.key}:  # {asks}")
        lead = "#    " if members.lists else "#  "
    return lines


def _shape(hint: Any, *, of_each: bool = False) -> str:  # noqa: ANN401 - a type hint
    """How a thing with keys of its own is written, behind the question."""
    part = members_of(hint).part if hint is not None else None
    if part is None:
        return ""
    keys = ", ".join(f"{key}: ..." for key in keys_of(part))
    return f" (a line each, written ...: {{{keys}}})" if of_each else f" (written {{{keys}}})"


def _choice(hint: Any) -> str:  # noqa: ANN401 - a type hint
    """The words of a closed list, behind the question."""
    members = members_of(hint)
    words = members.words or (members_of(members.item).words if members.lists else ())
    closed = [part for part in words if part is not Given]
    if any(isinstance(part, type) and issubclass(part, Enum) for part in closed):
        return f" ({words_for(hint)})"
    return ""


def plain(text: str) -> str:
    """Text as a value, in quotes where it could be misread."""
    return text if PLAIN.fullmatch(text) else quote(" ".join(text.split()))


def next_id(taken: Iterable[str], system: str, letters: str) -> str:
    """The next free id or tag: above every number that was ever given.

    Args:
        taken: Every id and tag, retired ones included.
        system: Code of the system.
        letters: Of the kind.

    >>> next_id(["SA-FN-012", "SA-RV-900"], "SA", "FN")
    'SA-FN-013'
    """
    start = f"{system}-{letters}-"
    numbers = [int(name[6:]) for name in taken if name.startswith(start) and name[6:].isdigit()]
    return f"{start}{max(numbers, default=0) + 1:03}"


def path_for(kind: Kind, folder: str, ident: str, title: str, day: date) -> str:
    """Where the file of a new record belongs.

    Args:
        kind: Of which kind.
        folder: Path of the system's folder, `systems/starting-air`.
        ident: Its id; empty for one that is not filed yet.
        title: Its title.
        day: The day it is started.
    """
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode("ascii")
    words = re.sub(r"[^a-z0-9]+", "-", plain.casefold())[:60].strip("-") or "record"
    if kind.place is Place.SYSTEM and ident:
        return f"{folder}/{ident.lower()}-{words}.md"
    return f"log/{day.year}/{day.isoformat()}-{words}.md"
