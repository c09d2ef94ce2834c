"""The page of a change notice, and of a finding, as a reader finds them."""

from pathlib import Path

import pytest

from garboard.handbook import Handbook, read
from garboard.views.page import Block, Bullets, Facts, Fold, Heading, Paragraph, Table
from garboard.views.runs import plain
from tests.changes.test_touched import PLANT
from tests.demo_site import demo_handbook
from tests.golden_case import Case


@pytest.fixture(scope="module")
def demo() -> Handbook:
    return demo_handbook()


def blocks(book: Handbook, key: str) -> tuple[Block, ...]:
    (page,) = (one for one in book.pages if one.key == key)
    return page.blocks


def table(found: tuple[Block, ...], caption: str) -> list[list[str]]:
    (one,) = (block for block in found if isinstance(block, Table) and block.caption == caption)
    return [[plain(cell) for cell in row.cells] for row in one.rows]


def said(found: tuple[Block, ...]) -> list[str]:
    return [plain(block.runs) for block in found if isinstance(block, Paragraph)]


def changed(folder: Path, head: str, **files: str) -> tuple[Block, ...]:
    text = f"---\nid: SA-CN-001\ntitle: Higher\nsystem: SA\n{head}\n---\nx\n"
    case = Case("", "", "", {**PLANT, "log/2031/2031-03-16-a.md": text, **files}, "")
    return blocks(read(case.write(folder)), "SA-CN-001")


def test_a_value_stands_before_after_and_today_with_who_moved_it(demo: Handbook) -> None:
    rows = table(blocks(demo, "SA-CN-002"), "Values that it moves")

    assert rows == [
        ["SA-PS-001.set", "15 bar(g)", "18 bar(g)", "18 bar(g)", "volunteer, 20 April 2031"]
    ]


def test_what_it_does_to_safety_stands_before_what_it_reaches(demo: Handbook) -> None:
    found = blocks(demo, "SA-CN-001")
    first, *rest = (block for block in found if isinstance(block, Facts))

    assert found[0] is first
    assert [(label, plain(line)) for label, line in first.rows] == [
        ("what it does to safety", "a weld on a pressure vessel; done wrong it kills"),
        ("why", "SA-FN-013"),
    ]
    assert not {"safety", "basis"} & {label for facts in rest for label, _ in facts.rows}


def test_a_list_names_each_record_by_id_and_title(demo: Handbook) -> None:
    names = [row[0] for row in table(blocks(demo, "dc-power/faults"), "Faults")]

    assert names == ["DC-FT-001 Everything is dark", "DC-FT-002 Batteries do not charge"]


def test_what_nobody_looked_at_stands_first_and_is_counted(tmp_path: Path) -> None:
    head = (
        "class: B\nstate: installed\ninstalled: 2031-04-20\nprocedures: [SA-AL-001]\nlooked_at: [SW-1]\n"
        "values: {SA-PS-001.set: {before: 12 bar(g), after: 15 bar(g)}}"
    )

    found = changed(tmp_path, head)

    rows = table(found, "Reached")
    assert [row[0].split(" ")[0].strip(",") for row in rows[:3]] == [
        "SA-PR-001",
        "SA-TR-001",
        "SW-3",
    ]
    assert {row[3] for row in rows[:3]} == {"not yet looked at"}
    cards = [row[0] for row in rows if row[1] == "card"]
    assert cards == ["K-01, hangs at: panel; day of printing not recorded"]
    assert ["SW-1 pressure switch", "spare", "SA-PS-001", "looked at, needs no change"] in rows
    counted = "7 things: 3 named in this notice, 1 looked at and in need of no change, 3 not yet looked at."
    assert counted in said(found)


def test_what_was_looked_at_and_is_not_reached_is_told_apart(tmp_path: Path) -> None:
    head = "class: B\nlooked_at: [SW-9, SA-PR-002]\nvalues: {SA-PS-001.set: {before: 12 bar(g), after: 15 bar(g)}}"

    found = changed(tmp_path, head)

    assert (
        "Looked at as well, though nothing that is entered leads there: SW-9, SA-PR-002."
        in said(found)
    )


