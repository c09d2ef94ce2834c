"""Formula methods whose lines wait for a word, whose results have limits of their own."""

from dataclasses import replace

import pytest

from garboard.calc.method import Limit, Parameter, Result
from garboard.calc.show import show_range
from tests.calc.desk import desk
from tests.calc.sample_methods import formula

AIR = replace(
    formula(
        "air_for",
        (
            Parameter("power", "power of the engine", "kW"),
            Parameter(
                "maker", "whose rule", words=("north", "south", "none"), missing="name the maker"
            ),
            Parameter("air", "air, where it is known", "m3/min"),
            Parameter("rise", "rise allowed", "K(d)", missing="say how warm it may get"),
        ),
        (
            Result("air", "air by that rule", "m3/min"),
            Result("area", "opening by that rule", "cm2"),
            Result("share", "share of the rise"),
        ),
        """
air = 0.5 m3/(min.kW) * power in m3/min  # by the rule of the north
area = 2 cm2/kW * power in cm2  # by the rule of both
share = rise / (10 K(d))  # of ten kelvin
""",
        (
            Limit("power <= 500 kW", "no rule above that", of=("air",)),
            Limit("power <= 900 kW", "no engine as large as that"),
        ),
    ),
    only={"air": ("maker", "north"), "area": ("maker", "north", "south")},
)
METHODS = {"air_for": AIR}


def test_a_word_opens_the_lines_that_are_meant_for_it() -> None:
    north = desk("x = air_for(power = 100 kW, maker = north)", None, METHODS)
    south = desk("x = air_for(power = 100 kW, maker = south)", None, METHODS)

    assert (north.text("x.air"), north.text("x.area")) == ("50.0 m3/min", "200 cm2")
    assert south.text("x.area") == "200 cm2"
    assert "desk.x.air" not in south.network.values


def test_a_result_of_another_word_says_which_word_was_said_and_what_is_wanted() -> None:
    found = desk("x = air_for(power = 100 kW, maker = south)\ny = x.air", None, METHODS).fault

    assert found.help == "maker is south: name the maker"


def test_a_line_without_its_word_is_refused_with_the_reason() -> None:
    found = desk("x = air_for(power = 100 kW)", None, METHODS).fault

    assert found.family == "METHOD"
    assert found.help == "give maker: name the maker"


def test_a_word_that_opens_a_line_must_lead_to_a_result() -> None:
    found = desk("x = air_for(rise = 5 K(d), maker = south)", None, METHODS).fault

    assert found.text == "`maker = south` leads to no result of air_for"
    assert found.help == "give power; or leave maker out"


def test_a_word_that_only_shuts_lines_may_be_said_for_the_reader() -> None:
    found = desk("x = air_for(rise = 5 K(d), maker = none)", None, METHODS)

    assert found.text("x.share") == "0.500"


@pytest.mark.parametrize("said", ["west", "5 kW", "norht"])
def test_what_is_none_of_the_words_is_refused(said: str) -> None:
    found = desk(f"x = air_for(power = 100 kW, maker = {said})", None, METHODS).fault

    assert "is no word for `maker` of air_for" in found.text
    assert "north, south, none" in found.help


def test_a_parameter_stands_in_the_place_of_the_line_of_its_name() -> None:
    found = desk("x = air_for(air = 7 m3/min)", None, METHODS)

    assert found.text("x.air") == "7 m3/min"


def test_a_limit_of_one_result_holds_that_one_back_and_says_why() -> None:
    found = desk("x = air_for(power = 600 kW, maker = north)\ny = x.air", None, METHODS)

    assert found.text("x.area") == "1200 cm2"
    assert found.fault.help == "no rule above that, here power = 600 kW"
    assert found.line("x").notes == ("not given: air; no rule above that, here power = 600 kW",)
    assert [step.name for step in found.line("x").steps] == ["area"]


def test_results_held_back_for_one_reason_are_named_together() -> None:
    both = replace(
        AIR, limits=(Limit("power <= 500 kW", "no rule above that", of=("air", "area")),)
    )

    line = desk(
        "x = air_for(power = 600 kW, maker = north, rise = 5 K(d))", None, {"air_for": both}
    ).line("x")

    assert line.notes == ("not given: air, area; no rule above that, here power = 600 kW",)


def test_a_refusal_asks_for_what_the_result_lacks_that_was_meant() -> None:
    found = desk("x = air_for(maker = north)", None, METHODS).fault

    assert found.help == "give power"


def test_a_limit_of_the_call_still_refuses_all_of_it() -> None:
    found = desk("x = air_for(power = 950 kW, maker = north)\ny = x.area", None, METHODS)

    assert "no engine as large as that" in found.fault.text
    assert found.text("x.area") == "not computed"


def test_a_corner_outside_a_limit_of_one_result_leaves_only_its_range_unknown() -> None:
    found = desk("p = 480 kW +/- 40 kW\nx = air_for(power = p, maker = north)", None, METHODS)

    assert show_range(found.value("x.air")) == "range unknown"
    assert show_range(found.value("x.area")) == "880 to 1040 cm2 at worst"
