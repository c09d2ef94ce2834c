"""A content folder is read whole: each file for itself, nothing from outside, all of it said."""

import os
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path

import pytest

from garboard.errors import Diagnostic, GarboardError, Severity, Where
from garboard.reading.content import Content, Unfiled
from garboard.reading.folder import in_order, read_folder
from garboard.records.finding import Finding
from garboard.records.system import ServiceStatus
from garboard.records.vessel import Vessel

Files = Mapping[str, str | bytes]
Read = Callable[[Files], Content]

FINDING = "---\nid: SA-FN-001\ntitle: Low air\nsystem: SA\n---\nSee SA-RV-001.\n"
BROKEN = "---\nid: SA-FN-002\ntitle: Second: leak\nsystem: SA\n---\nHissing.\n"


def said(content: Content) -> list[str]:
    """The messages, without the code."""
    return [str(item).replace(" [unreadable-record]", "") for item in content.diagnostics]


def test_every_sort_of_file_finds_its_place(read_content: Read) -> None:
    content = read_content(
        {
            "people.yml": "lead: {role: lead builder}\n",
            "systems/starting-air/system.yml": "components:\n  RV-001: {kind: relief valve}\n",
            "systems/starting-air/a.md": "---\npage: layout\nsystem: SA\ntitle: Air\n---\nOne.\n",
            "log/2031/2031-03-09-low-air.md": FINDING,
            "log/2031/2031-03-10-hiss.md": "---\ntitle: Hiss\nsystem: SA\n---\nHissing.\n",
            "index.md": "# Skerry Light\n\nRead this first.\n",
            "photos/a.JPG": b"\xff\xd8\xff",
            "log/2031/test.csv": "time,bar\n0,30\n",
            "editions/1.json": "{}\n",
        }
    )

    assert [one.code for one in content.diagnostics] == ["edition-altered"]
    assert content.vessel.vessel == "Skerry Light"
    assert list(content.people) == ["lead"]
    assert list(content.components) == ["SA-RV-001"]
    assert list(content.records) == ["SA-FN-001"]
    assert [page.title for page in content.pages] == ["Skerry Light", "Air"]
    assert [record.title for record in content.unfiled] == ["Hiss"]
    assert content.photos["photos/a.JPG"].bytes == 3
    assert content.logs == {"log/2031/test.csv": "time,bar\n0,30\n"}
    assert content.editions.issued == ()
    assert set(content.digests) >= {"handbook.yml", "index.md", "log/2031/test.csv"}


def test_the_name_of_a_file_in_the_log_gives_the_day(read_content: Read) -> None:
    content = read_content({"log/2031/2031-03-09-low-air.md": FINDING})

    found = content.records["SA-FN-001"]
    assert isinstance(found, Finding)
    assert found.drafted == date(2031, 3, 9)


def test_a_day_in_the_name_that_does_not_exist_is_told(read_content: Read) -> None:
    content = read_content({"log/2031/2031-02-30-low-air.md": FINDING})

    assert said(content) == [
        "log/2031/2031-02-30-low-air.md:1:1: STOP: the file's name: there is no day 2031-02-30\n"
        "  help: rename it: year-month-day and a few words"
    ]
    assert content.records["SA-FN-001"].drafted is None


def test_one_file_that_cannot_be_read_keeps_no_other_from_being_read(read_content: Read) -> None:
    content = read_content({"log/a.md": BROKEN, "log/b.md": FINDING})

    assert list(content.records) == ["SA-FN-001"]
    stub = content.stubs[0]
    assert (stub.title, stub.system, stub.id) == ("Second: leak", "SA", "SA-FN-002")
    assert stub.text == BROKEN
    assert stub.diagnostics == content.diagnostics


def test_a_record_with_a_fault_in_one_field_is_there_with_the_others(read_content: Read) -> None:
    text = FINDING.replace("system: SA", "system: SA\nfound: {by: lead, on: 9.3.2031}\nwords: Hiss")
    content = read_content({"log/a.md": text})

    found = content.records["SA-FN-001"]
    assert isinstance(found, Finding)
    assert (found.words, found.found) == ("Hiss", None)
    assert found.unread == ("found.on", "found")
    assert len(content.diagnostics) == 1


def test_two_records_with_one_id_are_both_kept(read_content: Read) -> None:
    content = read_content({"log/a.md": FINDING, "log/b.md": FINDING})

    assert [record.where.path for record in content.doubles] == ["log/b.md"]
    assert [(one.name, one.where) for one in content.declared] == [
        ("SA-FN-001", Where("log/a.md", 2, 5)),
        ("SA-FN-001", Where("log/b.md", 2, 5)),
    ]


def test_a_system_that_is_named_and_not_begun_is_a_sketch(read_content: Read) -> None:
    system = read_content({}).systems["BG"]

    assert (system.title, system.folder) == ("Bilge fire", "systems/bilge-fire")
    assert system.status is ServiceStatus.SKETCH
    assert system.where == Where("handbook.yml", 2, 29)


