"""What a sound, shut receiver reads after it has warmed or cooled.

The pressure counted from nothing follows the absolute temperature; a gauge reading does not, and
a figure in degrees Celsius even less. What the gauge has lost beyond this is a leak.

By hand: 30 bar(g) at 45 degC under 1.01325 bar(a) is 31.01325 bar(a); at 15 degC that is 31.01325
x 288.15 / 318.15 = 28.0888 bar(a), so the gauge reads 27.0756 bar(g).
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.closed_volume import CLOSED_VOLUME_TEMPERATURE
from garboard.methods.deck import deck_temperature
from garboard.methods.publications import published

__all__ = ["CLOSED_VOLUME_TEMPERATURE_METHOD"]

_IDEAL: Final = "outside the ideal range, above 40 bar gauge air is no ideal gas"
_BOTH: Final = "the temperature of the air at both readings is needed: measure it"

CLOSED_VOLUME_TEMPERATURE_METHOD: Final = FormulaMethod(
    name="closed_volume_temperature",
    title="Reading of a shut receiver after it warms or cools",
    purpose="What a sound, closed receiver should read after it has warmed or cooled, so that "
    "cooling is not taken for a leak, nor a leak for cooling.",
    grade=Grade.A,
    parameters=(
        Parameter("p_1", "reading at the first temperature", "bar(g)"),
        Parameter("T_1", "temperature at the first reading", "K(a)", missing=_BOTH),
        Parameter("T_2", "temperature at the second reading", "K(a)", missing=_BOTH),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(Result("p_2", "reading to be expected at the second temperature", "bar(g)"),),
    limits=(
        *deck_temperature("T_1"),
        *deck_temperature("T_2"),
        Limit("p_1 <= 40 bar(g)", _IDEAL),
        Limit("p_2 <= 40 bar(g)", _IDEAL),
        Limit("difference(p_1) + p_atm >= 0 bar(a)", "below a perfect vacuum"),
    ),
    valid=(
        "no leak, nothing drained, nothing filled in between; the same barometer at both readings",
        "ideal gas, readings not above 40 bar gauge",
        "a temperature that does not say what it is counted from is refused by the language itself",
    ),
    sources=published("definition", "house-rule"),
    caution="A reading that only follows the temperature is not a leak; a fall beyond it is.",
    deferral="None: physics.",
    do_not=("explain away a fall larger than the temperature accounts for",),
    proofs=CLOSED_VOLUME_TEMPERATURE,
    body="""\
held = difference(p_1) + p_atm in bar(a)  # the first reading counted from nothing
expected = held * T_2 / T_1 in bar(a)  # the same air at the second temperature
p_2 = 0 bar(g) + (expected - p_atm) in bar(g)  # the same as a gauge shows it
""",
)
