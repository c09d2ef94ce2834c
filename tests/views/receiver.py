"""A small handbook for the tests of pages: a receiver, its switch, one calculation, tests of both.

How sure a value is, and the curve of a requirement, are set by hand.
"""

from dataclasses import replace
from pathlib import Path

from garboard.book import Book
from garboard.calc.value import Curve, Mover
from garboard.handbook import read_book
from tests.golden_case import Case

FILES = {
    "handbook.yml": """\
vessel: Skerry Light
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {SA: starting-air}
edition: {life: 12 months}
site: {atmosphere: "1013 mbar(a) +/- 40 mbar [LOGBOOK]"}
instruments:
  G-07: {what: test gauge 0-100 bar, calibrated: 2031-01-12, due: 2031-08-12}
as_of: 2031-10-01
""",
    "systems/starting-air/system.yml": """\
system: SA
title: Starting air
status: in test
components:
  AR-001: {kind: receiver, name: Receiver 1, rated: "33 bar(g) [plate-R1]"}
  RV-001: {kind: relief valve, name: Relief 1, set: "33 bar(g) +/- 1 bar [plate-R1 line 3]", protects: [SA-AR-001]}
  PS-001: {kind: pressure switch, name: Low air 1, set: "18 bar(g) +/- 0.5 bar [LOGBOOK]"}
  PS-002: {kind: pressure switch, name: Stop, set: "30 bar(g)"}
connections:
  - SA-AR-001.a > SA-RV-001
  - SA-AR-001.b > SA-PS-001
  - SA-AR-001.c > SA-PS-002
""",
    "systems/starting-air/SA-CL-001.md": """\
---
id: SA-CL-001
title: Starts in one charge
system: SA
class: A
author: lead
---
Both receivers.

```calc sizing
p_max = 30 bar(g) +/- 0.5 bar  # compressor cut-out [SA-TR-001]
p_min = 12 bar(g)  # lowest that turns the engine [LOGBOOK page 4]
each = 0.9 bar(d) +/- 10 %  # one start takes [SA-TR-001]
n = (p_max - p_min) / each  # starts in one charge
least = 6  # asked for [BOYLE]
require n >= least  # non-reversible engine [BOYLE chapter 2]
require SA-PS-001.set >= 17.2 bar(g)  # time to act [LOGBOOK]
```
""",
    "systems/starting-air/SA-TR-001.md": """\
---
id: SA-TR-001
title: Counted starts
system: SA
on: 2031-04-02
did: volunteer-1
readings:
  - {of: SA-PS-001.set, value: 18.4 bar(g), instrument: G-07}
  - {of: SA-RV-001.set, value: 33.2 bar(g), instrument: G-07}
---
Counted.
""",
    "systems/starting-air/SA-TR-002.md": """\
---
id: SA-TR-002
title: Switches again
system: SA
on: 2031-06-11
did: volunteer-1
readings:
  - {of: SA-PS-001.set, value: 18.0 bar(g), instrument: G-07}
---
On the bench.
""",
    "systems/starting-air/SA-TR-003.md": """\
---
id: SA-TR-003
title: Switches a third time
system: SA
on: 2031-09-20
did: volunteer-1
readings:
  - {of: SA-PS-001.set, value: 17.0 bar(g), instrument: G-07}
  - {of: SA-PS-002.set, value: 29 bar(g), instrument: G-99}
  - {of: sizing.each, value: 0.93 bar(d), instrument: SA-PS-002}
---
On the bench.
""",
    "log/2031/2031-09-21-low-switch.md": """\
---
id: SA-FN-001
title: Low-air switch comes low
system: SA
where: [SA-PS-001]
found: {by: volunteer-1, on: 2031-09-21}
---
Low.
""",
}
POINTS = tuple((1e5 * p, (p - 12) / 0.9 if p < 33 else None) for p in range(14, 36))
"""Starts against the pressure of a charge, which has no answer past the rating."""


def write(folder: Path, **changed: str) -> Path:
    """The content folder, with some files written otherwise."""
    return Case("", "", "", {**FILES, **changed}, "").write(folder)


def read(folder: Path, **changed: str) -> Book:
    """The book, with what is set by hand."""
    return by_hand(read_book(write(folder, **changed)))


def by_hand(book: Book) -> Book:
    """Say of the answer what it usually lies between, what moves it and how."""
    net = book.network
    sure = replace(
        net.values["sizing.n"],
        usual=(18.1234, 21.8766),
        movers=(
            Mover("sizing.each", 18.1818, 22.2222, 0.9412),
            Mover("sizing.p_max", 19.4444, 20.5556, 0.0588),
        ),
        low=17.6767,
        high=22.8395,
    )
    curve = Curve("sizing.n", "sizing.p_max", POINTS, (30e5, 20.0), 6.0)
    asked, other = net.requirements
    required = replace(asked, curve=curve)
    sheet = net.sheets["sizing"]
    lines = tuple(
        replace(line, value=sure)
        if line.name == "n"
        else replace(line, requirement=required)
        if line.requirement == asked
        else line
        for line in sheet.lines
    )
    return replace(
        book,
        network=replace(
            net,
            values={**net.values, "sizing.n": sure},
            requirements=(required, other),
            sheets={**net.sheets, "sizing": replace(sheet, lines=lines)},
        ),
    )
