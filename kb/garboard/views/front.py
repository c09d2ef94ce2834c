"""The front page, written or made, and the stub of a file that could not be read."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.reading.content import Stub
from garboard.records.notice_message import standing
from garboard.records.vessel import Notice
from garboard.views.draft import Draft
from garboard.views.inline import cell, day
from garboard.views.page import Bullets, Cell, Heading, Link, Paragraph, Prose, Strong, Tiles
from garboard.views.system_pages import system_key
from garboard.views.text import text_blocks

__all__ = ["front_draft", "stub_draft"]

WAYS_IN = (
    ("registers/alarms", "Alarms", "by the words on the panel"),
    ("registers/symptoms", "What the crew notices", "from symptom to fault"),
    ("registers/hazards", "What could hurt you", "every hazard, worst first"),
    ("registers/safety-devices", "Safety devices", "set value, limit, last test"),
    ("registers/tags", "Tags, A to Z", "which part is this?"),
    ("editions", "Editions", "which holds, until when, who has it"),
    ("registers/notices", "Notices to holders", "what not to rely on"),
    ("manual/standing", "What stands against the record", "contradictions found at this build"),
)


def front_draft(book: Book) -> Draft:
    """The first page: index.md where there is one, then the ways in."""
    written = next((page for page in book.content.pages if page.where.path == "index.md"), None)
    vessel = book.content.vessel.vessel
    draft = Draft(
        book, "index", (written.title if written else "") or f"{vessel} handbook", "front page"
    )
    draft.add(*_notices(book))
    draft.add(Tiles(tuple((Link(key, title), words) for key, title, words in WAYS_IN)))
    draft.add(Heading("Systems"))
    draft.add(
        Tiles(
            tuple(
                (Link(system_key(system), system.title), f"{system.code}: {system.status}")
                for system in book.systems.values()
            )
        )
    )
    if written:
        draft.source_path = written.where.path
        draft.add(*text_blocks(draft, written.text, written.where, written.text_line))
    defers = book.content.vessel.defers_to
    if defers:
        draft.add(
            Paragraph((Strong("Who decides: "), f"{', '.join(defers)}. This book is no approval."))
        )
    return draft


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
