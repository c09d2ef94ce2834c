"""The suction head that is left at a pump, hot or cold, above or below the liquid.

Everything is counted as a column of the liquid itself: the atmosphere pushes, the level helps or
(as a lift, which is negative) hinders, and vapour pressure, friction and entry take away. With a
gauge at the flange the reading says all that happens before it. A pressure becomes a column at 2.31
ft for each psi of water, over the relative density; hot water is lighter than that, which leaves a
little more than is shown. The vapour pressure of water is Antoine's, within 1 percent from 0 to 100
degC, held by a test against another library; no other liquid has one here.

By hand: 34 ft of atmosphere and 15 ft of level, less 0.6 ft of vapour, 0.4 ft at the entry and 2 ft
of friction, leave 46 ft. Water of 68 degF: 10^(8.07131 - 1730.63 / 253.426) = 17.47 mmHg, that is
0.3378 psi or 0.780 ft; 14.696 psi are 33.947 ft, and 33.947 + 10 - 0.780 - 3.2 = 39.97 ft.
"""

from typing import Final

from garboard.calc.method import Alarm, FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.suction import SUCTION_HEAD_AVAILABLE
from garboard.methods.publications import published

__all__ = ["SUCTION_HEAD_AVAILABLE_METHOD"]

_VAPOUR: Final = (
    "vapour pressure and density are held for water alone; for another liquid give p_vapour and "
    "rho_relative with their sources: hot fuel boils early"
)
_WATER: Final = "the vapour pressure held here is that of water from 0 to 100 degC"

SUCTION_HEAD_AVAILABLE_METHOD: Final = FormulaMethod(
    name="suction_head_available",
    title="Suction head left at a pump",
    purpose="Will the pump suck, hot and cold, at this height above or below the liquid.",
    grade=Grade.B,
    parameters=(
        Parameter("h_atm", "atmosphere as a column of the liquid, where it is known", "m"),
        Parameter("p_atm", "barometer at the place of use", "bar(a)", default="site.atmosphere"),
        Parameter(
            "h_static",
            "level of the liquid above the pump centre, on the suction side; below it is negative",
            "m",
        ),
        Parameter(
            "lift",
            "level of a liquid that stands below the pump centre: a lift is negative",
            "m",
            missing="say how the liquid stands: h_static above the pump, lift (negative) below it",
        ),
        Parameter("h_vapour", "vapour pressure as a column, where it is known", "m"),
        Parameter("p_vapour", "vapour pressure of the hottest liquid", "bar(a)"),
        Parameter(
            "T",
            "temperature of the hottest liquid",
            "degC",
            missing="liquid temperature or vapour pressure missing",
        ),
        Parameter("fluid", "what it is", words=("water", "fuel", "other"), missing=_VAPOUR),
        Parameter("rho_relative", "density against water at 2.31 ft for each psi; water is 1"),
        Parameter(
            "h_friction",
            "loss in the suction line",
            "m",
            missing="work it out with pipe_pressure_drop",
        ),
        Parameter(
            "h_entry", "loss at entry, foot valve and strainer", "m", missing="0 m if in h_friction"
        ),
        Parameter("p_gauge", "reading at the suction flange; a vacuum is negative", "bar(g)"),
        Parameter("v", "speed in the suction line at the gauge", "m/s"),
        Parameter("Y", "height of the gauge above the pump centre", "m", default="0 m"),
        Parameter("required", "suction head that the maker of the pump asks for", "m"),
    ),
    results=(
        Result("head", "suction head available, from the tank", "m"),
        Result("head_by_gauge", "suction head available, from a gauge at the flange", "m"),
    ),
    limits=(
        Limit("lift <= 0 m", "a lift is negative: the liquid stands below the pump"),
        Limit("T >= 0 degC", _WATER),
        Limit("T <= 100 degC", _WATER),
        Limit("p_atm > 0 bar(a)", "the barometer is missing"),
        Limit("h_atm > 0 m", "the atmosphere is missing"),
        Limit("rho_relative > 0", "the density is missing"),
        Limit("h_vapour >= 0 m", "a vapour pressure below zero"),
        Limit("h_friction >= 0 m", "a loss is given as a positive head"),
        Limit("h_entry >= 0 m", "a loss is given as a positive head"),
        Limit("absolute(p_gauge) >= 0 bar(a)", "below a perfect vacuum"),
        Limit("v >= 0 m/s", "a speed below zero"),
    ),
    valid=(
        "open tank, or a reading at the suction flange",
        "vapour pressure at the hottest liquid, barometer at the place of use",
        "strainer as dirty as it is allowed to become",
    ),
    sources=published(
        "spellman-water",
        "bachus-custodio",
        "npsh-practice-25",
        "elsey-npsh",
        "antoine-water",
        "definition",
        "house-rule",
    ),
    caution="A lift near the limit fails on the first hot day or the first dirty strainer.",
    deferral="The head that is required comes from the maker of the pump.",
    do_not=("state that a pump will prime",),
    proofs=SUCTION_HEAD_AVAILABLE,
    alarms=(
        Alarm("head <= 0 m", "no head is left: the liquid boils in the suction line"),
        Alarm("head < required", "less than the pump asks for: it will cavitate"),
        Alarm("head_by_gauge < required", "less than the pump asks for: it will cavitate"),
    ),
    only={
        "p_vapour": ("fluid", "water"),
        "rho_relative": ("fluid", "water"),
    },
    body="""\
rho_relative = 1  # water, on the safe side where it is hot
column = 2.31 ft/psi / rho_relative  # column for each pressure
h_atm = p_atm * column in m  # atmosphere as a column
h_static = lift in m  # level of the liquid
t = (T - 0 degC) / (1 K(d))  # the number on a centigrade thermometer
p_vapour = 10^(8.07131 - 1730.63 / (233.426 + t)) * 1 mmHg(a) in bar(a)  # of water, Antoine
h_vapour = p_vapour * column in m  # vapour pressure as a column
head = h_atm + h_static - h_vapour - h_friction - h_entry in m  # left at the pump
seen = (difference(p_gauge) + p_atm - p_vapour) * column in m  # what the gauge sees above vapour
head_by_gauge = seen + v^2 / (2 * 9.80665 m/s^2) + Y in m  # left at the pump
""",
)
