"""A written page: text that is no record of its own, such as what a system does."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from garboard.errors import Where
from garboard.records.base import Medium, Person, SourceId, beside
from garboard.records.signoff import SignOff

__all__ = ["PageKind", "WrittenPage"]


class PageKind(StrEnum):
    """What a page is for; each kind has its first thing and its budget."""

    FRONT = "front"
    """The first page of the book."""
    WHAT_IT_DOES = "what it does"
    LAYOUT = "layout"
    NORMAL_VALUES = "normal values"
    PROCEDURE = "procedure"
    ISOLATION = "isolation"
    WATCH_ROUND = "watch round"
    ALARM = "alarm"
    FAULT = "fault"
    QUICK_CARD = "quick card"
    MAINTENANCE = "maintenance"
    TESTS_AND_PROOF = "tests and proof"
    WHY_IT_IS_SO = "why it is so"
    WHAT_WENT_WRONG = "what went wrong"
    HOW_TO_REBUILD_IT = "how to rebuild it"
    OPEN_AGAINST_IT = "open against it"
    CALCULATION = "calculation"
    EDITION = "edition"


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenPage:
    """Text that is no record of its own; its class is the highest among the things it shows."""

    where: Where = beside()
    text: str = beside(default="")
    text_line: int = beside(default=1)
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    page: PageKind | None = None
    """What is it for? None: a page without front matter, such as the front page."""
    title: str = ""
    """What is it called?"""
    system: str = ""
    """Which system is it about? Empty: it belongs to the whole vessel."""
    author: Person | None = None
    """Who wrote it?"""
    state: str | None = None
    """How far is it?"""
    sources: tuple[SourceId, ...] = ()
    """What does it rest on?"""
    media: tuple[Medium, ...] = ()
    """Which photographs and drawings belong to it?"""
    gaps: tuple[str, ...] = ()
    """What is known to be missing?"""
    signed: tuple[SignOff, ...] = ()
    """Who checked it? `garboard sign` adds these lines."""

    def place(self, path: str = "") -> Where:
        """Where a field stands; the page's first line where it was not written."""
        return self.places.get(path, self.where)
