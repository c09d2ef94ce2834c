"""What is left out on purpose: figures that were only recalled, and verdicts that are not ours.

A figure from memory stays out until its document has been read. A verdict that can kill stays with the
people whose trade it is: the tool gives figures, records and reasons.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

import garboard.methods
from garboard.calc.method import FormulaMethod, Method
from garboard.methods import METHODS
from tests.methods.said import Work

FOLDER = Path(garboard.methods.__file__).parent


@dataclass(frozen=True)
class LeftOut:
    """What is not held, and how it would show in a module of the methods."""

    what: str
    trace: str
    planted: str
    """A text that holds it: the trace must find it here."""
    beside: str = ""
    """What would stand in the same module."""


NOT_HELD = (
    LeftOut("46 CFR 56.50-50(d), inch formulas: recalled", r"56\.50-50", "46 CFR 56.50-50(d)"),
    LeftOut(
        "33 CFR 183.425 note 1, factors other than 105 degC: not seen",
        r"(?<![\d.])0\.(?:58|71|75|78|82|89)(?!\d)",
        "33 CFR 183.425 note 1: 0.75 in an engine space",
        r"183\.425",
    ),
    LeftOut("constants of ISO 8861: recalled", r"8861", "ISO 8861"),
    LeftOut("gauge limits of EN 837-2: recalled", r"\b837-[12]\b", "EN 837-2"),
    LeftOut("test gauge range of ASME UG-102: recalled", r"UG-102", "ASME UG-102"),
    LeftOut("worked results of ASME PTB-4: recalled", r"PTB-4", "ASME PTB-4 example"),
    LeftOut("proof loads of ISO 898: recalled", r"ISO 898|proof load", "the proof load of a bolt"),
    LeftOut(
        "factors of the cargo-securing annex 13: recalled, and only for 50 m and over",
        r"annex 13|0\.345(?!\d)|58\.62|1034\.5",
        "0.345 * v / sqrt(L)",
    ),
    LeftOut("the example of Peukert: recalled", r"peukert", "Peukert's exponent"),
    LeftOut(
        "the energy-audit example of free air delivery: recalled",
        r"(?<![\d.])13\.12(?!\d)",
        "13.12 m3/min",
    ),
    LeftOut(
        "ventilation of a battery space, 0.11 x I x n: recalled",
        r"(?<![\d.])0\.11 ?\*|111\.15-10",
        "q = 0.11 * I * n",
    ),
    LeftOut(
        "leak rows of the tip sheet of an energy department: recalled",
        r"tip.?sheet|department of energy|energy.department",
        "a tip sheet",
    ),
    LeftOut(
        "29 CFR 1910.169(b) and 1910.252(a)(3): recalled",
        r"1910\.(?:169|252)",
        "29 CFR 1910.169(b)",
    ),
    LeftOut(
        "ISO 13857, table for younger children: not seen",
        r"13857,? table [56]\b",
        "ISO 13857 Table 5",
    ),
    LeftOut(
        "freeing-port area: the metric constant could not be reconciled",
        r"freeing|178\.450|4389|227\.8",
        "the area of a freeing port",
    ),
    LeftOut(
        "EN and ISO tables as text: licensed documents", r"\b(?:BS|DIN) EN\b|© ISO", "© ISO 2019"
    ),
)

NOT_OURS = {
    "vessel thickness as approval, remaining life, nozzle, weld repair, re-rating": (
        r"approv|remaining life|nozzle|weld repair|re-?rat"
    ),
    "go or no-go of a gas test, stand-off": r"go.or.no|stand.?off|safe.distance",
    "relief valve choice, fire case": r"fire.case|valve to fit|orifice letter",
    "purge time, air changes, gas-free, safe to weld, entry": (
        r"purge|air.changes|gas.?free|safe.to|confined"
    ),
    "another service for a cylinder": r"conver.*cylinder|cylinder.*(?:service|use)",
    "bracket, lifting point or foundation pass or fail": (
        r"pass.or|strong.enough|safety.factor|utili[sz]ation|lifting"
    ),
    "a verdict on stability": r"is.stable|stability.verdict|stable",
    "shore power, lithium protection, fault current, breaking capacity": (
        r"shore.power|lithium|fault.current|breaking.capacity"
    ),
    "breathing air, oxygen": r"breath|oxygen.(?:supply|bottle|cylinder|mix)",
    "equivalence of life-saving or fire-fighting gear": r"equivalen\w* (?:of|to) (?:life|fire)",
}
"""What is not automated: how the result of a method would be called that does it all the same."""


def texts() -> Iterator[tuple[str, str]]:
    """Every module of the methods with its cases and publications."""
    for path in sorted(FOLDER.rglob("*.py")):
        yield path.relative_to(FOLDER).as_posix(), path.read_text("utf-8")


def holders(left_out: LeftOut, found: Iterable[tuple[str, str]]) -> list[str]:
    """The modules that hold what is not held."""
    return [
        name
        for name, text in found
        if re.search(left_out.trace, text, re.IGNORECASE) and re.search(left_out.beside, text)
    ]


def offered(method: Method) -> str:
    """What a method gives, and the words that a formula takes; a table refuses some of its own."""
    given = [f"{one.name} {one.meaning}" for one in method.results]
    if isinstance(method, FormulaMethod):
        given += [" ".join(one.words) for one in method.parameters]
    return "; ".join(given).replace("_", " ")


every_gap = pytest.mark.parametrize("left_out", NOT_HELD, ids=lambda one: str(one.what))


@every_gap
def test_a_figure_that_was_only_recalled_is_in_no_method(left_out: LeftOut) -> None:
    assert holders(left_out, texts()) == []


@every_gap
def test_such_a_figure_would_be_found(left_out: LeftOut) -> None:
    assert holders(left_out, [("planted.py", left_out.planted)]) == ["planted.py"]


@pytest.mark.parametrize("topic", NOT_OURS)
@pytest.mark.parametrize("name", METHODS)
def test_no_method_gives_a_verdict_that_is_not_ours(name: str, topic: str) -> None:
    assert re.search(NOT_OURS[topic], offered(METHODS[name]), re.IGNORECASE) is None


@pytest.mark.parametrize(
    "result",
    [
        "remaining life", "safe distance", "fire case area", "air changes", "pass or fail",
        "fault current", "breathing air", "oxygen supply", "stable", "cylinder for another service",
        "equivalence to life-saving gear",
    ],
)  # fmt: skip
def test_such_a_verdict_would_be_found(result: str) -> None:
    assert any(re.search(trace, result, re.IGNORECASE) for trace in NOT_OURS.values())


def test_every_method_that_has_a_table_of_children_refuses_them(work: Work) -> None:
    found = work(
        "x = guard_opening(table = iso, distance = 100 mm, shape = slot, people = children)"
    )

    assert "the table for younger children is not held" in found.diagnostics[0].text
    assert found.values["case.x.opening_max"].si is None


def test_the_third_row_of_46_cfr_182_520_comes_from_a_textbook_and_says_so(work: Work) -> None:
    found = work(
        "x = bilge_and_fire_pump_rules(rule = small_passenger_bilge, length = 40 ft, "
        "passengers = 12, ferry = no)"
    )
    line = found.sheets["case"].lines[0]

    assert line.table is not None
    assert [row[-1] for row in line.table.rows] == [
        "46cfr182.520, third row as restated in gerr-boat-systems"
    ]
    assert "the third row was seen in part; ask for the text" in line.notes


def test_a_rule_of_thumb_that_others_contradict_is_never_one_number(work: Work) -> None:
    found = work("x = gauge_range(working = 30 bar(g))")

    shown = {name.rpartition(".")[2]: value.text for name, value in found.values.items()}
    assert shown["scale_max_half"] != shown["scale_max_middle"]
    assert "scale" not in shown
