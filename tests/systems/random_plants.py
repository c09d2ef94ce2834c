"""Small random systems, each as a rig for the oracle and as the plant that the searches are asked of.

A plant is made in two ways: its parts put together here, or a whole system.yml written out and read, so
that the reader and the laying are judged as well. What a rig passes is written down here a second time.
"""

import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from garboard.systems.net import Net, net_of
from garboard.systems.plant import Part, Relief, Source
from tests.systems.brute_force import Arc, Piece, Rig
from tests.systems.pieces import AIR, plant_of

MOST_CHOICES = 8
"""Bits of freedom of one system, so that every position can be tried."""
BAR = 100_000.0


@dataclass(frozen=True)
class Drawn:
    """One component of a drawn system."""

    tag: str
    entry: str
    """As it is written in a system.yml."""
    ends: tuple[tuple[int, str], ...]
    """Node and port of each of its ends."""
    piece: Piece | None = None
    relief: float | None = None
    makes: float | None = None
    """At its last end."""
    opens: bool = False
    """Its last end is open air."""
    vents: bool = False
    """No pressure can stand at its last end."""


@dataclass(frozen=True)
class Laid:
    """A plant that answers for a rig."""

    net: Net
    place: Sequence[int]
    """Its node for each node of the rig."""
    reliefs: tuple[Relief, ...]
    sources: tuple[Source, ...]
    air: frozenset[int]

    def starts(self) -> list[tuple[int, float]]:
        """Where pressure is made, with how much."""
        return [(source.node, source.makes) for source in self.sources]


@dataclass(frozen=True)
class Drawing:
    """A drawn system: its components, and the same as a rig."""

    drawn: tuple[Drawn, ...]
    rig: Rig
    seed: int


# ---- what a component is, as text and as a piece


def _both(u: int, v: int) -> tuple[Arc, ...]:
    return ((u, v), (v, u))


def _locked(dice: random.Random) -> tuple[str, int | None]:
    """What is written of a lock, and the position it holds; one that is not secured holds nothing."""
    if dice.random() > 0.15:
        return "", None
    position = dice.choice(("open", "shut"))
    if dice.random() < 0.3:
        return f", locked: {position}", None
    held = ("open", "shut").index(position)
    return f", locked: {position}, secured: seal 7, round: watch", held


def _closable(
    dice: random.Random, tag: str, u: int, v: int, kind: str, *, one_way: bool = False
) -> Drawn:
    words, held = _locked(dice)
    passing = ((u, v),) if one_way else _both(u, v)
    lockable = kind != "solenoid valve"
    piece = Piece(tag, (passing, ()), held=held, stops_back=one_way, lockable=lockable)
    return Drawn(tag, f"{{kind: {kind}{words}}}", ((u, "in"), (v, "out")), piece)


def _stop(dice: random.Random, tag: str, u: int, v: int) -> Drawn:
    kind = dice.choice(("stop valve", "cock", "quick-closing valve", "solenoid valve"))
    return _closable(dice, tag, u, v, kind)


def _stop_check(dice: random.Random, tag: str, u: int, v: int) -> Drawn:
    return _closable(dice, tag, u, v, "stop-check valve", one_way=True)


def _check(dice: random.Random, tag: str, u: int, v: int) -> Drawn:
    del dice
    piece = Piece(tag, (((u, v),),), stops_back=True)
    return Drawn(tag, "{kind: check valve}", ((u, "in"), (v, "out")), piece)


def _reducing(dice: random.Random, tag: str, u: int, v: int) -> Drawn:
    words, most = _pressure(dice, (5, 8, 10))
    piece = Piece(tag, (((u, v),),), carries=False, most=most)
    return Drawn(tag, f"{{kind: regulator, set: {words}}}", ((u, "in"), (v, "out")), piece)


def _open(dice: random.Random, tag: str, u: int, v: int) -> Drawn:
    kind = dice.choice(("hose", "bellows", "filter", "receiver"))
    ports = ("north", "south") if kind == "receiver" else ("in", "out")
    ends = ((u, ports[0]), (v, ports[1]))
    return Drawn(tag, f"{{kind: {kind}}}", ends, Piece(tag, (_both(u, v),)))


def _machine(dice: random.Random, tag: str, u: int, v: int) -> Drawn:
    words, makes = _pressure(dice, (6, 10, 35))
    centrifugal = dice.random() < 0.5
    arcs = _both(u, v) if centrifugal else ((u, v),)
    kind = "kind: pump, type: centrifugal" if centrifugal else "kind: pump, type: gear"
    piece = Piece(tag, (arcs,), carries=False, stops_back=not centrifugal)
    ends = ((u, "in"), (v, "out"))
    return Drawn(tag, f"{{{kind}, makes: {words}}}", ends, piece, makes=makes)


