"""Table methods called from a line: read by their own code, with words and lists."""

import pytest

from garboard.calc.show import show_range
from garboard.calc.value import Verdict
from garboard.methods import METHODS as BUNDLED
from tests.calc.desk import desk
from tests.calc.sample_methods import METHODS, SITE


def test_a_table_answers_with_its_printed_figure_rows_notes_and_words() -> None:
    found = desk("x = starts_required(engine = main)\nrequire x.starts <= 12", SITE, METHODS)

    line = found.line("x")
    assert found.text("x.starts") == "12"
    assert found.text("x.fill_time") == "1.00 h"
    assert line.table is not None
    assert line.table.rows == (("main", "12"),)
    assert line.notes == ("verdict: 2 receivers", "the flag chooses the row")
    assert [step.name for step in line.steps] == ["starts", "fill_time"]
    assert found.requirement.verdict is Verdict.HOLDS


def test_a_figure_that_the_row_does_not_hold_is_not_bound() -> None:
    found = desk("x = starts_required(engine = emergency)\ny = x.fill_time", SITE, METHODS)

    assert "desk.x.fill_time" not in found.network.values
    assert found.line("x").alarms == ("below the row",)
    assert found.fault.help == "starts_required holds no such figure for these arguments"


@pytest.mark.parametrize(
    ("word", "says", "cure"),
    [
        ("mian", "`mian` is no word for `engine`", "did you mean main?"),
        ("3 bar(g)", "is no word for `engine`", "write one of main, emergency"),
        ("1 + 1", "is no word for `engine`", "write one of"),
        ("[main]", "is no word for `engine`", "write one of"),
    ],
)
def test_a_word_that_a_table_does_not_know_is_refused(word: str, says: str, cure: str) -> None:
    found = desk(f"x = starts_required(engine = {word})", SITE, METHODS).fault

    assert found.family == "METHOD"
    assert found.where.column == 30
    assert says in found.text
    assert cure in found.help


def test_a_word_wins_over_a_value_of_the_same_name() -> None:
    assert (
        desk("main = 3\nx = starts_required(engine = main)", {}, METHODS).text("x.starts") == "12"
    )


def test_a_table_refuses_where_it_has_no_answer() -> None:
    found = desk("x = starts_required(engine = main, volume = 2 m3)", SITE, METHODS)

    assert found.fault.code == "outside-validity"
    assert "no row above 1 m3" in found.fault.text
    assert found.text("x.starts") == "not computed"


def test_a_corner_beyond_a_table_leaves_the_range_unknown() -> None:
    text = "V = 0.95 m3 +/- 0.1 m3\nx = starts_required(engine = main, volume = V)"

    assert show_range(desk(text, SITE, METHODS).value("x.starts")) == "range unknown"


def test_a_table_whose_code_fails_is_a_fault_and_no_traceback() -> None:
    found = desk("x = starts_required(engine = broken)\ny = 3", SITE, METHODS)

    assert found.fault.family == "METHOD"
    assert "KeyError in starts_required" in found.fault.text
    assert found.text("y") == "3"


def test_a_list_is_handed_over_whole_and_keeps_its_tolerances() -> None:
    found = desk("a = 3 A +/- 1 A\nx = sum_of_loads(loads = [a, 4 A, 500 mA])", SITE, METHODS)

    assert found.faults == ()
    assert found.text("x") == "15.0 A"
    assert found.ends("x") == (13.0, 17.0)
    assert found.value("x").uses == ("desk.a",)


def test_a_list_inside_a_list_is_refused() -> None:
    found = desk("x = sum_of_loads(loads = [[1 A], 2 A])", SITE, METHODS).fault

    assert "a list inside a list" in found.text


def test_a_list_of_other_things_is_refused_at_its_item() -> None:
    found = desk("x = sum_of_loads(loads = [1 A, 2 V])", SITE, METHODS).fault

    assert found.family == "DIMENSION"
    assert found.where.column == 32


def test_an_alarm_of_a_table_goes_off_at_the_worst_corner_too() -> None:
    call = "x = relief_capacity_check(stamped = 20 m3(n)/h, compressors = [c], setting = s, "
    call += "mawp = 33 bar(g), valve_between = no)"

    def alarms(delivery: str, setting: str) -> tuple[str, ...]:
        found = desk(f"c = {delivery}\ns = {setting}\n{call}", SITE, BUNDLED)
        assert found.faults == ()
        return found.line("x").alarms

    above = "STOP: the valve is set above the rating"
    short = "STOP: the stamped capacity is below all compressors together"
    assert alarms("18 m3(n)/h +/- 5 %", "32.5 bar(g) +/- 0.4 bar") == ()
    assert alarms("18 m3(n)/h", "33.5 bar(g) +/- 0.1 bar") == (above,)
    assert alarms("18 m3(n)/h +/- 5 %", "32.5 bar(g) +/- 0.8 bar") == (
        f"{above} (at the worst corner)",
    )
    assert set(alarms("19.5 m3(n)/h +/- 5 %", "32.5 bar(g) +/- 0.8 bar")) == {
        f"{above} (at the worst corner)",
        f"{short} (at the worst corner)",
    }


def test_an_alarm_whose_figures_move_is_said_once() -> None:
    text = (
        "I = 14 A +/- 4 A\n"
        "x = dc_cable_size(I = I, L = 12 ft, V = 12 V, drop_fraction = 10 %, size = 16, "
        "standard = AWG)"
    )

    (only,) = desk(text, SITE, BUNDLED).line("x").alarms

    assert only.startswith("HOLD: 16 AWG may not carry 18 A")
    assert only.endswith(" (at the worst corner)")


def test_a_corner_where_a_table_has_no_answer_gives_no_alarm_of_its_own() -> None:
    text = "V = 0.95 m3 +/- 0.1 m3\nx = starts_required(engine = main, volume = V)"

    assert desk(text, SITE, METHODS).line("x").alarms == ()
