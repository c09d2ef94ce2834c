"""What the layout of a system was asked: every question, its answer, and what the answer is worth."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from types import ModuleType

from garboard.book import Book
from garboard.changes.line_trace import LineTrace, line_trace
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import is_tag
from garboard.records.system import System
from garboard.systems.finding import Level, PathFinding
from garboard.systems.survey import NOT_CHECKED, Survey
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.line_trace import nothing_words, words_of
from garboard.views.page import Column, Facts, Heading, Link, Paragraph, Row, Table
from garboard.views.path_findings import accepted, path_finding_table
from garboard.views.rule_text import asks_the_layout, question_of
from garboard.views.system_pages import ASKED, system_key

__all__ = ["asked_drafts", "asked_line"]

KIND = "questions to the layout"


def asked_drafts(
    book: Book, rules: Iterable[ModuleType], found: Iterable[Diagnostic]
) -> Iterator[Draft]:
    """A page for each system.

    Args:
        book: The book.
        rules: All rules; those that ask the layout are told by what they bind from.
        found: What the rules found, for what was conceded.
    """
    asking = [rule for rule in rules if asks_the_layout(rule)]
    conceded = accepted(found)
    for system in book.systems.values():
        yield _asked(book, system, asking, conceded)


def _asked(
    book: Book, system: System, asking: Iterable[ModuleType], conceded: Mapping[str, str]
) -> Draft:
    key = system_key(system, ASKED)
    draft = Draft(book, key, "What the layout was asked", KIND, system=system.code)
    surveyed = book.surveys[system.code]
    trace = line_trace(book, system.code)
    draft.add(
        Paragraph(
            (
                "Each question was put to the connections as they are entered, with every valve in every"
                " position. Only where two people have traced the lines is no finding worth more than the"
                " drawing.",
            )
        ),
        Facts(
            (
                ("lines", cell(book, words_of(trace))),
                ("digest of the connections", (trace.digest or "none",)),
            )
        ),
    )
    draft.add(_questions(book, asking, surveyed, trace))
    if not surveyed.settled:
        draft.add(
            Paragraph(
                (
                    "There are more positions of three-way valves than are tried one after another: the"
                    " highest pressures may be less than is said. Check by hand.",
                )
            )
        )
    draft.add(
        Heading("What was found"),
        path_finding_table(book, "Gravest first", surveyed.findings, conceded),
        Paragraph((NOT_CHECKED,), quiet=True),
    )
    return draft


def _questions(
    book: Book, asking: Iterable[ModuleType], surveyed: Survey, trace: LineTrace
) -> Table:
    rows = tuple(
        Row(
            (
                (question_of(rule),),
                cell(book, _answer(surveyed, trace, rule.CODE)),
                (Link(f"manual/rules/{rule.CODE}", rule.CODE),),
            ),
            rule.CODE,
        )
        for rule in asking
    )
    columns = (Column("question"), Column("answer"), Column("rule"))
    return Table("Questions", columns, rows, "no question")


def _answer(surveyed: Survey, trace: LineTrace, code: str) -> str:
    found = [one for one in surveyed.findings if one.code == code]
    return _counted(found) if found else nothing_words(trace, len(surveyed.plant.faults), code)


def _counted(found: Iterable[PathFinding]) -> str:
    """How many were found, by level: `2 found: 1 danger, 1 warning`."""
    levels = Counter(one.level for one in found)
    each = ", ".join(
        f"{levels[level]} {level}{'s' if levels[level] > 1 else ''}"
        for level in Level
        if levels[level]
    )
    return f"{levels.total()} found: {each}"


def asked_line(book: Book, rules: Iterable[ModuleType], system: str) -> str:
    """The same in one line, for the report: how many questions, what was found, what it is worth."""
    asking = sum(map(asks_the_layout, rules))
    surveyed = book.surveys[system]
    title = f"{system} {book.systems[system].title}"
    if not surveyed.plant.pipes:
        return f"{title}: no connections entered, nothing was asked of the layout"
    said = _counted(surveyed.findings) if surveyed.findings else "nothing found"
    many = "1 question" if asking == 1 else f"{asking} questions"
    trace = line_trace(book, system)
    worth = "" if trace.traced and not surveyed.plant.faults else ": no pass"
    holes = _holes(book, system)
    faults = "1 fault" if holes == 1 else f"{holes} faults"
    asked = f"; {faults} in system.yml, so it was asked with holes in it: mend that first"
    worth += asked if holes else ""
    return f"{title}: {many} to the layout, {said}; {words_of(trace)}{worth} (connections {trace.digest})"


def _holes(book: Book, system: str) -> int:
    """How much of its file could not be read or leads to no part, so that findings may be not so."""
    path = f"{book.systems[system].folder}/system.yml"
    unread = {
        item.where
        for item in book.content.diagnostics
        if item.where.path == path and item.severity is Severity.STOP and item.where != Where(path)
    }
    headers = (book.systems[system].headers or {}).values()
    known = {*book.components, *(str(header.tag) for header in headers if header.tag)}
    lost = {
        item.where
        for item in book.mentions
        if item.where.path == path and item.field == "connections"
        if is_tag(item.to) and item.to not in known
    }
    return len(unread | lost)
