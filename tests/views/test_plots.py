"""Plots: ticks, what is drawn, and the same in sentences."""

import re
from dataclasses import replace
from xml.etree import ElementTree as Tree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.book import Book
from garboard.calc.units import known
from garboard.calc.value import Curve
from garboard.views.axes import Axis, tick_text, ticks
from garboard.views.curve_plot import curve_plot
from garboard.views.drift_plot import drift_plot
from garboard.views.plot import FOOT, HEAD, LEFT, MOST_BYTES, RIGHT, Frame
from garboard.views.runs import plain
from garboard.views.scale import Height, ladder_to_scale
from tests.views import receiver

SVG = "{http://www.w3.org/2000/svg}"


@given(st.floats(-1e9, 1e9), st.floats(1e-6, 1e9), st.integers(2, 8))
def test_ticks_are_few_round_and_within(low: float, span: float, most: int) -> None:
    high = low + span
    if not (high - low) > abs(low) * 1e-9:
        return

    found = ticks(low, high, most)

    assert len(found) <= most
    slack = (high - low) * 1e-6
    assert all(low - slack <= one <= high + slack for one in found)
    assert list(found) == sorted(set(found))


@pytest.mark.parametrize(
    ("low", "high", "texts"),
    [
        (0.0, 9.7, ["0", "2", "4", "6", "8"]),
        (0.9, 1.31, ["0.9", "1.0", "1.1", "1.2", "1.3"]),
        (24.0, 25.1, ["24.0", "24.5", "25.0"]),
        (0.0, 3e6, ["0", "1000000", "2000000", "3000000"]),
        (0.0, 3e7, ["0", "1.00e7", "2.00e7", "3.00e7"]),
    ],
)
def test_ticks_are_written_with_the_decimals_they_need(
    low: float, high: float, texts: list[str]
) -> None:
    marks = ticks(low, high)

    assert [tick_text(one, marks) for one in marks] == texts


def test_an_axis_without_width_holds_everything_in_its_middle() -> None:
    assert Axis(3.0, 3.0, "").part(3.0) == 0.5
    assert Axis.around([5.0], "").part(5.0) == pytest.approx(0.5)


def drawn(book: Book) -> str:
    found = curve_plot(book, book.network.requirements[0])
    assert found is not None
    return found.svg


def hatching(svg: str) -> tuple[float, float]:
    """Where the forbidden side begins, and how high it is, in per cent."""
    found = re.search(
        r'<rect [^>]*y="([^"]*)%" [^>]*height="([^"]*)%" fill="url\([^)]*-no\)"/>', svg
    )
    assert found
    return float(found[1]), float(found[2])


def test_the_working_point_lies_where_its_numbers_say(book: Book) -> None:
    (x, y), svg = (30.0, 20.0), drawn(book)
    ys = [(p - 12) / 0.9 for p in range(14, 33)]
    low, high = min(*ys, 6.0), max(*ys, 6.0)
    room = (high - low) * 0.08
    across = LEFT + (RIGHT - LEFT) * (x - 14) / (35 - 14)
    up = FOOT - (FOOT - HEAD) * (y - low + room) / (high - low + 2 * room)

    assert f'<circle cx="{across:.1f}%" cy="{up:.1f}%" r="6" fill="currentColor"/>' in svg
    assert ">20.0</text>" in svg


def test_the_forbidden_side_is_hatched_and_the_limit_is_named(book: Book) -> None:
    svg = drawn(book)

    limit = re.search(r'<line x1="17.0%" y1="(.*?)%" x2="97.0%" y2="\1%" stroke-width="3"/>', svg)
    hatched = hatching(svg)
    assert limit
    assert hatched[0] == float(limit[1])
    assert sum(hatched) == pytest.approx(FOOT, abs=0.1)
    assert ">limit 6</text>" in svg


def test_of_a_limit_from_above_the_other_side_is_hatched(book: Book) -> None:
    asked = book.network.requirements[0]

    found = curve_plot(book, replace(asked, text="n <= least"))

    assert found is not None
    assert hatching(found.svg)[0] == HEAD


def test_the_tolerance_of_the_input_is_a_band_with_an_edge_at_either_end(book: Book) -> None:
    svg = drawn(book)

    edges = re.findall(r'<line x1="(.*?)%" y1="12.0%" x2="\1%" y2="83.0%" [^>]*dasharray', svg)
    assert edges == [f"{LEFT + (RIGHT - LEFT) * (end - 14) / 21:.1f}" for end in (29.5, 30.5)]


def test_the_curve_breaks_off_where_there_is_no_answer(book: Book) -> None:
    broken = (*receiver.POINTS[:5], (19e5, None), *receiver.POINTS[6:])
    asked = book.network.requirements[0]
    assert asked.curve is not None

    found = curve_plot(book, replace(asked, curve=replace(asked.curve, points=broken)))

    assert found is not None
    path = re.search(r' d="(M0 [^"]*l[^"]*)"', found.svg)
    assert path
    assert path[1].count("M") == 2


def test_a_plot_says_the_same_in_sentences_rounded_to_the_safe_side(book: Book) -> None:
    found = curve_plot(book, book.network.requirements[0])

    assert found is not None
    assert found.caption == "Starts in one charge, against compressor cut-out"
    assert [plain(line) for line in found.sentences] == [
        "At 30 bar(g), as given, 20.0; the limit is 6.",
        "At 29.5 bar(g), the low end, 19.4.",
        "At 30.5 bar(g), the high end, 20.5.",
        "The limit is reached at about 17.4 bar(g).",
    ]


