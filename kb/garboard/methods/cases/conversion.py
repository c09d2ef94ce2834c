"""Cases for units: the published factors, and what must be refused."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["UNIT_CONVERSION"]

_NIST: Final = partial(
    Proof, result="value_out", source="nist-sp-811", seen="secondary", basis="published"
)
_OWN: Final = partial(
    Proof, result="value_out", source="definition", seen="constructed", basis="constructed"
)
_REFUSED: Final = partial(
    Proof,
    result="value_out",
    source="definition",
    seen="constructed",
    basis="constructed",
    expect=Expect.REFUSE,
)

_PUBLISHED: Final = (
    _NIST(
        name="unit-psi-pa",
        call={"p_difference": "1 psi(d)", "to_unit": "Pa"},
        value="6894.75729316836",
        relative=1e-9,
        independent="pint 0.25.3: 6894.75729317 Pa",
    ),
    _NIST(
        name="unit-atm-pa",
        call={"p_difference": "1 atm(d)", "to_unit": "Pa"},
        value="101325",
        relative=1e-12,
        independent="pint 0.25.3: 101325.0 Pa",
    ),
    _NIST(
        name="unit-kgf-cm2",
        call={"p_difference": "1 kgf/cm2(d)", "to_unit": "Pa"},
        value="98066.5",
        relative=1e-12,
        independent="pint 0.25.3: 98066.5 Pa",
    ),
    _NIST(
        name="unit-gal-us",
        call={"volume": "1 gal_us", "to_unit": "L"},
        value="3.785411784",
        relative=1e-12,
        independent="pint 0.25.3: 3.785411784 L",
    ),
    _NIST(
        name="unit-gal-imp",
        call={"volume": "1 gal_imp", "to_unit": "L"},
        value="4.54609",
        relative=1e-12,
        seen="remembered",
        independent="pint 0.25.3: 4.54609 L",
        note="definition; also held in two libraries",
    ),
    _NIST(
        name="unit-lbf",
        call={"force": "1 lbf", "to_unit": "N"},
        value="4.4482216152605",
        relative=1e-12,
        independent="pint 0.25.3: 4.44822161526 N",
    ),
    _NIST(
        name="unit-hp",
        call={"power": "1 hp", "to_unit": "W"},
        value="745.69987158227",
        relative=1e-9,
        independent="pint 0.25.3: 745.699871582 W",
    ),
    _NIST(
        name="unit-inhg",
        call={"p_difference": "1 inHg(d)", "to_unit": "Pa"},
        value="3386.389",
        relative=1e-6,
        independent="pint 0.25.3: 3386.38864034 Pa",
    ),
    _NIST(
        name="unit-cfm",
        call={"flow": "1 ft3/min", "to_unit": "m3_per_h"},
        value="1.69901079552",
        relative=1e-9,
        independent="pint 0.25.3: 1.69901079552 m3/h",
    ),
    _NIST(
        name="unit-bar-psi",
        call={"p_difference": "1 bar(d)", "to_unit": "psi"},
        value="14.503773773",
        relative=1e-9,
        independent="pint 0.25.3: 14.503773773 psi",
    ),
    _OWN(
        name="unit-temp-reading",
        call={"temperature": "100 degF", "to_unit": "degC"},
        value="37.77777778",
        absolute="0.000001",
        must_not_give=(("55.55555556", "offset forgotten"),),
        independent="pint 0.25.3: 37.77777778 degC",
    ),
    _REFUSED(
        name="unit-bare-gallon",
        call={"volume": "50 gal", "to_unit": "L"},
        value="say which gallon",
    ),
    _REFUSED(
        name="unit-untagged-pressure",
        call={"p_difference": "30 bar", "to_unit": "kPa"},
        value="does not say what it is counted from",
        source="house-rule",
    ),
    _NIST(
        name="unit-ft-lbf",
        call={"energy": "1 ft.lbf", "to_unit": "J"},
        value="1.3558179483314",
        relative=1e-9,
        independent="pint 0.25.3: 1.35581794833 J",
    ),
    _NIST(
        name="unit-nautical-mile",
        call={"length": "1 nmi", "to_unit": "m"},
        value="1852",
        relative=1e-12,
        independent="pint 0.25.3: 1852.0 m",
    ),
)

_TRAPS: Final = (
    _REFUSED(
        name="unit-kg-per-cm2",
        call={"p_difference": "7 kg/cm2", "to_unit": "kPa"},
        value="kgf/cm2",
        note="mass per area is not a pressure",
    ),
    _REFUSED(
        name="unit-different-dimension",
        call={"p_difference": "1 bar(d)", "to_unit": "L"},
        value="a pressure difference cannot be shown in L, which measures a volume",
    ),
    _REFUSED(
        name="unit-decimal-comma",
        call={"length": "3,5 m", "to_unit": "ft"},
        value="comma inside a number",
    ),
    _REFUSED(
        name="unit-name-outside-the-table",
        call={"flow": "100 cfm", "to_unit": "m3_per_h"},
        value="ft3/min",
    ),
    _REFUSED(
        name="unit-gauge-as-difference",
        call={"p_difference": "30 bar(g)", "to_unit": "kPa"},
        value="is a gauge pressure",
    ),
    _REFUSED(
        name="unit-torque-as-energy",
        call={"energy": "10 N.m", "to_unit": "ft.lbf"},
        value="torque",
    ),
    _REFUSED(
        name="unit-below-vacuum",
        call={"p_gauge": "-102 kPa(g)", "to_unit": "bar"},
        value="below a perfect vacuum",
    ),
    _OWN(
        name="unit-gauge-stays-gauge",
        call={"p_gauge": "100 psi(g)", "to_unit": "bar"},
        value="6.89475729316836",
        relative=1e-12,
        must_not_give=(("7.908007293", "a gauge reading shown as absolute"),),
    ),
    _OWN(
        name="unit-temp-rise",
        call={"rise": "9 degF(d)", "to_unit": "degC"},
        value="5",
        relative=1e-12,
        must_not_give=(("-12.7777778", "a rise taken for a thermometer reading"),),
    ),
)

UNIT_CONVERSION: Final = _PUBLISHED + _TRAPS
