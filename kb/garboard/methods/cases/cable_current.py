"""Cases for the most current of a boat conductor: every cell of the table, and what is refused."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["DC_CABLE_CURRENT_LIMIT"]

_CFR: Final = partial(Proof, source="33cfr183.425", seen="original", basis="rule", result="limit")
_REFUSED: Final = partial(_CFR, expect=Expect.REFUSE)
_OUTSIDE: Final = {"engine_space": "no"}
_INSIDE: Final = {"engine_space": "yes"}

_PUBLISHED: Final = (
    _CFR(
        name="ampere-12-105",
        call={"size": "12", "insulation_rating": "105 degC", **_OUTSIDE},
        value="45 A",
    ),
    _CFR(
        name="ampere-12-105-engine",
        call={"size": "12", "insulation_rating": "105 degC", **_INSIDE},
        value="38.25 A",
        absolute="0.3 A",
        seen="secondary",
        note="a published chart prints 38",
    ),
    _CFR(
        name="ampere-10-60",
        call={"size": "10", "insulation_rating": "60 degC", **_OUTSIDE},
        value="40 A",
    ),
    _CFR(
        name="ampere-6-75",
        call={"size": "6", "insulation_rating": "75 degC", **_OUTSIDE},
        value="95 A",
    ),
    _REFUSED(
        name="ampere-18-single",
        call={"size": "18", "insulation_rating": "105 degC", "separate": "yes", **_OUTSIDE},
        value="single conductor smaller than 16 AWG",
    ),
    _CFR(
        name="ampere-2-75",
        call={"size": "2", "insulation_rating": "75 degC", **_OUTSIDE},
        value="170 A",
        must_not_give=(("265 A", "2/0 read for 2"),),
    ),
)

_EDGES: Final = (
    _CFR(
        name="ampere-12-105-engine-table",
        call={"size": "12", "insulation_rating": "105 degC", **_INSIDE},
        result="table",
        value="45 A",
    ),
    _REFUSED(
        name="ampere-18-not-said",
        call={"size": "18", "insulation_rating": "105 degC", **_OUTSIDE},
        value="single conductor smaller than 16 AWG",
        note="laid singly unless the author says otherwise",
    ),
    _REFUSED(
        name="ampere-engine-75",
        call={"size": "6", "insulation_rating": "75 degC", **_INSIDE},
        value="the note 1 factor for insulation of 75 degC in the engine space is not held",
    ),
    _REFUSED(
        name="ampere-engine-125",
        call={"size": "6", "insulation_rating": "125 degC", **_INSIDE},
        value="the note 1 factor for insulation of 125 degC in the engine space is not held",
    ),
    _REFUSED(
        name="ampere-between-columns",
        call={"size": "6", "insulation_rating": "100 degC", **_OUTSIDE},
        value="take the lower column, 90 degC",
    ),
    _CFR(
        name="ampere-in-fahrenheit",
        call={"size": "12", "insulation_rating": "221 degF", **_OUTSIDE},
        value="45 A",
        note="105 degC written in another unit is still that column",
    ),
    _REFUSED(
        name="ampere-below-the-table",
        call={"size": "6", "insulation_rating": "59 degC", **_OUTSIDE},
        value="the lowest column is of 60 degC",
    ),
    _REFUSED(
        name="ampere-above-the-table",
        call={"size": "6", "insulation_rating": "205 degC", **_OUTSIDE},
        value="the highest column is of 200 degC",
    ),
    _REFUSED(
        name="ampere-no-place",
        call={"size": "6", "insulation_rating": "105 degC"},
        value="say engine_space = yes or no",
    ),
    _REFUSED(
        name="ampere-no-rating",
        call={"size": "6", **_OUTSIDE},
        value="the insulation rating chooses the column",
    ),
    _REFUSED(
        name="ampere-no-such-size",
        call={"size": "5", "insulation_rating": "105 degC", **_OUTSIDE},
        value="`5` is no word for `size`",
    ),
)

_TABLE: Final = """
18    10  10  15  20  20  25  25
16    15  15  20  25  25  30  35
14    20  20  25  30  35  40  45
12    25  25  35  40  45  50  55
10    40  40  50  55  60  70  70
8     55  65  70  70  80  90 100
6     80  95 100 100 120 125 135
4    105 125 130 135 160 170 180
3    120 145 150 155 180 195 210
2    140 170 175 180 210 225 240
1    165 195 210 210 245 265 280
0    195 230 245 245 285 305 325
00   225 265 285 285 330 355 370
000  260 310 330 330 385 410 430
0000 300 360 385 385 445 475 510
"""
"""Table 5 once more, typed apart from the method's own copy."""

_ROWS: Final = tuple(
    _CFR(
        name=f"ampere-table-{size}-{rating}",
        call={
            "size": size,
            "insulation_rating": f"{rating} degC",
            "separate": "no" if size == "18" else "yes",
            **_OUTSIDE,
        },
        value=f"{amperes} A",
    )
    for size, *row in map(str.split, _TABLE.strip().splitlines())
    for rating, amperes in zip((60, 75, 80, 90, 105, 125, 200), row, strict=True)
)

DC_CABLE_CURRENT_LIMIT: Final = _PUBLISHED + _EDGES + _ROWS
