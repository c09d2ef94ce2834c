"""What must never be lost of a record, in a form that two builds can compare."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import fields
from typing import Any

from garboard.records.base import Asked, Record
from garboard.records.inspection import PlanLine, Result, Test
from garboard.records.signoff import SignOff
from garboard.review.canonical import said

__all__ = ["kept_words", "signed_line"]


def kept_words(record: Record) -> Mapping[str, str]:
    """What a record has said that must stand in it for ever, by field, each in its canonical form.

    Of a list each thing is kept by itself: more may be added to it. A test that was not passed keeps
    its result, a line of the plan its point.
    """
    return dict(_kept(record))


def _kept(record: Record) -> Iterator[tuple[str, str]]:
    for item in fields(record):
        wanted = item.metadata.get("asked")
        value = getattr(record, item.name)
        if not isinstance(wanted, Asked) or not wanted.kept or value in (None, (), {}):
            continue
        name = item.name.rstrip("_")
        if isinstance(value, tuple):
            for number, each in enumerate(value):
                yield f"{name}[{number}]", _line(each)
        elif isinstance(value, Mapping):
            for key, each in value.items():
                yield f"{name}.{key}", _line(each)
        else:
            yield name, _line(value)
    if isinstance(record, Test) and record.result in (Result.FAIL, Result.INCOMPLETE):
        yield "result", _line(record.result)
    if isinstance(record, PlanLine) and record.point:
        yield "point", _line(record.point)


def signed_line(line: SignOff) -> str:
    """A signature in one canonical line."""
    return _line(line)


def _line(value: Any) -> str:  # noqa: ANN401 - what a field holds
    return json.dumps(said(value), sort_keys=True, ensure_ascii=False, separators=(",", ":"))
