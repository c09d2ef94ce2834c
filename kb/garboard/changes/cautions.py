"""What warns and guards people, and is not as it was: hazards, alarms, faults, procedures, locks.

Weakened is what warns of less, later or less loudly; strengthened is the reverse; of new words only
people can say which way they went, so both are shown.
"""

from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

from garboard.book import Book
from garboard.changes.alarm_diff import alarm_cautions, fault_cautions
from garboard.changes.comparison import Caution, StepChange, Strength
from garboard.changes.hazard_diff import hazard_cautions
from garboard.changes.step_diff import Held, guards_moved, steps_moved
from garboard.changes.telling import Told, listed, present, worded
from garboard.changes.wording import spoken
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left

__all__ = ["cautions_moved", "procedure_steps_moved"]

R = TypeVar("R", bound=Record)

WARNING = (Hazard, Procedure, Alarm, Fault)
ORDER = (Strength.WEAKENED, Strength.CHANGED, Strength.STRENGTHENED)


def cautions_moved(old: Book, new: Book) -> list[Caution]:
    """Every warning and guard that is not as it was, the weakened first, class A before B."""
    found = [
        *_kept(old, new),
        *_each(old, new, Hazard, hazard_cautions),
        *_each(old, new, Alarm, alarm_cautions),
        *_each(old, new, Fault, fault_cautions),
        *_each(old, new, Procedure, _procedure),
        *_parts(old, new),
    ]
    return sorted(found, key=lambda one: (ORDER.index(one.strength), one.weight or "Z"))


def procedure_steps_moved(old: Book, new: Book) -> list[StepChange]:
    """Every step that is not as it was, procedure by procedure."""
    return [
        step
        for before, after in _both(old, new, Procedure)
        for step in steps_moved(Held(old, new, before, after))
    ]


def _both(old: Book, new: Book, kind: type[R]) -> Iterator[tuple[R, R]]:
    for after in new.of_kind(kind):
        before = old.records.get(str(after.id))
        if isinstance(before, kind):
            yield before, after


def _each(
    old: Book,
    new: Book,
    kind: type[R],
    told: Callable[[Book, Book, R, R], Iterator[Told]],
) -> Iterator[Caution]:
    for before, after in _both(old, new, kind):
        for one in told(old, new, before, after):
            yield _caution(str(after.id), after.title, str(after.weight), one)


def _caution(about: str, title: str, weight: str, told: Told) -> Caution:
    return Caution(
        about=about,
        title=title,
        weight=weight,
        strength=told.strength,
        what=told.what,
        before=told.before,
        after=told.after,
    )


def _kept(old: Book, new: Book) -> Iterator[Caution]:
    """Warnings that came, went, or are no longer in force."""
    keys = {**new.records, **old.records}
    for key in sorted(keys):
        before, after = old.records.get(key), new.records.get(key)
        known = after or before
        if not isinstance(known, WARNING):
            continue
        words = _force(before), _force(after)
        for one in present("it is in force", *words):
            yield _caution(key, known.title, str(known.weight), one)


def _force(record: Record | None) -> str:
    return "" if record is None or has_left(record) else "in force"


def _procedure(old: Book, new: Book, before: Procedure, after: Procedure) -> Iterator[Told]:
    for one in guards_moved(Held(old, new, before, after)):
        yield Told(one.strength, one.what, one.before, one.after)
    for name in ("stop_if", "isolation", "competence", "people", "when"):
        told = spoken(old, getattr(before, name)), spoken(new, getattr(after, name))
        yield from worded(name.replace("_", " "), *told)
    yield from listed("protection worn", before.ppe, after.ppe)


def _parts(old: Book, new: Book) -> Iterator[Caution]:
    """How parts are locked, held, watched and protected."""
    for tag in sorted(old.components.keys() & new.components.keys()):
        before, after = old.components[tag], new.components[tag]
        for one in _guards(before, after):
            yield _caution(tag, after.name or after.kind, "", one)


def _guards(before: Component, after: Component) -> Iterator[Told]:
    for name in ("locked", "secured", "fails"):
        told = (str(getattr(one, name) or "") for one in (before, after))
        yield from worded(name, *told)
    for name in ("watches", "stops", "protects"):
        rows: Sequence[Sequence[str]] = [getattr(one, name) for one in (before, after)]
        yield from listed(name, *rows)
    yield from present("watch round", before.round or "", after.round or "")
