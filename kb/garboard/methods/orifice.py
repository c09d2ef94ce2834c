"""Air through a small hole: what a leak of a given bore wastes, or what a drilled orifice passes.

From twice the barometer upwards the hole is choked and the flow follows the upstream pressure
alone; below it the subsonic formula holds, which the choked one overstates by up to a factor of
two. Which of them applies is read from the pressures, not chosen.

By hand: 100 psi(g) is 114.7 psi(a), and 1/4 inch is 0.049087 inch2. Choked: 0.5303 x 0.049087 x
114.7 / sqrt(530) = 0.12970 lb/s, / 0.07494 lb/ft3 x 60 = 103.8 ft3/min (printed 104). At 5 psi(g)
x = 14.7 / 19.7 = 0.7462 and 7 x (x^(2/1.4) - x^(2.4/1.4)) = 0.3722, so the hole passes
15.9 ft3/min (printed 15.9), where the choked formula would say 17.8.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.orifice import ORIFICE_AIR_FLOW
from garboard.methods.deck import deck_temperature
from garboard.methods.publications import published

__all__ = ["ORIFICE_AIR_FLOW_METHOD"]

ORIFICE_AIR_FLOW_METHOD: Final = FormulaMethod(
    name="orifice_air_flow",
    title="Air through a small hole",
    purpose="Air through a small hole or a cracked fitting: what a leak of a given bore wastes, "
    "or what a drilled orifice passes.",
    grade=Grade.B,
    parameters=(
        Parameter("p", "upstream reading", "psi(g)"),
        Parameter("d", "bore of the hole", "inch"),
        Parameter(
            "C",
            "coefficient of the edge: 1 as the table counts, 0.97 rounded entrance, 0.65 sharp",
            missing="the edge of the hole is not described: 0.97 rounded, 0.65 sharp, 1 at most",
        ),
        Parameter("T", "upstream temperature", "K(a)", default="530 degR(a)"),
        Parameter("p_atm", "barometer", "psi(a)", default="site.atmosphere"),
    ),
    results=(
        Result("Q", "free air passed, an amount", "m3(n)/h"),
        Result(
            "Q_printed",
            "the same as the table counts it: a volume at 14.7 psi(a) and 70 degF",
            "ft3/min",
        ),
    ),
    limits=(
        Limit("p >= 1 psi(g)", "below the published table, which begins at 1 psi gauge"),
        Limit("p <= 40 bar(g)", "outside the ideal range, above 40 bar gauge air is no ideal gas"),
        *deck_temperature("T"),
        Limit("C > 0", "the edge of the hole is not described"),
        Limit("C <= 1", "no edge passes more than the hole itself, so C is not above 1"),
        Limit("d > 0 inch", "the bore of the hole is missing"),
    ),
    valid=(
        "dry air; liquids and steam follow other formulas and are not taken",
        "free discharge to the atmosphere, bore small against the line",
        "compared with the printed table from 1 to 125 psi gauge; above that the formula alone",
    ),
    sources=published("moss-orifice-table", "definition"),
    caution="An estimate of waste, not a leak test. Measure at the far end. Keep hands and "
    "faces away from the jet.",
    deferral="A leak on a pressure part is isolated and repaired by an authorised shop.",
    do_not=("judge whether a leaking fitting may stay in service",),
    proofs=ORIFICE_AIR_FLOW,
    body="""\
P = difference(p) + p_atm in psi(a)  # upstream, counted from nothing
A = pi / 4 * d^2 in inch2  # area of the hole
hot = T / (1 degR(a))  # upstream temperature as a number of degR
choked = 0.5303 lb/(s.psi.inch2) * A * C * P / sqrt(hot) in lb/s  # if it is choked
x = p_atm / P  # ratio of the pressures
k = 1.4  # exponent of air
fall = x^(2 / k) - x^((k + 1) / k)  # of the adiabatic expansion
speed = sqrt(2 * k / (k - 1) / (287.05 J/(kg.K) * T) * fall)  # mass for each force
subsonic = C * A * P * speed in lb/s  # if it is not
W = choked if P >= 2 * p_atm else subsonic in lb/s  # what passes
Q_printed = W / (0.07494 lb/ft3) in ft3/min  # as a volume at 14.7 psi(a) and 70 degF
Q = free_air(Q_printed, 14.7 psi(a), 70 degF) in m3(n)/h  # as an amount
""",
)
