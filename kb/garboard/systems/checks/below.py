"""What holds down every vessel of one rating: worked out once, however many vessels have it."""

from collections.abc import Iterator
from functools import cached_property

from garboard.systems.enquiry import Enquiry, Fed
from garboard.systems.plant import Part, Relief, Source
from garboard.systems.search import Barriers, fewest_barriers, reach, way_to
from garboard.systems.settings import NO_LIMIT

__all__ = ["CHOKES", "Below", "by_rating", "chokes"]

CHOKES = ("filter", "strainer", "restrictor")
"""What can choke, beside what closes by itself."""


class Below:
    """The relief valves that are set low enough for one rating, and what they hold down."""

    def __init__(self, enquiry: Enquiry, limit: float) -> None:
        """Start.

        Args:
            enquiry: The plant that is asked.
            limit: The rating at its lowest [Pa above the atmosphere].
        """
        self.enquiry = enquiry
        self.limit = limit
        self.reliefs = enquiry.reliefs_within(limit)
        self.at = {relief.node: relief for relief in reversed(self.reliefs)}
        self.nodes = frozenset(self.at)

    @cached_property
    def always(self) -> frozenset[int]:
        """The nodes that always reach one of them."""
        return self.enquiry.always(self.nodes)

    @cached_property
    def surely(self) -> frozenset[int]:
        """The nodes that always reach one by nothing that sticks or chokes."""
        return self.enquiry.always(self.nodes, out=chokes(self.enquiry))

    @cached_property
    def above(self) -> tuple[Source, ...]:
        """The sources that make more than the rating."""
        return tuple(each for each in self.enquiry.plant.sources if each.makes > self.limit)

    @cached_property
    def fed(self) -> Fed:
        """What those can feed while it is cut off from every such relief valve."""
        return self.enquiry.fed_outside({each.node for each in self.above}, self.nodes)

    @cached_property
    def reached(self) -> set[int]:
        """What those can feed at all."""
        return reach(self.enquiry.net.any_position(), {each.node for each in self.above})

    @cached_property
    def barriers(self) -> Barriers:
        """How many parts that never pass it on stand between each node and such a relief valve."""
        parts = self.enquiry.net.parts

        def cost(number: int, against: bool) -> int:  # noqa: FBT001  as the search hands it
            part = parts[number]
            return int(not part.carries_relief or (against and part.one_way))

        return fewest_barriers(self.enquiry.net, self.nodes, cost)

    @cached_property
    def softest(self) -> Barriers:
        """The fewest parts that stick or choke between each node and such a relief valve."""
        net, soft = self.enquiry.net, chokes(self.enquiry)

        def cost(number: int, against: bool) -> int | None:  # noqa: FBT001  as the search hands it
            part = net.parts[number]
            closes = net.is_free(number) and not part.coupled
            if closes or not part.carries_relief or (against and part.one_way):
                return None
            return int(number in soft)

        return fewest_barriers(net, self.nodes, cost)

    def nearest(self, barriers: Barriers, node: int) -> tuple[Relief, tuple[int, ...]] | None:
        """The relief valve with the fewest barriers between, and the numbers of those; None where no way leads.

        Args:
            barriers: `barriers` or `softest`.
            node: Where the vessel stands.
        """
        if barriers.count[node] is None:
            return None
        way = way_to(barriers.came, node)
        start = way[0][0] if way else node
        return self.at[start], barriers.between(node)


def chokes(enquiry: Enquiry) -> frozenset[int]:
    """Numbers of the parts that stick or choke: what is passed one way, filters, strainers, restrictors."""
    parts = enquiry.plant.parts
    return frozenset(
        number for number, part in enumerate(parts) if part.one_way or part.kind in CHOKES
    )


def by_rating(enquiry: Enquiry) -> Iterator[tuple[Below, list[Part]]]:
    """The vessels, gathered by what they are rated for."""
    gathered: dict[float, list[Part]] = {}
    for vessel in enquiry.vessels:
        limit = enquiry.plant.settings[vessel.tag]["rated"].low
        if limit < NO_LIMIT:
            gathered.setdefault(limit, []).append(vessel)
    for limit in sorted(gathered):
        yield Below(enquiry, limit), gathered[limit]
