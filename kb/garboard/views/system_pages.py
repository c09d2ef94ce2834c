"""The pages of one system, in the order a reader needs them."""

from collections.abc import Callable, Iterator
from functools import partial

from garboard.book import Book
from garboard.records.hazard import Hazard
from garboard.records.pages import PageKind, WrittenPage
from garboard.records.standing import has_left
from garboard.records.system import System
from garboard.views.between import between, has_sensors
from garboard.views.draft import Draft
from garboard.views.fields import table_of
from garboard.views.history import what_went_wrong, why_it_is_so
from garboard.views.inline import cell
from garboard.views.layout import layout
from garboard.views.limits import normal_values
from garboard.views.line_up_page import line_ups
from garboard.views.lists import (
    alarms,
    calculations,
    faults,
    hazards,
    open_against,
    procedures,
    tests,
)
from garboard.views.maintenance import maintenance
from garboard.views.may_it_run import Answer
from garboard.views.messages import message_of, worst_first
from garboard.views.page import (
    Block,
    Bullets,
    Facts,
    Heading,
    Jumps,
    Link,
    MessagesHere,
    Paragraph,
    Tiles,
)
from garboard.views.rebuild_page import rebuild_page
from garboard.views.rounds import rounds
from garboard.views.schematics import line_up_sheets
from garboard.views.text import text_blocks
from garboard.views.waiting import waiting_blocks

__all__ = ["ASKED", "system_drafts", "system_key"]

ASKED = "what-was-asked"
"""Last part of the key of the page of questions to the layout."""

PAGES = "pages"
"""Where the ways to all pages of a system stand on its first page: far down on a phone."""
WORST = 5
"""How many hazards stand on the first page of a system."""


def system_key(system: System, page: str = "what-it-does") -> str:
    """The key of a page of a system: `starting-air/what-it-does`."""
    return f"{system.folder.rsplit('/', 1)[-1]}/{page}"


def system_drafts(book: Book, system: System, answer: Answer) -> Iterator[Draft]:
    """Every page of a system.

    Args:
        book: The book.
        system: One of its systems.
        answer: Whether it may be run.

    Yields:
        Drafts; the first is what the system does.
    """
    makers: list[tuple[str, str, str, Callable[[Draft, System], None]]] = [
        (
            "open-against-it",
            "May it be run?",
            PageKind.OPEN_AGAINST_IT,
            partial(open_against, answer=answer),
        ),
        ("layout", "Layout and parts", PageKind.LAYOUT, layout),
        ("line-ups", "Line-ups and valves", "line-ups", line_ups),
        ("drawn-line-ups", "Line-ups, drawn", "line-ups drawn", line_up_sheets),
        ("normal-values", "Normal values", PageKind.NORMAL_VALUES, normal_values),
        ("procedures", "Procedures", "procedures", procedures),
        ("watch-rounds", "Watch rounds", PageKind.WATCH_ROUND, rounds),
        ("alarms", "Alarms", "alarms", alarms),
        ("faults", "Faults", "faults", faults),
        ("hazards", "What could hurt you", "hazards", hazards),
        ("maintenance", "Maintenance", PageKind.MAINTENANCE, maintenance),
        ("tests", "Tests and proof", PageKind.TESTS_AND_PROOF, tests),
        ("calculations", "Calculations", "calculations", calculations),
        ("why-it-is-so", "Why it is so", PageKind.WHY_IT_IS_SO, why_it_is_so),
        ("what-went-wrong", "What went wrong", PageKind.WHAT_WENT_WRONG, what_went_wrong),
    ]
    if has_sensors(book, system):
        makers.insert(2, ("what-stands-between", "What stands between", "sensing lines", between))
    drafts = []
    for name, title, kind, fill in makers:
        if fill is line_up_sheets and not (system.runs and system.operating_states):
            continue
        draft = Draft(book, system_key(system, name), title, str(kind), system=system.code)
        fill(draft, system)
        draft.add(*_written(draft, system, str(kind)))
        drafts.append(draft)
    own = [_own_page(book, system, page) for page in _free_pages(book, system)]
    yield _what_it_does(book, answer, [*drafts, *own])
    yield from (*drafts, *own)


def _what_it_does(book: Book, answer: Answer, others: list[Draft]) -> Draft:
    """Purpose, may it be run, what is lost and how soon, the worst hazards; then everything else."""
    system = answer.system
    key = system_key(system)
    draft = Draft(book, key, system.title, str(PageKind.WHAT_IT_DOES), system=system.code)
    if system.purpose:
        draft.add(Paragraph(("What it is for: ", *cell(book, system.purpose))))
    run = Link(system_key(system, "open-against-it"), answer.words)
    draft.add(Facts((("may it be run?", (run,)),)))
    draft.add(Jumps("On this page", (("Pages of this system", PAGES),)))
    if system.loss:
        draft.add(Heading("What is lost, and how soon"), table_of(book, "", system.loss))
    own = [one for one in book.of_kind(Hazard) if one.system == system.code and not has_left(one)]
    worst = worst_first(own)[:WORST]
    if worst:
        draft.add(Heading(f"Worst hazards: {len(worst)} of {len(own)}"))
        draft.messages = tuple(message_of(book, one) for one in worst)
        draft.add(MessagesHere())
    draft.add(*_written(draft, system, str(PageKind.WHAT_IT_DOES)))
    draft.add(Heading("Pages of this system", anchor=PAGES))
    ways = [Link(other.key, other.title) for other in others]
    if system.runs:
        ways.append(Link(system_key(system, "isolations"), "Isolations"))
    ways.append(Link(system_key(system, ASKED), "What the layout was asked"))
    draft.add(Tiles(tuple((way, "") for way in ways), small=True))
    if system.gaps:
        draft.add(
            Heading("Known to be missing"), Bullets(tuple(cell(book, gap) for gap in system.gaps))
        )
    return draft


def _written(draft: Draft, system: System, kind: str) -> Iterator[Block]:
    for page in draft.book.content.pages:
        if page.system == system.code and page.page is not None and page.page.value == kind:
            draft.source_path = page.where.path
            yield from waiting_blocks(draft.book, page.where.path)
            yield from text_blocks(draft, page.text, page.where, page.text_line)


GENERATED = frozenset(
    set(PageKind)
    - {PageKind.PROCEDURE, PageKind.ISOLATION, PageKind.ALARM, PageKind.FAULT, PageKind.QUICK_CARD}
    - {PageKind.HOW_TO_REBUILD_IT, PageKind.CALCULATION, PageKind.EDITION}
)
"""Kinds of which a system has one page, that what was written for it joins."""


def _free_pages(book: Book, system: System) -> Iterator[WrittenPage]:
    for page in book.content.pages:
        if page.system == system.code and page.page not in GENERATED:
            yield page


def _own_page(book: Book, system: System, page: WrittenPage) -> Draft:
    name = page.where.path.rsplit("/", 1)[-1].removesuffix(".md")
    kind = page.page.value if page.page else "written page"
    draft = Draft(book, system_key(system, name), page.title or name, kind, system=system.code)
    draft.source_path = page.where.path
    draft.add(*waiting_blocks(book, page.where.path))
    if page.page is PageKind.HOW_TO_REBUILD_IT:
        rebuild_page(draft, page, system_key(system, "layout"))
    else:
        draft.add(*text_blocks(draft, page.text, page.where, page.text_line))
    return draft
