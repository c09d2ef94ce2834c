"""Fences that rest on each other: order, rings, broken values, who feeds whom."""

import pytest

from garboard.calc.network import evaluate
from garboard.calc.show import show_range
from garboard.errors import Severity, Where
from tests.calc.desk import desk, fence, given, network

RECEIVER = """
p_max   = 30 bar(g) +/- 0.5 bar            # compressor cut-out [SA-TR-004]
p_min   = 12 bar(g) +/- 0.5 bar            # lowest that still turns the engine [SA-TR-006]
V       = 2 * 250 L                        # both receivers, water volume [plate-R1, plate-R2]
v_start = 0.9 m3(n) +/- 10 %               # free air a start, mean of five [SA-TR-006]
stored  = free_air(V, p_max, T_room) - free_air(V, p_min, T_room)
n       = floor(stored / v_start)          # starts in one charge
T_room  = site.T_engine_room               # drawn from the vessel's conditions
require n >= 6                             # six starts, non-reversible engine [IACS-UR-M61 M61.1.4]
"""
SITE = {"site.T_engine_room": "30 degC +/- 15 K", "site.atmosphere": "1013 mbar(a) +/- 30 mbar"}


def test_a_calculation_is_worked_out_whatever_the_order_of_its_lines() -> None:
    found = desk(RECEIVER, SITE)

    assert found.faults == ()
    assert found.si("stored") == pytest.approx(0.5 * 18e5 * 273.15 / 101325 / 303.15, rel=1e-14)
    assert found.text("n") == "8"
    assert show_range(found.value("n")) == "7 to 10 at worst"


def test_a_line_keeps_its_label_its_sources_and_its_place() -> None:
    line = desk(RECEIVER, SITE).line("p_max")

    assert line.label == "compressor cut-out"
    assert [each.source for each in line.sources] == ["SA-TR-004"]
    assert line.where == Where("desk.md", 10, 1)
    assert line.written == "p_max   = 30 bar(g) +/- 0.5 bar"
    assert line.value is not None
    assert line.value.given
    assert line.value.tolerance == "0.5 bar"


def test_the_lines_of_a_sheet_stand_in_the_order_they_are_written() -> None:
    sheet = desk(RECEIVER, SITE).network.sheets["desk"]

    names = [line.name for line in sheet.lines]
    assert names == ["p_max", "p_min", "V", "v_start", "stored", "n", "T_room", ""]
    assert sheet.lines[-1].requirement
    assert sheet.owner == "SA-CL-001"


def test_a_value_knows_what_it_uses_and_what_it_feeds() -> None:
    found = desk(RECEIVER, SITE).network

    assert set(found.values["desk.stored"].uses) == {
        "site.atmosphere", "desk.p_max", "desk.p_min", "desk.V", "desk.T_room",
    }  # fmt: skip
    assert found.feeds["desk.stored"] == ("desk.n",)
    assert found.feeds["site.T_engine_room"] == ("desk.T_room",)
    assert found.requirements[0].uses == ("desk.n",)


def test_upstream_lists_each_value_after_what_it_rests_on() -> None:
    order = desk(RECEIVER, SITE).network.upstream("desk.n")

    assert "desk.n" not in order
    assert order.index("site.T_engine_room") < order.index("desk.T_room")
    assert order.index("desk.T_room") < order.index("desk.stored")
    assert set(order) == {
        "site.atmosphere", "site.T_engine_room", "desk.T_room", "desk.p_max", "desk.p_min",
        "desk.V", "desk.v_start", "desk.stored",
    }  # fmt: skip


def test_fences_use_each_other_and_the_components() -> None:
    found = network(
        {
            "second-block": "p = first-block.p + 1 bar(d)\nm = SA-RV-001.set - p",
            "first-block": "p = 30 bar(g)",
        },
        {"SA-RV-001.set": "33 bar(g) +/- 0.5 bar"},
    )

    assert found.diagnostics == ()
    assert found.values["second-block.p"].text == "31.0 bar(g)"
    assert found.values["second-block.m"].text == "2.00 bar(d)"
    assert found.values["SA-RV-001.set"].given
    assert found.values["SA-RV-001.set"].text == "33 bar(g)"


def test_an_alias_leads_to_the_address_it_stands_for() -> None:
    fences = [fence("desk", "p = RV-001.set\nq = old-block.x\nr = other.y")]
    fences.append(fence("new-block", "x = 3\ny = 4"))
    known = {"SA-RV-001.set": given("SA-RV-001.set", "33 bar(g)")}
    aliases = {"RV-001": "SA-RV-001", "old-block": "new-block", "other.y": "new-block.y"}

    found = evaluate(fences, known, {}, aliases)

    assert found.diagnostics == ()
    assert found.values["desk.r"].si == 4.0
    assert found.values["desk.p"].uses == ("SA-RV-001.set",)


