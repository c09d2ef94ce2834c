"""The most current that a boat conductor may carry, outside and inside the engine space.

The table is read as it is printed: one row a size, one column an insulation rating. Nothing is
read between columns. Of the factors for the engine space only the one for insulation of 105 degC
is held; another insulation there is refused rather than guessed.

By hand: 12 AWG with insulation of 105 degC is 45 A; in the engine space 45 x 0.85 = 38.25 A. At
60 degC 10 AWG is 40 A.
"""

import math
from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Answer, Argument, Grade, Limit, Parameter, Result, TableMethod
from garboard.errors import OutsideValidity
from garboard.methods.cases.cable_current import DC_CABLE_CURRENT_LIMIT
from garboard.methods.figures import NEAR, Figure, required, word
from garboard.methods.publications import published

__all__ = [
    "AMPERES",
    "COLUMNS_DEGC",
    "DC_CABLE_CURRENT_LIMIT_METHOD",
    "allowed_current",
    "refuse_thin",
]

COLUMNS_DEGC: Final = (60, 75, 80, 90, 105, 125, 200)
"""33 CFR 183.425 Table 5: insulation ratings, from left to right."""

AMPERES: Final[Mapping[str, tuple[int, ...]]] = {
    "18": (10, 10, 15, 20, 20, 25, 25),
    "16": (15, 15, 20, 25, 25, 30, 35),
    "14": (20, 20, 25, 30, 35, 40, 45),
    "12": (25, 25, 35, 40, 45, 50, 55),
    "10": (40, 40, 50, 55, 60, 70, 70),
    "8": (55, 65, 70, 70, 80, 90, 100),
    "6": (80, 95, 100, 100, 120, 125, 135),
    "4": (105, 125, 130, 135, 160, 170, 180),
    "3": (120, 145, 150, 155, 180, 195, 210),
    "2": (140, 170, 175, 180, 210, 225, 240),
    "1": (165, 195, 210, 210, 245, 265, 280),
    "0": (195, 230, 245, 245, 285, 305, 325),
    "00": (225, 265, 285, 285, 330, 355, 370),
    "000": (260, 310, 330, 330, 385, 410, 430),
    "0000": (300, 360, 385, 385, 445, 475, 510),
}
"""33 CFR 183.425 Table 5: conductor size (AWG) to amperes, a column each."""

ENGINE_SPACE: Final = {105: 0.85}
"""Note 1 of Table 5: insulation rating to factor. Read at second hand; no other factor is held."""

_THINNEST: Final = ("16", "18")
"""Smallest single conductor, and smallest in a sheath."""
_CFR: Final = "33cfr183.425"
_NO_RATING: Final = "the insulation rating chooses the column: read it off the jacket"
_NO_PLACE: Final = "say engine_space = yes or no: the engine space lowers the limit"


def _column(rating: float) -> int:
    """The column of an insulation rating in kelvin, by its number from the left."""
    reading = rating - Figure(0, "degC").si
    for number, column in enumerate(COLUMNS_DEGC):
        if math.isclose(reading, column, rel_tol=NEAR):
            return number
    lower = [column for column in COLUMNS_DEGC if column < reading]
    raise OutsideValidity(
        f"no column for insulation of {reading:g} degC and nothing is read between columns: "
        f"take the lower column, {lower[-1]} degC"
    )


def refuse_thin(size: str, *, separate: bool) -> None:
    """Refuse a conductor below the smallest size.

    Raises:
        OutsideValidity: a single conductor below 16 AWG, or one in a sheath below 18 AWG.
    """
    least = _THINNEST[0] if separate else _THINNEST[1]
    order = list(AMPERES)
    if order.index(size) < order.index(least):
        raise OutsideValidity(
            f"a single conductor smaller than {least} AWG is below the smallest size allowed; "
            "say separate = no where it lies in a sheath"
        )


def allowed_current(size: str, rating: float, *, engine_space: bool) -> float:
    """The current that one size may carry.

    Args:
        size: A row of the table, in AWG.
        rating: Insulation temperature rating [K(a)].
        engine_space: Whether the conductor lies in the engine space.

    Returns:
        The allowed current [A].

    Raises:
        OutsideValidity: no column or no factor is held for this insulation.
    """
    column = _column(rating)
    printed = AMPERES[size][column]
    if not engine_space:
        return printed
    factor = ENGINE_SPACE.get(COLUMNS_DEGC[column])
    if factor is None:
        raise OutsideValidity(
            f"the note 1 factor for insulation of {COLUMNS_DEGC[column]} degC in the engine space "
            "is not held"
        )
    return printed * factor


def look_up(asked: Mapping[str, Argument]) -> Answer:
    """Read one row and column, and lower it for the engine space."""
    size = word(asked, "size", "the size chooses the row")
    rating = required(asked, "insulation_rating", _NO_RATING)
    engine_space = word(asked, "engine_space", _NO_PLACE) == "yes"
    separate = asked["separate"].word == "yes"
    refuse_thin(size, separate=separate)
    limit = allowed_current(size, rating, engine_space=engine_space)
    number = _column(rating)
    table, column = AMPERES[size][number], f"{size} AWG, insulation {COLUMNS_DEGC[number]} degC"
    rows = [(column, f"{table:g} A", _CFR)]
    if engine_space:
        rows.append(
            (f"engine space, note 1: x {limit / table:g}", f"{limit:g} A", f"{_CFR}, second hand")
        )
    return Answer(
        results={"limit": limit, "table": table},
        printed={"table": f"{table:g} A"} | ({} if engine_space else {"limit": f"{table:g} A"}),
        columns=("row", "amperes", "source"),
        rows=tuple(rows),
        notes=("a ceiling for the wire, not a fuse size for the load",),
    )


DC_CABLE_CURRENT_LIMIT_METHOD: Final = TableMethod(
    name="dc_cable_current_limit",
    title="Most current of a boat conductor",
    purpose="The most current that a boat conductor may carry, outside and inside the engine "
    "space.",
    grade=Grade.A,
    parameters=(
        Parameter(
            "size",
            "conductor size, American wire gauge, a row of the table",
            words=tuple(AMPERES),
            missing="the size chooses the row",
        ),
        Parameter("insulation_rating", "insulation temperature rating", "degC", missing=_NO_RATING),
        Parameter(
            "engine_space",
            "whether it lies in the engine space",
            words=("yes", "no"),
            missing=_NO_PLACE,
        ),
        Parameter(
            "separate",
            "whether it is laid singly, not in a sheath",
            default="yes",
            words=("yes", "no"),
        ),
    ),
    results=(
        Result("limit", "allowed current", "A"),
        Result("table", "figure of the table, before the engine space lowers it", "A"),
    ),
    limits=(
        Limit("insulation_rating >= 60 degC", "the lowest column is of 60 degC"),
        Limit("insulation_rating <= 200 degC", "the highest column is of 200 degC"),
    ),
    valid=(
        "in the engine space the figure of the table is multiplied by 0.85, for insulation of "
        "105 degC only",
        "insulated stranded copper of boats below 50 V, not a cranking conductor",
        "surroundings of 30 degC, or of 50 degC in the engine space",
        "a size that is no row of the table is refused: no value is held",
        "18 AWG serves in a sheath only, and leaves it for 30 inches at the most",
    ),
    sources=published(_CFR),
    caution="The table is a ceiling for the wire, not a fuse size for the load.",
    deferral="Anything above 50 V, bundles of three or more, or conduit: qualified electrician.",
    do_not=("read between columns", "lower the figure for a bundle"),
    proofs=DC_CABLE_CURRENT_LIMIT,
    look_up=look_up,
)
