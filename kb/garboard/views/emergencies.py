"""The index for an emergency: what one sees or hears, and the first action, a screen a group.

The groups are those of `emergencies` in handbook.yml: no record says by itself that it is about fire
or water. Where none are written, and for what no group names, the groups are the systems.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault, Priority
from garboard.records.base import Record
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Use
from garboard.records.signal_word import signal_word
from garboard.records.standing import has_left, kind_name
from garboard.views.at_once import WayIn
from garboard.views.draft import Draft
from garboard.views.first_actions import first_action, words_of
from garboard.views.messages import worst_first
from garboard.views.page import AgainstIt, Heading, Link, Paragraph, Tiles, WaysIn

__all__ = ["Group", "emergencies", "groups_of", "urgent"]

WORST = 3
"""So many hazards of a system stand in the index where no groups are written."""
USES = (Use.EMERGENCY, Use.ABNORMAL)
PRIORITIES = (Priority.EMERGENCY, Priority.ALARM)


@dataclass(frozen=True, slots=True)
class Group:
    """What belongs to one thing that is seen or heard."""

    seen: str
    records: tuple[Record, ...]

    @property
    def anchor(self) -> str:
        """Where a link to it lands.

        >>> Group("Fire or smoke", ()).anchor
        'fire-or-smoke'
        """
        return re.sub(r"[^\w]+", "-", self.seen.casefold()).strip("-") or "group"


def urgent(book: Book) -> tuple[Record, ...]:
    """What must be in the index: emergency and abnormal procedures, urgent alarms, faults; in that order."""
    live = [one for one in book.records.values() if not has_left(one)]
    procedures = [one for one in live if isinstance(one, Procedure) and one.use in USES]
    alarms = [one for one in live if isinstance(one, Alarm) and one.priority in PRIORITIES]
    return (
        *sorted(procedures, key=lambda one: USES.index(one.use or Use.ABNORMAL)),
        *sorted(alarms, key=lambda one: PRIORITIES.index(one.priority or Priority.ALARM)),
        *(one for one in live if isinstance(one, Fault)),
    )


def groups_of(book: Book) -> tuple[Group, ...]:
    """The groups as written, then what none of them names by system."""
    written = book.content.vessel.emergencies or {}
    groups = [
        Group(seen, tuple(one for key in keys if (one := _live(book, str(key)))))
        for seen, keys in written.items()
    ]
    named = {str(key) for keys in written.values() for key in keys}
    left = [one for one in urgent(book) if str(one.id) not in named]
    for code, system in book.systems.items():
        own = [one for one in left if one.system == code]
        if not written:
            own += _worst(book, code)
        if own:
            groups.append(Group(f"Else: {system.title}" if written else system.title, tuple(own)))
    return tuple(one for one in groups if one.records)


def _live(book: Book, key: str) -> Record | None:
    found = book.records.get(key)
    return None if found is None or has_left(found) else found


def _worst(book: Book, code: str) -> Sequence[Hazard]:
    own = [one for one in book.of_kind(Hazard) if one.system == code and not has_left(one)]
    return worst_first(own)[:WORST]


def emergencies(draft: Draft) -> None:
    """Fill the register: the groups as targets, then each with its lines."""
    groups = groups_of(draft.book)
    draft.add(
        Paragraph(("What do you see or hear? Under each line stands the first action.",)),
        Tiles(
            tuple((Link(f"{draft.key}#{one.anchor}", one.seen), "") for one in groups), small=True
        ),
    )
    for group in groups:
        draft.add(
            Heading(group.seen, anchor=group.anchor), WaysIn(tuple(_ways(draft, group)), close=True)
        )
    draft.add(
        AgainstIt(),
        Heading("Not here?"),
        Tiles(
            (
                (Link("registers/alarms", "Alarms"), "by the words on the panel"),
                (Link("registers/symptoms", "What the crew notices"), "from symptom to fault"),
                (Link("registers/hazards", "What could hurt you"), "every hazard, worst first"),
            ),
            small=True,
        ),
    )


def _ways(draft: Draft, group: Group) -> Iterator[WayIn]:
    for one in group.records:
        sort = signal_word(one) if isinstance(one, Hazard) else kind_name(one).capitalize()
        link = Link(str(one.id), f"{sort}: {words_of(one)}")
        yield WayIn(link, first_action(draft.book, one, label=False))