def _three_way(dice: random.Random, tag: str, u: int, v: int, w: int) -> Drawn:
    """Common at u."""
    both, to_a, to_b = (*_both(u, v), *_both(u, w)), _both(u, v), _both(u, w)
    words, positions = dice.choice(
        (
            ("", (to_a, to_b)),
            (", positions: {left: [common-b], right: [common-a]}", (to_b, to_a)),
            (", positions: {all: [common-a, common-b], a: [common-a], b: [b-common]}", (both, to_a, to_b)),
            (", positions: {a: [common-a], b: [common-b], none: []}", (to_a, to_b, ())),
            (", positions: {all: [common-a, common-b], none: []}", (both, ())),
            (", positions: {straight: [a-b], a: [common-a]}", (_both(v, w), to_a)),
        )
    )  # fmt: skip
    ends = ((u, "common"), (v, "a"), (w, "b"))
    return Drawn(
        tag, f"{{kind: three-way valve{words}}}", ends, Piece(tag, positions, lockable=True)
    )


def _pressure(dice: random.Random, bars: Sequence[int]) -> tuple[str, float]:
    """A pressure as written, and the highest it may be [Pa above the atmosphere]."""
    here = dice.choice(bars)
    if dice.random() < 0.3:
        return f"{here} bar(g) +/- 1 bar", (here + 1) * BAR
    return f"{here} bar(g)", here * BAR


Make = Callable[[random.Random, str, int, int], Drawn]
BETWEEN: Sequence[tuple[float, str, Make]] = (
    (0.40, "HV", _stop),
    (0.53, "NV", _check),
    (0.60, "SN", _stop_check),
    (0.68, "RG", _reducing),
    (0.73, "PU", _machine),
    (1.00, "HS", _open),
)
"""Up to which share of the dice, the letters, and what is drawn."""


# ---- whole systems


def draw(seed: int, *, coupled: bool = False) -> Drawing:
    """One random system of three to nine nodes, and a few that end in the air.

    Args:
        seed: The same one draws the same system.
        coupled: Whether three-way valves are among its parts.
    """
    dice = random.Random(seed)  # noqa: S311 - the same systems at every run
    count = dice.randint(3, 9)
    nodes = list(range(count))
    dice.shuffle(nodes)
    pairs = [(nodes[dice.randrange(k)], nodes[k]) for k in range(1, count)]
    pairs += [_two(dice, count) for _ in range(dice.randint(0, 4))]
    found: list[Drawn] = []
    free = 0.0
    for number, (one, other) in enumerate(pairs, 1):
        u, v = (one, other) if dice.random() < 0.5 else (other, one)
        if coupled and dice.random() < 0.16 and count > 3 and free < MOST_CHOICES - 1:
            w = dice.choice([node for node in range(count) if node not in (u, v)])
            found.append(_three_way(dice, f"TV-{number:03}", u, v, w))
            free += 1.6
            continue
        share = dice.random()
        letters, make = next(
            (letters, make)
            for upto, letters, make in BETWEEN
            if share < upto and not (free >= MOST_CHOICES and letters in ("HV", "SN"))
        )
        found.append(make(dice, f"{letters}-{number:03}", u, v))
        free += letters in ("HV", "SN")
    found += _ends(dice, count)
    return Drawing(tuple(found), _rig(found), seed)


def _two(dice: random.Random, count: int) -> tuple[int, int]:
    one, other = dice.sample(range(count), 2)
    return one, other


def _ends(dice: random.Random, count: int) -> list[Drawn]:
    """What stands at one node: relief valves, sources, what is open to the air and what is not."""
    found: list[Drawn] = []
    last = count

    def at() -> int:
        return dice.randrange(count)

    for number in range(dice.randint(0, 3)):
        words, lifts = _pressure(dice, (9, 12, 30, 33))
        entry = f"{{kind: relief valve, set: {words}}}"
        found.append(Drawn(f"RV-{number:03}", entry, ((at(), "in"),), relief=lifts))
    for number in range(dice.randint(1, 2)):
        words, makes = _pressure(dice, (10, 35, 60))
        letters, kind = dice.choice((("CP", "compressor"), ("SH", "pressure source")))
        entry = f"{{kind: {kind}, makes: {words}}}"
        found.append(Drawn(f"{letters}-{900 + number}", entry, ((at(), "out"),), makes=makes))
    tank = dice.choice(("{kind: tank}", "{kind: tank, rated: 40 bar(g)}"))
    is_open = "rated" not in tank
    found.append(Drawn("TK-901", tank, ((at(), "top"),), opens=is_open, vents=is_open))
    if dice.random() < 0.2:
        found.append(Drawn("SC-901", "{kind: sea}", ((at(), "out"),), vents=True))
    user = dice.choice(("{kind: consumer}", "{kind: consumer, exhausts: yes}"))
    found.append(Drawn("US-901", user, ((at(), "in"),), opens="exhausts" in user))
    if dice.random() < 0.5:
        piece = Piece("HV-902", (_both(here := at(), last), ()), lockable=True)
        ends = ((here, "in"), (last, "out"))
        found.append(Drawn("HV-902", "{kind: drain valve}", ends, piece, opens=True, vents=True))
    return found


