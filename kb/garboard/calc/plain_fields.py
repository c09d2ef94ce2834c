"""How single fields are written as plain data, and read back; anything of another sort is refused."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction
from typing import Any

from garboard.errors import Where

__all__ = [
    "Codec",
    "Desk",
    "NotKept",
    "Plain",
    "Pool",
    "Read",
    "Thing",
    "Write",
    "fixed_codec",
    "option_codec",
    "pointing_codec",
    "read_fraction",
    "read_place",
    "read_pooled",
    "row_codec",
    "same_codec",
    "table_codec",
    "word_codec",
    "write_place",
    "write_pooled",
]

Thing = Any
"""Whatever a field holds."""
Plain = Any
"""What JSON can hold."""


class NotKept(Exception):  # noqa: N818 - said as it is
    """Something cannot be written, or what was written does not say what it should."""


class Pool:
    """Kinds and units, each once, in the order in which they were met."""

    def __init__(
        self, kinds: tuple[type, ...], codec: Callable[[type], "Codec"], rows: list[Plain]
    ) -> None:
        self.kinds = kinds
        self.codec = codec
        self.rows = rows
        self.things: list[Thing] = []
        desk = Desk(Where(""), 0, self)
        for row in rows:
            if type(row) is not list or len(row) != 2 or row[0] not in range(len(kinds)):
                raise NotKept("a pool of something else")
            self.things.append(codec(kinds[row[0]]).read(row[1], desk))
        self.places = {thing: at for at, thing in enumerate(self.things)}

    def place_of(self, thing: Thing) -> int:
        """The place of a kind or unit; it is added where it is new."""
        at = self.places.get(thing)
        if at is None:
            row = self.codec(type(thing)).write(thing, Desk(Where(""), 0, self))
            at = len(self.things)
            self.rows.append([self.kinds.index(type(thing)), row])
            self.things.append(thing)
            self.places[thing] = at
        return at


@dataclass(slots=True)
class Desk:
    """What one block is written or read with."""

    start: Where
    """The first line of its fence."""
    count: int
    """How many lines that has."""
    pool: "Pool"
    pointed: list[Any] = field(default_factory=list)
    """Values and requirements of the block."""


Write = Callable[[Thing, Desk], Plain]
Read = Callable[[Plain, Desk], Thing]


@dataclass(frozen=True, slots=True)
class Codec:
    """How one type is written and read."""

    write: Write
    read: Read


def same_codec(sorts: tuple[type, ...]) -> Codec:
    """What stands in the file as it is; a float that is no number is refused."""

    def check(value: Thing, _: Desk) -> Plain:
        if type(value) not in sorts or (type(value) is float and not math.isfinite(value)):
            raise NotKept(f"{value!r} stands for {sorts[0].__name__}")
        return value

    return Codec(check, check)


def option_codec(own: Codec) -> Codec:
    """Something, or nothing."""
    return Codec(
        lambda value, desk: None if value is None else own.write(value, desk),
        lambda data, desk: None if data is None else own.read(data, desk),
    )


def row_codec(own: Codec) -> Codec:
    """A row of one sort."""
    put, take = own.write, own.read

    def read_row(data: Plain, desk: Desk) -> Thing:
        if type(data) is not list:
            raise NotKept("no row")
        return tuple([take(part, desk) for part in data]) if data else ()

    return Codec(lambda value, desk: [put(part, desk) for part in value], read_row)


def fixed_codec(each: list[Codec]) -> Codec:
    """A row of so many, each of its own sort."""

    def write_fixed(value: Thing, desk: Desk) -> Plain:
        return [own.write(part, desk) for own, part in zip(each, value, strict=True)]

    def read_fixed(data: Plain, desk: Desk) -> Thing:
        if type(data) is not list or len(data) != len(each):
            raise NotKept(f"no row of {len(each)}")
        return tuple([own.read(part, desk) for own, part in zip(each, data, strict=True)])

    return Codec(write_fixed, read_fixed)


def table_codec(own: Codec) -> Codec:
    """A table by text, in its order."""

    def write(value: Thing, desk: Desk) -> Plain:
        return [[key, own.write(part, desk)] for key, part in value.items()]

    def read(data: Plain, desk: Desk) -> Thing:
        if type(data) is not list or not all(
            type(row) is list and len(row) == 2 and type(row[0]) is str for row in data
        ):
            raise NotKept("no table")
        return {key: own.read(part, desk) for key, part in data}

    return Codec(write, read)


def word_codec(kind: type[Enum]) -> Codec:
    """A word of a fixed set."""
    words = {each.value: each for each in kind}

    def read(data: Plain, _: Desk) -> Thing:
        if type(data) is not str or data not in words:
            raise NotKept(f"no {kind.__name__}")
        return words[data]

    return Codec(lambda value, _: value.value, read)


def pointing_codec(kind: type) -> Codec:
    """A value or requirement of the block, by its place among them."""

    def write(value: Thing, desk: Desk) -> Plain:
        found = next((at for at, each in enumerate(desk.pointed) if each is value), None)
        if found is None:
            raise NotKept(f"a {kind.__name__} of another block")
        return found

    def read(data: Plain, desk: Desk) -> Thing:
        if type(data) is not int or not 0 <= data < len(desk.pointed):
            raise NotKept(f"no {kind.__name__}")
        found = desk.pointed[data]
        if type(found) is not kind:
            raise NotKept(f"no {kind.__name__}")
        return found

    return Codec(write, read)


def write_pooled(value: Thing, desk: Desk) -> Plain:
    """The place of a kind or unit in the pool."""
    return desk.pool.place_of(value)


def read_pooled(data: Plain, desk: Desk) -> Thing:
    """A kind or unit of the pool."""
    if type(data) is not int or not 0 <= data < len(desk.pool.things):
        raise NotKept("nothing in the pool")
    return desk.pool.things[data]


def write_place(value: Thing, desk: Desk) -> Plain:
    """A place inside the fence, counted from its first line."""
    start = desk.start
    line, column = value.line - start.line, value.column - start.column
    if value.path != start.path or not 0 <= line < max(1, desk.count) or column < 0:
        raise NotKept(f"{value} lies outside the fence")
    return [line, column]


def read_place(data: Plain, desk: Desk) -> Thing:
    """A place inside the fence, where it stands now."""
    if type(data) is not list or len(data) != 2:
        raise NotKept("no place")
    line, column = data
    if type(line) is not int or type(column) is not int:
        raise NotKept("no place")
    start = desk.start
    return Where(start.path, start.line + line, start.column + column)


def read_fraction(data: Plain, _: Desk) -> Thing:
    """An exact number, `1/60`."""
    if type(data) is not str or len(data) > 400:
        raise NotKept("no fraction")
    try:
        return Fraction(data)
    except (ValueError, ZeroDivisionError) as stop:
        raise NotKept("no fraction") from stop
