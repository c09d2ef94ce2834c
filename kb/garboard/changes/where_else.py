"""Where else the same could be: every part of the same kind as those of a finding, and who looked there.

A fault of a part is seldom alone: the same part number was fitted by the same hand from the same drawing.
The parts most alike stand first: same part number, then same maker and type, then same kind.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from garboard.book import Book
from garboard.names import IDENTIFIER
from garboard.records.component import Component
from garboard.records.finding import Action, Finding
from garboard.records.standing import has_left

__all__ = ["Elsewhere", "Like", "Look", "WhereElse", "actions_of", "where_else"]

ALL_OTHERS = "all others"
"""Stands under `not_looked` for every part that nothing else is said of."""


class Like(StrEnum):
    """How much alike two parts are, the most alike first."""

    PART_NO = "same part number"
    TYPE = "same maker and type"
    KIND = "same kind"


class Look(StrEnum):
    """What became of one place."""

    FOUND = "found there too"
    LOOKED = "looked at, not found"
    ACTION = "an action looks there"
    REASON = "not looked at, with a reason"
    OPEN = "not looked at"


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """One part where the same could be."""

    tag: str
    like: Like
    look: Look
    by: str = ""
    """The action that looks there, or the reason why nobody does."""


@dataclass(frozen=True, slots=True)
class WhereElse:
    """Every place where the same could be."""

    places: tuple[Elsewhere, ...] = ()

    @property
    def looked(self) -> int:
        """In how many places somebody has looked."""
        return sum(one.look in (Look.FOUND, Look.LOOKED) for one in self.places)

    @property
    def open(self) -> tuple[Elsewhere, ...]:
        """Where nobody has looked, will look, or says why not."""
        return tuple(one for one in self.places if one.look is Look.OPEN)


def where_else(book: Book, finding: Finding) -> WhereElse:
    """Where else the same could be, across all systems.

    Args:
        book: The book.
        finding: What it names under `where` and is a part says what is alike.
    """
    mine = [part for tag in finding.where_ if (part := book.components.get(tag))]
    own = {part.tag for part in mine}
    named = {
        one: str(action.id) for action in actions_of(book, finding) for one in _tags(book, action)
    }
    found = []
    for tag, part in book.components.items():
        like = min((each for one in mine if (each := _like(one, part))), key=_rank, default=None)
        if like and tag not in own:
            look, by = _look(book, finding, part, named)
            found.append(Elsewhere(tag, like, look, by))
    return WhereElse(tuple(sorted(found, key=lambda one: (_rank(one.like), one.tag))))


def actions_of(book: Book, finding: Finding) -> tuple[Action, ...]:
    """The actions that came of a finding, named by it or naming it, in order of id."""
    return tuple(
        action
        for action in book.of_kind(Action)
        if not has_left(action) and (action.finding == finding.id or action.id in finding.actions)
    )


def _rank(like: Like) -> int:
    return list(Like).index(like)


def _like(one: Component, other: Component) -> Like | None:
    if one.part_no and one.part_no == other.part_no:
        return Like.PART_NO
    if not one.kind or one.kind != other.kind:
        return None
    types = [(part.item.maker, part.item.type) for part in (one, other) if part.item]
    return Like.TYPE if len(types) == 2 and types[0] == types[1] and all(types[0]) else Like.KIND


def _tags(book: Book, action: Action) -> Iterator[str]:
    """The parts that an action names."""
    return (
        item.to for item in book.mentions if item.by == action.id and item.to in book.components
    )


def _look(
    book: Book, finding: Finding, part: Component, actions: dict[str, str]
) -> tuple[Look, str]:
    """What became of one place; `found` is believed to the letter only: it may say `none in SA-AR-002`."""
    extent = finding.extent
    if extent is None:
        return (Look.ACTION, actions[part.tag]) if part.tag in actions else (Look.OPEN, "")
    if part.tag in {str(one) for one in extent.found}:
        return Look.FOUND, ""
    ways = _called(book, part)
    if any(words in ways or part.tag in IDENTIFIER.findall(words) for words in extent.looked):
        return Look.LOOKED, ""
    if part.tag in actions:
        return Look.ACTION, actions[part.tag]
    reasons = extent.not_looked or {}
    for words in (*ways, part.kind, ALL_OTHERS):
        if words in reasons:
            return Look.REASON, str(reasons[words])  # type: ignore[index]  # any text may be asked for
    return Look.OPEN, ""


def _called(book: Book, part: Component) -> tuple[str, ...]:
    """What a part is covered by: its tag, the code of its system, and that system's title."""
    system = book.systems.get(part.system)
    return (part.tag, part.system, *((system.title,) if system else ()))
