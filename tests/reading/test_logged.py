"""Logged files: every way to write time and numbers, and every way to get them wrong, with its place."""

from random import Random

import pytest

from garboard.errors import Where
from garboard.reading.csv_rows import MOST_ROWS
from garboard.reading.logged import ReadLog, read_log
from garboard.records.base import Mention, RecordId
from garboard.records.inspection import Channel, LoggedFile, Test, TimeUnit
from garboard.records.logged import log_values

PATH = "log/leak.csv"
PRESSURE = Channel(of=Mention("pressure in the receiver"), unit="bar(g)", instrument="G-12")


def read(
    text: str,
    *,
    time: str = "t_min",
    unit: TimeUnit | None = None,
    channels: dict[str, Channel] | None = None,
) -> ReadLog:
    """Read a text as the log of SA-TR-017."""
    logged = LoggedFile(file=PATH, time=time, channels=channels or {"p": PRESSURE}, time_unit=unit)
    test = Test(id=RecordId("SA-TR-017"), title="Leak", where=Where("tr.md"), log=logged)
    return read_log(test, logged, text)


def faults(found: ReadLog) -> list[str]:
    """Place and words of each fault."""
    return [
        f"{one.where.path}:{one.where.line}:{one.where.column}: {one.text}"
        for one in found.diagnostics
    ]


def values(found: ReadLog) -> dict[str, str]:
    """Every value, as shown."""
    return {name: one.shown for name, one in log_values(found.log, "SA-TR-017")}


def test_a_log_gives_first_last_lowest_highest_and_how_long_it_ran() -> None:
    found = read("# invented\nt_min,p\n0,30.10\n10,29.95\n20,30.20\n30,30.05\n")

    assert faults(found) == []
    assert values(found) == {
        "SA-TR-017.p_first": "30.10 bar(g)",
        "SA-TR-017.p_last": "30.05 bar(g)",
        "SA-TR-017.p_lowest": "29.95 bar(g)",
        "SA-TR-017.p_highest": "30.20 bar(g)",
        "SA-TR-017.lasted": "30 min",
    }


def test_each_value_says_where_it_was_read_and_in_which_test() -> None:
    found = read("t_min,p\n0,30.10\n10,29.95\n")

    lowest = dict(log_values(found.log, "SA-TR-017"))["SA-TR-017.p_lowest"]
    assert lowest.where == Where(PATH, 3, 4)
    assert [one.source for one in lowest.sources] == ["SA-TR-017"]
    assert lowest.label == "lowest of pressure in the receiver"


def test_an_accuracy_becomes_the_tolerance_of_every_value() -> None:
    channel = Channel(of=Mention("pressure"), unit="bar(g)", accuracy="0.1 bar")

    found = dict(log_values(read("t_min,p\n0,30\n", channels={"p": channel}).log, "SA-TR-017"))

    assert found["SA-TR-017.p_first"].low == pytest.approx(29.9e5)
    assert found["SA-TR-017.p_first"].tolerance == "0.1 bar"


@pytest.mark.parametrize(
    ("text", "lasted"),
    [
        ("t_min,p\n0,30\n90,30\n", "90 min"),
        ("time [s],p\n0.5,30\n90,30\n", "89.5 s"),
        ("hours,p\n0,30\n1.5,30\n", "1.5 h"),
        ("t,p\n08:00:00,30\n09:30:00,30\n", "1.5 h"),
        ("t,p\n23:00:00,30\n25:10:00,30\n", "130 min"),
        ("t,p\n2031-09-18T08:00,30\n2031-09-19T08:00,30\n", "24 h"),
        ("t,p\n2031-09-18 23:59:30,30\n2031-09-19 00:00:45,30\n", "1.25 min"),
        ("t,p\n2031-09-18T08:00:00Z,30\n2031-09-18T10:00:07+02:00,30\n", "7 s"),
        ("t_min;p\n0;30,5\n0,25;30,4\n", "0.25 min"),
    ],
)
def test_time_is_a_number_a_clock_or_a_day_with_its_time(text: str, lasted: str) -> None:
    time = text.partition("\n")[0].replace(";", ",").split(",")[0]

    found = read(text, time=time)

    assert faults(found) == []
    assert values(found)["SA-TR-017.lasted"] == lasted


