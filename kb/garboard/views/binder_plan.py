"""Which pages stand in a printed binder, and in which order.

A binder is read without a search box and carried to the engine: emergencies come first, then each
system in the order it is needed, then the registers. What would fill shelves stays out, and the
cover says what that is and where to find it. A page of a kind nobody has placed here is printed at
the end of its chapter: a new kind of page is never lost from the book in silence.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from garboard.book import Book
from garboard.records.procedure import Procedure
from garboard.records.system import System
from garboard.systems.boundaries import boundaries_of
from garboard.views.isolation_pages import is_isolation, isolation_key
from garboard.views.left_out import (
    CARD,
    CHANGES,
    EARLIER,
    KEYS_LEFT_OUT,
    KINDS_LEFT_OUT,
    ONLY_IN_ITS_BINDER,
    SOURCES,
    SOURCES_ELSEWHERE,
    TOLD_UNDER,
    UNWRITTEN,
    LeftOut,
)
from garboard.views.page import AgainstIt, Page, Paragraph, Table, WaysIn

__all__ = [
    "WHOLE_BOOK",
    "BinderOrder",
    "BinderPlan",
    "Chapter",
    "binders",
    "plan_book",
    "plan_system",
]

WHOLE_BOOK = "whole-book"
"""The name of the binder that holds every system."""

FIRST = ("registers/emergencies", "registers/alarms", "registers/symptoms")
"""What is looked for in a hurry, before anything else."""
BEFORE = ("registers/may-it-be-run", "registers/notices")
"""What is looked at before anything is started."""

OF_A_SYSTEM = (
    "what it does", "open against it", "temporary modification", "concession", "layout", "line-ups",
    "normal values", "procedures", "procedure", "isolations", "isolation",
    "watch round", "log sheet", "alarms", "alarm", "faults", "fault", "hazards",
    "maintenance", "maintenance task", "spares", "tests and proof", "safety devices", "sensing lines",
    "how to rebuild it", "why it is so", "what went wrong", "calculations", "calculation",
)  # fmt: skip
"""Kinds of page of a system, in the order of its chapter."""

LISTS = frozenset((
    "procedures", "watch round", "alarms", "faults", "hazards", "maintenance", "spares", "tests and proof",
    "sensing lines", "why it is so", "what went wrong", "calculations",
))  # fmt: skip
"""Lists of a system that are left out where they are empty."""

PEOPLE = (
    "people/first-day",
    "people/who-may-do-what",
    "registers/people",
    "people/required-reading",
)
REGISTERS = (
    "registers/due", "registers/spares", "registers/hazards", "registers/safety-devices",
    "registers/locked-valves", "registers/numbers", "registers/tags", "registers/a-to-z",
    "registers/places", "registers/cards", "registers/glossary", "registers/unknowns",
    "registers/sources",
)  # fmt: skip
"""Registers of the vessel, in order; any other follows them."""


@dataclass(frozen=True, slots=True)
class BinderOrder:
    """What is to be printed."""

    system: str = ""
    """Code of the system, or name of its folder; empty for the whole book."""
    size: str = "a4"
    """Of the paper: a4 or a5."""
    pdf: bool = False
    """Also as PDF, where a browser is installed that can print."""
    cards: bool = False
    """Quick cards instead of pages."""


@dataclass(frozen=True, slots=True)
class Chapter:
    """Pages that stand together, under one number of the contents."""

    title: str
    pages: tuple[Page, ...]
    unwritten: tuple[str, ...] = ()
    """Titles of the pages on which nothing is recorded yet; the contents name them in their stead."""


@dataclass(frozen=True, slots=True)
class BinderPlan:
    """A binder before it is drawn."""

    name: str
    """Of its files: `starting-air`, `whole-book`."""
    title: str
    chapters: tuple[Chapter, ...]
    left_out: tuple[LeftOut, ...]
    """Each once, in the order of the pages."""
    cards: tuple[Page, ...]
    """Quick cards of the same systems, which are printed by themselves."""
    system: str = ""
    """Code of the system it is of; empty for the whole book."""
    told_under: Mapping[str, str] = field(default_factory=dict)
    """By the path of a page that is left out: the path of the printed page on which it is told."""

    @property
    def pages(self) -> tuple[Page, ...]:
        """Every page, in reading order."""
        return tuple(page for chapter in self.chapters for page in chapter.pages)


def binders(book: Book, pages: Iterable[Page]) -> Iterator[BinderPlan]:
    """The binder of each system, then the whole book.

    Args:
        book: The book.
        pages: Every page of the handbook.
    """
    known = tuple(pages)
    for system in book.systems.values():
        yield plan_system(book, known, system)
    yield plan_book(book, known)


def plan_system(book: Book, pages: Iterable[Page], system: System) -> BinderPlan:
    """The binder of one system, with what of the vessel is needed beside it.

    Args:
        book: The book.
        pages: Every page of the handbook.
        system: Whose binder.
    """
    known = tuple(pages)
    own = [page for page in known if page.system == system.code]
    chapters = (
        _named("In an emergency", known, FIRST[:1]),
        _chapter_of(book, system, own),
        _named("People and words", known, (*PEOPLE, "registers/glossary")),
        _named("Notices", known, ("registers/notices",)),
        Chapter("Editions", tuple(one for one in _of_editions(known) if not _is_changes(one))),
    )
    name = system.folder.rsplit("/", 1)[-1]
    return replace(_plan(name, system.title, chapters, own), system=system.code)


def plan_book(book: Book, pages: Iterable[Page]) -> BinderPlan:
    """The binder of the whole vessel: everything but what only the binder of a system has.

    Args:
        book: The book.
        pages: Every page of the handbook.
    """
    known = tuple(pages)
    first = _named("In an emergency", known, FIRST)
    people = _named(
        "People",
        (one for one in known if one.kind not in ONLY_IN_ITS_BINDER),
        PEOPLE,
        lambda page: page.key.startswith("people/"),
    )
    before = _named("Before anything is run", known, BEFORE)
    here = [one for one in known if one.kind not in ONLY_IN_ITS_BINDER]
    systems = tuple(
        _chapter_of(book, system, (one for one in here if one.system == system.code))
        for system in book.systems.values()
    )
    editions = Chapter("Editions", _of_editions(known))
    front = (first, before, people, *systems)
    placed = {page.key for chapter in (*front, editions) for page in chapter.pages}
    rest = [
        page
        for page in known
        if page.key not in placed
        and not _left_out(page)
        and page.key != SOURCES
        and page.kind not in ONLY_IN_ITS_BINDER
        and not _is_changes(page)
        and page.system not in book.systems
    ]
    registers = _named("Registers", rest, REGISTERS, lambda _: True)
    return _plan(WHOLE_BOOK, "Whole book", (*front, registers, editions), known)


def _plan(
    name: str, title: str, chapters: Iterable[Chapter], candidates: Iterable[Page]
) -> BinderPlan:
    kept = tuple(chapter for chapter in chapters if chapter.pages)
    placed = {page.key for chapter in kept for page in chapter.pages}
    known = tuple(candidates)
    missing = dict.fromkeys(
        _missing(page) for page in known if page.key not in placed and not _is_unwritten(page)
    )
    cards = tuple(page for page in known if page.kind == CARD)
    plan = BinderPlan(name, title, kept, tuple(missing), cards)
    return replace(plan, told_under=dict(_told_under(plan.pages, known)))


def _told_under(printed: Iterable[Page], known: Iterable[Page]) -> Iterator[tuple[str, str]]:
    """Of each record without a page in the book, the page of its system on which it is told."""
    telling = {(page.system, page.kind): page.path for page in printed}
    for page in known:
        told = telling.get((page.system, TOLD_UNDER.get(page.kind, "")))
        if told:
            yield page.path, told


def _left_out(page: Page) -> LeftOut | None:
    """Why a page is not printed, whatever book it is; None where it is."""
    if page.key.startswith("editions/"):
        return EARLIER if page.kind == "edition" else KINDS_LEFT_OUT.get(page.kind)
    return KEYS_LEFT_OUT.get(page.key) or KINDS_LEFT_OUT.get(page.kind)


def _missing(page: Page) -> LeftOut:
    """What the cover says of a page that is not in the book."""
    if page.key == SOURCES:
        return SOURCES_ELSEWHERE
    if _is_changes(page):
        return CHANGES
    return _left_out(page) or ONLY_IN_ITS_BINDER.get(page.kind) or UNWRITTEN


def _is_changes(page: Page) -> bool:
    """Whether it says what an edition changed, record by record."""
    return page.key.startswith("editions/") and page.key.endswith("-changes")


def _named(
    title: str,
    pages: Iterable[Page],
    keys: tuple[str, ...],
    also: Callable[[Page], bool] = lambda _: False,
) -> Chapter:
    """Pages by their keys, in that order, then others that are asked for in their own."""
    known = {page.key: page for page in pages}
    found = [known[key] for key in keys if key in known]
    others = [page for key, page in known.items() if key not in keys and also(page)]
    return Chapter(title, tuple(page for page in (*found, *others) if not _left_out(page)))


def _chapter_of(book: Book, system: System, pages: Iterable[Page]) -> Chapter:
    """Pages of a system by kind, as they follow each other within one; unknown kinds come last."""
    place = {kind: number for number, kind in enumerate(OF_A_SYSTEM)}
    written = set(_written_isolations(book, system))
    kept = [
        page
        for page in pages
        if not _left_out(page) and (not is_isolation(page.key) or page.key in written)
    ]
    kept.sort(key=lambda page: place.get(page.kind, len(place)))
    said = tuple(page for page in kept if not _is_unwritten(page))
    return Chapter(system.title, said, tuple(page.title for page in kept if _is_unwritten(page)))


def _is_unwritten(page: Page) -> bool:
    """Whether a list of a system says no more than that nothing is recorded; a sheet less to turn.

    What says how far it may be relied on, or run, is printed all the same.
    """
    return (
        page.kind in LISTS
        and not (page.messages or page.source_path)
        and all(
            isinstance(block, Paragraph | AgainstIt)
            or (isinstance(block, Table) and not block.rows)
            or (isinstance(block, WaysIn) and not block.ways)
            for block in page.blocks
        )
    )


def _written_isolations(book: Book, system: System) -> Iterator[str]:
    """Keys of the isolations that somebody has written a procedure for."""
    safe = {str(tag) for one in book.of_kind(Procedure) for tag in one.isolates}
    if safe and system.runs:
        for boundary in boundaries_of(book.surveys[system.code]):
            if safe & set(boundary.tags):
                yield isolation_key(boundary)


def _of_editions(pages: Iterable[Page]) -> tuple[Page, ...]:
    """The list of editions, and what the newest is and changed."""
    known = {page.key: page for page in pages if page.key.partition("/")[0] == "editions"}
    numbers = [int(last) for key in known if (last := key.partition("/")[2]).isdigit()]
    newest = max(numbers, default=0)
    keys = ("editions", f"editions/{newest}", f"editions/{newest}-changes")
    return tuple(known[key] for key in keys if key in known)
