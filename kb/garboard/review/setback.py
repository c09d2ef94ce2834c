"""Where the machine moves a record back, in print: the state that it counts as, and why.

The moves are those of the table whose capacity is `machine`, and `lapsed` from the states that can
lapse; each has its cause here. Nothing is written: the file keeps what people signed, and whoever
answers for the record moves it. Nothing is moved forwards either, whatever else has come true.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date

from garboard.names import is_record_id
from garboard.records.base import Record, bare_id, date_of
from garboard.records.change import Change, Concession, TemporaryModification
from garboard.records.finding import Finding, Lesson
from garboard.records.hazard import Hazard
from garboard.records.inspection import Test
from garboard.records.kinds import kind_of
from garboard.records.proofs import is_proof, overtaken
from garboard.records.readiness import lacks
from garboard.records.signoff import Capacity
from garboard.records.standing import has_left, mark_of, state_of
from garboard.records.states import LAPSED
from garboard.records.work import WorkPackage
from garboard.review.closing import answers_to, lost_closers
from garboard.review.signoffs import Reviewed

__all__ = ["CAUSES", "Reason", "Setback", "set_back"]


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a record counts as less far than its file says."""

    text: str
    """`ran out 2031-09-01`."""
    path: str
    """The field of the record that it is about."""


@dataclass(frozen=True, slots=True)
class Setback:
    """One record that the machine moves back."""

    written: str
    state: str
    """As it counts today."""
    reasons: tuple[Reason, ...]

    @property
    def because(self) -> str:
        """The reasons in one line."""
        return "; ".join(reason.text for reason in self.reasons)


@dataclass(slots=True)
class Scene:
    """What the causes look at."""

    records: Mapping[str, Record]
    reviews: Mapping[str, Reviewed]
    today: date
    answers: Mapping[str, tuple[Record, ...]]
    overtaken: Mapping[str, Change]
    found: dict[str, Setback] = field(default_factory=dict)

    def state(self, record: Record) -> str:
        """The state that a record counts as, as far as is known by now."""
        setback = self.found.get(str(record.id))
        return setback.state if setback else state_of(record)


def set_back(
    records: Mapping[str, Record], reviews: Mapping[str, Reviewed], today: date
) -> Mapping[str, Setback]:
    """Every record that the machine moves back.

    Args:
        records: Filed records by id.
        reviews: What their signatures are worth, by id.
        today: The day that dates are held against.

    Returns:
        By id; a record that counts as it is written is not in it.
    """
    answers = answers_to(records.values())
    scene = Scene(records, reviews, today, answers, overtaken(records))
    # A package looks at how others count; nothing that is moved back looks at a package that was.
    waiting = sorted(records.values(), key=lambda one: isinstance(one, WorkPackage))
    for record in waiting:
        for state in _moves_back(record):
            reasons = tuple(CAUSES[state](record, scene)) if state in CAUSES else ()
            if reasons:
                scene.found[str(record.id)] = Setback(state_of(record), state, reasons)
                break
    return scene.found


def _moves_back(record: Record) -> Iterator[str]:
    """The states that the machine may move a record to from where it is written to stand."""
    kind = kind_of(record)
    if kind is None:
        return
    state = state_of(record)
    for move in kind.machine.moves.get(state, ()):
        if move.by is Capacity.MACHINE and move.open_to(mark_of(record)):
            yield move.to
    if kind.machine.may_lapse(state):
        yield LAPSED


def _lapsed(record: Record, scene: Scene) -> Iterator[Reason]:
    """A signature that carries it no longer fits."""
    reviewed = scene.reviews.get(str(record.id))
    for each in reviewed.lapsed if reviewed else ():
        line = each.line
        text = f"the {line.capacity}'s signature of {line.on} no longer fits"
        yield Reason(text, f"signed[{each.number}]")


def _expired(record: Record, scene: Scene) -> Iterator[Reason]:
    """Its day has passed; an event in place of a day never passes by itself."""
    if isinstance(record, (Concession, TemporaryModification)):
        until = date_of(record.until)
        if until and until < scene.today:
            yield Reason(f"ran out {until}", "until")


def _reopened(record: Record, scene: Scene) -> Iterator[Reason]:
    """Something that closed it has gone or failed."""
    if isinstance(record, Finding):
        answers = scene.answers.get(str(record.id), ())
        for lost in lost_closers(record, scene.records, answers):
            yield Reason(lost.text, lost.path)


def _assessed(record: Record, scene: Scene) -> Iterator[Reason]:
    """A control is no longer proved by the record that it names."""
    for number, control in enumerate(record.controls if isinstance(record, Hazard) else ()):
        name = bare_id(control.verified or "")
        proof = scene.records.get(name)
        if proof is None:
            continue
        said = ""
        if has_left(proof):
            said = f"is {proof.state}"
        elif isinstance(proof, Test) and not is_proof(proof):
            said = "was not passed" if state_of(proof) != "rejected" else "is rejected"
        elif name in scene.overtaken:
            change = scene.overtaken[name]
            said = f"is older than {change.id} of {change.installed}"
        if said:
            yield Reason(f"{name}, which proved {control.what}, {said}", f"controls[{number}]")


def _incorporated(record: Record, scene: Scene) -> Iterator[Reason]:
    """What it was built into has left, and nothing named beside that has taken its place."""
    names = [bare_id(name) for name in record.into] if isinstance(record, Lesson) else []
    heirs = {scene.records[name].supersedes for name in names if name in scene.records}
    for number, name in enumerate(names):
        home = scene.records.get(name) if is_record_id(name) else None
        if home is not None and has_left(home) and home.id not in heirs:
            text = f"{name}, into which it was built, is {home.state}"
            yield Reason(text, f"into[{number}]")


def _defined(record: Record, scene: Scene) -> Iterator[Reason]:
    """Something that it needs is not there."""
    if isinstance(record, WorkPackage):
        for lack in lacks(record, scene.records, scene.state, scene.today):
            yield Reason(lack.text, lack.path)


CAUSES: Mapping[str, Callable[[Record, Scene], Iterator[Reason]]] = {
    "expired": _expired,
    "reopened": _reopened,
    "assessed": _assessed,
    "incorporated": _incorporated,
    "defined": _defined,
    LAPSED: _lapsed,
}
"""What brings about each move of the machine, by the state that it leads to."""
