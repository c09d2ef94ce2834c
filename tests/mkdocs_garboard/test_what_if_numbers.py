"""The page against the core: ten thousand inputs typed into a browser, and the same worked out again.

What the page says comes from the script as published, opened from a folder. What it is held against
is the network itself: `recompute` for each result, and for one case in five the whole text read and
worked out anew with the typed number in its place, with ranges, criteria and alarms.
"""

import json
import math
import random
import re
from base64 import b64decode
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from garboard.calc.arithmetic import LimitPassed
from garboard.calc.functions import FUNCTIONS
from garboard.calc.network import Network
from garboard.calc.show import Towards, show_number, show_range
from garboard.calc.units import read_unit
from garboard.calc.value import Requirement, Value, Verdict
from garboard.views.text import _verdict as verdict_words
from mkdocs_garboard.scripts import script as script_of
from tests.mkdocs_garboard import browser
from tests.mkdocs_garboard.what_if_trials import TRIALS, Trial

pytestmark = pytest.mark.browser

TYPED = 10_000
SIDES = {Towards.DOWN: -1, Towards.NEAREST: 0, Towards.UP: 1}
AGAIN = 5
"""One in so many is worked out from its text anew."""
CLOSE = 1e-12


@dataclass(frozen=True)
class Case:
    """What is typed into one trial, and what the page said to it."""

    trial: Trial
    network: Network
    program: dict[str, Any]
    typed: dict[str, str]
    said: dict[str, Any]

    def __str__(self) -> str:
        return f"{self.trial.name} {self.typed}"

    @property
    def changes(self) -> dict[str, float]:
        """Address to the typed value in SI, rounded once."""
        values = self.network.values
        return {
            f"desk.{name}": values[f"desk.{name}"].unit.exact(Fraction(text))
            for name, text in self.typed.items()
        }

    @property
    def results(self) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
        return zip(self.program.get("results", []), self.said["results"], strict=True)


def typed_into(trial: Trial, often: int, chance: random.Random) -> Iterator[dict[str, str]]:
    for _ in range(often):
        yield {
            name: f"{chance.uniform(low, high):.{places}f}"
            for name, (low, high, places) in trial.spans.items()
        }


ASK = """
var said = all.map(function (own, which) { var w = scripts[which]; return own.map(function (pair) {
  var program = w.ready(pair[0]);
  return pair[1].map(function (texts) {
    var read = texts.map(function (text, at) { return w.read(program.inputs[at], text); });
    if (read.some(function (one) { return one.fault; })) {
      return { faults: read.map(function (one) { return one.fault || ""; }) };
    }
    var found = w.follow(program, read.map(function (one) { return one.si; }));
    found.results.forEach(function (one, at) {
      if ("value" in one) { one.shown = w.showResult(program.results[at], one); }
    });
    found.requirements.forEach(function (one, at) {
      if ("left" in one) {
        one.sides = w.showSides(program.requirements[at], one);
        one.words = w.showVerdict(program.requirements[at], one);
      }
    });
    return found;
  });
}); });
var shown = scripts.map(function (w) {
  return numbers.map(function (one) { return w.shown(one[0], one[1], "", one[2], one[3]); });
});
document.getElementById("out").textContent =
  btoa(unescape(encodeURIComponent(JSON.stringify({ said: said, shown: shown }))));
"""


@dataclass(frozen=True)
class Answers:
    """What one script says to all that is typed, and how it shows numbers."""

    cases: list[Case]
    shown: list[str]


def numbers() -> list[tuple[float, int, bool, Towards]]:
    """Numbers to be shown: of any size, exact halves, last figures of floats; to each side."""
    chance = random.Random(7)  # noqa: S311 - the same numbers at every run
    found: list[tuple[float, int, bool, Towards]] = []
    for _ in range(1500):
        digits, towards = chance.randint(1, 12), chance.choice(list(Towards))
        size = chance.uniform(-9.99, 9.99) * 10.0 ** chance.randint(-9, 12)
        half = (chance.randint(-300, 300) + 0.5) * 10.0 ** chance.randint(-4, 3)
        sum_ = chance.randint(1, 99) / 10 + 0.1 + 0.2
        values = (size, half, sum_, -sum_, float(chance.randint(-30, 30)))
        found += [(value, digits, chance.random() < 0.3, towards) for value in values]
    return found


