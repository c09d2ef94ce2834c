"""A question to the layout is passed only where two people traced the lines that are entered now."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.rules.judge import judge
from garboard.systems.finding import About, Level, PathFinding
from garboard.systems.survey import NOT_CHECKED
from garboard.views.asked import asked_drafts, asked_line
from garboard.views.draft import Draft
from garboard.views.line_trace import trace_words
from garboard.views.locked_valves import locked_valves
from garboard.views.page import Paragraph, Table
from garboard.views.path_findings import path_findings_draft
from garboard.views.runs import plain
from tests.traced_plant import (
    BY_TWO,
    CUT_OFF,
    MOVED,
    RUNS,
    TRACE,
    layout_rule,
    traced,
    with_findings,
)

RULES = (
    layout_rule("relief-cut-off", "Does every vessel keep its relief valve?"),
    layout_rule("switch-cut-off", "Can each gauge be cut off?"),
    layout_rule("dead-head", "Has every pump a way out?"),
)
BY_TWO_PEOPLE = "lines traced by two people on 26 April 2031 (SA-TR-013)"
OTHERS = {"did it alone": BY_TWO[:1], "nobody did it": BY_TWO[1:]}


def rows_of(blocks: Iterable[object], caption: str) -> list[tuple[str, ...]]:
    """The rows of one table, as bare words."""
    tables = [one for one in blocks if isinstance(one, Table) and one.caption == caption]
    return [tuple(plain(cell) for cell in row.cells) for one in tables for row in one.rows]


def about(tag: str) -> About:
    """A part of the starting air."""
    return replace(CUT_OFF.of, name=tag)


def answers(book: Book) -> dict[str, str]:
    """Question and answer of every question on the page of the starting air."""
    page = next(iter(asked_drafts(book, RULES, judge(book, RULES))))
    return {question: answer for question, answer, _ in rows_of(page.blocks, "Questions")}


def test_where_two_people_traced_the_lines_no_finding_is_a_pass(tmp_path: Path) -> None:
    book = with_findings(traced(tmp_path))

    assert answers(book) == {
        "Does every vessel keep its relief valve?": f"no cut-off found; {BY_TWO_PEOPLE}",
        "Can each gauge be cut off?": f"no cut-off found; {BY_TWO_PEOPLE}",
        "Has every pump a way out?": f"nothing found; {BY_TWO_PEOPLE}",
    }


def test_a_changed_connection_takes_every_pass_away(tmp_path: Path) -> None:
    book = with_findings(traced(tmp_path, then=RUNS, now=MOVED))

    assert trace_words(book, "SA") == (
        "lines traced on 26 April 2031 (SA-TR-013), connections changed since"
    )
    assert all(answer.endswith(": no pass") for answer in answers(book).values())


@pytest.mark.parametrize("by", OTHERS.values(), ids=OTHERS)
def test_one_person_traces_nothing(by: tuple[str, ...], tmp_path: Path) -> None:
    book = with_findings(traced(tmp_path, by=by))

    assert trace_words(book, "SA") == "lines not traced: SA-TR-013 is not signed by two people"
    assert all(answer.endswith(": no pass") for answer in answers(book).values())


@pytest.mark.parametrize(
    ("was", "now"),
    [
        ("by: volunteer-2", "by: volunteer-1"),
        ("digest: DIGEST", "digest: 0123456789abcdef"),
        (", digest: DIGEST", ""),
        ("digest: DIGEST", "digest: DIGEST, verdict: object, words: the drain is not drawn"),
        ("digest: DIGEST", "digest: DIGEST, verdict: finding"),
        ("capacity: verifier", "capacity: witness"),
    ],
    ids=lambda text: text,
)
def test_a_second_signature_that_does_not_fit_is_none(was: str, now: str, tmp_path: Path) -> None:
    by = tuple(line.replace(was, now) for line in BY_TWO)
    assert by != BY_TWO

    book = traced(tmp_path, by=by)

    assert trace_words(book, "SA").startswith("lines not traced")


def test_an_objection_of_anybody_ends_the_trace(tmp_path: Path) -> None:
    said = (
        "{capacity: any hand, by: volunteer-2, on: 2031-05-01, verdict: object, words: a tee more}"
    )

    book = traced(tmp_path, by=(*BY_TWO, said))

    assert trace_words(book, "SA").startswith("lines not traced")


@pytest.mark.parametrize(
    ("was", "now"),
    [
        ("result: pass", "result: fail"),
        ("state: complete", "state: void"),
        ("what: line trace", "what: tightness test"),
        ("system: SA", "system: BG"),
    ],
    ids=lambda text: text,
)
def test_a_record_that_is_no_passed_line_trace_traces_nothing(
    was: str, now: str, tmp_path: Path
) -> None:
    book = traced(tmp_path, trace=TRACE.replace(was, now))

    assert trace_words(book, "SA") == "lines not traced"


def test_a_trace_that_does_not_say_of_what_is_no_pass(tmp_path: Path) -> None:
    book = traced(tmp_path, trace=TRACE.replace("connections: CONNECTIONS\n", ""))

    assert trace_words(book, "SA").endswith("(SA-TR-013), which connections is not said")


def test_what_could_not_be_read_takes_the_pass_away(tmp_path: Path) -> None:
    runs = (*RUNS, "AR-001.out > HV-002.top")
    book = with_findings(traced(tmp_path, then=runs, now=runs))

    assert trace_words(book, "SA") == BY_TWO_PEOPLE
    assert set(answers(book).values()) == {
        "no cut-off found in what could be read; 1 fault in the connections: no pass",
        "nothing found in what could be read; 1 fault in the connections: no pass",
    }


def test_what_was_found_is_counted_by_level_beside_the_question(tmp_path: Path) -> None:
    more = replace(CUT_OFF, level=Level.NOTE, of=about("SA-PS-001"))
    worst = replace(CUT_OFF, level=Level.DANGER, of=about("SA-PS-002"))
    book = with_findings(
        traced(tmp_path), worst, CUT_OFF, more, replace(more, of=about("SA-PS-003"))
    )

    assert answers(book)["Can each gauge be cut off?"] == "4 found: 1 danger, 1 warning, 2 notes"


def test_the_report_says_the_same_in_one_line(tmp_path: Path) -> None:
    clean = with_findings(traced(tmp_path / "clean"))
    moved = with_findings(traced(tmp_path / "moved", now=MOVED), CUT_OFF)

    said = asked_line(clean, RULES, "SA"), asked_line(moved, RULES, "SA")

    assert said[0].startswith(
        f"SA Starting air: 3 questions to the layout, nothing found; {BY_TWO_PEOPLE} ("
    )
    assert "1 found: 1 warning; lines traced on 26 April 2031" in said[1]
    assert ", connections changed since: no pass (connections " in said[1]
    assert "nothing was asked" in asked_line(
        with_findings(traced(tmp_path / "none", now=())), RULES, "SA"
    )


def test_every_such_page_says_what_was_not_checked(tmp_path: Path) -> None:
    book = with_findings(traced(tmp_path), CUT_OFF)
    found = judge(book, RULES)

    pages = [*asked_drafts(book, RULES, found), path_findings_draft(book, found)]

    assert len(pages) > 1
    assert all(Paragraph((NOT_CHECKED,), quiet=True) in page.blocks for page in pages)


FINDING_ROW = (
    "warning",
    "SA-PI-001",
    CUT_OFF.text,
    "SA-HV-003 shut",
    "switch-cut-off",
    CUT_OFF.fingerprint,
)


def test_the_register_has_each_finding_with_its_fingerprint_and_who_accepts_it(
    tmp_path: Path,
) -> None:
    book = with_findings(traced(tmp_path), CUT_OFF)
    found = judge(book, RULES)
    conceded = [replace(one, conceded_by="SA-CO-001") for one in found]

    stands = path_findings_draft(book, found)
    accepted = path_findings_draft(book, conceded)

    assert rows_of(stands.blocks, "Starting air") == [(*FINDING_ROW, "nobody")]
    assert rows_of(accepted.blocks, "Starting air") == [(*FINDING_ROW, "SA-CO-001")]


def locked(book: Book) -> list[tuple[str, ...]]:
    """The rows of the register of locked valves."""
    draft = Draft(book, "registers/locked-valves", "Locked valves", "register")
    locked_valves(draft)
    return rows_of(draft.blocks, "Locked valves")


def test_the_register_of_locked_valves_says_what_hangs_on_each(tmp_path: Path) -> None:
    book = with_findings(traced(tmp_path), CUT_OFF)

    held, free = locked(book)

    assert held == (
        "SA-HV-003 stop valve, at the gauge",
        "open",
        "seal 7",
        "not recorded",
        "watch",
        "switch-cut-off of SA-PI-001",
        "none",
        "26 April 2031, SA-TR-013",
    )
    assert free[2:] == (
        "not recorded",
        "not recorded",
        "none",
        "nothing: it counts as free",
        "none",
        "not recorded",
    )


def test_a_lock_on_which_nothing_hangs_says_so(tmp_path: Path) -> None:
    other: PathFinding = replace(CUT_OFF, locks=())

    assert locked(with_findings(traced(tmp_path), other))[0][5] == "nothing was found to"
