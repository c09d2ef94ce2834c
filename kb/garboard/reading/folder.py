"""Read a content folder: every file into what it is, and every fault with its place.

The order is fixed: handbook.yml says which systems there are, their files follow, then the Markdown
files in order of path. One file that cannot be read never keeps another from being read.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from garboard.errors import Diagnostic, GarboardError, Severity, Where
from garboard.reading.allowed_signers import ALLOWED_SIGNERS, Signers, read_signers
from garboard.reading.content import Content, Declared, Photo, Stub
from garboard.reading.edition_file import is_edition, read_editions
from garboard.reading.fences import Fence
from garboard.reading.logged import read_log
from garboard.reading.record_file import name_as_title, read_markdown
from garboard.reading.reply_form import Forms, read_forms
from garboard.reading.strict_yaml import CODE
from garboard.reading.system_file import SystemFile, read_system
from garboard.reading.text_file import LARGEST, LARGEST_LOG, TextFile, read_text
from garboard.reading.vessel_files import LISTS, read_list, read_vessel
from garboard.reading.walk_folder import PHOTOS, Found, is_reply, walk_folder
from garboard.reading.written import Written
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.records.inspection import Test
from garboard.records.logged import Log
from garboard.records.pages import WrittenPage
from garboard.records.system import System
from garboard.records.vessel import Vessel

__all__ = ["Content", "in_order", "read_folder"]

HANDBOOK = "handbook.yml"
MOST_FAULTS = 200
"""Of one file."""
LARGEST_EDITION = 50_000_000
"""Bytes; it holds the text of the whole book."""
STATED = re.compile(r"^system: *([A-Z]{2})\b", re.MULTILINE)


@dataclass(slots=True)
class _Gathered:
    """What has been read so far."""

    vessel: Vessel = field(default_factory=lambda: Vessel(where=Where(HANDBOOK)))
    lists: dict[str, Any] = field(default_factory=dict)
    systems: dict[str, System] = field(default_factory=dict)
    components: dict[str, Component] = field(default_factory=dict)
    records: dict[str, Record] = field(default_factory=dict)
    unfiled: list[Record] = field(default_factory=list)
    pages: list[WrittenPage] = field(default_factory=list)
    stubs: list[Stub] = field(default_factory=list)
    declared: list[Declared] = field(default_factory=list)
    doubles: list[Record] = field(default_factory=list)
    fences: list[Fence] = field(default_factory=list)
    texts: list[Written] = field(default_factory=list)
    photos: dict[str, Photo] = field(default_factory=dict)
    logs: dict[str, str] = field(default_factory=dict)
    logged: dict[str, Log] = field(default_factory=dict)
    replies: dict[str, Forms] = field(default_factory=dict)
    editions: dict[str, str] = field(default_factory=dict)
    """Text of each file of an edition."""
    signers: Signers = field(default_factory=Signers)
    digests: dict[str, str] = field(default_factory=dict)
    faults: list[Diagnostic] = field(default_factory=list)

    def open(self, found: Found, largest: int = LARGEST) -> TextFile:
        """The text of a file; its fault is noted."""
        try:
            read = read_text(found.file.read_bytes(), found.path, largest)
        except OSError as stop:
            text = f"the file cannot be opened: {stop.strerror}"
            cure = "see who may read it"
            fault = Diagnostic(Where(found.path), Severity.STOP, text, cure, CODE, found.path)
            read = TextFile("", "", fault)
        if read.digest:
            self.digests[found.path] = read.digest
        if read.fault:
            self.faults.append(read.fault)
        return read

    def keep(self, faults: Sequence[Diagnostic], path: str) -> None:
        """Note the faults of one file; who has mended the first of very many meets the rest."""
        self.faults += faults[:MOST_FAULTS]
        left = len(faults) - MOST_FAULTS
        if left > 0:
            self.refuse(
                Where(path), f"{left} more faults in this file", "mend the others first", path
            )

    def refuse(self, where: Where, text: str, cure: str, about: str = "") -> None:
        """Note a fault."""
        self.faults.append(Diagnostic(where, Severity.STOP, text, cure, CODE, about))


def read_folder(folder: Path) -> Content:
    """Read every file of a content folder.

    Args:
        folder: The folder that holds handbook.yml.

    Returns:
        Everything that could be read, and every fault that was met.

    Raises:
        GarboardError: There is no such folder, or it holds no handbook.yml.
    """
    if not folder.is_dir():
        raise GarboardError(f"there is no folder {folder}")
    tree = walk_folder(folder)
    files = {found.path: found for found in tree.files}
    if HANDBOOK not in files:
        raise GarboardError(f"{folder} holds no {HANDBOOK}, so it is no handbook's content")
    gathered = _Gathered(faults=tree.faults)
    _read_vessel(gathered, files)
    _read_systems(gathered, files)
    for found in tree.files:
        if found.suffix == ".md":
            _read_markdown(gathered, found)
        elif found.suffix in PHOTOS:
            gathered.photos[found.path] = Photo(found.path, found.size)
        elif found.path == ALLOWED_SIGNERS:
            people = set(gathered.lists.get("people.yml", {}))
            gathered.signers = read_signers(gathered.open(found).text, people)
        elif found.suffix == ".csv":
            gathered.logs[found.path] = gathered.open(found, LARGEST_LOG).text
        elif found.suffix == ".json":
            _read_json(gathered, found)
        elif is_reply(found.path):
            _read_reply(gathered, found)
    _read_logs(gathered)
    return _content(gathered)


def _read_vessel(gathered: _Gathered, files: dict[str, Found]) -> None:
    """The files of the whole vessel."""
    read = gathered.open(files[HANDBOOK])
    if not read.fault:
        vessel = read_vessel(read.text, HANDBOOK)
        gathered.vessel = vessel.vessel
        gathered.texts += vessel.texts
        gathered.keep(vessel.diagnostics, HANDBOOK)
    for kind in LISTS:
        if kind.file not in files:
            continue
        read = gathered.open(files[kind.file])
        if not read.fault:
            found = read_list(kind, read.text)
            gathered.lists[kind.file] = found.entries
            gathered.texts += found.texts
            gathered.keep(found.diagnostics, kind.file)


def _read_systems(gathered: _Gathered, files: dict[str, Found]) -> None:
    """Every system that handbook.yml names, then those it forgot."""
    known = {
        f"systems/{folder}/system.yml": code for code, folder in gathered.vessel.folders.items()
    }
    for path, code in known.items():
        if path in files:
            _read_system(gathered, files[path], code)
        else:
            folder = path.rpartition("/")[0]
            where = gathered.vessel.place(f"systems.{code}")
            title = name_as_title(folder)
            gathered.systems[code] = System(code=code, folder=folder, where=where, title=title)
    lost = {code for path, code in known.items() if path not in files}
    for path, found in files.items():
        if path.endswith("/system.yml") and path not in known:
            read = gathered.open(found)
            stated = STATED.search(read.text)
            folder = path.split("/")[1]
            code = stated[1] if stated else ""
            text = f"handbook.yml knows no system with the folder {folder}"
            cure = f"add {code or 'its code'}: {folder} under systems"
            if code in lost:
                given = gathered.vessel.folders[code]
                text = f"handbook.yml gives {code} the folder {given}, this one is {folder}"
                cure = f"write {code}: {folder} under systems"
            if (
                gathered.vessel.folders or gathered.vessel.vessel
            ):  # else none of handbook.yml was read
                gathered.refuse(Where(path), text, cure, code)
            if code and (code in lost or code not in gathered.systems) and not read.fault:
                _keep_system(gathered, read_system(read.text, path, code))


def _read_system(gathered: _Gathered, found: Found, code: str) -> None:
    read = gathered.open(found)
    _keep_system(gathered, read_system("" if read.fault else read.text, found.path, code))


def _keep_system(gathered: _Gathered, read: SystemFile) -> None:
    gathered.systems[read.system.code] = read.system
    for part in read.components:
        gathered.components.setdefault(str(part.tag), part)
    gathered.declared += (Declared(name, where) for name, where in read.declared)
    gathered.texts += read.texts
    gathered.keep(read.diagnostics, read.system.where.path)


def _read_markdown(gathered: _Gathered, found: Found) -> None:
    """One Markdown file."""
    read = gathered.open(found)
    if read.fault:
        title = name_as_title(found.path)
        gathered.stubs.append(Stub(Where(found.path), title, "", "", read.text, (read.fault,)))
        return
    file = read_markdown(read.text, found.path)
    gathered.fences += file.fences
    gathered.texts += file.texts
    gathered.keep(file.diagnostics, found.path)
    thing = file.thing
    if isinstance(thing, Stub):
        gathered.stubs.append(thing)
    elif isinstance(thing, WrittenPage):
        gathered.pages.append(thing)
    elif thing.id is None:
        gathered.unfiled.append(thing)
    else:
        gathered.declared.append(Declared(thing.id, thing.place("id")))
        first = gathered.records.setdefault(thing.id, thing)
        if first is not thing:
            gathered.doubles.append(thing)


def _read_json(gathered: _Gathered, found: Found) -> None:
    """An edition; nothing else is kept in that form."""
    if is_edition(found.path):
        gathered.editions[found.path] = gathered.open(found, LARGEST_EDITION).text
    else:
        text = f"{found.path} is no edition of the handbook"
        cure = "move it out, or put it into a record"
        gathered.faults.append(
            Diagnostic(Where(found.path), Severity.NOTE, text, cure, CODE, found.path)
        )


def _read_logs(gathered: _Gathered) -> None:
    """The logged file of each test, in the units that its record names."""
    spoilt = {fault.where.path for fault in gathered.faults}
    for key, record in sorted(gathered.records.items()):
        logged = record.log if isinstance(record, Test) else None
        text = gathered.logs.get(logged.file) if logged else None
        if isinstance(record, Test) and logged and text is not None and logged.file not in spoilt:
            read = read_log(record, logged, text)
            gathered.logged[key] = read.log
            gathered.keep(read.diagnostics, logged.file)


def _read_reply(gathered: _Gathered, found: Found) -> None:
    """What a reviewer wrote back, as it came; its words are nobody's of this book."""
    read = gathered.open(found)
    forms = read_forms(read.text)
    gathered.replies[found.path] = forms
    if not read.fault and not forms.replies:
        text = f"no filled form of a review pack stands in {found.path}"
        cure = "put back the reply as it came, or move the file out"
        gathered.faults.append(
            Diagnostic(Where(found.path), Severity.NOTE, text, cure, CODE, found.path)
        )


def _content(gathered: _Gathered) -> Content:
    """Everything, frozen and in order."""
    taken = {item.name: getattr(gathered, item.name) for item in fields(gathered)}
    lists, faults = taken.pop("lists"), taken.pop("faults")
    taken = {
        name: tuple(value) if isinstance(value, list) else value for name, value in taken.items()
    }
    for kind in LISTS:
        taken[kind.file.removesuffix(".yml")] = lists.get(kind.file, {})
    taken["records"] = dict(sorted(gathered.records.items()))
    taken["editions"] = read_editions(gathered.editions)
    faults += taken["editions"].diagnostics
    return Content(**taken, diagnostics=in_order(faults))


def in_order(faults: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Faults by place, each said once."""
    return tuple(sorted(dict.fromkeys(faults), key=lambda one: (one.where, one.code, one.text)))
