"""Stored energy, welds, motion, movement and walls: what these methods must never print."""

import pytest

from garboard.calc.network import Network
from garboard.methods import METHODS
from tests.methods.said import Work, reason

TEN = "V = 50 L, p_test = 10 bar(g), Pa = 101 kPa(a)"
BRACKET = "P = 30 kN, e = 140 mm, leg = 8 mm, l = 440 mm, joint_eff = 0.7"
ROLL = "theta = 25 deg, T = 10 s, heave = 0.2"
SHELL = "P = 100 psi(g), R = 48.125 inch, S = 17500 psi(d), E = 0.85"
PIPE = "L = 10 m, dT = 160 K(d), range_from = 0 degC, range_to = 300 degC"


def numbers(network: Network) -> list[float]:
    return [value.si for value in network.values.values() if value.si is not None]


def test_three_gas_models_and_the_water_stand_under_their_own_names(work: Work) -> None:
    found = work(f"x = gas_test_stored_energy({TEN})")

    assert found.diagnostics == ()
    assert {name.removeprefix("case.x."): value.text for name, value in found.values.items()} == {
        "E_isentropic": "68.1 kJ",
        "E_brode": "125 kJ",
        "E_isothermal": "132 kJ",
        "E_liquid": "0.0114 kJ",
        "times_water": "5990",
    }


def test_no_gas_model_is_called_just_energy(work: Work) -> None:
    found = work(f"x = gas_test_stored_energy({TEN})", "y = x.E")

    assert found.values["case.y"].si is None


def test_the_energy_of_the_chamber_article_never_comes_out(work: Work) -> None:
    found = work(
        "x = gas_test_stored_energy(V = 400 gal_us, P = 404.7 psi(a), Pa = 14.696 psi(a), k = 1.41)"
    )

    foot_pounds = [number / 1.3558179483314 for number in numbers(found)]
    assert foot_pounds[0] == pytest.approx(4.702e6, rel=0.002)
    assert not [one for one in foot_pounds if one == pytest.approx(27.574e6, rel=0.02)]


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("safe_distance", "no stand-off distance is printed"),
        ("go_or_no_go", "for the certifying authority, in writing"),
    ],
)
def test_a_distance_or_a_verdict_on_a_gas_test_is_refused(
    work: Work, question: str, said: str
) -> None:
    found = work(f"x = gas_test_stored_energy({TEN}, question = {question})")

    assert said in reason(found)
    assert numbers(found) == []


def test_neither_tnt_nor_a_distance_is_a_result() -> None:
    method = METHODS["gas_test_stored_energy"]

    assert {result.unit for result in method.results} == {"kJ", ""}
    assert [one.name for one in method.results if "tnt" in one.name.lower()] == []


def test_a_gas_test_counts_the_atmosphere_on_top_of_the_reading(work: Work) -> None:
    found = work("x = gas_test_stored_energy(V = 50 L, P = 10 bar(g), Pa = 101 kPa(a))")
    bare = work("x = gas_test_stored_energy(V = 50 L, p_test = 10 bar, Pa = 101 kPa(a))")

    assert found.values["case.x.E_isentropic"].si == pytest.approx(68_080, rel=0.003)
    assert "does not say what it is counted from" in reason(bare)


@pytest.mark.parametrize(
    ("service", "said"),
    [
        ("lifting", "competent person only"),
        ("man_riding", "competent person only"),
        ("fatigue", "steady load only"),
        ("impact", "steady load only"),
        ("slamming", "steady load only"),
        ("vibration", "steady load only"),
    ],
)
def test_a_weld_that_lifts_or_shakes_is_refused(work: Work, service: str, said: str) -> None:
    found = work(f"x = weld_load_estimate({BRACKET}, service = {service})")

    assert said in reason(found)
    assert numbers(found) == []


def test_a_weld_without_its_joint_efficiency_is_refused(work: Work) -> None:
    found = work(f"x = weld_load_estimate({BRACKET.removesuffix(', joint_eff = 0.7')})")

    assert "joint efficiency missing: say how the weld is checked" in reason(found)
    assert numbers(found) == []


