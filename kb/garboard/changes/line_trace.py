"""Whether two people traced the pipes of a system, and whether they are still joined as traced.

What no search found is worth no more than the drawing it searched. Only a line trace says that the
drawing is true, and it says so of the connections as they were that day.
"""

from dataclasses import dataclass

from garboard.book import Book
from garboard.records.inspection import Test
from garboard.records.proofs import is_proof
from garboard.records.signoff import Capacity, SignOff, Verdict, standing_objections
from garboard.review.canonical import SHORT
from garboard.systems.trace import connections_digest

__all__ = ["LINE_TRACE", "LineTrace", "line_trace"]

LINE_TRACE = "line trace"
"""What a test record says under `what` where it is one."""
AGAINST = (Verdict.OBJECT, Verdict.FINDING)


@dataclass(frozen=True, slots=True)
class LineTrace:
    """How far the connections of one system have been traced."""

    system: str
    digest: str
    """Of the connections as they are entered now; empty where there are none."""
    test: Test | None = None
    """The newest line trace that two people signed; None where there is none."""
    alone: Test | None = None
    """The newest passed line trace, where that is not signed by two."""

    @property
    def traced(self) -> bool:
        """Whether two people traced the connections as they are entered now."""
        return bool(self.digest) and self.test is not None and self.test.connections == self.digest


def line_trace(book: Book, system: str) -> LineTrace:
    """How far the connections of a system have been traced.

    The newest trace speaks. One that an older trace would fit better has been overtaken by it: the
    pipes were changed and changed back, and nobody looked at how.

    Args:
        book: The book.
        system: Code of the system.
    """
    surveyed = book.surveys.get(system)
    digest = connections_digest(surveyed.plant) if surveyed else ""
    traces = [
        one
        for one in book.of_kind(Test)
        if one.system == system and (one.what or "").casefold().strip() == LINE_TRACE
    ]
    passed = sorted((one for one in traces if is_proof(one) and one.on), key=_age)
    signed = [one for one in passed if _by_two(book, one)]
    last = signed[-1] if signed else None
    alone = passed[-1] if passed and passed[-1] is not last else None
    return LineTrace(system, digest, last, alone)


def _age(test: Test) -> tuple[str, str]:
    return (test.on.isoformat() if test.on else "", str(test.id))


def _by_two(book: Book, test: Test) -> bool:
    """Whether one person signed that they did it and another, of the record as it stands, that they did too."""
    if standing_objections(test.signed):
        return False
    reviewed = book.reviews[str(test.id)]
    believed = [each.line for each in reviewed.signatures if each.proof.believed]
    doers = {line.by for line in believed if line.capacity is Capacity.DOER}
    return any(
        line.capacity is Capacity.VERIFIER
        and doers - {line.by}
        and _fits(line, reviewed.cover.whole)
        for line in believed
    )


def _fits(line: SignOff, whole: str) -> bool:
    digest = line.digest or ""
    return len(digest) >= SHORT and whole.startswith(digest) and line.verdict not in AGAINST