def test_a_system_that_the_handbook_forgot_is_told_and_read(read_content: Read) -> None:
    content = read_content({"systems/windlass/system.yml": "system: HY\ntitle: Windlass\n"})

    assert said(content) == [
        "systems/windlass/system.yml:1:1: STOP: "
        "handbook.yml knows no system with the folder windlass\n"
        "  help: add HY: windlass under systems"
    ]
    assert content.systems["HY"].title == "Windlass"


def test_a_handbook_file_that_cannot_be_read_leaves_everything_else(read_content: Read) -> None:
    content = read_content({"handbook.yml": "vessel: Skerry: Light\n", "log/a.md": FINDING})

    assert content.vessel == Vessel(where=Where("handbook.yml"))
    assert list(content.records) == ["SA-FN-001"]
    assert [str(item.where) for item in content.diagnostics] == ["handbook.yml:1:15"]


def test_kinds_of_record_without_an_id_are_unfiled(read_content: Read) -> None:
    head = "---\ntitle: Hiss\nsystem: SA\n"
    content = read_content(
        {
            "log/a.md": f"{head}---\nOne.\n",
            "log/b.md": f"{head}kind: finding\nwords: Hiss\n---\nOne.\n",
            "log/c.md": f"{head}kind: fidning\n---\nOne.\n",
            "log/d.md": f"{head}words: Hiss\n---\nOne.\n",
        }
    )

    assert [type(record) for record in content.unfiled] == [Unfiled, Finding, Unfiled, Unfiled]
    assert [str(item) for item in content.diagnostics] == [
        "log/c.md:4:7: STOP: `fidning` is no kind of record [unknown-kind]\n  help: write finding",
        "log/d.md:4:1: STOP: key words is not known [unreadable-record]\n"
        "  help: remove it, or say it in the text: words belongs to finding",
    ]


@pytest.mark.parametrize(
    ("ident", "expected"),
    [
        (
            "SA-XX-001",
            "log/a.md:2:5: STOP: SA-XX-001 has the letters XX, which no kind",
        ),
        (
            "SA-FN-1",
            "log/a.md:2:5: STOP: `SA-FN-1` is no record id",
        ),
        (
            "SA-PR-006 r1",
            "log/a.md:2:5: STOP: `SA-PR-006 r1` is no record id [unreadable-record]\n"
            "  help: write the id alone, without a revision",
        ),
    ],
)
def test_an_id_that_says_no_kind_makes_a_stub(
    read_content: Read, ident: str, expected: str
) -> None:
    content = read_content({"log/a.md": FINDING.replace("SA-FN-001", ident)})

    assert len(content.stubs) == 1
    assert str(content.diagnostics[0]).startswith(expected)


INCOMPLETE = {
    "a record without a title": (
        FINDING.replace("title: Low air\n", ""),
        "log/a.md:1:1: STOP: it has no title\n  help: write title: and a noun phrase",
    ),
    "a record without a system": (
        FINDING.replace("system: SA\n", ""),
        "log/a.md:1:1: STOP: it has no system\n  help: write system: and two capital letters",
    ),
    "a record of two systems": (
        FINDING.replace("system: SA", "system: BG"),
        "log/a.md:4:9: STOP: SA-FN-001 is of system SA, system says BG\n"
        "  help: write the same in both",
    ),
    "a record without front matter": (
        "Hissing.\n",
        "log/a.md:1:1: STOP: a record without front matter\n"
        "  help: start it with ---, title:, system:, an id: if it has one, and --- again",
    ),
    "a record with an empty head": (
        "---\n---\nHissing.\n",
        "log/a.md:1:1: STOP: the front matter holds no keys\n"
        "  help: write title: and system: between the fences",
    ),
    "a record whose head is a sentence": (
        "---\nLow air\n---\nHissing.\n",
        "log/a.md:1:1: STOP: the front matter holds no keys\n"
        "  help: write title: and system: between the fences",
    ),
    "a hidden sign in the text": (
        FINDING.replace("See", "Se\u202ee"),
        "log/a.md:6:3: STOP: a sign that cannot be seen, U+202E, stands here\n"
        "  help: delete it, or retype the line",
    ),
}


@pytest.mark.parametrize("says", INCOMPLETE)
def test_a_record_that_lacks_the_least_says_so(read_content: Read, says: str) -> None:
    text, expected = INCOMPLETE[says]

    assert said(read_content({"log/a.md": text})) == [expected]


LEFT_UNREAD = {
    "an ending of other tools": ("systems/starting-air/system.yaml", "rename it to system.yml"),
    "an ending in capitals": ("log/A.MD", "rename it to A.md"),
    "a long ending": ("log/a.markdown", "rename it to a.md"),
    "a misspelt list": ("poeple.yml", "rename it to people.yml, or delete it"),
    "a misspelt system file": (
        "systems/starting-air/sytem.yml",
        "rename it to system.yml, or delete it",
    ),
    "a list in the wrong folder": ("log/people.yml", "rename it to people.yml, or delete it"),
}


