"""A small handbook in which something waits for a signature."""

from pathlib import Path

from tests.golden_case import Case

DECISION = """\
---
id: SA-DD-003
title: Low-air switch on each receiver
system: SA
class: A
state: in check
author: lead
drafted: 2031-03-10
question: Where is low starting air sensed?
chosen: one on each
reasons: nothing may shut between vessel and switch
sets: [SA-PS-001.set]
---
As [seen](value:SA-PS-001.set), starts: [](value:starts.n).
"""
SUMS = """\
---
id: SA-CL-001
title: Starts in one charge
system: SA
class: B
author: volunteer-1
drafted: 2031-03-01
---
```calc starts
V = 500 L  # both receivers [plate-R1]
each = 50 L  # one start [LOGBOOK]
n = floor(V / each)  # starts in one charge
require n >= 6  # six starts [LOGBOOK]
```
"""
SYSTEM = """\
status: in test
components:
  SA-AR-001: {kind: receiver, rated: 33 bar(g), test: 49.5 bar(g), item: {serial: "4471"}}
  SA-PS-001: {kind: pressure switch, set: 18 bar(g), watches: [SA-AR-001]}
"""
PEOPLE = """\
lead: {role: lead builder, may: [author, doer, in charge]}
reviewer-1: {role: remote reviewer, may: [author, checker, approver], class: A}
reviewer-2: {role: remote reviewer, may: [checker, approver], class: A}
volunteer-1: {role: volunteer, may: [author, doer, verifier]}
surveyor-1: {role: surveyor, may: [named party, witness]}
"""
PAGE = """\
---
page: what it does
title: What starting air does
system: SA
author: lead
---
It turns the engine.
"""
DECIDED = "log/2031/2031-03-11-low-air.md"
SUMMED = "systems/starting-air/sa-cl-001.md"
WRITTEN = "systems/starting-air/what-it-does.md"
FILES = {
    DECIDED: DECISION,
    SUMMED: SUMS,
    WRITTEN: PAGE,
    "systems/starting-air/system.yml": SYSTEM,
    "people.yml": PEOPLE,
}


def write_sample(folder: Path, **other: str) -> Path:
    """Write the handbook; `decision` and `sums` take the place of those records."""
    changed = {
        DECIDED: other.get("decision", DECISION),
        SUMMED: other.get("sums", SUMS),
        **{path: text for path, text in other.items() if "/" in path},
    }
    return Case("", "", "", {**FILES, **changed}, "").write(folder)
