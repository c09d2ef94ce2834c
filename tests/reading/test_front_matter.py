"""A file falls into head and body, and neither loses a line."""

import pytest

from garboard.reading.front_matter import part_file
from garboard.reading.nodes import MapNode
from garboard.reading.record_file import read_markdown
from garboard.reading.text_file import read_text
from garboard.records.pages import WrittenPage


def said(text: str) -> list[str]:
    """The messages about a file, without the code."""
    return [
        str(item).replace(" [unreadable-record]", "")
        for item in part_file(text, "a.md").diagnostics
    ]


def test_a_head_and_a_body_know_their_lines() -> None:
    parts = part_file("---\ntitle: Low air\n---\nFirst.\n\nSecond.\n", "a.md")

    assert parts.head is not None
    assert isinstance(parts.head.node, MapNode)
    assert parts.head.node.entries[0].value.where.line == 2
    assert (parts.body, parts.body_line) == ("First.\n\nSecond.\n", 4)


def test_a_rule_in_the_body_is_no_fence() -> None:
    parts = part_file("---\ntitle: Low air\n---\nFirst.\n---\nSecond.\n", "a.md")

    assert parts.body == "First.\n---\nSecond.\n"


def test_a_page_that_starts_like_a_key_loses_nothing() -> None:
    text = "Caution: air at work.\n\nRead this first.\n"

    read = read_markdown(text, "index.md")

    assert isinstance(read.thing, WrittenPage)
    assert (read.thing.text, read.thing.text_line, read.diagnostics) == (text, 1, ())


def test_a_head_that_is_never_closed_says_so() -> None:
    assert said("---\ntitle: Low air\nHissing.\n") == [
        "a.md:1:1: STOP: the front matter opens here and is never closed\n"
        "  help: write a line of --- after its last key"
    ]


@pytest.mark.parametrize("fence", ["--", "----", " ---", "—", "***", "..."])
def test_a_misspelt_closing_fence_is_found(fence: str) -> None:
    assert said(f"---\ntitle: Low air\n{fence}\nHissing.\n") == [
        "a.md:1:1: STOP: the front matter opens here and is never closed\n"
        f"  help: write --- for {fence.strip()} on line 3"
    ]


def test_a_head_that_does_not_start_on_the_first_line_says_so() -> None:
    assert said("\n---\ntitle: Low air\n---\nHissing.\n") == [
        "a.md:2:1: STOP: front matter starts on the first line, with three dashes\n"
        "  help: delete what stands before it"
    ]
    assert said("----\ntitle: Low air\n---\nHissing.\n") == [
        "a.md:1:1: STOP: front matter starts on the first line, with three dashes\n"
        "  help: write --- for ----"
    ]


def test_a_rule_above_a_page_is_no_misspelt_head() -> None:
    assert said("\n---\n\nA page that starts with a rule.\n") == []


@pytest.mark.parametrize(
    "data",
    [
        b"\xef\xbb\xbf---\ntitle: Low air\nsystem: SA\n---\nOne.\nTwo.\n",
        b"---\r\ntitle: Low air\r\nsystem: SA\r\n---\r\nOne.\r\nTwo.\r\n",
        b"---\rtitle: Low air\rsystem: SA\r---\rOne.\rTwo.\r",
    ],
    ids=["byte order mark", "line ends of Windows", "line ends of old Macs"],
)
def test_files_of_other_machines_read_as_the_plain_one(data: bytes) -> None:
    plain = b"---\ntitle: Low air\nsystem: SA\n---\nOne.\nTwo.\n"

    read = read_text(data, "log/a.md")

    assert read.fault is None
    assert read_markdown(read.text, "log/a.md") == read_markdown(plain.decode(), "log/a.md")


def test_a_byte_that_is_no_utf8_is_found_by_line_and_number() -> None:
    read = read_text(b"---\r\ntitle: Caf\xe9\r\n---\r\n", "a.md")

    assert str(read.fault) == (
        "a.md:2:11: STOP: byte 0xE9, number 11 of its line, is no UTF-8 [unreadable-record]\n"
        "  help: save the file as UTF-8, and retype the letter"
    )
    assert read.text == "---\ntitle: Caf\ufffd\n---\n"


def test_the_column_of_a_bad_byte_counts_letters_and_its_number_counts_bytes() -> None:
    read = read_text("title: é".encode() + b"\xff", "a.md")

    assert str(read.fault).startswith("a.md:1:9: STOP: byte 0xFF, number 10 of its line")


def test_a_file_saved_as_utf16_says_so() -> None:
    read = read_text("title: Low air\n".encode("utf-16"), "a.md")

    assert str(read.fault).startswith("a.md:1:1: STOP: the file is saved as UTF-16")
    assert read.text == "title: Low air\n"


def test_a_file_larger_than_any_record_is_not_read() -> None:
    read = read_text(b"x" * 1_000_001, "a.md")

    assert str(read.fault).startswith("a.md:1:1: STOP: 1000001 bytes, more than 1000000")
    assert read.text == ""
