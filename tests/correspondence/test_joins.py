"""A pack about a change of the layout says what was joined before and after, and its page draws both."""

import re
from html import unescape
from pathlib import Path

import pytest

from garboard.changes.comparison import DrawnJoins
from garboard.cli.signable import find_signable
from garboard.correspondence import joins
from garboard.correspondence.assembly import make_pack
from garboard.correspondence.before import find_before
from garboard.correspondence.one_page import one_page
from garboard.correspondence.pack import Pack
from garboard.correspondence.plain_text import in_plain_signs, plain_text
from garboard.handbook import read_book
from tests.changes.test_joins import AFTER, BEFORE
from tests.golden_case import Case

CHANGE = """\
---
id: SA-CN-001
title: Sense before the valve
system: SA
class: A
author: lead
affects: [SA-PS-001]
---
The stop switch moves to the outlet of the compressor.
"""


def laid_out(folder: Path, system: str) -> Path:
    files = {
        "systems/starting-air/system.yml": system.replace("test piece", "Starting air"),
        "systems/starting-air/sa-cn-001-sense.md": CHANGE,
    }
    return Case("", "", "", files, "").write(folder)


@pytest.fixture
def pack(tmp_path: Path) -> Pack:
    """The change, held against the folder as it was before."""
    return packed(tmp_path, BEFORE, AFTER)


def packed(folder: Path, before: str, after: str) -> Pack:
    base, now = laid_out(folder / "before", before), laid_out(folder / "after", after)
    book = read_book(now)
    thing = find_signable(book, "SA-CN-001", now)
    return make_pack(book, thing, find_before(book, thing, base=base))


def test_the_joins_stand_as_sentences_in_both_forms(pack: Pack) -> None:
    for text in (plain_text(pack), unescape(re.sub(r"<[^>]*>", "", one_page(pack)))):
        assert "no longer joined: the start header to SA-PS-001" in " ".join(text.split())
        assert "now joined: SA-CP-001 to SA-PS-001" in " ".join(text.split())
        assert "new part: SA-RV-001" in text


def test_the_page_draws_both_with_what_moved_in_a_frame_and_no_link(pack: Pack) -> None:
    page = one_page(pack)

    drawings = re.findall(r"<svg.*?</svg>", page, re.DOTALL)
    assert len(drawings) == 2
    before, after = drawings
    assert "SA-RV-001" not in before
    assert "taken away" in before
    assert 'aria-label="SA-RV-001' in after
    assert "new or changed" in after
    assert "href=" not in re.sub(r'href="#', "", page)


def test_a_drawing_that_paper_parts_stands_whole_and_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def in_pieces(*_: object) -> tuple[DrawnJoins, ...]:
        return (
            DrawnJoins(caption="whole", svg="<svg>whole</svg>", only="screen"),
            DrawnJoins(caption="part 1 of 2", svg="<svg>piece</svg>", only="paper"),
        )

    monkeypatch.setattr(joins, "drawn_joins", in_pieces)
    page = one_page(packed(tmp_path, BEFORE, AFTER))

    assert re.findall(r"<svg.*?</svg>", page, re.DOTALL) == ["<svg>whole</svg>"] * 2


def test_both_forms_say_the_same_words_but_for_the_drawings(pack: Pack) -> None:
    page = re.sub(r"<svg.*?</svg>", " ", one_page(pack), flags=re.DOTALL)
    body = page[page.index("<body>") :]
    said = unescape(re.sub(r"<[^>]*>", " ", re.sub(r'</?span class="tag">|</?span>', "", body)))

    words = [
        re.findall(r"\w+", in_plain_signs(text).casefold()) for text in (plain_text(pack), said)
    ]
    assert words[0] == words[1]


def test_a_change_that_joins_nothing_otherwise_draws_nothing(tmp_path: Path) -> None:
    pack = packed(tmp_path, BEFORE, BEFORE)

    assert "joined before" not in plain_text(pack)
    assert "<svg" not in one_page(pack)
