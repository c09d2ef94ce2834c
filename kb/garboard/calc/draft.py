"""Read a calc fence, line by line. The order of its lines is free.

A line that cannot be read does not hide the others, and the name it would have set is known to be
broken, so that what rests on it says so.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from garboard.calc.characters import check_characters
from garboard.calc.fault import CalcFault, Family, Line, Span, fault
from garboard.calc.functions import CONSTANTS
from garboard.calc.language import read_statement
from garboard.calc.sheet import Fence, Options
from garboard.calc.syntax import (
    Assignment,
    Binary,
    Expression,
    MethodCall,
    Name,
    Number,
    Sign,
    Statement,
)
from garboard.calc.value import Citation
from garboard.errors import Diagnostic, Where
from garboard.names import BLOCK, nearest

__all__ = ["Draft", "Entry", "Unread", "read_draft"]

LONGEST_BLOCK = 8000
LONGEST_LINE = 400
MOST_STATEMENTS = 120
MOST_TERMS = 900
"""Numbers, names and calls. The dearest fence that fits costs at most twenty common ones."""
MOST_DIGITS = 12
SOURCES = re.compile(r"\[([^\[\]]*)\]\s*$")
SETS = re.compile(r"\s*([A-Za-z][A-Za-z0-9_]*)\s*=(?!=)")
OPTION_WORDS = ("digits", "hide working", "what-if")


@dataclass(frozen=True, slots=True)
class Entry:
    """One statement with what its comment says."""

    statement: Statement
    written: str
    """The statement as written, without the comment."""
    label: str
    sources: tuple[Citation, ...]


@dataclass(frozen=True, slots=True)
class Unread:
    """One line that cannot be read."""

    name: str
    """The name it would have set, where that can be told."""
    written: str
    where: Where
    fault: Diagnostic


@dataclass(frozen=True, slots=True)
class Draft:
    """A fence as read, not yet worked out."""

    fence: Fence
    options: Options
    lines: tuple[Entry | Unread, ...]
    """In the order they are written."""
    unreadable: Mapping[str, Diagnostic]
    """Names that an unreadable line would have set, or that are set twice."""
    faults: tuple[Diagnostic, ...]

    @property
    def entries(self) -> tuple[Entry, ...]:
        """The lines that can be read."""
        return tuple(line for line in self.lines if isinstance(line, Entry))


class DraftReader:
    """Reads one fence."""

    def __init__(self, fence: Fence, methods: Mapping[str, int]) -> None:
        self.fence = fence
        self.methods = methods
        self.faults: list[Diagnostic] = []
        self.entries: list[Entry] = []
        self.lines: list[Entry | Unread] = []
        self.unreadable: dict[str, Diagnostic] = {}
        self.terms = 0
        self.full: Diagnostic | None = None
        """Why no further line is read."""

    def read(self) -> Draft:
        """Read the frame and every line."""
        options = Options()
        try:
            self.check_name()
            options = self.read_options()
        except CalcFault as found:
            self.faults.append(found.diagnostic)
        signs, start = 0, self.fence.where
        for index, text in enumerate(self.fence.lines):
            place = Where(start.path, start.line + index, start.column)
            line = Line(text, place, self.fence.name)
            signs += len(text) + 1
            if self.full:
                self.note(line, self.full)
                continue
            try:
                self.check_room(line, signs)
                self.read_line(line)
            except CalcFault as found:
                self.faults.append(found.diagnostic)
                self.note(line, found.diagnostic)
        self.check_what_if(options)
        return Draft(self.fence, options, tuple(self.lines), self.unreadable, tuple(self.faults))

    def note(self, line: Line, found: Diagnostic) -> None:
        """Keep a line that cannot be read, and the name it would have set."""
        code = line.text[:LONGEST_LINE].partition("#")[0].strip()
        named = SETS.match(line.text[:LONGEST_LINE])
        name = named[1] if named else ""
        if name:
            self.unreadable.setdefault(name, found)
        if code:
            self.lines.append(Unread(name, code, line.where, found))

    @property
    def frame(self) -> Where:
        """The place of the line that opens the fence."""
        return replace(self.fence.where, line=max(1, self.fence.where.line - 1), column=1)

    def check_name(self) -> None:
        """Refuse a block name that no address could use.

        Raises:
            CalcFault: It is one.
        """
        name = self.fence.name
        if BLOCK.fullmatch(name) and name != "site" and len(name) <= 60:
            return
        text = f"`{name[:60]}` is no name for a block"
        if name == "site":
            text = "`site` is the name of the vessel's conditions"
        cure = "name it in small letters, figures and hyphens: receiver-sizing"
        raise fault(Family.NAME, self.frame, text, cure, name)

    def read_options(self) -> Options:
        """Read what stands behind the name of the block.

        Raises:
            CalcFault: It is none of the options.
        """
        options = Options()
        for part in self.fence.options_text.split(";"):
            words = part.split()
            if not words:
                continue
            if words[0] == "digits" and len(words) == 2 and words[1].isdecimal():
                digits = int(words[1][:3])
                if 1 <= digits <= MOST_DIGITS:
                    options = replace(options, digits=digits)
                    continue
            if words == ["hide", "working"]:
                options = replace(options, hide_working=True)
                continue
            if words[0] == "what-if" and len(words) > 1:
                options = replace(options, what_if=tuple(words[1:]))
                continue
            raise self.option_fault(part.strip())
        return options

    def option_fault(self, part: str) -> CalcFault:
        """Refuse an option that is none."""
        near = nearest(part, OPTION_WORDS)
        cure = "write digits 3; hide working; what-if NAME"
        if part.split(maxsplit=1)[0] == "digits":
            cure = f"write digits and a number from 1 to {MOST_DIGITS}"
        elif near:
            cure = f"did you mean {near}? {cure}"
        text = f"`{part[:60]}` is no option of a calc fence"
        return fault(Family.SYNTAX, self.frame, text, cure, self.fence.name)

    def check_what_if(self, options: Options) -> None:
        """Report names that a reader could not change: not set here, or worked out."""
        set_here = [
            each.statement for each in self.entries if isinstance(each.statement, Assignment)
        ]
        given = [each.name for each in set_here if is_given(each.value)]
        for name in dict.fromkeys(options.what_if):
            if name in given or name in self.unreadable:
                continue
            near = nearest(name, given)
            text = f"what-if names `{name[:60]}`, which no line sets"
            cure = f"did you mean {near}?" if near else "name a number that this fence is given"
            if any(each.name == name for each in set_here):
                text = f"what-if names `{name[:60]}`, which is worked out, not given"
                cure = f"open what it is worked out from: {', '.join(given) or 'nothing is given'}"
            found = fault(Family.NAME, self.frame, text, cure, self.fence.name)
            self.faults.append(found.diagnostic)

    def check_room(self, line: Line, signs: int) -> None:
        """Refuse lines beyond the size of a block.

        Raises:
            CalcFault: The line, or the block with it, is too long.
        """
        cure = "split the calculation into several fences"
        if len(line.text) > LONGEST_LINE:
            text = f"a line of {len(line.text)} signs, `{line.text[:30]}...`"
            cure = f"keep lines to {LONGEST_LINE}: name parts of it on lines of their own"
        elif signs > LONGEST_BLOCK:
            text = f"the fence goes beyond {LONGEST_BLOCK} signs"
        elif len(self.entries) >= MOST_STATEMENTS and line.text.partition("#")[0].strip():
            text = f"the fence goes beyond {MOST_STATEMENTS} statements"
        else:
            return
        found = fault(Family.LIMIT, line.where, text, cure, self.fence.name)
        if len(line.text) <= LONGEST_LINE:
            self.full = found.diagnostic
        raise found

    def read_line(self, line: Line) -> None:
        """Read one line, if it holds a statement.

        Raises:
            CalcFault: It cannot be read, or sets a name a second time.
        """
        code, _, comment = line.text.partition("#")
        end = len(code)
        check_characters(line, end)
        if not code.strip():
            return
        statement = read_statement(line, end, self.methods)
        self.terms += statement.terms
        if isinstance(statement, Assignment) and isinstance(statement.value, MethodCall):
            self.terms += self.methods[statement.value.method]
        if self.terms > MOST_TERMS:
            text = f"the fence goes beyond {MOST_TERMS} terms"
            cure = "split the calculation into several fences"
            raise line.fault(Family.LIMIT, Span(0, end), text, cure)
        if isinstance(statement, Assignment):
            self.check_once(line, statement)
        label, sources = read_comment(line, comment, end + 1)
        entry = Entry(statement, code.strip(), label, sources)
        self.entries.append(entry)
        self.lines.append(entry)

    def check_once(self, line: Line, statement: Assignment) -> None:
        """Refuse to set a name a second time.

        Raises:
            CalcFault: It is set already.
        """
        for entry in self.entries:
            before = entry.statement
            if isinstance(before, Assignment) and before.name == statement.name:
                text = f"`{statement.name}` is set already in line {before.line.where.line}"
                cure = "give the second value a name of its own"
                raise line.fault(Family.NAME, statement.name_span, text, cure)


def is_given(value: Expression | MethodCall) -> bool:
    """Whether a value is written in numbers alone, so that a reader can put another in its place."""
    match value:
        case Number():
            return True
        case Name():
            return value.text in CONSTANTS
        case Sign():
            return is_given(value.operand)
        case Binary():
            return is_given(value.left) and is_given(value.right)
        case _:
            return False


def read_comment(line: Line, comment: str, start: int) -> tuple[str, tuple[Citation, ...]]:
    """Read a comment: what the value is, and in brackets at its end where it comes from.

    Args:
        line: The line.
        comment: What stands behind #.
        start: Where it starts in the line.

    Returns:
        The label and the sources, each with its place.
    """
    sources: list[Citation] = []
    found = SOURCES.search(comment)
    while found:
        own: list[Citation] = []
        at = start + found.start(1)
        for part in found[1].split(","):
            source, _, clause = part.strip().partition(" ")
            if source:
                span = Span(at + len(part) - len(part.lstrip()), at + len(part))
                own.append(Citation(source, clause.strip(), line.at(span)))
            at += len(part) + 1
        sources = own + sources
        comment = comment[: found.start()]
        found = SOURCES.search(comment)
    return comment.strip(), tuple(sources)


@lru_cache(maxsize=4096)
def read_draft(fence: Fence, methods: tuple[tuple[str, int], ...]) -> Draft:
    """Read a fence; one that has not changed since the last build of this run is kept.

    Args:
        fence: As it stands in a record or page.
        methods: Names of the bundled methods, and how many terms a call of each counts for.
    """
    return DraftReader(fence, dict(methods)).read()
