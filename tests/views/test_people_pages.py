"""The pages about people: who may do what, what somebody has to read, the first day, the sheet of a job."""

from datetime import date
from pathlib import Path

import pytest

from garboard.handbook import Handbook, read
from garboard.views.by_hand import ToSign
from garboard.views.crew import known_as
from garboard.views.page import Block, Bullets, Facts, Heading, Page, Paragraph, Table
from garboard.views.runs import plain
from tests.demo_site import demo_handbook
from tests.golden_case import Case

HEAD = "id: SA-PR-001\ntitle: Raise air\nsystem: SA\nclass: B\n"
PATH = "systems/starting-air/pr.md"
STEPS = "steps:\n  - {do: Look, see: {value: air}, if_not: stop}\n"
PEOPLE = """\
lead: {role: lead builder, may: [author, in charge], aboard: [{from: 2030-01-01}]}
hand-1:
  role: hand
  aboard: [{from: 2031-01-01}]
  orientation: [{on: 2031-01-02, by: lead}]
  competence: [{procedure: SA-PR-001, level: LEVEL, on: 2031-02-01}]
hand-2: {role: hand, aboard: [{from: 2031-01-01}]}
"""


@pytest.fixture(scope="module")
def demo() -> Handbook:
    return demo_handbook()


def page(book: Handbook, key: str) -> Page:
    (found,) = (one for one in book.pages if one.key == key)
    return found


def words(blocks: tuple[Block, ...]) -> str:
    told: list[str] = []
    for block in blocks:
        match block:
            case Paragraph():
                told.append(plain(block.runs))
            case Bullets():
                told += [plain(item) for item in block.items]
            case Facts():
                told += [f"{label}: {plain(cell)}" for label, cell in block.rows]
            case Table():
                told += [block.caption, *(" | ".join(map(plain, row.cells)) for row in block.rows)]
            case ToSign():
                told += [plain(cell) for cell in block.rows]
            case Heading():
                told.append(f"# {block.text}")
            case _:
                pass
    return "\n".join(told)


def part_of(book: Handbook, name: str) -> str:
    """What the page of required reading says to one person."""
    return (
        words(page(book, "people/required-reading").blocks).split(f"# {name}")[1].split("\n# ")[0]
    )


def small(folder: Path, level: str, revision: int, *more: str, **files: str) -> Handbook:
    made = {PATH: written(revision, *more), "people.yml": PEOPLE.replace("LEVEL", level)}
    return read(Case("", "", "", made | files, "").write(folder))


def issued_and_revised(folder: Path, level: str, *more: str) -> Handbook:
    """A procedure that an edition holds, raised by one revision since."""
    people = {"people.yml": PEOPLE.replace("LEVEL", level)}
    edition = {"day": date(2031, 5, 1), "files": people | {PATH: written(0)}}
    return read(Case("", "", "", people | {PATH: written(1, *more)}, "", [edition]).write(folder))


def written(revision: int, *more: str) -> str:
    return "\n".join(("---", f"{HEAD}revision: {revision}", *more, STEPS.rstrip(), "---", "x\n"))


@pytest.mark.parametrize(
    ("level", "revision", "counts"),
    [
        ("alone", 0, "alone: hand"),
        ("alone", 1, "With help: hand"),
        ("alone", 2, "Nobody aboard can do this alone"),
        ("can teach", 1, "With help: hand"),
        ("with help", 0, "With help: hand"),
        ("with help", 1, "Nobody aboard can do this alone"),
    ],
)
def test_what_was_shown_falls_back_with_each_major_revision(
    level: str, revision: int, counts: str, tmp_path: Path
) -> None:
    book = small(tmp_path, level, revision)

    said = words(page(book, "SA-PR-001").blocks)

    assert counts in said
    assert ("With help: hand" in said) == ("With help" in counts)


def test_a_revision_of_words_only_takes_nothing_away(tmp_path: Path) -> None:
    book = issued_and_revised(tmp_path, "alone", "minor: [1]")

    assert "alone: hand" in words(page(book, "SA-PR-001").blocks)
    assert "Nothing: all was seen" in words(page(book, "people/who-may-do-what").blocks)


def test_a_claim_with_nothing_to_hold_it_against_is_told_and_costs_a_rank(tmp_path: Path) -> None:
    book = small(tmp_path, "alone", 1, "minor: [1]")

    said = words(page(book, "SA-PR-001").blocks)
    assert "Revision 1 is claimed minor, nothing to hold it against: no edition holds" in said
    assert "With help: hand" in said
    fell = words(page(book, "people/who-may-do-what").blocks)
    assert "(1: claimed minor, nothing to hold it against.) Counts as with help." in fell


def test_two_of_one_role_who_came_the_same_day_are_numbered(tmp_path: Path) -> None:
    book = small(tmp_path, "alone", 0).book
    people = book.content.people

    assert [known_as(book, people[key]) for key in ("lead", "hand-1", "hand-2")] == [
        "lead builder",
        "hand, aboard since 1 January 2031 (1)",
        "hand, aboard since 1 January 2031 (2)",
    ]


