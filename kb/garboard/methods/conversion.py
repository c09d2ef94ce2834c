"""A quantity shown in a second unit, with exact factors, and with what it is counted from.

The language does this by itself with `in UNIT`; the method puts it on a page with its proofs. The
quantity is handed over with its unit, to the parameter of its kind, so a gallon that does not say
which and a pressure that does not say what it is counted from are refused before anything is worked
out. A unit asked for is one word; `/` is written `_per_`.

By hand: 1 psi(d) is 0.45359237 kg x 9.80665 m/s2 over (0.0254 m)^2, 6894.757 Pa(d). 100 degF is
(100 - 32) / 1.8 = 37.78 degC; 55.56 would be the answer of somebody who forgot the 32.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from garboard.calc.method import Answer, Argument, Grade, Limit, Parameter, Result, TableMethod
from garboard.calc.units import Unit, read_unit
from garboard.errors import OutsideValidity
from garboard.methods.cases.conversion import UNIT_CONVERSION
from garboard.methods.figures import word
from garboard.methods.publications import published

__all__ = ["UNIT_CONVERSION_METHOD"]

_NO_UNIT: Final = "the unit to be shown is not said"
_PRESSURE: Final = (
    *("Pa", "hPa", "kPa", "MPa", "mbar", "bar", "psi", "atm"),
    *("kgf_per_cm2", "mmHg", "inHg", "mmH2O", "inH2O"),
)
_FLOW: Final = (
    *("m3_per_s", "m3_per_min", "m3_per_h", "L_per_s", "L_per_min", "L_per_h"),
    *("ft3_per_min", "gal_us_per_min", "gal_us_per_h", "gal_imp_per_min"),
)


@dataclass(frozen=True, slots=True)
class _Quantity:
    """One kind of quantity, and the units it may be shown in."""

    words: str
    si: str
    units: tuple[str, ...]
    tag: str = ""
    """What it is counted from, as its unit says it."""


_QUANTITIES: Final = {
    "length": _Quantity("a length", "m", ("m", "mm", "cm", "km", "inch", "ft", "nmi")),
    "area": _Quantity("an area", "m2", ("m2", "mm2", "cm2", "inch2", "ft2")),
    "volume": _Quantity("a volume", "m3", ("m3", "L", "ft3", "gal_us", "gal_imp")),
    "flow": _Quantity("a volume flow", "m3/s", _FLOW),
    "duration": _Quantity("a time", "s", ("s", "min", "h", "day")),
    "mass": _Quantity("a mass", "kg", ("kg", "g", "t", "lb")),
    "force": _Quantity("a force", "N", ("N", "kN", "lbf", "kgf")),
    "energy": _Quantity("an energy", "J", ("J", "kJ", "MJ", "kWh", "ft.lbf")),
    "power": _Quantity("a power", "W", ("W", "kW", "hp", "hp_metric")),
    "speed": _Quantity("a speed", "m/s", ("m_per_s", "ft_per_s", "knot")),
    "p_gauge": _Quantity("a gauge pressure", "Pa(g)", _PRESSURE, "(g)"),
    "p_absolute": _Quantity("an absolute pressure", "Pa(a)", _PRESSURE, "(a)"),
    "p_difference": _Quantity("a pressure difference", "Pa(d)", _PRESSURE, "(d)"),
    "temperature": _Quantity("a thermometer reading", "degC", ("degC", "degF")),
    "rise": _Quantity("a temperature difference", "K(d)", ("K", "degC", "degF"), "(d)"),
}


def _shown_unit(quantity: _Quantity, asked_for: str) -> Unit:
    """The unit of a word, counted from where the quantity is counted from."""
    if asked_for not in quantity.units:
        others = [each.words for each in _QUANTITIES.values() if asked_for in each.units]
        raise OutsideValidity(
            f"{quantity.words} cannot be shown in {asked_for}, which measures {' or '.join(others)}"
        )
    return read_unit(asked_for.replace("_per_", "/") + quantity.tag)


def look_up(asked: Mapping[str, Argument]) -> Answer:
    """Show one quantity in the unit asked for."""
    given = [name for name in _QUANTITIES if name in asked]
    if len(given) != 1:
        raise OutsideValidity("one quantity is shown at a time, in the parameter of its kind")
    name = given[0]
    shown = _shown_unit(_QUANTITIES[name], word(asked, "to_unit", _NO_UNIT))
    value = shown.from_si(asked[name].si or 0.0)
    return Answer(
        results={"value_out": value},
        printed={"value_out": f"{value:.10g}"},
        words={"unit_out": shown.text},
        columns=("as written", "shown"),
        rows=((asked[name].text, f"{value:.12g} {shown.text}"),),
    )


UNIT_CONVERSION_METHOD: Final = TableMethod(
    name="unit_conversion",
    title="A quantity in a second unit",
    purpose="One definition of every unit, US and imperial measures never mixed, and every "
    "pressure or temperature labelled with what it is counted from.",
    grade=Grade.A,
    parameters=(
        *(
            Parameter(name, f"{quantity.words} to be shown", quantity.si)
            for name, quantity in _QUANTITIES.items()
        ),
        Parameter(
            "to_unit",
            "unit shown; `/` is written `_per_`",
            words=tuple(
                dict.fromkeys(unit for each in _QUANTITIES.values() for unit in each.units)
            ),
            missing=_NO_UNIT,
        ),
    ),
    results=(
        Result("value_out", "number in the shown unit"),
        Result("unit_out", "the shown unit with what it is counted from, as text"),
    ),
    limits=(
        Limit("p_gauge >= -101325 Pa(g)", "below a perfect vacuum under one atmosphere"),
        Limit("temperature >= -273.15 degC", "below the absolute zero"),
    ),
    valid=(
        "exact by definition; factors are held as exact fractions",
        "`gal` alone, `kg/cm2` as a pressure, an untagged pressure, a decimal comma and any name "
        "outside the unit table are refused by the language itself, with the cure",
    ),
    sources=published("nist-sp-811", "definition", "house-rule"),
    caution="The unit and the starting point belong to the number; a bare figure is not a "
    "measurement.",
    deferral="None needed: definitions. A regulation that prints two unit columns is quoted in "
    "both, never converted.",
    do_not=(
        "convert one column of a regulation into the other",
        "guess which gallon, ton or bar was meant",
    ),
    proofs=UNIT_CONVERSION,
    look_up=look_up,
)
