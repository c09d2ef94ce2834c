"""Copper for a two-wire cable by voltage drop, then by the current limit; the larger wins.

The drop protects the load and the current limit protects the wire, so no size is named until both
were looked at. Where the insulation is not stated its lowest column is taken. AWG and SAE wire of
the same number differ by a tenth in copper: the standard is asked for, and an SAE wire carries
the current of the AWG row whose copper it really has.

By hand: 10 A over 11 ft out and 10 ft back at 12 V and 3 percent: 10.75 x 10 x 21 / 0.36 = 6271
circular mils, so 12 AWG (6530), but 10 SAE (9343), because 12 SAE has only 5833. The drop along
12 AWG is 10.75 x 10 x 21 / 6530 = 0.3457 V.
"""

from collections.abc import Mapping
from typing import Final

from garboard.calc.method import (
    Answer,
    Argument,
    Contradiction,
    Grade,
    Limit,
    Parameter,
    Printed,
    Result,
    TableMethod,
)
from garboard.calc.units import read_unit
from garboard.errors import OutsideValidity
from garboard.methods.cable_current import COLUMNS_DEGC
from garboard.methods.cases.cable_size import DC_CABLE_SIZE
from garboard.methods.conductors import AREAS_CMIL, Conductor, Laying, smallest
from garboard.methods.figures import NEAR, Figure, number, required, word
from garboard.methods.publications import published

__all__ = ["DC_CABLE_SIZE_METHOD"]

_K: Final = Figure(10.75, "ohm.cmil/ft")
"""Copper near 29 degC."""
_WARM: Final = Figure(30, "degC")
_MORE, _EACH = 0.08, Figure(20, "K(d)")
"""Eight per cent more for every 20 K above 30 degC."""
_CRITICAL: Final = 0.03
_SUITS: Final = (
    "pumps, navigation lights, electronics, feeders and any other load",
    "no pump, navigation light, electronics or feeder",
)
"""What a drop up to that share is for, and one above it."""

_GUIDE, _CFR = "marine-wire-guide", "33cfr183.425"
_NO_STANDARD: Final = (
    "the conductor standard is not stated, and AWG and SAE areas of the same number differ"
)
_BOTH_WAYS: Final = "say out and back (run_out, run_back), or out and back added (L)"
_CURRENT: Final = "the current is missing"
_NO_SHARE: Final = "the share that may be lost is missing"
_CRANKING: Final = "a cranking circuit is not a continuous load"
_NO_CONDUCTOR: Final = (
    "say what is known of the conductor: its copper A, or its size and standard; or the drop that "
    "is allowed"
)
_Asked = Mapping[str, Argument]


def _loop(asked: _Asked) -> float:
    """Length out and back [m]."""
    whole, out, back = (number(asked, name) for name in ("L", "run_out", "run_back"))
    if whole is not None and out is None and back is None:
        return whole
    if whole is not None or out is None or back is None:
        raise OutsideValidity(_BOTH_WAYS)
    return out + back


def _copper(asked: _Asked) -> float:
    """Resistivity of the copper [ohm.m], higher where it is said to be warm."""
    at = number(asked, "T")
    above = 0.0 if at is None else max(at - _WARM.si, 0.0)
    return _K.si * (1 + _MORE * above / _EACH.si)


def _named(asked: _Asked) -> Conductor | None:
    """The conductor that the author names, if any."""
    if "size" not in asked:
        return None
    standard, size = word(asked, "standard", _NO_STANDARD), asked["size"].word
    if size not in AREAS_CMIL[standard]:
        raise OutsideValidity(f"no {standard} area is held for size {size}")
    return Conductor(standard, size)


def _laying(asked: _Asked) -> Laying:
    """How the conductor is laid; the lowest column where its insulation is not stated."""
    rating = number(asked, "insulation_rating")
    return Laying(
        Figure(COLUMNS_DEGC[0], "degC").si if rating is None else rating,
        asked["engine_space"].word == "yes",
        asked["separate"].word == "yes",
    )


def _allowed_drop(asked: _Asked) -> float:
    """Volts that may be lost."""
    volts = required(asked, "V", "the system voltage is missing")
    return volts * required(asked, "drop_fraction", _NO_SHARE)


