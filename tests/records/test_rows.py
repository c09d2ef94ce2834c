"""Rows of paper, reckoned from words."""

from garboard.errors import Where
from garboard.records.alarm import Alarm
from garboard.records.base import Figure, Mention, RecordId
from garboard.records.hazard import Hazard, Message
from garboard.records.page_rows import alarm_rows, budget_of, procedure_rows, text_rows
from garboard.records.procedure import Procedure, See, Step, Use
from garboard.records.rows import A4, A5, lines_of, message_lines, printed_words, step_lines

HERE = Where("x.md")


def _steps(*steps: Step, use: Use = Use.NORMAL) -> Procedure:
    return Procedure(where=HERE, id=RecordId("SA-PR-001"), use=use, steps=steps)


def test_a_value_is_never_parted_from_its_unit() -> None:
    tight = "pressure rises to 30 bar(g)"

    assert lines_of(tight, 23) == 2
    assert lines_of("pressure rises to 30 x", 21) == 2, "22 signs do not fit on 21"
    assert lines_of("see 30 bar(g)", 6) == 2, "the value moves down as one"


def test_an_address_counts_as_a_value_of_the_usual_length() -> None:
    assert printed_words("SA-PS-001.set") == printed_words("[](value:SA-PS-001.set)")
    assert "value:" not in printed_words("[](value:starts.n?in=L)")


def test_what_stands_under_a_step_takes_rows() -> None:
    bare = step_lines(Step(do="Shut it"), {}, A5.across)
    more = Step(do="Shut it", see=See(value=Figure("shut")), if_not=Mention("stop and call"))

    assert bare == 2
    assert step_lines(more, {}, A5.across) == bare + 1.5


def test_a_message_takes_its_words_and_its_frame() -> None:
    said = Message(
        hazard=Mention("Air at 30 bar(g)"),
        harm=Mention("It kills"),
        avoid=Mention("Shut SA-HV-001"),
    )
    hazard = Hazard(where=HERE, id=RecordId("SA-HZ-001"), message=said)
    step = Step(do="Open it", message=RecordId("SA-HZ-001"))

    with_it = procedure_rows(_steps(step), {"SA-HZ-001": hazard}, {})
    without = procedure_rows(_steps(step), {}, {})

    assert message_lines(hazard, A5.across) == 5.5
    assert with_it - without == 3


def test_planned_work_has_two_sheets_and_a_night_procedure_one() -> None:
    night, planned = budget_of(_steps(use=Use.EMERGENCY)), budget_of(_steps(use=Use.TEST))

    assert night
    assert planned
    assert (night.rows, planned.rows) == (45, 93)


def test_a_kind_without_a_budget_is_not_judged() -> None:
    assert budget_of(Hazard(where=HERE, id=RecordId("SA-HZ-001"))) is None


def test_first_actions_of_an_alarm_count_each() -> None:
    short = Alarm(where=HERE, wording="AIR LOW", first=(Mention("Read the gauge"),))
    long = Alarm(where=HERE, wording="AIR LOW", first=(Mention("Read the gauge"),) * 9)

    assert alarm_rows(long) == alarm_rows(short) + 4


def test_a_picture_and_each_item_of_a_list_take_room() -> None:
    assert text_rows("") == 0
    assert text_rows("1. one\n2. two\n3. three\n4. four") == 2
    assert text_rows("![plate](plate.png)") == 10
    assert text_rows("word " * 200) == 9, "17 lines of 12 words"
    assert A4.across == 62
