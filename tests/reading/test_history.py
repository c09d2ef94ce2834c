"""What git says of the files: corroboration, whatever somebody put into the repository."""

import json
import re
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import read, read_book
from garboard.reading import history
from garboard.reading.corroboration import Corroboration, corroborate
from garboard.reading.history import read_history
from garboard.reading.past import read_past
from tests.reading.past_repository import FINDING, FOUND, Repository


@pytest.fixture
def repository(tmp_path: Path) -> Repository:
    """A handbook of one finding, committed once."""
    made = Repository(tmp_path / 'a ship\u2019s "papers"')
    made.commit()
    return made


def told(folder: Path, **more: int) -> Corroboration:
    return corroborate(read_book(folder).content, read_history(folder, **more))


def texts(folder: Path) -> list[str]:
    return [f"{one.where.path}: {one.severity}: {one.text}" for one in told(folder).found]


def without_hash(text: str) -> str:
    return re.sub(r"commit [0-9a-f]{10}", "commit X", text)


def test_a_history_that_agrees_says_only_how_far_it_reaches(repository: Repository) -> None:
    said = told(repository.folder)

    assert said.found == ()
    assert said.reach == "known from 2031-03-10 on, when the first of these files was committed"


def test_a_folder_in_no_repository_says_so_in_one_line(tmp_path: Path) -> None:
    Repository(tmp_path / "a")
    folder = (tmp_path / "a" / "content").rename(tmp_path / "content")

    assert told(folder) == Corroboration("unknown: the folder is in no git repository")


def test_a_repository_without_a_commit_says_so(tmp_path: Path) -> None:
    made = Repository(tmp_path)

    assert told(made.folder) == Corroboration("unknown: nothing was ever committed")