def ask(folder: Path, scripts: list[str], often: list[int]) -> list[Answers]:
    """Type into all trials, so often for each script, in one page opened from a folder."""
    chance = random.Random(2031)  # noqa: S311 - the same cases at every run
    made = [(trial, trial.worked()) for trial in TRIALS]
    programs = [json.loads(network.sheets["desk"].what_if) for _, network in made]
    typed = [[list(typed_into(one, times, chance)) for one in TRIALS] for times in often]
    asked = [
        [
            [program, [list(one.values()) for one in cases]]
            for program, cases in zip(programs, own, strict=True)
        ]
        for own in typed
    ]
    tags = ""
    for number, script in enumerate(scripts):
        (folder / f"{number}.js").write_text(script, "utf-8")
        tags += f"<script src={number}.js></script><script>scripts.push(garboardWhatIf)</script>"
    shown = [(*one[:3], SIDES[one[3]]) for one in numbers()]
    page = folder / "ask.html"
    page.write_text(
        "<!doctype html><meta charset=utf-8><pre id=out></pre><script>var scripts=[]</script>"
        f"{tags}<script>var all={json.dumps(asked)},numbers={json.dumps(shown)};{ASK}</script>",
        "utf-8",
    )
    found = re.search(r'<pre id="out">(.+?)</pre>', browser.opened(page), re.DOTALL)
    assert found, "the script did not answer"
    heard = json.loads(b64decode(found[1]))
    return [
        Answers(
            [
                Case(trial, network, program, texts, said)
                for (trial, network), program, inputs, answers in zip(
                    made, programs, own, said_to, strict=True
                )
                for texts, said in zip(inputs, answers, strict=True)
            ],
            texts_shown,
        )
        for own, said_to, texts_shown in zip(typed, heard["said"], heard["shown"], strict=True)
    ]


# ---- what is held against what ----


def near(one: float, other: float) -> bool:
    return one == other or abs(one - other) <= CLOSE * max(abs(one), abs(other))


def wrong_reading(case: Case) -> list[str]:
    """A field that refuses what is possible, or takes what is not."""
    outside = [
        not one.get("lowest", -math.inf) <= si <= one.get("highest", math.inf)
        or (one.get("whole", False) and not float(text).is_integer())
        for one, si, text in zip(
            case.program["inputs"], case.changes.values(), case.typed.values(), strict=True
        )
    ]
    refused = [bool(one) for one in case.said.get("faults", [""] * len(outside))]
    return [] if refused == outside else [f"{case}: {case.said}"]


def recomputed(case: Case, name: str) -> float | str:
    """A result as the network gives it, or why it gives none."""
    try:
        (found,) = case.network.recompute(case.changes, [f"desk.{name}"])
    except LimitPassed as reason:
        return str(reason)
    except (ArithmeticError, ValueError):
        return ""
    return found if math.isfinite(found) else ""


def wrong_values(case: Case) -> list[str]:
    """Results that differ from the network's."""
    faults = []
    for one, said in case.results:
        found = recomputed(case, one["name"])
        agree = (
            near(said.get("value", math.nan), found)
            if isinstance(found, float)
            else "value" not in said and (not found or said["why"] == found)
        )
        if not agree:
            faults.append(f"{case}: {one['name']} is {found!r}, the page says {said}")
    return faults


def wrong_again(case: Case, again: Network) -> list[str]:
    """Ranges, criteria and alarms that differ from those of the text worked out anew."""
    faults = []
    for one, said in case.results:
        value = again.values.get(f"desk.{one['name']}")
        if value is None or value.si is None:
            if "value" in said:
                faults.append(f"{one['name']} is not computed, the page says {said}")
        elif "value" not in said:
            faults.append(f"{one['name']} is {value.text}, the page says {said}")
        elif not range_agrees(again, value, one, said):
            faults.append(f"{one['name']} {value.low} to {value.high}, the page says {said}")
    required = zip(case.program.get("requirements", []), case.said["requirements"], strict=True)
    texts = {one.text: one for one in again.requirements if one.block == "desk"}
    for one, said in required:
        if problem := wrong_criterion(case.trial.name, texts[one["text"]], one, said):
            faults.append(problem)
    alarms = [text for line in again.sheets["desk"].lines for text in line.alarms]
    if set(case.said["alarms"]) != set(alarms):
        faults.append(f"alarms {alarms}, the page says {case.said['alarms']}")
    return [f"{case}: {fault}" for fault in faults]


