"""What a record names: every id, tag, address, source and person in its fields, with its place.

The type of a field says what it names, so a new kind of record needs nothing here.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from enum import Enum, StrEnum
from functools import cache
from types import UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from garboard.calc.value import Given
from garboard.names import ADDRESS, is_identifier
from garboard.records import base

__all__ = ["TELLS_WHAT_WAS", "Names", "Reference", "find_references"]

TELLS_WHAT_WAS = (
    *("supersedes", "follows", "answers", "because", "against", "voids", "escaped", "event"),
    *("record", "credit", "signed", "replaced_by"),
)
"""Fields that name a record because of what it was."""


class Names(StrEnum):
    """What sort of thing a field names."""

    RECORD = "record"
    TAG = "tag"
    IDENTIFIER = "id or tag"
    PERSON = "person"
    SOURCE = "source"
    ADDRESS = "value"


BY_TYPE: Mapping[Any, Names] = {
    base.RecordId: Names.RECORD,
    base.Tag: Names.TAG,
    base.Identifier: Names.IDENTIFIER,
    base.Person: Names.PERSON,
    base.SourceId: Names.SOURCE,
    base.Address: Names.ADDRESS,
}
LOOSE = (base.Mention, base.Figure)
"""Text that is a name only where it has the form of one."""


@dataclass(frozen=True, slots=True)
class Reference:
    """One name in one field."""

    names: Names
    text: str
    path: str
    """Field path, `options[1].why_not`."""


def find_references(thing: Any, path: str = "") -> Iterator[Reference]:  # noqa: ANN401 - any record
    """Everything that a record, or a part of one, names.

    Args:
        thing: A record or one of its nested dataclasses.
        path: Where it stands in its record.

    Yields:
        One Reference a name, in the order of the fields.
    """
    for name, key, hint in _naming_fields(type(thing)):  # type: ignore[arg-type]  # a class is hashable, whatever its instances are
        value = getattr(thing, name)
        if value is not None:
            yield from _within(hint, value, f"{path}.{key}" if path else key)


@cache
def _naming_fields(kind: Any) -> tuple[tuple[str, str, Any], ...]:  # noqa: ANN401 - a record's class
    """Attribute, key and type of the fields that can name something."""
    hints = get_type_hints(kind)
    return tuple(
        (item.name, item.name.rstrip("_"), hints[item.name])
        for item in fields(kind)
        if any(_can_name(part) for part in _parts(hints[item.name]))
    )


def _parts(hint: Any) -> Iterator[Any]:  # noqa: ANN401 - a type hint
    yield hint
    for inner in get_args(hint):
        yield from _parts(inner)


def _can_name(hint: Any) -> bool:  # noqa: ANN401 - a type hint
    """Whether a type is a name, may be one, or has fields that are; numbers name nothing."""
    if hint in BY_TYPE or hint in LOOSE:
        return True
    nested = isinstance(hint, type) and is_dataclass(hint) and hint is not Given
    return nested and bool(_naming_fields(hint))


def _within(hint: Any, value: Any, path: str) -> Iterator[Reference]:  # noqa: ANN401 - a type hint and what it types
    if isinstance(value, Given):
        return
    if is_dataclass(value) and not isinstance(value, type):
        yield from find_references(value, path)
    elif isinstance(value, tuple):
        inner = next(iter(get_args(_plain(hint))), None)
        for number, element in enumerate(value):
            yield from _within(inner, element, f"{path}[{number}]")
    elif isinstance(value, Mapping):
        key_hint, value_hint = [*get_args(_plain(hint)), None, None][:2]
        for key, element in value.items():
            yield from _within(key_hint, key, f"{path}.{key}")
            yield from _within(value_hint, element, f"{path}.{key}")
    elif isinstance(value, str) and not isinstance(value, Enum):
        yield from _named(_members(hint), value, path)


def _named(hints: tuple[Any, ...], value: str, path: str) -> Iterator[Reference]:
    for hint in hints:
        if hint in BY_TYPE:
            yield Reference(BY_TYPE[hint], value, path)
        elif hint in LOOSE and is_identifier(value):
            yield Reference(Names.IDENTIFIER, value, path)
        elif (
            hint in LOOSE
            and ADDRESS.fullmatch(value)
            and is_identifier(value.split(".", maxsplit=1)[0])
        ):
            yield Reference(Names.ADDRESS, value, path)


def _members(hint: Any) -> tuple[Any, ...]:  # noqa: ANN401 - a type hint
    if get_origin(hint) in (Union, UnionType):
        return get_args(hint)
    return (hint,)


def _plain(hint: Any) -> Any:  # noqa: ANN401 - a type hint
    """The container among the members of an optional hint."""
    return next((member for member in _members(hint) if get_origin(member)), hint)
