"""How far a page may be relied on: its review in words, what stands against it in short, its sources."""

from dataclasses import dataclass

__all__ = ["InShort", "Review", "SourceLine"]


@dataclass(frozen=True, slots=True)
class SourceLine:
    """One numbered line of a page's list of sources."""

    number: int
    source: str
    text: str
    """Title, edition, clause."""
    seen: str
    """original, secondary, remembered: how it was read."""


@dataclass(frozen=True, slots=True)
class Review:
    """The review state of a page, in words with the reason."""

    words: str
    """`NOT REVIEWED. Nobody has checked this page.`"""
    trusted: bool = False
    """False: a full-width reversed bar."""
    brief: str = ""
    """The same without the details, for a page that is read in a hurry; empty where it is short."""


@dataclass(frozen=True, slots=True)
class InShort:
    """One notice against a page in its first words, with what was left out of them."""

    severity: str
    words: str
    full: tuple[str, ...] = ()
    """The notices that the words stand for, whole; empty where the words are whole."""
