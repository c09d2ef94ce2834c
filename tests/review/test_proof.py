"""A signature with a key: what it proves, and everything that it shows to be somebody else's."""

import shutil
import subprocess
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.errors import GarboardError
from garboard.handbook import Handbook, read, read_book
from garboard.reading import ssh_signatures
from garboard.reading.ssh_signatures import sign_text, verify_text
from garboard.records.signoff import Capacity
from garboard.review.proof import Proof
from tests.golden_case import found_in
from tests.review.signed_sample import DECIDED, write_sample

SIGN = (
    *("--as", "checker", "--by", "reviewer-1", "--on", "2031-03-12", "--to", "checked"),
    *("--verdict", "no findings", "--scope", "layout"),
)


@pytest.fixture
def key(tmp_path: Path) -> Path:
    """A key that is thrown away."""
    return make_key(tmp_path / "key")


def make_key(path: Path, *more: str) -> Path:
    words = ["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-C", "", *more, "-f", str(path)]
    subprocess.run(words, check=True)
    return path


def signer(key: Path, options: str = "", person: str = "reviewer-1") -> str:
    public = key.with_suffix(".pub").read_text("utf-8").strip()
    return f"{person} {options}{public}\n"


@pytest.fixture
def folder(tmp_path: Path, key: Path) -> Path:
    """A small handbook in which reviewer-1 has a key and has signed with it."""
    folder = write_sample(tmp_path / "content", allowed_signers="")
    (folder / "allowed_signers").write_text(signer(key), "utf-8")
    assert main(["sign", "SA-DD-003", *SIGN, "--key", str(key), "--folder", str(folder)]) == 0
    return folder


def page_words(handbook: Handbook, path: str) -> str:
    return next(one.review.words for one in handbook.pages if one.path == path)


def forged(folder: Path) -> list[str]:
    return [str(one) for one in found_in(folder) if one.code == "signature-forged"]


def edit(folder: Path, old: str, new: str, path: str = DECIDED) -> None:
    text = (folder / path).read_text("utf-8")
    assert text.count(old) == 1
    (folder / path).write_text(text.replace(old, new), "utf-8")


def test_a_line_signed_with_the_key_of_its_person_is_proved(folder: Path) -> None:
    book = read_book(folder)

    line = book.reviews["SA-DD-003"].signatures[0]
    assert line.proof is Proof.FITS
    assert line.stands
    assert len(line.line.digest or "") == 64
    assert forged(folder) == []


def test_the_page_of_a_record_says_which_lines_are_proved(folder: Path) -> None:
    page = next(one for one in read(folder).pages if one.path == "id/SA-DD-003")

    assert "checked: layout; proved by key" in repr(page.blocks)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("by: reviewer-1", "by: reviewer-2"),
        ("on: 2031-03-12", "on: 2031-03-13"),
        ("scope: [layout]", "scope: [layout, wiring]"),
        ("verdict: no findings", "verdict: comments"),
        ('SA-PS-001.set: "18 bar(g)"', 'SA-PS-001.set: "15 bar(g)"'),
        ("capacity: checker", "capacity: any hand"),
        ("to: checked", "band: 50 %, to: checked"),
        (", digest: ", ", digest: 0"),
    ],
)
def test_an_edited_line_is_forged(folder: Path, key: Path, old: str, new: str) -> None:
    (folder / "allowed_signers").write_text(signer(key) + signer(key, person="reviewer-2"), "utf-8")
    assert forged(folder) == []

    edit(folder, old, new)

    found = forged(folder)
    assert len(found) == 1
    assert "STOP" in found[0]
    assert "does not fit this line" in found[0]
    assert not read_book(folder).reviews["SA-DD-003"].signatures[0].stands


def test_a_line_put_under_another_record_is_forged(folder: Path) -> None:
    line = next(
        one for one in (folder / DECIDED).read_text("utf-8").split("\n") if "capacity" in one
    )

    edit(folder, "class: B\n", f"class: B\nsigned:\n{line}\n", "systems/starting-air/sa-cl-001.md")

    assert [one.split(":")[0] for one in forged(folder)] == ["systems/starting-air/sa-cl-001.md"]


