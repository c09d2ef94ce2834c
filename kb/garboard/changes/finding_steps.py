"""What became of a finding, step by step as it was signed, and which were refused and right after all."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from garboard.records.finding import Finding
from garboard.records.signoff import SignOff

__all__ = ["FindingStep", "Reversed", "refused_and_right", "steps_of"]

REFUSED, RAISED, ACCEPTED = "not accepted", "raised", "accepted"


@dataclass(frozen=True, slots=True)
class FindingStep:
    """One step in the life of a finding."""

    on: date
    what: str
    """`raised`, `refused`, `raised again`, else the state moved to."""
    by: str
    """A key of people.yml; only the role is ever printed."""
    capacity: str
    """In which capacity; empty for who found it."""
    words: str = ""
    """What was said with it."""


@dataclass(frozen=True, slots=True)
class Reversed:
    """A finding that was refused, raised again and then accepted."""

    refused: SignOff
    raised: SignOff
    accepted: SignOff


def steps_of(finding: Finding) -> tuple[FindingStep, ...]:
    """Every step of a finding that is dated, the oldest first.

    Args:
        finding: Who found it makes the first step; each line that moved it makes one more.
    """
    return tuple(_steps(finding))


def _steps(finding: Finding) -> Iterator[FindingStep]:
    if finding.found:
        yield FindingStep(finding.found.on, RAISED, finding.found.by, "")
    elif finding.drafted and finding.author:
        yield FindingStep(finding.drafted, RAISED, finding.author, "")
    for line in _moves(finding):
        again = {REFUSED: "refused", RAISED: "raised again"}
        what = again.get(str(line.to), str(line.to))
        yield FindingStep(line.on, what, line.by, str(line.capacity), line.words or "")


def refused_and_right(finding: Finding) -> Reversed | None:
    """How a finding was turned down, raised again and accepted in the end; None for any other.

    Args:
        finding: Only its signed lines count, in the order of their days.
    """
    moves = _moves(finding)
    for number, line in enumerate(moves):
        then = [str(one.to) for one in moves[number : number + 3]]
        if then == [REFUSED, RAISED, ACCEPTED]:
            return Reversed(line, moves[number + 1], moves[number + 2])
    return None


def _moves(finding: Finding) -> list[SignOff]:
    return sorted((line for line in finding.signed if line.to), key=lambda line: line.on)
