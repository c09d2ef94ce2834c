"""Faults put into the reader, the laying and the searches, one at a time: what the oracle has to notice."""

import math
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

import pytest

from garboard.records.component import Component
from garboard.systems import laying, passing, search, sequences
from garboard.systems.net import Net
from garboard.systems.plant import Part, Relief, Source
from tests.systems.oracle import (
    ONE_LINE_UP,
    Lay,
    Question,
    always_vented,
    fed_over_sequences,
    fed_while_cut_off,
    highest_pressure,
    lockable_barriers,
    pressure_over_sequences,
    self_acting_barriers,
)
from tests.systems.random_plants import put_together, read_back

Patch = Callable[[pytest.MonkeyPatch], None]


@dataclass(frozen=True)
class Fault:
    """A fault, and the questions that have to notice it."""

    says: str
    plant: Patch
    questions: tuple[Question, ...] = ONE_LINE_UP
    lay: Lay = read_back
    coupled: bool = False


# ---- what a part passes


def parts(change: Callable[[Part, Component], Part]) -> Patch:
    """Every part changed as it is laid."""
    real = passing.part_of

    def changed(component: Component, *others: Any) -> Part:
        return change(real(component, *others), component)

    return lambda patch: patch.setattr(laying, "part_of", changed)


def of_kind(kinds: str, change: Callable[[Part], Part]) -> Patch:
    """Every part of some kinds changed as it is laid."""
    known = kinds.split(", ")
    return parts(lambda part, _: change(part) if part.kind in known else part)


def two_way(part: Part) -> Part:
    both = [tuple({*arcs, *((v, u) for u, v in arcs)}) for arcs in part.positions]
    return replace(part, positions=tuple(both))


def forwards_only(part: Part) -> Part:
    return replace(part, positions=tuple(arcs[:1] for arcs in part.positions))


def turned_round(part: Part) -> Part:
    return replace(part, positions=tuple(tuple((v, u) for u, v in arcs) for arcs in part.positions))


def never_shut(part: Part) -> Part:
    return replace(part, positions=part.positions[:1], names=part.names[:1], usual=0, locked=None)


def all_ways(part: Part) -> Part:
    every = tuple({arc for arcs in part.positions for arc in arcs})
    return replace(part, positions=(every,), names=("",), usual=0)


def held_unsecured(part: Part, component: Component) -> Part:
    return replace(part, locked=part.names.index(component.locked) if component.locked else None)


# ---- what stands at a node


def reliefs(change: Callable[[Relief], Relief]) -> Patch:
    real = passing.reliefs_of

    def changed(*given: Any) -> Iterator[Relief]:
        yield from map(change, real(*given))

    return lambda patch: patch.setattr(laying, "reliefs_of", changed)


def sources(change: Callable[[Source], Source | None]) -> Patch:
    real = passing.sources_of

    def changed(*given: Any) -> Iterator[Source]:
        yield from filter(None, map(change, real(*given)))

    return lambda patch: patch.setattr(laying, "sources_of", changed)


def open_ends(change: Callable[[Any, set[int]], set[int]]) -> Patch:
    real = passing.open_ends_of

    def changed(components: Any, laid: Any, *others: Any) -> Iterator[int]:
        yield from change(laid, set(real(components, laid, *others)))

    return lambda patch: patch.setattr(laying, "open_ends_of", changed)


def every_tank(laid: Sequence[Part], ends: set[int]) -> set[int]:
    return ends | {part.nodes[0] for part in laid if part.kind == "tank"}


def no_drain_end(laid: Sequence[Part], ends: set[int]) -> set[int]:
    return ends - {part.ports["out"] for part in laid if part.kind == "drain valve"}


def passed_on(net: Net) -> None:
    net.vented = ()


def unrooted_join(self: Any, one: Any, other: Any) -> None:
    self.root(one)
    self.root(other)
    self.parent[other] = one


def entered_by_the_outlet(patch: pytest.MonkeyPatch) -> None:
    real = laying._Laying.ports

    def changed(self: Any, behaviour: Any, end: Any, part: Any) -> tuple[str, str]:
        enters, leaves = real(self, behaviour, end, part)
        return leaves, enters

    patch.setattr(laying._Laying, "ports", changed)


# ---- what the searches make of it


def nets(change: Callable[[Net], None]) -> Patch:
    real = Net.__init__

    def changed(self: Net, *given: Any) -> None:
        real(self, *given)
        change(self)

    return lambda patch: patch.setattr(Net, "__init__", changed)


def closable_as_fixed(net: Net) -> None:
    net.fixed += net.closable
    net.closable = []


def coupled_as_fixed(net: Net) -> None:
    net.fixed += [(u, v, number) for number in net.coupled for u, v in net.arcs(number)]
    net.coupled = []


def coupled_as_first(net: Net) -> None:
    net.fixed += [(u, v, n) for n in net.coupled for u, v in net.parts[n].positions[0]]
    net.coupled = []


def lowest_last(net: Net, given: Any, choice: Any = None) -> list[float]:
    """The highest setting that is reached, and not the lowest."""
    caps = [math.inf] * net.count
    for relief in sorted(given, key=lambda relief: float(relief.lifts)):
        for node in search.always_reaches(net, [relief.node], choice=choice):
            caps[node] = relief.lifts
    return caps


def uncapped(real: Any, net: Net, starts: Any, caps: Any, choice: Any = None) -> Any:
    return real(net, starts, [math.inf] * len(caps), choice)


def from_the_start(real: Any, net: Net, starts: Any, avoided: Any) -> Any:
    fed, came = real(net, starts, avoided)
    return fed | set(starts), came


