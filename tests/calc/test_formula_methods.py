"""Formula methods called from a line: expanded into steps like an author's own lines."""

import pytest

from garboard.calc.method import Method, Parameter, Result
from garboard.calc.show import show_range
from garboard.calc.value import Verdict
from garboard.errors import Severity, Where
from tests.calc.desk import desk
from tests.calc.sample_methods import CALL, METHODS, SITE, formula


def test_results_of_a_formula_method_are_bound_under_the_name() -> None:
    found = desk(f"{CALL}\nr = x.stored / 2 in L(n)\nrequire x.starts >= 6", SITE, METHODS)

    assert found.faults == ()
    assert found.si("x.stored") == pytest.approx(0.5 * 20e5 / 101325, rel=1e-14)
    assert found.text("x.starts") == "12"
    assert found.text("r") == "4930 L(n)"
    assert found.requirement.verdict is Verdict.HOLDS
    assert "desk.x" not in found.network.values


def test_a_single_result_is_the_name_itself() -> None:
    found = desk("x = pressure_ratio(p_1 = 1 bar(a), p_2 = 7 bar(a))\ny = x + 1", None, METHODS)

    assert found.text("x") == "7.00"
    assert found.si("y") == 8.0
    assert found.line("x").worked == ("x = pressure_ratio(p_1 = 1 bar(a), p_2 = 7 bar(a)) = 7.00")


def test_ranges_go_through_a_method_and_its_defaults() -> None:
    found = desk(CALL, SITE, METHODS)

    low, high = found.ends("x.stored")
    assert low == pytest.approx(found.si("x.stored") * 273.15 / 283.15)
    assert high == pytest.approx(found.si("x.stored") * 273.15 / 263.15)
    assert found.value("x.stored").uses == ("site.atmosphere", "site.T_room")
    assert show_range(found.value("x.starts")) == "11 to 12 at worst"


def test_the_inner_lines_of_a_formula_are_shown_with_its_defaults() -> None:
    line = desk(CALL, SITE, METHODS).line("x")

    shown = {step.name: step.worked for step in line.steps}
    assert list(shown) == ["p_atm", "T", "full", "left", "stored", "starts"]
    assert shown["T"] == "T = absolute(site.T_room) = 273 K(a)"
    assert shown["full"] == (
        "full = free_air(V, difference(p_now) + p_atm, T)"
        " = free_air(500 L, difference(30 bar(g)) + 101325 Pa(a), 273 K(a)) = 15.3 m3(n)"
    )
    assert [step.label for step in line.steps if step.value] == ["usable air", "whole starts left"]
    assert line.value is None
    assert line.worked == CALL


def test_a_reading_handed_to_an_absolute_parameter_is_converted_and_shown() -> None:
    found = desk("x = pressure_ratio(p_1 = 1 bar(a), p_2 = 6 bar(g))", SITE, METHODS)

    assert found.si("x") == pytest.approx(7.01325)
    shown = {step.name: step.worked for step in found.line("x").steps}
    assert shown["p_2"] == "p_2 = absolute(6 bar(g)) = 6 bar(g) + 101325 Pa(a) = 7.01 bar(a)"


def test_a_line_whose_parameter_was_left_out_is_left_out_with_it() -> None:
    found = desk("x = starts_left(V = 500 L, p_now = 30 bar(g), t = 1 h)", SITE, METHODS)

    assert found.faults == ()
    assert found.text("x.fill_rate") == "15.3 m3(n)/h"
    assert "desk.x.starts" not in found.network.values


def test_a_result_that_was_left_out_says_what_it_would_take() -> None:
    call = "x = starts_left(V = 500 L, p_now = 30 bar(g), p_min = 10 bar(g))"

    found = desk(f"{call}\nn = x.starts", SITE, METHODS)

    assert found.fault.where == Where("desk.md", 11, 5)
    assert found.fault.family == "METHOD"
    assert found.fault.help == "give v_start: air per start must be measured"


