"""Whether anybody looked, on the day that was set, if a cure worked."""

from dataclasses import dataclass
from datetime import date

from garboard.book import Book
from garboard.changes.where_else import actions_of
from garboard.records.finding import Action, Finding
from garboard.records.standing import has_left, is_history, refused

__all__ = ["Look", "overdue_looks"]


@dataclass(frozen=True, slots=True)
class Look:
    """A day on which somebody was to look, and nothing says that anybody did."""

    of: Action | Finding
    on: date
    field: str


def overdue_looks(book: Book) -> tuple[Look, ...]:
    """Every look whose day is past and that has no result, in order of id.

    A finding is asked for only where none of its own actions is: one look is owed once. The result of
    one of its actions answers for it.
    """
    late = {
        action.id: look for action in book.of_kind(Action) if (look := _of_action(book, action))
    }
    asked = [
        Look(finding, finding.effective_on, "effective_on")
        for finding in book.of_kind(Finding)
        if finding.effective_on is not None
        and finding.effective_on < book.today
        and not (has_left(finding) or refused(finding))
        and not any(one.id in late or one.result for one in actions_of(book, finding))
    ]
    return (*late.values(), *asked)


def _of_action(book: Book, action: Action) -> Look | None:
    if has_left(action) or is_history(action) or action.result:
        return None
    if action.look_on is None or action.look_on >= book.today:
        return None
    return Look(action, action.look_on, "look_on")