@pytest.mark.parametrize(
    ("expression", "cure"),
    [
        ("frist-block.p", "write first-block.p, or add it"),
        ("first-block.q", "take one of first-block: p; or add it"),
        ("SA-RV-002.set", "write SA-RV-001.set, or add it"),
        ("zzzzzz.zzzzzz", "write block.name, TAG.property or site.name"),
    ],
)
def test_a_reference_to_nothing_gets_the_nearest_address(expression: str, cure: str) -> None:
    found = network(
        {"first-block": "p = 30 bar(g)", "second-block": f"x = 1\ny = {expression}"},
        {"SA-RV-001.set": "33 bar(g)"},
    )

    (fault,) = found.diagnostics
    assert fault.code == "reference-to-nothing"
    assert fault.help == cure
    assert fault.where == Where("second-block.md", 11, 5)
    assert f"`{expression}`" in fault.text


def test_values_in_a_ring_are_named_hop_by_hop() -> None:
    found = network({"one": "a = two.b + 1", "two": "b = three.c", "three": "x = 1\nc = 2 * one.a"})

    (fault,) = found.diagnostics
    assert fault.code == "values-in-a-ring"
    assert fault.severity is Severity.STOP
    assert fault.text == (
        "values in a ring: `one.a` needs `two.b` (one.md:10:5), `two.b` needs `three.c` "
        "(two.md:10:5), `three.c` needs `one.a` (three.md:11:9)"
    )
    assert fault.where == Where("one.md", 10, 5)


def test_a_value_that_needs_itself_is_a_ring_of_one() -> None:
    found = desk("a = a + 1\nb = 2")

    assert found.fault.text == "values in a ring: `desk.a` needs `desk.a` (desk.md:10:5)"
    assert found.text("b") == "2"


def test_two_rings_are_both_reported_and_the_rest_is_worked_out() -> None:
    found = desk("a = b\nb = a\nc = d\nd = c\ne = a + c\nf = 3")

    assert [fault.where.line for fault in found.faults] == [10, 12]
    assert found.text("e") == "not computed"
    assert found.text("f") == "3"


def test_what_rests_on_a_broken_value_is_not_computed_and_says_why() -> None:
    found = desk("p = 3 x\nq = p + 1\nr = 2 * q\nrequire r > 1\ns = 4")

    assert found.fault.where.line == 10
    value = found.value("r")
    assert (value.text, value.si, value.low, value.high) == ("not computed", None, None, None)
    assert value.fault is not None
    assert value.fault.where == Where("desk.md", 12, 9)
    assert value.fault.text == "`q` is not computed: `x` is no unit of this handbook"
    assert found.line("r").worked.startswith("r = not computed: `q` is not computed")
    assert found.requirement.verdict == "not computed"
    assert found.requirement.left == "not computed"
    assert found.requirement.uses == ("desk.r",)
    assert found.text("s") == "4"


def test_a_broken_value_is_still_traced_to_what_it_would_use() -> None:
    found = desk("a = 1\nb = a + 2 m").network

    assert found.values["desk.b"].uses == ("desk.a",)
    assert found.upstream("desk.b") == ("desk.a",)


def test_a_broken_line_of_another_fence_is_no_reference_to_nothing() -> None:
    found = network({"one": "a = 3 x", "two": "b = one.a + 1"})

    assert [fault.code for fault in found.diagnostics] == ["unreadable-line"]
    assert found.values["two.b"].fault is not None
    assert found.values["one.a"].text == "not computed"


def test_every_independent_fault_of_a_handbook_is_reported() -> None:
    found = desk(
        """
a = 3 x
b = 1 m + 1 s
c = 1 bar(g) + 1 bar(a)
d = 1 / 0
e = ee
f = nowhere.g
h = h
i == 2
j = 5
"""
    )

    assert [(fault.where.line, fault.family) for fault in found.faults] == [
        (10, "UNIT"), (11, "DIMENSION"), (12, "DATUM"), (13, "RANGE"), (14, "NAME"),
        (15, "REFERENCE"), (16, "CYCLE"), (17, "SYNTAX"),
    ]  # fmt: skip
    assert found.text("j") == "5"
    assert {fault.about for fault in found.faults} == {"desk"}


def test_a_line_that_cannot_be_read_stands_in_its_place_on_the_sheet() -> None:
    lines = desk("a = 1\nb = 3 x\nc = 2").network.sheets["desk"].lines

    assert [line.name for line in lines] == ["a", "b", "c"]
    assert lines[1].fault is not None
    assert lines[1].worked == "not computed: `x` is no unit of this handbook"