def _rig(drawn: Sequence[Drawn]) -> Rig:
    """The same for the oracle."""
    return Rig(
        count=1 + max(node for one in drawn for node, _ in one.ends),
        pieces=tuple(one.piece for one in drawn if one.piece),
        reliefs=tuple((one.ends[0][0], one.relief) for one in drawn if one.relief is not None),
        sources=tuple((one.ends[-1][0], one.makes) for one in drawn if one.makes is not None),
        air=frozenset(one.ends[-1][0] for one in drawn if one.opens),
        vented=frozenset(one.ends[-1][0] for one in drawn if one.vents),
    )


# ---- as a plant


def put_together(drawing: Drawing) -> Laid:
    """The plant of a drawing, its parts made here."""
    rig = drawing.rig
    parts = [
        Part(
            tag=piece.tag,
            kind="",
            ports=dict(enumerate_ports(piece)),
            positions=piece.positions,
            names=tuple(str(number) for number in range(len(piece.positions))),
            cap=piece.most,
            carries_relief=piece.carries,
            one_way=piece.stops_back,
            lockable=piece.lockable,
        )
        for piece in rig.pieces
    ]
    held = {n: piece.held for n, piece in enumerate(rig.pieces) if piece.held is not None}
    return Laid(
        net=Net(rig.count, parts, held, rig.vented),
        place=range(rig.count),
        reliefs=tuple(Relief("", node, None, lifts, lifts) for node, lifts in rig.reliefs),
        sources=tuple(Source("", node, makes) for node, makes in rig.sources),
        air=rig.air,
    )


def enumerate_ports(piece: Piece) -> list[tuple[str, int]]:
    """A name for each node of a piece."""
    nodes = {node: None for arcs in piece.positions for arc in arcs for node in arc}
    return [(f"p{number}", node) for number, node in enumerate(nodes)]


def read_back(drawing: Drawing) -> Laid:
    """The plant of a drawing, written out as a system.yml, read and laid out."""
    text, places = write_out(drawing)
    plant = plant_of(text)
    place = []
    for node in range(drawing.rig.count):
        name, port = places[node]
        part = plant.part(f"SA-{name}")
        place.append(part.ports[port] if part else plant.headers[name])
    return Laid(net_of(plant), place, plant.reliefs, plant.sources, plant.open_air)


def write_out(drawing: Drawing) -> tuple[str, Mapping[int, tuple[str, str]]]:
    """A drawing as a whole system.yml, and by node something that stands there: a header, or a port."""
    dice = random.Random(drawing.seed)  # noqa: S311 - the same text at every run
    ends: dict[int, list[tuple[str, str]]] = {}
    for one in drawing.drawn:
        for node, port in one.ends:
            ends.setdefault(node, []).append((one.tag, port))
    through = [one for one in drawing.drawn if [port for _, port in one.ends] == ["in", "out"]]
    places: dict[int, tuple[str, str]] = {}
    runs: list[str] = []
    for node, here in ends.items():
        if len(here) == 1 and here[0][0] == "HV-902":
            places[node] = here[0]
            runs += [f"{'.'.join(here[0])} > bilge"] * dice.randint(0, 1)
        elif len(here) > 1 and dice.random() < 0.3:
            places[node] = here[0]
            names = [f"{tag}.{port}" for tag, port in here]
            dice.shuffle(names)
            runs += [f"{one} > {other}" for one, other in pairwise(names)]
        else:
            places[node] = (f"line {node}", "")
            runs += [f"line {node} > {tag}.{port}" for tag, port in here]
    runs = _in_line(dice, runs, through, places)
    dice.shuffle(runs)
    lines = [AIR.rstrip(), "components:"]
    lines += [f"  {one.tag}: {one.entry}" for one in dice.sample(drawing.drawn, len(drawing.drawn))]
    lines.append("headers:")
    lines += [f"  {name}: {{}}" for name, port in places.values() if not port] or ["  spare: {}"]
    lines.append("connections:")
    lines += [f"  - {run}" for run in runs]
    return "\n".join(lines) + "\n", places


def _in_line(
    dice: random.Random,
    runs: Sequence[str],
    through: Sequence[Drawn],
    places: Mapping[int, tuple[str, str]],
) -> list[str]:
    """Some parts between two headers written in one run, the way it flows."""
    written = list(runs)
    for one in through:
        before, after = (places[node] for node, _ in one.ends)
        if before[1] or after[1] or dice.random() < 0.5:
            continue
        apart = [f"{before[0]} > {one.tag}.in", f"{after[0]} > {one.tag}.out"]
        written = [run for run in written if run not in apart]
        written.append(f"{before[0]} > {one.tag} > {after[0]}")
    return written
