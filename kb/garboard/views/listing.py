"""Long lists to look things up in, and the ways into them: as on the last pages of a printed book."""

import re
import unicodedata
from dataclasses import dataclass

from garboard.views.runs import Cell

__all__ = ["Jumps", "Listed", "Listing", "letter_of", "slug"]


@dataclass(frozen=True, slots=True)
class Listed:
    """What is looked up, and where it leads."""

    head: Cell
    lines: tuple[Cell, ...]
    """One beside the head; more of them below it."""
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Listing:
    """A list to look things up in."""

    label: str
    """What is listed, for who hears the page."""
    items: tuple[Listed, ...]


@dataclass(frozen=True, slots=True)
class Jumps:
    """Ways to places on the same page, large enough for a glove."""

    label: str
    ways: tuple[tuple[str, str], ...]
    """What is shown, and the anchor it leads to."""


def slug(text: str) -> str:
    """An anchor made from words.

    >>> slug("engine store, drawer 3"), slug("-0.5 bar(g)"), slug("+")
    ('engine-store-drawer-3', 'minus-0-5-bar-g', 'part')
    """
    signed = re.sub(r"(?<!\S)-(?=\d)", "minus ", text.casefold())
    return re.sub(r"[^\w]+", "-", signed).strip("-") or "part"


def letter_of(text: str) -> str:
    """The letter that something stands under, without its accents; `0-9` for figures and signs.

    >>> letter_of("Ångström"), letter_of("'no water'"), letter_of("24 V")
    ('A', 'N', '0-9')
    """
    for sign in unicodedata.normalize("NFD", text):
        if sign.isalnum():
            upper = sign.upper()
            return upper if "A" <= upper <= "Z" else "0-9"
    return "0-9"
