"""A kept reply becomes a signature only when somebody confirms it, and only to what was seen."""

from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import read_book
from garboard.records.reply import Seal
from garboard.records.signoff import Capacity, Verdict
from tests.correspondence.test_intake import files, form, mail, seal, take
from tests.review.signed_sample import DECIDED, write_sample

KEPT = "replies/2031-09-28-sa-dd-003-reviewer-1.txt"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small handbook in which a reply about a decision waits."""
    folder = write_sample(tmp_path / "content")
    take(folder, mail(folder, form(seal(folder))))
    return folder


def confirm(folder: Path, *more: str, reply: str = KEPT) -> int:
    return main(["sign", "--reply", reply, "--entered-by", "lead", *more, "--folder", str(folder)])


def change(folder: Path, path: str, old: str, new: str) -> None:
    file = folder / path
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new), "utf-8")


def test_the_line_says_what_the_reply_says(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert confirm(folder) == 0

    book = read_book(folder)
    (line,) = book.records["SA-DD-003"].signed
    assert (line.capacity, line.by, line.on.isoformat()) == (
        Capacity.CHECKER,
        "reviewer-1",
        "2031-09-28",
    )
    assert (line.verdict, line.scope, line.not_checked) == (
        Verdict.OBJECT,
        ("layout",),
        ("wiring",),
    )
    assert (line.words, line.entered_by) == ("The stop still cuts it off.", "lead")
    assert line.evidence == KEPT
    assert book.waiting == {}
    assert "This signature covers, as it stands today:" in capsys.readouterr().out


def test_it_is_shown_and_not_written_where_that_is_asked_for(folder: Path) -> None:
    before = files(folder)

    assert confirm(folder, "--dry-run") == 0

    assert files(folder) == before


def test_a_reply_signs_once(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    confirm(folder)
    before = files(folder)

    assert confirm(folder) == 2

    assert "SA-DD-003 is signed with it already" in capsys.readouterr().err
    assert files(folder) == before


MOVED = [
    (DECIDED, "reasons: nothing may", "reasons: little may", "the words of SA-DD-003 changed"),
    (
        "systems/starting-air/system.yml",
        "set: 18 bar(g)",
        "set: 17 bar(g)",
        "something that it rests on changed",
    ),
]


@pytest.mark.parametrize("moved", MOVED, ids=["its words", "what it rests on"])
def test_what_moved_since_makes_it_void(
    folder: Path, capsys: pytest.CaptureFixture[str], moved: tuple[str, str, str, str]
) -> None:
    path, old, new, said = moved
    change(folder, path, old, new)
    before = files(folder)

    assert confirm(folder) == 2

    err = capsys.readouterr().err
    assert said in err
    assert "garboard pack SA-DD-003" in err
    assert files(folder) == before


def test_a_form_that_came_back_whole_tells_which_number_moved(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = write_sample(tmp_path / "content")
    saw = "SAW: SA-PS-001.set = 18 bar(g)\nSAW: starts.n = 10\nEND"
    take(folder, mail(folder, form(seal(folder)).replace("END", saw)))
    change(folder, "systems/starting-air/system.yml", "set: 18 bar(g)", "set: 17 bar(g)")

    assert confirm(folder) == 2

    assert "SA-PS-001.set: 18 bar(g) -> 17 bar(g); send a new pack" in capsys.readouterr().err


@pytest.mark.parametrize("at", [15, 31, 40, 48, 50])
def test_a_digest_that_was_changed_by_one_sign_is_refused(folder: Path, at: int) -> None:
    kept = folder / KEPT
    text = kept.read_text("utf-8")
    sign = text[at]
    kept.write_text(f"{text[:at]}{'0' if sign != '0' else '1'}{text[at + 1 :]}", "utf-8")
    before = files(folder)

    assert confirm(folder) == 2

    assert files(folder) == before


def test_a_seal_made_up_to_fit_its_own_check_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = write_sample(tmp_path / "content")
    real = seal(folder)
    take(folder, mail(folder, form(Seal(real.key, real.own, "0" * 16))))

    assert confirm(folder) == 2

    assert "was not written to this pack" in capsys.readouterr().err


UNSAID = [
    ({"AS": "-"}, "in what capacity"),
    ({"VERDICT": "[ ] object"}, "with what verdict"),
    ({"DATE": "-"}, "on which day"),
]


@pytest.mark.parametrize(("changed", "said"), UNSAID, ids=[one[1] for one in UNSAID])
def test_what_the_reply_does_not_say_is_not_guessed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], changed: dict[str, str], said: str
) -> None:
    folder = write_sample(tmp_path / "content")
    take(folder, mail(folder, form(seal(folder), **changed)))
    (waiting,) = read_book(folder).waiting["SA-DD-003"]

    assert confirm(folder, reply=waiting.path) == 2

    assert f"does not say {said}" in capsys.readouterr().err


def test_nothing_is_typed_beside_a_reply(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert confirm(folder, "--verdict", "no findings", "--as", "approver") == 2

    assert "the reply says --as, --verdict" in capsys.readouterr().err


def test_somebody_must_say_that_they_confirm_it(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["sign", "--reply", KEPT, "--folder", str(folder)]) == 2

    assert "--entered-by" in capsys.readouterr().err


def test_the_rules_about_signing_hold_for_a_reply_too(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = write_sample(tmp_path / "content")
    change(folder, DECIDED, "author: lead", "author: reviewer-1")
    take(folder, mail(folder, form(seal(folder))))

    assert confirm(folder) == 2

    assert "[signer-not-independent]" in capsys.readouterr().err


def test_a_reply_that_is_not_there_is_named_with_the_nearest(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert confirm(folder, reply="replies/2031-09-28-sa-dd-003-reviewer-2.txt") == 2

    assert f"did you mean {KEPT}?" in capsys.readouterr().err