def test_a_record_that_changes_after_a_proof_lapses_and_is_not_forged(folder: Path) -> None:
    edit(folder, "chosen: one on each", "chosen: one for both")

    assert forged(folder) == []
    assert len(read_book(folder).reviews["SA-DD-003"].lapsed) == 1


def test_a_digest_is_compared_in_its_full_length(folder: Path) -> None:
    digest = str(read_book(folder).records["SA-DD-003"].signed[0].digest)

    edit(folder, digest, digest[:60] + ("0000" if digest[60:] != "0000" else "1111"))

    assert [str(one.moved[0]) for one in read_book(folder).reviews["SA-DD-003"].lapsed] == [
        "its own words changed"
    ]


def test_another_persons_key_proves_nothing(folder: Path, tmp_path: Path) -> None:
    other = make_key(tmp_path / "other")

    (folder / "allowed_signers").write_text(signer(other) + "", "utf-8")

    assert "does not fit this line" in forged(folder)[0]


def test_who_has_a_key_is_not_signed_for_without_it(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = (folder / DECIDED).read_bytes()
    other = make_key(tmp_path / "other")
    words = ["sign", "SA-DD-003", *SIGN[:6], "--folder", str(folder)]

    assert main(words) == 2
    assert "has no proof, and reviewer-1 has a key" in capsys.readouterr().err
    assert main([*words, "--key", str(other)]) == 2
    assert "does not fit this line" in capsys.readouterr().err
    assert (folder / DECIDED).read_bytes() == before


@pytest.mark.parametrize(
    ("options", "proof"),
    [
        ('valid-after="20310312" ', Proof.FITS),
        ('valid-after="20310312",valid-before="20310313" ', Proof.FITS),
        ('valid-before="203103121201" ', Proof.FITS),
        ('valid-after="20310313" ', Proof.FORGED),
        ('valid-before="20310312" ', Proof.FORGED),
        ('namespaces="garboard,file" ', Proof.FITS),
    ],
)
def test_a_key_speaks_only_for_the_days_it_was_good(
    folder: Path, key: Path, options: str, proof: Proof
) -> None:
    (folder / "allowed_signers").write_text(signer(key, options), "utf-8")

    assert read_book(folder).reviews["SA-DD-003"].signatures[0].proof is proof


def test_without_ssh_keygen_nothing_is_proved_and_one_note_says_so(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    verify_text.cache_clear()
    monkeypatch.setattr(ssh_signatures, "TOOL", "no-such-program")

    handbook = read(folder)

    found = [one for one in handbook.diagnostics if one.code == "signature-forged"]
    review = handbook.book.reviews["SA-DD-003"]
    assert [(one.severity.value, one.text.split(":")[1]) for one in found] == [
        ("NOTE", " 1 proof was not looked at, and nothing is taken for proved")
    ]
    assert review.standing(Capacity.CHECKER) == ()
    assert not page_words(handbook, "id/SA-DD-003").startswith("Reviewed")
    assert "proved by key" not in repr(handbook.pages)
    verify_text.cache_clear()


def test_without_ssh_keygen_nothing_is_signed_with_a_key(
    key: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ssh_signatures, "TOOL", "no-such-program")

    with pytest.raises(GarboardError, match="is not on this machine"):
        sign_text("a", key)


def test_a_key_that_is_none_is_said(tmp_path: Path) -> None:
    (tmp_path / "none").write_text("no key\n", "utf-8")

    with pytest.raises(GarboardError, match="there is no key file"):
        sign_text("a", tmp_path / "missing")
    with pytest.raises(GarboardError, match="did not sign with"):
        sign_text("a", tmp_path / "none")


def test_one_proof_is_asked_for_once_in_a_process(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    verify_text.cache_clear()
    read_book(folder)
    asked: list[str] = []
    monkeypatch.setattr(shutil, "which", asked.append)

    read_book(folder)

    assert asked == []
    assert verify_text.cache_info().hits >= 1
