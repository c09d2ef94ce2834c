"""A system.yml is read whole: properties with their values and places, runs name by name."""

from pathlib import Path

import pytest

from garboard.calc.value import Given
from garboard.errors import Severity, Where
from garboard.reading.system_file import SystemFile, read_system
from garboard.records.component import Component, Fails, Unlimited
from garboard.records.system import Joins, Moves, ServiceStatus

PATH = "systems/starting-air/system.yml"
WHOLE = (Path(__file__).parent / "examples" / "system.yml").read_text("utf-8")


def read(text: str) -> SystemFile:
    """A file of system SA."""
    return read_system(text, PATH, "SA")


def part(properties: str, tag: str = "RV-001") -> SystemFile:
    """A file with one component; its properties start in column 12 of line 2."""
    return read(f"components:\n  {tag}: {{{properties}}}\n")


def component(properties: str, tag: str = "RV-001") -> Component:
    """One component that reads without a fault."""
    found = part(properties, tag)
    assert found.diagnostics == ()
    return found.components[0]


def said(found: SystemFile) -> list[str]:
    """The messages, with their codes."""
    return [str(item).replace(f"{PATH}:", "") for item in found.diagnostics]


def test_the_example_of_a_whole_system_reads_without_a_fault() -> None:
    found = read(WHOLE)

    assert found.diagnostics == ()
    system = found.system
    assert (system.code, system.folder, system.title) == (
        "SA",
        "systems/starting-air",
        "Starting air",
    )
    assert system.status is ServiceStatus.BUILDING
    assert system.mounts is not None
    assert system.mounts["compressor frame"].moves is Moves.ALWAYS
    assert system.operating_states is not None
    assert system.operating_states["ready for sea"].turned == {"SA-TV-001": "left"}
    assert system.rounds is not None
    assert [stop.tag for stop in system.rounds["watch round"].order] == ["SA-PI-001", "SA-HV-016"]
    assert len(found.components) == 11
    assert ("SA-LN-001", Where(PATH, 24, 23)) in found.declared


def test_a_run_keeps_every_name_with_its_place() -> None:
    run = read(WHOLE).system.runs[0]

    assert [(end.name, end.joins, end.where.column) for end in run.ends] == [
        ("SA-CP-001", Joins.PART, 5),
        ("SA-HS-001", Joins.PART, 14),
        ("SA-SE-001", Joins.PART, 23),
        ("SA-NV-001", Joins.PART, 32),
        ("filling line", Joins.HEADER, 41),
    ]


def test_a_run_keeps_ports_places_outside_service_and_size() -> None:
    runs = read(WHOLE).system.runs

    assert [(end.name, end.port, end.joins) for end in runs[2].ends] == [
        ("SA-AR-001", "drain", Joins.PART),
        ("SA-HV-005", "", Joins.PART),
        ("bilge", "", Joins.OUTSIDE),
    ]
    assert runs[3].service == "start air"
    assert runs[3].size is not None
    assert runs[3].size.si == 0.015


def test_a_name_that_is_neither_tag_nor_header_is_kept_for_the_rules() -> None:
    found = read("connections:\n  - CP-001 > AR-l\n")

    assert found.diagnostics == ()
    assert found.system.runs[0].ends[1].joins is Joins.UNKNOWN


def test_short_and_full_tags_are_one() -> None:
    found = read("components:\n  SA-RV-001: {kind: relief valve, protects: [AR-001, SA-AR-002]}\n")

    assert found.components[0].tag == "SA-RV-001"
    assert found.components[0].protects == ("SA-AR-001", "SA-AR-002")


