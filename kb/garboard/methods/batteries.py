"""Hours a battery bank carries a steady load, and the bank that a day's loads ask for.

Only the share that the crew allows is counted, less what age and cold have taken: a bank is never
counted to empty. The loads of a day are one sum of amperes times hours, written out in the call:
`loads = 3 A * 24 h + 8 A * 4 h`.

By hand: 400 Ah, half of it used, nothing lost, 12 A: 400 x 0.5 / 12 = 16.67 h. And 3 A for 24 h
with 8 A for 4 h is 104 Ah; half used and a fifth lost asks for 104 / (0.5 x 0.8) = 260 Ah.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.batteries import BATTERY_AUTONOMY
from garboard.methods.publications import published

__all__ = ["BATTERY_AUTONOMY_METHOD"]

_SHARE: Final = "depth of discharge missing: a bank is never counted to empty"
_LEFT: Final = "the fraction left for age and cold is missing: a new and warm bank is 1"
_WHOLE: Final = "age and cold leave no more than the whole: write 80 % or 0.8"

BATTERY_AUTONOMY_METHOD: Final = FormulaMethod(
    name="battery_autonomy",
    title="Hours on the batteries",
    purpose="Hours a bank carries a steady load down to the depth of discharge that the crew "
    "allows, or the bank that the loads of a day ask for.",
    grade=Grade.C,
    parameters=(
        Parameter("C", "rated capacity", "Ah"),
        Parameter("DoD", "fraction of the capacity that is used", missing=_SHARE),
        Parameter("eta", "fraction left for age and cold", missing=_LEFT),
        Parameter("I", "steady load", "A"),
        Parameter("loads", "amperes times hours of every load, added", "Ah"),
    ),
    results=(
        Result("hours", "time until that depth is reached", "h"),
        Result("C_needed", "bank size", "Ah"),
    ),
    limits=(
        Limit("DoD > 0", _SHARE),
        Limit("DoD <= 0.8", "a depth of discharge deeper than this page allows"),
        Limit("eta > 0", _LEFT),
        Limit("eta <= 1", _WHOLE),
        Limit("C > 0 Ah", "the capacity is missing"),
        Limit("I > 0 A", "the load is missing"),
        Limit("loads > 0 Ah", "the loads are missing"),
    ),
    valid=(
        "a steady load near the rating that the capacity is quoted at",
        "a heavier load gets less out of a bank than its plate says: that is not in this sum",
    ),
    sources=published("definition", "house-rule"),
    caution="Measure it: a timed discharge once a season beats any sum. Charging makes hydrogen.",
    deferral="Ventilation of the battery space and lithium banks: maker, code and qualified "
    "electrician.",
    do_not=(
        "size the ventilation of a battery space",
        "promise hours for emergency loads",
    ),
    proofs=BATTERY_AUTONOMY,
    body="""\
used = C * DoD * eta in Ah  # what the crew may take out
hours = used / I in h  # time until that depth is reached
C_needed = loads / (DoD * eta) in Ah  # bank size
""",
)
