"""All values of a handbook in one flat list, with how each is worked out and what it needs.

The first slot is the vessel's atmosphere, which every step between gauge and absolute uses. Each
slot knows which toleranced inputs lie anywhere upstream of it.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from garboard.calc.arithmetic import FLOATS, Closure, Slots
from garboard.calc.customary import shown_unit
from garboard.calc.evaluate import Program, build, work_out
from garboard.calc.fault import Line, Span
from garboard.calc.kinds import PRESSURE, absolute_of
from garboard.calc.show import show_number
from garboard.calc.tree import Node, Reference, is_whole, named_slots, reads_table, slots_of
from garboard.calc.units import Unit
from garboard.calc.value import Given, Value

__all__ = ["ATMOSPHERE", "STANDARD_ATMOSPHERE", "Formula", "Ledger", "Root", "Told", "are_whole"]

ATMOSPHERE = 0
"""The slot of the vessel's atmosphere."""
STANDARD_ATMOSPHERE = 101_325.0
"""Pa(a); taken where the vessel's conditions do not say."""


@dataclass(frozen=True, slots=True)
class Root:
    """An input with a tolerance."""

    slot: int
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Told:
    """What is said about a value, beside how it is worked out."""

    name: str
    """As its own line calls it."""
    line: Line
    label: str = ""
    """What it is."""
    written: str = ""
    """The statement as written."""
    unit: Unit | None = None
    """The unit asked for; None for the customary one."""
    shown: str = ""
    """How its source prints it, or its author typed it; empty to show it rounded."""
    digits: int = 3
    """Significant digits."""
    ends: tuple[float, float] | None = None
    """The ends of its tolerance, in SI."""


@dataclass(frozen=True, slots=True)
class Formula:
    """A value and how it is worked out."""

    key: str
    """Its address; for an inner step of a method the address of the call and the step's name."""
    slot: int
    node: Node
    told: Told
    unit: Unit
    """The unit it is shown in."""
    si: float
    text: str
    """As shown."""
    whole: bool
    """A count."""
    closure: Closure
    needs: frozenset[int]
    """The slots it is worked out from directly."""

    def reference(self, span: Span, name: str = "") -> Reference:
        """A reference to it."""
        text = name or self.told.name
        return Reference(self.node.type, span, self.slot, text, self.unit, self.whole)