def avoiding_nothing(real: Any, net: Net, starts: Any, _: Any) -> Any:
    return real(net, starts, ())


def nearest_only(real: Any, *given: Any) -> Any:
    return [row[:1] for row in real(*given)]


class OneEnd(deque[Any]):
    """Takes nothing first that costs nothing."""

    def appendleft(self, x: Any, /) -> None:
        self.append(x)


def forgetful(net: Net, choice: Any, caps: Any, starts: Any, best: list[float]) -> bool:
    """One line-up at a time."""
    found = search.highest(net, starts, caps, choice).at
    grown = any(here > there for here, there in zip(found, best, strict=True))
    best[:] = [max(pair) for pair in zip(found, best, strict=True)]
    return grown


def caps_of_any_line_up(net: Net, given: Any, choice: Any = None) -> list[float]:
    del choice
    return search.caps_of(net, given)


def instead(module: Any, name: str, change: Any) -> Patch:
    """A function of a module, or of a class, exchanged."""
    return lambda patch: patch.setattr(module, name, change)


def around(module: Any, name: str, change: Any) -> Patch:
    """The same, with the real one as first argument of the new."""
    return instead(module, name, partial(change, getattr(module, name)))


PRESSURES = (highest_pressure, fed_while_cut_off)
SEQUENCES = (pressure_over_sequences, fed_over_sequences)
IN_LINE = "stop valve, cock, quick-closing valve, solenoid valve"

FAULTS = (
    Fault("relief runs through a reducing valve", of_kind("regulator", partial(replace, carries_relief=True)), PRESSURES),
    Fault("relief runs through a pump", of_kind("pump", partial(replace, carries_relief=True)), PRESSURES),
    Fault("a check valve passes both ways", of_kind("check valve", two_way)),
    Fault("a check valve is turned round", of_kind("check valve", turned_round)),
    Fault("a stop-check valve passes both ways", of_kind("stop-check valve", two_way)),
    Fault("a stop-check valve does not shut", of_kind("stop-check valve", never_shut)),
    Fault("a stop-check valve is no barrier", of_kind("stop-check valve", partial(replace, one_way=False)), (self_acting_barriers,)),
    Fault("a stop valve does not shut", of_kind(IN_LINE, never_shut)),
    Fault("a stop valve passes one way", of_kind(IN_LINE, forwards_only)),
    Fault("a hose passes one way", of_kind("hose, bellows", forwards_only)),
    Fault("a gear pump passes both ways", of_kind("pump", two_way)),
    Fault("a centrifugal pump passes one way", of_kind("pump", forwards_only)),
    Fault("a reducing valve reduces nothing", of_kind("regulator", partial(replace, cap=math.inf)), PRESSURES),
    Fault("a reducing valve passes both ways", of_kind("regulator", two_way)),
    Fault("a secured lock is ignored", parts(lambda part, _: replace(part, locked=None))),
    Fault("a lock holds that nobody looks at", parts(held_unsecured)),
    Fault("a solenoid valve is isolation", of_kind("solenoid valve", partial(replace, lockable=True)), (lockable_barriers,)),
    Fault("a relief valve lifts at the low end of its setting", reliefs(lambda one: replace(one, lifts=one.opens)), PRESSURES),
    Fault("a source makes a little less", sources(lambda one: replace(one, makes=one.makes - 100_000.0)), PRESSURES),
    Fault("a machine makes nothing", sources(lambda one: None if one.machine else one), PRESSURES),
    Fault("a closed tank is open air", open_ends(every_tank), (always_vented,)),
    Fault("a drain that ends in nothing is shut in", open_ends(no_drain_end), (always_vented,)),
    Fault("pressure passes on through an open tank", nets(passed_on), PRESSURES),
    Fault("a user that exhausts is shut in", instead(laying, "users_that_exhaust", lambda *_: ()), (always_vented,)),
    Fault("two joined stretches stay two nodes", instead(laying._Laying, "join", unrooted_join)),
    Fault("a run enters a part by its outlet", entered_by_the_outlet),
    Fault("what can be shut is taken as open", nets(closable_as_fixed), lay=put_together),
    Fault("the highest relief setting counts", instead(search, "caps_of", lowest_last), PRESSURES, put_together),
    Fault("relief valves hold nothing down", around(search, "highest", uncapped), PRESSURES, put_together),
    Fault("a source is never relieved", around(search, "fed_outside", from_the_start), PRESSURES, put_together),
    Fault("what is relieved is fed all the same", around(search, "fed_outside", avoiding_nothing), PRESSURES, put_together),
    Fault("ways with barriers come first", instead(search, "deque", OneEnd), (self_acting_barriers, lockable_barriers), put_together),
    Fault("the second nearest store is forgotten", around(search, "two_nearest", nearest_only), (lockable_barriers,), put_together),
    Fault("a three-way valve always passes every way", nets(coupled_as_fixed), lay=put_together, coupled=True),
    Fault("a three-way valve stays in its first position", nets(coupled_as_first), lay=put_together, coupled=True),
    Fault("a three-way valve is never between", of_kind("three-way valve", all_ways), coupled=True),
    Fault("a three-way valve is two barriers", instead(search, "_ways_through", Net.arcs), (lockable_barriers,), put_together, coupled=True),
    Fault("a valve that shuts three ports is a stop valve", instead(Part, "coupled", property(lambda part: len(part.positions) > 2 or all(part.positions))), SEQUENCES, put_together, coupled=True),
    Fault("volumes do not remember", instead(sequences, "_raise", forgetful), SEQUENCES, put_together, coupled=True),
    Fault("relief is sought in any line-up at once", instead(sequences, "caps_of", caps_of_any_line_up), SEQUENCES, put_together, coupled=True),
)  # fmt: skip
