"""A span is replaced only where the file is still the one that was read."""

import stat
from pathlib import Path

import pytest

from garboard.errors import GarboardError, Where
from garboard.reading.edits import Edit, create_file, replace_spans
from garboard.reading.text_file import digest_of

TEXT = "---\ntitle: Low air\n---\nSet at [18 bar(g)](value:a.b),\nfull at [30](value:c.d).\n"


def at(line: int, column: int, old: str, new: str, path: str = "log/a.md") -> Edit:
    """An edit of the file that the fixture writes."""
    return Edit(Where(path, line, column), old, new)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A content folder with one file."""
    (tmp_path / "log").mkdir()
    (tmp_path / "log" / "a.md").write_bytes(TEXT.encode())
    return tmp_path


def digest(folder: Path) -> str:
    """Of the file as it stands."""
    return digest_of((folder / "log" / "a.md").read_bytes())


def test_spans_are_replaced_and_nothing_else(folder: Path) -> None:
    edits = [at(5, 10, "30", "31 bar(g)"), at(4, 9, "18 bar(g)", "19 bar(g)")]

    new = replace_spans(folder, "log/a.md", edits, digest(folder))

    expected = TEXT.replace("[18 bar(g)]", "[19 bar(g)]").replace("[30]", "[31 bar(g)]")
    assert (folder / "log" / "a.md").read_text() == expected
    assert new == digest(folder)
    assert [path.name for path in (folder / "log").iterdir()] == ["a.md"]


@pytest.mark.parametrize("end", ["\r\n", "\r", "\n"], ids=["Windows", "old Mac", "plain"])
def test_mark_line_ends_and_rights_stay_as_they_are(folder: Path, end: str) -> None:
    path = folder / "log" / "a.md"
    path.write_bytes(b"\xef\xbb\xbf" + TEXT.replace("\n", end).encode())
    path.chmod(0o640)

    replace_spans(folder, "log/a.md", [at(4, 9, "18 bar(g)", "19 bar(g)")], digest(folder))

    expected = b"\xef\xbb\xbf" + TEXT.replace("18", "19").replace("\n", end).encode()
    assert path.read_bytes() == expected
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_lines_put_in_take_the_ends_of_the_file(folder: Path) -> None:
    path = folder / "log" / "a.md"
    path.write_bytes(TEXT.replace("\n", "\r\n").encode())

    replace_spans(folder, "log/a.md", [at(3, 1, "", "signed:\n  - x\n")], digest(folder))

    assert (
        path.read_bytes()
        == TEXT.replace("air\n---", "air\nsigned:\n  - x\n---").replace("\n", "\r\n").encode()
    )


def test_a_span_of_several_lines_may_be_replaced(folder: Path) -> None:
    old = "(value:a.b),\nfull"

    replace_spans(folder, "log/a.md", [at(4, 19, old, "(value:a.b); full")], digest(folder))

    assert "(value:a.b); full at" in (folder / "log" / "a.md").read_text()


def test_a_file_that_has_changed_since_is_left_alone(folder: Path) -> None:
    before = digest(folder)
    (folder / "log" / "a.md").write_text(f"{TEXT}More.\n")

    with pytest.raises(GarboardError, match=r"log/a\.md has changed since it was read"):
        replace_spans(folder, "log/a.md", [at(4, 9, "18 bar(g)", "19 bar(g)")], before)

    assert (folder / "log" / "a.md").read_text() == f"{TEXT}More.\n"


@pytest.mark.parametrize(
    ("edit", "said"),
    [
        (at(4, 9, "17 bar(g)", "x"), r"log/a\.md:4:9 no longer says `17 bar\(g\)`"),
        (at(40, 1, "x", "y"), r"log/a\.md:40:1 is no place in the file any more"),
        (at(4, 400, "x", "y"), r"log/a\.md:4:400 is no place in the file any more"),
        (at(6, 5, "x", "y"), r"log/a\.md:6:5 is no place in the file any more"),
    ],
)
def test_a_span_that_says_something_else_is_refused(folder: Path, edit: Edit, said: str) -> None:
    with pytest.raises(GarboardError, match=said):
        replace_spans(folder, "log/a.md", [edit], digest(folder))

    assert (folder / "log" / "a.md").read_text() == TEXT


def test_one_refused_span_leaves_all_the_others_unwritten(folder: Path) -> None:
    edits = [at(4, 9, "18 bar(g)", "19 bar(g)"), at(5, 10, "29", "31")]

    with pytest.raises(GarboardError):
        replace_spans(folder, "log/a.md", edits, digest(folder))

    assert (folder / "log" / "a.md").read_text() == TEXT


def test_spans_that_overlap_are_refused(folder: Path) -> None:
    edits = [at(4, 9, "18 bar(g)", "x"), at(4, 12, "bar", "y")]

    with pytest.raises(GarboardError, match=r"two edits of log/a\.md overlap on line 4"):
        replace_spans(folder, "log/a.md", edits, digest(folder))


@pytest.mark.parametrize("path", ["../a.md", "/etc/passwd", "log/../../a.md", "", "log\\a.md"])
def test_no_path_leaves_the_folder(folder: Path, path: str) -> None:
    with pytest.raises(GarboardError, match="is no path inside the content folder"):
        replace_spans(folder, path, [], "")
    with pytest.raises(GarboardError, match="is no path inside the content folder"):
        create_file(folder, path, "x")


def test_nothing_is_written_through_a_link(folder: Path, tmp_path: Path) -> None:
    outside = tmp_path.parent / f"{tmp_path.name}-outside"
    outside.mkdir()
    (outside / "a.md").write_text(TEXT)
    (folder / "away").symlink_to(outside)
    (folder / "log" / "b.md").symlink_to(outside / "a.md")

    for path in ("away/a.md", "log/b.md"):
        with pytest.raises(GarboardError, match="is reached by a link"):
            replace_spans(folder, path, [at(4, 9, "18", "19", path)], digest_of(TEXT.encode()))
        with pytest.raises(GarboardError, match="is reached by a link"):
            create_file(folder, path, "x")
    assert (outside / "a.md").read_text() == TEXT


def test_a_file_that_is_gone_is_told(folder: Path) -> None:
    with pytest.raises(GarboardError, match=r"log/c\.md cannot be opened"):
        replace_spans(folder, "log/c.md", [], "")


def test_a_write_that_fails_leaves_the_file_and_no_rest(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(GarboardError, match="cannot be written: No space left on device"):
        replace_spans(folder, "log/a.md", [at(4, 9, "18", "19")], digest(folder))

    assert (folder / "log" / "a.md").read_text() == TEXT
    assert [path.name for path in (folder / "log").iterdir()] == ["a.md"]


def test_a_new_file_is_made_with_its_folders_and_never_over_another(folder: Path) -> None:
    made = create_file(folder, "log/2031/new.md", "One.\n")

    assert made.read_bytes() == b"One.\n"
    with pytest.raises(GarboardError, match=r"log/2031/new\.md is there already"):
        create_file(folder, "log/2031/new.md", "Two.\n")
    assert made.read_bytes() == b"One.\n"
