"""What a dataclass looks like as keys of a file: their names, their types, how a type is called.

Looked up once a class: the type of a field is the whole rule for reading it.
"""

from collections.abc import Mapping
from dataclasses import MISSING, dataclass, fields, is_dataclass
from enum import Enum
from functools import cache
from types import NoneType, UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from garboard.calc.value import Given
from garboard.reading.scalars import WORDS

__all__ = ["Key", "Members", "keys_of", "members_of", "words_for"]


@dataclass(frozen=True, slots=True)
class Key:
    """One key that a thing may have."""

    key: str
    """As written in the file."""
    name: str
    """Of the field."""
    hint: Any
    required: bool
    """It has no default."""
    several: bool
    """A list that may stand without brackets where it holds one thing."""
    texts: bool
    """It holds text of some sort, so that an empty one can stand for a missing one."""


@dataclass(frozen=True, slots=True)
class Members:
    """The types a value may have, by how they are written."""

    words: tuple[Any, ...]
    """Those read from one piece of text, in the order they are tried."""
    item: Any = None
    """What a list of them holds."""
    length: int = 0
    """How many a list must hold; 0: any number."""
    key: Any = None
    """What the keys of an open mapping are."""
    entry: Any = None
    """What an open mapping holds."""
    part: Any = None
    """The dataclass a mapping is read as."""

    @property
    def lists(self) -> bool:
        """Whether it may be a list."""
        return self.item is not None


def keys_of(kind: Any) -> Mapping[str, Key]:  # noqa: ANN401 - any dataclass
    """The keys of a dataclass, by key."""
    return _keys_of(kind)


@cache
def _keys_of(kind: Any) -> Mapping[str, Key]:  # noqa: ANN401 - any dataclass
    hints = get_type_hints(kind)
    found = {}
    for item in fields(kind):
        if item.metadata.get("beside"):
            continue
        key = item.name.rstrip("_")
        required = item.default is MISSING and item.default_factory is MISSING
        hint = hints[item.name]
        several = bool(item.metadata.get("several"))
        found[key] = Key(key, item.name, hint, required, several, _is_text(hint))
    return found


def _is_text(hint: Any) -> bool:  # noqa: ANN401 - a type hint
    return hint is str or getattr(hint, "__supertype__", None) is str


@cache
def members_of(hint: Any) -> Members:  # noqa: ANN401 - a type hint
    """The types a hint allows."""
    parts = get_args(hint) if get_origin(hint) in (Union, UnionType) else (hint,)
    words: list[Any] = []
    found: dict[str, Any] = {}
    for part in parts:
        if part is NoneType:
            continue
        origin, args = get_origin(part), get_args(part)
        if origin is tuple:
            found["item"] = args[0]
            found["length"] = 0 if args[-1] is Ellipsis else len(args)
        elif origin is not None and issubclass(origin, Mapping):
            found["key"], found["entry"] = args
        elif is_dataclass(part) and part is not Given:
            found["part"] = part
        else:
            words.append(part)
    words.sort(key=_order)
    return Members(tuple(words), **found)


def _order(part: Any) -> int:  # noqa: ANN401 - a type
    """Narrow types are tried before wide ones."""
    if isinstance(part, type) and issubclass(part, Enum):
        return 0
    if part in (bool, int, float):
        return 1
    return 3 if part in (str, Given) else 2


def words_for(hint: Any, *, many: bool = False) -> str:  # noqa: ANN401 - a type hint
    """How a type is called in a message.

    >>> words_for(tuple[int, ...]), words_for(bool)
    ('a list of whole numbers', 'yes or no')
    """
    members = members_of(hint)
    said = [_word(part, many=many) for part in members.words]
    if members.length:
        said.append(f"a list of {members.length} {words_for(members.item, many=True)}")
    elif members.lists:
        said.append(f"a list of {words_for(members.item, many=True)}")
    if members.key is not None:
        said.append("entries" if many else "entries with a key each")
    if members.part is not None:
        said.append(("entries with " if many else "") + ", ".join(keys_of(members.part)))
    return " or ".join(said)


def _word(part: Any, *, many: bool) -> str:  # noqa: ANN401 - a type
    if part is Given:
        return "quantities with their unit" if many else "a quantity with its unit"
    if isinstance(part, type) and issubclass(part, Enum):
        choice = [str(member.value) for member in part]
        return choice[0] if len(choice) == 1 else "one of " + ", ".join(choice)
    return WORDS[part][1 if many else 0]
