"""How many starts class rules and regulations ask for, by engine arrangement.

The rows are printed side by side so that a reviewer can say which one binds. Nothing is read
between rows, and the page never says that a rule is met: it says `within` or `below` the row.

By hand: a non-reversible main engine, 6 consecutive starts; at least half of the charging
capacity not driven by the main engine; the receivers filled from atmosphere in 1 h.
"""

from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Answer, Argument, Grade, Limit, Parameter, Result, TableMethod
from garboard.methods.cases.starting_rules import STARTS_REQUIRED
from garboard.methods.figures import NEAR, Figure, Row, answer, number, word
from garboard.methods.publications import published

__all__ = ["STARTS_REQUIRED_METHOD"]

_M61, _DNV, _CFR = "iacs-ur-m61", "dnv-ships-4-6-5", "46cfr112.50-7"

_PLANT: Final = Row(
    "receivers of starting air",
    "at least two, filled from atmosphere in 1 h; half of the charging capacity independent",
    _M61,
    {
        "receivers": Figure(2),
        "fill_time": Figure(1, "h"),
        "independent_share_min": Figure(0.5),
    },
)

_ROWS: Final = {
    "reversible_main": (
        Row("reversible main engine", "alternately ahead and astern", _M61, {"starts": Figure(12)}),
        _PLANT,
    ),
    "non_reversible_main": (
        Row("non-reversible main engine", "consecutive", _M61, {"starts": Figure(6)}),
        _PLANT,
    ),
    "other_engine": (Row("other engine", "each", _DNV, {"starts": Figure(3)}), _PLANT),
    "several_main_engines": (
        Row(
            "several main engines",
            "in all, from the least to the most that is asked",
            _DNV,
            {"starts": Figure(12), "starts_most": Figure(18)},
        ),
        _PLANT,
    ),
    "emergency_generator_air": (
        Row(
            "emergency generator, compressed air",
            "consecutive; three may come from a second independent source",
            _CFR,
            {"starts": Figure(6)},
        ),
    ),
    "electric_main": (
        Row(
            "main engine, electric starting",
            "as many as for air, within the time, from two batteries",
            _M61,
            {"within": Figure(30, "min"), "batteries": Figure(2)},
        ),
    ),
    "electric_auxiliary": (
        Row("auxiliary engine, electric starting", "each", _M61, {"starts": Figure(3)}),
    ),
}

_NO_ENGINE: Final = "no rule is held without an engine arrangement"
_COMPARED: Final = {
    "starts": "starts",
    "independent_share": "independent_share_min",
    "receivers": "receivers",
}
"""What the vessel has, and the figure of the row that it is held against."""


def look_up(asked: Mapping[str, Argument]) -> Answer:
    """Read the row of the engine arrangement, and say which figures stand below it."""
    rows = _ROWS[word(asked, "engine", _NO_ENGINE)]
    read = answer(
        rows, notes=("the rule that binds this vessel is chosen by its flag and surveyor",)
    )
    compared = [
        (has, read.printed[row], number(asked, has), read.results[row])
        for has, row in _COMPARED.items()
        if has in asked and row in read.results
    ]
    below = tuple(
        f"HOLD: {has.replace('_', ' ')} {asked[has].text} is below the row, {printed}"
        for has, printed, value, least in compared
        if value is not None and value < least * (1 - NEAR)
    )
    words = {"verdict": "below" if below else "within"} if compared else {}
    return Answer(
        results=read.results,
        printed=read.printed,
        words=words,
        columns=read.columns,
        rows=read.rows,
        notes=read.notes,
        alarms=below,
    )


STARTS_REQUIRED_METHOD: Final = TableMethod(
    name="starts_required",
    title="Starts that rules ask for",
    purpose="Show what class rules and regulations ask for, so a reviewer can say which applies.",
    grade=Grade.A,
    parameters=(
        Parameter(
            "engine",
            "engine arrangement, a row of the table",
            words=tuple(_ROWS),
            missing=_NO_ENGINE,
        ),
        Parameter("starts", "starts the vessel has without topping up"),
        Parameter("receivers", "number of receivers the vessel has"),
        Parameter("independent_share", "part of charging capacity not driven by the main engine"),
    ),
    results=(
        Result("starts", "starts without topping up, or the least in all"),
        Result("starts_most", "the most in all that is asked"),
        Result("fill_time", "time to fill from atmosphere", "h"),
        Result("receivers", "least number of receivers"),
        Result("independent_share_min", "least share of charging capacity driven independently"),
        Result("within", "time within which the starts are made", "min"),
        Result("batteries", "batteries asked for"),
        Result("verdict", "within or below the row"),
    ),
    limits=(
        Limit("starts >= 0", "a number of starts is not negative"),
        Limit("independent_share >= 0", "a share is not negative"),
        Limit("independent_share <= 1", "a share is not above the whole: write 50 % or 0.5"),
    ),
    valid=(
        "classed ships for the class rows; US inspected vessels for the emergency generator row",
        "receivers, filling time and share of independent charging are those of IACS UR M61",
        "an arrangement that is not a row is refused: no rule is held for it",
    ),
    sources=published(_M61, _CFR, _DNV),
    caution="The rule that binds this vessel is chosen by its flag and surveyor, not by this page.",
    deferral="Flag state, class or the certifying authority.",
    do_not=("state that a vessel meets a rule",),
    proofs=STARTS_REQUIRED,
    look_up=look_up,
)
