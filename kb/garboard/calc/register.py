"""The register of the lines that are worked out: what each rests on, and what a wrong name gets."""

from collections.abc import Iterator, Mapping

from garboard.calc.directory import Directory, names_of
from garboard.calc.draft import Draft, Entry
from garboard.calc.fault import CalcFault, Family, Line
from garboard.calc.functions import FUNCTIONS
from garboard.calc.method import Method
from garboard.calc.syntax import Assignment, MethodCall, Name
from garboard.calc.value import Given
from garboard.errors import Where
from garboard.names import nearest

__all__ = ["Register"]


class Register:
    """The lines that are worked out, among every name that can be referred to."""

    def __init__(
        self, directory: Directory, givens: Mapping[str, Given], methods: Mapping[str, Method]
    ) -> None:
        self.directory = directory
        self.givens = givens
        self.methods = methods
        self.drafts: dict[str, Draft] = {}
        self.entries: dict[str, Entry] = {}

    def take(self, draft: Draft) -> None:
        """Take the lines of a fence in."""
        block = draft.fence.name
        self.drafts[block] = draft
        for entry in draft.entries:
            if isinstance(entry.statement, Assignment):
                self.entries.setdefault(f"{block}.{entry.statement.name}", entry)

    def keys_of(self, block: str) -> list[str]:
        """The addresses of the lines of a block, in the order they are written."""
        found = (each.statement for each in self.drafts[block].entries)
        names = (each.name for each in found if isinstance(each, Assignment))
        return [f"{block}.{name}" for name in names]

    def address_of(self, block: str, text: str) -> str:
        """The address that a name in a block stands for, whether or not anything stands there."""
        return self.directory.address_of(block, text)

    def entry_of(self, address: str) -> str | None:
        """The key of the line that sets a value: its address, or that of the call it comes from."""
        return self.directory.entry_of(address)

    def names(self, entry: Entry) -> Iterator[Name]:
        """The names a line uses, and those that defaults of its method use."""
        return names_of(entry, self.methods)

    def needs(self, key: str) -> dict[str, Where]:
        """The lines that a line rests on directly, each with the place where it says so."""
        entry = self.entries[key]
        block = key.partition(".")[0]
        found: dict[str, Where] = {}
        for name in self.names(entry):
            other = self.entry_of(self.address_of(block, name.text))
            if other:
                found.setdefault(other, entry.statement.line.at(name.span))
        return found

    def unknown_fault(self, block: str, line: Line, name: Name) -> CalcFault:
        """Refuse a name that stands for nothing."""
        text = name.text
        own = [key.partition(".")[2] for key in self.entries if key.startswith(f"{block}.")]
        quoted = line.quote(name.span)
        if "." not in text:
            near = nearest(text, (*own, *FUNCTIONS))
            cure = f"did you mean {near}?" if near else f"add a line that sets {quoted}"
            return line.fault(
                Family.NAME, name.span, f"`{quoted}` is set nowhere in this fence", cure
            )
        owner, _, part = text.partition(".")
        if owner in own:
            return self.part_fault(block, line, name, owner, part)
        cure = self.nearest_address(owner, part)
        return line.fault(Family.REFERENCE, name.span, f"`{quoted}` stands for nothing here", cure)

    def nearest_address(self, owner: str, part: str) -> str:
        """The cure for an address that stands for nothing: first the owner, then the part of it."""
        parts: dict[str, list[str]] = {}
        for address in (*self.directory.lines, *self.givens):
            found, _, name = address.partition(".")
            parts.setdefault(found, []).append(name)
        near_owner = owner if owner in parts else nearest(owner, parts)
        if near_owner is None:
            return "write block.name, TAG.property or site.name"
        own = parts[near_owner]
        near = part if part in own else nearest(part, own)
        if near:
            return f"write {near_owner}.{near}, or add it"
        return f"take one of {near_owner}: {', '.join(own[:8])}; or add it"

    def part_fault(self, block: str, line: Line, name: Name, owner: str, part: str) -> CalcFault:
        """Refuse a part of a value that has none of that name."""
        statement = self.entries[f"{block}.{owner}"].statement
        quoted = line.quote(name.span)
        if isinstance(statement, Assignment) and isinstance(statement.value, MethodCall):
            results = [each.name for each in self.methods[statement.value.method].results]
            near = nearest(part, results)
            cure = f"did you mean {owner}.{near}?" if near else f"its results: {', '.join(results)}"
            text = f"`{quoted}` is no result of {statement.value.method}"
            return line.fault(Family.NAME, name.span, text, cure)
        text = f"`{quoted}` asks for a part of one value"
        return line.fault(
            Family.NAME, name.span, text, f"write {owner}, or give the part a name of its own"
        )
