"""Whether a part that can close stands between a vessel and what must always see it: the strict view.

Counted on the pipe, one number for each way from the vessel to the device: stop valves, cocks, check
valves, quick couplings, filters with valves of their own, locked valves and three-way cocks all close.
It passes only where one way holds none; two valves in parallel can both be shut. What the list of
connections says of the same sensor stands on the page of its system and grades finer.

By hand: a switch behind one stop valve, `ways = [1]`, can be cut off; straight on the receiver, `[0]`, it
cannot; behind two valves side by side, `[1, 1]`, it can, though neither does it alone.
"""

from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Answer, Argument, Grade, Limit, Parameter, Result, TableMethod
from garboard.errors import OutsideValidity
from garboard.methods.cases.sensing_line import SENSING_LINE_CUT_OFF
from garboard.methods.figures import number, word
from garboard.methods.publications import published

__all__ = ["SENSING_LINE_CUT_OFF_METHOD"]

_NO_DEVICE: Final = "say what must see the vessel: relief, gauge, switch or alarm"
_NO_WAY: Final = "it cannot be traced: give one number for each way from the vessel to the device"
_NO_TRACE: Final = "say line = traced, after walking every way with a hand on every fitting"
_STOPS: Final = {
    "relief": "STOP: a part can close between the vessel and its relief valve",
    "gauge": "HOLD: a part can close between the vessel and its gauge",
    "switch": "HOLD: a part can close between the vessel and its switch",
    "alarm": "HOLD: a part can close between the vessel and its alarm",
}
_REVIEWER: Final = (
    "a locked valve or a three-way cock is not passed here: a named reviewer decides and signs"
)


def _ways(asked: Mapping[str, Argument]) -> tuple[float, ...]:
    if "ways" not in asked or not asked["ways"].items:
        raise OutsideValidity(_NO_WAY)
    ways = asked["ways"].items
    if any(count < 0 or count != int(count) for count in ways):
        raise OutsideValidity("a way holds a whole number of parts: 0, 1, 2")
    return ways


def look_up(asked: Mapping[str, Argument]) -> Answer:
    """Judge the way that holds the fewest parts that can close."""
    device = word(asked, "device", _NO_DEVICE)
    word(asked, "line", _NO_TRACE)
    ways = _ways(asked)
    least, locked = min(ways), number(asked, "locked") or 0
    if locked > sum(ways):
        raise OutsideValidity("more locked valves and three-way cocks than parts that can close")
    passes = least == 0
    results = {"closing": least}
    if len(ways) == 1:
        results["alone"] = ways[0]
    return Answer(
        results=results,
        words={"verdict": "passes" if passes else "does not pass"},
        columns=("parts that can close on a way", "the way"),
        rows=tuple((f"{count:g}", "can be shut" if count else "is always open") for count in ways),
        notes=(_REVIEWER,) if locked and not passes else (),
        alarms=() if passes else (_STOPS[device],),
    )


SENSING_LINE_CUT_OFF_METHOD: Final = TableMethod(
    name="sensing_line_cut_off",
    title="What can close between a vessel and what must see it",
    purpose="Find a relief valve, gauge, pressure switch or alarm that a closed fitting could cut "
    "off from the vessel it is meant to watch.",
    grade=Grade.A,
    parameters=(
        Parameter(
            "device",
            "what must always see the vessel",
            words=("relief", "gauge", "switch", "alarm"),
            required=True,
            missing=_NO_DEVICE,
        ),
        Parameter(
            "ways",
            "parts that can close on each way from the vessel to the device, one number a way",
            listed=True,
            required=True,
            missing=_NO_WAY,
        ),
        Parameter(
            "line",
            "how the ways were found",
            words=("traced",),
            refused={
                "drawn": "no pass of a drawing that nobody walked",
                "unknown": "no pass on an incomplete drawing",
            },
            required=True,
            missing=_NO_TRACE,
        ),
        Parameter("locked", "locked valves and three-way cocks among those parts", default="0"),
    ),
    results=(
        Result("closing", "parts that can close on the way that has the fewest"),
        Result("alone", "parts of which each alone cuts it off, where there is one way"),
        Result("verdict", "whether it passes the strict view"),
    ),
    limits=(Limit("locked >= 0", "there cannot be less than no locked valve"),),
    valid=(
        "every branch and every fitting between vessel and device is counted",
        "a part that closes by itself, a check valve, counts like one that is shut by hand",
    ),
    sources=published(
        "29cfr1917.155", "wac-296-56-60241", "cal-t8-465", "oar-437-004-1505", "house-rule"
    ),
    caution="A pass on paper is a pass of what was counted. Walk the line and put a hand on every "
    "fitting.",
    deferral="A locked valve or a three-way cock is never passed here: a named reviewer decides and "
    "signs.",
    do_not=(
        "pass a locked, sealed or three-way arrangement",
        "accept two parallel valves as if there were none",
    ),
    proofs=SENSING_LINE_CUT_OFF,
    look_up=look_up,
)