@pytest.mark.parametrize(
    ("arguments", "column", "says", "cure"),
    [
        (
            "V = 500 L, p_now = 30 bar(g), t = 1 h, v_start = 0.8 m3(n)", 56,
            "`v_start = 0.8 m3(n)` leads to no result", "give p_min: it must be measured",
        ),
        (
            "V = 500 L, p_now = 30 bar(g)", 5,
            "works nothing out", "give p_min: it must be measured, never zero",
        ),
        ("V = 500 L, q = 3", 28, "starts_left takes no `q`", "it takes V, p_now"),
        ("V = 500 L, p_nov = 3 bar(g)", 28, "takes no `p_nov`", "did you mean p_now?"),
        ("V = 500 L, V = 300 L", 28, "`V` is given twice", "give it once"),
        ("500 L", 17, "an argument of `starts_left` has no name", "name every argument"),
        ("V = [1 L, 2 L]", 21, "takes no list", "give one value"),
        ("V = 30 bar(g)", 21, "`V` of starts_left is a volume", "a unit such as m3"),
        ("V = 5 m3(n)", 21, "`5 m3(n)` is an amount of free air", "a unit such as m3"),
        ("p_now = 30 bar(a)", 25, "is a gauge pressure", "gauge(...)"),
        ("p_now = 30 bar(d)", 25, "is a gauge pressure", "gauge(...)"),
        ("T = 10 K(d)", 21, "is an absolute temperature", "absolute(...)"),
        ("V = 500 L +/- 1 L", 27, "a tolerance belongs to", "line of its own"),
    ],
)  # fmt: skip
def test_arguments_that_do_not_fit_are_refused_at_their_place(
    arguments: str, column: int, says: str, cure: str
) -> None:
    found = desk(f"x = starts_left({arguments})", SITE, METHODS).fault

    assert found.where == Where("desk.md", 10, column)
    assert says in found.text
    assert cure in found.help


@pytest.mark.parametrize(
    ("line", "column", "says"),
    [
        ("x = 2 * pressure_ratio(p_1 = 1 bar(a), p_2 = 7 bar(a))", 9, "inside an expression"),
        ("x = pressure_ratio(p_1 = 1 bar(a), p_2 = 7 bar(a)) + 1", 5, "inside an expression"),
        ("require pressure_ratio(p_1 = 1 bar(a)) > 1", 9, "inside an expression"),
        ("x = presure_ratio(p_1 = 1 bar(a))", 5, "no function or method is called"),
        ("x = pressure_ratio p_1", 20, "`p_1` does not belong here"),
    ],
)
def test_a_method_stands_alone_on_the_right_of_a_name(line: str, column: int, says: str) -> None:
    found = desk(line, SITE, METHODS).fault

    assert found.where.column == column
    assert says in found.text


def test_a_misspelt_method_gets_the_nearest_one() -> None:
    found = desk("x = presure_ratio(p_1 = 1 bar(a))", SITE, METHODS).fault

    assert found.help == "did you mean pressure_ratio?"


def test_outside_its_limits_a_method_gives_nothing_at_all() -> None:
    found = desk(f"{CALL.replace('30 bar(g)', '45 bar(g)')}\nn = x.starts", SITE, METHODS)

    assert found.fault.code == "outside-validity"
    assert found.fault.severity is Severity.HOLD
    assert found.fault.text == (
        "`p_now = 45 bar(g)` is outside starts_left: above 40 bar gauge air is not ideal"
    )
    assert found.fault.help == "keep p_now <= 40 bar(g), here p_now = 45 bar(g); or measure instead"
    assert found.fault.where.column == 28
    assert found.text("x.starts") == "not computed"
    assert found.text("x.stored") == "not computed"
    assert found.text("n") == "not computed"


def test_a_limit_on_what_is_worked_out_refuses_too() -> None:
    found = desk("x = pressure_ratio(p_1 = 1 bar(a), p_2 = 9 bar(a))", SITE, METHODS).fault

    assert found.family == "VALIDITY"
    assert "too much for one stage" in found.text
    assert "ratio = 9.00" in found.help


def test_a_corner_outside_a_limit_leaves_the_range_unknown() -> None:
    found = desk(
        "p = 39.8 bar(g) +/- 0.5 bar\n"
        + CALL.replace("p_now = 30 bar(g)", "p_now = p")
        + "\nrequire x.starts >= 2",
        SITE,
        METHODS,
    )

    assert found.faults == ()
    assert show_range(found.value("x.starts")) == "range unknown"
    assert found.requirement.verdict is Verdict.NOMINAL


def test_an_alarm_of_a_formula_goes_off_as_given_or_at_the_worst_corner() -> None:
    calm = desk(CALL, SITE, METHODS).line("x")
    loud = desk(CALL.replace("0.8 m3(n)", "2 m3(n)"), SITE, METHODS).line("x")
    near = desk(CALL.replace("0.8 m3(n)", "1.62 m3(n)"), SITE, METHODS).line("x")

    assert calm.alarms == ()
    assert loud.alarms == ("fewer starts than required",)
    assert near.alarms == ("fewer starts than required (at the worst corner)",)


def test_without_a_stated_atmosphere_a_method_says_which_one_it_took() -> None:
    found = desk(CALL, {"site.T_room": "0 degC"}, METHODS)

    assert found.line("x").notes == ("site.atmosphere is not stated: 101325 Pa(a) is taken",)


def test_a_default_that_stands_nowhere_is_a_reference_to_nothing_at_the_call() -> None:
    found = desk(CALL, {}, METHODS).fault

    assert found.code == "reference-to-nothing"
    assert found.where == Where("desk.md", 10, 5)
    assert "in starts_left: `site.T_room` stands for nothing here" in found.text


