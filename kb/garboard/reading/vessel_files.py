"""Read the files of the whole vessel: handbook.yml, and the lists of people, sources, words, parts.

A list is one entry a key. A file that is not there is an empty list; handbook.yml must be there.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Generic, TypeVar

from garboard.errors import Diagnostic, Severity, Where
from garboard.names import ADDRESS
from garboard.reading.fields import FieldReader
from garboard.reading.nodes import Entry, ListNode, MapNode, ScalarNode
from garboard.reading.scalars import PERSON, SOURCE
from garboard.reading.strict_yaml import CODE, read_yaml, shorten
from garboard.reading.written import Written, field_texts
from garboard.records.vessel import PersonEntry, Retired, Source, Spare, Term, Vessel

__all__ = ["LISTS", "ListFile", "ListKind", "VesselFile", "read_list", "read_vessel"]

T = TypeVar("T")

CODE_OF_SYSTEM = re.compile(r"[A-Z]{2}")
FOLDER = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class VesselFile:
    """What handbook.yml gave."""

    vessel: Vessel
    texts: tuple[Written, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()


@dataclass(frozen=True, slots=True)
class ListKind:
    """One of the lists: its file, what an entry is, what a key must look like."""

    file: str
    entry: Any
    key: re.Pattern[str] | None
    keys: str
    """What a key is, in words."""
    listed: bool = False
    """It may also be a list whose entries name their key as `id`."""


LISTS = (
    ListKind(
        "people.yml", PersonEntry, PERSON, "small letters, figures and hyphens, such as volunteer-1"
    ),
    ListKind("sources.yml", Source, SOURCE, "letters, figures, dots and hyphens, such as plate-R1"),
    ListKind("glossary.yml", Term, None, "the word itself"),
    ListKind("spares.yml", Spare, None, "the part number"),
    ListKind(
        "retired.yml",
        Retired,
        re.compile(r"[A-Z]{2}-[A-Z]{2}-\d{3}"),
        "an id or a tag",
        listed=True,
    ),
)


@dataclass(frozen=True, slots=True)
class ListFile(Generic[T]):
    """What one of the lists gave."""

    entries: Mapping[str, T]
    texts: tuple[Written, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()


def read_vessel(text: str, path: str) -> VesselFile:
    """Read handbook.yml.

    Args:
        text: The whole file, with plain line feeds.
        path: Of the file in the content folder.
    """
    node, faults = _top(text, path)
    reader = FieldReader(path)
    vessel = reader.read(Vessel, node, where=Where(path))
    site = {
        name: replace(given, address=f"site.{name}") for name, given in vessel.conditions.items()
    }
    vessel = replace(vessel, site=site or vessel.site)
    faults += reader.faults
    texts, more = field_texts(reader, text.split("\n"), path)
    faults += more
    if not vessel.vessel and "vessel" not in vessel.unread and node.entries:
        said = "the vessel has no name"
        faults.append(_fault(Where(path), said, "write vessel: and its name", path))
    faults += _check_systems(vessel, path)
    faults += _check_site(vessel, path)
    return VesselFile(vessel, texts, tuple(faults))


def _check_systems(vessel: Vessel, path: str) -> list[Diagnostic]:
    faults = []
    folders: dict[str, str] = {}
    for code, folder in vessel.folders.items():
        where = vessel.place(f"systems.{code}")
        if not CODE_OF_SYSTEM.fullmatch(code):
            text = f"`{shorten(code)}` is no code of a system"
            faults.append(_fault(where, text, "write two capital letters", path))
        if not FOLDER.fullmatch(folder):
            text = f"`{shorten(folder)}` is no name for a folder of a system"
            faults.append(_fault(where, text, "write small letters, figures and hyphens", path))
        elif folder in folders:
            text = f"{code} and {folders[folder]} have the same folder, {folder}"
            faults.append(_fault(where, text, "give each its own", path))
        folders[folder] = code
    return faults


def _check_site(vessel: Vessel, path: str) -> list[Diagnostic]:
    faults = []
    for name in vessel.conditions:
        if not ADDRESS.fullmatch(f"site.{name}"):
            where = vessel.place(f"site.{name}")
            text = f"site.{shorten(name)} is no address, so no line can name it"
            cure = "write a letter, then letters, figures and _: T_engine_room"
            faults.append(_fault(where, text, cure, path))
    return faults


def read_list(kind: ListKind, text: str) -> ListFile[Any]:
    """Read one of the lists.

    Args:
        kind: Which.
        text: The whole file, with plain line feeds.
    """
    node, faults = _top(text, kind.file, listed=kind.listed)
    lines = text.split("\n")
    entries: dict[str, Any] = {}
    texts: list[Written] = []
    for entry in node.entries:
        key, where = entry.key.text, entry.key.where
        if kind.key is not None and not kind.key.fullmatch(key):
            text_ = f"`{shorten(key)}` is no key for {kind.file}"
            faults.append(_fault(where, text_, f"write {kind.keys}", kind.file))
            continue
        part = _entry(entry)
        if part is None:
            said = f"{shorten(key)} is no entry with keys of its own"
            faults.append(_fault(entry.value.where, said, f"write {shorten(key)}: {{...}}", key))
            continue
        reader = FieldReader(key)
        entries[key] = reader.read(kind.entry, part, key=key, where=where)
        faults += reader.faults
        found, more = field_texts(reader, lines, key)
        texts += found
        faults += more
    return ListFile(entries, tuple(texts), tuple(faults))


def _entry(entry: Entry) -> MapNode | None:
    """What an entry holds; nothing at all is an entry that says nothing yet."""
    if isinstance(entry.value, ScalarNode) and entry.value.empty:
        return MapNode((), entry.key.where)
    return entry.value if isinstance(entry.value, MapNode) else None


def _top(text: str, path: str, *, listed: bool = False) -> tuple[MapNode, list[Diagnostic]]:
    """The keys of a file, and what is wrong with it so far."""
    tree = read_yaml(text, path)
    faults = list(tree.diagnostics)
    if listed and isinstance(tree.node, ListNode):
        return MapNode(tuple(_by_id(tree.node, faults)), tree.node.where), faults
    if isinstance(tree.node, MapNode):
        return tree.node, faults
    if tree.node is not None:
        said = f"{path} holds no keys"
        faults.append(_fault(tree.node.where, said, "write key: value, one a line", path))
    return MapNode((), Where(path)), faults


def _by_id(node: ListNode, faults: list[Diagnostic]) -> Iterator[Entry]:
    """The entries of a list, each by the `id` that it names."""
    seen: set[str] = set()
    for item in node.items:
        entries = item.entries if isinstance(item, MapNode) else ()
        named = next((one for one in entries if one.key.text == "id"), None)
        if (
            not isinstance(item, MapNode)
            or named is None
            or not isinstance(named.value, ScalarNode)
        ):
            said = "an entry that does not say its id"
            faults.append(
                _fault(item.where, said, "write - {id: SA-DD-009, on: ..., why: ...}", "")
            )
        elif named.value.text in seen:
            said = f"{shorten(named.value.text)} stands twice"
            faults.append(_fault(named.value.where, said, "keep one", named.value.text))
        else:
            seen.add(named.value.text)
            rest = tuple(one for one in entries if one is not named)
            yield Entry(named.value, MapNode(rest, item.where, item.flow))


def _fault(where: Where, text: str, cure: str, about: str) -> Diagnostic:
    return Diagnostic(where, Severity.STOP, text, cure, CODE, about)
