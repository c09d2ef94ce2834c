"""A small starting-air system whose lines two people traced, and what can be changed about it since."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from types import ModuleType

from garboard.book import Book
from garboard.errors import Severity, Where
from garboard.handbook import read_book
from garboard.review.covers import Covers
from garboard.rules.paths import GRADED, path_diagnostics
from garboard.systems.finding import About, Level, PathFinding
from garboard.systems.line_up import LineUp
from garboard.systems.trace import connections_digest
from tests.golden_case import lay_out

RUNS = (
    "CP-001 > HV-002 > AR-001",
    "AR-001.gauge > HV-003 > PI-001",
    "AR-001.relief > RV-001",
    "AR-001.drain > HV-004 > bilge",
)
MOVED = (*RUNS[:1], "CP-001.out > HV-003 > PI-001", *RUNS[2:])
SYSTEM = """\
title: Starting air
status: in test
components:
  SA-CP-001: {kind: compressor}
  SA-HV-002: {kind: stop valve}
  SA-HV-003: {kind: stop valve, place: at the gauge, locked: open, secured: seal 7, round: watch}
  SA-HV-004: {kind: stop valve, locked: open}
  SA-AR-001: {kind: receiver}
  SA-PI-001: {kind: gauge}
  SA-RV-001: {kind: relief valve}
rounds: {watch: {every: 4 h, order: [{tag: HV-003, look: seal whole}]}}
connections:
"""
PEOPLE = """\
volunteer-1: {role: volunteer, may: [author, doer, verifier]}
volunteer-2: {role: volunteer, may: [author, doer, verifier]}
"""
BY_TWO = (
    "{capacity: doer, by: volunteer-1, on: 2031-04-26, to: complete}",
    "{capacity: verifier, by: volunteer-2, on: 2031-04-26, digest: DIGEST}",
)
TRACE = """\
---
id: SA-TR-013
title: Line trace
system: SA
state: complete
what: line trace
on: 2031-04-26
did: volunteer-1
tested: [{tag: SA-HV-003}]
result: pass
connections: CONNECTIONS
signed: [LINES]
---
Traced by one, and apart from that by another.
"""
PATH = "log/2031/2031-04-26-line-trace.md"
CUT_OFF = PathFinding(
    code="switch-cut-off",
    level=Level.WARNING,
    of=About("SA", "SA-PI-001", Where("systems/starting-air/system.yml", 9, 3)),
    text="SA-PI-001 can be cut off from SA-AR-001 by SA-HV-003",
    help="tap it before SA-HV-003, or ask a concession",
    line=LineUp(shut=("SA-HV-003",)),
    locks=("SA-HV-003",),
)


def files_of(runs: Sequence[str]) -> dict[str, str]:
    """The system with these runs, and the people."""
    joined = "".join(f"  - {run}\n" for run in runs)
    return {"people.yml": PEOPLE, "systems/starting-air/system.yml": SYSTEM + joined}


def traced(
    folder: Path,
    then: Sequence[str] = RUNS,
    now: Sequence[str] = RUNS,
    by: Sequence[str] = BY_TWO,
    trace: str = TRACE,
) -> Book:
    """The book of a system that was traced with some runs, and has others now.

    Args:
        folder: Where it is laid out.
        then: The runs that were traced.
        now: The runs that are entered.
        by: The lines under `signed`.
        trace: The record.
    """
    lay_out(folder, files_of(then))
    digest = connections_digest(read_book(folder).surveys["SA"].plant)
    text = trace.replace("CONNECTIONS", f'"{digest}"').replace("LINES", ", ".join(by))
    lay_out(folder, {**files_of(now), PATH: text})
    book = read_book(folder)
    own = Covers(book.content, book.network).of(book.records["SA-TR-013"]).own
    lay_out(folder, {**files_of(now), PATH: text.replace("DIGEST", f'"{own}"')})
    return read_book(folder)


def with_findings(book: Book, *findings: PathFinding) -> Book:
    """The same book with these found in its starting air, and nothing else found."""
    surveys = {
        code: replace(one, findings=findings if code == "SA" else ())
        for code, one in book.surveys.items()
    }
    return replace(book, surveys=surveys)


def layout_rule(code: str, question: str = "Is it so?") -> ModuleType:
    """A rule that asks the layout and reports what was found under a code."""
    rule = ModuleType(code, f"Something is so.\n\nQuestion: {question}\n\nWhy: it hurts.")
    vars(rule).update(CODE=code, SEVERITY=Severity.STOP, BINDS_FROM=GRADED, WAIVABLE=False)
    vars(rule)["check"] = lambda book: path_diagnostics(book, code)
    return rule
