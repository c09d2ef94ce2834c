"""What stands where: the state of every address while a handbook is worked out.

A fault stays where it is: what rests on a broken value is not computed and says why, everything
else is.
"""

from dataclasses import dataclass, replace

from garboard.calc.fault import Family, Line, fault
from garboard.calc.kinds import PRESSURE, absolute_of, words
from garboard.calc.ledger import ATMOSPHERE, Formula, Ledger, Told, are_whole
from garboard.calc.register import Register
from garboard.calc.syntax import Name
from garboard.calc.tree import Constant, Node, Reference, slots_of
from garboard.calc.units import read_unit
from garboard.calc.value import Given, Value
from garboard.errors import Diagnostic, Where

__all__ = ["FenceScope", "Inner", "RestsOn", "Standing", "rests_on"]

SITE_ATMOSPHERE = "site.atmosphere"


class RestsOn(Exception):  # noqa: N818 - named in words of the trade
    """A line uses a value that is not computed."""

    def __init__(self, name: str, where: Where, root: Diagnostic) -> None:
        super().__init__(name)
        self.name = name
        self.where = where
        self.root = root
        """The fault that it goes back to."""


class Standing:
    """Where every value stands, or why it does not."""

    def __init__(self, register: Register) -> None:
        self.register = register
        self.ledger = Ledger(register.directory.roots())
        self.slots: dict[str, int] = {}
        """Of everything that is worked out or given, by address."""
        self.broken: dict[str, Diagnostic] = {}
        """Why a line has no value, as told at that line; by address, or block and line number."""
        self.roots: dict[str, Diagnostic] = {}
        """The fault that a broken value goes back to."""
        self.absent: dict[str, str] = {}
        """Results of methods that are not worked out, and what it would take."""
        self.calls: dict[str, tuple[str, ...]] = {}
        """Calls of methods that give several results: the addresses of those."""
        self.known: dict[str, Value] = {}
        """Values that were worked out before and rest on no tolerance."""
        self.faults: list[Diagnostic] = []

    def enter(self, address: str, formula: Formula) -> None:
        """Note where a value stands."""
        self.slots[address] = formula.slot
        self.ledger.addresses[formula.slot] = address

    def enter_given(self, given: Given) -> None:
        """Enter a value that stands outside the fences."""
        if given.address == SITE_ATMOSPHERE and given.type != absolute_of(PRESSURE):
            text = f"{given.address} is {words(given.type)}, `{given.shown}`"
            cure = "give it counted from nothing, such as 1013 mbar(a)"
            found = fault(Family.DATUM, given.where, text, cure, "site").diagnostic
            self.faults.append(found)
            self.break_off(given.address, found, found)
            return
        self.slots[given.address] = self.ledger.add_given(given)

    def enter_known(self, value: Value) -> None:
        """Enter a value that was worked out before."""
        self.known[value.address] = value
        self.slots[value.address] = self.ledger.add_known(value)

    def break_off(self, address: str, told: Diagnostic, root: Diagnostic) -> None:
        """Note that a value, and every result under it, is not computed."""
        self.broken.setdefault(address, told)
        self.roots.setdefault(address, root)

    def check_atmosphere(self, node: Node, line: Line) -> None:
        """Stop where a value needs an atmosphere that is stated wrongly.

        Raises:
            RestsOn: It does.
        """
        if SITE_ATMOSPHERE in self.broken and ATMOSPHERE in slots_of(node):
            root = self.roots[SITE_ATMOSPHERE]
            raise RestsOn(SITE_ATMOSPHERE, line.at(node.span), root)

    def find(self, block: str, line: Line, name: Name) -> Node:
        """The value that a name in a block stands for.

        Raises:
            CalcFault: Nothing stands there.
            RestsOn: What stands there is not computed.
        """
        register = self.register
        address = register.address_of(block, name.text)
        owner = register.entry_of(address) or address
        if owner in self.broken:
            raise RestsOn(name.text, line.at(name.span), self.roots[owner])
        slot = self.slots.get(address)
        if slot is not None:
            formula = self.ledger.formulas.get(slot)
            if formula:
                return formula.reference(name.span, name.text)
            known = self.known.get(address)
            if known:
                return Reference(known.type, name.span, slot, name.text, known.unit, known.whole)
            given = register.givens[address]
            whole = not given.unit.text and are_whole(given.si, given.low, given.high)
            return Reference(given.type, name.span, slot, name.text, given.unit, whole)
        if address == SITE_ATMOSPHERE:
            kind = absolute_of(PRESSURE)
            return Reference(kind, name.span, ATMOSPHERE, name.text, read_unit("Pa(a)"))
        if address in self.absent:
            text = f"`{line.quote(name.span)}` is not worked out by its method"
            raise line.fault(Family.METHOD, name.span, text, self.absent[address])
        if owner in register.entries:
            self.refuse_bare_call(owner, line, name)
        raise register.unknown_fault(block, line, name)

    def refuse_bare_call(self, key: str, line: Line, name: Name) -> None:
        """Refuse the name of a call that has several results.

        Raises:
            CalcFault: It is one.
        """
        results = [address.rpartition(".")[2] for address in self.calls.get(key, ())]
        if results:
            text = f"`{line.quote(name.span)}` has several results"
            cure = f"say which: {', '.join(f'{name.text}.{each}' for each in results)}"
            raise line.fault(Family.METHOD, name.span, text, cure)


@dataclass(frozen=True, slots=True)
class FenceScope:
    """What names stand for in one fence."""

    standing: Standing
    block: str
    atmosphere: int = ATMOSPHERE

    def find(self, line: Line, name: Name) -> Node:
        """The value that a name stands for."""
        return self.standing.find(self.block, line, name)


@dataclass(frozen=True, slots=True)
class Inner:
    """Enters the inner steps of one line."""

    standing: Standing
    key: str
    digits: int

    def __call__(self, node: Node, told: Told) -> Formula:
        """Enter one step."""
        self.standing.check_atmosphere(node, told.line)
        typed = node.shown if isinstance(node, Constant) and told.unit is None else ""
        own = replace(told, shown=typed, digits=self.digits)
        return self.standing.ledger.add(f"{self.key} {told.name}", node, own)


def rests_on(found: RestsOn) -> Diagnostic:
    """The fault of a line as told at that line, when it lies elsewhere."""
    root = found.root
    text = f"`{found.name}` is not computed: {root.text}"
    return replace(root, where=found.where, text=text, help=f"mend {root.where} first")