def test_a_comma_is_decimal_where_semicolons_part_the_columns() -> None:
    found = read('t_min;p;\n0;"30,10";\n10; +29,95 ;\n')

    assert values(found)["SA-TR-017.p_lowest"] == "29.95 bar(g)"
    assert values(found)["SA-TR-017.p_first"] == "30.10 bar(g)"


HEAD = f"{PATH}:1:1: "


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", [f"{HEAD}no head and no rows"]),
        ("# only a remark\n", [f"{HEAD}no head and no rows"]),
        ("t_min,p\n", [f"{HEAD}a head and no rows"]),
        ("t_min p\n0 30\n", [f"{HEAD}the head has 1 column"]),
        ("t_min,q\n0,30\n", [f"{HEAD}there is no column `p`, which SA-TR-017 names"]),
        ("zeit,p\n0,30\n", [f"{HEAD}there is no column `t_min`, which SA-TR-017 names"]),
        ("t_min,p,p\n0,30,31\n", [f"{PATH}:1:9: two columns are called `p`"]),
        ("t_min,p\n0,high\n", [f"{PATH}:2:3: `high` is no number"]),
        ("t_min,p\n0,30 bar\n", [f"{PATH}:2:3: `30 bar` is no number"]),
        ("t_min,p\n0,\n", [f"{PATH}:2:3: an empty cell"]),
        ("t_min,p\n,30\n", [f"{PATH}:2:1: an empty cell, no time"]),
        ("t_min,p\n0,30\nsoon,30\n", [f"{PATH}:3:1: `soon` is no time"]),
        ("t_min,p\n10,30\n5,30\n", [f"{PATH}:3:1: `5` comes after `10`"]),
        ("t_min,p\n0,30\n00:10:00,30\n", [f"{PATH}:3:1: `00:10:00` is a time of the clock, the first row has a number"]),
        ("t_min,p\n0,30,10\n", [f"{PATH}:2:1: 3 cells under 2 columns"]),
        ("t_min,p\n0,30\n\n1,30\n", [f"{PATH}:3:1: an empty row"]),
        ("t_min;p\n0;1.234,5\n", [f"{PATH}:2:3: `1.234,5` is no number"]),
        ("t_min;p\n0;30,5\n1;30.5\n", [f"{PATH}:3:3: `30.5` has another decimal sign than the numbers before it"]),
        ('t_min,p\n0,"30\n', [f"{PATH}:2:3: a quote that does not hold one whole cell"]),
        ("t_min,p\n0,\u0663\u0660\n", [f"{PATH}:2:3: `\u0663\u0660` is no number"]),
        ("t_min,p\n0,NaN\n", [f"{PATH}:2:3: `NaN` is no number"]),
        ("t_min,p\n0,1e999\n", [f"{PATH}:2:3: `1e999` is no number"]),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_said_with_its_place_and_gives_no_value(
    text: str, said: list[str]
) -> None:
    found = read(text)

    assert faults(found) == said
    assert not any(".p_" in name for name in values(found))
    assert found.log.lost == ("p",)
    assert all(one.help and one.about == "SA-TR-017" for one in found.diagnostics)


def test_numbers_of_a_time_column_say_in_what_they_count() -> None:
    text = "t,p\n0,30\n1,30\n"

    unsaid, said = read(text, time="t"), read(text, time="t", unit=TimeUnit.HOURS)

    assert faults(unsaid) == [
        f"{PATH}:1:1: the numbers of column `t` do not say in what they count"
    ]
    assert values(said)["SA-TR-017.lasted"] == "1 h"


def test_a_clock_that_passes_midnight_is_told_to_write_the_day() -> None:
    found = read("t,p\n23:50:00,30\n00:00:00,30\n", time="t")

    assert faults(found) == [f"{PATH}:3:1: `00:00:00` comes after `23:50:00`"]
    assert "past midnight write the day too" in found.diagnostics[0].help


