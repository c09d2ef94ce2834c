"""A pressure test with air or gas does not say why not water, from what distance, in what steps.

Why: air at test pressure holds some hundred times the energy of water, and lets it go all at
once. 46 CFR 54.10-15 (2004) (verify before citing) allows a gas test where water cannot be used,
raised to half the pressure and then by tenths.

Fix: test with water; or say in the test, its plan line or its procedure why water cannot be used,
at what distance everybody stands and in which steps the pressure is raised, as class A.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Class, Record, bare_id
from garboard.records.inspection import PlanLine, Test
from garboard.records.procedure import Procedure, Use
from garboard.records.standing import has_left

CODE = "air-test-unjustified"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True

GAS = re.compile(r"\b(air|gas|nitrogen|argon|carbon dioxide|co2)\b", re.IGNORECASE)
PRESSURE_TEST = re.compile(
    r"\b(pressure|pneumatic|strength|proof|leak|tightness|hydro\w*)\b", re.IGNORECASE
)
SAYS_GAS = re.compile(
    r"\bpneumatic (?:pressure |strength |proof )?test"
    r"|\b(?<!starting )(?<!starting-)(?:air|nitrogen) (?:pressure |strength |proof )?test\b"
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
    for record, where, subject in _gas_tests(book):
        if has_left(record):
            continue
        told = "\n".join(_words(one) for one in _told_in(book, record))
        missing = [name for name, pattern in REASONS.items() if not pattern.search(told)]
        if missing:
            text = f"{record.id} tests {subject} and does not say {' or '.join(missing)}"
            cure = "test with water, or state reason, distance and steps as class A"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))
        elif record.weight is not Class.A:
            text = f"{record.id} tests {subject} as class {record.weight}"
            cure = "make it class A, or test with water"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))


def _gas_tests(book: Book) -> Iterator[tuple[Record, Where, str]]:
    """Records of a pressure test with gas, where they say so, and with what."""
    for test in book.of_kind(Test):
        medium, what = test.medium or "", f"{test.what} {test.title}"
        if GAS.search(medium) and PRESSURE_TEST.search(what):
            yield test, test.place("medium"), f"with {medium}"
    for line in book.of_kind(PlanLine):
        for name in ("activity", "method"):
            if found := SAYS_GAS.search(getattr(line, name) or ""):
                yield line, line.place(name), f"by `{found[0]}`"
                break
    for procedure in book.of_kind(Procedure):
        found = SAYS_GAS.search(f"{procedure.title}\n{procedure.purpose}")
        if found and procedure.use is Use.TEST:
            yield procedure, procedure.place("title"), f"by `{found[0]}`"


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
