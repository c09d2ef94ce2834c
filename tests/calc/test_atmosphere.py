"""The weather changes readings and nothing else.

The same state is restated under another atmosphere: every gauge reading goes down by what the
atmosphere went up. Absolutes and differences must not move, gauge results must move by the shift.
Left out on purpose are the casts by which an author says otherwise: `difference()` and `1.5 *` of a
reading take the reading itself as a number, `gauge()` of a difference makes a reading of it.
"""

import random
import re
from collections.abc import Iterator
from dataclasses import dataclass

import pytest

from garboard.calc.kinds import Kind
from garboard.calc.ledger import ATMOSPHERE, Formula
from garboard.calc.reckoner import Reckoner
from garboard.calc.tree import Cast, Compare, Conversion, Node, Operation, parts_of
from tests.calc.desk import desk, fence, given, workings

SHIFT = 4_000.0
ACCEPTED = 20_000
"""Expressions that must be accepted and agree."""
IN_A_FENCE = 60


@dataclass(frozen=True)
class State:
    """One state of a plant under one atmosphere."""

    atmosphere: float

    def text(self, *expressions: str) -> str:
        lowered = (self.atmosphere - 101_325.0) / 1e5
        lines = "\n".join(f"r{at} = {each}" for at, each in enumerate(expressions))
        return f"""
g = {30 - lowered:.5f} bar(g)
h = {12 - lowered:.5f} bar(g)
a = 8 bar(a)
d = 0.5 bar(d)
V = 500 L
W = 2 m3
t = 25 degC
rho = 1025 kg/m3 * 9.81 m/s2
{lines}
"""

    @property
    def site(self) -> dict[str, str]:
        return {"site.atmosphere": f"{self.atmosphere:.0f} Pa(a)"}


@dataclass(frozen=True)
class Plant:
    """Many expressions of one plant, worked out under one atmosphere, and again under another."""

    reckoner: Reckoner
    formulas: dict[str, Formula]
    """Those that were accepted and mean one state, by expression."""

    def under(self, state: State) -> dict[str, float]:
        """All of them under another atmosphere, with the readings that the gauges show there."""
        ledger = self.reckoner.ledger
        slots = list(ledger.slots)
        slots[ATMOSPHERE] = state.atmosphere
        fixed = [ATMOSPHERE]
        for address, slot in self.reckoner.standing.slots.items():
            if address.endswith((".g", ".h")):
                slots[slot] -= state.atmosphere - ledger.slots[ATMOSPHERE]
                fixed.append(slot)
        wanted = [formula.slot for formula in self.formulas.values()]
        ledger.program(wanted, fixed).run(slots)
        return {text: slots[formula.slot] for text, formula in self.formulas.items()}


def work_out(state: State, expressions: list[str]) -> Plant:
    """All expressions that are accepted, without the pages that a handbook makes of them."""
    fences = [
        fence(f"f{at}", state.text(*expressions[at : at + IN_A_FENCE]))
        for at in range(0, len(expressions), IN_A_FENCE)
    ]
    known = {address: given(address, text) for address, text in state.site.items()}
    reckoner = workings(fences, known).reckoner
    formulas = {
        expression: reckoner.worked[key].formulas[key]
        for at, expression in enumerate(expressions)
        if (key := f"f{at - at % IN_A_FENCE}.r{at % IN_A_FENCE}") in reckoner.worked
    }
    meant = {text: one for text, one in formulas.items() if not is_said_otherwise(one.node)}
    return Plant(reckoner, meant)


def is_said_otherwise(node: Node | Compare) -> bool:
    """Whether an author takes a reading for a number, or a difference for a reading."""
    if isinstance(node, Cast) and node.word == "gauge" and node.conversion is SAME_NUMBER:
        return True
    if isinstance(node, Operation) and node.sign in "*/" and node.type.kind is Kind.READING:
        return True
    return any(map(is_said_otherwise, parts_of(node)))


SAME_NUMBER = Conversion.SAME_NUMBER


LEAVES = {
    "reading": ["g", "h"],
    "plain": ["d", "g - h", "a - absolute(h)", "rho * 3 m", "absolute(g) - a"],
    "absolute": ["a", "absolute(g)", "absolute(h)"],
    "number": [
        "2",
        "0.5",
        "(a / absolute(g))",
        "(g - h) / (4 bar(d))",
        "V / W",
        "sqrt(absolute(h) / a)",
    ],
}
KINDS = ["reading", "plain", "absolute"]
SHAPES = {
    "reading": ["({reading} + {plain})", "({reading}) - ({plain})", "gauge({absolute})"],
    "plain": [
        "({reading}) - ({reading})", "({absolute}) - ({absolute})", "({plain} + {plain})",
        "({plain}) - ({plain})",
    ],
    "absolute": [
        "absolute({reading})", "({absolute} + {plain})", "({absolute}) - ({plain})",
        "({absolute} + {absolute})", "({absolute}) * {number}", "({absolute}) / {number}",
        "sqrt(({absolute}) * ({absolute}))", "({absolute}) * V / (({absolute}) * W) * ({absolute})",
        "absolute({plain})",
    ],
    "number": [],
}  # fmt: skip
ALIKE = [
    "max({same}, {same})",
    "min({same}, {same})",
    "({same} if {same} < {same} else {same})",
    "({same} if {absolute} <= {absolute} else {same})",
]
WILD = 0.06
"""How often a part is of another kind than its place asks for; most of those are refused."""


def pressure(rng: random.Random, kind: str, depth: int) -> str:
    """An expression that a page could hold; whether it is accepted is for the kinds to say."""
    if kind != "number" and rng.random() < WILD:
        kind = rng.choice(KINDS)
    if depth == 0 or kind == "number" or rng.random() < 0.1:
        return rng.choice(LEAVES[kind])
    shape = rng.choice([*SHAPES[kind], *ALIKE]).replace("{same}", f"{{{kind}}}")
    return PART.sub(lambda part: pressure(rng, part[1], depth - 1), shape)


PART = re.compile(r"\{(\w+)\}")


def batches() -> Iterator[list[str]]:
    """Different expressions, 3000 at a time; the seed is fixed, so a failure comes again."""
    rng = random.Random(2031)  # noqa: S311 - test data
    seen: set[str] = set()
    while True:
        batch: list[str] = []
        while len(batch) < 3000:
            text = pressure(rng, rng.choice(KINDS), rng.choice((1, 2, 2)))
            if text not in seen and len(text) < 200:
                seen.add(text)
                batch.append(text)
        yield batch


def test_restating_a_state_under_another_atmosphere_moves_readings_alone() -> None:
    before, after = State(101_325.0), State(101_325.0 + SHIFT)
    accepted = readings = 0
    for batch in batches():
        plant = work_out(before, batch)
        stormy = plant.under(after)
        for expression, formula in plant.formulas.items():
            reading = formula.node.type.kind is Kind.READING
            moved = stormy[expression] - formula.si
            assert abs(moved - (-SHIFT if reading else 0.0)) < 1e-3, expression
            readings += reading
        accepted += len(plant.formulas)
        if accepted >= ACCEPTED:
            break
    assert 0.1 * accepted < readings < 0.9 * accepted


def test_the_amount_of_air_in_a_receiver_does_not_depend_on_the_weather() -> None:
    before, after = State(101_325.0), State(97_000.0)
    expression = "free_air(V, g, t) - free_air(V, h, t)"

    calm, stormy = (desk(state.text(expression), state.site).si("r0") for state in (before, after))

    assert calm == pytest.approx(stormy, rel=1e-9)