def test_one_spoilt_channel_leaves_the_others_whole() -> None:
    channels = {"p": PRESSURE, "T": Channel(of=Mention("wall"), unit="degC")}

    found = read("t_min,p,T\n0,30,18\n10,,19\n", channels=channels)

    assert faults(found) == [f"{PATH}:3:4: an empty cell"]
    assert values(found)["SA-TR-017.T_highest"] == "19 degC"
    assert "SA-TR-017.p_first" not in values(found)


@pytest.mark.parametrize(
    ("channel", "code"),
    [
        (Channel(of=Mention("p"), unit="bar"), "datum-missing"),
        (Channel(of=Mention("p"), unit="bra(g)"), "unreadable-line"),
        (Channel(of=Mention("p"), unit="bar(g)", accuracy="2 V"), "dimension-clash"),
        (Channel(of=Mention("p"), unit="bar(g)", accuracy="little"), "unreadable-line"),
    ],
)
def test_a_unit_and_an_accuracy_are_read_as_those_of_a_calculation(
    channel: Channel, code: str
) -> None:
    found = read("t_min,p\n0,30\n", channels={"p": channel})

    assert [one.code for one in found.diagnostics] == [code]
    assert found.diagnostics[0].where.path == "tr.md"
    assert found.log.channels == ()


def test_a_channel_called_as_a_field_of_the_test_is_refused() -> None:
    for name in ("result", "duration", "lasted"):
        found = read(f"t_min,{name}\n0,30\n", channels={name: PRESSURE})

        assert faults(found) == [
            f"tr.md:1:1: a channel is called `{name}`, which a test has for something else"
        ]
        assert found.log.channels == ()


def test_a_column_whose_name_is_none_is_read_and_says_so() -> None:
    named = Channel(of=Mention("pressure"), unit="bar(g)", name="p")

    bare = read("t_min,p [bar]\n0,30\n", channels={"p [bar]": PRESSURE})
    given = read("t_min,p [bar]\n0,30\n", channels={"p [bar]": named})

    assert faults(bare) == [
        "tr.md:1:1: `p [bar]` is no name, so nothing can quote what column it is"
    ]
    assert [str(one.severity) for one in bare.diagnostics] == ["NOTE"]
    assert list(values(bare)) == ["SA-TR-017.lasted"]
    assert len(bare.log.channels) == 1
    assert values(given)["SA-TR-017.p_first"] == "30 bar(g)"


def test_two_channels_of_one_name_are_refused() -> None:
    again = Channel(of=Mention("other"), unit="bar(g)", name="p")

    found = read("t_min,p,q\n0,30,31\n", channels={"p": PRESSURE, "q": again})

    assert faults(found) == ["tr.md:1:1: two channels are called `p`"]


def test_a_log_of_too_many_rows_is_refused_where_it_passes_the_limit() -> None:
    rows = "".join(f"{at},30\n" for at in range(MOST_ROWS))

    whole, longer = read(f"t_min,p\n{rows}"), read(f"t_min,p\n{rows}{MOST_ROWS},30\n")

    assert faults(whole) == []
    assert values(whole)["SA-TR-017.lasted"] == f"{MOST_ROWS - 1} min"
    assert faults(longer) == [f"{PATH}:{MOST_ROWS + 2}:1: more than {MOST_ROWS} rows"]
    assert values(longer) == {}


@pytest.mark.parametrize(
    "text", ["," * 4_000_000, "t_min,p\n" + "\n" * 4_000_000 + "x", "a" * 4_000_000]
)
def test_a_large_file_that_is_no_log_ends_in_diagnostics_and_no_values(text: str) -> None:
    found = read(text)

    assert found.diagnostics
    assert len(found.diagnostics) <= MOST_ROWS + 2
    assert found.log.channels == ()


def test_garbled_logs_end_in_diagnostics_and_never_in_a_traceback() -> None:
    chance = Random(17)  # noqa: S311 - garbling, not secrets
    signs = '0123456789.,;:-+eE "#\nTZp_tmin\u00a0\u2028\t'

    for _ in range(3000):
        text = "t_min,p\n" * chance.choice((0, 1)) + "".join(
            chance.choice(signs) for _ in range(chance.randrange(40))
        )
        found = read(text)
        assert found.diagnostics or found.log.seconds
