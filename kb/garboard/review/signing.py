"""Add one signature to a record, and move its state where the signer says so.

The line is put under `signed`, as the last; nothing else of the file is touched but the `state`.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import fields, replace
from datetime import date
from pathlib import Path

from garboard.errors import GarboardError, Where
from garboard.reading.content import Content
from garboard.reading.edits import Edit, replace_spans
from garboard.reading.record_file import read_markdown
from garboard.records.signoff import SignOff
from garboard.records.system import System
from garboard.review.covers import Cover, Signed

__all__ = [
    "as_signed",
    "reads_back",
    "signed_by",
    "write_signature",
    "write_status",
    "yaml_of",
]

BARE = re.compile(
    r"[A-Za-z](?:[A-Za-z0-9 _.-]*[A-Za-z0-9])?|[0-9a-f]{16}|[0-9a-f]{64}|\d{4}-\d{2}-\d{2}"
)
"""What needs no quotation marks in a mapping on one line."""
NUMBER = re.compile(r"\d+(?:e\d+)?")
"""A digest that another reader of this file could take for a number."""
SPOKEN = ("true", "false", "null", "yes", "no", "on", "off")


def signed_by(line: SignOff, cover: Cover) -> SignOff:
    """A signature with what it covers, as it stands now.

    Args:
        line: Who signs, in what capacity, and what was looked at.
        cover: Of the record.
    """
    return replace(line, digest=cover.own, saw=cover.saw or None)


def as_signed(thing: Signed, line: SignOff) -> Signed:
    """A record or written page as it would stand with one more signature."""
    state = line.to or thing.state
    return replace(thing, signed=(*thing.signed, line), state=state)


def yaml_of(line: SignOff) -> str:
    """A signature as one line of front matter, without what it does not say.

    >>> from garboard.records.signoff import Capacity
    >>> yaml_of(SignOff(capacity=Capacity.WITNESS, by="surveyor-1", on=date(2031, 2, 14)))
    '{capacity: witness, by: surveyor-1, on: 2031-02-14}'
    """
    parts = ((item.name, getattr(line, item.name)) for item in fields(line))
    said = (f"{name}: {_said(value)}" for name, value in parts if value)
    return f"{{{', '.join(said)}}}"


def reads_back(line: SignOff) -> bool:
    """Whether a signature, once written, is read as the very same one.

    >>> from garboard.records.signoff import Capacity
    >>> reads_back(SignOff(capacity=Capacity.WITNESS, by="surveyor-1", on=date(2031, 2, 14)))
    True
    """
    read = read_markdown(f"---\npage: front\nsigned:\n  - {yaml_of(line)}\n---\n", "line.md")
    return not read.diagnostics and getattr(read.thing, "signed", ()) == (line,)


def _said(value: object) -> str:
    if isinstance(value, tuple):
        return f"[{', '.join(map(_said, value))}]"
    if isinstance(value, dict):
        return f"{{{', '.join(f'{_said(key)}: {_said(each)}' for key, each in value.items())}}}"
    text = value.isoformat() if isinstance(value, date) else str(value)
    plain = BARE.fullmatch(text) and text.casefold() not in SPOKEN and not NUMBER.fullmatch(text)
    return text if plain else json.dumps(text, ensure_ascii=False)


def write_signature(folder: Path, content: Content, thing: Signed, line: SignOff) -> None:
    """Write one signature into the file of a record or written page.

    Args:
        folder: The content folder.
        content: As it was read.
        thing: The record or page.
        line: The signature, with its digest and what it saw.

    Raises:
        GarboardError: The file has changed since it was read, or its front matter is written in a
            way that a line cannot be put into.
    """
    path = thing.where.path
    edits = list(_edits(thing, line))
    replace_spans(folder, path, edits, content.digests[path])


def write_status(folder: Path, content: Content, system: System, line: SignOff) -> None:
    """Write one signature on a system's status, and the status that it moves to, into its file.

    Args:
        folder: The content folder.
        content: As it was read.
        system: The system.
        line: The signature; `to` is the new status.

    Raises:
        GarboardError: The file has changed since it was read, or writes status or signatures in a way
            that a line cannot be put into.
    """
    status, path = system.places.get("status"), system.where.path
    if status is None:
        raise GarboardError(f"{path} has no line status:; write status: {system.status} first")
    edits = [Edit(status, str(system.status), str(line.to))]
    added = f"- {yaml_of(line)}\n"
    last = system.places.get(f"signed[{len(system.signed) - 1}]")
    if system.signed and last:
        below = Where(path, last.line + 1, 1)
        edits.append(Edit(below, "", f"{' ' * max(0, last.column - 3)}{added}"))
    else:
        edits.append(Edit(Where(path, status.line + 1, 1), "", f"signed:\n  {added}"))
    replace_spans(folder, path, edits, content.digests[path])


def _edits(thing: Signed, line: SignOff) -> Iterator[Edit]:
    end = Where(thing.where.path, _closing(thing), 1)
    state = thing.places.get("state")
    added = ""
    if line.to and line.to != thing.state:
        if state and thing.state:
            yield Edit(state, thing.state, line.to)
        else:
            added = f"state: {line.to}\n"
    first = thing.places.get("signed[0]")
    if "signed" in thing.places and not thing.signed:
        raise GarboardError(f"{thing.place('signed')} holds no signature; take the empty key out")
    if thing.signed and first:
        if thing.place("signed").column > len("signed:"):
            raise GarboardError(
                f"{thing.place('signed')} writes its signatures on one line; "
                "give each a line of its own that starts with - first"
            )
        after = _after_signed(thing, end)
        indent = " " * max(0, first.column - 3)
        if added:
            yield Edit(end if after.line != end.line else after, "", added)
        yield Edit(after, "", f"{indent}- {yaml_of(line)}\n")
    else:
        yield Edit(end, "", f"{added}signed:\n  - {yaml_of(line)}\n")


def _closing(thing: Signed) -> int:
    """The line that closes the front matter: the one before the text."""
    return thing.text_line - 1


def _after_signed(thing: Signed, end: Where) -> Where:
    """The first line behind the list of signatures: the next key of the file, or its end."""
    start = thing.place("signed").line
    keys = (
        where.line
        for key, where in thing.places.items()
        if "." not in key and "[" not in key and where.line > start
    )
    return replace(end, line=min((*keys, end.line)))
