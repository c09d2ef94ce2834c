"""Whether every vessel keeps a relief valve, whatever valve is moved."""

from garboard.systems.finding import Level
from tests.systems.pieces import survey_of
from tests.systems.written import found_of, written

COMPRESSOR = "CP-001: {kind: compressor, makes: 42 bar(g)}"
RECEIVER = "AR-001: {kind: receiver, rated: 33 bar(g)}"
RELIEF = "RV-001: {kind: relief valve, set: 32 bar(g)}"


def test_the_valve_that_cuts_a_receiver_off_and_the_one_that_fills_it_are_named() -> None:
    text = written(
        [
            COMPRESSOR,
            RECEIVER,
            RELIEF,
            "HV-001: {kind: stop valve, usual: shut}",
            "HV-002: {kind: stop valve, usual: open}",
        ],
        ["CP-001 > HV-001 > AR-001", "AR-001.relief > HV-002 > RV-001"],
    )

    (found,) = found_of(text, "relief-cut-off")

    assert (found.level, found.about) == (Level.DANGER, "SA-AR-001")
    assert (found.line.shut, found.line.open) == (("SA-HV-002",), ("SA-HV-001",))
    assert found.numbers == ("SA-AR-001 rated 33 bar(g)", "SA-CP-001 makes 42 bar(g)")


def test_a_rating_is_taken_at_its_lowest_and_a_setting_at_its_highest() -> None:
    within = "RV-001: {kind: relief valve, set: 32.5 bar(g) +/- 0.5 bar}"
    beyond = "RV-001: {kind: relief valve, set: 32.5 bar(g) +/- 0.6 bar}"
    runs = ["CP-001 > AR-001", "AR-001.relief > RV-001"]

    assert found_of(written([COMPRESSOR, RECEIVER, within], runs), "relief-above-rating") == []
    (found,) = found_of(written([COMPRESSOR, RECEIVER, beyond], runs), "relief-above-rating")
    assert (found.about, found.at_fault) == ("SA-AR-001", ("SA-RV-001",))


def test_a_vessel_has_either_a_valve_set_too_high_or_none() -> None:
    high = "RV-001: {kind: relief valve, set: 40 bar(g)}"
    text = written([COMPRESSOR, RECEIVER, high], ["CP-001 > AR-001", "AR-001.relief > RV-001"])

    codes = [found.code for found in survey_of(text).findings if found.about == "SA-AR-001"]

    assert "relief-above-rating" in codes
    assert "relief-cut-off" not in codes


def changeover(positions: str, second: str = "32 bar(g)") -> str:
    """Two relief valves on a three-way valve."""
    return written(
        [
            COMPRESSOR,
            RECEIVER,
            RELIEF,
            f"RV-002: {{kind: relief valve, set: {second}}}",
            f"TV-001: {{kind: three-way valve, positions: {{{positions}}}}}",
        ],
        [
            "CP-001 > AR-001",
            "AR-001.relief > TV-001.common",
            "TV-001.a > RV-001",
            "TV-001.b > RV-002",
        ],
    )


def test_a_changeover_valve_with_two_relief_valves_gives_no_alarm() -> None:
    text = changeover("left: [common-a], right: [common-b]")

    assert found_of(text, "relief-cut-off") == []


def test_a_changeover_valve_is_named_by_the_position_in_which_the_good_relief_valve_is_lost() -> (
    None
):
    text = changeover("left: [common-a], right: [common-b]", second="40 bar(g)")

    (found,) = found_of(text, "relief-cut-off")

    assert (found.line.shut, found.line.turned) == ((), (("SA-TV-001", "right"),))
    assert "SA-TV-001 turned to right" in found.text


def test_what_a_filter_holds_back_stands_at_its_inlet() -> None:
    parts = [COMPRESSOR, RELIEF, "FI-001: {kind: filter, rated: 33 bar(g)}"]
    parts += ["US-001: {kind: consumer}"]
    runs = ["FI-001.out > outlet line > US-001", "CP-001 > inlet line > FI-001.in"]
    headers = "inlet line: {}, outlet line: {}"
    before = written(parts, [*runs, "inlet line > RV-001"], headers)
    behind = written(parts, [*runs, "outlet line > RV-001"], headers)

    assert found_of(before, "relief-cut-off") == []
    (found,) = found_of(behind, "relief-cut-off")
    assert (found.level, found.at_fault) == (Level.WARNING, ("SA-FI-001",))


