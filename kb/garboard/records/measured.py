"""What was measured of a quantity that has a design value, and how each reading stands against it.

A reading is of a quantity by its address, `SA-RV-001.set`, or by the tag of a part, whose setting or
normal value is meant. It is held against the tolerance of the design value and against every `require`
line that names the quantity. Readings of a test that was superseded, withdrawn or made void say nothing.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from garboard.calc.value import Value
from garboard.names import is_tag
from garboard.records.calibration import Calibration, calibration_of
from garboard.records.change import Change
from garboard.records.component import Component
from garboard.records.demand import Demand
from garboard.records.figure import Figure, figure_of, within_tolerance
from garboard.records.finding import Finding
from garboard.records.inspection import Reading, Test
from garboard.records.installed import changes_of_value, last_since
from garboard.records.standing import has_left, is_live, refused
from garboard.records.vessel import Instrument

__all__ = ["Measurement", "Plant", "measurements_of", "value_source"]


@dataclass(frozen=True, slots=True)
class Measurement:
    """One reading of a quantity that has a design value."""

    address: str
    """Of the quantity, where its value is given or worked out."""
    named: str
    """The address that the reading is of, which may be drawn from that one."""
    test: Test
    number: int
    """Its place among the readings of the test."""
    si: float
    text: str
    """As read."""
    calibration: Calibration
    """Of the instrument, on the day."""
    inside: bool
    """Within the tolerance of the design value."""
    broken: tuple[Demand, ...] = ()
    """What is demanded of the quantity, and does not hold at this reading."""
    moved: Change | None = None
    """What gave the quantity another value after the day: the reading was of the old one."""
    finding: Finding | None = None
    """What says so, where it is out."""

    @property
    def on(self) -> date | None:
        """The day it was read."""
        return self.test.on

    @property
    def reading(self) -> Reading:
        """As the record has it."""
        return self.test.readings[self.number]

    @property
    def out(self) -> bool:
        """Whether it contradicts what the book says now."""
        return self.moved is None and (not self.inside or bool(self.broken))


@dataclass(frozen=True, slots=True)
class Plant:
    """What readings are held against."""

    values: Mapping[str, Value]
    components: Mapping[str, Component]
    instruments: Mapping[str, Instrument]
    demands: Mapping[str, tuple[Demand, ...]]
    """By the address where the quantity has its value."""
    changes: tuple[Change, ...]
    findings: tuple[Finding, ...]
    named_by: Callable[[str], frozenset[str]]
    """Everything that a record names."""


def value_source(components: Mapping[str, Component], address: str) -> str:
    """Where a property that is drawn from elsewhere has its value.

    Args:
        components: By tag.
        address: Of any value.
    """
    seen = {address}
    while True:
        tag, _, name = address.partition(".")
        part = components.get(tag)
        drawn = dict(part.aliases()).get(name) if part else None
        if drawn is None or drawn in seen:
            return address
        seen.add(drawn)
        address = str(drawn)


def measurements_of(tests: Iterable[Test], plant: Plant) -> Mapping[str, tuple[Measurement, ...]]:
    """Every reading of a quantity that has a design value.

    Args:
        tests: Records of tests.
        plant: What they are held against.

    Returns:
        By address of the quantity, oldest first; undated ones before all others.
    """
    found: dict[str, list[Measurement]] = defaultdict(list)
    for test in tests:
        for number, reading in enumerate(() if has_left(test) else test.readings):
            figure = figure_of(plant.values, reading.value)
            design = _design(plant.values, reading.of, figure) if figure else None
            if figure and design:
                one = _held_against(plant, test, number, design, figure)
                found[one.address].append(one)
    return {address: tuple(sorted(them, key=_order)) for address, them in found.items()}


def _order(one: Measurement) -> tuple[date, str, int]:
    return one.on or date.min, str(one.test.id), one.number


def _design(values: Mapping[str, Value], of: str, figure: Figure) -> Value | None:
    """The value that a reading is of: the one it names, or the setting of its component."""
    names = (f"{of}.set", f"{of}.normal") if is_tag(of) else (of,)
    found = (values.get(name) for name in names)
    return next((value for value in found if value and value.type == figure.type), None)


def _held_against(
    plant: Plant, test: Test, number: int, design: Value, figure: Figure
) -> Measurement:
    reading, source = test.readings[number], value_source(plant.components, design.address)
    names = {design.address, source}
    dated = [one for name in sorted(names) for one in changes_of_value(plant.changes, name)]
    newest = last_since(sorted(dated, key=lambda one: one[0]), test.on) if test.on else None
    inside = within_tolerance(design, figure)
    broken = tuple(one for one in plant.demands.get(source, ()) if not one.holds(figure.si))
    one = Measurement(
        source,
        design.address,
        test,
        number,
        figure.si,
        figure.text,
        calibration_of(reading.instrument, test.on, plant.instruments, plant.components),
        inside,
        broken,
        newest[1] if newest else None,
    )
    return replace(one, finding=_finding(plant, test, names)) if one.out else one


def _finding(plant: Plant, test: Test, names: set[str]) -> Finding | None:
    """The finding that names the test, or an open or later one that names the component."""
    owners = {name.partition(".")[0] for name in names}
    for finding in plant.findings:
        if refused(finding) or finding.id is None:
            continue
        named = plant.named_by(str(finding.id))
        day = finding.found.on if finding.found else None
        recent = is_live(finding) or bool(day and test.on and day >= test.on)
        if test.id in named or (recent and owners & named):
            return finding
    return None
