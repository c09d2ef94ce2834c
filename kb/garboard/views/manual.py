"""The manual inside the handbook: what each rule says, what stands, how the numbers are published."""

from collections.abc import Iterable, Iterator
from types import ModuleType

from garboard.book import Book
from garboard.errors import Diagnostic
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.page import (
    Cell,
    Column,
    Download,
    Facts,
    Link,
    Paragraph,
    Row,
    Table,
)
from garboard.views.roles import in_roles
from garboard.views.rule_text import binds_from, labelled, paragraphs_of
from garboard.views.values_data import CSV, JSON, SCHEMA, columns

__all__ = ["honest_limits", "numbers_draft", "rule_drafts", "standing_draft"]

HONEST_LIMITS = (
    "A clean build means: no contradiction was found in what was entered. What was not entered was not"
    " checked. It is no approval: {} decide."
)


def rule_drafts(book: Book, rules: Iterable[ModuleType]) -> Iterator[Draft]:
    """A page for each rule, made from its docstring, and a list of them."""
    index = Draft(book, "manual/rules", "Rules that are checked", "manual")
    rows = []
    for rule in rules:
        draft = Draft(book, f"manual/rules/{rule.CODE}", rule.CODE, "rule")
        paragraphs = paragraphs_of(rule)
        draft.add(*(Paragraph(labelled(part)) for part in paragraphs))
        waivable = "yes, while it stands" if rule.WAIVABLE else "no"
        facts: list[tuple[str, Cell]] = [
            ("severity", (str(rule.SEVERITY),)),
            ("binds from", (binds_from(rule),)),
            ("asked", (_when(rule),)),
            ("a concession may waive it", (waivable,)),
        ]
        draft.add(Facts(tuple(facts)))
        rows.append(
            Row(
                (
                    (Link(draft.key, rule.CODE),),
                    (str(rule.SEVERITY),),
                    (binds_from(rule),),
                    (paragraphs[0],),
                ),
                rule.CODE,
            )
        )
        yield draft
    columns = tuple(Column(title) for title in ("code", "severity", "binds from", "fires when"))
    index.add(Paragraph((honest_limits(book),)), Table("Rules", columns, tuple(rows)))
    yield index


def _when(rule: ModuleType) -> str:
    return "when an edition is issued" if hasattr(rule, "AT_ISSUE") else "at every build"


def honest_limits(book: Book) -> str:
    """What a clean build means, and what it does not."""
    return HONEST_LIMITS.format(_deciders(book))


def _deciders(book: Book) -> str:
    names = book.content.vessel.defers_to or (
        "flag",
        "class",
        "surveyor",
        "local codes",
        "licensed trades",
    )
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]


def standing_draft(book: Book, found: Iterable[Diagnostic]) -> Draft:
    """Everything that stands against the record, gravest first."""
    draft = Draft(book, "manual/standing", "What stands against the record", "report")
    draft.add(Paragraph((honest_limits(book),)))
    roles = {key: person.role for key, person in book.content.people.items()}
    rows = tuple(
        Row(
            (
                (str(item.severity),),
                cell(book, in_roles(item.about, roles)),
                cell(book, item.text),
                cell(book, item.help),
                (Link(f"manual/rules/{item.code}", item.code),),
                (str(item.where),),
            )
        )
        for item in sorted(found, key=lambda one: (one.severity.rank, one.where))
    )
    columns = tuple(
        Column(title) for title in ("severity", "about", "what is", "help", "rule", "place")
    )
    draft.add(Table("Gravest first", columns, rows, "nothing"))
    return draft


def numbers_draft(book: Book) -> Draft:
    """How the numbers are published as files, field by field."""
    draft = Draft(book, "manual/numbers-as-data", "Numbers as data", "manual")
    rows = tuple(Row(((name,), (meaning,))) for name, meaning in columns())
    draft.add(
        Paragraph(
            (
                "Every number of this handbook as one row: ",
                Download(CSV, CSV),
                " for a spreadsheet, ",
                Download(JSON, JSON),
                f" for a program (schema {SCHEMA}). Both are written at each build from the same rows"
                " that the pages show.",
            )
        ),
        Paragraph((honest_limits(book),)),
        Table("Fields, in this order", (Column("field"), Column("what it is")), rows),
        Paragraph(
            (
                "In the CSV, text that begins with =, +, -, @ or an apostrophe has one apostrophe before"
                " it, so that no spreadsheet takes it for a formula; numbers have none. Lists are joined"
                " by semicolons, and an empty cell is a number that is not known. The last column, copy, says"
                " on every row which copy of the handbook it stands in.",
            )
        ),
    )
    return draft
