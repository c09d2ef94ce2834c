"""Frozen dataclasses as plain data and back, exactly, whatever fields they have.

How a class is written follows from the types of its fields, so that a new field needs nothing here.
A float keeps every bit. A place is written relative to its fence and set right on reading, so that
a fence may move; a place anywhere else is refused, because it would go stale unseen. Kinds and
units are written once in a pool, and a line points at its value.
"""

from collections.abc import Hashable, Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from enum import Enum
from fractions import Fraction
from types import NoneType, UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from garboard.calc.kinds import Type
from garboard.calc.plain_fields import (
    Codec,
    Desk,
    NotKept,
    Plain,
    Pool,
    Read,
    Thing,
    Write,
    fixed_codec,
    option_codec,
    pointing_codec,
    read_fraction,
    read_place,
    read_pooled,
    row_codec,
    same_codec,
    table_codec,
    word_codec,
    write_place,
    write_pooled,
)
from garboard.calc.units import Unit
from garboard.calc.value import Requirement, Value
from garboard.errors import Where

__all__ = ["Desk", "NotKept", "new_pool", "read_plain", "write_plain"]

POOLED = (Type, Unit)
"""Written once for all blocks."""
POINTED_AT = (Value, Requirement)
"""Written once a block; fields point at them."""
TRIMMED = (str, bool, int, NoneType, tuple)
"""Sorts of defaults that are left out at the end of a row; a float's zero may have a sign."""
PLAIN: dict[Hashable, tuple[type, ...]] = {
    str: (str,),
    bool: (bool,),
    int: (int,),
    float: (float,),
    float | None: (float, NoneType),
    str | None: (str, NoneType),
}
"""What stands in a row as it is; all of it is looked at in one go."""


def new_pool(rows: list[Plain]) -> Pool:
    """A pool of kinds and units from its rows; they are added to as more are met.

    Raises:
        NotKept: The rows are something else.
    """
    return Pool(POOLED, codec_of, rows)


def write_plain(thing: Thing, desk: Desk) -> Plain:
    """A frozen dataclass as lists, texts and numbers.

    Raises:
        NotKept: It holds something that cannot be read back as it is.
    """
    return codec_of(type(thing)).write(thing, desk)


def read_plain(kind: type, data: Plain, desk: Desk) -> Thing:
    """A frozen dataclass from what was written of it.

    Raises:
        NotKept: It is something else.
    """
    return codec_of(kind).read(data, desk)


CODECS: dict[type, Codec] = {Where: Codec(write_place, read_place)}
"""As far as they were asked for."""


def codec_of(kind: type) -> Codec:
    """How a dataclass is written: a row of its fields, those at the end that say nothing left out."""
    if kind not in CODECS:
        CODECS[kind] = make_codec(kind)
    return CODECS[kind]


def make_codec(kind: type) -> Codec:
    """Work out from its fields how a dataclass is written.

    Raises:
        NotKept: It is none, or a field is of a sort that cannot be written.
    """
    if not is_dataclass(kind):
        raise NotKept(f"no way to write {kind}")
    hints = get_type_hints(kind)
    own = [each for each in fields(kind) if each.init]
    codecs = [field_codec(hints[each.name]) for each in own]
    return Codec(writer_of(kind, own, codecs), reader_of(kind, own, codecs, hints))


def least_of(own: list[Field[Any]]) -> int:
    """How many fields a row has at least: up to the last that has no default to be left out."""
    needed = [at + 1 for at, each in enumerate(own) if default_of(each) is MISSING]
    return max(needed, default=0)


def writer_of(kind: type, own: list[Field[Any]], codecs: list[Codec]) -> Write:
    """How a dataclass becomes a row."""
    writers = [(each.name, codec.write) for each, codec in zip(own, codecs, strict=True)]
    defaults = [default_of(each) for each in own]
    least = least_of(own)

    def write(thing: Thing, desk: Desk) -> Plain:
        if type(thing) is not kind:
            raise NotKept(f"{type(thing).__name__} stands for {kind.__name__}")
        count = len(own)
        while count > least and says_default(
            getattr(thing, own[count - 1].name), defaults[count - 1]
        ):
            count -= 1
        return [put(getattr(thing, name), desk) for name, put in writers[:count]]

    return write


def reader_of(
    kind: type, own: list[Field[Any]], codecs: list[Codec], hints: Mapping[str, Hashable]
) -> Read:
    """How a row becomes a dataclass: plain fields are looked at, the others read."""
    least = least_of(own)
    plain, others = [], []
    for at, (each, codec) in enumerate(zip(own, codecs, strict=True)):
        sorts = PLAIN.get(hints[each.name])
        if sorts:
            plain.append((at, sorts))
        else:
            others.append((at, codec.read))

    def read(data: Plain, desk: Desk) -> Thing:
        if type(data) is not list or not least <= len(data) <= len(own):
            raise NotKept(f"no row of {kind.__name__}")
        row = data.copy()
        count = len(row)
        for at, sorts in plain:
            if at >= count:
                break
            part = row[at]
            if type(part) not in sorts or (type(part) is float and part - part != 0.0):
                raise NotKept(f"{part!r} stands in a row of {kind.__name__}")
        for at, take in others:
            if at >= count:
                break
            row[at] = take(row[at], desk)
        return kind(*row)

    return read


def default_of(what: Field[Any]) -> Thing:
    """The default of a field that may be left out at the end of a row."""
    return what.default if isinstance(what.default, TRIMMED) else MISSING


def says_default(value: Thing, default: Thing) -> bool:
    """Whether a field says nothing that its default does not say."""
    return value is default or (type(value) is type(default) and value == default)


def field_codec(hint: Hashable) -> Codec:
    """How a field is written, by its type."""
    if hint in PLAIN:
        return same_codec(PLAIN[hint])
    if hint is Fraction:
        return Codec(lambda value, _: str(value), read_fraction)
    if get_origin(hint):
        return compound_codec(hint)
    if not isinstance(hint, type):
        raise NotKept(f"no way to write {hint}")
    return class_codec(hint)


def class_codec(kind: type) -> Codec:
    """How a field of one class is written."""
    if kind in POOLED:
        return Codec(write_pooled, read_pooled)
    if kind in POINTED_AT:
        return pointing_codec(kind)
    if issubclass(kind, Enum):
        return word_codec(kind)
    return Codec(  # looked up late: a class may hold itself
        lambda value, desk: codec_of(kind).write(value, desk),
        lambda data, desk: codec_of(kind).read(data, desk),
    )


def compound_codec(hint: Hashable) -> Codec:
    """How a field that is made of others is written."""
    origin, inner = get_origin(hint), get_args(hint)
    some = [each for each in inner if each is not NoneType]
    if origin in (Union, UnionType) and len(some) == 1:
        return option_codec(field_codec(some[0]))
    if origin is tuple and inner[-1] is Ellipsis:
        return row_codec(field_codec(inner[0]))
    if origin is tuple:
        return fixed_codec([field_codec(each) for each in inner])
    if origin in (dict, Mapping) and inner[0] is str:
        return table_codec(field_codec(inner[1]))
    raise NotKept(f"no way to write {hint}")
