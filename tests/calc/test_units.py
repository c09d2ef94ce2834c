"""Units: every name against the units library, tags, compounds, and the traps."""

import math
import subprocess
import sys
from contextlib import suppress
from fractions import Fraction

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.calc.fault import CalcFault
from garboard.calc.kinds import BASES, PRESSURE, TURN, Kind
from garboard.calc.unit_names import FREE_AIR, LIBRARY_NAMES, ROLES, TRAPS, Role
from garboard.calc.units import as_difference, read_unit
from garboard.errors import Diagnostic, Where
from tests.calc.desk import desk

OPINION: pint.UnitRegistry[float] = pint.UnitRegistry()


def refusal(text: str) -> Diagnostic:
    with pytest.raises(CalcFault) as found:
        read_unit(text, Where("a.md", 4, 7))
    return found.value.diagnostic


def tagged(name: str) -> str:
    """A name as it may stand alone."""
    counted = ROLES.get(name) in (Role.PRESSURE, Role.KELVIN)
    return f"{name}(d)" if counted else name


@pytest.mark.parametrize("name", LIBRARY_NAMES)
def test_every_unit_agrees_with_the_units_library(name: str) -> None:
    other = LIBRARY_NAMES[name]
    if ROLES.get(name) is Role.THERMOMETER:
        other = f"delta_{other}"
    quantity = OPINION.Quantity(1.0, other).to_base_units()
    factor = quantity.magnitude
    if ROLES.get(name) is Role.TURN:
        factor /= 2 * math.pi

    unit = read_unit(f"{name}(d)" if other.startswith("delta") else tagged(name))

    assert float(unit.factor) == pytest.approx(factor, rel=1e-14)
    dimension = {f"[{base}]": power for base, power in zip(BASES, unit.type.dimension, strict=True)}
    dimension["[luminosity]"] = dimension.pop("[light]")
    turns = dimension.pop("[turn]")
    assert turns == (1 if ROLES.get(name) is Role.TURN else 0)
    assert {base: power for base, power in dimension.items() if power} == {
        base: power for base, power in quantity.dimensionality.items() if power
    }


@pytest.mark.parametrize(
    ("text", "factor"),
    [
        ("kgf/cm2", 98066.5), ("N/mm2", 1e6), ("inch2", 0.00064516), ("m3/s", 1.0),
        ("m3/min", 1 / 60), ("L/min", 1e-3 / 60), ("ft3/min", 0.0004719474432),
        ("gal_us/min", 6.30901964e-05), ("gal_us/h", 1.0515032733333334e-06), ("kg/h", 1 / 3600),
        ("lb/h", 0.00012599788055555556), ("g/m3", 1e-3), ("t/m3", 1e3), ("kg/L", 1e3),
        ("ft.lbf", 1.3558179483314), ("mm2/s", 1e-6), ("1/K", 1.0), ("1/degF", 1.8),
        ("ohm.cmil/ft", 1.6624261130101e-09), ("g/kWh", 2.7777777777777777e-10),
        ("kJ/(kg.K)", 1000.0), ("g/mol", 1e-3), ("deg/s2", 0.017453292519943295), ("m/s2", 1.0),
        ("1/inch", 39.37007874015748), ("1/min", 1 / 60), ("mm2", 1e-6), ("cSt", 1e-6),
        ("cP", 1e-3), ("N.m", 1.0), ("mohm", 1e-3), ("mAh", 3.6), ("W/(m2.degC)", 1.0),
    ],
)  # fmt: skip
def test_compound_units_are_put_together_here(text: str, factor: float) -> None:
    assert float(read_unit(text).factor) == pytest.approx(factor, rel=1e-9)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("m/s^2", "m/s2"), ("m/s²", "m/s2"), ("m3(n)/h", "m^3(n)/h"), ("N·m", "N.m"),
        ("N⋅m", "N.m"), ("s^-1", "1/s"), ("s⁻¹", "1/s"), ("kJ/(kg.K)", "kJ.kg^-1.K^-1"),
        ("W/(m2.K)", "W/(K.m2)"),
    ],
)  # fmt: skip
def test_a_unit_may_be_written_in_several_ways(one: str, other: str) -> None:
    left, right = read_unit(one), read_unit(other)

    assert (left.factor, left.type) == (right.factor, right.type)


