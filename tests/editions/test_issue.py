"""An edition is issued only where nothing stops it, and what is shown is what is written."""

import shutil
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.editions.issue import propose, write
from garboard.errors import GarboardError
from garboard.handbook import read
from garboard.reading.edition_file import sealed, write_edition
from garboard.reading.edition_folder import editions_in
from tests.editions.small_handbook import change
from tests.editions.small_handbook import write as lay

STEM = "systems/starting-air"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return lay(tmp_path / "content")


def issue(folder: Path, *more: str, by: str = "lead") -> int:
    return main(["edition", "issue", "--by", by, *more, str(folder)])


def test_the_small_handbook_is_issued_and_says_until_when_and_why(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status = issue(folder)

    said = capsys.readouterr().out
    assert status == 0
    assert "Edition 1 of Skerry Light, 2031-09-15" in said
    assert "valid until 2032-09-15: a life of 12 months" in said
    assert "K-01 of SA-FT-001, hangs at start-air panel: digest " in said
    (edition,) = editions_in(folder).issued
    assert (edition.number, edition.by, edition.ends) == (1, "lead", "a life of 12 months")


def test_a_dry_run_shows_the_same_and_writes_nothing(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert issue(folder, "--dry-run") == 0
    tried = capsys.readouterr().out
    assert not (folder / "editions").exists()
    assert issue(folder) == 0
    done = capsys.readouterr().out

    assert tried.splitlines()[:-1] == done.splitlines()[:-1]


def test_every_stop_is_listed_and_nothing_is_written(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    change(folder, f"{STEM}/sa-cl-001-starts.md", "[8.33]", "[9]")
    change(folder, f"{STEM}/sa-ft-001-no-start.md", "first.", "of SA-HV-404 first.")

    status = issue(folder)

    said = capsys.readouterr().err
    assert status == 1
    assert "text says 9, sizing.n is 8.33 [stale-number]" in said
    assert "SA-HV-404" in said
    assert not (folder / "editions").exists()


@pytest.mark.parametrize(
    ("by", "said"),
    [
        ("volunteer-1", "volunteer-1 may act neither in charge nor as approver; ask lead, reviewer-1"),
        ("led", "people.yml knows nobody by the key 'led'; did you mean 'lead'?"),
    ],
)  # fmt: skip
def test_only_who_may_act_in_charge_or_as_approver_issues(
    folder: Path, capsys: pytest.CaptureFixture[str], by: str, said: str
) -> None:
    assert issue(folder, by=by) == 1
    assert said in capsys.readouterr().err
    assert not (folder / "editions").exists()


def test_an_approver_may_issue(folder: Path) -> None:
    assert issue(folder, by="reviewer-1") == 0


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("edition: {life: 12 months}\n", "", "no life is given [edition-incomplete]"),
        ("place: start-air panel}", "place: start-air panel, digest: 0123456789abcdef}", "card-stale"),
    ],
)  # fmt: skip
def test_what_is_asked_only_at_issue_stops_it_too(
    folder: Path, capsys: pytest.CaptureFixture[str], old: str, new: str, said: str
) -> None:
    change(folder, "handbook.yml", old, new)

    assert issue(folder) == 1
    assert said in capsys.readouterr().err


def test_without_holders_there_is_nobody_to_issue_to(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (folder / "handbook.yml").read_text("utf-8")
    start, end = text.index("holders:"), text.index("cards:")
    (folder / "handbook.yml").write_text(text[:start] + text[end:], "utf-8")

    assert issue(folder) == 1
    assert "nobody is listed to hold a copy" in capsys.readouterr().err


def test_the_digest_that_is_shown_makes_the_card_current(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    issue(folder, "--dry-run")
    line = next(one for one in capsys.readouterr().out.splitlines() if "K-01" in one)
    change(folder, "handbook.yml", "panel}", f'panel, digest: "{line.split()[-1]}"}}')

    assert issue(folder) == 0


def test_an_altered_edition_stops_the_next(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    issue(folder)
    change(folder, "editions/1.json", '"number": 1', '"number":  1')

    assert issue(folder) == 1
    assert "edition 1 is not as it was issued" in capsys.readouterr().err


@pytest.mark.parametrize("how", ["changed", "come", "gone", "photo"])
def test_a_file_that_changes_meanwhile_stops_it(folder: Path, how: str) -> None:
    proposal = propose(folder, "lead")
    if how == "changed":
        change(folder, f"{STEM}/what-it-does.md", "gives", "feeds")
    elif how == "come":
        (folder / STEM / "new.md").write_text("---\npage: notes\n---\nNew.\n", "utf-8")
    elif how == "gone":
        (folder / STEM / "sa-ft-001-no-start.md").unlink()
    else:
        (folder / STEM / "photos/plate.png").write_bytes(b"another")

    with pytest.raises(GarboardError, match=r"since it was read; start again"):
        write(folder, proposal)

    assert not (folder / "editions").exists()


def test_the_next_edition_says_what_became_different(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    issue(folder)
    change(folder, "handbook.yml", "2031-09-15", "2032-03-01")
    change(folder, f"{STEM}/sa-cl-001-starts.md", "V = 500 L", "V = 400 L")
    change(folder, f"{STEM}/sa-cl-001-starts.md", "[8.33]", "[6.67]")
    change(folder, f"{STEM}/sa-ft-001-no-start.md", "first", "before anything else")
    capsys.readouterr()

    assert issue(folder) == 0

    said = capsys.readouterr().out
    assert "since edition 1 of 2031-09-15:" in said
    assert "records: 2 other (SA-CL-001, SA-FT-001)" in said
    assert "numbers: 2 other (sizing.V, sizing.n)" in said
    assert "K-01 of SA-FT-001" in said
    assert [one.number for one in editions_in(folder).issued] == [1, 2]


def test_a_card_that_moved_to_another_place_is_among_those_to_print(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    issue(folder)
    change(folder, "handbook.yml", "start-air panel", "wheelhouse")
    capsys.readouterr()

    assert issue(folder) == 0
    assert "  K-01 of SA-FT-001, hangs at wheelhouse: " in capsys.readouterr().out


def test_a_day_before_the_last_edition_is_refused(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    issue(folder)
    change(folder, "handbook.yml", "2031-09-15", "2031-09-14")

    assert issue(folder) == 1
    assert "today is 2031-09-14, and edition 1 was issued on 2031-09-15" in capsys.readouterr().err


def test_a_working_copy_names_the_edition_that_holders_have(folder: Path) -> None:
    assert read(folder).copy.beside == ""

    issue(folder)
    now = read(folder)
    change(folder, "handbook.yml", "2031-09-15", "2032-09-16")
    later = read(folder)

    assert now.copy.beside == "Edition 1 of 2031-09-15 is what holders have."
    assert later.copy.beside == (
        "Edition 1 of 2031-09-15, which ran out on 2032-09-15, is what holders have."
    )
    assert {page.copy.name for page in now.pages} == {"WORKING COPY"}


def test_the_page_of_an_edition_names_roles_and_no_keys(folder: Path) -> None:
    issue(folder)

    pages = {page.key: str(page.blocks) for page in read(folder).pages}

    assert "by the lead builder" in pages["editions/1"]
    assert "remote reviewer" in pages["editions/1"]
    assert "reviewer-1" not in pages["editions/1"]
    assert "A clean build means: no contradiction was found" in pages["editions/1"]
    assert "SA-FT-001" in pages["editions/1-pages"]
    assert "a life of 12 months" in pages["editions"]


def a_key(place: Path, name: str) -> Path:
    program = shutil.which("ssh-keygen")
    assert program, "install the Debian package openssh-client"
    key = place / name
    subprocess.run([program, "-q", "-t", "ed25519", "-N", "", "-C", name, "-f", str(key)], check=True)  # fmt: skip
    return key


def allow(folder: Path, key: Path) -> None:
    public = key.with_suffix(".pub").read_text("utf-8").split()
    line = f'lead valid-after="20310101" {public[0]} {public[1]}\n'
    (folder / "allowed_signers").write_text(line, "utf-8")


def test_an_edition_is_proved_with_the_issuers_key(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    key = a_key(tmp_path, "lead")
    allow(folder, key)

    assert issue(folder, "--key", str(key)) == 0
    assert main(["edition", "verify", "--folder", str(folder)]) == 0

    assert "proved by the issuer's key" in capsys.readouterr().out


def test_an_issuer_with_a_key_owes_a_proof(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    allow(folder, a_key(tmp_path, "lead"))

    assert issue(folder) == 1
    assert "lead has a key in allowed_signers" in capsys.readouterr().err


def test_a_key_that_does_not_speak_for_the_issuer_is_refused(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    allow(folder, a_key(tmp_path, "lead"))

    assert issue(folder, "--key", str(a_key(tmp_path, "other"))) == 1
    assert "that key does not speak for lead" in capsys.readouterr().err
    assert not (folder / "editions").exists()


def test_a_proof_of_another_edition_does_not_fit(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    key = a_key(tmp_path, "lead")
    allow(folder, key)
    issue(folder, "--key", str(key))
    (edition,) = editions_in(folder).issued
    forged = sealed(replace(edition, ends="a life of 24 months"))
    (folder / "editions/1.json").write_text(write_edition(forged), "utf-8")
    capsys.readouterr()

    assert main(["edition", "verify", "1", "--folder", str(folder)]) == 1
    assert "the proof of edition 1 does not fit it" in capsys.readouterr().out