def test_a_machine_without_git_says_so(
    repository: Repository, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(history, "GIT", "no-such-program")

    assert told(repository.folder) == Corroboration("unknown: git is not on this machine")


def test_a_record_that_is_gone_is_named_with_its_path_and_day(repository: Repository) -> None:
    (repository.folder / FOUND).unlink()
    repository.commit("2031-04-02")

    found = told(repository.folder).found

    assert [without_hash(str(one)) for one in found] == [
        f"{FOUND}:1:1: HOLD: SA-FN-012 stood here until commit X of 2031-04-02, and no file has it"
        " now [history-of-files]\n"
        "  help: restore the file, or enter the id in retired.yml with the reason"
    ]


def test_a_record_taken_out_and_not_committed_yet_is_named_too(repository: Repository) -> None:
    (repository.folder / FOUND).unlink()

    assert [without_hash(one) for one in texts(repository.folder)] == [
        f"{FOUND}: HOLD: SA-FN-012 stood here in commit X of 2031-03-10, and no file has it now"
    ]


def test_a_record_that_moved_or_was_retired_or_cannot_be_read_has_not_vanished(
    repository: Repository,
) -> None:
    moved = repository.folder / "log/2031/2031-03-09-other-name.md"
    (repository.folder / FOUND).rename(moved)
    repository.commit("2031-04-02")
    after_move = texts(repository.folder)
    moved.write_text(FINDING.replace("words: Shut", "words: [\nShut"), "utf-8")
    after_garble = texts(repository.folder)
    moved.write_bytes(b"---\nid: SA-FN-0\xff12\n")
    after_damage = texts(repository.folder)
    moved.unlink()
    repository.write("retired.yml", "SA-FN-012: {was: finding, why: typed twice, on: 2031-04-02}\n")
    after_retired = texts(repository.folder)

    assert after_move == after_garble == after_damage == after_retired == []


def test_a_record_dropped_on_the_way_through_a_merge_is_named(repository: Repository) -> None:
    repository.git("checkout", "-q", "-b", "side")
    repository.write("log/2031/2031-03-11-tap.md", FINDING.replace("SA-FN-012", "SA-FN-013"))
    repository.commit("2031-03-11")
    repository.git("checkout", "-q", "main")
    repository.write("log/2031/2031-03-12-drain.md", FINDING.replace("SA-FN-012", "SA-FN-014"))
    repository.commit("2031-03-12")
    repository.git("merge", "-q", "--strategy=ours", "-m", "both", "side", on="2031-03-13")

    assert [without_hash(one) for one in texts(repository.folder)] == [
        "log/2031/2031-03-11-tap.md: HOLD: SA-FN-013 stood here in commit X of 2031-03-11, and no"
        " file has it now"
    ]


WORDS = {
    "words": (
        FINDING,
        FINDING.replace("Shut either stop and this reads the header.", "All is well."),
        'its words was "Shut either stop and this reads the header.", is "All is well."',
    ),
    "signature": (
        FINDING,
        FINDING.replace("signed:\n  - {capacity: any hand, by: volunteer-1, on: 2031-03-09}\n", ""),
        "the any hand's signature of 2031-03-09 is gone",
    ),
    "signature written over": (
        FINDING,
        FINDING.replace("on: 2031-03-09}", "on: 2031-03-09, to: accepted}"),
        "the any hand's signature of 2031-03-09 is another now: to none -> accepted",
    ),
    "objection": (
        "---\nid: SA-DD-012\ntitle: Switch\nsystem: SA\nobjections: [{by: lead, words: too dear}]\n"
        "---\nSeen.\n",
        "---\nid: SA-DD-012\ntitle: Switch\nsystem: SA\n---\nSeen.\n",
        'an objection was "too dear", is gone',
    ),
    "failure": (
        "---\nid: SA-TR-012\ntitle: Switch\nsystem: SA\nresult: fail\n---\nSeen.\n",
        "---\nid: SA-TR-012\ntitle: Switch\nsystem: SA\nresult: pass\n---\nSeen.\n",
        'its result was "fail", is "pass"',
    ),
    "hold point": (
        "---\nid: SA-IT-012\ntitle: Switch\nsystem: SA\npoint: H\n---\nSeen.\n",
        "---\nid: SA-IT-012\ntitle: Switch\nsystem: SA\npoint: W\n---\nSeen.\n",
        'its point was "H", is "W"',
    ),
}


@pytest.mark.parametrize("what", WORDS)
def test_what_must_not_be_lost_is_named_as_it_was_and_as_it_is(
    repository: Repository, what: str
) -> None:
    was, is_, says = WORDS[what]
    repository.write(FOUND, was)
    repository.commit("2031-03-11")
    repository.write(FOUND, is_)
    repository.commit("2031-03-12")

    found = [without_hash(one) for one in texts(repository.folder) if "WARN" in one]

    assert len(found) == 1
    assert says in found[0]
    assert found[0].endswith("; it stood so until commit X of 2031-03-12")


def test_what_was_added_laid_out_anew_or_put_back_is_no_loss(repository: Repository) -> None:
    other = FINDING.replace("either stop and", "either stop\n  and")
    signed = "  - {capacity: in charge, by: lead, on: 2031-03-10, to: accepted}\n---\nAs"
    repository.write(FOUND, other.replace("---\nAs", signed))
    repository.commit("2031-03-11")
    repository.write(FOUND, FINDING.replace("words: Shut", "words: Open"))
    repository.commit("2031-03-12")
    repository.write(FOUND, other.replace("---\nAs", signed))
    repository.commit("2031-03-13")

    found = [without_hash(one) for one in texts(repository.folder)]

    assert found == [
        f'{FOUND}: WARN: SA-FN-012: its words was "Open either stop and this reads the header.", is'
        ' "Shut either stop and this reads the header."; it stood so until commit X of 2031-03-13'
    ]


def test_a_shallow_clone_says_from_which_day_it_knows_and_claims_nothing_before(
    repository: Repository, tmp_path: Path
) -> None:
    repository.without_own_day()
    repository.write(FOUND, FINDING.replace("on: 2031-03-09}", "on: 2031-05-01}"))
    repository.commit("2031-03-12")
    (repository.folder / "log/2031/2031-03-11-tap.md").write_text(
        FINDING.replace("SA-FN-012", "SA-FN-013"), "utf-8"
    )
    repository.commit("2031-03-14")
    url = (repository.root).as_uri()
    repository.git("clone", "-q", "--depth", "1", url, str(tmp_path / "shallow"))

    said = told(tmp_path / "shallow" / "content")

    assert (
        said.reach == "known from 2031-03-14 on; the clone is shallow, what was before is unknown"
    )
    assert said.found == ()


def test_what_a_partial_clone_left_behind_is_not_fetched(
    repository: Repository, tmp_path: Path
) -> None:
    repository.write(FOUND, FINDING.replace("Shut", "Open"))
    repository.commit("2031-03-12")
    repository.git("config", "uploadpack.allowFilter", "true")
    url, partial = (repository.root).as_uri(), tmp_path / "partial"
    repository.git("clone", "-q", "--filter=blob:none", url, str(partial))
    packs = sorted(partial.glob(".git/objects/pack/*"))

    said = told(partial / "content")

    assert said.reach.startswith("unknown: git cannot read the repository: ")
    assert said.found == ()
    assert sorted(partial.glob(".git/objects/pack/*")) == packs


def test_a_build_of_one_commit_is_the_same_from_a_shallow_clone(
    repository: Repository, tmp_path: Path
) -> None:
    repository.write(FOUND, FINDING.replace("Shut", "Open"))
    repository.commit("2031-03-12")
    url = (repository.root).as_uri()
    repository.git("clone", "-q", "--depth", "1", url, str(tmp_path / "shallow"))

    assert read(repository.folder).pages == read(tmp_path / "shallow" / "content").pages


def test_a_signature_that_came_before_its_day_or_long_after_is_told(repository: Repository) -> None:
    repository.without_own_day()
    line = "  - {capacity: in charge, by: lead, on: 2031-05-01, to: accepted}\n---\nAs"
    repository.write(FOUND, FINDING.replace("---\nAs", line))
    repository.commit("2031-04-28")
    old = "  - {capacity: doer, by: lead, on: 2031-03-20}\n---\nAs"
    repository.write(
        "log/2031/2031-03-11-tap.md",
        FINDING.replace("SA-FN-012", "SA-FN-013").replace("---\nAs", old),
    )
    repository.commit("2031-06-28")

    assert [without_hash(one) for one in texts(repository.folder)] == [
        f"{FOUND}: WARN: SA-FN-012: the in charge's signature of 2031-05-01 came with commit X of"
        " 2031-04-28, before its day",
        "log/2031/2031-03-11-tap.md: NOTE: commit X of 2031-06-28 brought signatures more than 14"
        " days after their day: SA-FN-013 (the any hand's signature of 2031-03-09), SA-FN-013 (the"
        " doer's signature of 2031-03-20)",
    ]


def test_a_commit_of_the_last_day_that_there_is_is_read_like_any_other(
    repository: Repository,
) -> None:
    repository.without_own_day()
    repository.write(FOUND, FINDING.replace("on: 2031-03-09}", "on: 9999-12-31}"))
    repository.commit("2031-04-02")
    repository.write("log/2031/2031-03-11-tap.md", FINDING.replace("SA-FN-012", "SA-FN-013"))
    repository.commit("2031-04-03")
    content = read_book(repository.folder).content
    history = read_history(repository.folder)
    last = replace(history, text=history.text.replace(b"2031-04-03T", b"9999-12-31T"))

    found = [one for one in corroborate(content, last).found if "was" not in one.text]

    assert [(one.about, str(one.severity)) for one in found] == [
        ("SA-FN-012", "WARN"),
        ("SA-FN-012", "WARN"),
        ("SA-FN-013", "NOTE"),
    ]


def test_invented_days_are_not_held_against_the_calendar(repository: Repository) -> None:
    repository.write(FOUND, FINDING.replace("on: 2031-03-09}", "on: 2031-09-01}"))
    repository.commit("2031-03-12")

    assert [one for one in texts(repository.folder) if "before its day" in one] == []


def test_a_log_that_is_too_long_is_read_so_far_and_says_so(repository: Repository) -> None:
    repository.write(FOUND, FINDING.replace("Shut", "Open"))
    repository.commit("2031-04-01")

    most = read_history(repository.folder).text.rindex(b"diff --git")
    so_far, hardly = told(repository.folder, most=most), told(repository.folder, most=100)

    assert so_far.reach.startswith("known from 2031-04-01 on; there is too much of it")
    assert [one.about for one in so_far.found] == ["SA-FN-012"]
    assert hardly == Corroboration("unknown: there is too much of it")


HOSTILE = 'log/2031/2031-03-20-a "b"\t\n\\\u202e\u00e9 --- +++.md'


def test_hostile_names_and_texts_are_only_ever_text(repository: Repository) -> None:
    head = f"{'0' * 32} 1111111111 2000-01-01T00:00:00+00:00\n\ndiff --git a/x.md b/x.md\n"
    body = (
        f"{head}--- a/x.md\n+++ /dev/null\n@@ -1,2 +0,0 @@\n-gone\n-gone\n\x00\u202e\\ No newline\n"
    )
    repository.write(HOSTILE, FINDING.replace("SA-FN-012", "SA-FN-020") + body)
    (repository.folder / "log/2031/2031-03-21-x.md").write_bytes(
        b"\xff\xfe\x00---\nid: SA-FN-030\n"
    )
    repository.git("config", "user.name", "x\n--- a/y.md")
    repository.commit("2031-04-02", head)
    before = next(iter(read_past(read_history(repository.folder))))
    (repository.folder / HOSTILE).unlink()
    repository.commit("2031-04-03", head)

    found = told(repository.folder).found

    assert {touched.path for touched in before.files} >= {HOSTILE}
    assert [(one.about, str(one.severity)) for one in found] == [("SA-FN-020", "HOLD")]
    assert found[0].where.path.isprintable()


def test_nothing_that_a_repository_or_its_surroundings_bring_is_run(
    repository: Repository, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    trap = tmp_path / "trap"
    trap.write_text(f"#!/bin/sh\ntouch {tmp_path}/sprung\ncat\n", "utf-8")
    trap.chmod(0o755)
    (repository.root / ".gitattributes").write_text("*.md diff=trap filter=trap -text\n", "utf-8")
    repository.write(FOUND, FINDING.replace("Shut", "Open"))
    repository.commit("2031-04-02")
    for name in (
        *("core.pager", "pager.log", "core.fsmonitor", "core.sshCommand", "core.editor"),
        *("diff.external", "diff.trap.command", "diff.trap.textconv", "gpg.program"),
        *("filter.trap.smudge", "filter.trap.clean", "alias.log", "alias.rev-parse"),
    ):
        repository.git("config", name, f"!{trap}" if name.startswith("alias") else str(trap))
    repository.git("config", "log.showSignature", "true")
    repository.seal()
    for name in ("GIT_EXTERNAL_DIFF", "GIT_PAGER", "PAGER", "GIT_SSH", "GIT_ASKPASS"):
        monkeypatch.setenv(name, str(trap))
    monkeypatch.setenv("GIT_DIR", str(tmp_path / "elsewhere"))
    monkeypatch.setenv("GIT_CONFIG_COUNT", "1")
    monkeypatch.setenv("GIT_CONFIG_KEY_0", "diff.external")
    monkeypatch.setenv("GIT_CONFIG_VALUE_0", str(trap))

    found = texts(repository.folder)

    assert not (tmp_path / "sprung").exists()
    assert len(found) == 1
    assert "its words" in found[0]


def test_settings_that_change_how_a_log_looks_change_nothing(repository: Repository) -> None:
    (repository.root / ".gitattributes").write_text("*.md binary -diff\n", "utf-8")
    gone = "log/2031/2031-03-11-tap.md"
    repository.write(gone, FINDING.replace("SA-FN-012", "SA-FN-013"))
    repository.commit("2031-04-01")
    (repository.folder / gone).unlink()
    repository.write(FOUND, FINDING.replace("Shut", "Open"))
    repository.commit("2031-04-02")
    plain = texts(repository.folder)
    for name, value in {
        "diff.noprefix": "true",
        "diff.mnemonicPrefix": "true",
        "diff.renames": "copies",
        "diff.context": "0",
        "diff.relative": "false",
        "diff.suppressBlankEmpty": "true",
        "diff.algorithm": "patience",
        "color.ui": "always",
        "core.quotePath": "true",
        "log.follow": "true",
        "log.showRoot": "false",
        "log.diffMerges": "off",
        "log.date": "relative",
        "format.pretty": "oneline",
    }.items():
        repository.git("config", name, value)

    assert texts(repository.folder) == plain
    assert [one.split(":")[0] for one in plain] == [gone, FOUND]


def test_the_command_tells_it_after_the_faults_and_a_vanished_record_fails_it(
    repository: Repository, capsys: pytest.CaptureFixture[str]
) -> None:
    clean = main(["check", "--history", str(repository.folder)])
    said = capsys.readouterr().out
    (repository.folder / FOUND).unlink()
    without = main(["check", str(repository.folder)])
    capsys.readouterr()
    gone = main(["check", "--history", str(repository.folder)])
    told_of = capsys.readouterr().out
    main(["check", "--history", "--format", "json", str(repository.folder)])
    data = json.loads(capsys.readouterr().out)

    assert (clean, without, gone) == (0, 0, 1)
    assert said.splitlines()[-1].startswith("History of the files: known from 2031-03-10 on")
    assert "HOLD: SA-FN-012 stood here" in told_of
    assert [one["code"] for one in data if one["severity"] == "HOLD"] == ["history-of-files"]


def test_words_lost_in_the_history_alone_do_not_fail_the_command(
    repository: Repository, capsys: pytest.CaptureFixture[str]
) -> None:
    repository.write(FOUND, FINDING.replace("Shut", "Open"))

    status = main(["check", "--history", str(repository.folder)])

    assert status == 0
    assert "WARN: SA-FN-012: its words was" in capsys.readouterr().out