def test_tags_say_what_a_pressure_is_counted_from() -> None:
    kinds = [read_unit(f"bar({tag})").type.kind for tag in "gad"]

    assert kinds == [Kind.READING, Kind.ABSOLUTE, Kind.PLAIN]
    assert read_unit("kgf/cm2(g)").type.kind is Kind.READING
    assert read_unit("bar(a)").type.pressure_datum == 1


def test_a_stress_and_a_compound_take_no_tag() -> None:
    assert read_unit("N/mm2").type.dimension == PRESSURE
    assert read_unit("N/mm2").type.kind is Kind.PLAIN
    assert read_unit("mbar/m").type.kind is Kind.PLAIN
    assert read_unit("bar(d)/m").factor == read_unit("bar/m").factor


def test_a_thermometer_reads_from_its_own_zero() -> None:
    assert read_unit("degC").to_si(25.0) == 298.15
    assert read_unit("degF").offset == Fraction(45967, 180)
    assert read_unit("degF").to_si(32.0) == pytest.approx(273.15, rel=1e-15)
    assert read_unit("degC(d)").to_si(25.0) == 25.0


def test_rpm_counts_turns() -> None:
    unit = read_unit("rpm")

    assert unit.factor == Fraction(1, 60)
    assert unit.type.dimension[BASES.index("turn")] == 1
    assert read_unit("rev").type.dimension == TURN


@pytest.mark.parametrize("tag", FREE_AIR)
def test_free_air_is_an_amount_in_every_volume(tag: str) -> None:
    reference = read_unit(f"m3({tag})").factor

    assert read_unit(f"L({tag})").factor == reference / 1000
    assert read_unit(f"ft3({tag})").type == read_unit("m3(n)").type
    assert read_unit(f"kg/m3({tag})").factor == 1 / reference


@pytest.mark.parametrize("name", TRAPS)
def test_every_trap_is_refused_with_its_cure(name: str) -> None:
    found = refusal(name)

    assert f"`{name}" in found.text or name.startswith("\u00b0")
    assert found.help == TRAPS[name]
    assert found.family == "UNIT"


@pytest.mark.parametrize(
    ("text", "column", "family", "cure"),
    [
        ("bar", 7, "DATUM", "bar(g) for a gauge reading"),
        ("K", 7, "DATUM", "K(a) for an absolute temperature"),
        ("degR", 7, "DATUM", "degR(a)"),
        ("bra", 7, "UNIT", "did you mean"),
        ("m/xyz", 9, "UNIT", "list of units"),
        ("kg/cm2", 7, "UNIT", "kgf/cm2"),
        ("lb/inch2", 7, "UNIT", "lbf/inch2"),
        ("J/kg.K", 7, "UNIT", "J/(kg.K)"),
        ("J/kg/K", 7, "UNIT", "J/(kg.K)"),
        ("bar(x)", 7, "UNIT", "(g) (a) (d)"),
        ("degC(a)", 7, "UNIT", "K(a)"),
        ("L(g)", 7, "UNIT", "(n) (s) (anr)"),
        ("m2(n)", 7, "UNIT", "leave the tag out"),
        ("kg(d)", 7, "UNIT", "leave the tag out"),
        ("bar(g)/m", 7, "DATUM", "bar or bar(d)"),
        ("m^13", 7, "LIMIT", "-12 to 12"),
        ("m^0", 7, "LIMIT", "-12 to 12"),
        ("m(", 8, "UNIT", "N.m"),
        ("m/(s.kg", 7, "UNIT", "close it"),
        ("m.", 8, "UNIT", "N.m"),
        ("N*m", 8, "UNIT", "N.m"),
        ("m-1", 8, "UNIT", "s^-1"),
        ("m s", 8, "UNIT", "no space inside"),
        ("(((((((m)))))))", 7, "LIMIT", "simpler"),
        ("m." * 40, 7, "LIMIT", "simpler units"),
    ],
)
def test_what_is_no_unit_is_refused_at_its_place(
    text: str, column: int, family: str, cure: str
) -> None:
    found = refusal(text)

    assert found.where == Where("a.md", 4, column)
    assert found.family == family
    assert cure in found.help


