"""Water that compressed air leaves at the drains, and what it still carries on.

Air taken in holds vapour; squeezed and cooled it can hold far less, and the rest runs to the
bottom of whatever it stands in. The saturation pressure is that of ASHRAE over liquid water, with
the temperature in hundreds of kelvin so that its coefficients keep a readable size. Air is an
ideal mixture here: 287.05 J/(kg.K) for dry air, 461.5 for vapour, 0.62195 their ratio.

By hand: at 30 degC the saturation pressure is 4247 Pa; at 80 % that is 3397 Pa of vapour and
0.62195 x 3397 / (101325 - 3397) = 0.02158 kg of water in a kilogram of dry air, 1.1253 kg of which
are in a cubic metre. At 35 degC and 31.013 bar(a) it can hold 0.62195 x 5629 / 3095700 = 0.00113. So
a cubic metre taken in leaves 1.1253 x 0.02044 = 0.0230 kg, and 1 m3/min leaves 1.38 L/h.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.moisture import COMPRESSED_AIR_WATER
from garboard.methods.publications import published

__all__ = ["COMPRESSED_AIR_WATER_METHOD"]

_TABLE: Final = "outside the table, which ends at 60 degC"
_ICE: Final = "ice: below 0 degC water does not run to a drain"

COMPRESSED_AIR_WATER_METHOD: Final = FormulaMethod(
    name="compressed_air_water",
    title="Water at the drains of compressed air",
    purpose="How much water to expect at the drains, and why a receiver rusts from inside.",
    grade=Grade.B,
    parameters=(
        Parameter("T_1", "intake temperature", "K(a)"),
        Parameter(
            "phi",
            "relative humidity at the intake, a share of 1",
            missing="humidity must be measured, or stated as a worst case: 100 %",
        ),
        Parameter("p_1", "intake pressure", "bar(a)", default="p_atm"),
        Parameter("T_2", "temperature at the drain", "K(a)"),
        Parameter("p_2", "pressure at the drain", "bar(g)"),
        Parameter("q", "free air flow, vapour and all", "m3(n)/h"),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(
        Result("condensed", "liquid water from each cubic metre taken in", "kg/m3"),
        Result("held", "water still held by each cubic metre of dry air at 20 degC", "kg/m3"),
        Result("vapour_density", "water in the intake air", "g/m3"),
        Result("water_rate", "liquid water at the drains", "L/h"),
        Result("water_per_flow", "water carried in by the free air flow", "L/h"),
    ),
    limits=(
        Limit("T_1 <= absolute(60 degC)", _TABLE),
        Limit("T_1 >= absolute(0 degC)", "outside the table, which begins at 0 degC"),
        Limit("T_2 <= absolute(60 degC)", _TABLE),
        Limit("T_2 >= absolute(0 degC)", _ICE),
        Limit("phi >= 0", "humidity is a share between 0 and 1"),
        Limit("phi <= 1", "humidity is a share between 0 and 1: write 80 %, not 80"),
        Limit(
            "p_2 <= 40 bar(g)", "outside the ideal range, above 40 bar gauge air is no ideal gas"
        ),
        Limit("p_2 >= 0 bar(g)", "below the atmosphere, so the air is not compressed"),
        Limit("q >= 0 m3(n)/h", "a flow is not negative"),
        Limit("p_v < p_1", "the intake pressure is no more than that of the vapour alone"),
    ),
    valid=(
        "0 to 60 degC at both ends",
        "ideal mixture: the water at the drains is within half a percent of real moist air to 30 "
        "bar gauge; the air holds up to 4 percent more than shown at 10 bar and 11 percent more at "
        "30 bar, so above 10 bar gauge what is carried on is understated",
        "a litre of water is taken as a kilogram",
    ),
    sources=published(
        "water-content-table",
        "compressor-maker-humidity",
        "dryer-water-chart",
        "ashrae-saturation",
        "definition",
        "house-rule",
    ),
    caution="Drain every day and log it. Water corrodes a receiver where nobody looks.",
    deferral="Wall loss is measured by an inspector, not inferred from drained water.",
    do_not=("infer wall thickness or remaining life from drained water",),
    proofs=COMPRESSED_AIR_WATER,
    body="""\
h_1 = T_1 / (100 K(a))  # intake temperature in hundreds of kelvin
up_1 = 1.3914993 - 4.8640239 * h_1 + 0.41764768 * h_1^2 - 0.014452093 * h_1^3  # the polynomial
ln_1 = up_1 - 58.002206 / h_1 + 6.5459673 * log(100 * h_1)  # logarithm of the pressure in Pa
p_v = phi * exp(ln_1) * 1 Pa(a) in Pa(a)  # pressure of the vapour taken in
w_in = 0.62195 * p_v / (p_1 - p_v)  # water to dry air, taken in
m_dry = (p_1 - p_v) / (287.05 J/(kg.K) * T_1) in kg/m3  # dry air in a cubic metre taken in
vapour_density = p_v / (461.5 J/(kg.K) * T_1) in g/m3  # water in it
h_2 = T_2 / (100 K(a))  # temperature at the drain in hundreds of kelvin
up_2 = 1.3914993 - 4.8640239 * h_2 + 0.41764768 * h_2^2 - 0.014452093 * h_2^3  # the polynomial
ln_2 = up_2 - 58.002206 / h_2 + 6.5459673 * log(100 * h_2)  # logarithm of the pressure in Pa
p_ws = exp(ln_2) * 1 Pa(a) in Pa(a)  # saturation pressure at the drain
w_sat = 0.62195 * p_ws / (difference(p_2) + p_atm - p_ws)  # most water to dry air at the drain
condensed = m_dry * max(w_in - w_sat, 0) in kg/m3  # what it cannot hold, never below zero
held = 1.2041 kg/m3 * w_sat in kg/m3  # in dry air that filled a cubic metre at 20 degC
v = q / free_air(1 m3, p_1, T_1) * 1 m3 in m3/h  # the flow as a volume taken in
water_rate = condensed * v / (1 kg/L) in L/h  # at the drains
water_per_flow = vapour_density * v / (1 kg/L) in L/h  # carried in
""",
)
