"""When something was put in, when somebody authorised it, and whether it was an emergency."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from garboard.book import Book
from garboard.records.change import Change, TemporaryModification
from garboard.records.standing import has_left, refused

__all__ = ["CONTACT", "PutIn", "put_in"]

CONTACT = timedelta(days=2)
"""How soon an emergency is looked at by somebody else: 48 hours, counted in whole days."""


@dataclass(frozen=True, slots=True)
class PutIn:
    """A change or temporary modification, with its days."""

    record: Change | TemporaryModification
    installed: date | None
    """The day it became true."""
    path: str
    """Where that day stands."""
    authorised: date | None
    """The first day on which somebody authorised it."""
    emergency: date | None
    """The first day on which it was signed to be an emergency."""
    reviewed: date | None
    """The first day on which somebody who may looked at the emergency."""

    @property
    def in_emergency(self) -> bool:
        """Whether it was called an emergency when it was put in, and not only long after."""
        if self.emergency is None or self.installed is None:
            return self.emergency is not None
        return self.emergency - self.installed <= CONTACT


def put_in(book: Book) -> Iterator[PutIn]:
    """Every change and temporary modification that came about."""
    for record in book.records.values():
        if has_left(record) or refused(record):
            continue
        if isinstance(record, Change):
            day = record.installed or _first(record, "installed")
            yield _put_in(record, day, "installed" if record.installed else "state", "checked")
        elif isinstance(record, TemporaryModification):
            day = record.fitted.on if record.fitted else _first(record, "fitted")
            yield _put_in(record, day, "fitted" if record.fitted else "state", "fitted")


def _put_in(
    record: Change | TemporaryModification, day: date | None, path: str, reviewed: str
) -> PutIn:
    emergency = _first(record, "emergency")
    after = [
        line.on
        for line in record.signed
        if line.to == reviewed and emergency and line.on >= emergency
    ]
    return PutIn(
        record, day, path, _first(record, "authorised"), emergency, min(after, default=None)
    )


def _first(record: Change | TemporaryModification, state: str) -> date | None:
    """The first day on which somebody signed it into a state."""
    return min((line.on for line in record.signed if line.to == state), default=None)