def test_a_relief_valve_beyond_a_check_valve_belongs_to_another_vessel() -> None:
    separator = "SE-001: {kind: separator, rated: 10 bar(g)}"
    parts = [separator, RECEIVER, RELIEF, "NV-001: {kind: check valve}"]
    runs = ["CP-001 > SE-001 > NV-001 > AR-001", "AR-001.r > RV-001"]
    weak = written(["CP-001: {kind: compressor, makes: 9 bar(g)}", *parts], runs)
    strong = written([COMPRESSOR, *parts], runs)

    assert found_of(weak, "relief-above-rating") == []
    assert [one.about for one in found_of(strong, "relief-above-rating")] == ["SA-SE-001"]


def test_a_lock_that_is_secured_lowers_the_finding_and_is_named_in_it() -> None:
    lock = "HV-001: {kind: stop valve, locked: open, secured: seal 7, round: engine room}"
    runs = ["CP-001 > AR-001", "AR-001.relief > HV-001 > RV-001"]

    (found,) = found_of(written([COMPRESSOR, RECEIVER, RELIEF, lock], runs), "relief-cut-off")

    assert (found.level, found.locks) == (Level.WARNING, ("SA-HV-001",))
    assert found.text.endswith("depends on SA-HV-001 staying locked")
    assert found.help.endswith("leave SA-HV-001 locked and ask for a concession")


def test_a_lock_that_is_on_no_round_counts_for_nothing() -> None:
    lock = "HV-001: {kind: stop valve, locked: open, secured: seal 7}"
    runs = ["CP-001 > AR-001", "AR-001.relief > HV-001 > RV-001"]

    (found,) = found_of(written([COMPRESSOR, RECEIVER, RELIEF, lock], runs), "relief-cut-off")

    assert (found.level, found.locks) == (Level.DANGER, ())


def test_a_finding_keeps_its_fingerprint_until_a_number_that_decides_it_changes() -> None:
    valve, runs = "HV-001: {kind: stop valve}", ["CP-001 > AR-001", "AR-001.r > HV-001 > RV-001"]
    parts = [COMPRESSOR, RECEIVER, RELIEF, valve]
    other = [COMPRESSOR, RECEIVER.replace("33", "34"), RELIEF, valve]

    (first,) = found_of(written(parts, runs), "relief-cut-off")
    (turned_round,) = found_of(written(parts[::-1], runs[::-1]), "relief-cut-off")
    (changed,) = found_of(written(other, runs), "relief-cut-off")

    assert turned_round.fingerprint == first.fingerprint
    assert changed.fingerprint != first.fingerprint


def test_too_many_valves_that_turn_together_are_reported_for_a_check_by_hand() -> None:
    turns = range(1, 14)
    parts = [f"TV-{n:03d}: {{kind: three-way valve}}" for n in turns]
    ways = [f"AR-001.p{n} > TV-{n:03d}.common" for n in turns]
    ways += [f"TV-{n:03d}.a > RV-001" for n in turns] + [
        f"TV-{n:03d}.b > atmosphere" for n in turns
    ]
    text = written([COMPRESSOR, RECEIVER, RELIEF, *parts], ["CP-001 > AR-001", *ways])

    (found,) = found_of(text, "relief-cut-off")

    assert "check it by hand" in found.text


def test_oil_that_goes_back_to_the_pump_is_less_grave_than_air_that_cannot_get_out() -> None:
    pump = ["TK-001: {kind: tank}", "PU-001: {kind: pump, type: gear, makes: no limit}"]
    rest = ["RV-001: {kind: relief valve, set: 10 bar(g)}", "HV-001: {kind: stop valve}"]
    runs = ["TK-001.s > HV-001 > suction > PU-001 > pressure", "pressure > RV-001 > suction"]
    heads = "suction: {}, pressure: {}"

    (oil,) = found_of(written([*pump, *rest], runs, heads, "oil"), "relief-outlet-cut-off")
    (air,) = found_of(written([*pump, *rest], runs, heads, "air"), "relief-outlet-cut-off")

    assert (oil.level, air.level) == (Level.WARNING, Level.DANGER)
    assert oil.line.shut == air.line.shut == ("SA-HV-001",)


def test_a_reducing_valve_that_lets_too_much_through_is_named_and_not_the_machine() -> None:
    text = written(
        [
            COMPRESSOR,
            RECEIVER,
            "PS-001: {kind: pressure switch, stops: CP-001, cuts_out: 30 bar(g)}",
            "RG-001: {kind: regulator, set: 9 bar(g)}",
            "RV-001: {kind: relief valve, set: 9 bar(g)}",
        ],
        ["CP-001 > AR-001", "AR-001.g > PS-001", "AR-001.s > RG-001 > low line > RV-001"],
        headers="low line: {}",
    )

    (found,) = found_of(text, "relief-blows")

    assert (found.about, found.at_fault) == ("SA-RV-001", ("SA-RG-001",))
    assert found.numbers == ("SA-RV-001 set 9 bar(g)", "SA-RG-001 set 9 bar(g)")