@pytest.mark.parametrize(
    ("line", "code", "cure"),
    [
        ("p = 100 psi", "datum-missing", "psi(g)"),
        ("V = 50 gal", "unreadable-line", "gal_us or gal_imp"),
        ("p = 7 kg/cm2", "unreadable-line", "kgf/cm2"),
        ("L = 3,5 m", "unreadable-line", "3.5"),
        ("q = 20 cfm", "unreadable-line", "ft3/min"),
        ("p = 2 Mpa", "unreadable-line", "MPa"),
        ("p = 2 mBar", "unreadable-line", "mbar"),
        ("V = 2 Gal", "unreadable-line", "gal_us"),
        ("P = 2 PS", "unreadable-line", "hp_metric"),
        ("T = 2 R", "unreadable-line", "degR"),
        ("T = 2 F", "unreadable-line", "degF"),
        ("T = 2 C", "unreadable-line", "degC"),
        ("d = 2 mil", "unreadable-line", "0.001 inch"),
        ("m = 2 ton", "unreadable-line", "t is 1000 kg"),
        ("p = 10 bar g", "unreadable-line", "10 bar(g)"),
        ("p = 30 bar(g) + 1 bar(a)", "datum-missing", "absolute(...)"),
        ("p = 30 bar + 1 atm", "datum-missing", "bar(g)"),
        ("E = 100 kg * 4186 J/(kg.K) * 5 degC in kJ", "datum-missing", "subtract another reading"),
        ("r = 45 degC / 15 degC", "datum-missing", "absolute(...)"),
        ("E = 50 N.m in J", "dimension-clash", "angle"),
        ("E = 50 N.m + 3 J", "dimension-clash", "angle"),
        ("f = 60 rpm in Hz", "dimension-clash", "unit"),
        ("E = 50 N*m", "unreadable-line", ""),
    ],
)
def test_the_traps_of_the_trade_are_refused_in_a_line(line: str, code: str, cure: str) -> None:
    found = desk(line)

    assert found.fault.code == code
    assert cure in found.fault.help


def test_the_tag_of_free_air_is_part_of_the_amount() -> None:
    assert desk("V = 2 m3(s) in m3(n)\n").text("V") == "1.90 m3(n)"


@pytest.mark.parametrize(
    ("text", "difference"),
    [("bar(g)", "bar(d)"), ("psi(a)", "psi(d)"), ("degC", "K(d)"), ("degF", "degF(d)"),
     ("K(a)", "K(d)"), ("L", "L"), ("N/mm2", "N/mm2"), ("kgf/cm2(g)", "kgf/cm2(d)")],
)  # fmt: skip
def test_every_unit_has_a_unit_for_differences(text: str, difference: str) -> None:
    assert as_difference(read_unit(text)).text == difference


@given(name=st.sampled_from(sorted(LIBRARY_NAMES)), value=st.floats(-1e9, 1e9))
def test_a_value_goes_to_si_and_back(name: str, value: float) -> None:
    unit = read_unit(tagged(name))

    assert unit.from_si(unit.to_si(value)) == pytest.approx(value, rel=1e-12, abs=1e-9)


@settings(max_examples=300)
@given(text=st.text(st.sampled_from("mskgbarKdegC()/.^-123g·²%"), max_size=20))
def test_a_garbled_unit_is_read_or_refused_and_nothing_else(text: str) -> None:
    factor = Fraction(1)

    with suppress(CalcFault):
        factor = read_unit(text).factor

    assert factor > 0


def test_reading_nothing_that_has_a_unit_does_not_load_the_units_library() -> None:
    program = (
        "import sys; import garboard.calc.network; from garboard.calc.units import read_unit;"
        "read_unit(''); print('pint' in sys.modules)"
    )

    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )

    assert done.stdout.strip() == "False"