def test_a_method_that_is_at_fault_itself_is_said_so() -> None:
    wrong = formula("wrong", (Parameter("a", ""),), (Result("r", ""),), "r = a + nothing\n")
    ring = formula("ring", (Parameter("a", ""),), (Result("r", ""),), "r = a + s\ns = r\n")
    zero = formula("zero", (Parameter("a", ""),), (Result("r", ""),), "r = 1 / (a - a)\n")
    unread = formula("unread", (Parameter("a", ""),), (Result("r", ""),), "r = 3 x\n")
    methods: dict[str, Method] = {each.name: each for each in (wrong, ring, zero, unread)}

    texts = [desk(f"x = {name}(a = 1)", {}, methods).fault.text for name in methods]

    assert texts == [
        "the method wrong is at fault: it cannot work out its `nothing`",
        "the method ring is at fault: it cannot work out its `r`",
        "in zero: `1 / (a - a)` divides by zero: `(a - a)` is 0",
        "in unread: `x` is no unit of this handbook",
    ]


def test_the_name_of_a_call_with_several_results_is_no_value() -> None:
    found = desk(f"{CALL}\ny = x + 1", SITE, METHODS).fault

    assert "`x` has several results" in found.text
    assert found.help == "say which: x.starts, x.stored"


def test_a_result_of_another_name_gets_the_nearest() -> None:
    found = desk(f"{CALL}\ny = x.start + 1", SITE, METHODS).fault

    assert found.text == "`x.start` is no result of starts_left"
    assert found.help == "did you mean x.starts?"


def test_a_unit_may_be_asked_for_where_there_is_one_result() -> None:
    one = desk("x = pressure_ratio(p_1 = 1 bar(a), p_2 = 7 bar(a)) in %", SITE, METHODS)
    many = desk(f"{CALL} in m3(n)", SITE, METHODS)

    assert one.text("x") == "700 %"
    assert "has several results" in many.fault.text
    assert many.fault.help == "ask where one is used: y = x.starts in UNIT"


def test_methods_feed_each_other_and_go_in_rings_like_lines() -> None:
    ring = desk(
        "x = pressure_ratio(p_1 = 1 bar(a), p_2 = y)\ny = x * 1 bar(a)", SITE, METHODS
    ).fault
    chain = desk(
        "x = pressure_ratio(p_1 = 1 bar(a), p_2 = 4 bar(a))\n"
        "y = pressure_ratio(p_1 = 1 bar(a), p_2 = x * 2 bar(a))",
        SITE,
        METHODS,
    )

    assert ring.code == "values-in-a-ring"
    assert chain.text("y") == "8.00"


def test_a_method_that_rests_on_a_broken_value_is_not_computed() -> None:
    found = desk(f"p = 3 x\n{CALL.replace('30 bar(g)', 'p')}", SITE, METHODS)

    assert len(found.faults) == 1
    assert found.text("x.starts") == "not computed"
    assert found.line("x").worked.startswith("x = not computed: `p` is not computed")


LASHING = formula(
    "lashing_load",
    (
        Parameter("m", "mass", "kg"),
        Parameter(
            "use",
            "what it holds",
            words=("stores",),
            refused={"people": "people hang from nothing that was only worked out"},
            missing="say what hangs from it",
            required=True,
        ),
        Parameter("place", "where it hangs", words=("deck", "hold")),
    ),
    (Result("load", "load", "N"),),
    "load = m * 1 g0 in N  # load\n",
)
LASHINGS: dict[str, Method] = {"lashing_load": LASHING}


def test_a_word_of_a_formula_lets_the_sum_pass() -> None:
    found = desk("x = lashing_load(m = 10 kg, use = stores, place = hold)", None, LASHINGS)

    assert found.faults == ()
    assert found.text("x") == "98.1 N"


def test_a_word_of_a_formula_may_be_refused_with_its_reason() -> None:
    found = desk("x = lashing_load(m = 10 kg, use = people)", None, LASHINGS)

    assert found.fault.code == "outside-validity"
    assert "people hang from nothing that was only worked out" in found.fault.text
    assert found.fault.help == "it answers for stores only"
    assert found.value("x").si is None


def test_what_cannot_be_done_without_is_asked_for() -> None:
    found = desk("x = lashing_load(m = 10 kg)", None, LASHINGS)

    assert "does not say `use`" in found.fault.text
    assert found.fault.help == "give use: say what hangs from it"


def test_an_unknown_word_of_a_formula_gets_the_nearest_known_one() -> None:
    found = desk("x = lashing_load(m = 10 kg, use = stores, place = dek)", None, LASHINGS)

    assert found.fault.family == "METHOD"
    assert "did you mean deck?" in found.fault.help


def test_a_quantity_is_no_word_of_a_formula() -> None:
    found = desk("x = lashing_load(m = 10 kg, use = 3 kg)", None, LASHINGS)

    assert found.fault.family == "METHOD"
    assert "is no word for `use`" in found.fault.text
