"""The traps of units, one by one: refused with the cure, or right; the wrong number never comes out.

Each stands as it is written by somebody in a hurry, with what a general library or a habit would
make of it. Traps of single methods are tested with those methods.
"""

import pytest

from tests.calc.desk import desk

REFUSED = {
    "a gauge reading read as absolute": ("p = 100 psi", "psi(g) for a gauge reading"),
    "an imperial gallon for a US one": ("V = 50 gal", "gal_us or gal_imp"),
    "a mass on an area for a pressure": ("p = 7 kg/cm2", "kgf/cm2"),
    "a decimal comma": ("L = 3,5 m", "3.5"),
    "centifermi for cubic feet a minute": ("q = 5 cfm", "ft3/min"),
    "a capital letter too few": ("p = 3 Mpa(g)", "MPa"),
    "a capital letter too many": ("p = 3 mBar(g)", "mbar"),
    "galileo for gallons": ("V = 3 Gal", "gal_us"),
    "petasiemens for horsepower": ("P = 3 PS", "hp_metric"),
    "the gas constant for a temperature": ("T = 500 R", "degR"),
    "farad for a temperature": ("T = 50 F", "degF"),
    "coulomb for a temperature": ("T = 50 C", "degC"),
    "an angle for a thousandth of an inch": ("d = 5 mil", "0.001 inch"),
    "the US short ton": ("m = 5 ton", "t is 1000 kg"),
    "bar times gram": ("p = 10 bar g", "10 bar(g)"),
    "a bare pressure and an atmosphere": ("p = 30 bar + 1 atm", "bar(g)"),
    "a reading and an atmosphere": ("p = 30 bar(g) + 1 atm(a)", "absolute(...)"),
    "a rise typed as a reading": ("T = 20 degC + 5 degC", "difference"),
    "a rise handed to a sum as a reading": (
        "E = 1 kg * 4186 J/(kg.K) * 5 degC in kJ",
        "subtract another reading",
    ),
    "a ratio of thermometer readings": ("r = 45 degC / 15 degC", "absolute(...)"),
    "a ratio of gauge readings": ("r = 30 bar(g) / 10 bar(g)", "absolute"),
    "a torque for an energy": ("E = 5 N.m in J", "angle"),
    "turns for radians": ("f = 60 rpm in Hz", "unit"),
    "turns added to a frequency": ("f = 60 rpm + 1 Hz", ""),
}
RIGHT = {
    "a reading counted from nothing": ("p = absolute(100 psi(g)) in bar(a)", 7.90801e5, 6.895e5),
    "an imperial gallon": ("V = 50 gal_imp in gal_us", 0.2273045, 0.1892706),
    "kilogram-force": ("p = 7 kgf/cm2(g) in bar(g)", 6.864655e5, 7e5),
    "a point": ("L = 3.5 m", 3.5, 35.0),
    "cubic feet a minute": ("q = 5 ft3/min", 0.002359737, 5e-17),
    "a rise": ("T = 5 K(d)", 5.0, 278.15),
    "a ratio of states": ("r = absolute(45 degC) / absolute(15 degC)", 318.15 / 288.15, 3.0),
    "turns a second": ("n = 60 rpm", 1.0, 6.283185),
    "air at 15 degC counted at 0 degC": ("V = 2 m3(s) / 1 m3(n)", 1.8959, 2.0),
    "feet in a metre formula": ("L = 14 ft in m", 4.2672, 14.0),
}
SITE = {"site.atmosphere": "101325 Pa(a)"}


@pytest.mark.parametrize("trap", REFUSED)
def test_a_trap_is_refused_with_its_cure_and_gives_no_number(trap: str) -> None:
    line, cure = REFUSED[trap]
    found = desk(line, SITE)

    assert cure in found.fault.help
    assert found.fault.help
    assert [value.si for name, value in found.network.values.items() if "site" not in name] == (
        [None]
    )


@pytest.mark.parametrize("trap", RIGHT)
def test_what_was_meant_gives_the_right_number_and_not_the_wrong_one(trap: str) -> None:
    line, right, wrong = RIGHT[trap]
    found = desk(line, SITE).si(line.partition(" ")[0])

    assert found == pytest.approx(right, rel=1e-4)
    assert found != pytest.approx(wrong, rel=1e-4)


def test_free_air_of_a_receiver_is_not_counted_down_to_zero() -> None:
    """500 L at 30 bar gauge, used down to 10: 9.87 m3, where the whole content is 15.30."""
    lines = "\n".join(
        f"{name} = free_air(500 L, {reading} bar(g), 15 degC) in m3(s)"
        for name, reading in (("full", 30), ("left", 10))
    )
    found = desk(f"{lines}\nusable = full - left in m3(s)", SITE)

    assert found.text("full") == "15.3 m3(s)"
    assert found.text("usable") == "9.87 m3(s)"
