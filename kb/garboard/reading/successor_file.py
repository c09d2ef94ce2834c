"""The file of a record that takes the place of another: its text, without what belongs to the old one.

State, signatures, revision, the day, a second determination and what was filled in later are left
out, because they are true of the old record. A calculation gets a name of its own, as no two may have one.
"""

import re
from collections.abc import Collection
from dataclasses import dataclass, fields
from datetime import date

from garboard.errors import GarboardError
from garboard.reading.blank import plain
from garboard.reading.fences import find_fences
from garboard.reading.record_file import read_markdown
from garboard.records.base import Asked, Record

__all__ = ["Successor", "successor_text"]

KEY = re.compile(r"(?P<key>[A-Za-z_]+):")
BELONGS = re.compile(r"[ \t]|- |-$")
"""How a line starts that belongs to the key above it."""
OWN = frozenset(
    "id state signed supersedes follows revision drafted author title effective second"
    " reconciled".split()
)


@dataclass(frozen=True, slots=True)
class Successor:
    """A file that is not written yet."""

    text: str
    left_out: tuple[str, ...]
    """Keys of the old record that it does not have."""
    renamed: tuple[tuple[str, str], ...] = ()
    """Calculations, by their old and new names."""


def successor_text(  # noqa: PLR0913 - what the new record has of its own
    old: Record,
    text: str,
    ident: str,
    *,
    title: str,
    author: str,
    drafted: date | None,
    blocks: Collection[str],
) -> Successor:
    """Write a record that supersedes another.

    Args:
        old: The record whose place it takes.
        text: The whole file of the old one.
        ident: The new id.
        title: Of the new one.
        author: Who writes it; empty: not said yet.
        drafted: The day; left out where the name of the file says it.
        blocks: Every name of a calculation that is taken.

    Raises:
        GarboardError: The old file is written in a way that cannot be copied.
    """
    lines = text.split("\n")
    end = old.text_line - 2
    if not lines or lines[0].rstrip() != "---" or lines[end].rstrip() != "---":
        raise GarboardError(f"{old.where.path} cannot be copied; start with garboard new")
    kept, left = _head(lines[1:end], OWN | _later(type(old)))
    own = {"id": ident, "title": plain(title), "system": "", "author": author}
    own |= {"drafted": drafted.isoformat() if drafted else "", "supersedes": str(old.id)}
    head = [f"{key}: {word}" for key, word in own.items() if word]
    body, renamed = _renamed("\n".join(lines[end + 1 :]), blocks)
    made = "\n".join(("---", *head, *kept, "---", body))
    _look_at(made, old, ident)
    stated = {"id", "title", "drafted", "supersedes"} | ({"author"} if author else set())
    return Successor(made, tuple(key for key in left if key not in stated), renamed)


def _later(kind: type[Record]) -> frozenset[str]:
    """Keys that are filled in after the signature."""
    asked = ((item.name.rstrip("_"), item.metadata.get("asked")) for item in fields(kind))
    return frozenset(key for key, one in asked if isinstance(one, Asked) and one.later)


def _head(lines: list[str], without: Collection[str]) -> tuple[list[str], list[str]]:
    """The lines of a front matter without some keys, and those of the keys that it had."""
    kept: list[str] = []
    left: list[str] = []
    dropping = False
    for line in lines:
        found = KEY.match(line)
        if found:
            dropping = found["key"] in without
            left += [found["key"]] if dropping else []
        elif not BELONGS.match(line):
            dropping = False
        if not dropping:
            kept.append(line)
    return kept, left


def _renamed(body: str, taken: Collection[str]) -> tuple[str, tuple[tuple[str, str], ...]]:
    """A text whose calculations have names of their own, also where it quotes them itself."""
    names = [fence.name for fence in find_fences(body, "").fences if fence.name]
    fresh = []
    for name in names:
        number = 2
        while f"{name}-{number}" in taken:
            number += 1
        fresh.append((name, f"{name}-{number}"))
        fence = rf"(?m)^(\s*`{{3,}}\s*calc\s+){re.escape(name)}(?![\w-])"
        body = re.sub(fence, rf"\g<1>{name}-{number}", body)
        body = re.sub(rf"(?<![\w.-]){re.escape(name)}\.(?=[A-Za-z])", f"{name}-{number}.", body)
    return body, tuple(fresh)


def _look_at(made: str, old: Record, ident: str) -> None:
    """Refuse a copy that is not read as what it should be.

    Raises:
        GarboardError: It is not.
    """
    read = read_markdown(made, old.where.path)
    thing = read.thing
    right = isinstance(thing, type(old)) and thing.id == ident and thing.supersedes == old.id
    if not right or read.diagnostics or not isinstance(thing, Record) or thing.signed:
        raise GarboardError(f"{old.where.path} cannot be copied; start with garboard new")
