"""Pressure lost in a line of compressed air, by the general formula of isothermal flow.

f is the Darcy factor, 64 / Re where the flow is laminar. Where it is turbulent, Serghides' explicit
form of the Colebrook equation is used, which agrees with it to a few parts in a hundred thousand.
The end pressure stands on both sides of the formula: two steps of Newton, written out in the
body, leave less than a millionth within the limits here. Published rules of thumb differ by an
eighth from one another, so they are no more than a band of 20 percent round the result.

By hand: 3 m3/min at 20 degC and one atmosphere is 0.0602 kg/s; at 8.01325 bar(a) the air weighs
9.523 kg/m3 and runs at 11.04 m/s in 27 mm, Re 156 500, f 0.02358. f L / D = 43.67 and rho v2 / p =
0.001449, so (p_2 / p_1)^2 = 1 - 0.001449 x (43.67 + 2 ln(p_1 / p_2)) = 0.93662, p_2 / p_1 =
0.96779, and 0.258 bar is lost. Between 10 and 9 bar(a) in 1000 m of 0.5 m, f 0.00185, 11.3 kg/m3: 0.19635
m2 x sqrt(11.3 x 190000 / (3.7 + 2 ln(10 / 9))) = 145.5 kg/s.
"""

from typing import Final

from garboard.calc.method import (
    Contradiction,
    FormulaMethod,
    Grade,
    Limit,
    Parameter,
    Printed,
    Result,
)
from garboard.methods.cases.air_line import AIR_LINE_PRESSURE_DROP
from garboard.methods.deck import deck_temperature
from garboard.methods.publications import published

__all__ = ["AIR_LINE_PRESSURE_DROP_METHOD"]

_TENTH: Final = (
    "more than 10 percent of the absolute line pressure is lost: use the compressible form with "
    "both ends, P_1 and P_2"
)
_NOT_LONG: Final = "the length and bore of the line are missing"

