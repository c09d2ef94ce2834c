"""The one form in which a record is signed: what it says, without how it is laid out.

White space, line breaks inside a paragraph, comments, the labels of calculation lines and the order
of keys change no meaning and are not part of it; nor is a number that is quoted from its one place,
which is weighed as a value. Every word, number, unit, source and criterion is. A field that is
empty counts as not written, so that a later edition of this tool may add fields.
"""

import hashlib
import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import Field, fields, is_dataclass
from datetime import date
from enum import Enum
from functools import cache
from typing import Any

from garboard.calc.fault import CalcFault, Line, Span
from garboard.calc.quoting import LEADING_NUMBER
from garboard.calc.tokens import read_tokens
from garboard.calc.units import read_unit
from garboard.calc.value import Given
from garboard.errors import Where
from garboard.reading.fences import find_fences
from garboard.reading.references import VALUE_LINK
from garboard.records.base import Asked
from garboard.review.comments import outside_code, without_comments

__all__ = [
    "FORM",
    "SHORT",
    "canonical",
    "digest_of",
    "left_out",
    "own_digest",
    "said",
    "whole_digest",
]

FORM = "garboard record, form 1"
"""Stands in front of what is digested; a new form would be another digest."""
SHORT = 16
"""Signs of a digest that are kept: 64 bits, enough against mistakes. Against forgery stands a
cryptographic signature over the whole."""

UNSIGNED = ("state", "signed")
BLOCK_START = re.compile(r"\s*(?:#{1,6}\s|[-*+]\s|\d{1,9}[.)]\s|>|\||-{3,}|={3,}|\[[^\]]+\]:)")
SET_IN = re.compile(r"(?: {4}| {0,3}\t)")
ROW = re.compile(r"(?<!\\)\|")
RULED = re.compile(r"[\s:|-]*-[\s:|-]*")
"""The line under the head of a table, or a plain rule."""
SOURCES = re.compile(r"\[([^\[\]]*)\]")


def own_digest(thing: object) -> str:
    """The digest of what a record, a component or a source says.

    Args:
        thing: A record, written page, component or source.

    Returns:
        The first 16 signs of the SHA-256 of its canonical form.
    """
    return whole_digest(thing)[:SHORT]


def whole_digest(thing: object) -> str:
    """The same in its full length of 64 signs, as a signature with a proof keeps it.

    An author can make two texts with one short digest; with one whole digest nobody can.
    """
    return _hash(canonical(thing))


def digest_of(text: str) -> str:
    """The digest of a canonical form.

    >>> digest_of('{"title":"a"}')
    '946406a9effb07c4'
    """
    return _hash(text)[:SHORT]


def _hash(text: str) -> str:
    return hashlib.sha256(f"{FORM}\n{text}".encode("utf-8", "surrogatepass")).hexdigest()


def canonical(thing: object) -> str:
    """What a record, component or source says, as JSON with sorted keys.

    Left out are `state`, `signed`, and the fields that its kind fills after the signature.
    """
    own = dict(_fields(thing))
    text = getattr(thing, "text", "")
    if isinstance(text, str) and text.strip():
        own["text"] = _text(text)
    return json.dumps(own, sort_keys=True, ensure_ascii=False, separators=(",", ":"))


@cache
def left_out(kind: type) -> frozenset[str]:
    """The keys of a kind that no signature covers: `state`, `signed` and the later fields."""
    return frozenset(item.name.rstrip("_") for item in fields(kind) if _left_out(item))


def _left_out(item: Field[Any]) -> bool:
    wanted = item.metadata.get("asked")
    later = isinstance(wanted, Asked) and wanted.later
    return item.name in UNSIGNED or bool(item.metadata.get("beside")) or later


@cache
def _covered(kind: type) -> tuple[tuple[str, str, Any], ...]:
    """Attribute, key and default of the fields that a signature covers."""
    return tuple(
        (item.name, item.name.rstrip("_"), item.default)
        for item in fields(kind)
        if not _left_out(item)
    )


def _fields(thing: Any) -> Iterator[tuple[str, Any]]:  # noqa: ANN401 - any dataclass of records
    for name, key, default in _covered(type(thing)):  # type: ignore[arg-type]  # a class is hashable
        value = getattr(thing, name)
        if value is None or value == ():
            continue
        told = said(value)
        unsaid = isinstance(value, int) and value == default  # a `no` that is no default counts
        if told not in ("", [], {}) and not unsaid:
            yield key, told


