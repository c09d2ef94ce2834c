"""A started record reads back clean, and asks for every field of its kind."""

import re
from datetime import date

import pytest

from garboard.reading.blank import blank, next_id, path_for
from garboard.reading.record_file import read_markdown
from garboard.reading.shapes import keys_of
from garboard.records.base import Record
from garboard.records.kinds import BY_NAME, KINDS, Kind

DAY = date(2031, 3, 9)


def started(kind: Kind, title: str = "Low air") -> str:
    """A blank of system SA."""
    return blank(kind, "SA", f"SA-{kind.letters}-001", title, author="lead", drafted=DAY)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_blank_reads_back_clean(kind: Kind) -> None:
    read = read_markdown(started(kind), "a.md")

    assert read.diagnostics == ()
    assert isinstance(read.thing, kind.record)
    assert (read.thing.title, read.thing.system, read.thing.author) == ("Low air", "SA", "lead")
    assert read.thing.drafted == DAY


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_blank_asks_for_every_field_once(kind: Kind) -> None:
    text = started(kind)

    asked = re.findall(r"^#(\w+):", text, re.MULTILINE)
    given = re.findall(r"^(\w+):", text, re.MULTILINE)
    assert sorted([*asked, *given, "revision", "signed"]) == sorted(keys_of(kind.record))


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_every_question_of_a_blank_is_one(kind: Kind) -> None:
    lines = started(kind).split("\n")

    for number, line in enumerate(lines):
        if re.match(r"#\w+:", line):
            assert re.match(r"# \S.*[.?)]$", lines[number - 1]), line


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_blank_with_every_sign_taken_away_is_still_keys(kind: Kind) -> None:
    text = re.sub(r"^#(?=\w|  )", "", started(kind), flags=re.MULTILINE)

    read = read_markdown(text, "a.md")

    assert isinstance(read.thing, Record)
    assert {item.code for item in read.diagnostics} <= {"unreadable-record"}
    assert all(" has no " in item.text or "is empty" in item.text for item in read.diagnostics)


@pytest.mark.parametrize(
    "title",
    [
        *("Update #2 of the gauge", "Valve: stuck", '\'tis "stuck"', "[first]", "yes", "- dash"),
        *("@lead", "2031", "back\\slash", "trailing ", "two  spaces", "%5", "a  # b", "why?"),
    ],
)
def test_any_title_is_read_back(title: str) -> None:
    read = read_markdown(started(BY_NAME["finding"], title), "a.md")

    assert read.diagnostics == ()
    assert isinstance(read.thing, Record)
    assert read.thing.title.split() == title.split()


def test_a_blank_without_an_id_is_unfiled_and_knows_its_kind() -> None:
    kind = BY_NAME["finding"]

    read = read_markdown(blank(kind, "SA", "", "Low air"), "log/2031/2031-03-09-low-air.md")

    assert read.diagnostics == ()
    assert isinstance(read.thing, kind.record)
    assert (read.thing.id, read.thing.drafted) == (None, DAY)


def test_what_is_wanted_first_stands_first() -> None:
    text = started(BY_NAME["finding"])

    headings = re.findall(r"# -- (.*) --", text)
    assert headings == [
        "first of all",
        "wanted before it leaves the state raised",
        "where it helps",
        "filled in later, when it has happened",
        "of every record, where it applies",
    ]


def test_numbers_go_on_above_every_one_that_was_given() -> None:
    assert next_id([], "SA", "FN") == "SA-FN-001"
    assert next_id(["SA-FN-002", "SA-FN-017", "BG-FN-400", "SA-DD-090"], "SA", "FN") == "SA-FN-018"


def test_a_new_file_lies_where_its_kind_belongs() -> None:
    folder, title = "systems/starting-air", "Low air: #2 \u00e9t\u00e9"

    assert path_for(BY_NAME["finding"], folder, "SA-FN-001", title, DAY) == (
        "log/2031/2031-03-09-low-air-2-ete.md"
    )
    assert path_for(BY_NAME["procedure"], folder, "SA-PR-001", title, DAY) == (
        "systems/starting-air/sa-pr-001-low-air-2-ete.md"
    )
    assert path_for(BY_NAME["procedure"], folder, "", "///", DAY) == (
        "log/2031/2031-03-09-record.md"
    )
