"""What the page is handed: which steps, which inputs, what cannot be followed, and nothing more."""

import json
from collections.abc import Mapping
from typing import Any

import pytest

from garboard.calc.network import Network, evaluate
from tests.calc.desk import Desk, desk, fence
from tests.calc.sample_methods import CALL, METHODS, SITE


def program(
    text: str, names: str, givens: Mapping[str, str] | None = None, options: str = ""
) -> dict[str, Any]:
    """What the page is handed for one fence that opens some names."""
    found = desk(text, givens, METHODS, options=f"{options}; what-if {names}")
    assert found.faults == ()
    text = found.network.sheets["desk"].what_if
    handed: dict[str, Any] = json.loads(text) if text else {}
    return handed


def test_a_fence_that_opens_nothing_hands_the_page_nothing() -> None:
    assert desk("a = 3\nx = a * 2").network.sheets["desk"].what_if == ""


def test_what_does_not_rest_on_the_input_stands_as_its_number() -> None:
    found = program("a = 3\nb = 2\nc = b^2 + sqrt(16)\nx = a * c / (c - 1)", "a")

    assert found["steps"] == [["/", ["*", [0], 8], 7]]
    assert "steady" not in found
    assert [one["name"] for one in found["results"]] == ["x"]


def test_an_uncertain_number_stands_with_its_ends_beside_the_inputs() -> None:
    found = program("a = 3 m +/- 0.5 m\nb = 2 m +/- 10 %\nc = b * 2\nx = a + c\ny = a", "a")

    assert found["inputs"][0]["width"] == 0.5
    assert found["steady"] == [{"si": 2, "low": 1.8, "high": 2.2}]
    assert found["spread"] == [0, 1]
    assert found["steps"] == [["*", [1], 2], ["+", [0], [2]]]
    assert [one.get("worst") for one in found["results"]] == [[0, 1], [0]]
    assert found["results"][1]["code"] == [0]


def test_an_input_says_unit_number_tolerance_and_how_far_it_may_go() -> None:
    (one,) = program("p = 30 bar(g) +/- 5 %  # cut-out\nx = 2 * p", "p", SITE)["inputs"]

    assert (one["name"], one["label"], one["unit"]) == ("p", "cut-out", ["bar(g)", 100000, 0])
    assert (one["text"], one["si"], one["tolerance"], one["share"]) == ("30", 3000000, "5 %", 0.05)
    assert (one["lowest"], one["least"]) == (-101325, "-1.01 bar(g)")
    assert one["slider"] == [0, 60, 0.5]
    assert one["width"] == 150000
    assert "highest" not in one


@pytest.mark.parametrize(
    ("line", "limits", "slider"),
    [
        ("a = 25 degC", (0, None), [5, 45, 0.5]),
        ("a = 300 K(a)", (0, None), [0, 600, 5]),
        ("a = 5 K(d)", (None, None), [0, 10, 0.1]),
        ("a = 2 bar(d)", (None, None), [0, 4, 0.05]),
        ("a = 50 %", (0, 1), [0, 100, 1]),
        ("a = 120 %", (0, None), [0, 240, 2]),
        ("a = 6", (0, None), [0, 12, 1]),
        ("a = 6.5", (0, None), [0, 13, 0.1]),
        ("a = -3 m", (None, None), None),
        ("a = 0 m", (None, None), None),
        ("a = 2 * 250 L", (0, None), [0, 1000, 10]),
    ],
)
def test_a_field_goes_as_far_as_such_a_thing_can_be(
    line: str, limits: tuple[float | None, float | None], slider: list[float] | None
) -> None:
    (one,) = program(f"{line}\nx = a", "a")["inputs"]

    assert (one.get("lowest"), one.get("highest")) == limits
    assert one.get("slider") == slider


def test_the_slider_ends_where_a_method_ends() -> None:
    text = "p = 30 bar(g)\n" + CALL.replace("p_now = 30 bar(g)", "p_now = p")

    found = program(text, "p", SITE)

    assert found["inputs"][0]["slider"] == [10, 40, 0.2]
    assert found["words"] == [
        "above 40 bar gauge air is not ideal",
        "zero starts: do not rely on this receiver",
    ]


def test_a_result_that_rests_on_a_table_read_at_the_input_is_not_followed() -> None:
    text = "V = 0.5 m3\nr = starts_required(engine = main, volume = V)\nx = V * 2\ny = r.starts + 1\nrequire r.starts >= 6"

    found = program(text, "V")

    assert {one["name"]: one["code"] for one in found["results"]} == {
        "r.starts": None, "r.fill_time": None, "x": [1], "y": None,
    }  # fmt: skip
    assert found["requirements"] == [
        {"text": "r.starts >= 6", "label": "", "sign": ">=", "left": None}
    ]


def test_a_table_that_is_read_elsewhere_leaves_the_value_and_takes_the_range() -> None:
    text = "V = 0.5 m3 +/- 0.1 m3\na = 2\nr = starts_required(engine = main, volume = V)\nx = a * r.starts"

    (one,) = program(text, "a")["results"]

    assert one["code"] == [1]
    assert one["worst"] is None


