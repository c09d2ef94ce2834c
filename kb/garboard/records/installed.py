"""Which installed change touched a component or a value, and when it became true."""

from collections.abc import Iterable, Iterator
from datetime import date

from garboard.records.change import Change
from garboard.records.standing import has_left, refused

__all__ = ["changes_of_tag", "changes_of_value", "last_since"]

Dated = tuple[date, Change]


def changes_of_tag(changes: Iterable[Change], tag: str) -> list[Dated]:
    """Installed changes that affect a component or move one of its values, oldest first."""
    return sorted(_touching_tag(changes, tag), key=lambda item: (item[0], str(item[1].id)))


def changes_of_value(changes: Iterable[Change], address: str) -> list[Dated]:
    """Installed changes that move a value, oldest first."""
    found = ((day, change) for day, change in _installed(changes) if address in change.values)
    return sorted(found, key=lambda item: (item[0], str(item[1].id)))


def last_since(changes: list[Dated], day: date) -> Dated | None:
    """The newest change after a day, or None."""
    return changes[-1] if changes and changes[-1][0] > day else None


def _touching_tag(changes: Iterable[Change], tag: str) -> Iterator[Dated]:
    for day, change in _installed(changes):
        moved = {address.split(".")[0] for address in change.values}
        if tag in moved or tag in change.affects:
            yield day, change


def _installed(changes: Iterable[Change]) -> Iterator[Dated]:
    for change in changes:
        if change.installed and not has_left(change) and not refused(change):
            yield change.installed, change
