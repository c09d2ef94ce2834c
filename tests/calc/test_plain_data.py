"""Everything that a page looks at can be kept: written as plain data and read back to the last bit."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

import pytest

from garboard.calc.directory import Card
from garboard.calc.kinds import PLAIN_NUMBER
from garboard.calc.plain_data import Desk, NotKept, codec_of, new_pool, read_plain, write_plain
from garboard.calc.sheet import Sheet
from garboard.calc.units import Unit, read_unit
from garboard.calc.value import Requirement, Value, Verdict
from garboard.errors import Where
from tests.calc.exactness import differences

START = Where("a.md", 10, 3)


@dataclass(frozen=True, slots=True)
class Sample:
    """A field of every sort."""

    text: str
    number: float
    unit: Unit
    where: Where
    word: Verdict
    pairs: tuple[tuple[float, float | None], ...] = ()
    table: Mapping[str, float] = field(default_factory=dict)
    inner: "Sample | None" = None
    count: int = 3
    zero: float = 0.0
    flag: bool = False
    note: str = ""


@dataclass(frozen=True, slots=True)
class Odd:
    """A field of a sort that cannot be written."""

    names: frozenset[str]


def desk() -> Desk:
    return Desk(START, 4, new_pool([]))


def there_and_back(thing: Any) -> Any:
    made = desk()
    data = json.loads(json.dumps(write_plain(thing, made)))
    pool = new_pool(json.loads(json.dumps(made.pool.rows)))
    return read_plain(type(thing), data, Desk(START, 4, pool))


def sample(**changed: Any) -> Sample:
    known: dict[str, Any] = {
        "text": 'a "quoted" \u00b0 \u2028 text', "number": 0.1 + 0.2, "unit": read_unit("kJ/(kg.K)"),
        "where": Where("a.md", 12, 9), "word": Verdict.NOMINAL,
    }  # fmt: skip
    return Sample(**(known | changed))


@pytest.mark.parametrize("kind", [Value, Requirement, Sheet, Card])
def test_every_field_of_what_is_kept_is_of_a_sort_that_can_be_written(kind: type) -> None:
    assert codec_of(kind)


@pytest.mark.parametrize(
    "thing",
    [
        sample(),
        sample(number=-0.0, zero=-0.0),
        sample(number=5e-324, pairs=((1.0, None), (-1e308, 2.0))),
        sample(table={"b": 1.0, "a": 2.0}, count=0, flag=True),
        sample(inner=sample(note="inside", word=Verdict.FAILS)),
    ],
)
def test_what_is_written_is_read_back_to_the_last_bit(thing: Sample) -> None:
    assert list(differences(thing, there_and_back(thing))) == []


def test_fields_at_the_end_that_say_nothing_are_left_out_but_never_a_signed_zero() -> None:
    rows = [write_plain(sample(**each), desk()) for each in ({}, {"zero": -0.0}, {"note": "kept"})]

    assert [len(row) for row in rows] == [10, 10, 12]
    assert [str(row[9]) for row in rows[:2]] == ["0.0", "-0.0"]


@pytest.mark.parametrize(
    "thing",
    [
        sample(number=float("nan")),
        sample(number=float("inf")),
        sample(number=3),
        sample(text=None),
        sample(flag=1),
        sample(where=Where("b.md", 12, 9)),
        sample(where=Where("a.md", 14, 9)),
        sample(where=Where("a.md", 12, 2)),
        Odd(frozenset("ab")),
    ],
)
def test_what_could_not_be_read_back_as_it_is_is_not_written(thing: object) -> None:
    with pytest.raises(NotKept):
        write_plain(thing, desk())


OTHERS: tuple[Any, ...] = (None, 7, -1, True, 10**400, "x", [], {}, [[]], float("inf"))


@pytest.mark.parametrize(
    ("at", "put"), [(at, put) for at in range(5) for put in OTHERS if (at, put) != (0, "x")]
)
def test_a_row_with_a_part_of_another_sort_is_refused(at: int, put: object) -> None:
    made = desk()
    data = write_plain(sample(), made)
    assert read_plain(Sample, data, made) == sample()
    data[at] = put

    with pytest.raises(NotKept):
        read_plain(Sample, data, made)


@pytest.mark.parametrize(
    "rows", [[1], [[0]], [[5, []]], [[0, 3]], [[1, ["m", "1/0", "0", 0]]], [[True, []]]]
)
def test_a_pool_of_something_else_is_refused(rows: list[Any]) -> None:
    with pytest.raises(NotKept):
        new_pool(rows)


def test_a_kind_is_written_once() -> None:
    made = desk()

    places = [made.pool.place_of(kind) for kind in (PLAIN_NUMBER, read_unit("m"), PLAIN_NUMBER)]

    assert places[0] == places[2] != places[1]
