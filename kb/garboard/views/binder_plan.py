"""Which pages stand in a printed binder, and in which order.

A binder is read without a search box and carried to the engine: emergencies come first, then each
system in the order it is needed, then the registers. What would fill shelves stays out, and the
cover says what that is and where to find it. A page of a kind nobody has placed here is printed at
the end of its chapter: a new kind of page is never lost from the book in silence.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from garboard.book import Book
from garboard.records.procedure import Procedure
from garboard.records.system import System
from garboard.systems.boundaries import boundaries_of
from garboard.views.isolation_pages import is_isolation, isolation_key
from garboard.views.page import Page

__all__ = [
    "KINDS_LEFT_OUT",
    "WHOLE_BOOK",
    "BinderOrder",
    "BinderPlan",
    "Chapter",
    "LeftOut",
    "binders",
    "plan_book",
    "plan_system",
]

WHOLE_BOOK = "whole-book"
"""The name of the binder that holds every system."""
CARD = "quick card"
WORKED = "calculation"

FIRST = ("registers/emergencies", "registers/alarms", "registers/symptoms")
"""What is looked for in a hurry, before anything else."""

OF_A_SYSTEM = (
    "what it does", "open against it", "temporary modification", "concession", "layout", "line-ups",
    "normal values", "procedures", "procedure", "isolations", "isolation",
    "watch round", "log sheet", "alarms", "alarm", "faults", "fault", "hazards",
    "maintenance", "maintenance task", "spares", "tests and proof", "safety devices", "sensing lines",
    "how to rebuild it", "why it is so", "what went wrong", "calculations", "calculation",
)  # fmt: skip
"""Kinds of page of a system, in the order of its chapter."""

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
    "registers/sources", "registers/notices",
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
class LeftOut:
    """What is not printed, and where it is."""

    what: str
    where: str


SITE = "in the handbook on the screen"
KINDS_LEFT_OUT = {
    "part": LeftOut("a page for each part", "its row in the register of tags, and its system's layout"),
    "line-ups drawn": LeftOut("each line-up drawn", "in words under Line-ups and valves; drawn " + SITE),
    "questions to the layout": LeftOut("what each layout was asked", SITE),
    "hazard": LeftOut("the record of each hazard", "its message under What could hurt you"),
    "test": LeftOut("the record of each test", "results under Tests and proof; readings " + SITE),
    "plan line": LeftOut("each line of the inspection plans", "under Tests and proof"),
    "decision": LeftOut("each decision in full", "one sentence under Why it is so; reasons " + SITE),
    "change": LeftOut("each change in full", "under Why it is so; what it reached " + SITE),
    "finding": LeftOut("each finding in full", "under What went wrong"),
    "action": LeftOut("each corrective action", "under What went wrong"),
    "lesson": LeftOut("each lesson in full", "under What went wrong"),
    "review": LeftOut("the words of reviews", SITE),
    "open item": LeftOut("each open item", "under May it be run?"),
    "work package": LeftOut("job sheets", "printed singly for the job, " + SITE),
    "job sheet": LeftOut("job sheets", "printed singly for the job, " + SITE),
    CARD: LeftOut("quick cards", "printed by themselves, one side of A5 each"),
    "method": LeftOut("bundled methods in full", SITE),
    "rule": LeftOut("the rules that are checked", SITE),
    "manual": LeftOut("the manual of the tool", SITE),
    "report": LeftOut("reports of the checks", SITE),
    "list of pages": LeftOut("lists of effective pages", SITE),
    "front page": LeftOut("the front page", "the contents take its place"),
}  # fmt: skip
"""By page kind."""
UNWRITTEN = LeftOut("isolations that no procedure was written for", SITE)
IN_ITS_BINDER = "in the binder of its system"
IN_EVERY_BINDER = "in the binder of every system"
ONLY_IN_ITS_BINDER = {
    WORKED: LeftOut(
        "the working of each calculation", f"{IN_ITS_BINDER}; what must hold, under Normal values"
    ),
    "calculations": LeftOut("lists of calculations", IN_ITS_BINDER),
    "isolations": LeftOut("lists of what can be shut off", IN_ITS_BINDER),
    "tests and proof": LeftOut("Tests and proof", IN_ITS_BINDER),
    "maintenance": LeftOut("Maintenance", f"{IN_ITS_BINDER}; what is due, among the registers"),
    "maintenance task": LeftOut("each maintenance task in full", IN_ITS_BINDER),
    "how to rebuild it": LeftOut("How to rebuild it", IN_ITS_BINDER),
    "required reading": LeftOut("required reading", IN_EVERY_BINDER),
}
"""What one works through beside one system and nobody looks for in a hurry: two sheets of the whole
book in five, and with them it fills two binders."""
SOURCES = "registers/sources"
SOURCES_ELSEWHERE = LeftOut("the register of sources", "at the end of each section; whole, " + SITE)
CHANGES = LeftOut("what an edition changed, record by record", IN_EVERY_BINDER)
EARLIER = LeftOut("earlier editions", SITE)
KEYS_LEFT_OUT = {
    "registers/values": LeftOut("where each value comes from", SITE),
    "registers/records": LeftOut("the register of records", SITE),
    "registers/decisions": LeftOut("decisions by date", SITE),
    "registers/findings": LeftOut("the register of findings", "under What went wrong"),
    "registers/who-caught-what": LeftOut("who caught what", SITE),
    "registers/lessons": LeftOut("the register of lessons", "under What went wrong"),
    "registers/to-be-filed": LeftOut("notes not filed yet", SITE),
    "registers/path-findings": LeftOut("what the layouts show", "under May it be run?"),
    "registers/labels": LeftOut("labels for valves", "printed by themselves"),
}
"""Pages of the vessel that are for a desk."""


@dataclass(frozen=True, slots=True)
class Chapter:
    """Pages that stand together, under one number of the contents."""

    title: str
    pages: tuple[Page, ...]


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
        Chapter(system.title, _of_system(book, system, own)),
        _named("People and words", known, (*PEOPLE, "registers/glossary", "registers/sources")),
        _named("Notices", known, ("registers/notices",)),
        Chapter("Editions", _of_editions(known)),
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
    systems = tuple(
        Chapter(
            system.title,
            _of_system(
                book,
                system,
                (
                    one
                    for one in known
                    if one.system == system.code and one.kind not in ONLY_IN_ITS_BINDER
                ),
            ),
        )
        for system in book.systems.values()
    )
    editions = Chapter(
        "Editions", tuple(one for one in _of_editions(known) if not _is_changes(one))
    )
    placed = {page.key for chapter in (first, people, *systems, editions) for page in chapter.pages}
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
    return _plan(WHOLE_BOOK, "Whole book", (first, people, *systems, registers, editions), known)


def _plan(
    name: str, title: str, chapters: Iterable[Chapter], candidates: Iterable[Page]
) -> BinderPlan:
    kept = tuple(chapter for chapter in chapters if chapter.pages)
    placed = {page.key for chapter in kept for page in chapter.pages}
    known = tuple(candidates)
    missing = dict.fromkeys(_missing(page) for page in known if page.key not in placed)
    return BinderPlan(
        name, title, kept, tuple(missing), tuple(page for page in known if page.kind == CARD)
    )


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


def _of_system(book: Book, system: System, pages: Iterable[Page]) -> tuple[Page, ...]:
    """Pages of a system by kind, as they follow each other within one; unknown kinds come last."""
    place = {kind: number for number, kind in enumerate(OF_A_SYSTEM)}
    written = set(_written_isolations(book, system))
    kept = [
        page
        for page in pages
        if not _left_out(page) and (not is_isolation(page.key) or page.key in written)
    ]
    return tuple(sorted(kept, key=lambda page: place.get(page.kind, len(place))))


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
