"""Lines of the inspection plan: which hold stands, what it is about, what it stops, what proves it."""

from collections.abc import Iterable, Iterator

from garboard.names import ADDRESS, IDENTIFIER, is_tag
from garboard.records.base import bare_id
from garboard.records.inspection import PlanLine, Point, Test
from garboard.records.standing import has_left, state_of
from garboard.records.work import WorkPackage

__all__ = ["is_open_hold", "is_tied", "parts_of", "tests_of"]


def is_open_hold(line: PlanLine) -> bool:
    """Whether work may not go on past it: a hold that nobody has released."""
    return line.point is Point.HOLD and not has_left(line) and state_of(line) != "released"


def tests_of(line: PlanLine, tests: Iterable[Test]) -> Iterator[Test]:
    """The tests of a line: those it names, and those that name it."""
    named = {bare_id(name) for name in line.record}
    for test in tests:
        if test.id in named or (test.line and bare_id(test.line) == line.id):
            yield test


def parts_of(line: PlanLine, tests: Iterable[Test]) -> frozenset[str]:
    """The components that a line is about: its criterion's, its activity's, those it affects, those tested."""
    found = {match["owner"] for match in ADDRESS.finditer(line.criterion or "")}
    found |= {bare_id(name) for name in line.affects}
    found |= set(IDENTIFIER.findall(line.activity or ""))
    for test in tests_of(line, tests):
        found |= {str(item.tag) for item in test.tested}
    return frozenset(name for name in found if is_tag(name))


def is_tied(work: WorkPackage, line: PlanLine) -> bool:
    """Whether a package and a line name each other, so that a hold stops the package."""
    return str(work.id) in map(bare_id, line.before) or str(line.id) in map(bare_id, work.holds)
