"""Signing from the command line: what is shown, what is refused, and that nothing is written then."""

from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import read, read_book
from garboard.records.signoff import SignOff
from tests.demo_site import copy_demo
from tests.review.signed_sample import DECIDED, DECISION, SUMS, WRITTEN, write_sample

CHECK = ("--as", "checker", "--by", "reviewer-1", "--on", "2031-03-12", "--to", "checked")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small handbook with a decision in check."""
    return write_sample(tmp_path / "content")


def files(folder: Path) -> dict[str, bytes]:
    """Everything that a person wrote."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and ".garboard" not in path.parts
    }


def lines_of(folder: Path, key: str = "SA-DD-003") -> tuple[SignOff, ...]:
    return read_book(folder).records[key].signed


def test_a_signature_says_what_it_covers_and_is_written(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = ["sign", "SA-DD-003", *CHECK, "--verdict", "no findings", "--scope", "layout,wording"]
    words += ["--not-checked", "wiring", "--band", "1 %", "--folder", str(folder)]

    assert main(words) == 0

    said = capsys.readouterr().out
    line = lines_of(folder)[0]
    assert f"its own words, digest {line.digest}" in said
    assert "    SA-PS-001.set = 18 bar(g)\n    starts.n = 10\n" in said
    assert "state: in check -> checked" in said
    assert f"Written to {DECIDED}." in said
    assert (line.scope, line.not_checked, line.band) == (("layout", "wording"), ("wiring",), "1 %")
    assert read_book(folder).records["SA-DD-003"].state == "checked"
    assert [one for one in read(folder).diagnostics if one.code == "sign-off-lapsed"] == []


def test_requirements_and_sources_that_a_calculation_rests_on_are_shown(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["sign", "SA-CL-001", *CHECK, "--folder", str(folder)]) == 0

    said = capsys.readouterr().out
    assert "    starts: n >= 6: holds at the worst corner\n" in said
    assert "    plate-R1: " in said
    assert "verdict: none stated" in said


def test_a_dry_run_shows_all_and_writes_nothing(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = files(folder)

    assert main(["sign", "SA-DD-003", *CHECK, "--dry-run", "--folder", str(folder)]) == 0

    assert "Nothing was written." in capsys.readouterr().out
    assert files(folder) == before


@pytest.mark.parametrize("where", ["inside", "from here"])
def test_a_written_page_is_signed_by_its_path(
    folder: Path, monkeypatch: pytest.MonkeyPatch, where: str
) -> None:
    monkeypatch.chdir(folder.parent)
    name = WRITTEN if where == "inside" else f"content/{WRITTEN}"

    status = main(["sign", name, "--as", "checker", "--by", "reviewer-1"])

    page = next(one for one in read_book(folder).content.pages if one.where.path == WRITTEN)
    assert status == 0
    assert [(line.by, line.on.isoformat()) for line in page.signed] == [
        ("reviewer-1", "2031-10-01")
    ]


def test_a_walk_of_signatures_leads_through_the_states(folder: Path) -> None:
    approve = ("--as", "approver", "--by", "reviewer-2", "--on", "2031-03-14", "--to", "approved")

    assert main(["sign", "SA-DD-003", *CHECK, "--folder", str(folder)]) == 0
    assert main(["sign", "SA-DD-003", *approve, "--folder", str(folder)]) == 0

    grave = ("illegal-state-move", "signer-not-independent", "sign-off-lapsed")
    said = [one for one in read(folder).diagnostics if one.about == "SA-DD-003"]
    assert [one for one in said if one.code in grave] == []
    assert read_book(folder).records["SA-DD-003"].state == "approved"


REFUSED = [
    (
        "signer-not-independent",
        ["--as", "checker", "--by", "lead", "--to", "checked"],
        "ask reviewer",
    ),
    (
        "signer-lacks-authority",
        ["--as", "checker", "--by", "volunteer-1", "--to", "checked"],
        "have somebody sign who may",
    ),
    (
        "signed-by-proxy",
        ["--as", "checker", "--by", "reviewer-1", "--entered-by", "lead"],
        "name the photograph",
    ),
    (
        "illegal-state-move",
        ["--as", "approver", "--by", "reviewer-1", "--to", "approved"],
        "sign the step that is missing",
    ),
]


@pytest.mark.parametrize(("code", "words", "cure"), REFUSED, ids=[one[0] for one in REFUSED])
def test_what_a_rule_would_say_is_said_before_anything_is_written(
    folder: Path, capsys: pytest.CaptureFixture[str], code: str, words: list[str], cure: str
) -> None:
    before = files(folder)

    status = main(["sign", "SA-DD-003", *words, "--folder", str(folder)])

    caught = capsys.readouterr()
    assert status == 2
    assert f"[{code}]" in caught.err
    assert cure in caught.err
    assert caught.out == ""
    assert files(folder) == before


def test_a_fault_that_stands_already_does_not_hide_a_second_of_its_kind(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    line = "  - {capacity: checker, by: lead, on: 2031-03-12}\n"
    folder = write_sample(tmp_path, decision=DECISION.replace("sets:", f"signed:\n{line}sets:"))
    words = ["--as", "checker", "--by", "lead", "--folder", str(folder)]

    assert main(["sign", "SA-DD-003", *words]) == 2

    assert "lead wrote it and signed as checker" in capsys.readouterr().err


def test_a_fault_that_stands_already_keeps_nobody_else_from_signing(tmp_path: Path) -> None:
    line = "  - {capacity: checker, by: lead, on: 2031-03-12}\n"
    folder = write_sample(tmp_path, decision=DECISION.replace("sets:", f"signed:\n{line}sets:"))

    assert main(["sign", "SA-DD-003", *CHECK, "--folder", str(folder)]) == 0

    assert [one.by for one in lines_of(folder)] == ["lead", "reviewer-1"]


def test_evidence_lets_another_enter_the_line(folder: Path) -> None:
    words = [*CHECK, "--entered-by", "lead", "--evidence", "photos/sheet-4.jpg"]

    assert main(["sign", "SA-DD-003", *words, "--folder", str(folder)]) == 0

    assert lines_of(folder)[0].entered_by == "lead"


WRONG = [
    ("sa-dd-003", CHECK, "there is no record or page 'sa-dd-003'; did you mean SA-DD-003?"),
    ("SA-AR-001", CHECK, "SA-AR-001 is a part; sign the record"),
    (DECIDED, CHECK, "is SA-DD-003; sign it by its id"),
    ("log/2031/2031-03-15-hiss.md", CHECK, "has no id yet; file it"),
    ("SA-DD-005", CHECK, "was not read whole"),
    ("SA-DD-006", CHECK, "could not be read"),
    ("SA-DD-008", CHECK, "is the id of two records"),
    ("SA-CL-009", CHECK, "was not read whole"),
    (
        "SA-DD-003",
        ("--as", "checkr", "--by", "lead"),
        "no capacity 'checkr'; did you mean 'checker'?",
    ),
    ("SA-DD-003", ("--as", "machine", "--by", "lead"), "no capacity 'machine'"),
    ("SA-DD-003", ("--as", "checker", "--by", "reviewr-1"), "did you mean 'reviewer-1'?"),
    ("SA-DD-003", (*CHECK, "--entered-by", "leed"), "did you mean 'lead'?"),
    ("SA-DD-003", (*CHECK, "--to", "cheked"), "did you mean 'checked'?"),
    ("SA-DD-003", (*CHECK, "--verdict", "objekt"), "did you mean 'object'?"),
    ("SA-DD-003", (*CHECK, "--verdict", "object"), "an objection needs its words"),
    (
        "SA-DD-003",
        (*CHECK, "--verdict", "object", "--words", "no lock"),
        "an objection cannot move SA-DD-003 on to checked",
    ),
    ("SA-DD-003", (*CHECK, "--on", "2031-10-02"), "is after today, 2031-10-01"),
    ("SA-DD-003", (*CHECK, "--on", "2031-03-09"), "is before SA-DD-003 was written"),
    ("SA-DD-003", (*CHECK, "--on", "12 March"), "is no date; write it as 2031-10-01"),
    ("SA-DD-003", (*CHECK, "--band", "a bit"), "is no band"),
    (WRITTEN, CHECK, "a written page has no states"),
]
MORE = {
    "log/2031/2031-03-15-hiss.md": "---\ntitle: Hiss\nsystem: SA\n---\nHissing.\n",
    "log/2031/2031-03-16-a.md": DECISION.replace("DD-003", "DD-005").replace("chosen:", "chosn:"),
    "log/2031/2031-03-17-b.md": "---\nid: SA-DD-006\ntitle: [\n---\nBroken.\n",
    "log/2031/2031-03-18-c.md": DECISION.replace("DD-003", "DD-008"),
    "log/2031/2031-03-19-d.md": DECISION.replace("DD-003", "DD-008"),
    "log/2031/2031-03-20-e.md": SUMS.replace("CL-001", "CL-009")
    .replace("starts", "other")
    .replace("V / each", "V //// 2"),
}


@pytest.mark.parametrize(("name", "words", "said"), WRONG, ids=[one[2][:40] for one in WRONG])
def test_what_cannot_be_signed_is_said_in_one_line(
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    name: str,
    words: tuple[str, ...],
    said: str,
) -> None:
    folder = write_sample(tmp_path, **MORE)
    before = files(folder)

    status = main(["sign", name, *words, "--folder", str(folder)])

    caught = capsys.readouterr()
    assert status == 2
    assert said in caught.err
    assert len(caught.err.splitlines()) == 1
    assert files(folder) == before


def test_an_objection_is_written_moves_nothing_and_stands_on_the_page(folder: Path) -> None:
    words = ["--as", "checker", "--by", "reviewer-1", "--on", "2031-03-12"]
    words += ["--verdict", "object", "--words", "a habit is\nno lock"]

    assert main(["sign", "SA-DD-003", *words, "--folder", str(folder)]) == 0

    handbook = read(folder)
    page = next(one for one in handbook.pages if one.path == "id/SA-DD-003")
    assert handbook.book.records["SA-DD-003"].state == "in check"
    assert (
        "checker's objection of 12 March 2031 stands: \u201ca habit is no lock\u201d"
        in page.review.words
    )
    assert "Objections that stand" in repr(page.blocks)


def test_the_lapsed_alarm_of_the_demo_is_checked_again_and_moves_back_first(tmp_path: Path) -> None:
    folder = copy_demo(tmp_path)
    words = ["--as", "checker", "--by", "reviewer-1", "--to", "checked", "--verdict", "no findings"]

    assert main(["sign", "SA-AL-001", *words, "--folder", str(folder)]) == 0

    book = read_book(folder)
    assert book.records["SA-AL-001"].state == "checked"
    lapsed = [one.line.capacity for one in book.reviews["SA-AL-001"].lapsed]
    assert lapsed == ["approver"]
