"""Large plants built like those of a ship, of any number of parts: groups along a few mains, sound or full of mistakes."""

import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from garboard.systems.plant import Plant
from tests.systems.pieces import plant_of

AIR_GROUP = """
  CP-a: {kind: compressor, makes: 42 bar(g), mount: frame}
  HS-a: {kind: hose, rated: 60 bar(g)}
  RV-a: {kind: relief valve, set: 33 bar(g)}
  SE-a: {kind: separator, rated: 40 bar(g), mount: hull}
  HV-a: {kind: drain valve}
  NV-a: {kind: check valve, rated: 64 bar(g)}
  HV-b: {kind: stop valve}
  AR-a: {kind: receiver, rated: 33 bar(g), mount: hull}
  RV-b: {kind: relief valve, set: 32 bar(g)}
  HV-c: {kind: drain valve}
  PS-a: {kind: pressure switch, stops: CP-a, cuts_out: 30 bar(g), cuts_in: 25 bar(g)}
  PI-a: {kind: gauge, rated: 60 bar(g)}
  HV-d: {kind: stop valve, usual: open, locked: open, secured: seal NN, round: watch}
  RG-a: {kind: regulator, set: 8 bar(g), rated: 64 bar(g)}
  RV-c: {kind: relief valve, set: 9 bar(g)}
  PI-b: {kind: gauge, rated: 16 bar(g)}
  HV-e: {kind: drain valve}
  US-a: {kind: consumer, essential: yes, exhausts: yes}
  HV-f: {kind: drain valve}
  HV-g: {kind: drain valve}
"""
AIR_RUNS = """
  - CP-a > HS-a > SE-a > NV-a > filling line NN
  - CP-a.out > RV-a
  - SE-a.drain > HV-a > bilge
  - filling line NN > PS-a
  - filling line NN > HV-f > bilge
  - filling line NN > HV-b > AR-a
  - AR-a.relief > RV-b
  - AR-a.gauge > PI-a
  - AR-a.drain > HV-c > bilge
  - AR-a.out > HV-d > start main MM
  - start main MM > RG-a > low line NN > US-a
  - low line NN > RV-c
  - low line NN > PI-b
  - low line NN > HV-e > bilge
  - start main MM > HV-g > bilge
"""
AIR_MISTAKES: Mapping[str, str] = {
    "AR-a.relief > RV-b": "AR-a.relief > HV-h > RV-b",
    "filling line NN > PS-a": "start main MM > PS-a",
    "  - low line NN > RV-c\n": "",
    "  - AR-a.drain > HV-c > bilge\n": "",
    "CP-a > HS-a > SE-a": "CP-a > SE-a",
}
AIR_TURNED = (
    "\n  - low line NN > TV-a.common\n  - TV-a.a > spare line NN\n  - TV-a.b > atmosphere\n"
)

BILGE_GROUP = """
  BW-a: {kind: compartment}
  SN-a: {kind: stop-check valve}
  NV-a: {kind: check valve}
  ST-a: {kind: strainer, rated: 10 bar(g)}
  SC-a: {kind: sea}
  HV-a: {kind: stop valve, usual: shut}
  PU-a: {kind: pump, type: centrifugal, makes: 3 bar(g)}
  NV-b: {kind: check valve, rated: 10 bar(g)}
  HV-b: {kind: stop valve, rated: 10 bar(g)}
  OD-a: {kind: sea}
  PI-a: {kind: gauge, rated: 16 bar(g)}
"""
BILGE_RUNS = """
  - BW-a > NV-a > SN-a > bilge main MM
  - bilge main MM > ST-a > suction NN > PU-a > delivery NN > NV-b > HV-b > OD-a
  - SC-a > HV-a > suction NN
  - delivery NN > PI-a
"""
BILGE_MISTAKES: Mapping[str, str] = {"BW-a > NV-a > SN-a": "BW-a > HV-h"}

