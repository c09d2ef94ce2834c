"""A walk by hand: every way in which the unknown valves may stand, each walked alone, by other code.

Sets and loops until nothing changes, no memory between states, nothing of `garboard.systems` but the data. A
person who reads pressure where nothing should be stops there, so that such a completion ends.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product

from garboard.systems.actions import Action, Does
from garboard.systems.plant import Plant
from garboard.systems.state import State

Cause = tuple[str, str, str]
"""Fault, about, by: as `Trouble.cause` has it."""
ByHand = list[tuple[int, set[Cause], set[int]]]
"""Of every step of every completion: its number, what is wrong by it, what holds pressure after it."""
VESSELS = ("receiver", "separator", "filter", "cooler", "tank")
TAKES = ("receiver", "tank", "consumer", "compartment", "sea", "relief valve", "bursting disc")


@dataclass
class Standing:
    """One way in which everything may stand."""

    plant: Plant
    air: frozenset[int]
    feeds: frozenset[int]
    at: list[int]
    running: set[str]
    pressure: set[int]
    opened: set[int] = field(default_factory=set)

    def arcs(self, *, venting: bool = False, showing: bool = False) -> list[tuple[int, int]]:
        found: list[tuple[int, int]] = []
        for number, part in enumerate(self.plant.parts):
            machine = part.kind in ("compressor", "pump")
            pumped = machine and not part.one_way
            if number in self.opened or (venting and not part.carries_relief):
                continue
            if showing and not (part.carries_relief or pumped):
                continue
            found += part.positions[self.at[number]]
        return found

    def open_nodes(self) -> set[int]:
        return {port for n in self.opened for port in self.plant.parts[n].ports.values()}

    def leading_to(self, targets: set[int], arcs: list[tuple[int, int]]) -> set[int]:
        found = set(targets)
        while more := {u for u, v in arcs if v in found} - found:
            found |= more
        return found

    def led_from(self, starts: set[int], kept_out: set[int]) -> set[int]:
        found = set(starts)
        while more := {v for u, v in self.arcs() if u in found} - found - kept_out:
            found |= more
        return found

    def live(self) -> list[tuple[str, int]]:
        shut = {self.plant.parts[n].tag for n in self.opened}
        return [
            (source.tag, source.node)
            for source in self.plant.sources
            if source.tag not in shut and (not source.machine or source.tag in self.running)
        ]

    def fed(self) -> set[int]:
        return {node for _, node in self.live()} | set(self.feeds)

    def flow(self) -> None:
        out = self.leading_to(set(self.air) | self.open_nodes(), self.arcs(venting=True))
        for store in self.plant.of_kind("receiver"):
            out -= set(store.ports.values())
        self.pressure = self.led_from((self.pressure - out) | self.fed(), set(self.air))

    def step(self, action: Action) -> tuple[set[Cause], bool]:
        """Do one step: what is wrong by it, and whether whoever reads goes on."""
        wrong: set[Cause] = set()
        part, tag = action.part, action.tag
        before, held = set(self.opened), set(self.pressure)
        opens = action.does in (Does.OPENS_UP, Does.REPLACES)
        if opens and part is not None and held & set(self.plant.parts[part].ports.values()):
            wrong.add(("opened while it may hold pressure", tag, ""))
        if action.does is Does.MOVES and part is not None and action.position is not None:
            self.at[part] = action.position
        elif action.does is Does.STARTS:
            self.running.add(tag)
        elif action.does is Does.STOPS:
            self.running.discard(tag)
        elif action.does is Does.OPENS_UP and part is not None:
            self.opened.add(part)
        elif action.does in (Does.REFITS, Does.REPLACES) and part is not None:
            self.opened.discard(part)
        rush = self.led_from(held | self.fed(), set(self.air))
        for number in before & self.opened:
            nodes = set(self.plant.parts[number].ports.values())
            if rush & nodes and not held & nodes:
                wrong.add(("pressure can reach what stands open", self.plant.parts[number].tag, ""))
        self.flow()
        wrong |= set(self.forbidden())
        sees = action.sees
        goes_on = True
        if sees and sees.zero and sees.node is not None:
            goes_on = self.reads_nothing(sees.node)
        return wrong, goes_on

    def reads_nothing(self, node: int) -> bool:
        """Whether the gauge comes to nothing, with all time to wait; then what it shows is empty."""
        out = self.leading_to(set(self.air) | self.open_nodes(), self.arcs(venting=True))
        rest = self.led_from((self.pressure - out) | self.fed(), set(self.air))
        if node in rest:
            return False
        shown = {node}
        arcs = self.arcs(showing=True)
        while more := {u for u, v in arcs if v in shown and u not in self.air} - shown:
            shown |= more
        self.pressure -= shown
        self.flow()
        return True

    def forbidden(self) -> Iterator[Cause]:
        plant, venting = self.plant, self.arcs(venting=True)
        fitted = [r for r in plant.reliefs if plant.numbers[r.tag] not in self.opened]
        makes = {source.tag: source for source in plant.sources}
        for tag, node in self.live():
            for vessel in plant.of_kind(*VESSELS):
                rated = plant.setting(vessel.tag, "rated")
                if rated is None or makes[tag].makes <= rated.low:
                    continue
                good = {relief.node for relief in fitted if relief.lifts <= rated.low}
                safe = self.leading_to(good, venting)
                if self.fills(node, safe) & set(vessel.ports.values()):
                    yield "fills a vessel without relief", vessel.tag, tag
            stops = [p for p in plant.parts if tag in plant.components[p.tag].stops]
            if stops and makes[tag].machine:
                on = [p for p in stops if plant.numbers[p.tag] not in self.opened]
                felt = self.leading_to({n for p in on for n in p.ports.values()}, venting)
                for vessel in plant.of_kind("receiver"):
                    if self.fills(node, felt) & set(vessel.ports.values()):
                        yield "fills a vessel unseen by its switch", vessel.tag, tag
            if makes[tag].displacement:
                takes = [
                    p for p in plant.of_kind(*TAKES) if plant.numbers[p.tag] not in self.opened
                ]
                ends = {p.nodes[0] for p in takes} | set(self.air) | self.open_nodes()
                if node not in self.leading_to(ends, venting):
                    yield "runs against a shut outlet", tag, tag

    def fills(self, node: int, safe: set[int]) -> set[int]:
        return set() if node in safe else self.led_from({node}, safe | set(self.air))


def completions(start: State) -> Iterator[tuple[int, ...]]:
    """Every way in which the valves of a state may stand."""
    choices = [[p for p in range(bits.bit_length()) if bits >> p & 1] for bits in start.at]
    yield from product(*choices)


def walk_all_ways(
    plant: Plant,
    start: State,
    air: frozenset[int],
    feeds: frozenset[int],
    actions: Sequence[Action],
) -> ByHand:
    """Every completion walked."""
    found: ByHand = []
    for at in completions(start):
        here = Standing(plant, air, feeds, list(at), set(start.running), set(start.pressure))
        for action in actions:
            wrong, goes_on = here.step(action)
            found.append((action.number, wrong, set(here.pressure) if goes_on else set()))
            if not goes_on:
                break
    return found
