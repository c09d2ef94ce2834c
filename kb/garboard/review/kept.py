"""What must never be lost of a record, in a form that two builds can compare.

What other people said and what was read or done is kept from the first edition on. What its author
proposes is kept once the record has moved on: a draft may still be written otherwise. Signatures are
kept beside this, and so are calls, waivers and refusals, which are signatures. The approved results
of a calculation with their inputs stand in the edition itself, under their revision.
"""

import json
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from garboard.records.base import Record
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.inspection import PlanLine, Point, Result, Test
from garboard.records.kinds import kind_of
from garboard.records.signoff import SignOff
from garboard.records.standing import state_of
from garboard.records.work import MaintenanceTask
from garboard.review.canonical import said

__all__ = ["LOGGED", "POINT", "Lost", "kept_words", "lost_lines", "lost_words", "signed_line"]

POINT, LOGGED = "point", "log"
"""A hold point once called, or in place of another line, and the file that a test was logged in: each
is weighed by itself."""


@dataclass(frozen=True, slots=True)
class Lost:
    """Something that was issued and stands there no more."""

    field: str
    """The key of the file that held it: `words`, `options`."""
    told: str
    """What it said, in its canonical form."""


def kept_words(record: Record) -> Mapping[str, str]:
    """What a record has said that must stand in it for ever, by field, each in its canonical form.

    Of a list each thing is kept by itself, under `field[0]`: more may be added to it, and its order
    is free.
    """
    return dict(_always(record)) | (dict(_once_moved(record)) if _has_moved(record) else {})


def _always(record: Record) -> Iterator[tuple[str, str]]:
    match record:
        case Finding():
            yield from _one("words", record.words)
            yield from _each("media", record.media)
        case Decision():
            yield from _each("objections", record.objections)
        case Change():
            yield from _one("installed", record.installed)
        case Test():
            yield from _each("readings", record.readings)
            yield from _one("result", record.result if record.result is Result.FAIL else None)
        case MaintenanceTask():
            yield from _each("done", (_parts(one, "on", "by", "as_found") for one in record.done))
        case PlanLine() if record.supersedes or _has_moved(record):
            yield from _one(POINT, record.point if record.point is Point.HOLD else None)


def _once_moved(record: Record) -> Iterator[tuple[str, str]]:
    match record:
        case Decision():
            yield from _each("options", (one for one in record.options if one.why_not))
        case Change():
            for address, shift in record.values.items():
                yield f"values.{address}.before", _line(shift.before)
        case Hazard():
            yield from _each("controls", (_parts(one, "rank", "what") for one in record.controls))
        case Test():
            if record.log:
                yield LOGGED, record.log.file


def _has_moved(record: Record) -> bool:
    """Whether it stands beyond its start, or was ever moved by a signature."""
    kind = kind_of(record)
    beyond = kind is not None and state_of(record) != kind.machine.start
    return beyond or any(line.to for line in record.signed)


def _one(name: str, value: object) -> Iterator[tuple[str, str]]:
    if value is not None:
        yield name, _line(value)


def _each(name: str, things: Iterable[object]) -> Iterator[tuple[str, str]]:
    for number, one in enumerate(things):
        yield f"{name}[{number}]", _line(one)


def _parts(thing: object, *names: str) -> dict[str, Any]:
    """Some fields of a thing, those that were filled."""
    found = ((name, getattr(thing, name)) for name in names)
    return {name: value for name, value in found if value is not None}


def lost_words(issued: Mapping[str, str], record: Record) -> tuple[Lost, ...]:
    """What an edition held of a record and it no longer says.

    A thing of a list may have gained a part since, as an objection its answer. A record that was set
    back to its start is still looked at for all that it held.

    Args:
        issued: Its kept words, as the edition has them.
        record: As it stands today.
    """
    after: dict[str, list[str]] = defaultdict(list)
    for key, told in (*_always(record), *_once_moved(record)):
        after[_list(key)].append(told)
    before: dict[str, list[str]] = defaultdict(list)
    for key, told in issued.items():
        before[_list(key)].append(told)
    return tuple(
        Lost(name.partition(".")[0], told)
        for name, them in before.items()
        if name not in (POINT, LOGGED)
        for told in _gone(them, after[name])
    )


def _list(key: str) -> str:
    """The field that a key belongs to: of `options[1]` it is `options`."""
    return key.partition("[")[0] if key.endswith("]") else key


def _gone(before: Iterable[str], after: list[str]) -> Iterator[str]:
    """What no thing of a list still says; each thing speaks for one, and first for its like."""
    left = list(after)
    changed = []
    for told in before:
        if told in left:
            left.remove(told)
        else:
            changed.append(told)
    for told in sorted(changed, key=len, reverse=True):
        heir = next((one for one in left if _still_says(one, told)), None)
        if heir is None:
            yield told
        else:
            left.remove(heir)


def _still_says(now: str, before: str) -> bool:
    """Whether a thing says all that it said, and perhaps more."""
    after, was = json.loads(now), json.loads(before)
    if isinstance(after, dict) and isinstance(was, dict):
        return was.items() <= after.items()
    return bool(after == was)


def lost_lines(issued: Iterable[str], now: Iterable[SignOff]) -> tuple[str, ...]:
    """Signatures that an edition held and that stand no more, each in its canonical line.

    Args:
        issued: As the edition has them.
        now: Every line of today.
    """
    left = [signed_line(line) for line in now]
    gone = []
    for line in issued:
        if line in left:
            left.remove(line)
        else:
            gone.append(line)
    return tuple(gone)


def signed_line(line: SignOff) -> str:
    """A signature in one canonical line."""
    return _line(line)


def _line(value: Any) -> str:  # noqa: ANN401 - what a field holds
    return json.dumps(said(value), sort_keys=True, ensure_ascii=False, separators=(",", ":"))
