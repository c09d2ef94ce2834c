"""Read YAML as it looks: every node marked with its place, nothing guessed, nothing dropped.

Only the event stream of the library is used, so that no type is resolved, no alias is expanded and
no recursion can be driven deep. `on`, `no` and `12:30` stay the text they are; a field that wants
something else asks for it. What other tools would read otherwise, or drop, is refused: duplicate
keys, aliases, anchors, tags, merge keys, further documents, tabs, and a `#` that cuts text short.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Any

import yaml

from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.characters import find_hidden, find_long_lines
from garboard.reading.nodes import Entry, ListNode, MapNode, Node, ScalarNode, Style, Tree
from garboard.reading.yaml_refusals import Mark, explain

__all__ = ["CODE", "read_yaml", "shorten"]

CODE = "unreadable-record"
LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""The fast parser where it is built in; both see the same events at the same places."""

LONGEST = 1_000_000
DEEPEST = 20
MOST_NODES = 20_000


@dataclass(slots=True)
class _Open:
    """A list or mapping whose end has not come yet."""

    where: Where
    flow: bool
    mapping: bool
    nodes: list[Node] = field(default_factory=list)


class _TooMuchError(Exception):
    """A limit is passed; carries what to say."""

    def __init__(self, where: Where, text: str, cure: str) -> None:
        super().__init__(text)
        self.where, self.text, self.cure = where, text, cure


def read_yaml(text: str, path: str, first_line: int = 1) -> Tree:
    """Read one document.

    Args:
        text: With plain line feeds.
        path: Of the file, for places.
        first_line: Line of the file on which the text starts.
    """
    builder = _Builder(path, first_line, f"{text}\n".split("\n"))
    try:
        builder.check_text(text)
        node = builder.build(yaml.parse(f"{text}\n", Loader=LOADER))
    except _TooMuchError as stop:
        builder.refuse(stop.where, stop.text, stop.cure)
        node = None
    except yaml.MarkedYAMLError as stop:
        builder.explain(stop)
        node = None
    except yaml.YAMLError:
        said = "the text does not read as keys and values"
        builder.refuse(builder.at(0, 0), said, "write key: value")
        node = None
    return Tree(node, tuple(builder.faults))


