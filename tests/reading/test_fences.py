"""Calc fences are found wherever they may stand, and misspelt ones are told."""

import pytest

from garboard.errors import Where
from garboard.reading.fences import Fences, find_fences


def find(text: str) -> Fences:
    """The fences of a text that starts on line 10 of its file."""
    return find_fences(text, "a.md", 10, "SA-CL-001")


def said(text: str) -> list[str]:
    """The messages, without the code."""
    return [str(item).replace(" [unreadable-record]", "") for item in find(text).diagnostics]


def test_a_fence_gives_its_lines_with_their_places() -> None:
    found = find("Before.\n\n```calc sizing; digits 3; hide working\na = 1\n\nb = a\n```\nAfter.\n")

    fence = found.fences[0]
    assert (fence.name, fence.options_text, fence.owner) == (
        "sizing",
        "; digits 3; hide working",
        "SA-CL-001",
    )
    assert fence.where == Where("a.md", 12, 9)
    assert [line.text for line in fence.lines] == ["a = 1", "", "b = a"]
    assert [line.where.line for line in fence.lines] == [13, 14, 15]
    assert (fence.span, found.spans, found.diagnostics) == ((2, 6), ((2, 6),), ())


@pytest.mark.parametrize(
    "text",
    ["~~~calc x\na = 1\n~~~", "`````calc x\na = 1\n``````", "``` calc   x\na = 1\n```   "],
    ids=["tildes", "a longer closing line", "spaces around"],
)
def test_every_form_of_fence_is_one(text: str) -> None:
    assert [(fence.name, len(fence.lines)) for fence in find(text).fences] == [("x", 1)]


def test_a_fence_set_in_under_a_list_loses_its_indentation_and_keeps_its_columns() -> None:
    fence = find("- item\n\n  ```calc x\n  a = 1\n    b = 2\n c = 3\n  ```\n").fences[0]

    assert [line.text for line in fence.lines] == ["a = 1", "  b = 2", "c = 3"]
    assert [line.where.column for line in fence.lines] == [3, 3, 2]


def test_a_fence_behind_a_list_mark_is_one() -> None:
    fence = find("1. ```calc x\n   a = 1\n   ```\n").fences[0]

    assert fence.where == Where("a.md", 10, 12)
    assert [(line.text, line.where.column) for line in fence.lines] == [("a = 1", 4)]


def test_a_fence_within_a_longer_one_is_an_example() -> None:
    found = find("````\n```calc x\na = 1\n```\n````\n\n~~~ text\n```calc y\n~~~\n")

    assert (found.fences, found.diagnostics) == ((), ())
    assert found.spans == ((0, 4), (6, 8))


def test_a_closing_line_needs_the_same_sign_and_no_words() -> None:
    fence = find("```calc x\na = 1\n~~~\n``` more\n``\n```\n").fences[0]

    assert [line.text for line in fence.lines] == ["a = 1", "~~~", "``` more", "``"]


def test_other_languages_are_left_alone() -> None:
    assert (
        find("```c\nint x;\n```\n```csv\na,b\n```\n```\n\n```\n``` {.python}\n```\n").diagnostics
        == ()
    )


@pytest.mark.parametrize(
    "info",
    ["cacl x", "Calc x", "CALC x", "clac x", "calculation x", "{.calc}", "{calc x}", "calc: x"],
)
def test_a_misspelt_fence_is_told(info: str) -> None:
    word = info.split(maxsplit=1)[0]

    assert said(f"```{info}\na = 1\n```\n") == [
        f"a.md:10:4: STOP: a fence is marked `{word}`, so nothing computes it\n"
        "  help: write calc, or mark it as text if it is only an example"
    ]


REFUSED = {
    "no name": (
        "```calc\na = 1\n```\n",
        "a.md:10:4: STOP: this calc fence has no name\n"
        "  help: write calc and a name: calc receiver-sizing",
    ),
    "options in place of a name": (
        "```calc; digits 3\na = 1\n```\n",
        "a.md:10:4: STOP: this calc fence has no name\n"
        "  help: write calc and a name: calc receiver-sizing",
    ),
    "a name in capitals": (
        "```calc Receiver_Sizing\na = 1\n```\n",
        "a.md:10:9: STOP: `Receiver_Sizing` is no name for a calc fence\n"
        "  help: write calc receiver-sizing; options stand behind a ;",
    ),
    "two words for a name": (
        "```calc receiver sizing\na = 1\n```\n",
        "a.md:10:9: STOP: `receiver sizing` is no name for a calc fence\n"
        "  help: write calc receiver-sizing; options stand behind a ;",
    ),
    "no closing line": (
        "```calc x\na = 1\n",
        "a.md:10:4: STOP: a calc fence opens here and is never closed\n"
        "  help: write ``` on a line below it",
    ),
    "a fence in a quotation": (
        "> ```calc x\n> a = 1\n> ```\n",
        "a.md:10:6: STOP: a calc fence stands within a quotation\n"
        "  help: move it out, and quote its values",
    ),
}


@pytest.mark.parametrize("says", REFUSED)
def test_a_broken_fence_is_refused_with_place_reason_and_cure(says: str) -> None:
    text, expected = REFUSED[says]

    assert said(text) == [expected]
    assert find(text).fences == ()


def test_many_fences_are_found_in_time_that_grows_with_the_text() -> None:
    text = "```calc x\n" * 40_000

    assert find(text).fences == ()
