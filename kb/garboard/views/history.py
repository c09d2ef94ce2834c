"""Why a system is as it is, and what went wrong: decisions, changes, findings, lessons, newest first."""

from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.finding import Action, Finding, Lesson
from garboard.records.system import System
from garboard.views.draft import Draft
from garboard.views.inline import cell, day
from garboard.views.page import Cell, Column, Link, Paragraph, Row, Shown, Table
from garboard.views.tables import newest_first, record_table

__all__ = ["value_history", "what_went_wrong", "why_it_is_so"]


def why_it_is_so(draft: Draft, system: System) -> None:
    """Decisions one sentence each, then how values moved."""
    book = draft.book
    decisions = newest_first(one for one in book.of_kind(Decision) if one.system == system.code)
    draft.add(
        record_table(book, "Decisions, newest first", decisions, "drafted", "chosen", "reasons")
    )
    changes = [one for one in book.of_kind(Change) if one.system == system.code]
    draft.add(
        record_table(book, "Changes, newest first", newest_first(changes), "basis", "installed")
    )
    draft.add(value_history(draft, changes))


def value_history(draft: Draft, changes: list[Change]) -> Table:
    """Every value that a change moved: before, after, and what it is today."""
    book = draft.book
    rows = []
    for change in changes:
        for address, shift in change.values.items():
            today: Cell = (Shown(address, book.show(address) or "no longer recorded"),)
            rows.append(
                Row(
                    (
                        (address,),
                        cell(book, shift.before),
                        cell(book, shift.after),
                        today,
                        (Link(str(change.id), str(change.id)), f" {day(change.installed)}"),
                    )
                )
            )
    columns = tuple(Column(title) for title in ("value", "before", "after", "today", "by"))
    return Table("Values that were changed", columns, tuple(rows), "no value was changed yet")


def what_went_wrong(draft: Draft, system: System) -> None:
    """Findings with who caught them, what was done, what was learned."""
    book = draft.book
    draft.add(
        Paragraph(
            ("Nobody is blamed here. Whoever caught a mistake is thanked by role.",), quiet=True
        )
    )
    for kind, caption, names in (
        (Finding, "Findings, newest first", ("words", "danger", "credit", "cause")),
        (Action, "Actions", ("action", "owner", "due", "result")),
        (Lesson, "Lessons", ("learned", "recommend", "into")),
    ):
        found = newest_first(one for one in book.of_kind(kind) if one.system == system.code)
        draft.add(record_table(book, caption, found, *names))
