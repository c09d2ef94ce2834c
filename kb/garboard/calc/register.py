"""The register of all names: which line sets a value, and what a name in a line stands for.

A short name belongs to its own fence. `x.power` is a result of the method that the same fence calls
for `x`; any other dotted name is an address in the handbook.
"""

from collections.abc import Iterable, Iterator, Mapping

from garboard.calc.body import names_in, read_default
from garboard.calc.draft import Draft, Entry
from garboard.calc.fault import CalcFault, Family, Line
from garboard.calc.functions import FUNCTIONS
from garboard.calc.method import Method
from garboard.calc.syntax import Assignment, MethodCall, Name, Requiring
from garboard.calc.value import Given
from garboard.errors import Where
from garboard.names import nearest

__all__ = ["Register"]


class Register:
    """Every name that can be referred to."""

    def __init__(
        self,
        drafts: Iterable[Draft],
        givens: Mapping[str, Given],
        methods: Mapping[str, Method],
        aliases: Mapping[str, str],
    ) -> None:
        self.drafts = {draft.fence.name: draft for draft in drafts}
        self.givens = givens
        self.methods = methods
        self.aliases = aliases
        self.entries: dict[str, Entry] = {}
        for block, draft in self.drafts.items():
            for entry in draft.entries:
                if isinstance(entry.statement, Assignment):
                    self.entries.setdefault(f"{block}.{entry.statement.name}", entry)

    def address_of(self, block: str, text: str) -> str:
        """The address that a name in a block stands for, whether or not anything stands there."""
        own = f"{block}.{text}"
        if "." not in text:
            return own
        if self.entry_of(own):
            return own
        if self.exists(text):
            return text
        if text in self.aliases:
            return self.aliases[text]
        owner, _, rest = text.partition(".")
        return f"{self.aliases[owner]}.{rest}" if owner in self.aliases else text

    def exists(self, address: str) -> bool:
        """Whether something stands at an address, broken or not."""
        return address in self.givens or self.entry_of(address) is not None

    def entry_of(self, address: str) -> str | None:
        """The key of the line that sets a value: its address, or that of the call it comes from."""
        if address in self.entries:
            return address
        call, _, result = address.rpartition(".")
        entry = self.entries.get(call)
        if entry is None or not isinstance(entry.statement, Assignment):
            return None
        value = entry.statement.value
        if not isinstance(value, MethodCall) or value.method not in self.methods:
            return None
        results = self.methods[value.method].results
        return call if any(each.name == result for each in results) else None

    def names(self, entry: Entry) -> Iterator[Name]:
        """The names a line uses, and those that defaults of its method use."""
        statement = entry.statement
        if isinstance(statement, Requiring):
            yield from names_in(statement.comparison)
            return
        yield from names_in(statement.value)
        if isinstance(statement.value, MethodCall):
            call = statement.value
            given = {each.name for each in call.arguments}
            for parameter in self.methods[call.method].parameters:
                if parameter.name not in given and "." in (parameter.default or ""):
                    yield from self.default_names(call, parameter.name, parameter.default or "")

    def default_names(self, call: MethodCall, name: str, text: str) -> Iterator[Name]:
        """The addresses in the default of a parameter, placed at the call."""
        try:
            found = read_default(call.method, name, text)
        except CalcFault:
            return
        for each in sorted(found.names):
            if "." in each:
                yield Name(call.name_span, each)

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
        for address in (*self.entries, *self.givens):
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
