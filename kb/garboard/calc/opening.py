"""Open a block to its reader: which inputs, which steps follow them, and what cannot be followed.

A result whose table is read at an opened input is not followed, because the table is not in the
page. Where a table is read at some other toleranced input, or the core had to sample between the
corners, the result is followed and its range is not.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass

from garboard.calc.binding import Watch
from garboard.calc.fault import Span
from garboard.calc.field_range import open_input
from garboard.calc.ledger import Formula
from garboard.calc.page_program import PageProgram, Reach, looks_of
from garboard.calc.reckoner import Judged, Reckoner
from garboard.calc.sheet import Sheet, WorkedLine
from garboard.calc.show import show_number
from garboard.calc.spread import MOST_ROOTS, Spread
from garboard.calc.syntax import Assignment
from garboard.calc.tree import Held, slots_of
from garboard.calc.units import Unit, as_difference
from garboard.calc.what_if import Followed, Opened, Result, ShownIn, Steady, Warned, WhatIf

__all__ = ["open_block", "what_if_text"]


def what_if_text(reckoner: Reckoner, sheet: Sheet, spread: Spread) -> str:
    """The program of one block as JSON; empty where there is none."""
    found = open_block(reckoner, sheet, spread) if sheet.options.what_if else None
    return found.text if found else ""


def open_block(reckoner: Reckoner, sheet: Sheet, spread: Spread) -> WhatIf | None:
    """The program of one block.

    Args:
        reckoner: Everything worked out.
        sheet: The block, with the names it opens.
        spread: Ranges of the values of its ledger.

    Returns:
        None where the block opens nothing that is computed, or nothing in it rests on that.
    """
    opening = Opening(reckoner, sheet, spread)
    return opening.made() if opening.opened else None


@dataclass(frozen=True, slots=True)
class Requiring:
    """A requirement with its line."""

    line: WorkedLine
    judged: Judged

    @property
    def slots(self) -> tuple[int, int]:
        """Both sides."""
        return self.judged.left.slot, self.judged.right.slot


@dataclass(frozen=True, slots=True)
class Watching:
    """An alarm of a method, with the slots of the limits that its call stands under."""

    watch: Watch
    limits: tuple[int, ...]

    @property
    def slots(self) -> frozenset[int]:
        """What it is judged from."""
        return slots_of(self.watch.condition)


class Opening:
    """One block, opened."""

    def __init__(self, reckoner: Reckoner, sheet: Sheet, spread: Spread) -> None:
        self.reckoner = reckoner
        self.ledger = reckoner.ledger
        self.sheet = sheet
        self.spread = spread
        slots = reckoner.standing.slots
        worked, required = list(self.worked_out(slots)), list(self.required())
        ends = [*(one.slot for one in worked), *(slot for one in required for slot in one.slots)]
        self.opened = [
            one for one in self.opened_slots() if Reach(self.ledger, (one,)).any_of(ends)
        ]
        moved = Reach(self.ledger, self.opened)
        self.results = [one for one in worked if one.slot in moved]
        self.judged = [one for one in required if moved.any_of(one.slots)]
        self.watches = [one for one in self.watched() if moved.any_of(one.slots)]
        cone = self.ledger.inner_cone(
            (*ends, *(slot for one in self.watches for slot in one.slots))
        )
        self.lost = Reach(self.ledger, self.tables(cone, moved.any_of))
        """What rests on a table that is read at an opened input."""
        sampled = (slot for slot in cone if self.is_sampled(slot))
        self.uneven = Reach(self.ledger, (*self.tables(cone, self.is_uncertain), *sampled))
        """What has corners that the page cannot work out."""

    def opened_slots(self) -> Iterator[int]:
        """The slots of the opened inputs, in the order of the fence's option."""
        for name in dict.fromkeys(self.sheet.options.what_if):
            key = f"{self.sheet.name}.{name}"
            worked = self.reckoner.worked.get(key)
            formula = worked.formulas.get(key) if worked else None
            if formula and not formula.needs:
                yield formula.slot

    def worked_out(self, slots: Mapping[str, int]) -> Iterator[Formula]:
        """Everything that the block works out, results of methods among them."""
        for line in self.sheet.lines:
            for part in (line, *line.steps):
                slot = slots.get(part.value.address) if part.value else None
                formula = self.ledger.formulas.get(slot) if slot else None
                if formula and formula.needs:
                    yield formula

    def required(self) -> Iterator[Requiring]:
        """The requirements that are judged."""
        for line in self.sheet.lines:
            judged = self.reckoner.judged.get((self.sheet.name, line.where.line))
            if line.requirement and judged:
                yield Requiring(line, judged)

    def watched(self) -> Iterator[Watching]:
        """The alarms of the methods that the block calls."""
        for line in self.sheet.lines:
            worked = self.reckoner.worked.get(f"{self.sheet.name}.{line.name}")
            bound = worked.bound if worked else None
            for watch in bound.watches if bound else ():
                held = next(iter(bound.results.values()), None) if bound else None
                limits = held.limits if isinstance(held, Held) else ()
                yield Watching(watch, tuple(limit.slot for limit in limits))

    def tables(self, cone: Iterable[int], moves: Callable[[frozenset[int]], bool]) -> Iterator[int]:
        """The slots at which a table is read at something that moves."""
        for slot in cone:
            formula = self.ledger.formulas.get(slot)
            if formula and any(moves(slots_of(look)) for look in looks_of(formula.node)):
                yield slot

    def is_uncertain(self, slots: Iterable[int]) -> bool:
        """Whether a toleranced input lies upstream of one of some slots."""
        return any(self.ledger.upstream[slot] for slot in slots)

    def is_sampled(self, slot: int) -> bool:
        """Whether the core has to look between the corners of a value."""
        formula = self.ledger.formulas.get(slot)
        return formula is not None and self.spread.is_sampled(formula.reference(Span(0, 0)))

    def made(self) -> WhatIf:
        """The program."""
        roots = self.ledger.roots_of(self.uncertain())
        others = [root for root in roots if root.slot not in self.opened]
        cells = [*self.opened, *(root.slot for root in others)]
        program = PageProgram(self.ledger, cells)
        self.cells = {slot: cell for cell, slot in enumerate(cells)}
        for slot in self.ledger.inner_cone(self.followed()):
            program.cell(
                slot
            )  # in the core's order: of several reasons against a value the first counts
        results = tuple(self.result(one, program) for one in self.shown())
        requirements = tuple(self.requirement(one, program) for one in self.judged)
        alarms = tuple(self.alarms(program))
        return WhatIf(
            tuple(self.input(slot, program) for slot in self.opened),
            tuple(Steady(self.ledger.slots[one.slot], one.low, one.high) for one in others),
            tuple(self.cells[root.slot] for root in roots),
            tuple(program.steps),
            tuple(program.words),
            results,
            requirements,
            alarms,
        )

    def followed(self) -> Iterator[int]:
        """The slots of all that the page works out."""
        groups = [
            *((one.slot,) for one in self.shown()),
            *(one.slots for one in self.judged),
            *(tuple(sorted(one.slots)) for one in self.watches),
        ]
        for slots in groups:
            if not self.lost.any_of(slots):
                yield from slots

    def uncertain(self) -> int:
        """The toleranced inputs that some range in the page rests on, a bit each."""
        mask = 0
        for result in self.results:
            mask |= self.mask_of((result.slot,)) or 0
        for required in self.judged:
            mask |= self.mask_of(required.slots) or 0
        for watch in self.watches:
            mask |= self.mask_of(watch.slots) or 0
        return mask

    def mask_of(self, slots: Collection[int]) -> int | None:
        """The toleranced inputs upstream, a bit each; None where the range is not followed."""
        if self.lost.any_of(slots) or self.uneven.any_of(slots):
            return None
        mask = 0
        for slot in slots:
            mask |= self.ledger.upstream[slot]
        return mask if mask.bit_count() <= MOST_ROOTS else None

    def worst(self, slots: Collection[int]) -> tuple[int, ...] | None:
        """The cells of the toleranced inputs upstream; None where the range is not followed."""
        mask = self.mask_of(slots)
        return (
            None
            if mask is None
            else tuple(self.cells[one.slot] for one in self.ledger.roots_of(mask))
        )

    def shown(self) -> list[Formula]:
        """The results that the page lists: all, or on a card only what it was made for."""
        if not self.sheet.options.hide_working:
            return self.results
        answers = [one for one in self.results if self.is_answer(one)]
        named = [one for one in answers if "." not in one.told.name]
        return named or answers or self.results

    def is_answer(self, one: Formula) -> bool:
        """Whether something is required of a result, or nothing else in the block uses it."""
        address = self.ledger.addresses[one.slot]
        asked = {use for each in self.judged for use in self.ledger.uses(each.judged.left.slot)}
        used = {use for each in self.results for use in self.ledger.uses(each.slot)}
        return address in asked or address not in used

    def result(self, one: Formula, program: PageProgram) -> Result:
        """One result."""
        told, label = one.told, one.told.label
        if one.slot in self.lost:
            return Result(told.name, label, None)
        plain = show_number(one.unit.from_si(one.si), told.digits, one.unit.text, whole=one.whole)
        printed = one.text != plain
        return Result(
            told.name,
            label,
            program.cell(one.slot),
            shown_in(one.unit),
            told.digits,
            one.whole,
            one.si if printed else None,
            one.text if printed else "",
            self.is_answer(one),
            self.worst((one.slot,)),
        )

    def requirement(self, one: Requiring, program: PageProgram) -> Followed:
        """One requirement."""
        left, right = one.judged.left, one.judged.right
        text = one.line.requirement.text if one.line.requirement else ""
        sign = one.judged.comparison.sign
        if self.lost.any_of(one.slots):
            return Followed(text, one.line.label, sign, None)
        apart = as_difference(left.unit)
        return Followed(
            text,
            one.line.label,
            sign,
            program.cell(left.slot),
            program.cell(right.slot),
            shown_in(left.unit),
            (apart.text, apart.scale),
            left.told.digits,
            (left.whole, right.whole),
            self.worst(one.slots),
        )

    def alarms(self, program: PageProgram) -> Iterator[Warned]:
        """The alarms that the page can follow."""
        for one in self.watches:
            if self.lost.any_of(one.slots):
                continue
            condition = program.compared(one.watch.condition)
            limits = [program.cell(slot) for slot in one.limits if slot in program.moved]
            yield Warned(one.watch.text, condition, tuple(limits), self.worst(one.slots))

    def input(self, slot: int, program: PageProgram) -> Opened:
        """An opened input with its field."""
        formula = self.ledger.formulas[slot]
        entry = self.reckoner.register.entries[formula.key]
        statement = entry.statement
        tolerance = statement.tolerance if isinstance(statement, Assignment) else None
        bounds = program.bounds(self.opened.index(slot))
        return open_input(formula, tolerance, self.ledger.slots[0], bounds)


def shown_in(unit: Unit) -> ShownIn:
    """A unit as the page is told it."""
    return unit.text, unit.scale, unit.shift
