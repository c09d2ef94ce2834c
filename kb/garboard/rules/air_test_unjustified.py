"""A pressure test with air or gas does not say why not water, from what distance, in what steps.

Why: air at test pressure holds some hundred times the energy of water, and lets it go all at
once. 46 CFR 54.10-15 (2004) (verify before citing) allows a gas test where water cannot be used,
raised to half the pressure and then by tenths.

Fix: test with water; or say in the test, its plan line or its procedure why water cannot be used,
at what distance everybody stands and in which steps the pressure is raised, as class A.

A test that only looks for leaks, with soap or by a gauge, is told from one that proves strength by its words
(leak, tightness, soap; not pressure test, strength or proof) and by its pressure, which it must say. It is let
be up to 25 psi(g), 1.72 bar(g), the most that 46 CFR 56.97-1(b)(3) gives a gas test that looks for large leaks
(verify before citing); and up to the rating of the parts tested, where they hold gas in service and each has
passed a strength test with water before (common practice, no source). Above that it is judged like a strength
test. Even so low it throws what is loose: blanks and plugs are held, and nobody stands before them.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Class, Record, bare_id
from garboard.records.inspection import PlanLine, Test
from garboard.records.procedure import Procedure, Use
from garboard.records.standing import has_left
from garboard.rules.tightness import (
    LOW,
    LOW_SHOWN,
    ROUNDING,
    highest_said,
    is_tightness,
    within_daily_work,
)

CODE = "air-test-unjustified"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True

GasTest = Test | PlanLine | Procedure
GAS = re.compile(r"\b(air|gas|nitrogen|argon|carbon dioxide|co2)\b", re.IGNORECASE)
PRESSURE_TEST = re.compile(
    r"\b(pressure|pneumatic|strength|proof|leaks?|leakage|tightness|soap|hydro\w*)\b", re.IGNORECASE
)
SORT = "(?:pressure |strength |proof |leak |leakage |tightness |soap )?"
SAYS_GAS = re.compile(
    rf"\bpneumatic {SORT}test"
    rf"|\b(?<!starting )(?<!starting-)(?:air|nitrogen) {SORT}test\b"
    r"|\btest(?:ed)? with (?:compressed )?(?:air|nitrogen|gas)\b",
    re.IGNORECASE,
)
REASONS = {
    "why not water": re.compile(r"\bwater\b", re.IGNORECASE),
    "the distance": re.compile(r"\bdistance\b|\b\d+(\.\d+)? m\b", re.IGNORECASE),
    "the steps": re.compile(
        r"\bsteps?\b.*\b(half|tenth)|\bhalf\b.*\btenths?\b", re.IGNORECASE | re.DOTALL
    ),
}


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every test record with gas, and at plan lines and procedures that ask for one."""
    for record, where, subject, words in _gas_tests(book):
        if has_left(record):
            continue
        tests = f"tests {subject}"
        if is_tightness(words):
            most = highest_said(book, record)
            if most and _low_enough(book, record, most[0]):
                continue
            tests = (
                f"tests for leaks {subject} at {most[1] if most else 'a pressure it does not name'}"
            )
        told = "\n".join(_words(one) for one in _told_in(book, record))
        missing = [name for name, pattern in REASONS.items() if not pattern.search(told)]
        if missing:
            text = f"{record.id} {tests} and does not say {' or '.join(missing)}"
            cure = "test with water, or state reason, distance and steps as class A"
            if is_tightness(words):
                cure = f"keep it to {LOW_SHOWN} or less and say so, {cure}"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))
        elif record.weight is not Class.A:
            text = f"{record.id} {tests} as class {record.weight}"
            cure = "make it class A, or test with water"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))


def _low_enough(book: Book, record: GasTest, pressure: float) -> bool:
    """Whether a search for leaks goes no higher than one of the two limits."""
    if pressure <= LOW * (1 + ROUNDING):
        return True
    return isinstance(record, Test) and within_daily_work(book, record, pressure)


def _gas_tests(book: Book) -> Iterator[tuple[GasTest, Where, str, str]]:
    """Records of a pressure test with gas: where they say so, with what, and the words it is told by."""
    for test in book.of_kind(Test):
        medium, what = test.medium or "", f"{test.what} {test.title}"
        if GAS.search(medium) and PRESSURE_TEST.search(what):
            yield test, test.place("medium"), f"with {medium}", what
    for line in book.of_kind(PlanLine):
        for name in ("activity", "method"):
            if found := SAYS_GAS.search(getattr(line, name) or ""):
                words = f"{line.activity} {line.method}"
                yield line, line.place(name), f"by `{found[0]}`", words
                break
    for procedure in book.of_kind(Procedure):
        words = f"{procedure.title}\n{procedure.purpose}"
        found = SAYS_GAS.search(words)
        if found and procedure.use is Use.TEST:
            yield procedure, procedure.place("title"), f"by `{found[0]}`", words


def _told_in(book: Book, record: Record) -> Iterator[Record]:
    """The record, and the plan line and procedure it follows."""
    yield record
    if isinstance(record, Test):
        for name in (record.line, record.procedure):
            if name and (other := book.records.get(bare_id(name))):
                yield other


def _words(record: Record) -> str:
    """What a record says of the way it is done."""
    said: list[str | None] = [record.text]
    if isinstance(record, Test):
        said += [record.line_up, record.deviations]
    elif isinstance(record, PlanLine):
        said += [record.method, record.reference, record.not_later]
    elif isinstance(record, Procedure):
        said += [record.purpose, record.basis, record.people, record.stop_if]
        said += [f"{step.do} {step.to or ''}" for step in record.steps]
    return "\n".join(filter(None, said))
