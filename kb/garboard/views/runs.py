"""What a line of a page is made of: words, links, label plates, values as shown."""

import re
from dataclasses import dataclass
from typing import Final

__all__ = ["Cell", "Download", "Link", "Plate", "Run", "Shown", "Strong", "first_sentence", "plain"]

SENTENCE_END: Final = re.compile(r"[.!](?=\s|$)")


@dataclass(frozen=True, slots=True)
class Link:
    """A link to another page of the handbook."""

    target: str
    """A page key, or a page key and anchor joined by `#`."""
    text: str


@dataclass(frozen=True, slots=True)
class Download:
    """A file of the site that is no page."""

    path: str
    """From the root of the site: `values.csv`."""
    text: str


@dataclass(frozen=True, slots=True)
class Plate:
    """A component tag, drawn as the label plate engraved on the part; always a link."""

    tag: str


@dataclass(frozen=True, slots=True)
class Shown:
    """A value as shown, linked to the page that owns it."""

    address: str
    text: str
    """`30 bar(g)`, or `not computed`."""
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Strong:
    """Words in bold: a limit, a state to see."""

    text: str


Run = str | Link | Download | Plate | Shown | Strong
"""A run of text inside a line."""
Cell = tuple[Run, ...]


def plain(line: Cell) -> str:
    """A line as bare words.

    >>> plain(("read ", Plate("SA-PI-001")))
    'read SA-PI-001'
    """
    return "".join(
        run if isinstance(run, str) else run.tag if isinstance(run, Plate) else run.text
        for run in line
    )


def first_sentence(line: Cell) -> Cell:
    """A line up to the first full stop; whole where it has none.

    >>> plain(first_sentence(("See ", Plate("SA-PI-001"), " at 0.5 bar(g). Then slacken.")))
    'See SA-PI-001 at 0.5 bar(g).'
    """
    for place, run in enumerate(line):
        if isinstance(run, str) and (end := SENTENCE_END.search(run)):
            return (*line[:place], run[: end.end()])
    return line
