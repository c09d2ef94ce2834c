"""What closed a finding, and whether it is still there.

A finding is closed by its actions, by what they show as evidence, and by the decisions and changes
that came of it. Where one of them has gone or failed and nothing named beside it has taken its place,
nobody has closed the finding any more. Who closed it knew of what had left before that day.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from garboard.records.base import Record, bare_id
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.finding import Action, Finding
from garboard.records.inspection import Result, Review, Test
from garboard.records.proofs import is_proof
from garboard.records.standing import has_left, refused, state_of
from garboard.records.states import LEAVING

__all__ = ["Lost", "answers_to", "lost_closers"]


@dataclass(frozen=True, slots=True)
class Lost:
    """One record that closed a finding and does so no longer."""

    text: str
    """`SA-TR-007, evidence of SA-CA-002, failed`."""
    path: str
    """Where the finding names it; the place of its state where it does not."""


def answers_to(records: Iterable[Record]) -> Mapping[str, tuple[Record, ...]]:
    """The decisions that answer a record and the changes that came of it, by its id."""
    found: dict[str, tuple[Record, ...]] = {}
    for one in records:
        names = (
            one.answers
            if isinstance(one, Decision)
            else one.because
            if isinstance(one, Change)
            else ()
        )
        for name in dict.fromkeys(map(bare_id, names)):
            found[name] = (*found.get(name, ()), one)
    return found


def lost_closers(
    finding: Finding, records: Mapping[str, Record], answers: Iterable[Record]
) -> Iterator[Lost]:
    """What closed a finding and has gone.

    Args:
        finding: A finding that is written as closed.
        records: Filed records by id.
        answers: The decisions and changes that came of it.
    """
    closed = _day(finding, ("closed",))
    for number, name in enumerate(finding.actions):
        path, action = f"actions[{number}]", records.get(bare_id(name))
        if action is None:
            continue
        beside = [records.get(bare_id(one)) for one in finding.actions]
        if said := _gone(action, beside, closed, records.values()):
            yield Lost(f"its action {action.id} {said}", path)
        elif isinstance(action, Action) and not has_left(action):
            yield from _lost_evidence(action, path, records, closed)
    answering = [*answers]
    for answer in answering:
        if not refused(answer) and (said := _gone(answer, answering, closed, records.values())):
            yield Lost(f"{answer.id}, which answered it, {said}", "state")


def _lost_evidence(
    action: Action, path: str, records: Mapping[str, Record], closed: date | None
) -> Iterator[Lost]:
    """What an action shows for itself and can show no longer."""
    shown = [records.get(bare_id(name)) for name in action.evidence]
    for one in shown:
        if one is not None and (said := _gone(one, shown, closed, records.values())):
            yield Lost(f"{one.id}, evidence of {action.id}, {said}", path)


def _gone(
    one: Record, beside: Iterable[Record | None], closed: date | None, all_: Iterable[Record]
) -> str:
    """How a closing record went or failed; empty where it stands or another took its place."""
    if has_left(one):
        left = _day(one, LEAVING)
        known = left is not None and closed is not None and left < closed
        if known or _replaced(one, beside):
            return ""
        heir = next((each.id for each in all_ if each.supersedes == one.id), None)
        by = f" by {heir}" if heir and one.state == "superseded" else ""
        return f"is {one.state}{by}"
    if _failed(one) and not _replaced(one, beside):
        return "failed" if isinstance(one, (Test, Review)) else f"is {state_of(one)}"
    return ""


def _failed(one: Record) -> bool:
    """Whether nothing came of a record, or not what was hoped for."""
    if isinstance(one, Test):
        return one.result in (Result.FAIL, Result.INCOMPLETE) or state_of(one) == "rejected"
    return refused(one) or state_of(one) in ("not effective", "failed")


def _replaced(one: Record, beside: Iterable[Record | None]) -> bool:
    """Whether a record named beside it stands and comes after it: its heir, or a passed re-test."""
    others = [each for each in beside if each is not None and each.id != one.id]
    living = [each for each in others if not has_left(each) and not _failed(each)]
    return any(one.id in (each.supersedes, each.follows) or _retests(each, one) for each in living)


def _retests(later: Record, earlier: Record) -> bool:
    """Whether a passed test is of the same thing as another, on the same day or after it."""
    if not (isinstance(later, Test) and isinstance(earlier, Test) and is_proof(later)):
        return False
    same = {item.tag for item in earlier.tested} <= {item.tag for item in later.tested}
    return bool(same and earlier.tested and later.on and earlier.on and later.on >= earlier.on)


def _day(record: Record, states: Iterable[str]) -> date | None:
    """The last day on which somebody signed it into one of some states."""
    reached = set(states)
    return max((line.on for line in record.signed if line.to in reached), default=None)
