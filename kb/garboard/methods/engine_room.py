"""Air for an engine room: what the engines burn, and what carries their heat out.

The heat comes from the maker of the engine. A rule of thumb belongs to its maker too: for the same
engine they differ by four to five times, so none is shown without a name. Between the temperatures
that a maker prints a factor for, the hotter row is read.

The density is that of moist air, an ideal mixture, with the vapour pressure of water after Antoine.

By hand: 10 kW carried out at a rise of 5.6 K, air of 1.1 kg/m3 and 1.02 kJ/(kg.K), take 10 / (1.1 x
1.02 x 5.6) = 1.5915 m3/s or 95.5 m3/min. At 35 degC water boils off at 5609 Pa; at 70 percent that
is 3926 Pa of vapour, so the air weighs 97399 / (287.05 x 308.15) + 3926 / (461.5 x 308.15) = 1.129
kg/m3. 150 kW at 40 degC ask for 150 x 1.65 x 1.4 = 346.5 cm2 of duct by the rule of Volvo Penta.
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
from garboard.methods.cases.engine_room import ENGINE_ROOM_AIR
from garboard.methods.publications import published

__all__ = ["ENGINE_ROOM_AIR_METHOD"]

_HEAT: Final = (
    "a heat figure has its maker or a measurement behind it: rules of thumb differ by a factor of "
    "four to five"
)
_WARM: Final = "air from 0 to 60 degC: the vapour pressure held here is that of water"

ENGINE_ROOM_AIR_METHOD: Final = FormulaMethod(
    name="engine_room_air",
    title="Air for an engine room",
    purpose="Opening and fan area so engines breathe and the space stays below its limit.",
    grade=Grade.C,
    parameters=(
        Parameter("heat", "heat given to the room", "kW", missing=_HEAT),
        Parameter(
            "heat_from",
            "where the heat figure comes from",
            default="maker",
            words=("maker", "measured", "rule_of_thumb"),
            missing=_HEAT,
        ),
        Parameter("dT", "rise allowed", "K(d)", missing="say how much warmer the room may be"),
        Parameter(
            "combustion",
            "air the engines burn",
            "m3/min",
            missing="the maker's figure; 0 m3/min where they draw from outside",
        ),
        Parameter("rho", "density of the air, where it is known", "kg/m3"),
        Parameter("cp", "specific heat of air, where another is meant", "kJ/(kg.K)"),
        Parameter("T", "temperature of the air that comes in", "degC"),
        Parameter("phi", "relative humidity", missing="measure it, or state a worst case"),
        Parameter("p", "barometer", "bar(a)", default="site.atmosphere"),
        Parameter("power", "power of the engines", "kW"),
        Parameter(
            "maker",
            "whose rule of thumb is read",
            words=("volvo_penta", "caterpillar"),
            missing="name the maker: rules of thumb differ by a factor of four to five",
        ),
    ),
    results=(
        Result("air", "air needed", "m3/min"),
        Result("rho", "density of moist air", "kg/m3"),
        Result("duct_area", "area of duct by the rule of Volvo Penta", "cm2"),
        Result("fan_air", "air of a fan by the rule of Volvo Penta", "m3/min"),
        Result("fan_air_low", "air by the lower rule of Caterpillar", "m3/min"),
        Result("fan_air_high", "air by the higher rule of Caterpillar", "m3/min"),
    ),
    limits=(
        Limit("dT > 0 K(d)", "no rise allowed: no amount of air does that"),
        Limit("heat >= 0 kW", "heat below zero"),
        Limit("combustion >= 0 m3/min", "air below zero"),
        Limit("rho > 0 kg/m3", "the density is missing"),
        Limit("cp > 0 kJ/(kg.K)", "the specific heat is missing"),
        Limit("T >= 0 degC", _WARM),
        Limit("T <= 60 degC", _WARM),
        Limit("T <= 40 degC", "no factor is printed above 40 degC", of=("duct_area",)),
        Limit("phi >= 0", "humidity is a share, 0 to 1"),
        Limit("phi <= 1", "humidity is a share, 0 to 1: write 70 %, not 70"),
        Limit("p > 0 bar(a)", "the barometer is missing"),
        Limit("power > 0 kW", "the power is missing"),
    ),
    valid=(
        "well mixed room; only heat that warms air, none that evaporates water",
        "a rule of thumb is that of the maker named, for the engines of that maker",
        "between the printed temperatures the hotter row is read",
    ),
    sources=published("cat-lebv0915", "volvo-marine-install", "antoine-water", "definition"),
    caution="Openings must close for fire. Fit a carbon monoxide alarm. Shut-off comes before "
    "airflow.",
    deferral="Engine maker; class or flag for openings and fire dampers.",
    do_not=("use a rule of thumb without naming its maker", "size a fire damper"),
    proofs=ENGINE_ROOM_AIR,
    contradictions=(
        Contradiction(
            topic="air for an engine room, for each kilowatt",
            printed=(
                Printed("0.07 m3/min", "Volvo Penta"),
                Printed("0.304 m3/min, 8 ft3/min a horsepower", "Caterpillar"),
                Printed("0.351 m3/min, 9.25 ft3/min a horsepower", "Caterpillar"),
            ),
            effect="a factor of four to five: each rule fits its maker's engines",
            handbook="names the maker, or refuses",
            sources=(
                "volvo-marine-install",
                "cat-lebv0915",
            ),
        ),
    ),
    only={
        "flow": ("heat_from", "maker", "measured"),
        "duct_area": ("maker", "volvo_penta"),
        "fan_air": ("maker", "volvo_penta"),
        "fan_air_low": ("maker", "caterpillar"),
        "fan_air_high": ("maker", "caterpillar"),
    },
    body="""\
t = (T - 0 degC) / (1 K(d))  # the number on a centigrade thermometer
p_sat = 10^(8.07131 - 1730.63 / (233.426 + t)) * 1 mmHg(a) in mbar(a)  # of water, Antoine
vapour = phi * p_sat in mbar(a)  # part that the moisture presses
dry = (p - vapour) / (287.05 J/(kg.K) * absolute(T)) in kg/m3  # dry air in a cubic metre
rho = dry + vapour / (461.5 J/(kg.K) * absolute(T)) in kg/m3  # density of moist air
cp = 1.005 kJ/(kg.K)  # specific heat of air
flow = heat / (rho * cp * dT) in m3/min  # air that carries the heat out
air = combustion + flow in m3/min  # air needed
factor = 0.7 if T <= 20 degC else (1 if T <= 30 degC else 1.4)  # row at least as hot
duct_area = 1.65 cm2/kW * power * factor in cm2  # Volvo Penta
fan_air = 0.07 m3/(min.kW) * power in m3/min  # Volvo Penta
fan_air_low = 8 ft3/(min.hp) * power in m3/min  # Caterpillar, lower figure
fan_air_high = 9.25 ft3/(min.hp) * power in m3/min  # Caterpillar, higher figure
""",
)
