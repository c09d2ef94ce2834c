"""What holds the pages together: the contents, where links land, what the search knows."""

from dataclasses import dataclass

from garboard.names import IDENTIFIER, is_tag

__all__ = ["IDENTIFIER", "Entry", "Section", "Target", "is_tag"]


@dataclass(frozen=True, slots=True)
class Target:
    """Where a link lands."""

    path: str
    """Path in the site without suffix."""
    anchor: str
    title: str
    heir: str = ""
    """Id of the record that took the place of the one named; a text that names it shows both."""


@dataclass(frozen=True, slots=True)
class Section:
    """A section of the contents: page keys and further sections, in order."""

    title: str
    pages: tuple[str, ...] = ()
    sections: tuple["Section", ...] = ()


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that can be found."""

    title: str
    kind: str
    """Page kind in words: `component`, `alarm`, `finding`."""
    system: str
    """Title of the system, or empty."""
    path: str
    anchor: str
    review: str
    """First words of the review state: `NOT REVIEWED`."""
    keys: tuple[str, ...]
    """Names it owns, as written: id, tag, serial and part numbers, alarm wording, number with unit."""
    words: str
    """Other words it should be found by: crew words, symptoms, fields."""
    text: str
    """What is shown under the result; at most 160 characters."""
    digest: str = ""
    """First signs of the digest that a card of it carries; empty where it can have none."""
