"""What is opened up, or stands open, while pressure may be in it or come to it."""

from collections.abc import Iterator

from garboard.systems.enquiry import VESSELS
from garboard.systems.forbidden import Fault, Trouble
from garboard.systems.plant import Part
from garboard.systems.state import State
from garboard.systems.ways import Ways, valves_along

__all__ = ["find_opened", "find_reached"]

SHUT_IN = "which may still hold pressure that nothing let out"


def find_reached(ways: Ways, before: State, moved: State) -> Iterator[Trouble]:
    """What stands open and is reached by pressure as something else is moved, though it may then all go out.

    Args:
        ways: The layout.
        before: The state before the step, settled.
        moved: The state after it, before anything has flowed.
    """
    if not moved.opened:
        return
    reached = ways.reached(moved, {*before.pressure, *ways.fed_by(moved)})
    for number in sorted(moved.opened):
        part = ways.plant.parts[number]
        nodes = set(part.nodes)
        if number in before.opened and reached & nodes and not before.pressure & nodes:
            whence, unknown, along = _fed(ways, moved, part, before.pressure)
            fed = f"an open way feeds it {whence}" if whence else "what was shut in comes to it"
            text = f"{part.tag} stands open, and {fed}"
            yield Trouble(Fault.REACHED, part.tag, "", text, unknown, along)


def find_opened(ways: Ways, state: State, number: int) -> Iterator[Trouble]:
    """What is wrong with opening up a part, or taking it out, in a settled state.

    Args:
        ways: The layout.
        state: The state before it is opened.
        number: Number of the part.
    """
    part = ways.plant.parts[number]
    if state.pressure & set(part.nodes):
        whence, unknown, along = _fed(ways, state, part, state.pressure)
        fed = f"which an open way feeds {whence}" if whence else SHUT_IN
        yield Trouble(Fault.OPENED, part.tag, "", fed, unknown, along)


def _fed(
    ways: Ways, state: State, part: Part, pressure: frozenset[int]
) -> tuple[str, tuple[str, ...], tuple[str, ...]]:
    """Where what is in a part comes from, empty where no way is known; valves not known; valves open."""
    mine = set(part.nodes)
    origins: dict[int, str] = {}
    for source in ways.live(state):
        origins.setdefault(source.node, source.tag)
    for store in ways.plant.of_kind("sea", *VESSELS):
        for node in set(store.nodes) & pressure - mine if store.tag != part.tag else ():
            origins.setdefault(node, store.tag)
    way = ways.way(state, origins, mine)
    if not way:
        return "", (), ()
    known, unknown = valves_along(ways.plant, state, way)
    said = [*known, *(f"{tag} (nobody said how it stands)" for tag in unknown)]
    through = f" through {', '.join(said)}" if said else ""
    return f"from {origins[next(iter(way))]}{through}", unknown, known
