"""Rounds, due lists, spares, safety devices, locked valves and assemblies, as pages of the demo."""

from pathlib import Path

import pytest

from garboard.handbook import Handbook, read
from garboard.views.log_sheet import LogSheet
from garboard.views.page import Bullets, Facts, Heading, Paragraph, Row, Table
from garboard.views.rounds import round_drafts
from garboard.views.runs import Link, Plate, Strong, plain
from tests.demo_site import DEMO
from tests.golden_case import BASE, lay_out


@pytest.fixture(scope="module")
def demo() -> Handbook:
    """The demo, read once."""
    return read(DEMO)


def _blocks(demo: Handbook, key: str, kind: type) -> list:  # type: ignore[type-arg]
    page = next(page for page in demo.pages if page.key == key)
    return [block for block in page.blocks if isinstance(block, kind)]


def _row(demo: Handbook, key: str, anchor: str) -> Row:
    tables: list[Table] = _blocks(demo, key, Table)
    return next(row for table in tables for row in table.rows if row.anchor == anchor)


def test_the_round_of_the_vessel_has_every_stop_of_its_systems_once(demo: Handbook) -> None:
    [sheet] = _blocks(demo, "rounds/sea-watch", LogSheet)
    walked = [run.tag for line in sheet.lines for run in line.stop if isinstance(run, Plate)]

    asked = [
        str(stop.tag)
        for system in demo.book.systems.values()
        for one in (system.rounds or {}).values()
        for stop in one.order
    ]
    assert sorted(walked) == sorted(asked)
    assert walked[0] == "DC-EI-002", "the wheelhouse comes first on the way"
    assert walked[-1] == "BG-BW-003", "and the aft peak last"


def test_a_band_is_drawn_from_the_values_of_the_book(demo: Handbook) -> None:
    [sheet] = _blocks(demo, "starting-air/watch-rounds", LogSheet)

    assert plain(sheet.lines[0].band) == "18 bar(g) to 30 bar(g)"
    assert all(len(line.due) == 6 for line in sheet.lines)


def test_what_is_done_if_not_is_a_link_with_its_title(demo: Handbook) -> None:
    [sheet] = _blocks(demo, "starting-air/watch-rounds", LogSheet)
    links = [run for run in sheet.lines[0].if_not if isinstance(run, Link)]

    assert [(one.target, one.text) for one in links] == [
        ("SA-AL-001", "SA-AL-001 Low starting air")
    ]


def _table(demo: Handbook, key: str, caption: str) -> list[list[str]]:
    tables: list[Table] = _blocks(demo, key, Table)
    (found,) = (one for one in tables if one.caption == caption)
    return [[plain(cell) for cell in row.cells] for row in found.rows]


def test_an_assembly_says_how_tight_in_which_order_and_what_is_renewed(demo: Handbook) -> None:
    joints = _table(demo, "starting-air/how-to-rebuild-it", "Joints")
    [ready, *_] = [
        [plain(item) for item in one.items]
        for one in _blocks(demo, "starting-air/how-to-rebuild-it", Bullets)
        if "SK-AIR-106" in plain(one.items[0])
    ]

    assert joints[0][:3] == [
        "SA-AR-001 cover of the top boss",
        "8 studs M16; holds pressure",
        "140 N.m +/- 10 N.m",
    ]
    assert joints[0][3].startswith("crosswise")
    assert joints[0][3].endswith("threads oiled with engine oil")
    assert ready[0].endswith("renewed each time")


def test_parts_that_are_closed_alike_share_a_row_with_their_clearances(demo: Handbook) -> None:
    gaps = _table(demo, "bilge-fire/how-to-rebuild-it", "Clearances")

    assert [row[0] for row in gaps] == [
        "BG-SN-001 BG-SN-002 BG-SN-003 loose disc, along its spindle",
        "BG-SN-001 BG-SN-002 BG-SN-003 spindle in its bush",
    ]
    assert gaps[0][1:3] == ["1.0 mm +/- 0.3 mm", "2.0 mm"]


def test_a_torque_is_a_number_of_the_book_with_its_source(demo: Handbook) -> None:
    torque = demo.book.values["SA-AR-001.top_boss.torque"]

    assert (torque.text, [one.source for one in torque.sources]) == ("140 N.m", ["sheet-AR"])


def test_a_round_of_one_system_has_no_second_page(demo: Handbook) -> None:
    assert [draft.key for draft in round_drafts(demo.book)] == ["rounds/sea-watch"]


def test_the_due_list_tells_overdue_days_in_words_and_first(demo: Handbook) -> None:
    tasks: Table = _blocks(demo, "registers/due", Table)[0]

    assert tasks.rows[0].anchor == "SA-MT-001"
    assert Strong("overdue 31 days") in tasks.rows[0].cells[5]
    lates = [any(isinstance(run, Strong) for run in row.cells[5]) for row in tasks.rows]
    assert lates == sorted(lates, reverse=True)


def test_a_task_says_whether_its_parts_are_aboard(demo: Handbook) -> None:
    parts = plain(_row(demo, "registers/due", "SA-MT-002").cells[6])

    assert parts == "SK-AIR-101 relief valve for receivers: 1 aboard, enough"


def test_the_due_list_has_hoses_and_instruments_and_what_runs_out(demo: Handbook) -> None:
    assert plain(_row(demo, "registers/due", "HY-HS-003").cells[4]) == "overdue 153 days"
    assert plain(_row(demo, "registers/due", "P-05").cells[4]) == "overdue 1 day"
    assert plain(_row(demo, "registers/due", "BG-TM-001").cells[4]) == "overdue 30 days"
    rows = sum(len(table.rows) for table in _blocks(demo, "registers/due", Table))
    assert rows <= 200


