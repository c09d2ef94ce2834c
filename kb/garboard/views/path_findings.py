"""What was found in the layout of every system: a table for a page, and the register of all."""

from collections.abc import Iterable, Mapping

from garboard.book import Book
from garboard.errors import Diagnostic
from garboard.systems.finding import PathFinding
from garboard.systems.survey import NOT_CHECKED
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.line_trace import trace_sentence
from garboard.views.page import Cell, Column, Heading, Link, Paragraph, Row, Table

__all__ = ["accepted", "path_finding_table", "path_findings_draft"]

TITLES = ("level", "about", "what is", "positions", "rule", "fingerprint", "accepted by")


def accepted(found: Iterable[Diagnostic]) -> Mapping[str, str]:
    """By fingerprint: the concession that accepts a finding for now."""
    return {item.fingerprint: item.conceded_by for item in found if item.conceded_by}


def path_finding_table(
    book: Book,
    caption: str,
    findings: Iterable[PathFinding],
    conceded: Mapping[str, str],
    empty: str = "nothing found",
) -> Table:
    """Findings of the layout, as they come.

    Args:
        book: Where tags are looked up.
        caption: Says what is listed.
        findings: In the order of the rows.
        conceded: Concessions by fingerprint.
        empty: What is said where there are none.
    """
    rows = tuple(_row(book, found, conceded) for found in findings)
    return Table(caption, tuple(Column(title) for title in TITLES), rows, empty)


def _row(book: Book, found: PathFinding, conceded: Mapping[str, str]) -> Row:
    cells: tuple[Cell, ...] = (
        (str(found.level),),
        cell(book, found.about),
        cell(book, found.text),
        cell(book, found.line.words) or ("whatever the valves",),
        (Link(f"manual/rules/{found.code}", found.code),),
        (found.fingerprint,),
        cell(book, conceded.get(found.fingerprint)) or ("nobody",),
    )
    return Row(cells, found.fingerprint)


def path_findings_draft(book: Book, found: Iterable[Diagnostic]) -> Draft:
    """The register: every finding of every layout, and how far the lines of each were traced."""
    draft = Draft(book, "registers/path-findings", "What the layouts show", "register")
    conceded = accepted(found)
    draft.add(
        Paragraph(
            (
                "Found by searching the connections of each system, with every valve in every position. A"
                " concession that accepts a finding holds its fingerprint, and is over when that changes.",
            )
        )
    )
    for code, surveyed in book.surveys.items():
        title = book.systems[code].title
        draft.add(
            Heading(f"{title}: {len(surveyed.findings)} found"),
            Paragraph(trace_sentence(book, code)),
            path_finding_table(book, title, surveyed.findings, conceded),
        )
    draft.add(Paragraph((NOT_CHECKED,), quiet=True))
    return draft