@pytest.mark.parametrize("name", ["weld_load_estimate", "ship_motion_load"])
def test_loads_carry_no_verdict(name: str) -> None:
    method = METHODS[name]

    assert all(result.unit in {"N/mm2", "deg/s2", "g0"} for result in method.results)


@pytest.mark.parametrize("length", ["24 m", "30 m", "49.9 m", "60 m"])
def test_a_class_factor_is_refused_at_any_length(work: Work, length: str) -> None:
    found = work(
        f"x = ship_motion_load({ROLL}, length = {length}, speed = 9 knot, "
        "question = class_length_and_speed_factor)"
    )

    assert "below 50 m" in reason(found)
    assert numbers(found) == []


def test_a_length_is_not_taken_without_being_used(work: Work) -> None:
    found = work(f"x = ship_motion_load({ROLL}, length = 60 m, speed = 9 knot)")

    assert "leads to no result" in reason(found)
    assert numbers(found) == []


def test_a_forecast_for_this_hull_is_refused(work: Work) -> None:
    found = work(f"x = ship_motion_load({ROLL}, question = forecast)")

    assert "seakeeping" in reason(found)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (f"{PIPE}, material = steel", "coefficient without source or range"),
        ("alpha = 12e-6 1/K, L = 10 m, dT = 160 K(d)", "coefficient without source or range"),
        (
            "alpha = 12e-6 1/K, L = 10 m, dT = 160 K(d), range_from = 0 degC, material = steel",
            "coefficient without source or range",
        ),
        (f"alpha = 12e-6 1/K, {PIPE.replace('K(d)', 'degC')}", "thermometer reading"),
        (f"alpha = 12e-6, {PIPE}", "is a plain number"),
        (f"alpha = 12e-6 1/K, {PIPE.replace('300', '150')}", "outside the temperatures"),
    ],
)
def test_a_movement_is_never_guessed(work: Work, line: str, said: str) -> None:
    found = work(f"x = thermal_movement({line})")

    assert said in reason(found)
    assert numbers(found) == []


def test_four_coefficients_of_steel_give_four_movements_and_none_is_held(work: Work) -> None:
    coefficients = {"a": "6.5e-6 1/degF", "b": "14e-6 1/K", "c": "12.2e-6 1/K"}
    found = work(
        *(
            f"{name} = thermal_movement(alpha = {alpha}, {PIPE})"
            for name, alpha in coefficients.items()
        )
    )

    assert [found.values[f"case.{name}"].text for name in coefficients] == [
        "18.7 mm",
        "22.4 mm",
        "19.5 mm",
    ]
    assert METHODS["thermal_movement"].parameters[0].default is None


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (SHELL, "record first"),
        (f"record = none, {SHELL}", "record first"),
        (f"record = held, {SHELL}, head = torispherical", "2:1 ellipsoidal head"),
        (f"record = held, {SHELL.replace('100 psi(g)', '9000 psi(g)')}", "above 0.385*S*E"),
        (f"record = held, {SHELL.replace('100 psi(g)', '100 psi')}", "counted from"),
    ],
)
def test_a_wall_without_a_record_or_outside_the_formula_is_refused(
    work: Work, line: str, said: str
) -> None:
    found = work(f"x = pressure_part_recheck({line})")

    assert said in reason(found)
    assert numbers(found) == []


def test_a_wall_below_its_plate_sounds_an_alarm(work: Work) -> None:
    found = work(
        "x = pressure_part_recheck(record = held, P = 740 psi(g), t = 0.906 inch, "
        "R = 24.344 inch, S = 20000 psi(d), E = 1)"
    )

    assert found.sheets["case"].lines[0].alarms == (
        "the measured wall shows less than the nameplate: no pressure until an authorised "
        "inspector has seen it",
    )


def test_a_wall_that_may_be_below_its_plate_sounds_it_too(work: Work) -> None:
    found = work(
        "wall = 0.906 inch +/- 0.02 inch",
        "x = pressure_part_recheck(record = held, P = 725 psi(g), t = wall, "
        "R = 24.344 inch, S = 20000 psi(d), E = 1)",
    )

    (alarm,) = found.sheets["case"].lines[1].alarms
    assert alarm.endswith("(at the worst corner)")
