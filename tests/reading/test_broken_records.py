"""Every broken entry is refused with its place, what is, and the cure."""

import pytest

from garboard.reading.record_file import read_markdown
from tests.reading.broken import BROKEN, HEAD


@pytest.mark.parametrize("says", BROKEN)
def test_a_broken_entry_is_refused_with_place_reason_and_cure(says: str) -> None:
    lines, expected = BROKEN[says]

    read = read_markdown(f"{HEAD}{lines}\n---\nOne sentence.\n", "a.md")

    assert "\n".join(str(item) for item in read.diagnostics) == expected


def test_the_frame_of_the_broken_entries_is_itself_sound() -> None:
    read = read_markdown(f"{HEAD}---\nOne sentence.\n", "a.md")

    assert read.diagnostics == ()
