"""Whether a stamped relief valve covers all that can pump into a receiver at once.

Four questions, and each of them stops: is the stamped capacity below the free air of all
compressors together, is the valve set above the rating, may the pressure pass 110 percent of the
rating while it relieves, can anything between receiver and valve be closed. The bore of a valve is
no capacity. The area is a figure of plausibility for a choked gas, never a choice of a valve.

By hand: 70 m3(n)/h stamped against 29.6 from one compressor, set to 32 bar(g) under a rating of
33: covers; it may reach 1.1 x 33 = 36.3 bar(g), 110 percent of the reading. One cubic metre a
minute of air at 20 degC is 72.2 kg/h; with 30 bar(g), 10 percent over, 60 degC and Kd 0.975 it
asks for 159.3 lb/h / (356.1 x 0.975 x 493.3 psi(a)) x sqrt(599.7 / 28.96) = 0.00423 inch2, which
is 2.73 mm2.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from garboard.calc.method import Answer, Argument, Grade, Limit, Parameter, Result, TableMethod
from garboard.calc.units import read_unit
from garboard.errors import OutsideValidity
from garboard.methods.cases.relief import RELIEF_CAPACITY_CHECK
from garboard.methods.figures import NEAR, Figure, number, required, word
from garboard.methods.publications import published
from garboard.methods.relief_area import (
    NO_FLOW,
    NO_KD,
    NO_OVERPRESSURE,
    NO_SETTING,
    NO_TEMPERATURE,
    plausible_area,
)

__all__ = ["RELIEF_CAPACITY_CHECK_METHOD"]

_OVER: Final = 1.1
"""Of the rating: the highest reading while the valve relieves."""
_LARGE: Final = Figure(2000, "gal_us")
_LARGE_VALVES: Final = 2
_SMALLER_SHARE: Final = 0.5
"""California, Title 8, section 465: above this water volume two valves, and the smaller of them
not below this share of the larger."""

_CAPACITY, _SET, _OREGON = "29cfr1917.155", "30cfr57.13011", "oar-437-004-1505"
_CALIFORNIA, _AREA = "cal-t8-465", "api-520-1"
_NO_STAMP: Final = "no stamped capacity: bore is not capacity"
_NO_COMPRESSORS: Final = "name the free air of every compressor that can run together"
_NO_RATING: Final = "the lowest rating that the valve protects is missing"
_NO_LAYOUT: Final = "say valve_between = yes or no: trace the pipe from receiver to valve"
_Asked = Mapping[str, Argument]


@dataclass(frozen=True, slots=True)
class _Finding:
    """One question, its answer, and the words to stop with."""

    asks: str
    found: str
    source: str
    stops: str = ""

    @property
    def cells(self) -> tuple[str, str, str, str]:
        """The row as it is shown."""
        return self.asks, self.found, "stop" if self.stops else "holds", self.source


def _refuse_other_cases(asked: _Asked) -> None:
    if asked["service"].word != "air":
        raise OutsideValidity("liquid, two-phase and fire cases are not automated")
    if "bore" in asked:
        raise OutsideValidity("bore is not capacity: give the stamped capacity, and no bore")


def _air(si: float) -> str:
    """A flow of free air as it is shown."""
    return f"{read_unit('m3(n)/h').from_si(si):.4g} m3(n)/h"


def _bar(si: float) -> str:
    """A reading as it is shown."""
    return f"{read_unit('bar(g)').from_si(si):.4g} bar(g)"


def _together(asked: _Asked) -> float:
    """Free air of all compressors that can run together [m3(n)/s]."""
    if "compressors" not in asked:
        raise OutsideValidity(_NO_COMPRESSORS)
    found = asked["compressors"].items
    if any(each <= 0 for each in found):
        raise OutsideValidity("a compressor in the list delivers nothing")
    return sum(found)


def _capacity(asked: _Asked, together: float) -> _Finding:
    stamped = required(asked, "stamped", _NO_STAMP)
    short = stamped < together * (1 - NEAR)
    return _Finding(
        "stamped capacity against all compressors together",
        f"{_air(stamped)} against {_air(together)}",
        _CAPACITY,
        "STOP: the stamped capacity is below all compressors together" if short else "",
    )


def _setting(asked: _Asked, mawp: float) -> _Finding:
    setting = required(asked, "setting", NO_SETTING)
    above = setting > mawp * (1 + NEAR)
    return _Finding(
        "setting against the lowest rating protected",
        f"{_bar(setting)} against {_bar(mawp)}",
        _SET,
        "STOP: the valve is set above the rating" if above else "",
    )


def _relieving(asked: _Asked, mawp: float) -> _Finding | None:
    overpressure = number(asked, "overpressure")
    if overpressure is None:
        return None
    highest = required(asked, "setting", NO_SETTING) * (1 + overpressure)
    above = highest > _OVER * mawp * (1 + NEAR)
    return _Finding(
        "highest pressure while relieving against 110 percent of the rating",
        f"{_bar(highest)} against {_bar(_OVER * mawp)}",
        _SET,
        "STOP: the pressure passes 110 percent of the rating" if above else "",
    )


def _layout(asked: _Asked) -> _Finding:
    between = word(asked, "valve_between", _NO_LAYOUT) == "yes"
    return _Finding(
        "part that can be closed between receiver and valve",
        "yes" if between else "none",
        _OREGON,
        "STOP: a part between receiver and valve can be closed" if between else "",
    )


def _large_receiver(asked: _Asked) -> tuple[str, ...]:
    """What California asks of a large receiver; empty where it asks nothing or it is done."""
    volume, valves = number(asked, "water_volume"), number(asked, "valves")
    if volume is None or volume <= _LARGE.si * (1 + NEAR):
        return ()
    if valves is None or valves < _LARGE_VALVES * (1 - NEAR):
        return (f"HOLD: California asks for {_LARGE_VALVES} valves above {_LARGE} of water volume",)
    share = number(asked, "smaller_share")
    if share is None or share < _SMALLER_SHARE * (1 - NEAR):
        return (f"HOLD: California asks for {_SMALLER_SHARE:.0%} in the smaller of the valves",)
    return ()


def _verdict(asked: _Asked) -> tuple[list[_Finding], dict[str, float]]:
    """The four questions, and the capacity in numbers."""
    together, mawp = _together(asked), required(asked, "mawp", _NO_RATING)
    found = [_capacity(asked, together), _setting(asked, mawp), _layout(asked)]
    relieving = _relieving(asked, mawp)
    margin = required(asked, "stamped", _NO_STAMP) - together
    numbers = {"together": together, "margin": margin}
    return [*found, *([relieving] if relieving else [])], numbers


def look_up(asked: _Asked) -> Answer:
    """Ask the four questions where a valve is given, and work the area out where a flow is."""
    _refuse_other_cases(asked)
    results: dict[str, float] = {}
    found: list[_Finding] = []
    judged = bool({"stamped", "compressors", "valve_between"} & set(asked))
    judged = judged or {"setting", "mawp"} <= set(asked)
    mawp = number(asked, "mawp")
    if mawp is not None:
        results["p_max"] = _OVER * mawp
    if judged:
        found, numbers = _verdict(asked)
        results |= numbers
    if {"W", "q", "Kd"} & set(asked):
        results["area"] = plausible_area(asked)
    if not results:
        raise OutsideValidity(_NO_STAMP)
    stops = tuple(each.stops for each in found if each.stops)
    return Answer(
        results=results,
        words={"verdict": "stop" if stops else "covers"} if judged else {},
        columns=("asks", "found", "stands", "source"),
        rows=tuple(each.cells for each in found),
        notes=("the area is a figure of plausibility: it chooses no valve",)
        if "area" in results
        else (),
        alarms=stops + _large_receiver(asked),
    )


RELIEF_CAPACITY_CHECK_METHOD: Final = TableMethod(
    name="relief_capacity_check",
    title="Relief capacity of an air receiver",
    purpose="Check that the stamped relief capacity covers everything that can pump into the "
    "receiver, at a setting that protects it.",
    grade=Grade.A,
    parameters=(
        Parameter("stamped", "certified capacity on the valve", "m3(n)/h", missing=_NO_STAMP),
        Parameter(
            "compressors",
            "free air of every compressor that can run together, a list",
            "m3(n)/h",
            listed=True,
            missing=_NO_COMPRESSORS,
        ),
        Parameter("setting", "set pressure", "bar(g)", missing=NO_SETTING),
        Parameter("mawp", "lowest rating protected", "bar(g)", missing=_NO_RATING),
        Parameter(
            "valve_between",
            "whether a part between receiver and valve can be closed",
            words=("yes", "no"),
            missing=_NO_LAYOUT,
        ),
        Parameter("water_volume", "water volume of the receiver", "L"),
        Parameter("valves", "number of relief valves"),
        Parameter("smaller_share", "capacity of the smaller valve as a share of the larger"),
        Parameter("overpressure", "share above the setting", missing=NO_OVERPRESSURE),
        Parameter("W", "mass flow to be relieved", "kg/h", missing=NO_FLOW),
        Parameter("q", "free air to be relieved", "m3(n)/min", missing=NO_FLOW),
        Parameter("T", "temperature while relieving", "K(a)", missing=NO_TEMPERATURE),
        Parameter("Kd", "discharge coefficient", missing=NO_KD),
        Parameter("P1", "relieving pressure; from setting and overpressure if left out", "kPa(a)"),
        Parameter("P2", "back pressure; the barometer if left out", "kPa(a)"),
        Parameter("Z", "compressibility; 1 if left out"),
        Parameter("M", "molar mass; air if left out", "g/mol"),
        Parameter("k", "ratio of specific heats; air, 1.4, if left out"),
        Parameter("Kb", "correction for back pressure; 1 if left out"),
        Parameter("Kc", "correction for a bursting disc; 1 if left out"),
        Parameter("bore", "bore of the valve, never accepted as capacity", "mm"),
        Parameter(
            "service",
            "what has to be relieved",
            default="air",
            words=("air", "liquid", "two_phase", "fire"),
        ),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(
        Result("verdict", "covers or stop"),
        Result("together", "free air of all compressors together", "m3(n)/h"),
        Result("margin", "relief capacity to spare, above all compressors", "m3(n)/h"),
        Result("p_max", "highest pressure allowed while relieving", "bar(g)"),
        Result("area", "plausibility area", "mm2"),
    ),
    limits=(
        Limit("stamped > 0 m3(n)/h", _NO_STAMP),
        Limit("setting > 0 bar(g)", NO_SETTING),
        Limit("mawp > 0 bar(g)", _NO_RATING),
        Limit("valves >= 1", "a receiver without a relief valve holds no pressure"),
        Limit("overpressure >= 0", "a share above the setting is not negative"),
        Limit("W > 0 kg/h", NO_FLOW),
        Limit("q > 0 m3(n)/min", NO_FLOW),
        Limit("T > 0 K(a)", NO_TEMPERATURE),
        Limit("P1 > 0 kPa(a)", "the relieving pressure is missing"),
        Limit("Kd > 0", NO_KD),
        Limit("Kd <= 1", "a discharge coefficient is not above 1"),
        Limit("k > 1", "a ratio of specific heats is above 1"),
        Limit("Z > 0", "the compressibility is missing"),
        Limit("M > 0 g/mol", "the molar mass is missing"),
        Limit("Kb > 0", "a correction is above nothing"),
        Limit("Kc > 0", "a correction is above nothing"),
    ),
    valid=(
        "worked out as p_max = 1.10 x mawp, and area = W / (C x Kd x Kb x Kc x P1) x sqrt(T x Z / M) "
        "with C = 520 x sqrt(k x (2 / (k + 1))^((k + 1) / (k - 1))), in lb/h, psi(a), degR(a), "
        "lb/lbmol and inch2",
        "air, choked, short inlet pipe, free vent",
        "capacity and delivery are amounts of free air: one without its reference state is "
        "refused by the language itself",
        "two valves on a large receiver are a rule of California; other places have their own",
        "the verdict is that of the figures as given; an alarm sounds at the worst corner too",
    ),
    sources=published(
        _CAPACITY, _SET, _CALIFORNIA, "wac-296-56-60241", _OREGON, _AREA, "definition"
    ),
    caution="Use the stamped certified capacity; the area is a plausibility figure. Setting and "
    "sealing are done by an authorised shop.",
    deferral="Authorised relief valve shop; class or the certifying authority.",
    do_not=("choose or set a relief valve", "size for fire", "compare bore with capacity"),
    proofs=RELIEF_CAPACITY_CHECK,
    look_up=look_up,
)
