"""The front page, written or made, and the stub of a file that could not be read."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.reading.content import Stub
from garboard.records.notice_message import standing
from garboard.records.pages import WrittenPage
from garboard.records.vessel import Notice
from garboard.records.walks import round_names
from garboard.views.draft import Draft
from garboard.views.inline import cell, day
from garboard.views.page import Bullets, Cell, Heading, Link, Paragraph, Prose, Strong, Tiles
from garboard.views.rounds import round_key
from garboard.views.system_pages import system_key
from garboard.views.text import text_blocks

__all__ = ["about_drafts", "front_draft", "stub_draft"]

FIND = "find"
"""A page that whoever draws the handbook adds, or leaves out."""
ABOUT = "about"
TAKE_ALONG = "take-it-with-you"
"""Added by whoever draws the handbook: what can be taken along depends on what is written."""
AT_NIGHT = (
    ("registers/emergencies", "Emergencies", "what do you see or hear?"),
    ("registers/alarms", "Alarms", "by the words on the panel"),
    ("registers/symptoms", "Not working", "in crew words"),
    (FIND, "Find", "tag, number, word"),
    ("registers/may-it-be-run", "May it be run?", "each system"),
)
AFTER_THE_ROUND = (
    ("registers/due", "What is due", "overdue first"),
    ("registers/a-to-z", "Everything from A to Z", ""),
)
FIRST_TIME = (
    ("people/first-day", "First day aboard", ""),
    ("registers/hazards", "What could hurt you", ""),
    ("people/who-may-do-what", "Who may do what", ""),
    (ABOUT, "About this book", ""),
)
REVIEWERS = (
    ("manual/how-to-review", "How to review", ""),
    ("manual/standing", "What stands against it", ""),
    ("registers/unknowns", "What we do not know", ""),
    ("registers/safety-devices", "Safety devices", ""),
    ("editions", "Editions", ""),
    (TAKE_ALONG, "Take it with you", ""),
)
ELSEWHERE = (FIND, "editions", TAKE_ALONG)
"""Pages that are made later than the front page, or by whoever draws it."""
Ways = tuple[tuple[str, str, str], ...]


def front_draft(book: Book, keys: frozenset[str]) -> Draft:
    """The first page: ways in, for somebody at night first; in two screens of a phone.

    Args:
        book: The book.
        keys: Of all other pages; a way to a page that is not there is left out.
    """
    written = _written(book)
    vessel = book.content.vessel.vessel
    title = (written.title if written else "") or f"{vessel} handbook"
    draft = Draft(book, "index", title, "front page")
    at_night = (*AT_NIGHT, *_rounds(book), *AFTER_THE_ROUND)
    draft.add(*_notices(book), _ways(at_night, keys))
    draft.add(Heading("Systems", level=2))
    systems = tuple(
        (system_key(system), system.title, f"{system.code}: {system.status}")
        for system in book.systems.values()
    )
    draft.add(_ways(systems, keys))
    draft.add(Heading("For a volunteer"), _ways(FIRST_TIME, keys))
    draft.add(Heading("For a reviewer or surveyor"), _ways(REVIEWERS, keys))
    defers = book.content.vessel.defers_to
    if defers:
        draft.add(
            Paragraph((Strong("Who decides: "), f"{', '.join(defers)}. This book is no approval."))
        )
    return draft


def _ways(ways: Ways, keys: frozenset[str]) -> Tiles:
    """Small tiles, of the ways that are there."""
    there = [one for one in ways if one[0] in keys or one[0] in ELSEWHERE]
    return Tiles(tuple((Link(key, title), under) for key, title, under in there), small=True)


def _rounds(book: Book) -> Iterator[tuple[str, str, str]]:
    """The round of each name: over the whole vessel, or on the page of its one system."""
    for name, codes in round_names(book.systems).items():
        own = system_key(book.systems[codes[0]], "watch-rounds")
        yield round_key(name) if len(codes) > 1 else own, "Watch round", name


def about_drafts(book: Book) -> Iterator[Draft]:
    """What index.md says, as a page of its own, so that the front page stays short; none without it."""
    written = _written(book)
    if written and written.text.strip():
        draft = Draft(book, ABOUT, "About this book", "about")
        draft.source_path = written.where.path
        draft.add(*text_blocks(draft, written.text, written.where, written.text_line))
        yield draft


def _written(book: Book) -> WrittenPage | None:
    return next((page for page in book.content.pages if page.where.path == "index.md"), None)


def _notices(book: Book) -> Iterator[Heading | Bullets]:
    """The notices that stand, before anything else."""
    found = standing(book.content.vessel)
    if found:
        yield Heading("Notices that stand")
        yield Bullets(tuple(_told(book, one) for one in found))


def _told(book: Book, notice: Notice) -> Cell:
    link = Link(f"registers/notices#notice-{notice.number}", f"Notice {notice.number}")
    tags = tuple(run for one in notice.against for run in (*cell(book, one), " "))
    never: Cell = (Strong("DO NOT USE"), " ", *tags) if tags else ()
    return (*never, *cell(book, notice.says), " (", link, f", {day(notice.on)})")


def stub_draft(book: Book, stub: Stub) -> Draft:
    """A file that could not be read: its messages, and its text so that nothing is lost."""
    key = f"unread/{stub.where.path.removesuffix('.md')}"
    draft = Draft(book, key, stub.title, "not read", system=stub.system)
    draft.source_path = stub.where.path
    draft.add(Paragraph((Strong("This file could not be read as a record. Do not rely on it."),)))
    draft.add(
        Bullets(tuple((f"{item.where}: ", *cell(book, item.text)) for item in stub.diagnostics))
    )
    if stub.text:
        draft.add(Heading("What stands in it"), Prose(_as_code(stub.text), stub.where))
    return draft


def _as_code(text: str) -> str:
    return "\n".join(f"    {line}" for line in text.split("\n"))