def test_a_number_has_an_address_a_place_a_tolerance_and_sources() -> None:
    found = component(
        'kind: relief valve, set: "33 bar(g) +/- 0.5 bar [plate-R1, 46CFR54 54.10-10(b)]"'
    )

    given = found.set
    assert isinstance(given, Given)
    assert (given.address, given.shown, given.tolerance) == (
        "SA-RV-001.set",
        "33 bar(g)",
        "0.5 bar",
    )
    assert (given.si, given.low, given.high) == (3_300_000, 3_250_000, 3_350_000)
    assert given.where == Where(PATH, 2, 38)
    assert [(one.source, one.clause) for one in given.sources] == [
        ("plate-R1", ""),
        ("46CFR54", "54.10-10(b)"),
    ]
    assert given.sources[1].where == Where(PATH, 2, 71)


def test_a_plate_is_the_source_of_every_number_without_one() -> None:
    found = component("kind: receiver, plate: plate-R1, rated: 33 bar(g), volume: 250 L", "AR-001")

    givens = dict(found.givens())
    assert [one.source for one in givens["rated"].sources] == ["plate-R1"]
    assert [one.source for one in givens["volume"].sources] == ["plate-R1"]


def test_a_number_may_be_drawn_from_a_calculation() -> None:
    found = component("kind: relief valve, set: lifting.p_set, passes: RV-002.passes")

    assert dict(found.aliases()) == {"set": "lifting.p_set", "passes": "SA-RV-002.passes"}
    assert list(found.givens()) == []


def test_a_source_without_limit_says_so() -> None:
    found = component("kind: pressure source, makes: no limit", "SH-001")

    assert found.makes is Unlimited.NO_LIMIT
    assert list(found.aliases()) == []


def test_a_scale_has_two_addresses() -> None:
    found = component("kind: gauge, range: {from: 0 bar(g), to: 60 bar(g)}", "PI-001")

    assert [(name, given.address) for name, given in found.givens()] == [
        ("range.from", "SA-PI-001.range.from"),
        ("range.to", "SA-PI-001.range.to"),
    ]


def test_one_thing_needs_no_brackets_where_several_may_stand() -> None:
    found = component("kind: pressure switch, stops: CP-001, watches: [AR-001, AR-002]", "PS-001")

    assert (found.stops, found.watches) == (("SA-CP-001",), ("SA-AR-001", "SA-AR-002"))


def test_closed_reads_as_shut() -> None:
    found = component(
        "kind: solenoid valve, usual: closed, locked: closed, fails: closed", "SV-001"
    )

    assert (found.usual, found.locked, found.fails) == ("shut", "shut", Fails.SHUT)


def test_a_header_with_a_tag_gives_its_numbers_addresses() -> None:
    found = read(
        "headers:\n  start header: {tag: LN-002, size: 40 mm}\n  other: {size: 15 mm}\n  bare:\n"
    )

    headers = found.system.headers
    assert found.diagnostics == ()
    assert headers is not None
    assert headers["start header"].size is not None
    assert headers["start header"].size.address == "SA-LN-002.size"
    assert headers["other"].size is not None
    assert headers["other"].size.address == ""
    assert headers["bare"].tag is None


def test_a_file_without_code_takes_the_one_of_its_folder() -> None:
    system = read("components: {}\n").system

    assert (system.code, system.title, system.status) == (
        "SA",
        "Starting air",
        ServiceStatus.SKETCH,
    )


