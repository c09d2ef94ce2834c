"""Walk the steps of a procedure over a layout, and watch for states that must never be.

A step is done, what flows at once has flowed, then what the step looks at is seen: a reading of nothing is
the proof of zero. Letting pressure out of a pipe is complete only here; the written step still waits and reads.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from garboard.systems.actions import Action, Does, Observed
from garboard.systems.forbidden import Fault, Trouble, find_forbidden
from garboard.systems.opened import find_opened, find_reached
from garboard.systems.state import State
from garboard.systems.ways import Ways

__all__ = ["Met", "Stage", "Walk", "shows", "take_step", "walk"]


@dataclass(frozen=True, slots=True)
class Met:
    """A trouble, and the step that brought it."""

    step: int
    """As printed."""
    trouble: Trouble

    @property
    def at_opening(self) -> bool:
        """Whether the step opened up something that may hold pressure."""
        return self.trouble.fault is Fault.OPENED


@dataclass(frozen=True, slots=True)
class Stage:
    """One step walked."""

    action: Action
    done: State
    """Settled, before anything is read."""
    after: State
    """Once it is read."""
    troubles: tuple[Trouble, ...]
    """What was not so before the step."""


@dataclass(frozen=True, slots=True)
class Walk:
    """A procedure walked to its end."""

    start: State
    stages: tuple[Stage, ...]

    @property
    def end(self) -> State:
        """How the layout stands after the last step."""
        return self.stages[-1].after if self.stages else self.start

    @property
    def met(self) -> tuple[Met, ...]:
        """Every trouble, in the order of the steps."""
        return tuple(
            Met(stage.action.number, trouble) for stage in self.stages for trouble in stage.troubles
        )

    @property
    def not_followed(self) -> tuple[int, ...]:
        """The steps that were not understood and moved nothing, as printed."""
        return tuple(
            stage.action.number for stage in self.stages if stage.action.does is Does.UNKNOWN
        )


def walk(ways: Ways, start: State, actions: Iterable[Action]) -> Walk:
    """Walk some steps.

    Args:
        ways: The layout.
        start: How it stands before the first step, settled.
        actions: The steps, understood.
    """
    stages: list[Stage] = []
    before = start
    for action in actions:
        stage = take_step(ways, before, action)
        stages.append(stage)
        before = stage.after
    return Walk(start, tuple(stages))


def take_step(ways: Ways, before: State, action: Action) -> Stage:
    """Do one step in a settled state."""
    if not action.moves and action.sees is None:
        return Stage(action, before, before, ())
    troubles: list[Trouble] = []
    if action.part is not None and action.does in (Does.OPENS_UP, Does.REPLACES):
        troubles += find_opened(ways, before, action.part)
    done = before
    if action.moves:
        moved = _moved(before, action)
        done = ways.settle(moved)
        had = {one.cause for one in find_forbidden(ways, before)}
        troubles += (one for one in find_forbidden(ways, done) if one.cause not in had)
        troubles += find_reached(ways, before, moved)
    return Stage(action, done, _seen(ways, done, action.sees), tuple(troubles))


def _moved(before: State, action: Action) -> State:
    """A state with one step done, not settled yet."""
    if action.part is None:
        return before
    if action.does is Does.MOVES and action.position is not None:
        return before.moved(action.part, action.position)
    running, opened = before.running, before.opened
    if action.does is Does.STARTS:
        running |= {action.tag}
    elif action.does is Does.STOPS:
        running -= {action.tag}
    elif action.does is Does.OPENS_UP:
        opened |= {action.part}
    elif action.does in (Does.REFITS, Does.REPLACES):
        opened -= {action.part}
    return replace(before, running=running, opened=opened)


def _seen(ways: Ways, done: State, sees: Observed | None) -> State:
    """A state once somebody has looked: the step goes on only if it is as written."""
    if sees is None:
        return done
    if sees.part is not None and sees.position is not None:
        return ways.settle(done.moved(sees.part, sees.position))
    if sees.zero and sees.node is not None:
        return ways.proved(done, sees.node)
    return done


def shows(ways: Ways, sees: Observed, written: State, slipped: State) -> bool:
    """Whether what is looked at differs between a state as written and another, once each is at rest.

    Args:
        ways: The layout.
        sees: What the step looks at.
        written: The state in which it should be seen.
        slipped: The state in which it is seen.
    """
    if sees.part is not None:
        return written.at[sees.part] != slipped.at[sees.part]
    should, does = ways.at_rest(written), ways.at_rest(slipped)
    return (sees.node in should.pressure) != (sees.node in does.pressure)
