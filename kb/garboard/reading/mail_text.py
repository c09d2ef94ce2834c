"""A text as it came by mail, with undone what mail programs do to it: quoting, folding, odd spaces.

Nothing is thrown away: each line keeps its number in the file, so that what nobody could read can be
pointed at.
"""

import quopri
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import takewhile

from garboard.records.reply import Remark

__all__ = ["MailLine", "Mailed", "read_mail"]

MARKS = ">|\u203a\u00bb"
QUOTED = re.compile(rf"[ \t]*(?:[{MARKS}][ \t]?)+")
ESCAPED = re.compile(r"=(?:[0-9A-F]{2}|$)", re.MULTILINE)
SURE = re.compile(r"=(?:20)?$|=[C-F][0-9A-F](?:=\n)?=[89AB][0-9A-F]", re.MULTILINE)
"""What only quoted-printable text holds: a line that ends so, or a letter in several bytes."""
LEFT_OVER = re.compile(r"(?:=20|=)$")
SEVERAL = 3
"""So many lines end in such a rest that it is none of the writer's own: `set=20` may be."""
JOINERS = "\u200c\u200d"
"""Signs that cannot be seen and that some scripts need."""
TICKED = str.maketrans({"\u2611": "[x]", "\u2612": "[x]", "\u2705": "[x]", "\u2610": "[ ]"})


@dataclass(frozen=True, slots=True)
class MailLine:
    """One line, without its quotation marks and odd spaces."""

    number: int
    """In the file, from 1."""
    text: str
    marks: str = ""
    """The marks that it is quoted with."""

    def beyond(self, marks: str) -> str:
        """The line with the marks that are its own words: those beyond what all around is quoted with."""
        alike = takewhile(lambda pair: pair[0] == pair[1], zip(self.marks, marks, strict=False))
        return f"{self.marks[sum(1 for _ in alike) :]} {self.text}".strip()


@dataclass(frozen=True, slots=True)
class Mailed:
    """The lines of a mail, and what had to be said about them."""

    lines: tuple[MailLine, ...]
    remarks: tuple[Remark, ...] = ()


def read_mail(text: str) -> Mailed:
    r"""Undo what mail programs do.

    Args:
        text: As it came, with plain line feeds.

    >>> [line.text for line in read_mail("> > DATE:\u00a02031=20\n").lines][0]
    'DATE: 2031'
    """
    remarks: list[Remark] = []
    rows = list(enumerate(text.split("\n"), 1))
    sure = SURE.search(text)
    if sure and len(ESCAPED.findall(text)) == text.count("="):
        first = text.count("\n", 0, sure.start()) + 1
        remarks.append(Remark(first, first, "the text is quoted-printable; it was decoded"))
        rows = list(_decoded(rows))
    lines = []
    left = [(number, found[0]) for number, row in rows if (found := LEFT_OVER.search(row))]
    leaves_out = len(left) >= SEVERAL
    for number, sign in left:
        done = "it was left out" if leaves_out else "it was left as it is"
        remarks.append(
            Remark(number, number, f"ends in {sign!r}, as from quoted-printable; {done}")
        )
    for number, row in rows:
        bare = _plain(LEFT_OVER.sub("", row) if leaves_out else row)
        marks = QUOTED.match(bare)
        signs = "".join(sign for sign in marks[0] if sign in MARKS) if marks else ""
        lines.append(MailLine(number, bare[marks.end() :] if marks else bare, signs))
    return Mailed(tuple(lines), tuple(remarks))


def _decoded(rows: list[tuple[int, str]]) -> Iterator[tuple[int, str]]:
    """Lines without soft breaks and escaped bytes; each with the number of its first part."""
    start, held = 0, ""
    for number, row in rows:
        start = start or number
        stripped = row.rstrip(" \t")
        if stripped.endswith("="):
            held += stripped[:-1]
            continue
        data = quopri.decodestring((held + row).encode("utf-8"))
        yield start, data.decode("utf-8", "replace")
        start, held = 0, ""
    if held:
        yield start, quopri.decodestring(held.encode("utf-8")).decode("utf-8", "replace")


def _plain(row: str) -> str:
    """A line with plain spaces, without signs that cannot be seen."""
    kept = []
    for sign in row.translate(TICKED):
        sort = unicodedata.category(sign)
        if sort in ("Zs", "Zl", "Zp") or sign in "\t\x0b\x0c\u3164\u115f\u1160\uffa0":
            kept.append(" ")
        elif sort[0] != "C" or sign in JOINERS:
            kept.append(sign)
    return "".join(kept).rstrip()
