"""What the Find box knows: one list of everything that can be found, as a script.

A page opened from a folder may not fetch a file, but it may load a script; so the list is one.
"""

import json
from collections.abc import Iterable
from posixpath import splitext
from urllib.parse import quote

from garboard.views.contents import Entry

__all__ = ["INDEX", "index_script"]

INDEX = "assets/find-index.js"
TEXT, WORDS, KEYS = 160, 400, 24
"""So much of each record at most: 300 records stay within 300 kB."""


def index_script(entries: Iterable[Entry]) -> str:
    """The list of all entries as a classic script."""
    records = [_record(entry) for entry in entries]
    lines = ",\n".join(
        json.dumps(record, ensure_ascii=False, separators=(",", ":")) for record in records
    )
    return f"window.garboardIndex=[\n{lines}\n];\n"


def _record(entry: Entry) -> list[object]:
    address = (
        quote(splitext(entry.path)[0] if entry.path.endswith(".html") else entry.path) + ".html"
    )
    if entry.anchor:
        address += f"#{quote(entry.anchor)}"
    return [
        entry.title,
        entry.kind,
        entry.system,
        address,
        entry.review,
        list(dict.fromkeys(entry.keys))[:KEYS],
        _cut(entry.words, WORDS),
        _cut(entry.text, TEXT),
    ]


def _cut(text: str, longest: int) -> str:
    """Text up to the last whole word that fits."""
    text = " ".join(text.split())
    return text if len(text) <= longest else text[: longest + 1].rpartition(" ")[0]