def test_a_class_that_was_raised_says_why(tmp_path: Path) -> None:
    head = "class: C\nin_kind: {rating: 20 A, fails: {before: open, after: shut}}"

    found = changed(tmp_path, head)

    assert said(found)[0] == "Class C as written, counts as B: fails differs (open, then shut)."
    rows = {row[0]: row[1:] for row in table(found, "Attributes compared")}
    assert rows["fails"] == ["open", "shut", "differs"]
    assert rows["rating"] == ["20 A", "20 A", "alike"]
    assert rows["size"] == ["not compared", "", "not compared"]
    facts = [row for block in found if isinstance(block, Facts) for row in block.rows]
    assert ("class", ("C, minor or in kind; counts as B",)) in facts


def test_a_change_in_kind_folds_what_nobody_is_asked_to_look_at(tmp_path: Path) -> None:
    found = changed(tmp_path, "class: C\naffects: [SA-HV-001]\nin_kind: {rating: 20 A}")

    assert [block.title for block in found if isinstance(block, Fold)] == [
        "What it reaches (2); in kind, nobody is asked to look at it"
    ]


def test_voided_proof_stands_beside_what_takes_its_place(demo: Handbook) -> None:
    assert table(blocks(demo, "SA-CN-003"), "Tests") == [
        ["SA-TR-004", "First proof of the compressor stop switch", "3 March 2031", "incomplete", "voided"],
        ["SA-TR-009", "First line trace", "25 February 2031", "pass", "voided"],
        ["SA-TR-014", "Stop switch, high alarm and trip", "22 April 2031", "pass", "takes its place"],
        ["SA-TR-013", "Second line trace", "26 April 2031", "pass", "takes its place"],
    ]  # fmt: skip


def test_whoever_was_shown_a_reached_procedure_is_listed_by_role(tmp_path: Path) -> None:
    found = changed(tmp_path, "class: B\naffects: [SA-PR-001]")

    assert table(found, "Shown") == [
        ["volunteer", "SA-PR-001", "alone", "revision 0, it is 0", "not recorded"]
    ]


def test_the_first_words_come_first_and_to_the_letter(tmp_path: Path) -> None:
    words = "At [12 bar(g)](value:SA-PS-001.set) SA-PS-001 was silent"
    text = f'---\nid: SA-FN-001\ntitle: Silent\nsystem: SA\nwords: "{words}"\n---\nx\n'

    found = blocks(
        read(Case("", "", "", {**PLANT, "log/2031/2031-03-09-f.md": text}, "").write(tmp_path)),
        "SA-FN-001",
    )

    assert said(found)[0] == f"\u201c{words}\u201d"


def test_an_open_immediate_danger_stands_above_even_the_words(tmp_path: Path) -> None:
    head = "id: SA-FN-001\ntitle: Silent\nsystem: SA\nwords: It is silent.\ndanger: immediate\n"
    interim = "interim: {measure: man at the lever, by: lead, on: 2031-03-09}\n"

    def first(more: str) -> str:
        files = {**PLANT, "log/2031/2031-03-09-f.md": f"---\n{head}{more}---\nx\n"}
        return said(blocks(read(Case("", "", "", files, "").write(tmp_path)), "SA-FN-001"))[0]

    measure = "man at the lever (lead builder, 9 March 2031)"
    assert first(interim) == f"Danger now. Until it is put right: {measure}"
    assert first("") == "Danger now, and nothing that keeps people safe is recorded."
    assert first(f"{interim}state: closed\n") == "\u201cIt is silent.\u201d"


def test_what_happened_since_stands_step_by_step_by_role(demo: Handbook) -> None:
    rows = table(blocks(demo, "BG-FN-003"), "Step by step")

    assert [row[:3] for row in rows] == [
        ["20 May 2031", "raised", "volunteer"],
        ["22 May 2031", "refused", "remote reviewer, flooding and electrics, approver"],
        ["18 June 2031", "raised again", "volunteer, any hand"],
        ["19 June 2031", "accepted", "lead builder, in charge"],
    ]
    assert rows[1][3].startswith("\u201cThe loop stands higher than any wave in harbour.")


def test_an_action_that_is_overdue_is_named(demo: Handbook) -> None:
    (late,) = (one for one in blocks(demo, "BG-FN-003") if isinstance(one, Bullets) and "Overdue" in plain(one.items[0]))  # fmt: skip

    assert plain(late.items[0]) == "Overdue: BG-CA-002 was due 15 September 2031 and is agreed"