BOARD_GROUP = """
  BA-a: {kind: battery, makes: no limit}
  FU-a: {kind: fuse, rated: 100 A}
  SW-a: {kind: switch}
  CW-a: {kind: cable, rated: 150 A}
  BB-a: {kind: bus, rated: 630 A}
  CB-a: {kind: breaker, rated: 10 A}
  CW-b: {kind: cable, rated: 41 A}
  LD-a: {kind: load, essential: yes}
  FU-b: {kind: fuse, rated: 63 A}
"""
BOARD_RUNS = """
  - BA-a > FU-a > SW-a > CW-a > BB-a
  - BB-a > CB-a > CW-b > LD-a
  - BB-a > FU-b > bus main MM
"""
BOARD_MISTAKES: Mapping[str, str] = {"FU-a > SW-a": "FU-h > SW-a"}

MAIN = 4
"""Groups along one main; the mains are joined end to end by stop valves."""
TURNED = 4 * MAIN
"""One three-way valve in so many groups."""
LETTER = re.compile(r"\b([A-Z]{2})-([a-z])\b")


@dataclass(frozen=True)
class Sort:
    """How one sort of plant is built: components and runs of a group, `AR-a` for its own receiver."""

    code: str
    medium: str
    group: str
    runs: str
    main: str
    """What the groups hang on: `start main MM`; `NN` is the number of the group."""
    mistakes: Mapping[str, str]
    """Runs, and what takes their place where the plant is full of mistakes."""
    between: str = "HV-h: {kind: stop valve}"
    """What stands in the wrong place there."""
    turned: str = ""

    def plant(self, parts: int, *, faulty: bool = False, turning: bool = True) -> Plant:
        """About so many parts, sound or full of mistakes, with three-way valves or without."""
        return plant_of(self.text(parts, faulty=faulty, turning=turning), self.code)

    def text(self, parts: int, *, faulty: bool = False, turning: bool = True) -> str:
        """The same as a system.yml."""
        count = max(2, round(parts / self.group.count("kind:")))
        components: list[str] = []
        runs: list[str] = []
        taken: Counter[str] = Counter()
        for number in range(count):
            tags: dict[str, str] = {}
            for text, into in zip(
                self.of_group(number, faulty=faulty, turning=turning),
                (components, runs),
                strict=True,
            ):
                into.append(_numbered(text, tags, taken).replace("NN", f"{number}"))
        headers = sorted(set(re.findall(r"(?:[a-z]+ )+\d+", "\n".join(runs))))
        return "\n".join(
            [
                f"system: {self.code}\ntitle: test piece\nmedium: {self.medium}",
                "mounts: {hull: {moves: never}, frame: {moves: always}}",
                "components:",
                *components,
                f"headers: {{{', '.join(f'{name}: {{}}' for name in headers)}}}",
                "connections:",
                *runs,
            ]
        )

    def of_group(self, number: int, *, faulty: bool, turning: bool) -> tuple[str, str]:
        """Components and runs of one group."""
        components, runs = self.group.strip("\n"), self.runs.strip("\n")
        if faulty:
            components += f"\n  {self.between}"
            for right, wrong in self.mistakes.items():
                runs = runs.replace(right, wrong)
        if turning and self.turned and number % TURNED == 0:
            components += "\n  TV-a: {kind: three-way valve}"
            runs += self.turned.rstrip("\n")
        if number % MAIN == 0 and number:
            components += "\n  HV-z: {kind: stop valve}"
            runs += f"\n  - {self.main} {number // MAIN - 1} > HV-z > {self.main} MM"
        return components, runs.replace("MM", str(number // MAIN))


def _numbered(text: str, tags: dict[str, str], taken: Counter[str]) -> str:
    """A text of one group with its tags: each takes the next number of its letters."""

    def tag(found: re.Match[str]) -> str:
        if found[0] not in tags:
            taken[found[1]] += 1
            tags[found[0]] = f"{found[1]}-{taken[found[1]]:03}"
        return tags[found[0]]

    return LETTER.sub(tag, text)


AIR = Sort("SA", "air", AIR_GROUP, AIR_RUNS, "start main", AIR_MISTAKES, turned=AIR_TURNED)
"""Compressors, receivers along start mains, service air."""
BILGE = Sort("BG", "sea water", BILGE_GROUP, BILGE_RUNS, "bilge main", BILGE_MISTAKES)
"""Compartments, bilge mains, pumps and the sea."""
BOARD = Sort("DC", "direct current", BOARD_GROUP, BOARD_RUNS, "bus main", BOARD_MISTAKES, "FU-h: {kind: fuse, rated: 400 A}")  # fmt: skip
"""Battery banks and buses along bus mains."""