class Ledger:
    """Slots and formulas, filled in the order in which they can be worked out."""

    def __init__(self, roots: Iterable[str] = ()) -> None:
        """Start with nothing but the standard atmosphere.

        Args:
            roots: Addresses of the inputs with a tolerance that may be entered, in the order in
                which their corners are gone through, whatever order they are entered in.
        """
        self.slots: Slots = [STANDARD_ATMOSPHERE]
        self.formulas: dict[int, Formula] = {}
        self.texts: dict[int, str] = {ATMOSPHERE: "101325 Pa(a)"}
        """As shown, by slot."""
        self.addresses: dict[int, str] = {}
        """Of values that have one, by slot."""
        self.bits = {address: bit for bit, address in enumerate(roots)}
        """Of each root: its place in a mask."""
        self.roots: dict[int, Root] = {}
        """By place in a mask."""
        self.inputs: dict[int, int] = {}
        """By slot of a toleranced input: its place in a mask."""
        self.upstream: list[int] = [0]
        """By slot: a bit for each root anywhere upstream of it, its own included."""
        self.depth: list[int] = [0]
        """By slot: how many lines stand between it and its toleranced inputs, one behind another."""
        self.tabled: set[int] = set()
        """Slots upstream of which a table is read at something uncertain: dear to look at."""
        self.assumed_atmosphere = True

    def add_given(self, given: Given) -> int:
        """Enter a value that a person wrote down outside the fences.

        Returns:
            Its slot.
        """
        slot = self.new_slot(given.si)
        if given.address == "site.atmosphere" and given.type == absolute_of(PRESSURE):
            self.slots.pop()
            self.upstream.pop()
            self.depth.pop()
            slot = ATMOSPHERE
            self.slots[slot] = given.si
            self.assumed_atmosphere = False
        self.texts[slot] = given.shown
        self.addresses[slot] = given.address
        self.add_root(given.address, slot, given.si, given.low, given.high)
        return slot

    def add_known(self, value: Value) -> int:
        """Enter a value that was worked out before and rests on no tolerance.

        Returns:
            Its slot.

        Raises:
            ValueError: It is not computed.
        """
        if value.si is None:
            raise ValueError(value.address)
        slot = self.new_slot(value.si)
        self.texts[slot] = value.text
        self.addresses[slot] = value.address
        return slot

    def new_slot(self, si: float) -> int:
        """A place for one more value."""
        self.slots.append(si)
        self.upstream.append(0)
        self.depth.append(0)
        return len(self.slots) - 1

    def add_root(self, key: str, slot: int, si: float, low: float, high: float) -> None:
        """Enter the tolerance of a value, if it has one."""
        if not low == si == high:
            bit = self.bits.setdefault(key, len(self.bits))
            self.upstream[slot] |= 1 << bit
            self.roots[bit] = Root(slot, low, high)
            self.inputs[slot] = bit

    def add(self, key: str, node: Node, told: Told) -> Formula:
        """Work one value out and enter it.

        Args:
            key: Its address, or that of an inner step.
            node: How it is worked out.
            told: What is said about it.

        Raises:
            CalcFault: It cannot be worked out.
        """
        closure = build(node, FLOATS)
        si = work_out(node, closure, self.slots, told.line)
        slot = self.new_slot(si)
        needs = slots_of(node)
        for need in needs:
            if self.upstream[need]:
                self.upstream[slot] |= self.upstream[need]
                self.depth[slot] = max(self.depth[slot], self.depth[need] + 1)
        if self.upstream[slot] and (not self.tabled.isdisjoint(needs) or reads_table(node)):
            self.tabled.add(slot)
        unit = told.unit or shown_unit(node, si)
        count = is_whole(node) or told.shown.isdecimal()
        whole = count and not unit.text and are_whole(*(told.ends or ()))
        text = told.shown
        if not text and isinstance(node, Reference) and told.unit is None:
            text = self.texts[node.slot]
        if not text:
            text = show_number(unit.from_si(si), told.digits, unit.text, whole=whole)
        formula = Formula(key, slot, node, told, unit, si, text, whole, closure, needs)
        self.formulas[slot] = formula
        self.texts[slot] = text
        if told.ends:
            self.add_root(key, slot, si, *told.ends)
        return formula

    def roots_of(self, mask: int) -> list[Root]:
        """The inputs of a mask."""
        found = []
        while mask:
            lowest = mask & -mask
            found.append(self.roots[lowest.bit_length() - 1])
            mask ^= lowest
        return found

    def address_of(self, slot: int) -> str:
        """The address of a value; of an inner step that of the call, and the step's name."""
        found = self.addresses.get(slot)
        return found if found is not None else self.formulas[slot].key

    def inner_cone(self, slots: Iterable[int], known: Collection[int] = ()) -> list[int]:
        """The slots that some values are worked out from, themselves included, in order."""
        found: set[int] = set()
        waiting = list(slots)
        while waiting:
            slot = waiting.pop()
            if slot not in found:
                found.add(slot)
                formula = None if slot in known else self.formulas.get(slot)
                waiting.extend(formula.needs if formula else ())
        return sorted(found)

    def moved_cone(self, slots: Iterable[int], known: Collection[int], mask: int) -> list[int]:
        """The slots to be worked out again when some inputs move, in order.

        Args:
            slots: The places of the values asked for.
            known: Places that are not worked out again, those of the inputs among them.
            mask: The inputs that move, a bit each; what rests on none of them stays as it is.
        """
        found: set[int] = set()
        waiting = list(slots)
        while waiting:
            slot = waiting.pop()
            if slot in found or slot in known or not self.upstream[slot] & mask:
                continue
            formula = self.formulas.get(slot)
            if formula:
                found.add(slot)
                waiting.extend(formula.needs)
        return sorted(found)

    def uses(self, slot: int) -> tuple[str, ...]:
        """The addresses that a value is worked out from directly, through inner steps.

        They come in the order in which the line names them, so that nothing elsewhere moves them.
        """
        found: dict[str, None] = {}
        formula = self.formulas.get(slot)
        waiting = named_slots(formula.node) if formula else []
        seen = set(waiting)
        for need in waiting:
            if need in self.addresses:
                found[self.addresses[need]] = None
                continue
            inner = self.formulas.get(need)
            fresh = [each for each in named_slots(inner.node) if each not in seen] if inner else []
            seen.update(fresh)
            waiting.extend(fresh)
        return tuple(found)

    def program(self, slots: Iterable[int], fixed: Iterable[int] = ()) -> Program:
        """The steps that work some values out.

        Args:
            slots: The places of the values.
            fixed: Places that are not worked out again.
        """
        known = set(fixed)
        cone = (slot for slot in self.inner_cone(slots, known) if slot not in known)
        return Program(
            tuple((slot, self.formulas[slot].closure) for slot in cone if slot in self.formulas)
        )


def are_whole(*values: float) -> bool:
    """Whether some values are all whole numbers.

    >>> are_whole(5.0, 7.0), are_whole(5.5)
    (True, False)
    """
    return all(value.is_integer() for value in values)