def test_past_twelve_uncertain_inputs_the_range_is_not_followed() -> None:
    lines = [f"b{n} = {n}.5 +/- 0.1" for n in range(13)]
    text = "\n".join(
        ["a = 2", *lines, f"x = a * ({' + '.join(f'b{n}' for n in range(13))})", "y = a * b1"]
    )

    found = program(text, "a")

    assert [one.get("worst") for one in found["results"]] == [None, [1]]
    assert len(found["steady"]) == 1


def test_a_value_that_was_sampled_between_the_corners_has_no_range_in_the_page() -> None:
    text = "a = 2 +/- 1\nx = a * ({peak} - a)\ny = a + 1\nrequire x >= 1"

    even, peaked = (program(text.format(peak=peak), "a") for peak in (9, 4))

    assert [one.get("worst") for one in even["results"]] == [[0], [0]]
    assert [one.get("worst") for one in peaked["results"]] == [None, [0]]
    assert [one.get("worst") for one in peaked["requirements"]] == [None]


def test_steps_of_other_fences_that_rest_on_the_input_come_along() -> None:
    def fences() -> Network:
        own = fence("desk", "a = 3 m\nx = above.b * 2\nrequire x >= 1 m", options="; what-if a")
        return evaluate([own, fence("above", "b = desk.a / 3 + 1 m\nc = desk.a * 9")], {}, {})

    found = json.loads(fences().sheets["desk"].what_if)

    assert found["steps"] == [["+", ["/", [0], 3], 1], ["*", [1], 2]]
    assert [one["name"] for one in found["results"]] == ["x"]


def test_an_input_that_nothing_rests_on_is_left_out() -> None:
    assert [one["name"] for one in program("a = 3\nb = 2\nx = a * 2", "b a")["inputs"]] == ["a"]
    assert program("a = 3\nb = 2\nx = a * 2", "b") == {}


def test_a_broken_line_takes_nothing_else_with_it() -> None:
    found = desk("a = 3\nb = 1 / (a - 3)\nx = a * 2\ny = b + 1", options="; what-if a")

    handed = json.loads(found.network.sheets["desk"].what_if)

    assert [one["name"] for one in handed["results"]] == ["x"]


def test_on_a_card_only_what_was_asked_for_is_listed() -> None:
    text = "a = 3\nb = a * 2\nx = b + 1  # the answer\nrequire x >= 2"

    assert [one["name"] for one in program(text, "a")["results"]] == ["b", "x"]
    assert [one["name"] for one in program(text, "a", options="; hide working")["results"]] == ["x"]


def test_a_square_stays_a_product_and_a_reading_is_counted_from_the_atmosphere() -> None:
    found = program("v = 3 m/s\np = 2 bar(g)\nx = v^2\ny = absolute(p)\nz = gauge(y)", "v p", SITE)

    assert found["steps"] == [["square", [0]], ["+", [1], 101325], ["-", [3], 101325]]


def test_an_alarm_comes_with_the_limits_it_stands_under() -> None:
    text = "p = 30 bar(g)\n" + CALL.replace("p_now = 30 bar(g)", "p_now = p")

    (alarm,) = program(text, "p", SITE)["alarms"]

    assert alarm["text"] == "fewer starts than required"
    assert alarm["when"][0] == "<"
    assert len(alarm["limits"]) == 2


@pytest.mark.parametrize(
    ("names", "says", "cure"),
    [
        ("p_mx", "what-if names `p_mx`, which no line sets", "did you mean p_max?"),
        ("zz", "what-if names `zz`, which no line sets", "name a number that this fence is given"),
        ("n", "what-if names `n`, which is worked out, not given", "open what it is worked out from: p_max, V"),
        ("T", "what-if names `T`, which is worked out, not given", "open what it is worked out from: p_max, V"),
    ],
)  # fmt: skip
def test_only_a_given_number_of_the_fence_can_be_opened(names: str, says: str, cure: str) -> None:
    text = "p_max = 30 bar(g)\nV = 2 * 250 L\nT = site.T_room\nn = 3 * V"

    found: Desk = desk(text, SITE, options=f"; what-if {names}")

    assert found.fault.text == says
    assert found.fault.help == cure
    assert (found.fault.where.line, found.fault.family) == (9, "NAME")
    assert found.network.sheets["desk"].what_if == ""


def test_a_reading_that_is_counted_from_the_atmosphere_on_its_line_is_worked_out() -> None:
    found = desk("p = absolute(3 bar(g))\nx = p", options="; what-if p")

    assert found.fault.text == "what-if names `p`, which is worked out, not given"


def test_no_text_of_a_program_is_more_than_a_word_of_it() -> None:
    text = 'a = 3  # it\'s "quoted" </script>\nx = a * 2'

    found = desk(text, options="; what-if a").network.sheets["desk"].what_if

    assert json.loads(found)["inputs"][0]["label"] == 'it\'s "quoted" </script>'
