"""Steps under one message: which stand with it whole, and which with one line of it."""

from garboard.views.page import Message, Plate, Step, Steps
from mkdocs_garboard.stretches import stretches

SHORT = Message("WARNING", ("Hose at 5 bar(g).",), ("It breaks bones.",), ("Two hands on it.",))
LONG = Message(
    "DANGER",
    ("Steel spaces that were shut have no air to breathe.",),
    ("It kills without warning, and it kills the one who helps.",),
    ("Nobody goes in before ", Plate("BG-TK-001"), " was measured from outside. Never alone,",
     " never to help without air, and never while the sign hangs."),
)  # fmt: skip


def steps(*messages: Message | None) -> Steps:
    return Steps(
        tuple(Step(str(n), "Do", (), message=one) for n, one in enumerate(messages, start=1))
    )


def test_a_message_and_a_place_begin_a_stretch() -> None:
    block = Steps((*steps(None, None, SHORT, None).steps, Step("5", "Do", (), under="At: hatch")))

    assert [[step.number for step in one.steps] for one in stretches(block)] == [
        ["1", "2"], ["3", "4"], ["5"],
    ]  # fmt: skip


def test_a_short_message_is_said_again_whole_over_all_its_steps() -> None:
    (one,) = stretches(steps(SHORT, None, None))

    assert not one.long
    assert [len(rows) for rows in one.rows] == [3]


def test_of_a_long_message_one_line_goes_along_with_all_steps_but_the_first() -> None:
    (one,) = stretches(steps(LONG, None, None))

    assert one.long
    assert [len(rows) for rows in one.rows] == [1, 2]
    assert one.avoid_first == (
        "Nobody goes in before ", Plate("BG-TK-001"), " was measured from outside.",
    )  # fmt: skip


def test_a_long_message_over_one_step_needs_no_line() -> None:
    (one,) = stretches(steps(LONG))

    assert [len(rows) for rows in one.rows] == [1]