REFUSED = {
    "a kind that is not in the table": (
        "kind: stopvalve",
        "2:18: STOP: there is no kind `stopvalve` [unknown-kind]\n  help: did you mean stop valve?",
    ),
    "no kind at all": (
        "name: relief valve of receiver 1",
        "2:3: STOP: SA-RV-001 has no kind [unknown-kind]\n  help: write kind: relief valve",
    ),
    "letters that say something else": (
        "kind: stop valve",
        "2:18: WARN: SA-RV-001 is a stop valve, its letters RV say relief valve [unknown-kind]\n"
        "  help: take HV for its letters, or mend its kind",
    ),
    "a number that such a thing does not have": (
        "kind: relief valve, volume: 250 L",
        "2:40: STOP: a relief valve has no volume [unreadable-record]\n"
        "  help: remove it, or mend the kind; its numbers: rated, test, size, height, normal, low, "
        "high, alarm_low, alarm_high, trip, set, passes",
    ),
    "a position that such a thing cannot stand in": (
        "kind: relief valve, usual: open",
        "2:39: STOP: a relief valve cannot stand at `open` [unreadable-record]\n"
        "  help: remove usual",
    ),
    "a pressure that does not say what it is counted from": (
        "kind: relief valve, set: 33 bar",
        "2:40: STOP: `bar` does not say what it is counted from [datum-missing]",
    ),
    "a number without a unit that is known": (
        "kind: relief valve, set: 33 bra(g)",
        "2:40: STOP: ",
    ),
    "a decimal comma": ("kind: relief valve, set: '3,5 bar(g)'", "2:3"),
    "words where a number belongs": ("kind: relief valve, set: as before", "2:37: STOP: "),
    "a source with nothing in it": (
        'kind: relief valve, set: "33 bar(g) []"',
        "2:38: STOP: set: `[]` names no source [unreadable-record]\n"
        "  help: write [source clause], or [assumed]",
    ),
    "a source in brackets without quotes": (
        "kind: relief valve, set: 33 bar(g) [plate-R1]",
        "2:47: STOP: `[` stands in unquoted text within { [unreadable-record]\n"
        "  help: put the text before it and the [ in quotes together",
    ),
    "a yes or no in another word": (
        "kind: relief valve, essential: true",
        "2:43: STOP: essential: `true` is not yes or no [unreadable-record]\n  help: write yes",
    ),
    "a point with three numbers": (
        "kind: relief valve, at: [1, 2, 3]",
        "2:36: STOP: at holds 3 things [unreadable-record]\n  help: write a list of 2 numbers",
    ),
}


@pytest.mark.parametrize("says", REFUSED)
def test_a_broken_property_is_refused_with_place_reason_and_cure(says: str) -> None:
    properties, expected = REFUSED[says]

    found = said(part(properties))

    assert len(found) == 1
    assert found[0].startswith(expected)
    assert "\n  help: " in found[0]


BROKEN_FILES = {
    "the code of another system": (
        "system: BG\n",
        "1:9: STOP: system BG here, SA in handbook.yml [unreadable-record]\n"
        "  help: write SA, or change handbook.yml",
    ),
    "a tag of another system": (
        "components:\n  BG-HV-001: {kind: stop valve}\n",
        "2:3: STOP: BG-HV-001 stands in the file of system SA [unreadable-record]\n"
        "  help: move it to system BG, or rename it",
    ),
    "a tag with the letters of a record": (
        "components:\n  CO-001: {kind: changeover}\n",
        "2:3: STOP: the letters CO of SA-CO-001 belong to a concession [unknown-kind]\n"
        "  help: take other letters for the tag",
    ),
    "a tag without its zeros": (
        "components:\n  RV-1: {kind: relief valve}\n",
        "2:3: STOP: `RV-1` is no tag [unreadable-record]\n  help: write RV-001",
    ),
    "a component without properties": (
        "components:\n  RV-001: relief valve\n",
        "2:3: STOP: SA-RV-001 has no properties [unreadable-record]\n"
        "  help: write RV-001: {kind: ..., name: ...}",
    ),
    "a misspelt key": (
        "conections:\n  - CP-001 > AR-001\n",
        "1:1: STOP: key conections is not known [unreadable-record]\n"
        "  help: write connections, or remove it",
    ),
    "a status that is none": (
        "status: in use\n",
        "1:9: STOP: status: `in use` is none of its words [unreadable-record]\n"
        "  help: write in service",
    ),
    "a run that joins nothing": (
        "connections:\n  - CP-001\n",
        "2:5: STOP: `CP-001` joins nothing [unreadable-record]\n"
        "  help: write at least two names with > between",
    ),
    "a run with a name missing": (
        "connections:\n  - CP-001 > > AR-001\n",
        "2:14: STOP: a name is missing in this run [unreadable-record]\n"
        "  help: write a name on both sides of each >",
    ),
    "a run with another arrow": (
        "connections:\n  - CP-001 -> AR-001\n",
        "2:12: STOP: `->` stands between two names [unreadable-record]\n"
        "  help: write > and read it as flows to",
    ),
    "a run against the flow": (
        "connections:\n  - AR-001 < CP-001\n",
        "2:12: STOP: `<` stands between two names [unreadable-record]\n"
        "  help: write > and read it as flows to",
    ),
    "connections as one text": (
        "connections: CP-001 > AR-001\n",
        "1:14: STOP: connections is no list of runs [unreadable-record]\n"
        "  help: write each as a line: - CP-001 > NV-001 > AR-001",
    ),
    "components as a list": (
        "components: [RV-001]\n",
        "1:13: STOP: components is no list of tags with their properties [unreadable-record]\n"
        "  help: write each as RV-001: {kind: relief valve}",
    ),
    "a file that is a text": (
        "Starting air\n",
        "1:1: STOP: a system file that holds no keys [unreadable-record]\n"
        "  help: write title: and status:",
    ),
    "one tag twice": (
        "components:\n  RV-001: {kind: relief valve}\n  RV-001: {kind: relief valve}\n",
        "3:3: STOP: key RV-001 stands twice, first on line 2 [unreadable-record]\n  help: keep one",
    ),
    "a gauge with half a scale": (
        "components:\n  PI-001: {kind: gauge, range: {to: 60 bar(g)}}\n",
        "2:32: STOP: range has no from [unreadable-record]\n"
        "  help: write from: and a quantity with its unit, or leave the entry out",
    ),
}