def test_a_task_tells_how_it_was_found_and_which_way_it_goes(demo: Handbook) -> None:
    history: Table = _blocks(demo, "BG-MT-001", Table)[0]
    [trends] = [
        block for block in _blocks(demo, "BG-MT-001", Bullets) if "draws" in plain(block.items[0])
    ]

    assert history.caption == "Done 2 times"
    assert plain(history.rows[0].cells[0]) == "24 September 2031", "the newest first"
    assert plain(trends.items[0]).startswith("aft peak until it draws: it rises: 120 s")
    assert plain(trends.items[1]).startswith("fore hold until it draws: it has not moved")


def test_a_spare_below_its_least_stands_out_and_is_counted_by_place(demo: Handbook) -> None:
    row = _row(demo, "registers/spares", "SK-AIR-105")
    place = next(table for table in _blocks(demo, "registers/spares", Table) if row in table.rows)

    assert place.caption == "Engine store, hook 2"
    assert [column.title for column in place.columns][5] == "counted"
    assert Strong("none aboard, 1 needed") in row.cells[6]


def test_a_relief_valve_shows_its_margin_and_leads_to_its_last_test(demo: Handbook) -> None:
    row = _row(demo, "registers/safety-devices", "SA-RV-002")
    tests = [run for run in row.cells[5] if isinstance(run, Link)]

    assert plain(row.cells[3]) == "33 bar(g)"
    assert plain(row.cells[4]) == "0.1 bar(d)"
    assert tests[0].target == "SA-TR-006"
    assert "instrument in calibration" in plain(row.cells[5])


def test_a_failed_last_test_of_a_device_stands_out(demo: Handbook) -> None:
    row = _row(demo, "registers/safety-devices", "SA-PS-002")

    assert Strong("fail") in row.cells[5]


def test_a_locked_valve_shows_its_key_and_links_the_round_that_stops_at_it(demo: Handbook) -> None:
    cells = _row(demo, "registers/locked-valves", "BG-HV-010").cells

    assert "spare seal" in plain(cells[3])
    assert Link("bilge-fire/watch-rounds", "sea watch") in cells[4]
    assert "BG-CO-001" in plain(cells[6])


def test_an_assembly_is_framed_and_its_text_stays_as_it_is(demo: Handbook) -> None:
    page = next(page for page in demo.pages if page.key == "starting-air/how-to-rebuild-it")
    written = next(
        one.text for one in demo.book.content.pages if one.where.path == page.source_path
    )
    said = "".join(getattr(block, "text", "") for block in page.blocks)
    shown = [
        plain(item) for block in page.blocks if isinstance(block, Bullets) for item in block.items
    ]

    assert written.strip() in said
    told = [one.source for one in page.messages]
    assert told == ["SA-HZ-001", "SA-HZ-003", "SA-HZ-006"], (
        "the last by a step of a procedure it names"
    )
    assert any("In force: SA-PR-005" in line for line in shown)
    assert any(line.startswith("SA-IT-004 ") and "last SA-TR-002" in line for line in shown)
    assert any(
        isinstance(block, Paragraph) and "licensed" in plain(block.runs) for block in page.blocks
    )


PLAN = {
    "handbook.yml": BASE["handbook.yml"]
    + """milestones:
  no-day: {needs: [SA-WP-001]}
  first-start:
    what: the engine turns
    by: 2031-09-01
    needs: [SA-WP-001, crew trained]
  done-with: {by: 2031-08-01, needs: [SA-WP-003]}
""",
    **{
        f"systems/starting-air/SA-WP-00{number}.md": (
            f"---\nid: SA-WP-00{number}\ntitle: Work {number}\nsystem: SA\nclass: C\n"
            f"author: lead\nmakes_true: it holds\ndone_means: one sees it\n{rest}---\n"
        )
        for number, rest in (
            (1, "needs: [SA-WP-002, SA-WP-003]\n"),
            (2, "needs: [a pipe]\n"),
            (3, "state: complete\n"),
        )
    },
}


def test_a_milestone_lists_all_that_must_be_done_before_it_the_first_first(tmp_path: Path) -> None:
    lay_out(tmp_path, PLAN)

    made = read(tmp_path)

    headings = [one.text for one in _blocks(made, "registers/milestones", Heading)]
    assert headings == ["Done with", "First start", "No day"]
    facts = [dict(one.rows) for one in _blocks(made, "registers/milestones", Facts)]
    assert plain(facts[0]["stands"]) == "All of it is done."
    assert plain(facts[1]["by"]) == "1 September 2031, which is past"
    assert plain(facts[1]["stands"]) == "4 of 5 things are not done or not known to be."
    table = _blocks(made, "registers/milestones", Table)[1]
    assert [tuple(map(plain, row.cells)) for row in table.rows] == [
        ("a pipe", "not known here: go and see", "", "SA-WP-002"),
        ("SA-WP-002 Work 2", "outlined", "nothing that is known here", "SA-WP-001"),
        ("SA-WP-003 Work 3", "done: complete", "", "SA-WP-001"),
        ("SA-WP-001 Work 1", "outlined", "finish SA-WP-002 first", "the milestone itself"),
        ("crew trained", "not known here: go and see", "", "the milestone itself"),
    ]


def test_work_that_needs_itself_in_a_ring_is_still_listed_once(tmp_path: Path) -> None:
    ring = {path: text.replace("a pipe", "SA-WP-001") for path, text in PLAN.items()}
    lay_out(tmp_path, ring)

    table = _blocks(read(tmp_path), "registers/milestones", Table)[1]

    assert sorted(plain(row.cells[0])[:9] for row in table.rows) == [
        "SA-WP-001",
        "SA-WP-002",
        "SA-WP-003",
        "crew trai",
    ]