def test_nobody_aboard_stands_out_and_says_why(demo: Handbook) -> None:
    said = words(page(demo, "people/who-may-do-what").blocks)

    row = next(line for line in said.splitlines() if line.startswith("SA-PR-009"))
    assert "Nobody aboard can do this alone" in row
    assert "lead builder; volunteer, aboard since 3 November 2030" in row
    assert (
        "Seen 24 May 2031 in revision 0: can teach. Revision 1 is major since 20 September 2031: it has to"
        " be shown again. Counts as with help." in said
    )
    assert "Counts as not shown." in said


def test_who_comes_back_reads_what_moved_since_they_left_gravest_first(demo: Handbook) -> None:
    part = part_of(demo, "Volunteer, back aboard since 1 October 2031")

    assert "Moved since 15 August 2031, the last day aboard" in part
    assert "SA-CN-006 | change: " in part
    assert "SA-CP-002.delivers 4.5 m3(n)/h, now 3.6 m3(n)/h" in part.replace(" .", ".")
    assert "revision 0, now 1, after SA-CN-006" in part
    assert "SA-CN-001" not in part, "it was installed before they left"
    assert part.index("safety finding") < part.index("change: ") < part.index("procedure: ")


def test_who_was_never_shown_round_starts_with_the_first_day(demo: Handbook) -> None:
    part = part_of(demo, "Volunteer, aboard since 20 August 2031")

    assert "Nobody wrote down having shown this person round. Start with the first day" in part
    assert "SA-PR-004 | Drain the receivers" in part
    assert "people/first-day" in {one.key for one in demo.pages}


def test_a_withdrawn_notice_and_one_of_tomorrow_are_told_as_they_are(tmp_path: Path) -> None:
    handbook = (
        "vessel: Skerry Light\nsystems: {SA: starting-air}\nas_of: 2031-10-01\nnotices:\n"
        "  - {number: '1', on: 2031-05-01, says: Old., withdrawn: 2031-06-01}\n"
        "  - {number: '2', on: 2031-05-02, says: Mind it.}\n"
        "  - {number: '3', on: 2031-10-02, says: Not yet.}\n"
    )
    book = small(tmp_path, "alone", 0, **{"handbook.yml": handbook})

    part = part_of(book, "Hand, aboard since 1 January 2031 (1)")

    assert part.index("notice 2 | notice: stands") < part.index("notice 1 | notice: withdrawn")
    assert "Not yet" not in part


def test_the_first_day_names_every_hazard_alarm_and_system(demo: Handbook) -> None:
    found = page(demo, "people/first-day")
    said = words(found.blocks)

    assert [one.word for one in found.messages] == ["DANGER", "DANGER"]
    hazards = [one for one in demo.book.records if "-HZ-" in one]
    in_full = {one.source for one in found.messages}
    titles = {demo.book.records[one].title for one in hazards if one not in in_full}
    assert all(title in said for title in titles)
    assert "START AIR LOW" in said
    assert "in test | Starting air | nothing alone" in said
    assert "Anyone may stop work." in said
    (shown,) = (block for block in found.blocks if isinstance(block, ToSign))
    assert len(shown.rows) == len(demo.book.content.vessel.orientation)


def test_a_job_sheet_says_isolation_holds_people_and_what_stands_in_the_way(demo: Handbook) -> None:
    found = page(demo, "jobs/DC-WP-002")
    said = words(found.blocks)

    assert "isolation today: DC-PR-002 " in said
    assert "issued, every signature on it stands" in said
    assert "planned, not released: do not go past" in said
    assert "stands in the way: not ready: " in said
    assert "DC-PR-002: Nobody aboard can do this alone." in said
    assert any(message.source == "DC-HZ-001" for message in found.messages)


def test_an_isolation_that_lapsed_is_not_to_be_used(tmp_path: Path) -> None:
    files = {
        "systems/starting-air/pr-9.md": "---\nid: SA-PR-009\ntitle: Shut off\nsystem: SA\nstate: drafted\n---\nx\n",
        "log/2031/2031-01-01-a.md": "---\nid: SA-WP-001\ntitle: Weld\nsystem: SA\nisolation: SA-PR-009\n---\nx\n",
    }
    said = words(page(small(tmp_path, "alone", 0, **files), "jobs/SA-WP-001").blocks)

    assert "Do not use it as it stands: SA-PR-009" in said
    assert "No hazard is recorded" in said


def test_no_page_shows_a_key_of_the_list_of_people(demo: Handbook) -> None:
    keys = [one for one in demo.book.content.people if "-" in one]

    for one in demo.pages:
        if one.key.startswith(("people/", "jobs/")):
            said = words(one.blocks)
            assert not [key for key in keys if key in said], one.key