@pytest.mark.parametrize("says", BROKEN_FILES)
def test_a_broken_system_file_is_refused_with_place_reason_and_cure(says: str) -> None:
    text, expected = BROKEN_FILES[says]

    assert said(read(text)) == [expected]


def test_a_tag_in_short_and_in_full_is_declared_twice() -> None:
    found = read("components:\n  RV-001: {kind: relief valve}\n  SA-RV-001: {kind: relief valve}\n")

    assert [name for name, _ in found.declared] == ["SA-RV-001", "SA-RV-001"]


def test_a_fault_in_one_property_leaves_the_others() -> None:
    found = part("kind: relief valve, set: 33 bar, rated: 60 bar(g)").components[0]

    assert found.set is None
    assert found.rated is not None
    assert found.unread == ("set",)


def test_a_component_of_no_known_kind_is_still_there_to_be_named() -> None:
    found = part("kind: thing, name: relief valve of receiver 1")

    assert [str(item.severity) for item in found.diagnostics] == [Severity.STOP]
    assert found.components[0].name == "relief valve of receiver 1"


def test_a_switch_is_on_or_off_and_kept_as_what_passes() -> None:
    found = read(
        "components:\n  SW-001: {kind: switch, usual: on}\n  CB-001: {kind: breaker, usual: off}\n"
        "operating_states:\n  at sea: {on: [SW-001], off: [CB-001]}\n"
    )

    assert [part.usual for part in found.components] == ["open", "shut"]
    assert found.system.operating_states is not None
    state = found.system.operating_states["at sea"]
    assert (state.open, state.shut, state.on, state.off) == (("SA-SW-001",), ("SA-CB-001",), (), ())


def test_a_valve_is_neither_on_nor_off() -> None:
    found = part("kind: stop valve, usual: on", "HV-001")

    assert said(found) == [
        "2:37: STOP: a stop valve cannot stand at `on` [unreadable-record]\n  help: write open or shut"
    ]


def test_a_switch_that_stands_at_no_position_of_a_switch_is_told_its_words() -> None:
    found = part("kind: switch, usual: left", "SW-001")

    assert said(found)[0].endswith("help: write on or off")
