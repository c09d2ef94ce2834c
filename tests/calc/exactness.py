"""Compare two things to the last bit: every field, every order, every float."""

import struct
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from garboard.calc.network import Network


def differences(one: Any, other: Any, path: str = "") -> Iterator[str]:
    """Where two things differ, each with the path to it."""
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        yield from differences(list(one.items()), list(other.items()), path)
    elif type(one) is not type(other):
        yield f"{path}: {one!r} and {other!r}"
    elif isinstance(one, float):
        if struct.pack(">d", one) != struct.pack(">d", other):
            yield f"{path}: {one.hex()} and {other.hex()}"
    elif parts_of(one) or parts_of(other):
        mine, theirs = parts_of(one), parts_of(other)
        if len(mine) != len(theirs):
            yield f"{path}: {len(mine)} and {len(theirs)} parts"
        for (name, part), (_, counterpart) in zip(mine, theirs, strict=False):
            yield from differences(part, counterpart, f"{path}.{name}")
    elif one != other:
        yield f"{path}: {one!r} and {other!r}"


def parts_of(thing: Any) -> list[tuple[str, Any]]:
    """What a dataclass or a row is made of, by name."""
    if is_dataclass(thing) and not isinstance(thing, type):
        return [(each.name, getattr(thing, each.name)) for each in fields(thing) if each.compare]
    if isinstance(thing, tuple | list):
        return [(str(at), part) for at, part in enumerate(thing)]
    return []


def first_difference(one: Network, other: Network) -> str:
    """The first place where two networks differ; empty where they are one to the last bit."""
    return next(differences(one, other), "")
