"""The sheets a book is printed on: sizes and margins, and what each sheet says at its edges.

A browser's paper knows nothing of the article that stands on it, so each article, or a row of short
ones, gets a paper of its own name. Sheets are taken out, carried to the engine and copied: each
says by itself what it is, of which edition, until when, and how far it was reviewed.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from textwrap import shorten

from garboard.views.page import Page
from mkdocs_garboard.furniture import quoted

__all__ = ["SIZES", "Leaf", "Size", "leaves", "paper"]

COPY_LINE = "Printed on ________, copy no. ___; without it uncontrolled, for that day."
LONGEST = 66
"""Letters at the head of a sheet: two lines of A5, beside the name of the system."""
FOLD_OUT = "size:A4 landscape;margin:17mm 10mm 17mm"
"""Schematics and wide tables: on A4 bound at its long edge, in an A5 binder folded once."""
ALONE = frozenset(
    ("what it does", "open against it", "layout", "normal values", "procedure", "isolation", "watch round",
     "log sheet", "how to rebuild it", "register")
)  # fmt: skip
"""Kinds of which each page begins on a sheet of its own, with nothing else on it; all others follow
each other, with what belongs to the same system."""
HEAD = ":is(.title-block,.which-copy,h1)"
ABOVE = "vertical-align:bottom;padding-bottom:.5mm;"
BELOW = "vertical-align:top;padding-top:2mm;"
EDGE = "font:10pt/1.15 sans-serif;white-space:pre-line;"


@dataclass(frozen=True, slots=True)
class Size:
    """A size of paper."""

    name: str
    sheet: str
    """For a stylesheet: size and margins, those of the bound edge last."""


SIZES = {
    "a4": Size("A4", "size:A4;margin:15mm 15mm 18mm 25mm"),
    "a5": Size("A5", "size:A5;margin:12mm 10mm 18mm 18mm"),
}


@dataclass(frozen=True, slots=True)
class Leaf:
    """Pages printed on sheets of one name."""

    name: str
    pages: tuple[Page, ...]
    section: str
    """`3.12`, or `3.12 to 3.19` where several share it."""

    @property
    def head(self) -> str:
        """What stands at the head of each of its sheets."""
        first = self.pages[0]
        if len(self.pages) == 1:
            return " · ".join(part for part in (self.section, first.ident, first.title) if part)
        return f"{self.section} · {first.title} to {self.pages[-1].title}"

    @property
    def state(self) -> str:
        """How far they were reviewed; of several only that each says so itself."""
        states = {page.review.words.partition(".")[0] for page in self.pages}
        return states.pop() if len(states) == 1 else "review state: at the head of each"


def leaves(numbered: Iterable[tuple[str, Page]]) -> tuple[Leaf, ...]:
    """Pages with the numbers of their sections, put on sheets.

    Args:
        numbered: Number of its section and page, in reading order.
    """
    rows: list[list[tuple[str, Page]]] = []
    for section, page in numbered:
        before = rows[-1][-1][1] if rows else None
        alone = page.kind in ALONE or before is None or before.kind in ALONE
        if before and not alone and before.system == page.system:
            rows[-1].append((section, page))
        else:
            rows.append([(section, page)])
    return tuple(
        Leaf(
            f"leaf-{number}",
            tuple(page for _, page in row),
            row[0][0] if len(row) == 1 else f"{row[0][0]} to {row[-1][0]}",
        )
        for number, row in enumerate(rows)
    )


def paper(made: Iterable[Leaf], size: Size, title: str, foot: str) -> str:
    """The rules for every sheet of a book, as text of a stylesheet.

    Args:
        made: Its leaves.
        size: Of the paper.
        title: Of the book, for sheets that hold no page of it.
        foot: Edition and until when it is valid.
    """
    return "".join(_rules(made, size, title, foot))


def _rules(made: Iterable[Leaf], size: Size, title: str, foot: str) -> Iterator[str]:
    yield f"@page{{{size.sheet};{_edges(title, '', foot, '')}}}"
    for leaf in made:
        side = leaf.pages[0].system_title
        said = _edges(leaf.head, side, foot, leaf.state)
        wide = f"{leaf.name}-wide"
        yield f"@page {leaf.name}{{{size.sheet};{said}}}@page {wide}{{{FOLD_OUT};{said}}}"
        yield (
            f"@media print{{#{leaf.name},#{leaf.name} .sheet{{page:{leaf.name}}}"
            f"#{leaf.name} :is(.schematic,p:has(+ .schematic),h2:has(+ .schematic,+ p + .schematic)),"
            f"#{leaf.name} .sheet:has(> h1 + .schematic) > {HEAD},"
            f"#{leaf.name} .sheet:has(> .log-sheet),"
            f".a4 #{leaf.name} .sheet:has(> .wide,> .scroll > .wide){{page:{wide}}}}}"
        )


def _edges(head: str, side: str, foot: str, state: str) -> str:
    number = "'page 'counter(page)' of 'counter(pages)"
    left = quoted(shorten(head, LONGEST, placeholder=" ..."))
    right = _lines(quoted(side), number)
    below = _lines(quoted(foot), quoted(state), quoted(COPY_LINE))
    return (
        f"@top-left{{{EDGE}{ABOVE}content:{left}}}"
        f"@top-right{{{EDGE}{ABOVE}text-align:right;white-space:pre;content:{right}}}"
        f"@bottom-left{{{EDGE}{BELOW}content:{below}}}@bottom-right{{content:none}}"
    )


def _lines(*parts: str) -> str:
    """Strings of a stylesheet under each other."""
    return " '\\a ' ".join(part for part in parts if part != '""')
