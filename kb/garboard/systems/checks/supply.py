"""What essential users lose: with power and control air gone, or with one single part."""

from collections.abc import Iterator

from garboard.systems.dominators import shared_before
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import nodes_of
from garboard.systems.net import Net
from garboard.systems.plant import Part, Plant
from garboard.systems.search import fewest_barriers, way_to
from garboard.systems.telling import listed

__all__ = ["STORES", "find_lost_supply", "find_single_point"]

STORES = ("receiver", "tank", "sea", "battery", "pressure source")
"""What holds a supply, and is live until it is emptied or shut off."""
USERS = ("consumer", "load")


def _users(plant: Plant) -> list[Part]:
    return [part for part in plant.of_kind(*USERS) if plant.components[part.tag].essential]


def _stores(plant: Plant) -> list[Part]:
    """What holds a supply, or leads to another system; without any such thing, what makes one."""
    beyond = [p for p in plant.parts if not plant.owns(p.tag) and p.kind not in (*USERS, *STORES)]
    return [*plant.of_kind(*STORES), *beyond] or [
        plant.parts[plant.numbers[source.tag]] for source in plant.sources
    ]


def _nodes(part: Part) -> tuple[int, ...]:
    """Where a store gives from: its outlet, or any of its nodes."""
    return (part.ports["out"],) if "out" in part.ports and "in" not in part.ports else part.nodes


# ---- power and control air gone


class _Cost:
    """A part that no longer passes once it has failed counts 1."""

    def __init__(self, net: Net) -> None:
        self.net = net
        self.lost = {n for n, part in enumerate(net.parts) if self.fails_shut(part)}

    def fails_shut(self, part: Part) -> bool:
        """Whether some way is gone once a part stands where it fails to."""
        if part.fails is None:
            return False
        every = {arc for arcs in part.positions for arc in arcs}
        return bool(every - set(part.positions[part.fails]))

    def __call__(self, number: int, along: bool) -> int | None:  # noqa: FBT001 - a Cost
        """Parts that fail on a way, along what passes only."""
        if not along:
            return None
        return 1 if number in self.lost else 0


def find_lost_supply(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Put every part that fails where it fails to, and ask which essential users still have a store."""
    plant, net = enquiry.plant, enquiry.unlocked
    users = _users(plant)
    starts = {node for part in _stores(plant) for node in _nodes(part)}
    if not users:
        return
    failed = net.with_held({n: p.fails for n, p in enumerate(net.parts) if p.fails is not None})
    kept = fewest_barriers(failed, starts, lambda _, along: 0 if along else None).count
    cost = _Cost(net)
    usual = fewest_barriers(net, starts, cost)
    for user in users:
        node = user.nodes[0]
        if kept[node] is not None:
            continue
        text = f"{user.tag} is essential and joined to no store at all"
        cure = "join it to what supplies it, or take the essential from it"
        way = way_to(usual.came, node)
        on = dict.fromkeys(number for *_, number in way if number in cost.lost)
        lost = tuple(plant.parts[number].tag for number in on)
        if lost:
            how = listed(f"{tag} fails {plant.components[tag].fails}" for tag in lost)
            text = f"{user.tag} is essential and has no supply once power or control air is gone: "
            text += how
            cure = f"give it a way round {listed(lost)} by hand, or a part that fails the other way"
        yield PathFinding(
            code="lost-supply",
            level=Level.DANGER,
            of=about(plant, user.tag),
            text=text,
            help=cure,
            at_fault=lost,
            nodes=nodes_of(way, node),
        )


# ---- one single part


def find_single_point(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Name the parts on every way to an essential user: one tree for all users."""
    plant, net = enquiry.plant, enquiry.unlocked
    users = _users(plant)
    if not users:
        return
    nearest = shared_before(_through_parts(net, _stores(plant)), net.count + len(net.parts))
    for user in users:
        single = []
        place = nearest[user.nodes[0]]
        while place is not None and place < net.count + len(net.parts):
            if place >= net.count:
                single.append(plant.parts[place - net.count].tag)
            place = nearest[place]
        tags = tuple(reversed([tag for tag in single if tag != user.tag]))
        if tags:
            yield PathFinding(
                code="single-point",
                level=Level.ASIDE,
                of=about(plant, user.tag),
                text=f"every way to {user.tag} runs through {listed(tags)}",
                help="keep a spare of each, or write down what is done without",
                at_fault=tags,
                nodes=user.nodes,
            )


def _through_parts(net: Net, stores: list[Part]) -> list[list[int]]:
    """Where nodes and parts lead, parts numbered after the nodes and the start of all after them."""
    start = net.count + len(net.parts)
    rows: list[list[int]] = [[] for _ in range(start + 1)]
    given = {part.tag for part in stores}
    for number, part in enumerate(net.parts):
        here = net.count + number
        if part.tag in given:
            rows[start].append(here)
            rows[here] += _nodes(part)
        for u, v in net.arcs(number):
            rows[u].append(here)
            rows[here].append(v)
    return rows