def test_where_else_counts_in_words_and_names_each_part(demo: Handbook) -> None:
    closed, accepted = blocks(demo, "SA-FN-010"), blocks(demo, "DC-FN-001")

    assert "Looked at 3 of 6 parts of the same kind, 3 not, with a reason." in said(closed)
    became = {
        row[0].split(" ")[0]: row[3] for row in table(closed, "Parts where the same could be")
    }
    assert became["SA-PS-001"] == "found there too"
    assert became["SA-PS-004"].startswith("not looked at: added by SA-CN-003")
    assert (
        "Looked at 4 of 21 parts of the same kind, 15 not, with a reason; 2 not looked at and no reason given."
        in said(accepted)
    )


def test_the_register_keeps_who_was_refused_first_and_right_after_all(demo: Handbook) -> None:
    rows = table(blocks(demo, "registers/findings"), "Said no, then yes")

    (row,) = (one for one in rows if one[0].startswith("BG-FN-003"))
    assert row[1].startswith("remote reviewer, flooding and electrics, 22 May 2031: ")
    assert row[2:] == ["volunteer, 18 June 2031", "lead builder, 19 June 2031", "volunteer"]


def test_who_caught_what_leaves_out_what_was_refused_and_names_no_key(demo: Handbook) -> None:
    found = blocks(demo, "registers/who-caught-what")

    rows = table(found, "Caught by: volunteer")
    headings = [block.text for block in found if isinstance(block, Heading)]
    assert f"volunteer: {len(rows)} findings" in headings
    assert any(row[0].startswith("BG-FN-003") for row in rows)
    assert not any(row[0].startswith("SA-FN-011") for row in rows)
    assert ["SA-TR-009 First line trace", "SA-FN-010"] in table(found, "Escaped")
    assert not any(key in str(found) for key in ("volunteer-1", "reviewer-1", "reviewer-2"))


def test_three_findings_of_one_cause_ask_for_a_lesson_until_one_is_taught(tmp_path: Path) -> None:
    asked = "Three findings or more, one cause, no lesson"
    files = {
        f"log/2031/2031-03-0{n}-f.md": f"---\nid: SA-FN-00{n}\ntitle: F\nsystem: SA\ncause: {cause}\n---\nx\n"
        for n, cause in ((1, "short run"), (2, "Short run"), (3, "short-run"), (4, "other"))
    }
    lesson = "---\nid: SA-LL-001\ntitle: Tap\nsystem: SA\nevent: [SA-FN-002]\ninto: [SA-PR-001]\n---\nx\n"

    before = read(Case("", "", "", {**PLANT, **files}, "").write(tmp_path))
    assert table(blocks(before, "registers/lessons"), asked) == [
        ["short run", "SA-FN-001, SA-FN-002, SA-FN-003", "3"]
    ]

    taught = {**PLANT, **files, "log/2031/2031-04-01-l.md": lesson}
    after = read(Case("", "", "", taught, "").write(tmp_path))
    assert table(blocks(after, "registers/lessons"), asked) == []
    (row,) = table(blocks(after, "registers/lessons"), "Lessons, newest first")
    assert row[4] == "SA-PR-001"


def test_the_demo_tells_a_promoted_class_and_a_page_reviewed_in_part_on_purpose(
    demo: Handbook,
) -> None:
    held = [one.about for one in demo.diagnostics if one.code == "not-in-kind"]
    (partly,) = (one for one in demo.pages if one.key == "DC-CL-001")

    assert "DC-CN-003" in held
    assert partly.review.words == (
        "PARTLY REVIEWED 24 June 2031. Not checked: loss by age in the maker's table."
    )


def test_a_lapsed_page_says_what_moved_and_what_else_hangs_on_that(demo: Handbook) -> None:
    found = blocks(demo, "SA-AL-001")

    moved = table(found, "Moved")
    hangs = [row[:2] for row in table(found, "What else hangs on what moved")]

    assert moved == [
        ["SA-PS-001.set", "15 bar(g)", "18 bar(g)"],
        ["low-air-margin.left", "0.753", "1.51"],
    ]
    assert hangs[0] == ["decision", "SA-DD-003 Low-air switch on each receiver"]
    assert ["procedure", "SA-PR-007 Prove the pressure switches"] in hangs
    assert ["test", "SA-TR-016 Low-air switches after five months"] in hangs
    assert ["card", "K-01, hangs at start-air panel"] in hangs


def test_a_page_whose_review_stands_says_nothing_of_the_sort(demo: Handbook) -> None:
    found = blocks(demo, "SA-AL-002")

    assert not [one for one in found if isinstance(one, Table) and one.caption == "Moved"]
