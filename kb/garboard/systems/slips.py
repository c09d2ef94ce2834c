"""What becomes of a procedure when a step is left out, or two neighbours change places.

A slip matters if it reaches a state that must never be and that the procedure as written does not
reach. It is caught where something that a step looks at would show it before that: a gauge that holds
pressure where it should not, or the other way round; a valve that stands otherwise; or where a second person
looks: independent, at the step that was left out; concurrent, at the one that is done too early.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from garboard.records.procedure import Second
from garboard.systems.actions import Action
from garboard.systems.walk import Met, Walk, shows, take_step
from garboard.systems.ways import Ways

__all__ = ["Slip", "find_slips"]


@dataclass(frozen=True, slots=True)
class Slip:
    """One slip and what comes of it."""

    steps: tuple[int, ...]
    """As printed: one that is left out, or two that change places."""
    met: Met | None
    """The first trouble that it brings; None where none is reached."""
    caught: int | None
    """The step whose reading shows it, before any trouble; None where none does."""
    watched: bool = False
    """Whether a second person would see it."""

    @property
    def left_out(self) -> bool:
        """Whether one step is left out, rather than two exchanged."""
        return len(self.steps) == 1

    @property
    def told(self) -> str:
        """The slip in words: `with step 3 left out`."""
        if self.left_out:
            return f"with step {self.steps[0]} left out"
        return f"with steps {self.steps[0]} and {self.steps[1]} the other way round"

    @property
    def uncaught(self) -> bool:
        """Whether it comes to a trouble, no reading shows it before, and no second person looks."""
        return self.met is not None and self.caught is None and not self.watched


def find_slips(ways: Ways, walked: Walk) -> tuple[Slip, ...]:
    """Every slip of a walk that changes something.

    Args:
        ways: The layout.
        walked: The procedure, walked as it is written.
    """
    actions = [stage.action for stage in walked.stages]
    found: list[Slip | None] = []
    for at, left in enumerate(actions):
        watched = left.second is Second.INDEPENDENT
        slip = _slip(ways, walked, at, actions[at + 1 :], at + 1)
        found.append(slip and replace(slip, steps=(left.number,), watched=watched))
    for at, (one, two) in enumerate(pairwise(actions)):
        if one.moves or two.moves:
            slip = _slip(ways, walked, at, [two, one, *actions[at + 2 :]], at)
            steps, watched = (one.number, two.number), two.second is Second.CONCURRENT
            found.append(slip and replace(slip, steps=steps, watched=watched))
    return tuple(slip for slip in found if slip is not None)


def _slip(ways: Ways, walked: Walk, at: int, actions: Iterable[Action], beside: int) -> Slip | None:
    """Walk on otherwise than it is written, until it harms or makes no difference any more.

    Args:
        ways: The layout.
        walked: As it is written.
        at: The first stage that is walked otherwise.
        actions: What is done from there on.
        beside: The stage that the first of these actions ends beside.
    """
    before = walked.stages[at - 1].after if at else walked.start
    known = {met.trouble.cause for met in walked.met}
    caught: int | None = None
    differed = False
    for number, action in enumerate(actions, beside):
        stage = take_step(ways, before, action)
        for trouble in stage.troubles:
            if trouble.cause not in known:
                return Slip((), Met(action.number, trouble), caught)
        if caught is None and action.sees:
            written = walked.stages[action.number - 1].done
            caught = action.number if shows(ways, action.sees, written, stage.done) else None
        before = stage.after
        if before == walked.stages[number].after:
            break
        differed = differed or number > at
    return Slip((), None, caught) if differed else None
