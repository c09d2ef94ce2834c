"""The page of a logged test: plot, band, sentences, table; and the plan that the test stands in."""

import re
from pathlib import Path

import pytest

from garboard.handbook import Handbook
from garboard.views.page import Block, Bullets, Drawing, Heading, Page, Paragraph, Table
from garboard.views.plot import FOOT, HEAD, LEFT, MOST_BYTES, RIGHT
from garboard.views.runs import plain
from tests.logged_sample import P, T, handbook, record

LOG = "t_min,p,T\n0,29.8,26.0\n60,28.4,22.0\n120,28.6,18.5\n180,28.5,19.0\n"
BESIDE = "readings: [{of: at 60 min, value: 28.5 bar(g), instrument: G-07}]\n"
BAND = re.compile(r'<rect [^>]*y="([^"]*)%"[^>]*height="([^"]*)%" fill="url\(#[^)]*-band\)"/>')


def page_of(read: Handbook, key: str) -> Page:
    return next(page for page in read.pages if page.key == key)


def logged(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """What stands under `As logged`."""
    start = next(
        at for at, one in enumerate(blocks) if isinstance(one, Heading) and one.text == "As logged"
    )
    return blocks[start + 1 :]


def drawings(blocks: tuple[Block, ...]) -> list[Drawing]:
    return [one for one in blocks if isinstance(one, Drawing)]


@pytest.fixture
def blocks(tmp_path: Path) -> tuple[Block, ...]:
    """The test's page: pressure with a least value, wall with two."""
    criterion = "at least 28 bar(g); wall 15 degC to 27 degC"
    test = record(criterion, f"{P}, {T}", BESIDE)
    return logged(page_of(handbook(tmp_path, LOG, test), "SA-TR-002").blocks)


def test_every_channel_is_drawn_with_the_same_in_sentences(blocks: tuple[Block, ...]) -> None:
    pressure, wall = drawings(blocks)

    assert pressure.caption == "Pressure in the receiver, as logged"
    assert [plain(line) for line in pressure.sentences] == [
        "From 29.8 bar(g) to 28.5 bar(g) in 3 h: it fell by 1.3 bar(d)."
        " Lowest 28.4 bar(g) at 1 h, highest 29.8 bar(g) at the start.",
        "Criterion at least 28 bar(g), drawn as a dotted band: kept.",
        "Read beside it by a person, marked as discs: 28.5 bar(g) at 1 h.",
        "Logged with G-07, test gauge 0-100 bar.",
    ]
    assert plain(wall.sentences[1]) == "Criterion 15 degC to 27 degC, drawn as a dotted band: kept."


def test_the_criterion_is_a_band_with_a_line_at_each_end_it_sets(blocks: tuple[Block, ...]) -> None:
    pressure, wall = (one.svg for one in drawings(blocks))

    low, high = 28.0 - 1.8 * 0.08, 29.8 + 1.8 * 0.08
    limit = FOOT - (FOOT - HEAD) * (28.0 - low) / (high - low)
    band = BAND.search(pressure)
    assert band
    assert float(band[1]) == HEAD
    assert float(band[1]) + float(band[2]) == pytest.approx(limit, abs=0.1)
    assert pressure.count('stroke-width="3"') == 1
    assert ">at least 28 bar(g)</text>" in pressure
    assert wall.count('stroke-width="3"') == 2
    assert ">at most 27 degC</text>" in wall


def test_a_reading_with_its_moment_is_a_disc_where_its_numbers_say(
    blocks: tuple[Block, ...],
) -> None:
    pressure, wall = (one.svg for one in drawings(blocks))

    across = LEFT + (RIGHT - LEFT) * 60 / 180
    assert f'<circle cx="{across:.1f}%"' in pressure
    assert "<circle" not in wall


def test_under_each_plot_stand_its_ends_and_how_long_it_ran(blocks: tuple[Block, ...]) -> None:
    first, second = [one for one in blocks if isinstance(one, Table)][:2]

    rows = [[plain(cell) for cell in row.cells] for row in first.rows]
    assert rows == [
        ["first", "29.8 bar(g)", "at the start"],
        ["last", "28.5 bar(g)", "at 3 h"],
        ["lowest", "28.4 bar(g)", "at 1 h"],
        ["highest", "29.8 bar(g)", "at the start"],
        ["lasted", "180 min", "first row to last"],
    ]
    assert [row.anchor for row in first.rows] == [
        *(f"SA-TR-002.p_{sort}" for sort in ("first", "last", "lowest", "highest")),
        "SA-TR-002.lasted",
    ]
    assert second.rows[-1].anchor == ""


def test_a_log_that_leaves_its_criterion_says_so_in_words(tmp_path: Path) -> None:
    test = record("at least 28.5 bar(g)", P).replace("result: pass", "result: fail")

    (drawing,) = drawings(logged(page_of(handbook(tmp_path, LOG, test), "SA-TR-002").blocks))

    assert plain(drawing.sentences[1]) == (
        "Criterion at least 28.5 bar(g), drawn as a dotted band: not kept, p is 28.4 bar(g) at 1 h."
    )


def test_where_the_criterion_could_mean_two_channels_no_band_is_drawn(tmp_path: Path) -> None:
    test = record("at least 28 bar(g)", f"{P}, q: {{of: header, unit: bar(g)}}", BESIDE)
    log = "t_min,p,q\n0,29.8,29.0\n60,28.4,28.0\n"

    found = drawings(logged(page_of(handbook(tmp_path, log, test), "SA-TR-002").blocks))

    assert len(found) == 2
    assert not any(BAND.search(one.svg) or "<circle" in one.svg for one in found)
    assert plain(found[0].sentences[1]) == "The criterion sets no bound to it that could be drawn."


def test_a_long_log_stays_small_and_shows_its_one_spike(tmp_path: Path) -> None:
    rows = "".join(
        f"{at},{31.7 if at == 5003 else 28.5 + (at % 7) / 100}\n" for at in range(20_000)
    )
    read = handbook(tmp_path, f"t_min,p\n{rows}", record("at least 20 bar(g)", P))

    (drawing,) = drawings(logged(page_of(read, "SA-TR-002").blocks))

    assert len(drawing.svg.encode()) <= MOST_BYTES
    heights, at = [], 0
    path = re.search(r' d="M\d+ (\d+)(l[^"]*)"', drawing.svg)
    assert path
    at = int(path[1])
    for step in re.findall(r"l\d+ ?(-?\d+)", path[2]):
        at += int(step)
        heights.append(at)
    room = (31.7 - 20) * 0.08
    assert min(heights) == round(1000 - 1000 * (31.7 - 20 + room) / (11.7 + 2 * room))


def test_a_log_that_cannot_be_read_is_said_and_not_drawn(tmp_path: Path) -> None:
    broken = handbook(tmp_path / "a", "t_min,p\n10,28\n5,28\n", record("as found", P))
    partly = handbook(tmp_path / "b", LOG.replace("28.6", "x"), record("as found", f"{P}, {T}"))

    nothing = logged(page_of(broken, "SA-TR-002").blocks)
    some = logged(page_of(partly, "SA-TR-002").blocks)

    assert drawings(nothing) == []
    first = nothing[0]
    assert isinstance(first, Paragraph)
    assert plain(first.runs).startswith("The file log/leak.csv cannot be read as written")
    assert [one.caption for one in drawings(some)] == ["Wall, as logged"]
    second = some[1]
    assert isinstance(second, Paragraph)
    assert plain(second.runs).startswith("Not read: p.")


def test_the_plan_says_what_stands_what_proves_it_and_what_waits(tmp_path: Path) -> None:
    read = handbook(tmp_path, LOG, record("at least 28 bar(g)", P))

    page = page_of(read, "starting-air/tests")

    (held,) = (one for one in page.blocks if isinstance(one, Bullets))
    assert [plain(item) for item in held.items] == [
        "SA-IT-004 Leak of receiver 1: planned, not released; released by the surveyor, nobody else."
        " It stops SA-WP-001 (outlined)."
    ]
    plan = next(one for one in page.blocks if isinstance(one, Table))
    assert [plain(cell) for cell in plan.rows[0].cells] == [
        "SA-IT-004 Leak of receiver 1",
        "hold, work stops until the surveyor releases it: planned",
        "at least 28 bar(g)",
        "SA-TR-001 7 Feb 2031: failed, not accepted yet; SA-TR-002 14 Feb 2031: passed,"
        " not accepted yet, after SA-TR-001",
        "SA-WP-001 (outlined)",
    ]


def test_a_part_shows_its_failed_tests_and_says_when_none_was_passed_since(tmp_path: Path) -> None:
    mended = handbook(tmp_path / "a", LOG, record("at least 28 bar(g)", P))
    worse = record("at least 28 bar(g)", P).replace("result: pass", "result: fail")
    failed = handbook(tmp_path / "b", LOG, worse)

    def words(read: Handbook) -> str:
        blocks = page_of(read, "SA-AR-001").blocks
        said = [plain(one.runs) for one in blocks if isinstance(one, Paragraph)]
        rows = [row for one in blocks if isinstance(one, Table) for row in one.rows]
        return " ".join([*said, *(plain(cell) for row in rows for cell in row.cells)])

    assert "SA-TR-001" in words(mended)
    assert "Its last test failed" not in words(mended)
    assert "Its last test failed, and none was passed since: SA-TR-002" in words(failed)
