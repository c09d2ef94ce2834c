"""Read a system.yml: the system, its components, its connections run by run.

Tags may be written short here: `RV-001` in the file of system SA is SA-RV-001.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from garboard.calc.value import Citation, Given
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import IDENTIFIER, is_tag, nearest, system_of
from garboard.reading.assembly import settle_assembly
from garboard.reading.fields import FieldReader
from garboard.reading.nodes import Entry, MapNode, Node, ScalarNode
from garboard.reading.runs import RunReader
from garboard.reading.scalars import SOURCE, full_tag
from garboard.reading.strict_yaml import CODE, read_yaml, shorten
from garboard.reading.written import Written, field_texts
from garboard.records.base import Tag
from garboard.records.component import Component
from garboard.records.component_kinds import (
    COMPONENT_KINDS,
    SWITCHED,
    SWITCHES,
    ComponentKind,
    kinds_of_letters,
    position_word,
)
from garboard.records.kinds import BY_LETTERS
from garboard.records.system import Header, OperatingState, System

__all__ = ["SystemFile", "read_system"]

APART = ("system", "components", "connections")
"""Keys that are read here, and not as fields of a System."""
UNKNOWN = "unknown-kind"


@dataclass(frozen=True, slots=True)
class SystemFile:
    """What a system.yml gave."""

    system: System
    components: tuple[Component, ...] = ()
    """In the order of the file, doubles included."""
    declared: tuple[tuple[str, Where], ...] = ()
    """Every tag, those of headers included, with its place."""
    texts: tuple[Written, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()


def read_system(text: str, path: str, code: str) -> SystemFile:
    """Read the file of one system.

    Args:
        text: The whole file, with plain line feeds.
        path: Of the file in the content folder.
        code: The system's code, as handbook.yml gives it to the folder.
    """
    tree = read_yaml(text, path)
    folder = path.rpartition("/")[0]
    title = folder.rpartition("/")[2].replace("-", " ").capitalize()
    if not isinstance(tree.node, MapNode):
        faults = tree.diagnostics
        if tree.node is not None:
            where, said = tree.node.where, "a system file that holds no keys"
            faults += (
                Diagnostic(where, Severity.STOP, said, "write title: and status:", CODE, code),
            )
        system = System(code=code, folder=folder, where=Where(path), title=title)
        return SystemFile(system, diagnostics=faults)
    reading = _SystemReader(code, path, text)
    reading.faults += tree.diagnostics
    return reading.read(tree.node, folder, title)


class _SystemReader:
    """One system on its way to being read."""

    def __init__(self, code: str, path: str, text: str) -> None:
        self.code = code
        self.path = path
        self.lines = text.split("\n")
        self.faults: list[Diagnostic] = []
        self.components: list[Component] = []
        self.texts: list[Written] = []

    def refuse(self, where: Where, text: str, cure: str, code: str = CODE, about: str = "") -> None:
        """Note a fault."""
        said = Diagnostic(where, Severity.STOP, text, cure, code, about or self.code)
        self.faults.append(said)

    def read(self, node: MapNode, folder: str, title: str) -> SystemFile:
        """Everything in the file."""
        apart = {one.key.text: one for one in node.entries if one.key.text in APART}
        rest = replace(
            node, entries=tuple(one for one in node.entries if one.key.text not in APART)
        )
        self.check_code(apart.get("system"))
        reader = FieldReader(self.code, system=self.code)
        reader.also = APART
        system = reader.read(System, rest, code=self.code, folder=folder, where=Where(self.path))
        self.faults += reader.faults
        self.take_texts(reader, self.code)
        headers = {name: self.header(header) for name, header in (system.headers or {}).items()}
        for entry in self.entries(apart.get("components")):
            self.component(entry)
        runs = RunReader(self.code, tuple(headers), self.faults).read(apart.get("connections"))
        states = {name: _lined_up(state) for name, state in (system.operating_states or {}).items()}
        system = replace(
            system,
            headers=headers or None,
            operating_states=states or None,
            runs=runs,
            title=system.title or title,
        )
        declared = [(str(part.tag), part.where) for part in self.components]
        for name, header in headers.items():
            if header.tag:
                declared.append((str(header.tag), system.place(f"headers.{name}.tag")))
        self.check_owner(declared)
        return SystemFile(
            system,
            tuple(self.components),
            tuple(declared),
            tuple(self.texts),
            tuple(self.faults),
        )

    def take_texts(self, reader: FieldReader, owner: str) -> None:
        """Look through the free texts of one thing."""
        found, faults = field_texts(reader, self.lines, owner)
        self.texts += found
        self.faults += faults

    def check_code(self, entry: Entry | None) -> None:
        """The code in the file must be the one that handbook.yml gives to its folder."""
        if entry is None:
            return
        word = entry.value.text if isinstance(entry.value, ScalarNode) else ""
        if word != self.code:
            text = f"system {shorten(word)} here, {self.code} in handbook.yml"
            self.refuse(entry.value.where, text, f"write {self.code}, or change handbook.yml")

    def check_owner(self, declared: list[tuple[str, Where]]) -> None:
        """A system declares its own tags only."""
        for tag, where in declared:
            if system_of(tag) != self.code:
                text = f"{tag} stands in the file of system {self.code}"
                self.refuse(
                    where, text, f"move it to system {system_of(tag)}, or rename it", about=tag
                )

    def header(self, header: Header) -> Header:
        """A header whose numbers have addresses, where it has a tag."""
        if header.tag is None:
            return header
        size, rated = header.size, header.rated
        if size is not None:
            size = replace(size, address=f"{header.tag}.size")
        if isinstance(rated, Given):
            rated = replace(rated, address=f"{header.tag}.rated")
        return replace(header, size=size, rated=rated)

    def entries(self, entry: Entry | None) -> Iterator[Entry]:
        """The entries under `components`."""
        if entry is None or (isinstance(entry.value, ScalarNode) and entry.value.empty):
            return
        if isinstance(entry.value, MapNode):
            yield from entry.value.entries
        else:
            text = "components is no list of tags with their properties"
            self.refuse(entry.value.where, text, "write each as RV-001: {kind: relief valve}")

    def component(self, entry: Entry) -> None:
        """One component."""
        tag = full_tag(entry.key.text, self.code)
        where = entry.key.where
        if not is_tag(tag):
            self.no_tag(entry.key.text, tag, where)
            return
        node: Node = entry.value
        written = isinstance(node, MapNode)
        if not isinstance(node, MapNode):
            text = f"{tag} has no properties"
            cure = f"write {entry.key.text}: {{kind: ..., name: ...}}"
            self.refuse(
                where if isinstance(node, ScalarNode) else node.where, text, cure, about=tag
            )
            node = MapNode((), where)
        reader = FieldReader(tag, system=self.code, owner=tag)
        reader.plate = _plate(node)
        part = reader.read(Component, node, tag=Tag(tag), system=self.code, where=where)
        self.faults += reader.faults
        self.take_texts(reader, tag)
        part, misfits = settle_assembly(part)
        self.faults += misfits
        self.components.append(self.settle(part) if written else part)

    def no_tag(self, written: str, tag: str, where: Where) -> None:
        """Note a key that is no tag."""
        if IDENTIFIER.fullmatch(tag):
            kind = BY_LETTERS[tag[3:5]].name
            text = f"the letters {tag[3:5]} of {tag} belong to a {kind}"
            self.refuse(where, text, "take other letters for the tag", UNKNOWN, tag)
            return
        loose = re.fullmatch(r"(?:([A-Za-z]{2})[- ]?)?([A-Za-z]{2})[- ]?(\d{1,3})", written)
        cure = "write two letters and three figures, such as RV-001"
        if loose:
            cure = f"write {loose[2].upper()}-{int(loose[3]):03}"
        self.refuse(where, f"`{shorten(written)}` is no tag", cure)

    def settle(self, part: Component) -> Component:
        """Check what only the kind of a component can say, and read `closed` as `shut`."""
        kind = COMPONENT_KINDS.get(part.kind)
        if kind is None:
            self.no_kind(part)
            return part
        letters = part.tag[3:5]
        if letters not in kind.letters:
            theirs = " or ".join(kinds_of_letters(letters)) or "no kind of the table"
            text = f"{part.tag} is a {kind.name}, its letters {letters} say {theirs}"
            cure = f"take {' or '.join(kind.letters)} for its letters, or mend its kind"
            where = part.at_place("kind")
            self.faults.append(Diagnostic(where, Severity.WARN, text, cure, UNKNOWN, part.tag))
        self.check_numbers(part, kind)
        usual, locked = (_position(word, part.kind) for word in (part.usual, part.locked))
        part = replace(part, usual=usual, locked=locked)
        self.check_positions(part, kind)
        return part

    def no_kind(self, part: Component) -> None:
        """Note a component without a kind, or of an unknown one."""
        by_letters = kinds_of_letters(part.tag[3:5])
        if not part.kind:
            if "kind" not in part.unread:
                cure = f"write kind: {by_letters[0] if by_letters else 'and one of the table'}"
                self.refuse(part.where, f"{part.tag} has no kind", cure, UNKNOWN, part.tag)
            return
        near = nearest(part.kind, COMPONENT_KINDS) or (by_letters[0] if by_letters else None)
        cure = f"did you mean {near}?" if near else "write a kind of the table"
        text = f"there is no kind `{shorten(part.kind)}`"
        self.refuse(part.at_place("kind"), text, cure, UNKNOWN, part.tag)

    def check_numbers(self, part: Component, kind: ComponentKind) -> None:
        """Refuse a number that such a thing does not have."""
        named = [name for name, _ in part.givens()] + [name for name, _ in part.aliases()]
        named += ["makes"] if part.makes and "makes" not in named else []
        apart = {*(part.joints or {}), *(part.clearances or {})}
        own = dict.fromkeys(name.partition(".")[0] for name in named)
        for name in (one for one in own if one not in apart):
            if name not in kind.numbers:
                text = f"a {kind.name} has no {name}"
                cure = f"remove it, or mend the kind; its numbers: {', '.join(kind.numbers)}"
                self.refuse(part.at_place(name), text, cure, about=part.tag)

    def check_positions(self, part: Component, kind: ComponentKind) -> None:
        """Refuse a position that such a thing cannot stand in."""
        allowed = tuple(part.positions or ()) if kind.positions else kind.usual
        if part.positions and not kind.positions:
            text = f"a {kind.name} names no positions of its own"
            cure = "remove them, or mend the kind"
            self.refuse(part.at_place("positions"), text, cure, about=part.tag)
        for name, word in (("usual", part.usual), ("locked", part.locked)):
            if word is None or word in allowed or (kind.positions and not part.positions):
                continue
            text = f"a {kind.name} cannot stand at `{shorten(word)}`"
            said = " or ".join(position_word(kind.name, one) for one in allowed)
            cure = f"write {said}" if allowed else f"remove {name}"
            self.refuse(part.at_place(name), text, cure, about=part.tag)


def _position(word: str | None, kind: str) -> str | None:
    """A position in one word for all: closed is shut; of a switch on is open, where it passes."""
    alike = {"closed": "shut", **(SWITCHED if kind in SWITCHES else {})}
    return alike.get(word or "", word)


def _lined_up(state: OperatingState) -> OperatingState:
    """A line-up in which what is on stands among what is open."""
    opened, shut = (*state.open, *state.on), (*state.shut, *state.off)
    return replace(state, open=opened, shut=shut, on=(), off=())


def _plate(node: MapNode) -> Citation | None:
    """The maker's plate of a component: the source of every number without one of its own."""
    for entry in node.entries:
        value = entry.value
        if (
            entry.key.text == "plate"
            and isinstance(value, ScalarNode)
            and SOURCE.fullmatch(value.text)
        ):
            return Citation(value.text, where=value.where)
    return None
