"""What parts a place from others however the valves stand: what passes the other way only, or nothing on."""

from collections.abc import Collection

from garboard.systems.enquiry import Enquiry
from garboard.systems.search import fewest_barriers

__all__ = ["parting"]


def parting(enquiry: Enquiry, node: int, targets: Collection[int]) -> tuple[str, ...] | None:
    """The parts that never let the pressure of a place through to the nearest of some others.

    Args:
        enquiry: The plant that is asked.
        node: The place.
        targets: The others.

    Returns:
        Full tags, from the place on; empty where valves can stand so that it gets there; None where
        nothing joins the two at all.
    """
    parts = enquiry.net.parts

    def cost(number: int, along: bool) -> int:  # noqa: FBT001  as the search hands it
        part = parts[number]
        return int(not part.carries_relief or (not along and part.one_way))

    found = fewest_barriers(enquiry.net, [node], cost)
    reached = [(found.count[each], each) for each in targets if found.count[each] is not None]
    if not reached:
        return None
    _, nearest = min(reached, key=lambda pair: (pair[0] or 0, pair[1]))
    return tuple(parts[number].tag for number in found.between(nearest))
