"""Run the proofs of the methods: each case through the language, as an author calls it.

A value must come out within its tolerance, an alarm must sound where one is expected and nowhere
else, a refusal must give the reason that was declared. An answer that a known mistake would produce
fails the case even where a wide tolerance would let it pass. `site.atmosphere` in the call of a
case is the barometer of the day; the others take the standard atmosphere.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from garboard.calc.kinds import Type
from garboard.calc.method import Expect, Method, Proof
from garboard.calc.network import Network, evaluate
from garboard.calc.quantity import Quantity, read_quantity
from garboard.calc.sheet import Fence, WorkedLine
from garboard.calc.value import Given, Value
from garboard.errors import Where

__all__ = ["Outcome", "ProofResult", "prove", "prove_all"]

_CASE: Final = "case"
_HERE: Final = Where("proof")
_ATMOSPHERE: Final = "site.atmosphere"
_EXACT: Final = 1e-9
"""Relative: what is exact to the printed digit may differ by this much, which is rounding."""
_MOST_DIGITS: Final = 12


class Outcome(StrEnum):
    """How a case came out."""

    REPRODUCED = "reproduced"
    DIFFERS = "differs"


@dataclass(frozen=True, slots=True)
class ProofResult:
    """One case, run."""

    method: Method
    proof: Proof
    ours: str
    """What this method answers; for a refusal the reason it gives."""
    published: str
    """What it is held against."""
    difference: float | None
    """In per cent of the published value; None where they are no numbers."""
    outcome: Outcome
    why: str = ""
    """Why it differs."""
    number: float | None = None
    """Our answer in the unit of the published one."""


@dataclass(frozen=True, slots=True)
class _Run:
    """A call, worked out, and a second line that asks for one result."""

    network: Network
    line: WorkedLine
    alone: bool
    """Whether the method has a single result, which stands under the name of the call itself."""

    @property
    def reason(self) -> str:
        """Why there is no answer, with the cure; empty where there is one."""
        return "; ".join(f"{found.text}; {found.help}" for found in self.network.diagnostics)

    def word(self, result: str) -> str:
        """A result that is a word or a row of figures."""
        said = f"{result}: "
        found = (note for note in self.line.notes if note.startswith(said))
        return next(found, "").removeprefix(said)

    def value(self, result: str) -> Value | None:
        """A result that is a number."""
        return self.network.values.get(f"{_CASE}.{_address(result, alone=self.alone)}")


def prove_all(methods: Mapping[str, Method]) -> tuple[ProofResult, ...]:
    """Run every case of every method."""
    return tuple(prove(method, proof) for method in methods.values() for proof in method.proofs)


def prove(method: Method, proof: Proof) -> ProofResult:
    """Run one case."""
    if proof.expect is Expect.REFUSE:
        return _refused(method, proof, _run(method, proof, ask=True))
    run = _run(method, proof, ask=False)
    sounded = bool(run.line.alarms)
    if run.reason:
        return _differs(method, proof, run.reason, "it gives no answer")
    if sounded is not (proof.expect is Expect.ALARM):
        said = "; ".join(run.line.alarms)
        return _differs(method, proof, said, "an alarm sounds" if sounded else "no alarm sounds")
    value = run.value(proof.result)
    if value is None:
        return _compare_words(method, proof, run.word(proof.result))
    return _compare_numbers(method, proof, value)


def _run(method: Method, proof: Proof, *, ask: bool) -> _Run:
    """Call the method the way an author does."""
    handed = ", ".join(
        f"{name} = {text}" for name, text in proof.call.items() if name != _ATMOSPHERE
    )
    alone = len(method.results) == 1
    lines = [f"found = {method.name}({handed})"]
    if ask:
        lines.append(f"asked = {_address(proof.result, alone=alone)}")
    fence = Fence(_CASE, "", tuple(lines), _HERE, "proof")
    network = evaluate([fence], _site(proof), {method.name: method})
    return _Run(network, network.sheets[_CASE].lines[0], alone)


def _address(result: str, *, alone: bool) -> str:
    """How a later line of the same fence names a result."""
    return "found" if alone else f"found.{result}"


def _site(proof: Proof) -> dict[str, Given]:
    """The vessel's conditions, where the case states them."""
    stated = proof.call.get(_ATMOSPHERE)
    if stated is None:
        return {}
    read = read_quantity(stated, _HERE)
    ends = (read.si, read.low, read.high)
    return {_ATMOSPHERE: Given(_ATMOSPHERE, *ends, read.unit, read.type, read.shown, _HERE)}


def _refused(method: Method, proof: Proof, run: _Run) -> ProofResult:
    if not run.reason:
        value = run.value(proof.result)
        given = value.text if value else run.word(proof.result)
        return _differs(method, proof, given, "it is not refused")
    if proof.value not in run.reason:
        return _differs(method, proof, run.reason, "it is refused for another reason")
    return ProofResult(method, proof, run.reason, proof.value, None, Outcome.REPRODUCED)


def _compare_words(method: Method, proof: Proof, ours: str) -> ProofResult:
    if ours != proof.value:
        return _differs(method, proof, ours, "it says something else")
    return ProofResult(method, proof, ours, proof.value, None, Outcome.REPRODUCED)


def _compare_numbers(method: Method, proof: Proof, value: Value) -> ProofResult:
    published = read_quantity(proof.value, _HERE)
    if value.si is None or not _alike(value.type, published.type):
        return _differs(method, proof, value.text, "it is another kind of quantity")
    number = published.unit.from_si(value.si)
    target = published.unit.from_si(published.si)
    wrong = _mistakes(proof, value.si, proof.must_not_give)
    agrees = _agrees(proof, value.si, published)
    return ProofResult(
        method,
        proof,
        _shown(number, proof.value, published),
        proof.value,
        (number / target - 1) * 100 if target else None,
        Outcome.REPRODUCED if agrees and not wrong else Outcome.DIFFERS,
        wrong or ("" if agrees else "it is outside the tolerance"),
        number,
    )


def _alike(ours: Type, printed: Type) -> bool:
    """Whether two things are of one kind; how often a pressure went into ours is its own affair."""
    return (ours.dimension, ours.kind) == (printed.dimension, printed.kind)


def _mistakes(proof: Proof, si: float, answers: Iterable[tuple[str, str]]) -> str:
    """The known mistakes whose answer this is."""
    return "; ".join(
        mistake for text, mistake in answers if _agrees(proof, si, read_quantity(text, _HERE))
    )


def _agrees(proof: Proof, si: float, target: Quantity) -> bool:
    """Whether a number is within the tolerance of the case; one of two tolerances is enough."""
    size = abs(target.unit.from_si(target.si)) * target.unit.scale
    allowed = max(proof.relative, _EXACT) * size
    if proof.absolute:
        allowed = max(allowed, read_quantity(proof.absolute, _HERE).si)
    return abs(si - target.si) <= allowed


def _shown(number: float, printed: str, published: Quantity) -> str:
    """Our number with one digit more than is printed."""
    digits = len(printed.partition(" ")[0].lstrip("-0.").replace(".", ""))
    return f"{number:.{min(digits + 1, _MOST_DIGITS)}g} {published.unit.text}".rstrip()


def _differs(method: Method, proof: Proof, ours: str, why: str) -> ProofResult:
    return ProofResult(method, proof, ours, proof.value, None, Outcome.DIFFERS, why)