def said(value: Any) -> Any:  # noqa: ANN401, PLR0911 - what a field holds; one case for each sort
    """What a field says, as texts, numbers, lists and tables, without how it is laid out."""
    match value:
        case Given():
            sources = [" ".join((one.source, one.clause)).strip() for one in value.sources]
            return [value.shown, value.tolerance, *sorted(sources)]
        case Enum():
            return str(value.value)
        case str():
            return _inline(value)
        case date():
            return value.isoformat()
        case Mapping():
            return {_inline(str(key)): said(element) for key, element in value.items()}
        case tuple() | list():
            return [said(element) for element in value]
        case _ if is_dataclass(value) and not isinstance(value, type):
            return dict(_fields(value))
        case _:
            return value


def _inline(text: str) -> str:
    """A text in one line, its quoted numbers left out."""
    if "](value:" not in text:
        return " ".join(text.split())
    return " ".join(outside_code(text, VALUE_LINK, _quotation).split())


def _quotation(found: re.Match[str]) -> str:
    """A quotation without the number, which is weighed as a value; words behind it stay."""
    words = " ".join(found["text"].split()).replace("\u2212", "-")
    number = LEADING_NUMBER.match(words)
    words = words[number.end() :] if number else words
    if _is_unit(words.strip()):
        words = ""
    unit = f"?in={found['unit']}" if found["unit"] else ""
    return f"[{words}](value:{found['address']}{unit})"


def _is_unit(words: str) -> bool:
    try:
        read_unit(words)
    except (CalcFault, LookupError, ValueError):
        return False
    return True


def _text(text: str) -> list[str]:
    """The Markdown of a record, paragraph by paragraph; a calculation statement by statement."""
    found = find_fences(text, "")
    calcs = {fence.span[0]: fence.name for fence in found.fences}
    lines = text.split("\n")
    parts: list[str] = []
    at = 0
    for first, last in sorted(found.spans):
        parts += _paragraphs("\n".join(lines[at:first]))
        inside = lines[first + 1 : last]
        if first in calcs:
            statements = sorted(filter(None, map(_statement, inside)))
            parts.append("\n".join((f"calc {calcs[first]}", *statements)))
        else:
            parts.append("\n".join(line.rstrip() for line in lines[first : last + 1]))
        at = last + 1
    return [*parts, *_paragraphs("\n".join(lines[at:]))]


def _paragraphs(text: str) -> list[str]:
    """Paragraphs, headings, list lines and rows, each in one line; set-in code line by line."""
    parts: list[list[str]] = []
    joins = code = False
    for line in without_comments(text).split("\n"):
        if not line.strip():
            joins = False
            continue
        code = bool(SET_IN.match(line)) and (code or not joins)
        row = ROW.search(line)
        starts = BLOCK_START.match(line)
        if joins and not (starts or row or code):
            parts[-1].append(line)
            continue
        indent = line[: len(line) - len(line.lstrip())].expandtabs(4) if starts or code else ""
        parts.append([indent + (_cells(line) if row and not code else line.strip())])
        joins = not row
    return [_set_out(part) for part in parts]


def _set_out(lines: list[str]) -> str:
    first = lines[0]
    return first[: len(first) - len(first.lstrip())] + _inline("\n".join(lines))


def _cells(line: str) -> str:
    """A row of a table without what only lines up its columns."""
    if RULED.fullmatch(line):
        line = re.sub("-+", "-", line)
    return "|".join(cell.strip() for cell in ROW.split(line.strip()))


def _statement(line: str) -> str:
    """One line of a calculation: its words and signs, and its sources, without what it is called."""
    code, _, comment = line.partition("#")
    sources = sorted(
        " ".join(one.split())
        for found in SOURCES.findall(comment)
        for one in found.split(",")
        if one.strip()
    )
    if not code.strip():
        return ""
    return " ".join((_words(code), *(f"[{source}]" for source in sources)))


def _words(code: str) -> str:
    """The words and signs of a statement with one space between; as typed where it is none."""
    try:
        tokens = read_tokens(Line(code, Where(""), ""), 0, len(code))
    except CalcFault:
        return " ".join(code.split())
    return " ".join(token.text for token in tokens if token.span != Span(0, 0)).strip()
