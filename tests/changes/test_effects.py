"""What must be done because two books differ: cards, people, tests, spares, pages."""

from tests.changes.pairs import ALARM, FILES, Desk

HANDBOOK = """\
vessel: Skerry Light
systems: {SA: starting-air}
as_of: 2031-10-01
cards:
  - {card: K-01, of: SA-AL-001, place: start-air panel}
  - {card: K-02, of: SA-PR-001, place: at the header}
  - {card: K-03, of: SA-PR-001, place: ashore, removed: 2031-01-01}
"""
PEOPLE = """\
lead: {role: lead builder, may: [author], aboard: [{from: 2030-01-01}]}
volunteer-1: {role: volunteer, competence: [{procedure: SA-PR-001, level: alone}], aboard: [{from: 2031-01-01, to: 2031-09-01}]}
volunteer-2: {role: volunteer, aboard: [{from: 2031-09-15}]}
volunteer-3: {role: volunteer, aboard: [{from: 2031-09-15}]}
"""
TEST = """\
---
id: SA-TR-001
title: Switch proved
system: SA
class: A
on: 2031-03-01
tested: [{tag: SA-PS-001}]
result: pass
---
"""
CHANGE = """\
---
id: SA-CN-001
title: Another switch
system: SA
class: A
drafted: 2031-09-01
because: [SA-FN-001]
values: {SA-PS-001.set: {before: 18 bar(g), after: 17 bar(g)}}
voids: [SA-TR-002]
---
"""
FINDING = "---\nid: SA-FN-001\ntitle: Comes early\nsystem: SA\ndrafted: 2031-01-01\n---\n"
COMMON = {
    "handbook.yml": HANDBOOK,
    "people.yml": PEOPLE,
    "spares.yml": "SW-4: {name: switch, fits: [SA-PS-001], aboard: 1, least: 1}\n",
    "systems/starting-air/sa-tr-001-switch.md": TEST,
    "systems/starting-air/sa-tr-002-old.md": TEST.replace("TR-001", "TR-002").replace(
        "tag: SA-PS-001", "tag: SA-AR-001"
    ),
    "log/2031/2031-01-01-early.md": FINDING,
}
SYSTEM, PROCEDURE = "systems/starting-air/system.yml", "systems/starting-air/sa-pr-001-empty.md"
LOWER = FILES[SYSTEM].replace("18 bar(g)", "17 bar(g)")


def test_a_card_is_printed_again_when_a_value_it_quotes_moved_and_its_place_is_named(
    desk: Desk,
) -> None:
    found = desk.compared(COMMON, COMMON | {SYSTEM: LOWER})

    assert [(one.name, one.what, one.why) for one in found.cards] == [
        ("K-01", "SA-AL-001, start-air panel", ("SA-PS-001.set: 18 bar(g) -> 17 bar(g)",))
    ]


def test_a_card_of_what_is_no_longer_in_force_comes_down(desk: Desk) -> None:
    gone = {
        "systems/starting-air/sa-al-001-low.md": ALARM.replace(
            "class: A", "class: A\nstate: withdrawn"
        )
    }

    found = desk.compared(COMMON, COMMON | gone)

    assert [(one.name, one.why) for one in found.cards] == [
        ("K-01", ("take it down: what it is of is no longer in force",))
    ]


def test_a_card_that_hangs_in_no_list_any_more_and_a_new_one_are_told(desk: Desk) -> None:
    other = HANDBOOK.replace("K-01", "K-04").replace("at the header", "at the door")

    found = desk.compared(COMMON, COMMON | {"handbook.yml": other})

    assert [(one.name, one.why) for one in found.cards] == [
        ("K-01", ("take it down: it hangs in no list any more",)),
        ("K-02", ("hang it here: the place was at the header",)),
        ("K-04", ("print it: it is new",)),
    ]


def test_who_masters_a_procedure_whose_steps_changed_is_told_by_role(desk: Desk) -> None:
    other = (
        FILES[PROCEDURE]
        .replace("  - {do: Hang the card on the handle}\n", "")
        .replace("class: A", "class: B")
    )

    found = desk.compared(
        COMMON | {PROCEDURE: FILES[PROCEDURE].replace("class: A", "class: B")},
        COMMON | {PROCEDURE: other},
    )

    assert [(one.name, one.what, one.why) for one in found.people] == [
        ("volunteer", "SA-PR-001", ("step removed: 1",))
    ]


def test_everybody_aboard_hears_of_a_class_a_warning_and_nobody_is_named(desk: Desk) -> None:
    hazard = "systems/starting-air/sa-hz-001-air.md"

    found = desk.compared(
        COMMON, COMMON | {hazard: FILES[hazard].replace("if_ignored: will", "if_ignored: could")}
    )

    everybody = found.people[-1]
    assert (everybody.name, everybody.what) == ("lead builder, volunteer (2)", "everybody aboard")
    assert everybody.why[0] == "SA-HZ-001: signal word weakened"


def test_a_test_of_a_part_whose_setting_moved_proves_nothing_any_more(desk: Desk) -> None:
    found = desk.compared(COMMON, COMMON | {SYSTEM: LOWER})

    assert [(one.name, one.why) for one in found.tests] == [
        ("SA-TR-001", ("SA-PS-001.set: 18 bar(g) -> 17 bar(g)",))
    ]


def test_a_new_change_voids_tests_and_stands_behind_the_number_with_what_it_answers(
    desk: Desk,
) -> None:
    found = desk.compared(
        COMMON, COMMON | {SYSTEM: LOWER, "log/2031/2031-09-01-another.md": CHANGE}
    )

    assert ("SA-TR-002", ("SA-CN-001 voids it",)) in [(one.name, one.why) for one in found.tests]
    assert [one.behind for one in found.inputs] == [("SA-CN-001", "SA-FN-001")]


def test_a_spare_of_another_switch_is_looked_at(desk: Desk) -> None:
    other = FILES[SYSTEM].replace("kind: pressure switch,", "kind: pressure switch, part_no: SW-5,")

    found = desk.compared(COMMON, COMMON | {SYSTEM: other})

    assert [(one.name, one.why) for one in found.spares] == [("SW-4", ("fits SA-PS-001: part no",))]


def test_records_tell_what_became_of_them(desk: Desk) -> None:
    alarm = "systems/starting-air/sa-al-001-low.md"
    moved = {
        alarm: ALARM.replace("class: A", "class: A\nstate: withdrawn\nrevision: 1"),
        "log/2031/2031-09-01-another.md": CHANGE,
    }
    less = {key: text for key, text in (COMMON | moved).items() if "tr-002" not in key}

    found = desk.compared(COMMON, less)

    rows = {one.name: (one.sort, one.state_before, one.state_after) for one in found.entries}
    assert rows["SA-AL-001"] == ("changed", "drafted", "withdrawn")
    assert rows["SA-CN-001"] == ("new", "", "proposed")
    assert rows["SA-TR-002"][0] == "gone"


def test_a_card_that_shows_other_steps_is_printed_again_though_its_record_says_the_same(
    desk: Desk,
) -> None:
    before = HANDBOOK.replace("K-02, of: SA-PR-001,", "K-02, of: SA-PR-001, steps: 2-3,")
    after = HANDBOOK.replace("K-02, of: SA-PR-001,", "K-02, of: SA-PR-001, steps: 2-4,")

    found = desk.compared(COMMON | {"handbook.yml": before}, COMMON | {"handbook.yml": after})

    assert [(one.name, one.why) for one in found.cards] == [
        ("K-02", ("steps 2 to 4 shown, printed with steps 2 to 3",))
    ]
