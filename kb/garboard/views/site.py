"""Every page of the handbook, the contents, and where each name leads."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from types import ModuleType

from garboard.book import Book
from garboard.calc.method import Method
from garboard.changes.comparison import Comparison
from garboard.changes.kept_comparisons import Compared
from garboard.errors import Diagnostic, Severity
from garboard.methods.proof import ProofResult
from garboard.names import is_identifier
from garboard.records.base import Record
from garboard.records.change import Change
from garboard.records.edition import Edition
from garboard.records.finding import Finding
from garboard.records.kinds import KINDS, kind_of
from garboard.records.system import System
from garboard.review.page_state import page_state
from garboard.views.asked import asked_drafts
from garboard.views.change_joins import change_joins
from garboard.views.component_page import component_draft
from garboard.views.contents import Section, Target
from garboard.views.draft import Draft
from garboard.views.edition_diff import edition_diff_drafts
from garboard.views.editions import edition_drafts, is_about_editions
from garboard.views.front import about_drafts, front_draft, stub_draft
from garboard.views.how_to_review import how_to_review_draft
from garboard.views.how_to_write import parts_draft, writing_draft
from garboard.views.in_short import in_short, ways_told
from garboard.views.inline import heir_of, title_of
from garboard.views.isolation_pages import (
    is_isolation,
    isolation_drafts,
    isolations_in,
    part_isolation,
)
from garboard.views.kinds_of_records import records_draft
from garboard.views.labels import labels_draft
from garboard.views.manual import numbers_draft, rule_drafts, standing_draft
from garboard.views.may_it_run import against_system, answers_of
from garboard.views.method_page import method_drafts
from garboard.views.page import AgainstIt, Calculation, Copy, Link, Page, Review
from garboard.views.path_findings import path_findings_draft
from garboard.views.people import is_about_people, people_drafts
from garboard.views.quick_cards import CARDS, card_drafts, faults_of
from garboard.views.record_page import record_draft
from garboard.views.registers import register_drafts
from garboard.views.roles import by_roles
from garboard.views.rounds import FOLDER as ROUNDS
from garboard.views.rounds import round_drafts
from garboard.views.shows import parts_of
from garboard.views.system_pages import system_drafts, system_key
from garboard.views.unfinished import unfinished
from garboard.views.which_copy import issued_copy, working_copy

__all__ = ["as_copy", "contents", "lay_out", "targets", "which_copy"]

GRAVE = (Severity.STOP, Severity.HOLD)
OF_THE_TOOL = ("manual", "rule", "method")
START = ("index", "about")
AT_ONCE = ("emergencies", "alarms", "symptoms", "may-it-be-run", "notices", "hazards")
UPKEEP = ("due", "spares", "safety-devices", "locked-valves")
LOOKED_UP = ("a-to-z", "numbers", "places", "tags", "glossary", "values", "sources")
"""Registers by what brings a reader to them; what is not named here is a record of the work."""
MANUAL = Review(
    "Manual of the tool. Nothing here was entered for this vessel, so no review of it is kept.",
    trusted=True,
)


def lay_out(  # noqa: PLR0913, PLR0917 - every source of pages is handed in
    book: Book,
    found: Iterable[Diagnostic],
    rules: Iterable[ModuleType],
    methods: Mapping[str, Method],
    proofs: Iterable[ProofResult],
    compared: Sequence[Compared] = (),
) -> tuple[Page, ...]:
    """Make every page.

    Args:
        book: What was read and worked out.
        found: What the rules found.
        rules: The rules, for their pages.
        methods: The bundled methods, for theirs.
        proofs: How the methods' published cases came out.
        compared: What differs between editions, and since the last one.
    """
    compared = tuple(compared)
    since = next((one.found for one in compared if not one.after), None)
    problems = by_roles(book, found)
    standing = _by_page(book, problems)
    findings = [one for one in book.of_kind(Finding) if unfinished(book, one)]
    isolations = isolations_in(book)
    answers = answers_of(book, standing)
    drafts = [
        *(
            draft
            for code, system in book.systems.items()
            for draft in system_drafts(book, system, answers[code])
        ),
        *(_record(book, record, since) for record in book.records.values()),
        *(
            component_draft(book, part, part_isolation(book, isolations, tag))
            for tag, part in book.components.items()
        ),
        *isolation_drafts(book, isolations),
        *asked_drafts(book, rules, problems),
        *people_drafts(book),
        *register_drafts(book, compared, answers),
        *round_drafts(book),
        path_findings_draft(book, problems),
        *edition_diff_drafts(book, compared),
        *card_drafts(book, standing, findings),
        labels_draft(book),
        *method_drafts(book, methods, proofs),
        *(make(book) for make in (writing_draft, parts_draft, records_draft)),
        *rule_drafts(book, rules),
        standing_draft(book, problems),
        numbers_draft(book),
        how_to_review_draft(book),
        *about_drafts(book),
        *(stub_draft(book, stub) for stub in book.content.stubs),
    ]
    drafts.insert(0, front_draft(book, frozenset(draft.key for draft in drafts)))
    users = _users(book)
    return ways_told(tuple(_finish(draft, standing, findings, users) for draft in drafts))


def _record(book: Book, record: Record, since: Comparison | None) -> Draft:
    """The page of a record; of a change with what is joined otherwise since the last edition."""
    draft = record_draft(book, record)
    if isinstance(record, Change):
        draft.add(*change_joins(book, record, since))
    return draft


def as_copy(book: Book, pages: Iterable[Page], issued: Edition | None) -> tuple[Page, ...]:
    """Pages as they stand in one copy of the handbook, with the pages about its editions.

    Args:
        book: What was read.
        pages: As laid out.
        issued: The edition that they are of; None in a working copy.
    """
    copy = which_copy(book, issued)
    editions = (draft.page() for draft in edition_drafts(book, issued))
    return tuple(replace(page, copy=copy) for page in (*pages, *editions))


def which_copy(book: Book, issued: Edition | None) -> Copy:
    """The copy of the handbook that is laid out: an issued edition, or a working copy."""
    return issued_copy(issued) if issued else working_copy(book.edition, book.today)


def _by_page(book: Book, found: tuple[Diagnostic, ...]) -> Mapping[str, tuple[Diagnostic, ...]]:
    """What stands against each page: by what it is about, and by the file it is written in."""
    pages: dict[str, list[Diagnostic]] = defaultdict(list)
    for item in found:
        sheet = book.network.sheets.get(item.about.split(".")[0])
        about = sheet.owner if sheet else item.about.split(".")[0]
        pages[about].append(item)
        pages[item.where.path].append(item)
    return {key: tuple(dict.fromkeys(items)) for key, items in pages.items()}


def _finish(
    draft: Draft,
    standing: Mapping[str, tuple[Diagnostic, ...]],
    findings: list[Finding],
    users: Mapping[str, tuple[Link, ...]],
) -> Page:
    book = draft.book
    shared = is_identifier(draft.key) and draft.key in book.components
    path = "" if shared else draft.source_path
    mine = dict.fromkeys((*standing.get(draft.key, ()), *standing.get(path, ())))
    mine |= dict.fromkeys(faults_of(book, draft.follows, standing))
    if draft.key.endswith("/open-against-it"):
        mine |= dict.fromkeys(against_system(standing, draft.system))
    draft.standing = tuple(
        item for item in mine if item.severity in GRAVE or item.code == "raw-html-removed"
    )
    if draft.kind in OF_THE_TOOL:
        return replace(draft.page(users.get(draft.key, ())), review=MANUAL)
    keys = {draft.key, *draft.follows, *(message.source for message in draft.messages)}
    if draft.system and not is_identifier(draft.key) and not draft.follows:
        keys |= {tag for tag, part in book.components.items() if part.system == draft.system}
    state = page_state(
        frozenset(keys), book.content.vessel.notices, findings, parts_of(draft), mine
    )
    page = draft.page(users.get(draft.key, ()))
    short = in_short(draft.standing) if AgainstIt() in draft.blocks else ()
    return replace(page, review=Review(state.words, state.trusted, state.brief), in_short=short)


def _users(book: Book) -> Mapping[str, tuple[Link, ...]]:
    """For each record and part the pages that name it, each once, in order of name."""
    named: dict[str, set[str]] = defaultdict(set)
    for item in book.mentions:
        if item.to != item.by:
            named[item.to.split(".")[0].split(" ")[0]].add(item.by)
    for address, value in book.values.items():
        for used in value.uses:
            owner, user = (_owner(book, one) for one in (used, address))
            if owner != user:
                named[owner].add(user)
    return {
        key: tuple(
            Link(user, f"{user} {title_of(book, user)}".strip())
            for user in sorted(users)
            if _has_page(book, user)
        )
        for key, users in named.items()
    }


def _owner(book: Book, address: str) -> str:
    owner = address.split(".", maxsplit=1)[0]
    sheet = book.network.sheets.get(owner)
    return sheet.owner if sheet else owner


def _has_page(book: Book, key: str) -> bool:
    return key in book.records or key in book.components


def targets(book: Book, pages: tuple[Page, ...]) -> dict[str, Target]:
    """Where every name leads: page keys, content files, ids, tags, blocks, addresses, sources."""
    found = {page.key: Target(page.path, "", page.title, heir_of(book, page.key)) for page in pages}
    for name, target in (*_in_pages(pages), *_in_headers(book, found)):
        found.setdefault(name, target)
    for address, value in book.values.items():
        owner = found.get(address.split(".", maxsplit=1)[0])
        path = owner.path if owner else "registers/values"
        found.setdefault(address, Target(path, address, value.label or address))
    for key, source in book.content.sources.items():
        found.setdefault(key, Target("registers/sources", key, source.title))
    return found


def _in_pages(pages: tuple[Page, ...]) -> Iterator[tuple[str, Target]]:
    """The file a page is written in, its calculations and their lines."""
    for page in pages:
        if page.source_path:
            yield page.source_path, Target(page.path, "", page.title)
        for block in page.blocks:
            if isinstance(block, Calculation):
                yield block.name, Target(page.path, block.name, block.title)
                for line in block.lines:
                    if line.anchor:
                        title = line.label or line.name
                        yield line.anchor, Target(page.path, line.anchor, title)


def _in_headers(book: Book, found: Mapping[str, Target]) -> Iterator[tuple[str, Target]]:
    """Named lines, which stand on the layout page of their system."""
    for system in book.systems.values():
        layout = found[system_key(system, "layout")]
        for name, header in (system.headers or {}).items():
            if header.tag:
                yield str(header.tag), Target(layout.path, str(header.tag), name)


def contents(book: Book, pages: tuple[Page, ...]) -> tuple[Section, ...]:
    """The contents: what the whole vessel uses first, then each system, then what is looked up."""
    keys = [page.key for page in pages]
    systems = [_of_system(book, system, pages) for system in book.systems.values()]
    within = {key for section in systems for key in _keys(section)}
    rest = [key for key in keys if key not in within]

    def register(*names: str) -> tuple[str, ...]:
        found = [f"registers/{name}" for name in names]
        return tuple(key for key in found if key in rest)

    def under(*starts: str) -> tuple[str, ...]:
        return tuple(key for key in rest if key.startswith(starts))

    used = (
        Section("Start", tuple(key for key in rest if key in START)),
        Section("At once", register(*AT_ONCE)),
        Section("Rounds and upkeep", (*under(f"{ROUNDS}/"), *register(*UPKEEP))),
        Section("Quick cards", (*register("cards", "labels"), *under(CARDS))),
        Section("People and jobs", tuple(key for key in rest if is_about_people(key))),
    )
    looked_up = (
        Section("Look up", register(*LOOKED_UP)),
        Section("Editions", tuple(key for key in rest if is_about_editions(key))),
    )
    placed = {key for section in (*used, *looked_up) for key in _keys(section)}
    return (
        *used,
        *systems,
        *looked_up,
        Section("Registers", tuple(key for key in under("registers/") if key not in placed)),
        Section("Methods", under("methods/")),
        Section("Manual", under("manual/")),
        Section(
            "Other",
            tuple(
                key
                for key in rest
                if key not in placed and not key.startswith(("registers/", "methods/", "manual/"))
            ),
        ),
    )


def _of_system(book: Book, system: System, pages: tuple[Page, ...]) -> Section:
    """A system: its own pages, then its records by kind, its parts, how each is isolated."""
    stem = system_key(system, "")
    own = tuple(page.key for page in pages if page.key.startswith(stem))
    records = tuple(
        Section(kind.plural.capitalize(), tuple(found))
        for kind in KINDS
        if (
            found := [
                str(record.id)
                for record in book.records.values()
                if record.system == system.code and kind_of(record) is kind
            ]
        )
    )
    parts = tuple(tag for tag, part in book.components.items() if part.system == system.code)
    isolations = tuple(
        page.key for page in pages if page.system == system.code and is_isolation(page.key)
    )
    named = (("Parts", parts), ("Isolations", isolations))
    sections = (*records, *(Section(title, inner) for title, inner in named if inner))
    return Section(system.title, own, sections)


def _keys(section: Section) -> Iterator[str]:
    yield from section.pages
    for inner in section.sections:
        yield from _keys(inner)