def test_a_name_that_is_set_twice_has_no_value() -> None:
    found = desk("a = 1\na = 2\nb = a")

    assert found.fault.where == Where("desk.md", 11, 1)
    assert found.text("a") == "not computed"
    assert found.text("b") == "not computed"


def test_the_second_block_of_a_name_is_refused() -> None:
    one, two = fence("desk", "a = 1"), fence("desk", "b = 2", path="other.md")

    found = evaluate([two, one], {}, {})

    (fault,) = found.diagnostics
    assert fault.where == Where("other.md", 9, 1)
    assert fault.text == "the block name `desk` stands at desk.md:10:1 already"
    assert "desk.a" in found.values
    assert "desk.b" not in found.values


@pytest.mark.parametrize("name", ["Desk", "my block", "a_b", "", "site", "a" * 61])
def test_a_block_has_a_name_that_an_address_can_use(name: str) -> None:
    found = evaluate([fence(name, "a = 1", path="a.md")], {}, {})

    assert found.diagnostics[0].family == "NAME"
    assert found.diagnostics[0].where == Where("a.md", 9, 1)


def test_options_of_a_fence_are_read() -> None:
    found = desk("p = 30 bar(g)\nx = p / 7", options="; digits 5; hide working; what-if p")

    options = found.network.sheets["desk"].options
    assert (options.digits, options.hide_working, options.what_if) == (5, True, ("p",))
    assert found.text("x") == "4.2857 bar(g)"


@pytest.mark.parametrize(
    ("options", "says", "cure"),
    [
        ("digts 3", "`digts 3` is no option", "did you mean digits?"),
        ("digits 99", "`digits 99` is no option", "a number from 1 to 12"),
        ("digits x", "`digits x` is no option", "a number from 1 to 12"),
        ("hide", "`hide` is no option", "write digits 3; hide working"),
        ("what-if q", "what-if names `q`", "did you mean"),
    ],
)
def test_an_option_that_is_none_is_refused(options: str, says: str, cure: str) -> None:
    found = desk("p = 30 bar(g)", options=options).fault

    assert says in found.text
    assert found.where == Where("desk.md", 9, 1)
    assert cure in found.help or "name a number that this fence is given" in found.help


def test_without_a_stated_atmosphere_the_standard_one_is_taken_and_said() -> None:
    found = desk("p = absolute(1 bar(g))\nq = 3")

    assert found.si("p") == 201_325.0
    assert (
        found.line("p").worked == "p = absolute(1 bar(g)) = 1 bar(g) + 101325 Pa(a) = 2.01 bar(a)"
    )
    assert found.line("p").notes == ("site.atmosphere is not stated: 101325 Pa(a) is taken",)
    assert found.line("q").notes == ()
    assert found.value("p").uses == ()


def test_a_stated_atmosphere_is_used_and_named() -> None:
    found = desk("p = absolute(1 bar(g))\na = site.atmosphere", {"site.atmosphere": "980 mbar(a)"})

    assert found.si("p") == 198_000.0
    assert found.line("p").notes == ()
    assert found.value("p").uses == ("site.atmosphere",)
    assert found.text("a") == "980 mbar(a)"


def test_an_atmosphere_that_is_no_absolute_pressure_breaks_what_needs_it() -> None:
    found = desk("p = absolute(1 bar(g))\nq = 3", {"site.atmosphere": "0 bar(g)"})

    assert found.fault.family == "DATUM"
    assert found.fault.where == Where("handbook.yml", 3, 5)
    assert found.text("p") == "not computed"
    assert found.text("q") == "3"


def test_a_long_chain_of_values_is_worked_out() -> None:
    fences = {"b0": "x = 1 m +/- 1 mm"}
    fences |= {f"b{n}": f"x = b{n - 1}.x + 1 m" for n in range(1, 1500)}

    found = network(fences)

    assert found.diagnostics == ()
    assert found.values["b1499.x"].si == pytest.approx(1500.0)
    assert len(found.upstream("b1499.x")) == 1499


def test_recompute_works_out_what_rests_on_a_changed_input() -> None:
    found = desk(RECEIVER, SITE).network

    before = found.recompute({}, ["desk.n", "desk.stored"])
    after = found.recompute({"desk.p_max": 25e5}, ["desk.n", "desk.stored"])

    assert before == (8.0, found.values["desk.stored"].si)
    assert after[0] == 6.0
    assert found.recompute({"desk.stored": 1.8}, ["desk.n"]) == (2.0,)


def test_two_runs_give_the_same_network() -> None:
    assert desk(RECEIVER, SITE).network == desk(RECEIVER, SITE).network
