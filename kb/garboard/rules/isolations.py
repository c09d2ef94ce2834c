"""A written isolation held against the layout: where its steps leave each of its points.

What counts is what a step puts in a position and the points name as locked: a valve shut on the way is
opened again by anybody who needs it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from garboard.book import Book
from garboard.names import system_of
from garboard.records.procedure import Procedure, Step, Use
from garboard.rules.line_ups import folded
from garboard.rules.steps import end_position, live_procedures, sees_zero, verb
from garboard.systems.isolation import Isolation, isolate
from garboard.systems.leaks import Held, Leaks
from garboard.systems.plant import Plant
from garboard.systems.sides import Side, is_let_out
from garboard.systems.stores import Ends, Store

__all__ = ["Written", "in_words", "written_isolations"]

TAKES_OUT = ("pull", "remove", "take out")
OUT = ("pulled", "out", "removed")


@dataclass(frozen=True, slots=True)
class Written:
    """One procedure of isolation, with what its steps leave behind."""

    procedure: Procedure
    leaks: Leaks
    worked: Isolation
    """What the layout asks for."""
    moves: tuple[tuple[str, str], ...]
    """Of each step: the tag it moves and where to; both empty where it moves nothing."""
    held: Held
    """The points that a step cuts off."""
    stopped: frozenset[str]
    """The machines among the points that a step stops."""

    @property
    def plant(self) -> Plant:
        """The system as a graph."""
        return self.leaks.plant

    @property
    def unmoved(self) -> tuple[str, ...]:
        """Points that no step leaves where they cut off."""
        done = {self.plant.parts[number].tag for number in self.held} | self.stopped
        return tuple(str(tag) for tag in self.procedure.points if tag not in done)

    def bled_at(self, side: Side) -> int | None:
        """The step from which on a side stands open to the air to the end; None where it does not."""
        opened: set[str] = set()
        since: int | None = 0 if side.opens else None
        for number, (tag, position) in enumerate(self.moves, 1):
            if position:
                opened = opened | {tag} if position == "open" else opened - {tag}
            if not is_let_out(self.leaks, side.nodes, opened):
                since = None
            elif since is None:
                since = number
        return since

    def is_live(self, book: Book, store: Store) -> bool:
        """Whether the steps leave a store alive: not stopped, not let out through a way of its own."""
        ended = store.ends is Ends.STOPPED and store.tag in self.stopped
        return not ended and not (store.ends is Ends.EMPTIED and self._lets_out(book, store))

    def _lets_out(self, book: Book, store: Store) -> bool:
        own = isolate(self.plant, store.tag, leaks=self.leaks)
        sides = [side for side in own.sides if store.tag in side.vessels]
        return bool(sides) and all(
            (step := self.bled_at(side)) is not None and self.seen_at_zero(book, side, step)
            for side in sides
        )

    def seen_at_zero(self, book: Book, side: Side, after: int) -> bool:
        """Whether a step sees a side at zero, on a gauge of its own, once it is let out."""
        steps = self.procedure.steps[max(after - 1, 0) :]
        return bool(side.opens) or any(
            sees_zero(book, step) and _shown_on(step) in side.shows for step in steps
        )


def _shown_on(step: Step) -> str:
    seen = step.see.tag if step.see else None
    return str(seen or step.tag or "")


def written_isolations(book: Book) -> Iterator[Written]:
    """Every procedure of isolation whose system has connections, one for each system it reaches."""
    for procedure in live_procedures(book):
        if procedure.use is not Use.ISOLATION:
            continue
        codes = dict.fromkeys(system_of(tag) for tag in procedure.isolates)
        for code in codes:
            plant = book.surveys[code].plant if code in book.surveys else None
            tags = [str(tag) for tag in procedure.isolates if plant and tag in plant.numbers]
            if plant and tags:
                yield _written(procedure, Leaks(plant), tags)


def _written(procedure: Procedure, leaks: Leaks, tags: Sequence[str]) -> Written:
    plant = leaks.plant
    moves = tuple((str(step.tag or ""), _left_at(plant, step)) for step in procedure.steps)
    ends = {tag: position for tag, position in moves if position}
    held: dict[int, int] = {}
    stopped: set[str] = set()
    for tag in map(str, procedure.points):
        part = plant.part(tag)
        position = ends.get(tag, "")
        names = [name.casefold() for name in part.names] if part is not None else []
        if part is not None and part.lockable and position in names:
            at = names.index(position)
            if part.coupled or not part.positions[at]:
                held[plant.numbers[tag]] = at
        elif position == "stopped":
            stopped.add(tag)
    worked = isolate(plant, *tags, leaks=leaks)
    return Written(procedure, leaks, worked, moves, held, frozenset(stopped))


def _left_at(plant: Plant, step: Step) -> str:
    """Where a step leaves its part, in the words of the layout; empty where it moves nothing."""
    part = plant.part(step.tag or "")
    if part is None:
        return ""
    position = folded(end_position(step), part.kind)
    if part.kind == "fuse":
        return "pulled" if position in OUT or verb(step.do) in TAKES_OUT else position
    return position


def in_words(tags: Sequence[str]) -> str:
    """Tags as a reader says them: `SA-HV-002, SA-HV-003 and SA-HV-006`."""
    head = ", ".join(tags[:-1])
    return f"{head} and {tags[-1]}" if head else "".join(tags)
