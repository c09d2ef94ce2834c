"""A text as prose: fences, code and comments blanked sign for sign, and the place of every sign.

Nothing is left out, so that what is found in the blanked text stands at the same place in the file.
"""

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from garboard.errors import Where
from garboard.reading.content import Written
from garboard.reading.fences import find_fences

__all__ = ["Prose", "bodies", "prose_of"]

COMMENT = re.compile(r"<!--.*?(?:-->|\Z)", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Prose:
    """A text on which one looks for links, headings and tags."""

    written: Written
    text: str
    """Blanked; as long as the text as written."""
    starts: tuple[int, ...]
    """Where each line starts."""

    def place(self, offset: int) -> Where:
        """The place in the file of a sign in the text."""
        line = bisect_right(self.starts, offset) - 1
        first = self.written.where
        column = offset - self.starts[line] + (first.column if line == 0 else 1)
        return Where(first.path, first.line + line, column)


def prose_of(written: Written) -> Prose:
    """A text with fences, code and comments blanked."""
    lines = written.text.split("\n")
    for first, last in find_fences(written.text, "").spans:
        lines[first : last + 1] = [" " * len(line) for line in lines[first : last + 1]]
    rest = COMMENT.sub(lambda found: _blank(found[0]), "\n".join(lines)).split("\n")
    paragraphs = ("\n".join(rows) for _, rows in groupby(rest, key=lambda row: bool(row.strip())))
    text = "\n".join(_without_code(paragraph) for paragraph in paragraphs)
    starts = (0, *(found.end() for found in re.finditer("\n", text)))
    return Prose(written, text, starts)


def bodies(texts: Iterable[Written]) -> Iterator[Written]:
    """The Markdown under the front matter; what stands in a field is no Markdown."""
    return (written for written in texts if not written.field)


def _without_code(paragraph: str) -> str:
    """A paragraph without its code: from a run of backticks to the next run as long."""
    runs = [found.span() for found in re.finditer("`+", paragraph)]
    later: dict[int, list[tuple[int, int]]] = {}
    for start, end in reversed(runs):
        later.setdefault(end - start, []).append((start, end))
    parts, done = [], 0
    for start, end in runs:
        alike = later[end - start]
        while alike and alike[-1][0] <= start:
            alike.pop()
        if start >= done and alike:
            closing = alike[-1][1]
            parts += [paragraph[done:start], _blank(paragraph[start:closing])]
            done = closing
    return "".join((*parts, paragraph[done:]))


def _blank(text: str) -> str:
    return re.sub(r"[^\n]", " ", text)
