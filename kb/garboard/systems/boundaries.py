"""Everything that can be worked on, sorted by what cuts it off: one boundary serves all parts within it."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.systems.isolation import Isolation, isolate
from garboard.systems.leaks import Leaks
from garboard.systems.plant import Plant
from garboard.systems.survey import Survey

__all__ = ["Boundary", "boundaries_of"]

NOT_WORKED_ON = ("sea", "compartment")
"""What is no part of the plant, but what the plant stands in."""


@dataclass(frozen=True, slots=True)
class Boundary:
    """One set of points, with the parts that they make safe."""

    tags: tuple[str, ...]
    """In the order of the file."""
    isolation: Isolation
    """As worked out for the first of them."""

    @property
    def key(self) -> str:
        """What names it: the first of its parts."""
        return self.tags[0]


def boundaries_of(survey: Survey) -> tuple[Boundary, ...]:
    """The boundaries of a system, in the order of its parts; of what cannot be cut off, each part by itself.

    Args:
        survey: The system as a graph, with what the checks found.
    """
    piped = {pipe.node for pipe in survey.plant.pipes}
    found: dict[object, tuple[list[str], Isolation]] = {}
    for tag, isolation in _each(survey.plant, survey):
        points = tuple((one.tag, one.position) for one in isolation.points)
        key = (isolation.section.nodes & piped, points) if isolation.possible else tag
        found.setdefault(key, ([], isolation))[0].append(tag)
    return tuple(Boundary(tuple(tags), isolation) for tags, isolation in found.values())


def _each(plant: Plant, survey: Survey) -> Iterator[tuple[str, Isolation]]:
    leaks = Leaks(plant)
    for part in plant.parts:
        own = plant.components[part.tag].system == plant.system.code
        if own and part.kind not in NOT_WORKED_ON:
            yield part.tag, isolate(plant, part.tag, survey=survey, leaks=leaks)