class _Sum:
    """One call, worked out step by step."""

    def __init__(self, asked: _Asked) -> None:
        self.asked = asked
        self.results: dict[str, float] = {}
        self.words: dict[str, str] = {}
        self.rows: list[tuple[str, str, str]] = []
        self.notes: list[str] = []
        self.alarms: list[str] = []
        self.wire = _named(asked)
        self.area = number(asked, "A")

    def look_at_wire(self) -> None:
        """Copper of the conductor that is there already."""
        if self.wire is None:
            return
        if self.area is not None:
            raise OutsideValidity("say the conductor once: its size, or its copper A")
        self.area = self.wire.area
        self.results[f"{self.wire.standard.lower()}_area"] = self.wire.area
        self.rows.append((f"copper of {self.wire}", f"{self.wire.cmil} cmil", _GUIDE))

    def look_at_drop(self) -> None:
        """Copper needed, the conductor for it, and what is lost."""
        if not {"I", "L", "run_out", "run_back", "V", "drop_fraction"} & set(self.asked):
            return
        current, length = required(self.asked, "I", _CURRENT), _loop(self.asked)
        load = _copper(self.asked) * current * length
        if {"V", "drop_fraction"} & set(self.asked):
            needed = load / _allowed_drop(self.asked)
            self.results["area_cmil"] = needed
            self.show_area(current, length, needed)
            if self.area is None:
                self.choose(needed, current)
            else:
                self.compare(self.area, needed, current)
        if self.area is not None:
            self.results["drop"] = load / self.area
        elif not self.results:
            raise OutsideValidity(_NO_CONDUCTOR)

    def show_area(self, current: float, length: float, needed: float) -> None:
        """The row of the copper needed, and what it rests on."""
        feet, allowed = read_unit("ft").from_si(length), _allowed_drop(self.asked)
        worked = f"{_K} x {current:.4g} A x {feet:.4g} ft / {allowed:.4g} V"
        if _copper(self.asked) > _K.si:
            worked += f" x {_copper(self.asked) / _K.si:.4g} for warm copper"
        cmil = read_unit("cmil").from_si(needed)
        self.rows.append((worked, f"{cmil:.0f} cmil", _GUIDE))
        if "T" not in self.asked:
            self.notes.append("copper near 29 degC: give T where it runs warmer than 30 degC")
        share = required(self.asked, "drop_fraction", _NO_SHARE)
        self.words["suits"] = _SUITS[share > _CRITICAL * (1 + NEAR)]

    def choose(self, needed: float, current: float) -> None:
        """Name the smallest conductor that stands both the drop and the current."""
        if "standard" not in self.asked:
            self.notes.append(f"no size is named: {_NO_STANDARD}; say standard = AWG or SAE")
            return
        laid = _laying(self.asked)
        for_drop, for_current, chosen = smallest(self.asked["standard"].word, needed, current, laid)
        self.area = self.results["chosen_area"] = chosen.area
        self.words["size"] = str(chosen)
        self.rows.append(("smallest for the drop", f"{for_drop}, {for_drop.cmil} cmil", _GUIDE))
        self.rows.append(("smallest for the current", str(for_current), _CFR))
        self.show_limit(chosen, laid)

    def compare(self, area: float, needed: float, current: float) -> None:
        """Hold the conductor that is there against what is needed."""
        name = str(self.wire or f"{read_unit('mm2').from_si(area):.4g} mm2")
        if area < needed * (1 - NEAR):
            self.alarms.append(f"HOLD: {name} has less copper than the drop asks for")
        if self.wire is None:
            self.notes.append(f"current limit of {name} not checked: the drop protects no wire")
            return
        laid = _laying(self.asked)
        self.show_limit(self.wire, laid)
        if laid.carries(self.wire) < current * (1 - NEAR):
            self.alarms.append(f"HOLD: {name} may not carry {current:.4g} A")

    def show_limit(self, wire: Conductor, laid: Laying) -> None:
        """The row of the current limit."""
        row = f"current limit of {wire}, row {wire.row or 'not held'} AWG, {laid}"
        self.rows.append((row, f"{laid.carries(wire):g} A", _CFR))
        if "insulation_rating" not in self.asked:
            self.notes.append("insulation not stated: the lowest column is taken for the current")


def look_up(asked: _Asked) -> Answer:
    """Work out copper, size and drop, as far as the arguments reach."""
    if asked["circuit"].word == "cranking":
        raise OutsideValidity(_CRANKING)
    found = _Sum(asked)
    found.look_at_wire()
    found.look_at_drop()
    if not found.results:
        raise OutsideValidity(_CURRENT)
    return Answer(
        results=found.results,
        words=found.words,
        columns=("step", "result", "source"),
        rows=tuple(found.rows),
        notes=tuple(found.notes),
        alarms=tuple(found.alarms),
    )


