"""Where a line may end: not in a number that somebody orders or files by, but in a long path."""

import pytest

from mkdocs_garboard.links import unbroken


@pytest.mark.parametrize("number", ["SK-AIR-106", "G-07", "K-09", "2031-09-22", "SA-TR-013"])
def test_a_number_with_hyphens_stays_on_one_line(number: str) -> None:
    assert f'<span class="id">{number}</span>' in unbroken(f"see {number}, port side")


@pytest.mark.parametrize("words", ["RE-ROUTED", "SA-", "high-water 3", "A-B-C", "log/2031-09-22-x"])
def test_other_words_with_hyphens_may_end_a_line(words: str) -> None:
    assert "<span" not in unbroken(words)


def test_the_path_of_a_file_goes_on_behind_a_folder_and_a_fraction_does_not() -> None:
    assert unbroken("log/2031/06-hose.md:11:8") == "log/<wbr>2031/<wbr>06-hose.md:11:8"
    assert "wbr" not in unbroken("3/4 in, 30/31/32 bar, and/or, a/b.md")
