"""Two small handbooks, one after the other, to be held together."""

from dataclasses import dataclass
from pathlib import Path

from garboard.book import Book
from garboard.changes.compare import compare
from garboard.changes.comparison import Comparison, Number, Strength
from garboard.handbook import read_book
from garboard.methods import METHODS
from tests.golden_case import lay_out

FENCE = """\
p_max = 30 bar(g)  # cut-out [plate-R1]
p_min = 12 bar(g)  # lowest [plate-R1]
V = 2 * SA-AR-001.volume  # both [plate-R1]
each = 1 m3(n)  # one start [plate-R1]
stored = free_air(V, p_max, 20 degC) - free_air(V, p_min, 20 degC) in m3(n)  # usable
n = floor(stored / each)  # starts
warm = 40 degC  # engine room [LOGBOOK]
share = 20 %  # spare [LOGBOOK]
require n >= 6  # what the rule asks [BOYLE]
"""
SYSTEM = """\
status: in test
components:
  SA-AR-001: {kind: receiver, name: air receiver 1, volume: "250 L [plate-R1]", locked: open}
  SA-PS-001: {kind: pressure switch, name: low-air switch, set: "18 bar(g) [LOGBOOK]"}
"""
HAZARD = """\
---
id: SA-HZ-001
title: Stored air
system: SA
class: A
harms: people
severity: 1
likelihood: C
if_ignored: will
controls:
  - {rank: guard, what: relief valve on every receiver}
  - {rank: words, what: the card at the panel}
message: {hazard: Air behind this joint., harm: It throws parts and can kill., avoid: See the gauge at zero.}
---
"""
PROCEDURE = """\
---
id: SA-PR-001
title: Empty the header
system: SA
class: A
stop_if: the gauge rises again
steps:
  - {do: Shut, tag: SA-PS-001, to: shut, see: {value: handle across}, if_not: call}
  - {do: Bleed the header slowly, message: SA-HZ-001, second: independent, hold: SA-IT-001}
  - {do: Read the gauge of the header, see: {value: zero}, if_not: wait}
  - {do: Hang the card on the handle}
---
"""
ALARM = """\
---
id: SA-AL-001
title: Low air
system: SA
class: A
wording: START AIR LOW
tag: SA-PS-001
set: SA-PS-001.set
direction: low
priority: warning
first: [Read both gauges, Start the compressor, Shut the whistle]
---
"""


def sums(fence: str = FENCE) -> str:
    """A calculation as a file."""
    return f"---\nid: SA-CL-001\ntitle: Starts\nsystem: SA\n---\n```calc starts\n{fence}```\n"


FILES = {
    "systems/starting-air/system.yml": SYSTEM,
    "systems/starting-air/sa-cl-001-starts.md": sums(),
    "systems/starting-air/sa-hz-001-air.md": HAZARD,
    "systems/starting-air/sa-pr-001-empty.md": PROCEDURE,
    "systems/starting-air/sa-al-001-low.md": ALARM,
}


@dataclass(frozen=True)
class Desk:
    """A folder in which two books are laid out in turn."""

    folder: Path

    def book(self, files: dict[str, str]) -> Book:
        """A book of these files over the common ones."""
        lay_out(self.folder, FILES | files)
        return read_book(self.folder)

    def compared(self, before: dict[str, str], after: dict[str, str]) -> Comparison:
        """What differs between two books."""
        return compare(self.book(before), self.book(after), METHODS)

    def edited(self, path: str, *changes: tuple[str, str]) -> Comparison:
        """What differs from the common files once some texts of one of them are others."""
        name = next(one for one in FILES if path in one)
        text = FILES[name]
        for old, new in changes:
            assert text.count(old) == 1, (old, text.count(old))
            text = text.replace(old, new)
        return self.compared({}, {name: text})


def number(found: Comparison, address: str) -> Number:
    """One number that is not as it was."""
    return next(one for one in found.numbers if one.address == address)


def told(found: Comparison, strength: Strength) -> list[tuple[str, str, str]]:
    """What went one way: what, before, after."""
    return [(one.what, one.before, one.after) for one in found.cautions if one.strength is strength]
