"""A small handbook with one logged test, for the tests of logs, their values, plots and plan."""

from pathlib import Path

from garboard.handbook import Handbook, read
from tests.golden_case import Case

SYSTEM = """\
system: SA
title: Starting air
status: in test
components:
  SA-AR-001: {kind: receiver, name: Air receiver 1, volume: 250 L, rated: 33 bar(g), plate: plate-R1}
"""
PLAN = """\
---
id: SA-IT-004
title: Leak of receiver 1
system: SA
class: A
activity: shut in for a night
criterion: at least 28 bar(g)
point: H
party: surveyor-1
record: [SA-TR-002]
before: [SA-WP-001]
---
By hand.
"""
WORK = """\
---
id: SA-WP-001
title: Lag the receiver
system: SA
makes_true: lagged
---
With boards.
"""
FAILED = """\
---
id: SA-TR-001
title: First leak test
system: SA
line: SA-IT-004
what: leak test
on: 2031-02-07
tested: [{tag: SA-AR-001}]
result: fail
---
Hissed.
"""


def record(criterion: str, channels: str, beside: str = "", text: str = "As seen.") -> str:
    """The record of the logged test."""
    return f"""\
---
id: SA-TR-002
title: Second leak test
system: SA
class: A
line: SA-IT-004
follows: SA-TR-001
what: leak test
on: 2031-02-14
tested: [{{tag: SA-AR-001}}]
criterion: "{criterion}"
log: {{file: log/leak.csv, time: t_min, channels: {{{channels}}}}}
{beside}result: pass
---
{text}
"""


P = "p: {of: pressure in the receiver, unit: bar(g), instrument: G-07}"
T = "T: {of: wall, unit: degC, instrument: G-07}"


def handbook(folder: Path, log: str, test: str) -> Handbook:
    """The handbook with a log and the record of its test."""
    files = {
        "systems/starting-air/system.yml": SYSTEM,
        "systems/starting-air/it.md": PLAN,
        "log/wp.md": WORK,
        "systems/starting-air/tr-001.md": FAILED,
        "systems/starting-air/tr-002.md": test,
        "log/leak.csv": log,
    }
    return read(Case("", "", "", files, "").write(folder))