def range_agrees(again: Network, value: Value, one: dict[str, Any], said: dict[str, Any]) -> bool:
    assert value.si is not None
    if not said["ranged"]:
        left_out = one.get("worst", ()) is None or value.sampled or leaves_corners(again, value)
        return left_out and said["shown"]["range"] == "worst range not followed here"
    if one.get("worst", ()) is None:
        return False
    if value.low is None or value.high is None:
        return said["low"] is None and said["shown"]["range"] == "range unknown"
    unit = read_unit(one.get("unit", [""])[0])
    own = replace(value, unit=unit)
    text = show_number(unit.from_si(value.si), value.digits, unit.text, whole=value.whole)
    shown = [said["shown"]["text"], said["shown"]["range"]]
    ends = near(said["low"], value.low) and near(said["high"], value.high)
    return ends and shown in ([text, show_range(own)], [value.text, show_range(own)])


def leaves_corners(again: Network, value: Value) -> bool:
    """Whether a value, somewhere between the corners, is not between what it is at them."""
    chance = random.Random(3)  # noqa: S311 - the same points at every run
    ends = {
        name: (one.si, one.low, one.high)
        for name, one in again.values.items()
        if one.given and one.si is not None and one.low is not None and one.high != one.low
    }
    points = [
        {name: low + share / 40 * (high - low)}
        for name, (_, low, high) in ends.items()
        if high is not None
        for share in range(41)
    ]
    points += [
        {
            name: chance.uniform(low, high)
            for name, (_, low, high) in ends.items()
            if high is not None
        }
        for _ in range(400)
    ]
    for point in points:
        try:
            (found,) = again.recompute(point, [value.address])
        except (ArithmeticError, ValueError):
            return True
        if value.low is None or value.high is None or not value.low <= found <= value.high:
            return True
    return False


UNEVEN = {"uneven branch", "hump"}
"""Trials whose criteria are at their worst between the corners."""


def wrong_criterion(
    trial: str, asked: Requirement, one: dict[str, Any], said: dict[str, Any]
) -> str:
    told = f"{asked.text}: {asked.verdict}, {asked.left} {asked.right}, margin {asked.margin}"
    if asked.verdict is Verdict.UNKNOWN:
        return "" if "verdict" not in said else f"{told}, the page says {said}"
    if "verdict" not in said:
        return f"{told}, the page says {said}"
    if one.get("worst", ()) is None or (not said["ranged"] and trial in UNEVEN):
        same = (
            said["here"] is (asked.verdict is not Verdict.FAILS) and "not followed" in said["words"]
        )
        return "" if same else f"{told}, the page says {said}"
    flips = said["verdict"] != str(asked.verdict)
    words = [said["words"], *said["sides"]] != [verdict_words(asked), asked.left, asked.right]
    return f"{told}, the page says {said}" if flips or words else ""


def wrong_hump(case: Case) -> list[str]:
    """A hill and a valley at 3: within the tolerance of 1 their worst lies between the corners."""
    inside = 0 < abs(Fraction(case.typed["a"]) - 3) < 1
    followed = [one["ranged"] for one in (*case.said["results"], *case.said["requirements"])]
    right = [not inside, not inside, True, not inside]
    return [] if followed == right else [f"{case}: the page says {case.said}"]


def faults_of(answers: Answers, again: int) -> Iterator[str]:
    """All in which the page and the core differ; one case in so many is worked out anew."""
    for (value, digits, whole, towards), text in zip(numbers(), answers.shown, strict=True):
        own = show_number(value, digits, whole=whole, towards=towards)
        if own != text:
            yield f"{value!r} with {digits} digits, {towards}, is {own}, the page shows {text}"
    for at, case in enumerate(answers.cases):
        wrong = wrong_reading(case)
        if not wrong and "faults" not in case.said:
            wrong = wrong_values(case)
            if case.trial.name == "hump":
                wrong += wrong_hump(case)
            if at % again == 0:
                wrong += wrong_again(case, case.trial.worked(case.typed))
        yield from wrong


