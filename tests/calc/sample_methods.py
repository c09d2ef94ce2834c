"""Methods to call in tests: two formulas and two tables, declared as the bundled ones are."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from garboard.calc.method import (
    Alarm,
    Answer,
    Argument,
    FormulaMethod,
    Grade,
    Limit,
    Method,
    Parameter,
    Result,
    TableMethod,
)
from garboard.errors import OutsideValidity


def formula(  # noqa: PLR0917 - as a method is declared
    name: str,
    parameters: tuple[Parameter, ...],
    results: tuple[Result, ...],
    body: str,
    limits: tuple[Limit, ...] = (),
    alarms: tuple[Alarm, ...] = (),
) -> FormulaMethod:
    return FormulaMethod(
        name=name,
        title="a method",
        purpose="to be called",
        grade=Grade.C,
        parameters=parameters,
        results=results,
        limits=limits,
        sources=(),
        caution="",
        deferral="",
        do_not=(),
        proofs=(),
        body=body,
        alarms=alarms,
    )


STARTS = formula(
    "starts_left",
    (
        Parameter("V", "water volume", "m3"),
        Parameter("p_now", "reading now", "bar(g)"),
        Parameter("p_min", "lowest reading", "bar(g)", missing="it must be measured, never zero"),
        Parameter("v_start", "air of one start", "m3(n)", missing="air per start must be measured"),
        Parameter("T", "temperature", "K(a)", default="site.T_room"),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
        Parameter("t", "filling time", "h"),
    ),
    (
        Result("starts", "whole starts left"),
        Result("stored", "usable air", "m3(n)"),
        Result("fill_rate", "air to deliver", "m3(n)/h"),
    ),
    """
full = free_air(V, difference(p_now) + p_atm, T) in m3(n)  # all air
left = free_air(V, difference(p_min) + p_atm, T) in m3(n)  # air left behind
stored = full - left in m3(n)  # usable air
starts = floor(stored / v_start)  # whole starts left
fill_rate = full / t in m3(n)/h  # air to deliver
""",
    (
        Limit("p_now <= 40 bar(g)", "above 40 bar gauge air is not ideal"),
        Limit("p_now > p_min", "zero starts: do not rely on this receiver"),
    ),
    (Alarm("starts < 6", "fewer starts than required"),),
)
RATIO = formula(
    "pressure_ratio",
    (Parameter("p_1", "inlet", "bar(a)"), Parameter("p_2", "outlet", "bar(a)")),
    (Result("ratio", "ratio of absolute pressures"),),
    "ratio = p_2 / p_1  # ratio\n",
    (Limit("ratio <= 8", "too much for one stage"),),
)
ROWS = {"main": (12.0, "2 receivers"), "emergency": (6.0, "1 receiver")}


def look_up(asked: Mapping[str, Argument]) -> Answer:
    row = asked["engine"].word
    if row == "broken":
        raise KeyError(row)
    starts, words = ROWS[row]
    if "volume" in asked and (asked["volume"].si or 0) > 1:
        raise OutsideValidity("no row above 1 m3")
    results = {"starts": starts}
    if row == "main":
        results["fill_time"] = 3600.0
    return Answer(
        results=results,
        printed={"starts": f"{starts:g}"},
        words={"verdict": words},
        columns=("engine", "starts"),
        rows=((row, f"{starts:g}"),),
        notes=("the flag chooses the row",),
        alarms=("below the row",) if row == "emergency" else (),
    )


def table(name: str, parameters: tuple[Parameter, ...], results: tuple[Result, ...]) -> TableMethod:
    return TableMethod(
        name=name,
        title="a table",
        purpose="to be read",
        grade=Grade.A,
        parameters=parameters,
        results=results,
        sources=(),
        caution="",
        deferral="",
        do_not=(),
        proofs=(),
        look_up=look_up,
    )


def replace_reader(
    method: TableMethod, look: Callable[[Mapping[str, Argument]], Answer]
) -> TableMethod:
    """The same table, read otherwise."""
    return replace(method, look_up=look)


RULE = table(
    "starts_required",
    (
        Parameter("engine", "arrangement", words=("main", "emergency", "broken", "12")),
        Parameter("volume", "volume of a receiver", "m3"),
    ),
    (Result("starts", "starts asked for"), Result("fill_time", "time to fill", "h")),
)


def sum_up(asked: Mapping[str, Argument]) -> Answer:
    factor = asked["factor"].si
    assert factor is not None
    return Answer(results={"total": factor * sum(asked["loads"].items)})


LOADS = TableMethod(
    name="sum_of_loads",
    title="a sum",
    purpose="to take a list",
    grade=Grade.A,
    parameters=(
        Parameter("factor", "how often", default="2"),
        Parameter("loads", "loads", "A", listed=True),
    ),
    results=(Result("total", "their sum", "A"),),
    sources=(),
    caution="",
    deferral="",
    do_not=(),
    proofs=(),
    look_up=sum_up,
)
METHODS: dict[str, Method] = {method.name: method for method in (STARTS, RATIO, RULE, LOADS)}
SITE = {"site.T_room": "0 degC +/- 10 K", "site.atmosphere": "101325 Pa(a)"}
CALL = "x = starts_left(V = 500 L, p_now = 30 bar(g), p_min = 10 bar(g), v_start = 0.8 m3(n))"