def test_a_step_says_where_it_meets_the_limit_and_where_it_passes_it(book: Book) -> None:
    asked = book.network.requirements[0]
    assert asked.curve is not None
    steps = tuple((1e5 * p, float(min(8, p // 3))) for p in range(14, 36))

    found = curve_plot(book, replace(asked, curve=replace(asked.curve, points=steps)))
    strict = curve_plot(
        book, replace(asked, text="n > least", curve=replace(asked.curve, points=steps))
    )

    assert found is not None
    assert strict is not None
    assert plain(found.sentences[-1]) == (
        "The limit is reached at about 20.0 bar(g) and passed at 18.0 bar(g)."
    )
    assert plain(strict.sentences[-1]) == "The limit is reached at about 20.0 bar(g)."


def test_a_limit_that_is_met_and_not_passed_is_said_so(book: Book) -> None:
    asked = book.network.requirements[0]
    assert asked.curve is not None
    flat = tuple((1e5 * p, float(max(6, p // 3))) for p in range(14, 36))

    found = curve_plot(book, replace(asked, curve=replace(asked.curve, points=flat)))

    assert found is not None
    assert plain(found.sentences[-1]) == (
        "The limit is reached at about 20.0 bar(g) and not passed."
    )


def test_a_limit_that_is_never_reached_is_said_not_to_be(book: Book) -> None:
    asked = book.network.requirements[0]
    assert asked.curve is not None

    found = curve_plot(book, replace(asked, curve=replace(asked.curve, limit=1.0)))

    assert found is not None
    assert plain(found.sentences[-1]) == (
        "The limit is not reached between 14.0 bar(g) and 32.0 bar(g)."
    )


def test_where_there_is_no_curve_there_is_no_plot(book: Book) -> None:
    asked, other = book.network.requirements
    assert asked.curve is not None
    nothing = Curve("sizing.n", "sizing.p_max", ((1.0, None), (2.0, None)), (1.0, 1.0), 6.0)

    assert curve_plot(book, other) is None
    assert curve_plot(book, replace(asked, curve=nothing)) is None
    assert curve_plot(book, replace(asked, curve=replace(asked.curve, across="gone.x"))) is None
    assert curve_plot(book, replace(asked, text="n >= least if n > 1 else 2")) is None


def test_the_readings_of_one_quantity_are_drawn_over_time_with_its_sentences(book: Book) -> None:
    (found,) = drift_plot(book, "SA-PS-001.set")

    assert [plain(line) for line in found.sentences] == [
        "From 2 April 2031 to 20 September 2031 it fell by 1.4 bar(d): 18.4 bar(g) (2 April 2031),"
        " 18.0 bar(g) (11 June 2031), 17.0 bar(g) (20 September 2031).",
        "Design 18 bar(g), between 17.5 and 18.5 bar(g).",
        "At the last reading it is 0.2 bar(d) past the limit, at least 17.2 bar(g).",
        "A drift is shown and not judged: whether it may go on is for a person to say.",
    ]
    assert found.svg.count('r="6" fill') == 2
    assert found.svg.count('r="8"') == 1
    for words in ("2 Apr 2031", "20 Sep 2031", "limit 17.2 bar(g)", "design 18 bar(g)"):
        assert f">{words}</text>" in found.svg


def test_the_word_for_the_design_stands_where_the_readings_are_farther_from_it(book: Book) -> None:
    (found,) = drift_plot(book, "SA-PS-001.set")

    design = found.svg.index(">design 18 bar(g)</text>")
    opening = found.svg[found.svg.rindex("<text", 0, design) : design]

    assert 'text-anchor="end"' in opening


def test_a_short_ladder_has_no_more_numbers_beside_it_than_it_has_room_for() -> None:
    bar = known("bar(g)")
    two = [Height(si, "measured", (), ()) for si in (29.5e5, 30.5e5)]
    eight = [Height(30e5 + number * 1e4, "measured", (), ()) for number in range(8)]

    assert len(ladder_to_scale("Cut-out", two, bar).ticks) <= 3
    assert 3 < len(ladder_to_scale("Cut-out", eight, bar).ticks) <= 6


def test_one_reading_is_no_drift(book: Book) -> None:
    assert list(drift_plot(book, "SA-RV-001.set")) == []
    assert list(drift_plot(book, "nothing.x")) == []


def plots(book: Book) -> list[str]:
    return [drawn(book), *(one.svg for one in drift_plot(book, "SA-PS-001.set"))]


def test_a_plot_is_small_whole_and_without_a_style_of_its_own(book: Book) -> None:
    for svg in plots(book):
        tree = Tree.fromstring(  # noqa: S314 - made by the core
            svg.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1)
        )
        assert len(svg.encode()) <= MOST_BYTES
        assert tree.find(f"{SVG}title") is not None
        assert "style" not in svg
        assert not re.search(r'(?:fill|stroke)="#|rgb', svg)


def test_a_long_curve_stays_small(book: Book) -> None:
    asked = book.network.requirements[0]
    assert asked.curve is not None
    points = tuple((1e5 * (14 + p / 10), 20.0 + (p % 7)) for p in range(210))

    found = curve_plot(book, replace(asked, curve=replace(asked.curve, points=points)))

    assert found is not None
    assert len(found.svg.encode()) <= MOST_BYTES


def test_the_same_numbers_give_the_same_bytes(book: Book) -> None:
    assert plots(book) == plots(book)


def test_words_in_a_plot_are_escaped() -> None:
    frame = Frame(Axis(0, 1, "<script>"), Axis(0, 1, "a & b"), "x")
    frame.label(0.5, 0.5, "<b>", above=True, end=False)

    svg = frame.svg("<title>")

    assert "<script>" not in svg
    assert "<b>" not in svg
    assert "a &amp; b" in svg