BROKEN = {
    "an operator": ('"-": (a, b) => a - b', '"-": (a, b) => b - a'),
    "the hair of comparisons": ("return HAIR * Math.max", "return 0 * Math.max"),
    "the hair of whole numbers": (
        "Math.floor(value + Math.abs(value) * HAIR)",
        "Math.floor(value)",
    ),
    "the zero of a thermometer": ("(si - unit[2]) / unit[1]", "si / unit[1]"),
    "the reference of free air": ("273.15 / 101325", "288.15 / 101325"),
    "a corner left out": ("let which = 0; which < count;", "let which = 1; which < count;"),
    "what lies between the corners": ("inner.every((value) =>", "inner.some((value) =>"),
    "a tolerance in per cent": ("Math.abs(value) * input.share", "Math.abs(value) * 0"),
    "a limit of a method": ("=== 1 ? 1 : lost(run, why)", "=== 1 ? 1 : 1"),
    "an end rounded inwards": ('whole, 1) + " at worst"', 'whole, 0) + " at worst"'),
    "equal counts as failing": ("own === 0 && (sign", "own === 1 && (sign"),
    "half rounds up": ("rest === 0.5 && below % 2 !== 0", "rest === 0.5"),
}
"""What is broken on purpose: a text of the script that stands there once, and another."""
OFTEN, SELDOM = -(-TYPED // len(TRIALS)), 15


@pytest.fixture(scope="module")
def answers(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Answers]:
    """What the script answers, and what it answers when broken, from one start of a browser."""
    script = script_of("what-if")
    scripts = {"": script}
    for name, (own, other) in BROKEN.items():
        assert script.count(own) == 1, f"{name}: {own!r} stands {script.count(own)} times"
        scripts[name] = script.replace(own, other)
    folder = tmp_path_factory.mktemp("numbers")
    found = ask(folder, list(scripts.values()), [OFTEN, *[SELDOM] * len(BROKEN)])
    return dict(zip(scripts, found, strict=True))


def test_the_page_says_what_the_core_says_for_ten_thousand_inputs(
    answers: dict[str, Answers],
) -> None:
    assert len(answers[""].cases) >= TYPED
    assert list(faults_of(answers[""], AGAIN)) == []


@pytest.mark.parametrize("name", BROKEN)
def test_a_script_that_is_broken_is_seen(answers: dict[str, Answers], name: str) -> None:
    assert next(faults_of(answers[name], 1), "") != ""


def test_every_kind_of_answer_is_among_them(answers: dict[str, Answers]) -> None:
    cases = answers[""].cases
    said = [case.said for case in cases if "faults" not in case.said]
    results = [one for each in said for one in each["results"]]
    verdicts = [one["verdict"] for each in said for one in each["requirements"] if "verdict" in one]

    assert {str(one) for one in Verdict} - set(verdicts) == {str(Verdict.UNKNOWN)}
    assert sum("faults" in case.said for case in cases) > 100
    assert sum("why" in one for one in results) > 500
    assert sum(one.get("ranged") is False for one in results) > 100
    assert sum(one.get("low", 0) is None for one in results) > 100
    assert sum(bool(each["alarms"]) for each in said) > 30


def test_the_trials_hold_every_part_of_the_language() -> None:
    """Nothing that a program can hold is left untried."""
    signs = {
        sign
        for trial in TRIALS
        for sign in re.findall(
            r'"([^"]+)"',
            json.dumps(json.loads(trial.worked().sheets["desk"].what_if).get("steps", [])),
        )
    }
    script = script_of("what-if")
    tables = script[script.index("const PLAIN = {") : script.index("function build(")]

    known = set(re.findall(r'^"([^"]+)": ', tables, re.MULTILINE)) | {"if", "within"}

    assert signs == known
    assert set(FUNCTIONS) - {"absolute", "gauge", "difference"} <= known