DC_CABLE_SIZE_METHOD: Final = TableMethod(
    name="dc_cable_size",
    title="Size of a direct-current cable",
    purpose="Copper for pumps, lights and electronics by voltage drop, then checked against the "
    "current limit: the larger wins.",
    grade=Grade.B,
    parameters=(
        Parameter("I", "current", "A", missing=_CURRENT),
        Parameter("run_out", "length to the load", "ft", missing=_BOTH_WAYS),
        Parameter("run_back", "length back", "ft", missing=_BOTH_WAYS),
        Parameter("L", "length out and back, added", "ft", missing=_BOTH_WAYS),
        Parameter("V", "system voltage", "V"),
        Parameter(
            "drop_fraction",
            "share that may be lost: 3 % for pumps, navigation lights, electronics and feeders, "
            "10 % otherwise",
        ),
        Parameter(
            "standard",
            "standard of the conductor",
            words=tuple(AREAS_CMIL),
            missing=_NO_STANDARD,
        ),
        Parameter("size", "conductor already there", words=tuple(AREAS_CMIL["AWG"])),
        Parameter("A", "copper of the conductor already there", "mm2"),
        Parameter("T", "copper temperature", "degC"),
        Parameter(
            "insulation_rating",
            "insulation temperature rating, for the current limit; 60 degC where left out",
            "degC",
        ),
        Parameter(
            "engine_space",
            "whether it lies in the engine space",
            default="no",
            words=("yes", "no"),
        ),
        Parameter(
            "separate",
            "whether it is laid singly, not in a sheath",
            default="yes",
            words=("yes", "no"),
        ),
        Parameter(
            "circuit",
            "what it feeds",
            default="continuous",
            words=("continuous", "cranking"),
        ),
    ),
    results=(
        Result("area_cmil", "copper needed for the drop", "cmil"),
        Result("size", "conductor chosen, AWG or SAE"),
        Result("chosen_area", "copper of the conductor chosen", "mm2"),
        Result("drop", "voltage lost, out and back", "V"),
        Result("suits", "loads that this drop is for"),
        Result("awg_area", "copper of a gauge number, AWG", "cmil"),
        Result("sae_area", "copper of a gauge number, SAE", "cmil"),
    ),
    limits=(
        Limit("I > 0 A", _CURRENT),
        Limit("run_out > 0 ft", _BOTH_WAYS),
        Limit("run_back > 0 ft", _BOTH_WAYS),
        Limit("L > 0 ft", _BOTH_WAYS),
        Limit("A > 0 mm2", "the copper is missing"),
        Limit("V > 0 V", "the system voltage is missing"),
        Limit("V < 50 V", "at 50 V and above a qualified electrician sizes the cable"),
        Limit("drop_fraction > 0", "no cable is without a drop"),
        Limit("drop_fraction <= 0.1", "no more than 10 percent drop is held for any load"),
    ),
    valid=(
        "worked out as copper = 10.75 ohm.cmil/ft x I x L / (V x drop_fraction), with L out and "
        "back, and drop = 10.75 ohm.cmil/ft x I x L / copper",
        "copper, two wires, direct current, a continuous load; no cranking circuit",
        "copper near 29 degC; 8 percent is added for every 20 K above 30 degC where T is given",
        "no size is named without a look at the current limit of its insulation",
        "an SAE conductor is given the current of the AWG row whose copper it has",
        "a size in words is chosen on the figures as given: hand over the highest current",
        "a printed chart may name one size more at the margin: the heavier conductor is no mistake",
    ),
    sources=published(_GUIDE, "refrigeration-wire-note", _CFR, "definition", "house-rule"),
    caution="The fuse protects the wire; the drop protects the load. Both must pass. Battery "
    "short-circuit current is not in this sum.",
    deferral="Lithium batteries, chargers, inverters and anything above 50 V: maker and qualified "
    "electrician.",
    do_not=(
        "choose the breaking capacity of a fuse",
        "design lithium protection or shore power",
    ),
    proofs=DC_CABLE_SIZE,
    contradictions=(
        Contradiction(
            topic="copper for 10 A over 21 ft at 12 V and 3 percent",
            printed=(
                Printed("10 AWG", "a chart"),
                Printed("12 AWG", "the formula with AWG areas"),
                Printed("10 SAE", "the formula with SAE areas"),
            ),
            effect=("the chart is one size heavier at the margin; the conductor standard decides"),
            handbook="asks for the conductor standard, and keeps it with the cable",
            sources=("marine-wire-guide",),
        ),
    ),
    look_up=look_up,
)
