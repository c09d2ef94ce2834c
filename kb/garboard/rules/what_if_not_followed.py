"""A number is opened to the reader, and something that rests on it cannot follow in the page.

Why: a reader who changes a number takes it that everything beside it has changed too. The tables of
rules and makers are not in the page, so what is read from one at an opened number stays behind; the
page says "not followed here" in its place.

Fix: open a number that no table is read at, or keep the table's row fixed by a number of its own; an
opened number that nothing rests on is left out of what-if.
"""

import json
from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.sheet import Sheet
from garboard.errors import Diagnostic, Severity

CODE = "what-if-not-followed"
SEVERITY = Severity.NOTE
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look through every fence that opens numbers."""
    for sheet in book.network.sheets.values():
        if sheet.options.what_if:
            found = json.loads(sheet.what_if or "{}")
            yield from _unused(sheet, {one["name"] for one in found.get("inputs", ())})
            yield from _behind(sheet, found)


def _unused(sheet: Sheet, open_: set[str]) -> Iterator[Diagnostic]:
    """Opened numbers that nothing in the fence rests on."""
    for line in sheet.lines:
        value = line.value
        if line.name not in sheet.options.what_if or line.name in open_:
            continue
        if value and value.given and value.si is not None:
            text = f"what-if opens `{line.name}`, and nothing in this fence rests on it"
            cure = "leave it out of what-if, or open a number that a result rests on"
            yield Diagnostic(line.where, SEVERITY, text, cure, CODE, sheet.name)


def _behind(sheet: Sheet, found: dict[str, list[dict[str, object]]]) -> Iterator[Diagnostic]:
    """Lines whose results or judgement stay behind, each once."""
    cure = "open a number that no table is read at, or take that result into a fence of its own"
    lost = {str(one["name"]) for one in found.get("results", ()) if one["code"] is None}
    lines = {name.partition(".")[0] for name in lost}
    judged = {str(one["text"]) for one in found.get("requirements", ()) if one["left"] is None}
    for line in sheet.lines:
        text = line.requirement.text if line.requirement else ""
        if line.name in lines or text in judged:
            said = f"`{text or line.name}` rests on a table that is read at an opened number"
            text = f"{said}, and does not follow in the page"
            yield Diagnostic(line.where, SEVERITY, text, cure, CODE, sheet.name)
