"""A notice is one plain message, counted as it is sent, and is written into handbook.yml and nowhere else."""

from datetime import date
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import read, read_book
from garboard.records.notice_message import LONGEST, message_of, plain_letters, unsendable
from garboard.records.vessel import Notice
from tests.editions.small_handbook import HANDBOOK, change, write

FLOW = (
    'notices:\n  - {number: "1", on: 2031-09-03, says: Mind the aft hose, against: [SA-AR-001]}\n'
)
BLOCK = """\
notices:
- number: "1"
  on: 2031-09-03
  says: Mind the aft hose   # as told
  against: [SA-AR-001]

# the rest of the file
windows:
  haul-out: {from: 2032-03-01, to: 2032-03-28}
"""
DEEP = """\
notices:
    - number: "1"
      on: 2031-09-03
      says: Mind the aft hose
    -
      number: "2"
      on: 2031-09-04
      says: >-
        Mind the fore hose
        as well
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return write(tmp_path / "content")


def notice(folder: Path, *words: str) -> int:
    return main(["edition", "notice", *words, "--folder", str(folder)])


def test_the_message_names_vessel_edition_count_day_what_not_to_use_and_until() -> None:
    told = Notice(
        number="3",
        on=date(2031, 10, 2),
        says="Relief set  too\nhigh.",  # type: ignore[arg-type]
        against=("SA-RV-001", "SA-PR-002"),  # type: ignore[arg-type]
        until="2031-12-01",  # type: ignore[arg-type]
    )

    assert message_of("Skerry Light", 2, told, 3) == (
        "SKERRY LIGHT EDITION 2 NOTICE 3 OF 3 2031-10-02. DO NOT USE SA-RV-001, SA-PR-002."
        " Relief set too high. UNTIL 2031-12-01."
    )


def test_letters_that_no_plain_message_knows_are_named_and_plain_ones_offered() -> None:
    text = "Sjøsetting ≥ 5 °C – “shut”, 30\N{NO-BREAK SPACE}bar ± 1 \N{SNOWMAN}"

    assert set(unsendable(text)) == {"ø", "≥", "°", "–", "“", "”", "\N{NO-BREAK SPACE}", "±", "☃"}
    assert plain_letters(text) == 'Sjosetting >= 5 degC - "shut", 30 bar +/- 1'
    assert unsendable(plain_letters(text)) == ()


@pytest.mark.parametrize("before", ["", FLOW, BLOCK, FLOW.rstrip("\n"), DEEP])
@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_a_notice_is_added_as_the_last_and_nothing_else_moves(
    folder: Path, before: str, ends: str, capsys: pytest.CaptureFixture[str]
) -> None:
    file = folder / "handbook.yml"
    text = (HANDBOOK + before).replace("\n", ends)
    file.write_bytes(text.encode())
    had = len(read_book(folder).content.vessel.notices)

    status = notice(folder, "--says", 'Say "no": a # b, {c}', "--against", "SA-RV-001", "--until", "2031-12-01")  # fmt: skip

    said = capsys.readouterr().out
    now = file.read_bytes().decode()
    last = read_book(folder).content.vessel.notices[-1]
    assert status == 0
    assert "SKERRY LIGHT NO EDITION NOTICE" in said
    assert (last.number, last.on, last.says) == (str(had + 1), date(2031, 9, 15), 'Say "no": a # b, {c}')  # fmt: skip
    assert (last.against, last.until, last.withdrawn) == (("SA-RV-001",), "2031-12-01", None)
    kept = [line for line in now.replace("\r\n", "\n").split("\n") if 'Say "no"' not in line.replace("\\", "")]  # fmt: skip
    wanted = text.replace("\r\n", "\n").split("\n")
    assert [line for line in kept if line and line != "notices:"] == [
        line for line in wanted if line and line != "notices:"
    ]
    assert ("\r\n" in now) == (ends == "\r\n")


@pytest.mark.parametrize("before", [FLOW, BLOCK])
def test_a_notice_is_withdrawn_on_its_day_and_told(
    folder: Path, before: str, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "handbook.yml").write_text(HANDBOOK + before, "utf-8")

    assert notice(folder, "--withdraw", "1", "--dry-run") == 0
    assert (folder / "handbook.yml").read_text("utf-8") == HANDBOOK + before
    assert notice(folder, "--withdraw", "1") == 0

    said = capsys.readouterr().out
    (one,) = read_book(folder).content.vessel.notices
    assert one.withdrawn == date(2031, 9, 15)
    assert one.says == "Mind the aft hose"
    assert "SKERRY LIGHT NO EDITION NOTICE 1 OF 1 WITHDRAWN 2031-09-15." in said
    assert notice(folder, "--withdraw", "1") == 2
    assert "was withdrawn on 2031-09-15" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--says", "x" * 300], "at most; take"),
        (["--says", "Shut Sjøsetting"], "in plain letters it is: Shut Sjosetting"),
        (["--says", "Mind", "--against", "SA-HV-404"], "there is no record or component SA-HV-404"),
        (["--says", "  "], "needs words"),
        (["--against", "SA-RV-001"], "needs words"),
        (["--withdraw", "9"], "there is no notice 9; there are: none"),
        (["--withdraw", "1", "--says", "x"], "not both at once"),
    ],
)
def test_what_cannot_be_sent_is_refused_and_nothing_written(
    folder: Path, words: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    before = (folder / "handbook.yml").read_bytes()

    assert notice(folder, *words) == 2

    assert said in capsys.readouterr().err
    assert (folder / "handbook.yml").read_bytes() == before


def test_the_longest_message_just_fits(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    notice(folder, "--says", "x", "--dry-run")
    used = int(capsys.readouterr().out.split("(")[1].split(" ")[0])

    assert notice(folder, "--says", "x" * (LONGEST - used + 1), "--dry-run") == 0
    assert notice(folder, "--says", "x" * (LONGEST - used + 2), "--dry-run") == 2
    assert "notices" not in (folder / "handbook.yml").read_text("utf-8")


def test_notices_on_one_line_are_left_to_their_author(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = HANDBOOK + 'notices: [{number: "1", on: 2031-09-03, says: Mind}]\n'
    (folder / "handbook.yml").write_text(text, "utf-8")

    assert notice(folder, "--says", "More") == 2
    assert "give each a line of its own" in capsys.readouterr().err
    assert (folder / "handbook.yml").read_text("utf-8") == text


def test_the_page_the_rule_and_the_command_have_the_same_message(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["edition", "issue", "--by", "lead", str(folder)]) == 0
    change(folder, "handbook.yml", "2031-09-15", "2031-10-02")
    capsys.readouterr()
    notice(folder, "--says", "Set too high", "--against", "SA-RV-001")
    sent = capsys.readouterr().out.splitlines()[0].strip()
    notice(folder)
    listed = capsys.readouterr().out

    book = read(folder)
    page = next(one for one in book.pages if one.key == "registers/notices")
    front = next(one for one in book.pages if one.key == "index")

    assert sent.startswith("SKERRY LIGHT EDITION 1 NOTICE 1 OF 1 2031-10-02. DO NOT USE SA-RV-001.")
    assert sent in listed
    assert sent in str(page.blocks)
    assert f"{len(sent)} characters, 300 at most" in str(page.blocks)
    assert "Set too high" in str(front.blocks)
    valve = next(one for one in book.pages if one.key == "SA-RV-001")
    assert valve.review.words.startswith("DO NOT USE. Notice 1 to holders stands")
