"""Numbers of a log in the rest of the handbook: quoted, worked with, signed for, handed out as data."""

import math
import tempfile
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.book import Book
from garboard.errors import Where
from garboard.reading.logged import read_log
from garboard.records.base import Mention, RecordId
from garboard.records.inspection import Channel, LoggedFile, Test
from garboard.records.logged import log_values
from tests.logged_sample import P, T, handbook, record

LOG = "t_min,p,T\n0,29.80,26.0\n360,28.70,21.5\n720,27.90,19.0\n"

ROW = st.tuples(st.integers(0, 5000), st.integers(-40_000, 40_000), st.integers(-2_000, 9_000))


@settings(max_examples=60, deadline=None)
@given(st.lists(ROW, min_size=1, max_size=80))
def test_the_values_of_a_log_are_those_that_numpy_finds(rows: list[tuple[int, int, int]]) -> None:
    times = np.cumsum([gap for gap, _, _ in rows]) / 10
    cells = [(p / 1000, t / 10) for _, p, t in rows]
    body = "".join(
        f"{time:.1f},{p:.3f},{t:.1f}\n" for time, (p, t) in zip(times, cells, strict=True)
    )
    channels = {
        "p": Channel(of=Mention("pressure"), unit="bar(g)"),
        "T": Channel(of=Mention("wall"), unit="degC"),
    }
    logged = LoggedFile(file="a.csv", time="t_min", channels=channels)
    test = Test(id=RecordId("SA-TR-002"), where=Where("a.md"), log=logged)

    read = read_log(test, logged, f"t_min,p,T\n{body}")

    assert read.diagnostics == ()
    found = {name.partition(".")[2]: one.si for name, one in log_values(read.log, "SA-TR-002")}
    table = np.array(cells)
    for column, name, factor, zero in ((0, "p", 1e5, 0.0), (1, "T", 1.0, 273.15)):
        own = table[:, column] * factor + zero
        expected = {"first": own[0], "last": own[-1], "lowest": own.min(), "highest": own.max()}
        for sort, si in expected.items():
            assert found[f"{name}_{sort}"] == pytest.approx(si, rel=1e-12, abs=1e-6)
    assert found["lasted"] == pytest.approx((times[-1] - times[0]) * 60, rel=1e-12, abs=1e-6)


FENCE = """\
Down to [27.90 bar(g)](value:SA-TR-002.p_last).

```calc night
fall = SA-TR-002.p_first - SA-TR-002.p_last in bar(d)  # in the night
require SA-TR-002.lasted >= 10 h  # a whole night [LOGBOOK page 3]
```"""


def book_of(folder: Path, log: str = LOG) -> Book:
    return handbook(folder, log, record("at least 28 bar(g)", f"{P}, {T}", text=FENCE)).book


def test_a_calculation_and_a_sentence_take_their_numbers_from_a_log(tmp_path: Path) -> None:
    read = handbook(tmp_path, LOG, record("at least 27 bar(g)", f"{P}, {T}", text=FENCE))

    values = read.book.values
    assert values["night.fall"].text == "1.90 bar(d)"
    assert values["night.fall"].uses == ("SA-TR-002.p_first", "SA-TR-002.p_last")
    assert [one.source for one in values["SA-TR-002.p_last"].sources] == ["SA-TR-002"]
    faults = {one.code for one in read.diagnostics}
    assert not faults & {"reference-to-nothing", "unsourced-number", "unreadable-record"}
    assert "stale-number" not in faults


def test_a_sentence_that_quotes_a_log_goes_stale_with_it(tmp_path: Path) -> None:
    other = LOG.replace("27.90", "27.60")

    read = handbook(tmp_path, other, record("at least 27 bar(g)", f"{P}, {T}", text=FENCE))

    (stale,) = (one for one in read.diagnostics if one.code == "stale-number")
    assert stale.text == "text says 27.90 bar(g), SA-TR-002.p_last is 27.60 bar(g)"


def test_a_signature_on_the_test_covers_the_log_and_the_values_taken_from_it(
    tmp_path: Path,
) -> None:
    before = book_of(tmp_path / "a").reviews["SA-TR-002"].cover
    after = book_of(tmp_path / "b", LOG.replace("27.90", "27.60")).reviews["SA-TR-002"].cover

    assert before.values["SA-TR-002.p_last"] == "27.90 bar(g)"
    assert after.values["SA-TR-002.p_last"] == "27.60 bar(g)"
    assert before.records["log/leak.csv"] != after.records["log/leak.csv"]


