"""What every name in a handbook stands for, told without reading a fence a second time.

A short name belongs to its own fence. `x.power` is a result of the method that the same fence calls
for `x`; any other dotted name is an address in the handbook.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from garboard.calc.body import names_in, read_body, read_condition, read_default
from garboard.calc.draft import Draft, Entry
from garboard.calc.fault import CalcFault
from garboard.calc.method import FormulaMethod, Method
from garboard.calc.syntax import Assignment, MethodCall, Name, Requiring
from garboard.calc.value import Given

__all__ = ["Card", "Directory", "card_of", "names_of"]


@dataclass(frozen=True, slots=True)
class Card:
    """What a fence sets and what it asks of others."""

    sets: tuple[tuple[str, tuple[str, ...]], ...]
    """Each name it sets, with the results of the method that is called for it."""
    asks: tuple[str, ...]
    """The dotted names it uses, each once, in the order in which they are met."""
    toleranced: tuple[str, ...]
    """Names that are given a tolerance."""


class Directory:
    """Every address of a handbook, and who sets it."""

    def __init__(
        self,
        cards: Mapping[str, Card],
        givens: Mapping[str, Given],
        aliases: Mapping[str, str],
    ) -> None:
        self.cards = cards
        self.givens = givens
        self.aliases = aliases
        self.lines: dict[str, tuple[str, ...]] = {}
        """Address of each line, with the results of its call."""
        for block, card in cards.items():
            for name, results in card.sets:
                self.lines.setdefault(f"{block}.{name}", results)

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
        if address in self.lines:
            return address
        call, _, result = address.rpartition(".")
        return call if result in self.lines.get(call, ()) else None

    def block_of(self, address: str) -> str | None:
        """The block that sets an address, or has a line at it that cannot be read."""
        block = address.partition(".")[0]
        return block if block in self.cards else None

    def asked(self, block: str) -> Iterator[tuple[str, str]]:
        """The dotted names that a block uses, each with the address it stands for."""
        for text in self.cards[block].asks:
            yield text, self.address_of(block, text)

    def roots(self) -> list[str]:
        """Every address with a tolerance of its own, in an order that nothing else can change."""
        found = [
            given.address
            for given in self.givens.values()
            if not given.low == given.si == given.high
        ]
        for block, card in self.cards.items():
            found += (f"{block}.{name}" for name in card.toleranced)
        return sorted(found)


def card_of(draft: Draft, methods: Mapping[str, Method]) -> Card:
    """The card of a fence.

    Args:
        draft: The fence, read.
        methods: The bundled methods by name.
    """
    sets: dict[str, tuple[str, ...]] = {}
    asks: dict[str, None] = {}
    toleranced = []
    for entry in draft.entries:
        asks.update((name.text, None) for name in names_of(entry, methods) if "." in name.text)
        statement = entry.statement
        if isinstance(statement, Assignment):
            if isinstance(statement.value, MethodCall):
                asks.update(dict.fromkeys(inner_names(methods[statement.value.method])))
            sets.setdefault(statement.name, results_of(statement, methods))
            if statement.tolerance:
                toleranced.append(statement.name)
    return Card(tuple(sets.items()), tuple(asks), tuple(toleranced))


def results_of(statement: Assignment, methods: Mapping[str, Method]) -> tuple[str, ...]:
    """The results of the method that a line calls."""
    value = statement.value
    if not isinstance(value, MethodCall) or value.method not in methods:
        return ()
    return tuple(each.name for each in methods[value.method].results)


def names_of(entry: Entry, methods: Mapping[str, Method]) -> Iterator[Name]:
    """The names a line uses, and those that defaults of its method use."""
    statement = entry.statement
    if isinstance(statement, Requiring):
        yield from names_in(statement.comparison)
        return
    yield from names_in(statement.value)
    if isinstance(statement.value, MethodCall):
        call = statement.value
        given: Collection[str] = {each.name for each in call.arguments}
        for parameter in methods[call.method].parameters:
            if parameter.name not in given and "." in (parameter.default or ""):
                yield from default_names(call, parameter.name, parameter.default or "")


def default_names(call: MethodCall, name: str, text: str) -> Iterator[Name]:
    """The addresses in the default of a parameter, placed at the call."""
    try:
        found = read_default(call.method, name, text)
    except CalcFault:
        return
    for each in sorted(found.names):
        if "." in each:
            yield Name(call.name_span, each)


def inner_names(method: Method) -> Iterator[str]:
    """The addresses that a method uses by itself, in its body, limits and alarms."""
    conditions = [limit.holds for limit in method.limits]
    names: list[Collection[str]] = []
    try:
        if isinstance(method, FormulaMethod):
            conditions += (alarm.when for alarm in method.alarms)
            names += (line.names for line in read_body(method.name, method.body).values())
        names += (read_condition(method.name, text).names for text in conditions)
    except CalcFault:  # the call says so at its own place
        return
    for found in names:
        yield from (name for name in sorted(found) if "." in name)
