"""Why an isolation is not enough: something live that nothing shuts off, a side unseen, one block for two."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from garboard.systems.blocks import Blocks, Joined
from garboard.systems.medium import Medium
from garboard.systems.sides import Side
from garboard.systems.stores import ELSEWHERE

__all__ = ["INCOMPLETE", "SINGLE", "UNPROVED", "IsolationFault", "isolation_faults"]

INCOMPLETE = "isolation-incomplete"
UNPROVED = "isolation-unproved"
SINGLE = "single-barrier"

LAST_RESORT = {
    "battery": "fit a switch or a fuse at its post, or have whoever may work on it alive disconnect it",
    "sea": "fit a valve that can be locked at it, or do the work with the vessel out of the water",
    "compartment": "fit a valve that can be locked at it, or pump it dry and keep it watched",
    "pressure source": "fit a valve that can be locked at it, or part it from the plant first",
    ELSEWHERE: "fit a valve that can be locked on this side of it, or isolate it in its own system too",
}
BY_ITSELF = {
    "battery": "leave it to whoever may work on it alive, or exchange it whole",
    "sea": "do the work with the vessel out of the water, or leave it alone",
    "compartment": "pump it dry and keep it watched, or leave it alone",
    "pressure source": "part it from the plant and take it away, or leave it alone",
}
OTHERWISE = "fit a valve that can be locked between, or say that it cannot be worked on"


@dataclass(frozen=True, slots=True)
class IsolationFault:
    """One of them."""

    code: str
    about: str
    """The store, or the side, that it is about."""
    text: str
    """Lower case, no full stop, tags in full."""
    help: str


def isolation_faults(
    tags: Iterable[str], joined: Iterable[Joined], sides: Iterable[Side], blocks: Iterable[Blocks]
) -> tuple[IsolationFault, ...]:
    """What stands against an isolation, the gravest first.

    Args:
        tags: What is worked on.
        joined: The stores that nothing cuts off and nothing ends.
        sides: The sides of the stretch.
        blocks: To each store that stays alive.
    """
    work = tuple(tags)
    return (
        *(_incomplete(work, one) for one in joined),
        *_unproved(sides),
        *(_single(one) for one in blocks if not one.enough),
    )


def _incomplete(work: tuple[str, ...], joined: Joined) -> IsolationFault:
    tag, kind = joined.store.tag, joined.store.kind
    if tag in work:
        text = f"{tag} is itself what is live, and nothing aboard empties it"
        return IsolationFault(INCOMPLETE, tag, text, BY_ITSELF.get(kind, OTHERWISE))
    between = [one for one in joined.way if one not in work]
    through = f", only {' and '.join(between)}" if between else ""
    what = "switch or fuse" if kind == "battery" else "valve"
    text = f"no {what} that can be locked stands between {' and '.join(work)} and {tag}{through}"
    return IsolationFault(INCOMPLETE, tag, text, LAST_RESORT.get(kind, OTHERWISE))


def _unproved(sides: Iterable[Side]) -> Iterator[IsolationFault]:
    for side in sides:
        missing, cures = [], []
        if not side.bled:
            missing.append("no bleed")
            cures.append("fit a drain or vent, or crack its last union slowly, after review")
        if not side.shown:
            missing.append("nothing that shows zero")
            cures.append(_unseen(side))
        if missing:
            text = f"{side.name} has {' and '.join(missing)}"
            yield IsolationFault(UNPROVED, side.name, text, "; ".join(cures))


def _unseen(side: Side) -> str:
    if side.behind:
        gauge, valve = side.behind[0]
        return f"read {gauge} only with {valve} seen open, or fit a gauge before it"
    what = "gauge" if side.medium is Medium.GAS else "gauge or test cock"
    return f"fit a {what}, or keep its bleed open and in sight, after review"


def _single(blocks: Blocks) -> IsolationFault:
    only = f"only {' and '.join(blocks.points)} stands" if blocks.points else "nothing stands"
    text = f"{only} between {blocks.store.tag} and the work, where {blocks.needed} blocks are asked for"
    cure = "fit a second valve or a blank, or empty it first"
    return IsolationFault(SINGLE, blocks.store.tag, text, cure)