def test_values_of_a_log_are_rows_of_the_data_with_their_record_and_place(tmp_path: Path) -> None:
    read = handbook(tmp_path, LOG, record("at least 27 bar(g)", f"{P}, {T}"))

    (row,) = (one for one in read.numbers if one.address == "SA-TR-002.p_lowest")
    assert (row.value, row.unit, row.record) == (27.9, "bar(g)", "SA-TR-002")
    assert row.page == "id/SA-TR-002.html#SA-TR-002.p_lowest"
    assert row.sources[0].source == "SA-TR-002"


def test_of_a_spoilt_log_no_number_is_shown_and_what_rests_on_it_says_why(tmp_path: Path) -> None:
    spoilt = LOG.replace("28.70", "")

    read = handbook(tmp_path, spoilt, record("at least 28 bar(g)", f"{P}, {T}", text=FENCE))

    said = [str(one.where) for one in read.diagnostics if one.code == "unreadable-record"]
    assert said == ["log/leak.csv:3:5"]
    assert read.book.values["night.fall"].text == "not computed"
    (nothing,) = (one for one in read.diagnostics if one.code == "reference-to-nothing")
    assert nothing.text == (
        "`SA-TR-002.p_first` is not computed: the log of SA-TR-002 cannot be read as written"
    )


PRINTED = """\
```calc example
even = leak_by_pressure_decay(V = 629 ft3, p_1 = SA-TR-002.p_first, p_2 = SA-TR-002.p_last, t_1 = SA-TR-002.lasted - SA-TR-002.lasted, t_2 = SA-TR-002.lasted, T_1 = SA-TR-002.T_first, T_2 = SA-TR-002.T_last, p_atm = 14.7 psi(a))  # by the log
warm = leak_by_pressure_decay(V = 629 ft3, p_1 = SA-TR-002.p_first, p_2 = SA-TR-002.p_last, t_1 = SA-TR-002.lasted - SA-TR-002.lasted, t_2 = SA-TR-002.lasted, T_1 = SA-TR-002.T_first, T_2 = SA-TR-002.T_first, p_atm = 14.7 psi(a))  # as if nothing had cooled
```"""
PSI = "p: {of: pressure, unit: psi(g), instrument: G-07}"


def leaks(folder: Path, end: str) -> tuple[float, float]:
    """The leak by a log of 90 to 80 psi in 10.7 min, corrected and not, in ft3/min at 14.7 psi."""
    log = f"t_min,p,T\n0,90,21.0\n5,85.2,20.9\n10.7,80,{end}\n"
    read = handbook(folder, log, record("at least 70 psi(g)", f"{PSI}, {T}", text=PRINTED))
    cubic_foot = 0.3048**3
    even, warm = (read.book.values[f"example.{one}.Q_volume"].si for one in ("even", "warm"))
    assert even is not None
    assert warm is not None
    return even * 60 / cubic_foot, warm * 60 / cubic_foot


def test_the_leak_by_a_log_is_that_of_the_printed_example(tmp_path: Path) -> None:
    """Free air delivery and leak training example of a compressor maker, July 2013: by hand
    629 x 10 / (14.7 x 10.7) = 39.99 ft3/min, at an even temperature."""
    even, warm = leaks(tmp_path, "21.0")

    assert even == pytest.approx(629 * 10 / (14.7 * 10.7), rel=1e-9)
    assert round(even, 2) == 39.99
    assert warm == even


def test_what_cooling_took_off_the_pressure_is_no_leak(tmp_path: Path) -> None:
    """By hand, of the same source with 6 K of cooling: the air left at 80 psi is that of
    94.7 x 294.15 / 288.15 = 96.672 psi at the first temperature, so 629 x (104.7 - 96.672) / (14.7 x 10.7)."""
    corrected, uncorrected = leaks(tmp_path, "15.0")

    left = Fraction("94.7") * Fraction("294.15") / Fraction("288.15")
    by_hand = 629 * (Fraction("104.7") - left) / (Fraction("14.7") * Fraction("10.7"))
    assert corrected == pytest.approx(float(by_hand), rel=1e-9)
    assert uncorrected == pytest.approx(39.99, abs=0.005)


def test_a_log_may_be_as_long_as_it_may_be_and_is_read_within_seconds() -> None:
    with tempfile.TemporaryDirectory() as folder:
        rows = "".join(f"{at},{30 + math.sin(at / 50):.3f}\n" for at in range(100_000))
        read = handbook(
            Path(folder), f"t_min,p\n{rows}", record("at least 20 bar(g) throughout", P)
        )

        assert read.book.values["SA-TR-002.p_highest"].text == "31.000 bar(g)"
        assert read.book.values["SA-TR-002.p_lowest"].text == "29.000 bar(g)"
