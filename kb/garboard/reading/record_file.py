"""Read one Markdown file: a record of the kind its id says, an unfiled record, or a written page.

A file that cannot be read becomes a Stub that carries its messages and its text.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cache
from pathlib import PurePosixPath

from garboard.errors import Diagnostic, Severity, Where
from garboard.names import IDENTIFIER, is_record_id, is_tag, nearest, system_of
from garboard.reading.characters import find_hidden, find_long_lines
from garboard.reading.content import Stub, Unfiled
from garboard.reading.fences import Fence, find_fences
from garboard.reading.fields import FieldReader
from garboard.reading.front_matter import Parts, part_file
from garboard.reading.nodes import Entry, MapNode, ScalarNode
from garboard.reading.scalars import GRAMMARS, Unfit, read_date
from garboard.reading.shapes import keys_of
from garboard.reading.strict_yaml import CODE, shorten
from garboard.reading.written import Written, body_text, field_texts
from garboard.records.base import Record, RecordId
from garboard.records.kinds import BY_LETTERS, BY_NAME, KINDS, Kind
from garboard.records.pages import WrittenPage

__all__ = ["MarkdownFile", "read_markdown"]

DATED = re.compile(r"(?P<date>\d{4}-\d{2}-\d{2})(?:-[^/]*)?\.md")
SEVERAL = 3
"""Keys of another kind that are no slip of the pen."""
LOG, SYSTEMS = "log/", "systems/"
HEADING = re.compile(r"#{1,6}[ \t]+(?P<title>.*?)[ \t#]*")


@dataclass(frozen=True, slots=True)
class MarkdownFile:
    """What one file gave."""

    thing: Record | WrittenPage | Stub
    fences: tuple[Fence, ...] = ()
    texts: tuple[Written, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = field(default=())


def read_markdown(text: str, path: str) -> MarkdownFile:
    """Read one file.

    Args:
        text: The whole file, with plain line feeds.
        path: Of the file in the content folder.
    """
    return _File(text, path).read()


class _File:
    """One file on its way to being read."""

    def __init__(self, text: str, path: str) -> None:
        self.text = text
        self.path = path
        self.where = Where(path, 1, 1)
        self.parts: Parts = part_file(text, path)
        self.faults: list[Diagnostic] = list(self.parts.diagnostics)

    def refuse(self, where: Where, text: str, cure: str, code: str = CODE, about: str = "") -> None:
        """Note a fault."""
        self.faults.append(Diagnostic(where, Severity.STOP, text, cure, code, about))

    def read(self) -> MarkdownFile:
        """The file as what it is."""
        tree = self.parts.head
        if tree is None:
            return self.headless()
        if not isinstance(tree.node, MapNode):
            if not tree.diagnostics:
                text = "the front matter holds no keys"
                self.refuse(self.where, text, "write title: and system: between the fences")
            return self.stub()
        entries = {entry.key.text: entry for entry in tree.node.entries}
        if "id" in entries:
            return self.filed(tree.node, entries["id"])
        if "page" in entries or not self.among_records("system" in entries or "kind" in entries):
            return self.page(tree.node)
        return self.unfiled(tree.node, entries.get("kind"))

    def among_records(self, marked: bool) -> bool:  # noqa: FBT001 - one caller
        """Whether a file without an id is a record all the same."""
        return marked or self.path.startswith((LOG, SYSTEMS))

    def headless(self) -> MarkdownFile:
        """A file without front matter: a page of the vessel, or a record that lacks its head."""
        if self.faults:
            return self.stub()
        if self.among_records(marked=False):
            text = "a record without front matter"
            cure = "start it with ---, title:, system:, an id: if it has one, and --- again"
            self.refuse(self.where, text, cure)
            return self.stub()
        title = self.heading()
        page = WrittenPage(where=self.where, text=self.text, title=title)
        return self.finish(page, self.path, None)

    def filed(self, node: MapNode, entry: Entry) -> MarkdownFile:
        """A record with an id."""
        text = entry.value.text.strip() if isinstance(entry.value, ScalarNode) else ""
        where = entry.value.where
        kind = BY_LETTERS.get(text[3:5]) if IDENTIFIER.fullmatch(text) else None
        if kind is None:
            self.no_kind(text, where)
            return self.stub()
        if other := meant_kind(node, kind):
            said = f"{text} has the letters of the kind {kind.name} and the keys of the kind {other.name}"
            cure = f"write an id with {other.letters}, or the keys of the kind {kind.name}"
            self.refuse(where, said, cure, "unknown-kind", text)
            return self.stub()
        return self.record(node, kind, RecordId(text))

    def no_kind(self, text: str, where: Where) -> None:
        """Note an id that says no kind."""
        if is_tag(text):
            near = ", ".join(f"{kind.letters} {kind.name}" for kind in KINDS)
            said = f"{text} has the letters {text[3:5]}, which no kind of record has"
            self.refuse(where, said, f"take the letters of its kind: {near}", "unknown-kind")
            return
        try:
            GRAMMARS[RecordId](text)
        except Unfit as unfit:
            self.refuse(where, unfit.text, unfit.cure)
        else:
            self.refuse(
                where, f"`{text}` is no record id", "write the id alone, without a revision"
            )

    def unfiled(self, node: MapNode, entry: Entry | None) -> MarkdownFile:
        """A record that nobody has filed yet; it may say of which kind it is."""
        if entry is None:
            return self.record(node, None, None)
        rest = replace(node, entries=tuple(one for one in node.entries if one is not entry))
        word = entry.value.text.strip() if isinstance(entry.value, ScalarNode) else ""
        kind = BY_NAME.get(word) or BY_LETTERS.get(word)
        if kind is None:
            near = nearest(word, BY_NAME)
            cure = f"write {near}" if near else f"write one of {', '.join(BY_NAME)}"
            said = f"`{shorten(word)}` is no kind of record"
            self.refuse(entry.value.where, said, cure, "unknown-kind")
        return self.record(rest, kind, None)

    def record(self, node: MapNode, kind: Kind | None, ident: RecordId | None) -> MarkdownFile:
        """A record of a kind, or of none yet."""
        about = ident or self.path
        reader = FieldReader(about)
        reader.elsewhere = owners_of_keys()
        record: Record = reader.read(
            kind.record if kind else Unfiled,
            node,
            where=self.where,
            text=self.parts.body,
            text_line=self.parts.body_line,
        )
        self.faults += reader.faults
        record = self.settle(record)
        self.check(record, kind)
        return self.finish(record, about, reader)

    def settle(self, record: Record) -> Record:
        """Fill in what the name of the file and the id already say."""
        found = DATED.fullmatch(PurePosixPath(self.path).name)
        drafted = record.drafted
        if (
            found
            and self.path.startswith(LOG)
            and drafted is None
            and "drafted" not in record.unread
        ):
            drafted = self.file_date(found["date"])
        system = record.system or (system_of(record.id) if record.id else "")
        if drafted is record.drafted and system == record.system:
            return record
        return replace(record, drafted=drafted, system=system)

    def file_date(self, text: str) -> date | None:
        """The day in the name of a file."""
        try:
            return read_date(text)
        except Unfit as unfit:
            cure = "rename it: year-month-day and a few words"
            self.refuse(self.where, f"the file's name: {unfit.text}", cure)
            return None

    def check(self, record: Record, kind: Kind | None) -> None:
        """What every record must say, and words that its kind must know."""
        about = str(record.id or self.path)
        if not record.title and "title" not in record.unread:
            self.refuse(
                record.place("title"),
                "it has no title",
                "write title: and a noun phrase",
                about=about,
            )
        if not record.places.get("system"):
            self.refuse(
                self.where, "it has no system", "write system: and two capital letters", about=about
            )
        elif record.id and record.system != system_of(record.id):
            text = f"{record.id} is of system {system_of(record.id)}, system says {record.system}"
            self.refuse(record.place("system"), text, "write the same in both", about=about)
        if kind:
            self.check_states(record, kind, about)

    def check_states(self, record: Record, kind: Kind, about: str) -> None:
        """Refuse a state that the kind does not have, in `state` and in the signatures."""
        said = [("state", record.state)]
        said += [(f"signed[{number}].to", line.to) for number, line in enumerate(record.signed)]
        for path, state in said:
            if state and state not in kind.machine.states:
                near = nearest(state, kind.machine.states)
                cure = f"write {near}" if near else f"write one of {', '.join(kind.machine.states)}"
                text = f"`{shorten(state)}` is no state of a {kind.name}"
                self.refuse(record.place(path), text, cure, about=about)

    def page(self, node: MapNode) -> MarkdownFile:
        """A written page."""
        reader = FieldReader(self.path)
        page = reader.read(
            WrittenPage,
            node,
            where=self.where,
            text=self.parts.body,
            text_line=self.parts.body_line,
        )
        self.faults += reader.faults
        if not page.title:
            page = replace(page, title=self.heading())
        return self.finish(page, self.path, reader)

    def finish(
        self, thing: Record | WrittenPage, owner: str, reader: FieldReader | None
    ) -> MarkdownFile:
        """Look through the text, and put everything together."""
        body, line = self.parts.body, self.parts.body_line
        for row, column, text, cure in find_hidden(body, tabs=True):
            self.refuse(Where(self.path, line + row, column + 1), text, cure, about=owner)
        for row, text, cure in find_long_lines(body):
            self.refuse(Where(self.path, line + row, 1), text, cure, about=owner)
        fences = find_fences(body, self.path, line, owner)
        texts, faults = body_text(body, Where(self.path, line, 1), fences.spans, owner)
        self.faults += (*fences.diagnostics, *faults)
        if reader is not None:
            more, faults = field_texts(reader, self.text.split("\n"), owner)
            texts += more
            self.faults += faults
        return MarkdownFile(thing, fences.fences, texts, tuple(self.faults))

    def heading(self) -> str:
        """A title for a file that states none: its first heading, else its name."""
        for line in self.parts.body.split("\n"):
            found = HEADING.fullmatch(line)
            if found and found["title"]:
                return shorten(found["title"], 120)
        return name_as_title(self.path)

    def stub(self) -> MarkdownFile:
        """What stands for a file that cannot be read."""
        guessed = dict(_guesses(self.parts.head_text))
        ident = guessed.get("id", "")
        if not is_record_id(ident):
            ident = ""
        system = guessed.get("system", "") or (system_of(ident) if ident else "")
        title = guessed.get("title") or self.heading()
        faults = tuple(self.faults)
        stub = Stub(self.where, title, system, ident, self.text, faults)
        return MarkdownFile(stub, diagnostics=faults)


def _guesses(head: str) -> Iterator[tuple[str, str]]:
    """What the head of a broken file seems to say."""
    for line in head.split("\n")[:60]:
        found = re.fullmatch(r"(id|title|system): *[\"']?(.{1,120}?)[\"']? *", line)
        if found:
            yield found[1], found[2]


def name_as_title(path: str) -> str:
    """A title made of the name of a file.

    >>> name_as_title("log/2031/2031-03-09-low-air.md")
    'Low air'
    """
    stem = PurePosixPath(path).stem
    words = re.sub(r"^\d{4}-\d{2}-\d{2}-?", "", stem).replace("-", " ").replace("_", " ").strip()
    return (words or stem).capitalize()


def meant_kind(node: MapNode, kind: Kind) -> Kind | None:
    """The kind that has every key of a record, where its own kind lacks several of them."""
    written = {entry.key.text for entry in node.entries}
    if len(written - keys_of(kind.record).keys()) < SEVERAL:
        return None
    return next((one for one in KINDS if written <= keys_of(one.record).keys()), None)


@cache
def owners_of_keys() -> Mapping[str, str]:
    """Which kinds of record have a key."""
    found: dict[str, list[str]] = {}
    for kind in KINDS:
        for key in keys_of(kind.record):
            found.setdefault(key, []).append(kind.name)
    return {key: " or ".join(names[:3]) for key, names in found.items()}
