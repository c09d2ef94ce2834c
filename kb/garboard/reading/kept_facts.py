"""What a record must not lose: first words, objections, failed results, hold points, signatures."""

from collections.abc import Iterator
from dataclasses import dataclass, field, fields

from garboard.reading.strict_yaml import shorten
from garboard.records.base import Record
from garboard.records.decision import Decision
from garboard.records.finding import Finding
from garboard.records.inspection import PlanLine, Point, Result, Test
from garboard.records.signoff import SignOff

__all__ = ["Fact", "facts_of", "now_said", "plain"]

LONGEST = 80
"""Signs of a quotation in a message."""


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing that a record said."""

    what: str
    """`its words`, `the checker's signature of 2031-03-12`."""
    said: str
    """As it was said, white space apart."""
    path: str
    """The field in which it stood."""
    line: SignOff | None = field(default=None, compare=False)
    """The signature, where it is one."""


def facts_of(record: Record) -> Iterator[Fact]:
    """Everything that one version of a record holds and no later one may lose."""
    if isinstance(record, Finding) and record.words:
        yield Fact("its words", _even(record.words), "words")
    if isinstance(record, Decision):
        for one in record.objections:
            yield Fact("an objection", _even(one.words), "objections")
    if isinstance(record, Test) and record.result is Result.FAIL:
        yield Fact("its result", str(record.result), "result")
        for each in record.readings:
            yield Fact(f"the reading {plain(each.of)}", _even(each.value), "readings")
    if isinstance(record, PlanLine) and record.point is Point.HOLD:
        yield Fact("its point", str(record.point), "point")
    for line in record.signed:
        what = f"the {line.capacity}'s signature of {line.on}"
        yield Fact(what, repr(line), "signed", line)


def now_said(record: Record, fact: Fact) -> str:
    """What stands in the place of something that is gone: both as written, or that it is gone."""
    if fact.line is not None:
        same = [one for one in facts_of(record) if one.line and one.what == fact.what]
        apart = [_apart(fact.line, one.line) for one in same if one.line]
        return f"is another now: {min(apart, key=len)}" if apart else "is gone"
    value = {
        "words": getattr(record, "words", None),
        "result": getattr(record, "result", None),
        "point": getattr(record, "point", None),
    }.get(fact.path)
    was = f'was "{plain(fact.said)}"'
    return f'{was}, is "{plain(str(value))}"' if value else f"{was}, is gone"


def _apart(then: SignOff, now: SignOff) -> str:
    """In what two lines of one capacity and day differ, then and now."""
    pairs = (
        (item.name, getattr(then, item.name), getattr(now, item.name)) for item in fields(then)
    )
    told = (
        f"{name} {plain(str(old)) if old else 'none'} -> {plain(str(new)) if new else 'none'}"
        for name, old, new in pairs
        if old != new and name != "by"
    )
    return ", ".join(told) or "by another person"


def plain(text: str) -> str:
    """Text for one line of a message: no sign that moves the ones beside it, and not too many."""
    return shorten("".join(one if one.isprintable() else "?" for one in _even(text)), LONGEST)


def _even(text: str) -> str:
    return " ".join(text.split())