class _Builder:
    """Turns events into nodes, and collects what is refused."""

    def __init__(self, path: str, first_line: int, lines: list[str]) -> None:
        self.path = path
        self.first_line = first_line
        self.lines = lines
        self.faults: list[Diagnostic] = []
        self.open: list[_Open] = []
        self.top: Node | None = None
        self.nodes = 0
        self.documents = 0

    def at(self, line: int, column: int) -> Where:
        """A place in the file, from a line and column of the text counted from 0."""
        return Where(self.path, self.first_line + line, column + 1)

    def place(self, mark: Any) -> Where:  # noqa: ANN401 - the marks of either parser
        """The place of a mark."""
        return self.at(mark.line, mark.column)

    def refuse(self, where: Where, text: str, cure: str) -> None:
        """Note a fault."""
        self.faults.append(Diagnostic(where, Severity.STOP, text, cure, CODE))

    def explain(self, fault: yaml.MarkedYAMLError) -> None:
        """Note what the library could not parse, in our own words."""
        marks = [
            Mark(mark.line, mark.column) if mark else None
            for mark in (fault.problem_mark, fault.context_mark)
        ]
        place, text, cure = explain(
            str(fault.problem), marks[0] or Mark(0, 0), marks[1], self.lines
        )
        self.refuse(self.at(place.line, place.column), text, cure)

    def check_text(self, text: str) -> None:
        """Refuse what is too long, directives, tabs, and signs that cannot be seen.

        Raises:
            _TooMuchError: One of them is there.
        """
        if len(text) > LONGEST:
            said = f"{len(text)} signs, more than {LONGEST}"
            raise _TooMuchError(self.at(0, 0), said, "split the file")
        for number, row in enumerate(self.lines):
            if row.startswith(("%", "...")):
                said = f"a line starts with {'%' if row[0] == '%' else '...'}"
                cure = "delete it, or put the text in quotes"
                raise _TooMuchError(self.at(number, 0), said, cure)
        for line, said, cure in find_long_lines(text):
            raise _TooMuchError(self.at(line, 0), said, cure)
        for line, column, said, cure in find_hidden(text, tabs=False):
            raise _TooMuchError(self.at(line, column), said, cure)

    def build(self, events: Iterator[Any]) -> Node | None:
        """Follow the events to the end.

        Raises:
            _TooMuchError: A limit is passed.
        """
        for event in events:
            if isinstance(event, yaml.ScalarEvent):
                self.scalar(event)
            elif isinstance(event, yaml.AliasEvent):
                self.alias(event)
            elif isinstance(event, yaml.CollectionStartEvent):
                self.start(event)
            elif isinstance(event, yaml.CollectionEndEvent):
                self.finish()
            elif isinstance(event, yaml.DocumentStartEvent):
                self.document(event)
        top = self.top
        return None if isinstance(top, ScalarNode) and top.empty else top

    def document(self, event: yaml.DocumentStartEvent) -> None:
        """Refuse a second document.

        Raises:
            _TooMuchError: A second document starts.
        """
        self.documents += 1
        if self.documents > 1:
            where = self.place(event.start_mark)
            raise _TooMuchError(where, "a second document starts here", "keep one; delete this ---")

    def scalar(self, event: yaml.ScalarEvent) -> None:
        """Take in a piece of text."""
        where = self.place(event.start_mark)
        self.check_marks(where, event.anchor, event.tag)
        end = self.place(event.end_mark)
        style = Style(event.style or "")
        node = ScalarNode(event.value, where, end, style)
        self.check_question(node)
        if style is Style.PLAIN and not self.at_key:
            node = self.settle(node)
            self.check_plain(node)
        self.add(node)

    def check_question(self, node: ScalarNode) -> None:
        """Refuse a `?` in unquoted text within brackets, which not every parser takes for text.

        Raises:
            _TooMuchError: It stands there.
        """
        holder = self.open[-1] if self.open else None
        if node.style is Style.PLAIN and holder and holder.flow and "?" in node.text:
            column = self.lines[node.where.line - self.first_line].find("?", node.where.column - 1)
            where = replace(node.where, column=column + 1) if column >= 0 else node.where
            said = f"`?` stands in unquoted text within {'{' if holder.mapping else '['}"
            raise _TooMuchError(where, said, "put the text that holds it in quotes")

    @property
    def at_key(self) -> bool:
        """Whether the next node is a key."""
        holder = self.open[-1] if self.open else None
        return holder is not None and holder.mapping and len(holder.nodes) % 2 == 0

    def settle(self, node: ScalarNode) -> ScalarNode:
        """Put an empty value where its key stands: parsers differ about the place of nothing."""
        holder = self.open[-1] if self.open else None
        if node.text or holder is None or not holder.mapping:
            return node
        key = holder.nodes[-1]
        return replace(node, where=key.where, end=getattr(key, "end", key.where))

    def alias(self, event: yaml.AliasEvent) -> None:
        """Refuse an alias; nothing stands in its place."""
        where = self.place(event.start_mark)
        text = f"`*{event.anchor}` would stand for text from elsewhere"
        self.refuse(where, text, "write the text itself, or put it in quotes")
        self.add(ScalarNode("", where, where, Style.SINGLE))

    def start(self, event: yaml.CollectionStartEvent) -> None:
        """Open a list or mapping.

        Raises:
            _TooMuchError: It stands too deep.
        """
        where = self.place(event.start_mark)
        self.check_marks(where, event.anchor, event.tag)
        if len(self.open) >= DEEPEST:
            said = f"more than {DEEPEST} lists and mappings within each other"
            raise _TooMuchError(where, said, "write it flatter")
        mapping = isinstance(event, yaml.MappingStartEvent)
        self.open.append(_Open(where, bool(event.flow_style), mapping))

    def finish(self) -> None:
        """Close the innermost list or mapping."""
        done = self.open.pop()
        if done.mapping:
            self.add(MapNode(tuple(self.entries(done)), done.where, done.flow))
        else:
            self.add(ListNode(tuple(done.nodes), done.where, done.flow))

    def add(self, node: Node) -> None:
        """Put a finished node where it belongs.

        Raises:
            _TooMuchError: There are too many.
        """
        self.nodes += 1
        if self.nodes > MOST_NODES:
            said = f"more than {MOST_NODES} keys and values"
            raise _TooMuchError(node.where, said, "split the file")
        if self.open:
            self.open[-1].nodes.append(node)
        else:
            self.top = node

    def entries(self, done: _Open) -> Iterator[Entry]:
        """The entries of a mapping, each key once."""
        seen: dict[str, Where] = {}
        for key, value in zip(done.nodes[::2], done.nodes[1::2], strict=True):
            if not isinstance(key, ScalarNode):
                cure = "write a word as the key"
                self.refuse(key.where, "a list or mapping stands as a key", cure)
            elif key.text == "<<" and key.style is Style.PLAIN:
                self.refuse(
                    key.where, "`<<` would draw in another mapping", "write its entries here"
                )
            elif key.text in seen:
                first = seen[key.text]
                text = f"key {key.text} stands twice, first on line {first.line}"
                self.refuse(key.where, text, "keep one")
            else:
                seen[key.text] = key.where
                yield Entry(key, value)

    def check_marks(self, where: Where, anchor: str | None, tag: str | None) -> None:
        """Refuse anchors and tags."""
        if anchor:
            text = f"`&{anchor}` names this text for use elsewhere"
            self.refuse(where, text, "delete it, or put the text in quotes")
        if tag:
            shown = tag.replace("tag:yaml.org,2002:", "!!")
            self.refuse(where, f"`{shown}` asks for a type", "delete it, or put the text in quotes")

    def check_plain(self, node: ScalarNode) -> None:
        """Refuse unquoted text that a `#` cuts short, that runs on by mistake, or means nothing."""
        if node.text in ("~", "null"):
            cure = "leave it empty, or put it in quotes"
            self.refuse(node.where, f"`{node.text}` means nothing", cure)
        last = node.end.line - self.first_line
        self.check_cut(node, last)
        for number in range(node.where.line - self.first_line + 1, last + 1):
            row = self.lines[number] if number < len(self.lines) else ""
            if row.lstrip().startswith("-"):
                place = self.at(number, len(row) - len(row.lstrip()))
                cure = "write a space after the dash, or quote the text"
                self.refuse(place, "a dash without a space runs on the text above", cure)

    def check_cut(self, node: ScalarNode, line: int) -> None:
        """Refuse a `#` behind unquoted text that was hardly meant as a comment."""
        row = self.lines[line] if line < len(self.lines) else ""
        rest = row[node.end.column - 1 :]
        if not node.text:
            rest = rest.removeprefix(":")
        comment = rest.lstrip(" ")
        spaces = len(rest) - len(comment)
        if comment.startswith("#"):
            meant = (spaces >= 2 or not node.text) and comment[1:2] in ("", " ", "#")
        else:
            line += 1
            row = self.lines[line] if line < len(self.lines) else ""
            comment = row.lstrip(" ")
            meant = not (node.text and comment[:1] == "#" and comment[1:2].isdigit())
        if not meant:
            place = self.at(line, len(row) - len(comment))
            cure = "put the whole text in quotes; before a comment write two spaces, after # one"
            self.refuse(place, f"`{shorten(comment)}` is left out as a comment", cure)


def shorten(text: str, length: int = 40) -> str:
    """Text for a message, cut where it is long.

    >>> shorten("a" * 50, 10)
    'aaaaaaa...'
    """
    return text if len(text) <= length else text[: length - 3] + "..."
