"""What the Find box knows: one list of everything that can be found, as a script.

A page opened from a folder may not fetch a file, but it may load a script; so the list is one. Words
that many entries share (kinds, systems, review states) are written once and named by their number;
what can be worked out again is left out: `.html`, and an anchor that is the first name of its entry.
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
    """The list of all entries as a classic script: `{said, list}`."""
    said: dict[str, int] = {}
    records = [_record(entry, said) for entry in entries]
    lines = ",\n".join(_json(record) for record in records)
    return f'window.garboardIndex={{"said":{_json(list(said))},"list":[\n{lines}\n]}};\n'


def _json(what: object) -> str:
    """As JSON that may stand inside a script element: nothing in it can end that."""
    text = json.dumps(what, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _record(entry: Entry, said: dict[str, int]) -> list[object]:
    """Title, kind, system, review, address, anchor, names, words, text, digest; empty ends left out."""
    kind, system, review = (
        said.setdefault(words, len(said)) for words in (entry.kind, entry.system, entry.review)
    )
    path = splitext(entry.path)[0] if entry.path.endswith(".html") else entry.path
    keys = list(dict.fromkeys(entry.keys))[:KEYS]
    anchor: object = 1 if keys and entry.anchor == keys[0] else quote(entry.anchor)
    record = [entry.title, kind, system, review, quote(path), anchor, keys]
    record += [_cut(entry.words, WORDS), _cut(entry.text, TEXT), entry.digest]
    while record[-1] in ("", []):
        record.pop()
    return record


def _cut(text: str, longest: int) -> str:
    """Text up to the last whole word that fits."""
    text = " ".join(text.split())
    return text if len(text) <= longest else text[: longest + 1].rpartition(" ")[0]
