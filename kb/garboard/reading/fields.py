"""Read a mapping into a dataclass: the one reader of every record, system and list of the vessel.

The type of a field says how it is read. Each fault is noted with its place and the rest is read on:
a record with a fault in one field still shows all the others, and says which one could not be read.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from enum import Enum
from typing import Any, TypeVar

from garboard.calc.fault import CalcFault
from garboard.calc.value import Citation, Given
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import ADDRESS, nearest
from garboard.reading import scalars
from garboard.reading.nodes import Entry, ListNode, MapNode, Node, ScalarNode, Style
from garboard.reading.quantities import read_given
from garboard.reading.scalars import GRAMMARS, Unfit
from garboard.reading.shapes import Key, Members, keys_of, members_of, words_for
from garboard.reading.strict_yaml import CODE, shorten
from garboard.reading.yaml_refusals import quote
from garboard.records import base
from garboard.records.component import Fails

__all__ = ["UNREAD", "FieldReader"]

T = TypeVar("T")

UNREAD: Any = object()
"""Stands for a value that could not be read; its fault is noted."""

LONGEST_WORD = 200
"""Of anything but free text."""
FREE = (str, base.Mention, base.Figure, base.DateOrText)
SHORT = (base.Tag, base.Identifier, base.Mention, base.Address)
"""What may name a component by the short form of its tag, inside its own system."""
SYNONYMS: Mapping[Any, Mapping[str, str]] = {Fails: {"closed": "shut"}}
READERS: Mapping[Any, Callable[[str], Any]] = {
    date: scalars.read_date,
    int: scalars.read_count,
    float: scalars.read_number,
    bool: scalars.read_yes_no,
    **GRAMMARS,
}


class FieldReader:
    """Reads one thing, and notes where each of its fields stands and what is wrong with it."""

    def __init__(self, about: str = "", *, system: str = "", owner: str = "") -> None:
        """Start with nothing read.

        Args:
            about: The id, tag or code that faults are about.
            system: Code of the system whose file it is, where short tags are understood.
            owner: What the addresses of its numbers start with; empty: they have none.
        """
        self.about = about
        self.system = system
        self.owner = owner
        self.plate: Citation | None = None
        """Stands for the sources of a number that names none."""
        self.elsewhere: Mapping[str, str] = {}
        """Keys that belong to something else, and to what."""
        self.faults: list[Diagnostic] = []
        self.places: dict[str, Where] = {}
        self.unread: list[str] = []
        self.texts: list[tuple[str, ScalarNode]] = []
        """Free text, with the path of its field."""
        self.also: tuple[str, ...] = ()
        """Keys that are read elsewhere, so that a misspelt one is told from them too."""

    def refuse(self, where: Where, text: str, cure: str) -> Any:  # noqa: ANN401 - UNREAD
        """Note a fault, and give what stands for the value."""
        self.faults.append(Diagnostic(where, Severity.STOP, text, cure, CODE, self.about))
        return UNREAD

    def read(self, kind: type[T], node: MapNode, **beside: Any) -> T:  # noqa: ANN401 - fields that are no keys
        """Read a whole thing.

        Args:
            kind: What it is read as.
            node: Its keys.
            beside: The fields that are no keys of the file.
        """
        values = self.values(kind, node, "", whole=True)
        made: Any = kind
        thing: T = made(**values, **beside, places=self.places, unread=tuple(self.unread))
        return thing

    def values(self, kind: Any, node: MapNode, path: str, *, whole: bool = False) -> Any:  # noqa: ANN401 - a dataclass and its values
        """The values of a dataclass, by field name; UNREAD where one that it needs is missing."""
        keys = keys_of(kind)
        values = {}
        strange = 0
        for entry in node.entries:
            key = keys.get(entry.key.text)
            if key is None:
                self.unknown(entry, keys, flow=node.flow)
                strange += 1
                continue
            here = f"{path}.{key.key}" if path else key.key
            value = self.field(key, entry, here)
            if value is not UNREAD:
                values[key.name] = value
        for key in keys.values():
            if key.required and key.name not in values:
                if strange and not whole:  # said already, with the keys that are known here
                    strange -= 1
                else:
                    self.missing(key, node, path)
                if not (key.texts or whole):
                    return UNREAD
                values[key.name] = "" if key.texts else None
        return values

    def field(self, key: Key, entry: Entry, path: str) -> Any:  # noqa: ANN401 - any field value
        """One field; UNREAD where it could not be read, or where nothing is written."""
        node = entry.value
        if isinstance(node, ScalarNode) and node.empty:
            return UNREAD
        self.places[path] = node.where
        if key.several and not isinstance(node, ListNode):
            node = ListNode((node,), node.where)
        value = self.value(key.hint, node, path)
        if value is UNREAD:
            self.unread.append(path)
        return value

    def missing(self, key: Key, node: MapNode, path: str) -> None:
        """Note that something necessary is missing, unless it was written and refused."""
        here = f"{path}.{key.key}" if path else key.key
        if here not in self.unread:
            text = f"{path or self.about or 'this'} has no {key.key}"
            cure = f"write {key.key}: and {words_for(key.hint)}, or leave the entry out"
            self.refuse(node.where, text, cure)

    def unknown(self, entry: Entry, keys: Mapping[str, Key], *, flow: bool) -> None:
        """Note a key that is not known."""
        word = shorten(entry.key.text)
        known = (*self.also, *keys)
        near = nearest(word, known)
        cure = (
            f"write {near}, or remove it" if near else f"remove it; known here: {', '.join(known)}"
        )
        if near is None and word in self.elsewhere:
            cure = f"remove it, or say it in the text: {word} belongs to {self.elsewhere[word]}"
        if flow and isinstance(entry.value, ScalarNode) and entry.value.empty:
            cure = "put the text before it in quotes: a comma ends the text of a one-line entry"
        self.refuse(entry.key.where, f"key {word} is not known", cure)

    def value(self, hint: Any, node: Node, path: str) -> Any:  # noqa: ANN401 - any field value
        """One value of a type."""
        members = members_of(hint)
        if isinstance(node, ScalarNode):
            return self.from_text(hint, members, node, path)
        if isinstance(node, ListNode):
            return self.from_list(hint, members, node, path)
        return self.from_map(hint, members, node, path)

    def from_list(self, hint: Any, members: Members, node: ListNode, path: str) -> Any:  # noqa: ANN401 - any field value
        """A list."""
        if not members.lists:
            return self.refuse(node.where, f"{path} is a list", f"write {words_for(hint)}")
        if members.length and len(node.items) != members.length:
            text = f"{path} holds {len(node.items)} things"
            return self.refuse(node.where, text, f"write {words_for(hint)}")
        values: list[Any] = []
        for item in node.items:
            here = f"{path}[{len(values)}]"
            self.places[here] = item.where
            if isinstance(item, ScalarNode) and item.empty:
                self.refuse(item.where, f"{here} is empty", "write it, or delete the dash or comma")
                continue
            value = self.value(members.item, item, here)
            if value is UNREAD:
                self.unread.append(here)
            else:
                values.append(value)
        return tuple(values) if not members.length or len(values) == members.length else UNREAD

    def from_map(self, hint: Any, members: Members, node: MapNode, path: str) -> Any:  # noqa: ANN401 - any field value
        """A dataclass, or an open mapping."""
        if members.part is not None:
            values = self.values(members.part, node, path)
            return UNREAD if values is UNREAD else members.part(**values)
        if members.key is None:
            return self.not_a_map(hint, node, path)
        found = {}
        for entry in node.entries:
            key = self.from_text(members.key, members_of(members.key), entry.key, path)
            if key is UNREAD:
                continue
            here = f"{path}.{key}"
            self.places[here] = entry.key.where
            value = self.open_entry(members.entry, entry, here)
            if value is UNREAD:
                self.unread.append(here)
            elif key in found:
                self.refuse(entry.key.where, f"{key} stands twice in {path}", "keep one")
            else:
                found[key] = value
        return found

    def open_entry(self, hint: Any, entry: Entry, path: str) -> Any:  # noqa: ANN401 - any field value
        """What a key of an open mapping holds; nothing where all of it may be left out."""
        node = entry.value
        if isinstance(node, ScalarNode) and node.empty:
            if members_of(hint).part is None:
                return self.refuse(entry.key.where, f"{path} is empty", f"write {words_for(hint)}")
            node = MapNode((), entry.key.where)
        return self.value(hint, node, path)

    def not_a_map(self, hint: Any, node: MapNode, path: str) -> Any:  # noqa: ANN401 - UNREAD
        """Note keys where text belongs; most often a colon in the text made them."""
        cure = f"write {words_for(hint)}"
        if len(node.entries) == 1:
            entry = node.entries[0]
            if isinstance(entry.value, ScalarNode) and entry.key.style is Style.PLAIN:
                cure = (
                    f"write {quote(f'{entry.key.text}: {entry.value.text}')}, if that is the text"
                )
        return self.refuse(node.where, f"{path} is written as keys with values", cure)

    def from_text(self, hint: Any, members: Members, node: ScalarNode, path: str) -> Any:  # noqa: ANN401 - any field value
        """A word, a number, a name, a piece of text."""
        if not members.words:
            return self.not_text(hint, members, node, path)
        text = node.text.strip()
        refused: list[Unfit] = []
        for part in members.words:
            try:
                return self.word(part, text, node, path)
            except Unfit as unfit:
                refused.append(unfit)
            except CalcFault as fault:
                self.faults.append(fault.diagnostic)
                return UNREAD
        where = text_where(node)
        if len(refused) == 1 or Given in members.words:
            return self.refuse(where, f"{path}: {refused[-1].text}", refused[-1].cure)
        cure = next((one.cure for one in refused if text[:1].isdigit()), f"write {words_for(hint)}")
        return self.refuse(where, f"{path}: `{shorten(text)}` is not {words_for(hint)}", cure)

    def not_text(self, hint: Any, members: Members, node: ScalarNode, path: str) -> Any:  # noqa: ANN401 - any field value
        """Note text where a list or keys belong; a lone thing is read on as a list of one."""
        words = words_for(hint)
        part = members_of(members.item).part if members.lists else members.part
        if not members.lists or part is not None:
            text = f"{path} is the text `{shorten(node.text)}`"
            keys = keys_of(part).values() if part else ()
            free = next((key.key for key in keys if free_text(key)), "")
            if free and not members.lists and not any(key.required for key in keys):
                words = f"{path.rpartition('.')[2]}: {{{free}: {quote(shorten(node.text))}}}; it knows {words}"
            return self.refuse(node.where, text, f"write {words}")
        before = len(self.faults)
        value = self.value(members.item, node, f"{path}[0]")
        if len(self.faults) == before:
            cure = f"write {path.rpartition('.')[2]}: [{shorten(node.text)}]"
            self.refuse(node.where, f"{path} is one thing, and {words} is wanted", cure)
        return UNREAD if value is UNREAD else (value,)

    def word(self, part: Any, text: str, node: ScalarNode, path: str) -> Any:  # noqa: ANN401 - any field value
        """One piece of text as one type.

        Raises:
            Unfit: It is not of that type.
            CalcFault: It is no quantity.
        """
        if part is Given:
            return self.given(text, node, path)
        if isinstance(part, type) and issubclass(part, Enum):
            return choose(part, text)
        if len(text) > LONGEST_WORD and part not in FREE:
            raise Unfit(f"`{shorten(text)}` has {len(text)} signs", f"write {words_for(part)}")
        if part in FREE:
            self.texts.append((path, node))
        if self.system and part in SHORT:
            text = scalars.full_tag(text, self.system)
        return READERS[part](text)

    def given(self, text: str, node: ScalarNode, path: str) -> Given | base.Address:
        """A quantity.

        Raises:
            Unfit: Its source is none.
            CalcFault: It is no quantity.
        """
        address = f"{self.owner}.{path}" if self.owner else ""
        if not ADDRESS.fullmatch(address):
            address = ""
        found = read_given(text, text_where(node), address, self.about)
        if not found.sources and self.plate is not None:
            found = replace(found, sources=(self.plate,))
        return found


def free_text(key: Key) -> bool:
    """Whether a key takes any text at all."""
    return not set(FREE).isdisjoint(members_of(key.hint).words)


def choose(kind: type[Enum], text: str) -> Enum:
    """The member that a word stands for.

    Raises:
        Unfit: There is none.
    """
    text = SYNONYMS.get(kind, {}).get(text, text)
    words = {str(member.value): member for member in kind}
    if text in words:
        return words[text]
    near = nearest(text, words)
    cure = f"write {near}" if near else f"write {words_for(kind)}"
    raise Unfit(f"`{shorten(text)}` is none of its words", cure)


def text_where(node: ScalarNode) -> Where:
    """Where the text itself starts: behind its quote, if it has one."""
    if node.style in (Style.SINGLE, Style.DOUBLE):
        return Where(node.where.path, node.where.line, node.where.column + 1)
    return node.where
