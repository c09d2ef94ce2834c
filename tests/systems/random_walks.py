"""Random small plants with random steps, some of whose valves nobody knows the position of."""

from dataclasses import replace
from random import Random

from garboard.systems.actions import Action, Does, Observed
from garboard.systems.plant import Plant
from garboard.systems.state import State
from garboard.systems.ways import Ways
from tests.systems.pieces import plant_of

HEAD = "system: SA\ntitle: piece\nmedium: {medium}\n"
BETWEEN = ("stop valve", "stop valve", "stop valve", "check valve", "stop-check valve", "regulator")
LETTERS = {"check valve": "NV", "stop-check valve": "SN", "regulator": "RG"}
TURNED = "three-way valve, positions: {left: [common-a], right: [common-b]}"


class _Drawing:
    """A plant on its way to being written."""

    def __init__(self, rnd: Random) -> None:
        self.rnd = rnd
        self.headers = [f"line {letter}" for letter in "abcdefg"[: rnd.randint(4, 7)]]
        self.parts: list[str] = []
        self.runs: list[str] = []

    def add(self, letters: str, text: str) -> str:
        tag = f"{letters}-{len(self.parts) + 1:03}"
        self.parts.append(f"  {tag}: {{kind: {text}}}")
        return tag

    def some_header(self) -> str:
        return self.rnd.choice(self.headers)

    def hang(self, letters: str, text: str, most: int = 1, least: int = 1) -> None:
        """So many parts on one header each."""
        for _ in range(self.rnd.randint(least, most)):
            self.runs.append(f"{self.some_header()} > {self.add(letters, text)}")

    def between(self, one: str, other: str) -> None:
        """A valve between two headers."""
        kind = self.rnd.choice(BETWEEN)
        if kind == "stop valve" and self.rnd.random() < 0.2:
            tag = self.add("TV", TURNED)
            ends = (
                f"{one} > {tag}.common",
                f"{tag}.a > {other}",
                f"{tag}.b > {self.some_header()}",
            )
            self.runs += ends
            return
        self.runs.append(f"{one} > {self.add(LETTERS.get(kind, 'HV'), kind)} > {other}")

    def text(self) -> str:
        head = HEAD.format(medium=self.rnd.choice(["air", "air", "sea water"]))
        named = "".join(f"  {name}: {{}}\n" for name in self.headers)
        joined = "".join(f"  - {run}\n" for run in self.runs)
        parts = "\n".join(self.parts)
        return f"{head}components:\n{parts}\nheaders:\n{named}connections:\n{joined}"


def random_plant(rnd: Random) -> Plant:
    """Four to seven headers joined by valves, with receivers, machines, relief valves, switches, drains."""
    draw = _Drawing(rnd)
    for number, header in enumerate(draw.headers[1:], 1):
        draw.between(draw.headers[rnd.randrange(number)], header)
    for _ in range(rnd.randint(0, 2)):
        draw.between(*rnd.sample(draw.headers, 2))
    draw.hang("AR", f"receiver, rated: {rnd.choice([10, 33])} bar(g)", most=2)
    draw.hang("FI", "filter, rated: 40 bar(g)", least=0)
    draw.hang("RV", f"relief valve, set: {rnd.choice([9, 32])} bar(g)", most=2, least=0)
    machine = draw.add("CP", "compressor, type: piston, makes: 42 bar(g)")
    draw.runs.append(f"{machine} > {draw.some_header()}")
    draw.hang("PS", f"pressure switch, stops: {machine}", least=0)
    if rnd.random() < 0.4:
        pump = draw.add("PU", "pump, type: centrifugal, makes: 12 bar(g)")
        draw.runs.append(f"{draw.some_header()} > {pump} > {draw.some_header()}")
    for _ in range(rnd.randint(1, 2)):
        draw.runs.append(f"{draw.some_header()} > {draw.add('HV', 'drain valve')} > bilge")
    draw.hang("US", "consumer, exhausts: yes", least=0)
    draw.hang("PI", "gauge")
    return plant_of(draw.text())


def random_start(rnd: Random, ways: Ways) -> State:
    """Some valves known, up to four not; a machine may run."""
    movable = [n for n, part in enumerate(ways.plant.parts) if part.movable]
    unknown = set(rnd.sample(movable, min(len(movable), rnd.randint(0, 4))))
    at = []
    for number, part in enumerate(ways.plant.parts):
        positions = len(part.positions)
        at.append((1 << positions) - 1 if number in unknown else 1 << rnd.randrange(positions))
    running = {s.tag for s in ways.plant.sources if s.machine and rnd.random() < 0.4}
    return State(tuple(at), frozenset(running))


def random_steps(rnd: Random, plant: Plant, count: int = 6) -> list[Action]:
    """Valves moved, machines started and stopped, parts opened and refitted, zero read."""
    movable = [n for n, part in enumerate(plant.parts) if part.movable]
    machines = [plant.numbers[source.tag] for source in plant.sources]
    vessels = [plant.numbers[p.tag] for p in plant.of_kind("receiver", "filter", "relief valve")]
    gauge = plant.node(plant.of_kind("gauge")[0].tag)
    steps = []
    for number in range(1, count + 1):
        draw = rnd.random()
        if draw < 0.5 and movable:
            at = rnd.choice(movable)
            steps.append(
                _act(plant, number, Does.MOVES, at, rnd.randrange(len(plant.parts[at].positions)))
            )
        elif draw < 0.65:
            steps.append(
                _act(plant, number, rnd.choice([Does.STARTS, Does.STOPS]), rnd.choice(machines))
            )
        elif draw < 0.85:
            does = rnd.choice([Does.OPENS_UP, Does.OPENS_UP, Does.REFITS, Does.REPLACES])
            steps.append(_act(plant, number, does, rnd.choice(vessels)))
        else:
            steps.append(Action(number, Does.LOOKS))
        if rnd.random() < 0.25:
            steps[-1] = replace(steps[-1], sees=Observed(node=gauge, zero=True))
    return steps


def _act(plant: Plant, number: int, does: Does, part: int, position: int | None = None) -> Action:
    return Action(number, does, part, plant.parts[part].tag, position)
