"""One alarm, or one fault the crew looks up, before and after: setting, urgency, what is done first."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Value
from garboard.changes.telling import Told, acted, ranked, worded
from garboard.changes.wording import spoken
from garboard.records.alarm import Alarm, Direction, Fault, Priority

__all__ = ["alarm_cautions", "fault_cautions"]

ALARM_WORDS = (
    "wording",
    "tag",
    "direction",
    "means",
    "consequence",
    "time_to_act",
    "delay",
    "confirm",
    "automatic",
    "silence",
    "tested",
)
FAULT_WORDS = ("safe_first", "stop_when", "remedy", "get_home")


def alarm_cautions(old: Book, new: Book, before: Alarm, after: Alarm) -> Iterator[Told]:
    """Everything about an alarm that warns or tells otherwise than before."""
    yield from _setting(old, new, before, after)
    order = list(Priority)
    urgent = [order.index(one.priority or Priority.EMERGENCY) for one in (before, after)]
    texts = str(before.priority or ""), str(after.priority or "")
    yield from ranked("priority", *texts, urgent[0] - urgent[1])
    firsts = [spoken(old, one) for one in before.first], [spoken(new, one) for one in after.first]
    yield from acted("first action", *firsts)
    yield from _words(old, new, before, after, ALARM_WORDS)


def fault_cautions(old: Book, new: Book, before: Fault, after: Fault) -> Iterator[Told]:
    """Everything that the crew is told to do otherwise than before."""
    yield from _words(old, new, before, after, FAULT_WORDS)
    rows = []
    for book, record in ((old, before), (new, after)):
        checks = []
        for one in record.checks:
            asked = " ".join(str(part) for part in (one.do, one.tag, spoken(book, one.see)) if part)
            ways = f"yes: {spoken(book, one.yes)}; no: {spoken(book, one.no)}"
            checks.append(f"{asked}: {ways}")
        rows.append(checks)
    yield from acted("check", *rows)


def _words(
    old: Book, new: Book, before: Alarm | Fault, after: Alarm | Fault, names: tuple[str, ...]
) -> Iterator[Told]:
    for name in names:
        told = spoken(old, getattr(before, name)), spoken(new, getattr(after, name))
        yield from worded(name.replace("_", " "), *told)


def _setting(old: Book, new: Book, before: Alarm, after: Alarm) -> Iterator[Told]:
    """A low alarm that is set lower, or a high one set higher, comes later: it is weakened."""
    one, other = _value(old, before), _value(new, after)
    texts = one.text if one else "", other.text if other else ""
    if not (one and other):
        yield from worded("setting", *texts)
        return
    if one.si == other.si:
        return
    earlier = 0
    alike = before.direction is after.direction and one.type == other.type
    if alike and one.si is not None and other.si is not None and after.direction:
        earlier = 1 if (other.si > one.si) is (after.direction is Direction.LOW) else -1
    yield from ranked("setting", *texts, earlier)


def _value(book: Book, alarm: Alarm) -> Value | None:
    return book.values.get(str(alarm.set)) if alarm.set else None
