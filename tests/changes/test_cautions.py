"""What warns and guards people: every way in which it can be weakened or strengthened is seen."""

import pytest

from garboard.changes.comparison import Comparison, Sort, Strength
from tests.changes.pairs import ALARM, FILES, SYSTEM, Desk, told

WEAKENED = [
    ("hz-001", "if_ignored: will", "if_ignored: could", "signal word", "DANGER", "WARNING"),
    ("hz-001", "severity: 1", "severity: 3", "signal word", "DANGER", "CAUTION"),
    ("hz-001", "severity: 1", "severity: 2", "severity", "1", "2"),
    ("hz-001", "likelihood: C", "likelihood: E", "likelihood", "C", "E"),
    ("hz-001", "harms: people", "harms: plant", "signal word", "DANGER", "NOTICE"),
    (
        "hz-001",
        "  - {rank: guard, what: relief valve on every receiver}\n",
        "",
        "control",
        "guard: relief valve on every receiver",
        "",
    ),
    (
        "hz-001",
        "{rank: guard, what: relief valve",
        "{rank: warn, what: relief valve",
        "rank of a control",
        "guard: relief valve on every receiver",
        "warn: relief valve on every receiver",
    ),
    (
        "hz-001",
        ", avoid: See the gauge at zero.",
        "",
        "message, what it says of how to avoid it",
        "See the gauge at zero.",
        "",
    ),
    ("hz-001", "class: A", "class: A\nstate: withdrawn", "it is in force", "in force", ""),
    ("pr-001", "message: SA-HZ-001, ", "", "safety message at step 2", "SA-HZ-001", ""),
    ("pr-001", "second: independent, ", "", "look of a second person at step 2", "independent", ""),
    ("pr-001", ", hold: SA-IT-001", "", "hold point at step 2", "SA-IT-001", ""),
    ("pr-001", "see: {value: zero}, ", "", "what is seen at step 3", "zero", ""),
    ("pr-001", ", if_not: wait", "", "what is done if it is not seen at step 3", "wait", ""),
    ("pr-001", "stop_if: the gauge rises again\n", "", "stop if", "the gauge rises again", ""),
    ("al-001", "priority: warning", "priority: caution", "priority", "warning", "caution"),
    ("al-001", "Start the compressor, ", "", "first action", "Start the compressor", ""),
    ("system.yml", "18 bar(g)", "17 bar(g)", "setting", "18 bar(g)", "17 bar(g)"),
    ("system.yml", ", locked: open", "", "locked", "open", ""),
]


@pytest.mark.parametrize("case", WEAKENED, ids=lambda one: f"{one[3]}: {one[2]}"[:60])
def test_what_weakens_a_warning_is_told_and_its_reverse_strengthens_it(
    desk: Desk, case: tuple[str, ...]
) -> None:
    path, old, new, what, before, after = case
    found = desk.edited(path, (old, new))
    back = turned(desk, path, old, new)

    assert (what, before, after) in told(found, Strength.WEAKENED)
    reversed_what = [one[1:] for one in told(back, Strength.STRENGTHENED)]
    assert (after, before) in reversed_what


def turned(desk: Desk, path: str, old: str, new: str) -> Comparison:
    """The same pair of books the other way round."""
    name = next(one for one in FILES if path in one)
    return desk.compared({name: FILES[name].replace(old, new)}, {})


def test_other_words_are_shown_both_and_judged_by_nobody(desk: Desk) -> None:
    found = desk.edited("hz-001", ("It throws parts and can kill.", "It can throw parts."))

    assert told(found, Strength.CHANGED) == [
        (
            "message, what it says of the harm",
            "It throws parts and can kill.",
            "It can throw parts.",
        )
    ]


def test_a_high_alarm_that_is_set_higher_comes_later(desk: Desk) -> None:
    alarm = "systems/starting-air/sa-al-001-low.md"
    high = ALARM.replace("direction: low", "direction: high")
    system = "systems/starting-air/system.yml"
    found = desk.compared(
        {alarm: high}, {alarm: high, system: SYSTEM.replace("18 bar(g)", "19 bar(g)")}
    )

    assert told(found, Strength.WEAKENED) == [("setting", "18 bar(g)", "19 bar(g)")]


def test_a_second_look_that_is_made_otherwise_is_neither(desk: Desk) -> None:
    found = desk.edited("pr-001", ("second: independent", "second: concurrent"))

    assert told(found, Strength.CHANGED) == [
        ("look of a second person at step 2", "independent", "concurrent")
    ]


def test_steps_that_went_came_moved_and_were_reworded_are_told_apart(desk: Desk) -> None:
    found = desk.edited(
        "pr-001",
        ("  - {do: Hang the card on the handle}\n", ""),
        ("steps:\n", "steps:\n  - {do: Hang the card on the handle}\n"),
        ("Read the gauge of the header", "Read the gauge of the main header"),
        (
            "  - {do: Shut, tag: SA-PS-001, to: shut, see: {value: handle across}, if_not: call}\n",
            "  - {do: Tell the watch}\n",
        ),
    )

    steps = [(one.sort, one.number_before, one.number_after) for one in found.steps]
    assert steps == [
        (Sort.GONE, 1, 0),
        (Sort.MOVED, 4, 1),
        (Sort.NEW, 0, 2),
        (Sort.CHANGED, 3, 4),
    ]


def test_a_guarded_step_that_is_gone_takes_its_guards_with_it_and_that_is_said(desk: Desk) -> None:
    found = desk.edited(
        "pr-001",
        (
            "  - {do: Bleed the header slowly, message: SA-HZ-001, second: independent, hold: SA-IT-001}\n",
            "",
        ),
    )

    assert told(found, Strength.WEAKENED) == [
        ("safety message at step 2, which is gone", "SA-HZ-001", ""),
        ("hold point at step 2, which is gone", "SA-IT-001", ""),
        ("look of a second person at step 2, which is gone", "independent", ""),
    ]


def test_weakened_stands_before_other_words_and_those_before_strengthened(desk: Desk) -> None:
    found = desk.edited(
        "hz-001",
        ("likelihood: C", "likelihood: A"),
        ("It throws parts and can kill.", "It kills."),
        (", avoid: See the gauge at zero.", ""),
    )

    assert [one.strength for one in found.cautions] == [
        Strength.WEAKENED,
        Strength.CHANGED,
        Strength.STRENGTHENED,
    ]


def test_first_actions_in_another_order_are_told(desk: Desk) -> None:
    found = desk.edited(
        "al-001",
        (
            "[Read both gauges, Start the compressor, Shut the whistle]",
            "[Shut the whistle, Read both gauges, Start the compressor]",
        ),
    )

    assert told(found, Strength.CHANGED) == [
        ("first action, its place", "3. Shut the whistle", "1. Shut the whistle")
    ]
