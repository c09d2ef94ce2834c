"""What a piece of YAML is once read: text, lists and mappings, each with its place."""

from dataclasses import dataclass
from enum import StrEnum

from garboard.errors import Diagnostic, Where

__all__ = ["Entry", "ListNode", "MapNode", "Node", "ScalarNode", "Style", "Tree"]


class Style(StrEnum):
    """How a scalar is written."""

    PLAIN = ""
    SINGLE = "'"
    DOUBLE = '"'
    LITERAL = "|"
    FOLDED = ">"


@dataclass(frozen=True, slots=True)
class ScalarNode:
    """A piece of text."""

    text: str
    where: Where
    """Of its first sign; of one that is empty, where its key stands."""
    end: Where
    """Just past its last sign."""
    style: Style = Style.PLAIN

    @property
    def empty(self) -> bool:
        """Whether nothing at all is written."""
        return not self.text and self.style is Style.PLAIN


@dataclass(frozen=True, slots=True)
class ListNode:
    """A list."""

    items: tuple["Node", ...]
    where: Where
    flow: bool = False
    """Written in brackets."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A key and what it holds."""

    key: ScalarNode
    value: "Node"


@dataclass(frozen=True, slots=True)
class MapNode:
    """Keys and what they hold, in the order of the file; no key twice."""

    entries: tuple[Entry, ...]
    where: Where
    flow: bool = False
    """Written in braces."""


Node = ScalarNode | ListNode | MapNode


@dataclass(frozen=True, slots=True)
class Tree:
    """What was read: the top node, or None where it cannot be read; and every fault met."""

    node: Node | None
    diagnostics: tuple[Diagnostic, ...]