AIR_LINE_PRESSURE_DROP_METHOD: Final = FormulaMethod(
    name="air_line_pressure_drop",
    title="Pressure lost in an air line",
    purpose="Pressure lost in a control or starting-air line; the empirical rules disagree, so "
    "the general formula is used and they are shown as a band.",
    grade=Grade.C,
    parameters=(
        Parameter("q", "free air flow", "m3(n)/h"),
        Parameter("D", "bore", "mm"),
        Parameter("L", "length, bends counted in", "m"),
        Parameter("p", "reading where the line begins", "bar(g)"),
        Parameter(
            "rough",
            "roughness of the wall",
            "mm",
            missing="smooth and rusty pipe differ by a factor of two: say which, with its source",
        ),
        Parameter("T", "temperature of the air in the line", "K(a)"),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
        Parameter("rho", "density of the air upstream, where both ends are known", "kg/m3"),
        Parameter("f", "Darcy factor, where both ends are known"),
        Parameter("P_1", "pressure upstream", "bar(a)"),
        Parameter("P_2", "pressure downstream", "bar(a)"),
    ),
    results=(
        Result("drop", "pressure lost", "bar(d)"),
        Result("drop_low", "lower end of the band of the rules of thumb", "bar(d)"),
        Result("drop_high", "upper end of that band", "bar(d)"),
        Result("m_dot", "mass flow between two pressures", "kg/s"),
    ),
    limits=(
        Limit("D > 0 mm", _NOT_LONG),
        Limit("L > 0 m", _NOT_LONG),
        Limit("q > 0 m3(n)/h", "nothing flows"),
        Limit("rough >= 0 mm", "a roughness is not negative"),
        Limit("rough / D <= 0.05", "rougher than a twentieth of the bore: no pipe formula holds"),
        *deck_temperature("T"),
        Limit("p > 0 bar(g)", "no pressure in the line"),
        Limit("p <= 40 bar(g)", "outside the ideal range, above 40 bar gauge air is no ideal gas"),
        Limit(
            "abs(Re - middle) >= 1000",
            "between Re 2000 and 4000 the flow is neither laminar nor turbulent: no one number",
        ),
        Limit(
            "v <= 100 m/s",
            "faster than 100 m/s: the flow no longer keeps its temperature, so the formula fails",
        ),
        Limit("short <= 0.5", _TENTH),
        Limit("drop / P <= 0.1", _TENTH),
        Limit("f > 0", "the Darcy factor is missing"),
        Limit("rho > 0 kg/m3", "the density is missing"),
        Limit("P_2 > 0 bar(a)", "no pressure downstream"),
        Limit("P_1 > P_2", "nothing flows: the pressure upstream is not above that downstream"),
    ),
    valid=(
        "dry air near room temperature, the same all along the line",
        "loss not above 10 percent of the absolute line pressure",
        "f is the Darcy factor, four times the Fanning factor",
        "no single empirical number is given: two published rules differ by 12.6 percent",
    ),
    sources=published(
        "fluids-doc-examples",
        "serghides-1984",
        "standard-atmosphere-1976",
        "definition",
    ),
    caution="An estimate. Measure at the far end with the engine cranking.",
    deferral="The maker of the engine for the bore of its starting air.",
    do_not=("size the starting-air line of an engine",),
    proofs=AIR_LINE_PRESSURE_DROP,
    contradictions=(
        Contradiction(
            topic="empirical rules for the loss in an air line",
            printed=(
                Printed(
                    ("7.57e4 q^1.85 L / (d^5 p), in kgf/cm2, m3/min, m, mm, kgf/cm2 absolute"),
                    "one page",
                ),
                Printed(
                    "1.6e12 q^1.85 L / (d^5 p), in kPa, m3/s, m, mm, kPa absolute", "another page"
                ),
                Printed("the first rule with units of kPa", "a third page, wrong by ten thousand"),
            ),
            effect="the first two are 12.6 to 12.8 percent apart on every input",
            handbook="uses the general formula, and shows the rules only as a band",
            sources=("fluids-doc-examples",),
        ),
    ),
    body="""\
P = difference(p) + p_atm in bar(a)  # where the line begins, counted from nothing
density = P / (287.05 J/(kg.K) * T) in kg/m3  # of the air there
v = q / free_air(1 m3, P, T) * 1 m3 / (pi / 4 * D^2) in m/s  # its speed
K = T / (1 K(a))  # temperature as a number of kelvin
thick = 1.458 mg/(m.s) * K^1.5 / (K + 110.4)  # viscosity
Re = density * v * D / thick  # Reynolds number
middle = 3000  # of the range where the flow is neither laminar nor turbulent
e = rough / D / 3.7  # roughness in the bore
quick = max(Re, middle)  # where it is turbulent
S = -2 * log10(e + 12 / quick)  # first step of Serghides
G = -2 * log10(e + 2.51 * S / quick)  # second step
H = -2 * log10(e + 2.51 * G / quick)  # third step
rubs = (S - (G - S)^2 / (H - 2 * G + S))^-2  # turbulent Darcy factor
friction = 64 / Re if Re <= middle else rubs  # Darcy factor
s = density * v^2 / (P - 0 bar(a))  # how much of the pressure is speed
short = s * friction * L / D  # loss of the squared pressure by friction alone
y = 1 - short  # squared ratio of the pressures, first guess
y_1 = y + s * log(y) / (1 - s / y)  # one step of Newton with the air that speeds up
y_2 = y_1 - (y_1 - 1 + short - s * log(y_1)) / (1 - s / y_1)  # the second step
drop = (1 - sqrt(y_2)) * (P - 0 bar(a)) in bar(d)  # pressure lost
drop_low = 0.8 * drop in bar(d)  # rules of thumb, 20 percent below
drop_high = 1.2 * drop in bar(d)  # rules of thumb, 20 percent above
fall = ((P_1 - 0 bar(a))^2 - (P_2 - 0 bar(a))^2) / (P_1 - 0 bar(a)) in bar(d)  # what drives it
m_dot = pi / 4 * D^2 * sqrt(rho * fall / (f * L / D + 2 * log(P_1 / P_2))) in kg/s  # mass flow
""",
)
