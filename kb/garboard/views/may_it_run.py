"""May a system be run, and under what limits: the answer in one sentence, and what it rests on.

The answer never says yes by itself. It says no, or under which condition, or that nothing entered
speaks against it; the person in charge decides.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.records.finding import Finding
from garboard.records.inspection import Review
from garboard.records.standing import has_left
from garboard.records.system import System
from garboard.views.at_once import WayIn
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.page import (
    AgainstIt,
    Block,
    Cell,
    DoFirst,
    Link,
    Paragraph,
    Run,
    Strong,
    WaysIn,
)
from garboard.views.tables import stands
from garboard.views.unfinished import unfinished

__all__ = ["Answer", "against_system", "answer_of", "answers_of", "may_it_run", "verdict"]

DECIDES = "This page can only say what was entered. The person in charge decides whether it runs."
NOT_YET = {
    "sketch": "No. It is a sketch: nothing of it may be relied on yet.",
    "building": "No. It is being built: not to be run.",
}
FOR_A_TEST = "Only for a test, with the people the test names."
NOT_PASSED = "Only if the person in charge says so: no review before start has been passed."
NOTHING_AGAINST = "Nothing that is entered speaks against it, within the limits of its review."
PASSED = ("passed", "limited")


@dataclass(frozen=True, slots=True)
class Answer:
    """Whether a system may be run, by what is entered."""

    system: System
    words: str
    """The answer in one sentence."""
    stops: int
    holds: int
    grave: tuple[Finding, ...]
    """Open findings of class A."""
    reviews: tuple[Review, ...]
    """Reviews before start that say under what limits, whether they have passed or not."""


def against_system(
    by_page: Mapping[str, tuple[Diagnostic, ...]], code: str
) -> tuple[Diagnostic, ...]:
    """The STOPs and HOLDs against anything of a system, each once.

    Args:
        by_page: What stands against each page, by id, tag and path.
        code: Of the system.
    """
    found = (one for about, items in by_page.items() if about[:2] == code for one in items)
    return tuple(
        dict.fromkeys(one for one in found if one.severity in (Severity.STOP, Severity.HOLD))
    )


def answers_of(book: Book, by_page: Mapping[str, tuple[Diagnostic, ...]]) -> Mapping[str, Answer]:
    """The answer for every system, by its code."""
    return {
        code: answer_of(book, system, against_system(by_page, code))
        for code, system in book.systems.items()
    }


def answer_of(book: Book, system: System, standing: tuple[Diagnostic, ...]) -> Answer:
    """Whether one system may be run.

    Args:
        book: The book.
        system: One of its systems.
        standing: The STOPs and HOLDs against anything of it.
    """
    own = [one for one in book.records.values() if one.system == system.code]
    grave = tuple(
        one
        for one in own
        if isinstance(one, Finding) and unfinished(book, one) and one.weight is Class.A
    )
    reviews = tuple(one for one in own if isinstance(one, Review) and not has_left(one))
    stops = sum(one.severity is Severity.STOP for one in standing)
    holds = len(standing) - stops
    passed = any(book.state(one) in PASSED for one in reviews)
    words = _words(str(system.status), stops, holds, grave, passed=passed)
    return Answer(system, words, stops, holds, grave, tuple(one for one in reviews if one.limits))


def _words(status: str, stops: int, holds: int, grave: tuple[Finding, ...], *, passed: bool) -> str:
    """The answer, the first that applies."""
    open_ones = "1 open safety finding" if len(grave) == 1 else f"{len(grave)} open safety findings"
    answers = (
        (status in NOT_YET, NOT_YET.get(status, "")),
        (stops > 0, f"No: {stops} STOP {'stands' if stops == 1 else 'stand'} against it."),
        (bool(grave), f"No: {open_ones}, to be cleared before pressure or sailing."),
        (status == "in test", FOR_A_TEST),
        (not passed, NOT_PASSED),
        (holds > 0, f"Only when the person in charge has looked at the {holds} HOLD against it."),
    )
    return next((words for applies, words in answers if applies), NOTHING_AGAINST)


def verdict(draft: Draft, answer: Answer) -> Iterator[Block]:
    """The first screen of what is open against a system.

    Args:
        draft: Its page.
        answer: Whether it may be run.
    """
    book = draft.book
    status, counts = str(answer.system.status).capitalize(), _counts(answer)
    some = answer.stops or answer.holds
    against: Run = Link(f"{draft.key}#standing", counts) if some else counts
    lines: list[Cell] = [(Strong(f"{status}: "), against)]
    if answer.grave:
        lines.append((Strong("Open safety findings: "), *_ids(answer)))
    for one in answer.reviews:
        which: Cell = (" (", Link(str(one.id), str(one.id)), _passed(book, one))
        lines.append((Strong("Limits: "), *cell(book, one.limits), *which))
    if not answer.reviews:
        lines.append((Strong("Limits: "), "no review before start names any"))
    yield DoFirst(answer.words, tuple(lines), numbered=False)
    yield AgainstIt()
    yield Paragraph((DECIDES,), quiet=True)


def _counts(answer: Answer) -> str:
    return f"{answer.stops} STOP, {answer.holds} HOLD"


def _ids(answer: Answer) -> Iterator[Run]:
    for number, one in enumerate(answer.grave):
        yield ", " if number else ""
        yield Link(str(one.id), str(one.id))


def _passed(book: Book, review: Review) -> str:
    state = stands(book, review)
    return f", {state})" if book.state(review) in PASSED else f", {state}: not passed)"


def may_it_run(draft: Draft, answers: Mapping[str, Answer]) -> None:
    """The register of the whole vessel: one target a system, with its answer.

    Args:
        draft: Its page.
        answers: By code of the system.
    """
    ways = []
    for answer in answers.values():
        folder = answer.system.folder.rsplit("/", 1)[-1]
        about = (
            f"{answer.system.status}; {_counts(answer)}; open safety findings: {len(answer.grave)}"
        )
        link = Link(f"{folder}/open-against-it", answer.system.title)
        ways.append(WayIn(link, answer.words, (about,)))
    if ways:
        draft.add(WaysIn(tuple(ways), close=True))
    else:
        draft.add(Paragraph(("No system is recorded.",)))
    draft.add(AgainstIt(), Paragraph((DECIDES,), quiet=True))
