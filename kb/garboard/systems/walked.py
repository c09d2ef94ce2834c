"""A procedure walked on the layout of its system: from where, what it meets, which slips it forgives."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from garboard.calc.value import Value
from garboard.records.base import bare_id
from garboard.records.procedure import Procedure, Use
from garboard.records.standing import has_left
from garboard.systems.actions import Action, Does, actions_of
from garboard.systems.plant import Plant
from garboard.systems.slips import Slip, find_slips
from garboard.systems.state import State, start_of
from garboard.systems.walk import Walk, walk
from garboard.systems.ways import Ways

__all__ = ["Walked", "walk_all"]


@dataclass(frozen=True, slots=True)
class Walked:
    """What a walk of one procedure came to."""

    procedure: Procedure
    plant: Plant
    begins: str
    """From where: name of an operating state, id of the isolation in force; empty where nothing says it."""
    walk: Walk
    slips: tuple[Slip, ...]
    """Those that change something; of an isolation, up to the moment when the work starts."""

    @property
    def left_open(self) -> tuple[str, ...]:
        """Parts that are opened up and that no step refits."""
        return tuple(self.plant.parts[number].tag for number in sorted(self.walk.end.opened))

    def harm_of(self, slip: Slip) -> str:
        """What a slip comes to, in words; empty where it comes to no harm."""
        if slip.met is None:
            return ""
        trouble, step = slip.met.trouble, slip.met.step
        if not slip.met.at_opening:
            return f"after step {step} {trouble.text}"
        when = f"step {step}" if step <= len(self.procedure.steps) else "the work"
        return f"{when} opens {trouble.about}, {trouble.text}"


def walk_all(
    procedures: Iterable[Procedure], plants: Mapping[str, Plant], values: Mapping[str, Value]
) -> dict[str, Walked]:
    """Walk every procedure whose system has a layout, by id.

    Args:
        procedures: Procedures; one that has left, or has no steps, is not walked.
        plants: Layouts, by code of the system.
        values: Values by address.
    """
    walker = _Walker(procedures, plants, values)
    return {name: found for name in walker.known if (found := walker.walked(name, ())) is not None}


class _Walker:
    """Procedures on their way to being walked; one may start where another ends."""

    def __init__(
        self,
        procedures: Iterable[Procedure],
        plants: Mapping[str, Plant],
        values: Mapping[str, Value],
    ) -> None:
        self.known = {str(one.id): one for one in procedures if one.steps and not has_left(one)}
        self.plants = {code: plant for code, plant in plants.items() if plant.parts}
        self.values = values
        self.ways: dict[str, Ways] = {}
        self.done: dict[str, Walked | None] = {}

    def walked(self, name: str, above: tuple[str, ...]) -> Walked | None:
        """One procedure walked; None where it has no layout to be walked on."""
        procedure = self.known.get(name)
        if procedure is None or procedure.system not in self.plants or name in above:
            return None
        if name not in self.done:
            self.done[name] = self.walk(procedure, (*above, name))
        return self.done[name]

    def walk(self, procedure: Procedure, above: tuple[str, ...]) -> Walked:
        """Walk one procedure."""
        plant = self.plants[procedure.system]
        ways = self.ways.setdefault(procedure.system, Ways(plant))
        actions = actions_of(plant, procedure.steps, self.values)
        begins, start = self.start(procedure, ways, above)
        found = walk(ways, start, actions)
        work = _work_starts(procedure, plant, len(actions))
        to_work = walk(ways, start, (*actions, *work)) if work else found
        return Walked(procedure, plant, begins, found, find_slips(ways, to_work))

    def start(self, procedure: Procedure, ways: Ways, above: tuple[str, ...]) -> tuple[str, State]:
        """Where it begins, in words and settled."""
        states = ways.plant.system.operating_states or {}
        named = states.get(procedure.when or "")
        if named is not None:
            return str(procedure.when), ways.begin(start_of(ways.plant, named))
        isolation = bare_id(procedure.isolation) if procedure.isolation else ""
        held = self.walked(isolation, above) if isolation else None
        if held is not None and held.plant is ways.plant:
            return isolation, held.walk.end
        return "", ways.begin(start_of(ways.plant, None))


def _work_starts(procedure: Procedure, plant: Plant, steps: int) -> tuple[Action, ...]:
    """What is opened once an isolation stands, as steps after its last one."""
    if procedure.use is not Use.ISOLATION:
        return ()
    parts = [tag for tag in procedure.isolates if tag in plant.numbers]
    return tuple(
        Action(number, Does.OPENS_UP, plant.numbers[tag], str(tag))
        for number, tag in enumerate(parts, steps + 1)
    )
