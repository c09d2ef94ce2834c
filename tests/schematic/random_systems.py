"""Systems made up by chance, as text of a system.yml: some like those of a vessel, some like nothing at all."""

import random

__all__ = ["ship_like", "wild"]

IN_LINE = (
    "stop valve",
    "check valve",
    "hose",
    "filter",
    "stop-check valve",
    "restrictor",
    "regulator",
)
LETTERS = {
    "stop valve": "HV", "check valve": "NV", "hose": "HS", "filter": "FI", "stop-check valve": "SN",
    "restrictor": "RS", "regulator": "RG", "compressor": "CP", "pump": "PU", "pressure source": "SH",
    "receiver": "AR", "tank": "TK", "separator": "SE", "cooler": "HE", "consumer": "US", "sea": "SC",
    "gauge": "PI", "pressure switch": "PS", "relief valve": "RV", "drain valve": "HV",
    "three-way valve": "TV", "tee": "TE", "compartment": "BW", "strainer": "ST", "vent valve": "HV",
}  # fmt: skip
SAID = {"relief valve": "set: 33 bar(g)", "regulator": "set: 8 bar(g)", "hose": "rated: 60 bar(g)"}
SAID |= {"receiver": "rated: 33 bar(g), volume: 250 L", "pressure switch": "set: 30 bar(g)"}


class _System:
    """A system while it is made up."""

    def __init__(self, chance: random.Random) -> None:
        self.chance = chance
        self.count: dict[str, int] = {}
        self.components: list[str] = []
        self.runs: list[str] = []
        self.headers: list[str] = []

    def part(self, kind: str) -> str:
        letters = LETTERS[kind]
        self.count[letters] = self.count.get(letters, 0) + 1
        tag = f"{letters}-{self.count[letters]:03}"
        said = f", {SAID[kind]}" if kind in SAID else ""
        self.components.append(f"  {tag}: {{kind: {kind}, name: Some part{said}}}")
        return tag

    def chain(self, most: int) -> list[str]:
        return [self.part(self.chance.choice(IN_LINE)) for _ in range(self.chance.randint(0, most))]

    def header(self) -> str:
        self.headers.append(f"line {len(self.headers) + 1}")
        return self.headers[-1]

    def towers(self, on: str, most: int, *, vessel: bool = False) -> None:
        for number in range(self.chance.randint(0, most)):
            start = f"{on}.p{number}" if vessel else on
            kind = self.chance.choice(
                ("relief valve", "gauge", "pressure switch", "drain valve", "vent valve")
            )
            end = " > bilge" if kind in ("drain valve", "vent valve") else ""
            cock = f"{self.part('stop valve')} > " if self.chance.random() < 0.15 else ""
            self.runs.append(f"{start} > {cock}{self.part(kind)}{end}")

    def text(self) -> str:
        headers = ", ".join(f"{name}: {{}}" for name in self.headers)
        runs = [f"  - {run}" for run in self.runs]
        return "\n".join(
            [
                "system: SA", "title: test piece", "medium: air", "status: sketch", "components:",
                *self.components, f"headers: {{{headers}}}", "connections:", *runs, "",
            ]
        )  # fmt: skip


def ship_like(seed: int, parts: int) -> str:
    """Sources that feed headers, headers that feed vessels and users, with what stands on them."""
    chance = random.Random(seed)  # noqa: S311  (not for secrets)
    system = _System(chance)
    joined = [system.header()]
    while len(system.components) < parts:
        here = chance.choice(joined)
        what = chance.random()
        if what < 0.25:
            source = system.part(chance.choice(("compressor", "pump", "pressure source", "sea")))
            system.runs.append(" > ".join([source, *system.chain(3), here]))
            if chance.random() < 0.4:
                system.runs.append(f"{source}.out > {system.part('relief valve')}")
        elif what < 0.5:
            system.runs.append(" > ".join([here, *system.chain(3), system.part("consumer")]))
        elif what < 0.75:
            vessel = system.part(chance.choice(("receiver", "tank", "separator", "cooler")))
            there = system.header()
            system.runs.append(" > ".join([here, *system.chain(2), vessel]))
            system.runs.append(" > ".join([f"{vessel}.out", *system.chain(2), there]))
            system.towers(vessel, 3, vessel=True)
            joined.append(there)
        elif what < 0.85:
            there = system.header()
            system.runs.append(
                " > ".join([here, system.part("stop valve"), *system.chain(2), there])
            )
            joined.append(there)
        elif len(joined) > 1:
            one, other = chance.sample(joined, 2)
            system.runs.append(" > ".join([one, system.part("stop valve"), other]))
        system.towers(here, 2)
    return system.text()


def wild(seed: int, parts: int) -> str:
    """Anything joined with anything."""
    chance = random.Random(seed)  # noqa: S311  (not for secrets)
    system = _System(chance)
    headers = [system.header() for _ in range(3)]
    ends = []
    for _ in range(parts):
        kind = chance.choice([*LETTERS])
        tag = system.part(kind)
        if kind == "three-way valve":
            ends += [f"{tag}.{port}" for port in ("common", "a", "b")]
        elif kind in ("receiver", "tank", "separator", "tee", "cooler"):
            ends += [f"{tag}.p{number}" for number in range(chance.randint(1, 4))]
        elif kind in ("relief valve", "gauge", "pressure switch", "consumer", "compartment"):
            ends.append(f"{tag}.in" if kind == "relief valve" else tag)
        elif kind in ("sea", "pressure source"):
            ends.append(tag)
        else:
            ends += [f"{tag}.in", f"{tag}.out"]
    for end in ends:
        other = chance.choice([*headers, *headers, *ends, "bilge", "deck"])
        if other != end:
            pair = [end, other] if chance.random() < 0.5 else [other, end]
            if pair[0] in ("bilge", "deck"):
                pair.reverse()
            system.runs.append(" > ".join(pair))
    return system.text()
