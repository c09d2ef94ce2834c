"""Registers of what was found: open and ended, refused and right after all, who caught it, what it taught."""

from collections import defaultdict
from collections.abc import Iterable

from garboard.book import Book
from garboard.changes.finding_steps import refused_and_right
from garboard.changes.kept_comparisons import Compared
from garboard.changes.repeated_causes import lessons_asked_for
from garboard.records.base import bare_id
from garboard.records.finding import Finding, Lesson
from garboard.records.standing import has_left, refused
from garboard.views.draft import Draft
from garboard.views.fields import line_of
from garboard.views.inline import cell, day, link_to, person, title_of, to_the_letter
from garboard.views.layout_changes import caught_by_search
from garboard.views.page import Cell, Column, Heading, Link, Paragraph, Row, Run, Table
from garboard.views.tables import class_of, newest_first, record_table, stands
from garboard.views.unfinished import unfinished

__all__ = ["findings", "lessons", "who_caught_what"]


def findings(draft: Draft) -> None:
    """Every finding: open, ended, and those that were refused at first and were right."""
    book = draft.book
    found = newest_first(book.of_kind(Finding))
    still = [one for one in found if unfinished(book, one)]
    ended = [one for one in found if not unfinished(book, one)]
    names = ("words", "danger", "found", "credit")
    draft.add(record_table(book, "Open", still, *names, empty="none open"))
    draft.add(record_table(book, "Closed, refused and withdrawn, kept", ended, *names))
    draft.add(Heading("Refused first, and right after all"), _reversed(book, found))


def _reversed(book: Book, found: list[Finding]) -> Table:
    rows = []
    for one in found:
        turned = refused_and_right(one)
        if turned is None:
            continue
        said = turned.refused.words
        refusal: Cell = (f"{person(book, turned.refused.by)}, {day(turned.refused.on)}",)
        if said:
            refusal = (*refusal, ": \u201c", *to_the_letter(book, said), "\u201d")
        again = f"{person(book, turned.raised.by)}, {day(turned.raised.on)}"
        taken = f"{person(book, turned.accepted.by)}, {day(turned.accepted.on)}"
        link: Cell = (Link(str(one.id), str(one.id)), f" {one.title}")
        rows.append(Row((link, refusal, (again,), (taken,), line_of(book, one, "credit"))))
    titles = ("finding", "refused by", "raised again by", "accepted by", "caught by")
    columns = tuple(Column(title) for title in titles)
    return Table("Said no, then yes", columns, tuple(rows), "none so far")


def who_caught_what(draft: Draft, compared: Iterable[Compared] = ()) -> None:
    """By role, what each caught, how bad it could have been, and which checks had let it pass.

    Args:
        draft: The page.
        compared: Editions held against each other: what the search of the layouts caught.
    """
    book = draft.book
    draft.add(
        Paragraph(
            ("Nobody is blamed here. Whoever caught a mistake is thanked by role.",), quiet=True
        )
    )
    roles: dict[str, list[Finding]] = defaultdict(list)
    escaped: dict[str, list[Finding]] = defaultdict(list)
    for one in newest_first(book.of_kind(Finding)):
        if has_left(one) or refused(one):
            continue
        catcher = one.credit or (one.found.by if one.found else one.author)
        roles[person(book, catcher)].append(one)
        for name in one.escaped:
            escaped[bare_id(name)].append(one)
    ordered = sorted(roles.items(), key=lambda item: (-len(item[1]), item[0]))
    columns = tuple(
        Column(title) for title in ("finding", "class", "danger", "where", "checks it had escaped")
    )
    for role, caught in ordered:
        many = "1 finding" if len(caught) == 1 else f"{len(caught)} findings"
        rows = tuple(Row(_caught(book, one)) for one in caught)
        draft.add(Heading(f"{role}: {many}"), Table(f"Caught by: {role}", columns, rows))
    draft.add(Heading("The search of the layouts"), caught_by_search(book, compared))
    through = tuple(
        Row(((link_to(book, key), f" {title_of(book, key)}"), _links(them)))
        for key, them in sorted(escaped.items())
    )
    draft.add(
        Heading("Checks that something escaped"),
        Table(
            "Escaped", (Column("check"), Column("what it let pass")), through, "none named so far"
        ),
    )


def _caught(book: Book, one: Finding) -> tuple[Cell, ...]:
    return (
        (Link(str(one.id), str(one.id)), f" {one.title}"),
        (class_of(one),),
        cell(book, one.danger) or ("not recorded",),
        line_of(book, one, "where_"),
        line_of(book, one, "escaped") or ("none named",),
    )


def lessons(draft: Draft) -> None:
    """What was learned and where it is built in; and where three findings ask for a lesson."""
    book = draft.book
    groups = lessons_asked_for(book)
    rows = tuple(
        Row((cell(book, group[0].cause), _links([*group]), (str(len(group)),))) for group in groups
    )
    columns = (Column("cause"), Column("findings"), Column("how many", number=True))
    draft.add(
        Heading("A lesson is asked for"),
        Table("Three findings or more, one cause, no lesson", columns, rows, "none"),
    )
    learned = tuple(
        Row(
            (
                (Link(str(one.id), str(one.id)), f" {one.title} ({stands(book, one)})"),
                line_of(book, one, "event"),
                cell(book, one.learned),
                cell(book, one.recommend),
                line_of(book, one, "into") or ("nowhere yet",),
            ),
            str(one.id),
        )
        for one in newest_first(book.of_kind(Lesson))
    )
    titles = ("lesson", "taught by", "learned", "do from now on", "built into")
    draft.add(
        Heading("Lessons"), Table("Lessons, newest first", tuple(map(Column, titles)), learned)
    )


def _links(found: list[Finding]) -> Cell:
    runs: list[Run] = []
    for one in found:
        runs += [", "] if runs else []
        runs += [Link(str(one.id), str(one.id))]
    return tuple(runs)