@pytest.mark.parametrize("says", LEFT_UNREAD)
def test_a_file_that_is_not_read_is_told(read_content: Read, says: str) -> None:
    path, cure = LEFT_UNREAD[says]

    content = read_content({path: "x: y\n"})

    assert [(item.where, item.severity, item.help) for item in content.diagnostics] == [
        (Where(path), Severity.STOP, cure)
    ]


def test_a_file_of_no_use_is_a_note(read_content: Read) -> None:
    content = read_content({"log/a.docx": b"x", "log/readme": b"y"})

    assert [(item.where.path, item.severity) for item in content.diagnostics] == [
        ("log/a.docx", Severity.NOTE),
        ("log/readme", Severity.NOTE),
    ]


def test_hidden_files_are_passed_over(read_content: Read) -> None:
    content = read_content({".git/config": "x", "log/.keep": "", "log/.a.md": "---\n"})

    assert content.diagnostics == ()


def test_no_link_is_followed(write_content: Callable[[Files], Path], tmp_path: Path) -> None:
    outside = tmp_path.parent / f"{tmp_path.name}-outside"
    outside.mkdir()
    (outside / "secret.md").write_text(FINDING)
    folder = write_content({"log/b.md": FINDING.replace("FN-001", "FN-002")})
    (folder / "log" / "a.md").symlink_to(outside / "secret.md")
    (folder / "elsewhere").symlink_to(outside)
    (folder / "round").symlink_to(folder)
    (folder / "dead.md").symlink_to(folder / "nowhere.md")

    content = read_folder(folder)

    assert list(content.records) == ["SA-FN-002"]
    assert said(content) == [
        f"{path}:1:1: STOP: a link to another place is not followed\n"
        "  help: copy the file in, or delete the link"
        for path in ("dead.md", "elsewhere", "log/a.md", "round")
    ]


def test_names_that_some_machines_cannot_tell_apart_are_refused(read_content: Read) -> None:
    content = read_content({"log/a.md": FINDING, "log/A.md": FINDING.replace("FN-001", "FN-002")})

    assert said(content) == [
        "log/a.md:1:1: STOP: a.md and A.md are one name to some machines\n"
        "  help: rename one of them"
    ]


def test_a_pipe_in_the_folder_does_not_stop_the_reading(
    write_content: Callable[[Files], Path],
) -> None:
    folder = write_content({})
    os.mkfifo(folder / "pipe.md")

    assert said(read_folder(folder)) == [
        "pipe.md:1:1: STOP: this is no file that can be read\n  help: delete it"
    ]


def test_a_name_that_is_no_text_is_told_and_printed_safely(
    write_content: Callable[[Files], Path],
) -> None:
    folder = write_content({})
    (Path(os.fsdecode(os.fsencode(folder) + b"/bad\xff.md"))).write_text(FINDING)
    (folder / "two\nlines.md").write_text(FINDING)

    found = said(read_folder(folder))

    assert found == [
        f"{name}:1:1: STOP: a name with signs that cannot be typed\n  help: rename the file"
        for name in ("bad\\xff.md", "two\\x0alines.md")
    ]
    assert "\n".join(found).encode("ascii")


def test_a_file_that_may_not_be_opened_is_told(
    write_content: Callable[[Files], Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = write_content({"log/a.md": FINDING, "log/b.md": FINDING})
    whole = Path.read_bytes

    def refuse(path: Path) -> bytes:
        if path.name == "a.md":
            raise PermissionError(13, "Permission denied")
        return whole(path)

    monkeypatch.setattr(Path, "read_bytes", refuse)
    content = read_folder(folder)

    assert said(content) == [
        "log/a.md:1:1: STOP: the file cannot be opened: Permission denied\n"
        "  help: see who may read it"
    ]
    assert list(content.records) == ["SA-FN-001"]


def test_a_folder_without_a_handbook_is_none(tmp_path: Path) -> None:
    with pytest.raises(GarboardError, match=r"holds no handbook\.yml"):
        read_folder(tmp_path)
    with pytest.raises(GarboardError, match="there is no folder"):
        read_folder(tmp_path / "nowhere")


def test_faults_stand_in_order_of_place_and_once(read_content: Read) -> None:
    content = read_content({"log/b.md": BROKEN, "log/a.md": BROKEN, "people.yml": "- x\n"})

    places = [item.where for item in content.diagnostics]
    assert places == sorted(places)
    assert len(set(content.diagnostics)) == len(content.diagnostics)


def test_a_fault_met_twice_is_said_once() -> None:
    late = Diagnostic(Where("b.md"), Severity.STOP, "one", "mend it", "unreadable-record")
    early = Diagnostic(Where("a.md"), Severity.STOP, "two", "mend it", "unreadable-record")

    assert in_order([late, early, late]) == (early, late)


def test_reading_twice_gives_the_same(write_content: Callable[[Files], Path]) -> None:
    folder = write_content({"log/a.md": FINDING, "log/b.md": BROKEN})

    assert read_folder(folder) == read_folder(folder)
