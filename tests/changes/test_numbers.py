"""Every number that is not as it was, with its change in the right kind and the margin it cost."""

from garboard.changes.comparison import Sort
from garboard.changes.numbers import LAST_FIGURES
from tests.changes.pairs import FENCE, Desk, number, sums

CALC = "systems/starting-air/sa-cl-001-starts.md"


def test_a_book_held_against_itself_differs_in_nothing(desk: Desk) -> None:
    found = desk.compared({}, {})

    assert found.empty


def test_the_change_of_a_gauge_pressure_is_a_difference_and_has_no_per_cent(desk: Desk) -> None:
    found = desk.edited("cl-001", ("p_max = 30 bar(g)", "p_max = 33 bar(g)"))

    moved = number(found, "starts.p_max")
    assert (moved.before, moved.after) == ("30 bar(g)", "33 bar(g)")
    assert (moved.change, moved.percent) == ("+3 bar", "")


def test_a_thermometer_moves_in_kelvin_and_a_share_in_points(desk: Desk) -> None:
    found = desk.edited("cl-001", ("40 degC", "45 degC"), ("20 %", "25 %"))

    assert (number(found, "starts.warm").change, number(found, "starts.warm").percent) == (
        "+5 K",
        "",
    )
    assert number(found, "starts.share").change == "+5 points"
    assert number(found, "starts.share").percent == ""


def test_a_volume_moves_in_its_unit_and_in_per_cent(desk: Desk) -> None:
    found = desk.edited("system.yml", ("250 L", "240 L"))

    assert number(found, "SA-AR-001.volume").change == "-10 L"
    assert number(found, "SA-AR-001.volume").percent == "-4.0 %"
    assert number(found, "starts.V").given is False


def test_a_number_that_is_counted_from_elsewhere_now_says_so(desk: Desk) -> None:
    found = desk.edited("cl-001", ("warm = 40 degC", "warm = 313.15 K(a)"))

    moved = number(found, "starts.warm")
    assert moved.change == ""
    assert moved.note == "was a thermometer reading, is an absolute temperature"


def test_numbers_that_came_and_went_are_told_as_such(desk: Desk) -> None:
    found = desk.edited("cl-001", ("share = 20 %  # spare", "spare = 3  # spare"))

    assert number(found, "starts.share").sort is Sort.GONE
    assert number(found, "starts.spare").sort is Sort.NEW


def test_another_unit_of_the_same_number_is_no_move_and_no_input(desk: Desk) -> None:
    found = desk.edited("cl-001", ("p_max = 30 bar(g)", "p_max = 3000 kPa(g)"))

    assert [(one.address, one.sort) for one in found.numbers] == [("starts.p_max", Sort.REWRITTEN)]
    assert found.inputs == ()


def test_a_tolerance_alone_moves_a_number(desk: Desk) -> None:
    found = desk.edited("cl-001", ("p_max = 30 bar(g)", "p_max = 30 bar(g) +/- 1 bar"))

    moved = number(found, "starts.p_max")
    assert (moved.change, moved.note) == ("", "only how sure it is differs")
    assert moved.range_after == "29.0 to 31.0 bar(g) at worst"


def test_last_figures_of_a_float_are_told_as_what_they_are(desk: Desk) -> None:
    fence = FENCE + "a = 0.1 + 0.2 + 0.3  # one\n"
    other = FENCE + "a = 0.3 + 0.2 + 0.1  # one\n"
    assert 0.1 + 0.2 + 0.3 != 0.3 + 0.2 + 0.1

    found = desk.compared({CALC: sums(fence)}, {CALC: sums(other)})

    assert (number(found, "starts.a").note, number(found, "starts.a").change) == (LAST_FIGURES, "")


def test_a_number_that_cannot_be_worked_out_any_more_says_why(desk: Desk) -> None:
    found = desk.edited("cl-001", ("floor(stored / each)", "floor(stored / eech)"))

    assert number(found, "starts.n").after == "not computed"
    assert number(found, "starts.n").note == "`eech` is set nowhere in this fence"


def test_the_margin_lost_puts_a_number_first_and_names_who_asks(desk: Desk) -> None:
    found = desk.edited("cl-001", ("p_max = 30 bar(g)", "p_max = 26 bar(g)"))

    limit = found.limit("starts: n >= 6")
    assert (limit.stood, limit.stands) == ("holds at the worst corner", "holds at the worst corner")
    assert (limit.margin_before, limit.margin_after, limit.lost) == ("2", "0", "2")
    assert limit.asks == "what the rule asks [BOYLE]"
    assert found.numbers[0].address == "starts.n"
    assert found.numbers[0].limits == ("starts: n >= 6",)


def test_a_limit_that_fails_now_stands_before_one_that_lost_more(desk: Desk) -> None:
    fence = FENCE + "require stored >= 0.1 m3(n)  # far above it\n"

    found = desk.compared(
        {CALC: sums(fence)}, {CALC: sums(fence.replace("30 bar(g)", "24.5 bar(g)"))}
    )

    assert [(one.key, one.worse > 0) for one in found.limits] == [
        ("starts: n >= 6", True),
        ("starts: stored >= 0.1 m3(n)", False),
    ]


def test_a_requirement_that_nobody_asks_any_more_is_the_worst_of_all(desk: Desk) -> None:
    found = desk.edited("cl-001", ("require n >= 6  # what the rule asks [BOYLE]\n", ""))

    limit = found.limit("starts: n >= 6")
    assert (limit.after, limit.stands, limit.worse) == ("", "", 3)


def test_a_requirement_that_asks_for_less_is_one_requirement_reworded(desk: Desk) -> None:
    found = desk.edited("cl-001", ("n >= 6", "n >= 5"))

    assert [(one.before, one.after, one.lost) for one in found.limits] == [
        ("n >= 6", "n >= 5", "-1")
    ]
