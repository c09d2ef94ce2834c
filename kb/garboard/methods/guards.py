"""The largest opening in a guard, or the least distance behind one, by two published tables.

Table O-10 was written for power presses and counts in inches; the ISO table counts in
millimetres and knows the shape of the opening. Where both are read, both are shown and the
stricter is marked. At a limit that two rows share the stricter row answers, and nothing is read
between rows.

By hand: at 4 inch Table O-10 reads "over 3.5 up to 5.5": 0.625 inch. At 100 mm a slot may be 12
mm by the ISO table (100 mm asked) while O-10 would allow 0.625 inch; 12 mm is the stricter.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from garboard.calc.method import (
    Answer,
    Argument,
    Contradiction,
    Grade,
    Limit,
    Parameter,
    Printed,
    Result,
    TableMethod,
)
from garboard.errors import OutsideValidity
from garboard.methods.cases.guards import GUARD_OPENING
from garboard.methods.figures import NEAR, Figure, number, word
from garboard.methods.publications import published

__all__ = ["GUARD_OPENING_METHOD"]

O10_INCH: Final = (
    (0.5, 1.5, 0.25),
    (1.5, 2.5, 0.375),
    (2.5, 3.5, 0.5),
    (3.5, 5.5, 0.625),
    (5.5, 6.5, 0.75),
    (6.5, 7.5, 0.875),
    (7.5, 12.5, 1.25),
    (12.5, 15.5, 1.5),
    (15.5, 17.5, 1.875),
    (17.5, 31.5, 2.125),
)
"""29 CFR 1910.217 Table O-10: distance over, distance up to, largest opening."""

ISO_MM: Final = (
    (4, 2, 2, 2),
    (6, 10, 5, 5),
    (8, 20, 15, 5),
    (10, 80, 25, 20),
    (12, 100, 80, 80),
    (20, 120, 120, 120),
    (30, 850, 120, 120),
    (40, 850, 200, 120),
    (120, 850, 850, 850),
)
"""ISO 13857 Table 4: opening up to, then the distance for a slot, a square, a round hole."""

ISO_SHORT_SLOT_MM: Final = (20, 30, 65, 200)
"""ISO 13857 Table 4, note: slots over, up to, of a length not over: distance."""

_COLUMNS: Final = ("opening", "slot", "square", "round")
_O10, _ISO = "29cfr1910.217", "iso-13857"


@dataclass(frozen=True, slots=True)
class _Read:
    """What one table says."""

    table: str
    row: str
    figure: Figure
    stricter: bool = False


def _within(value: float, limit: float, unit: str) -> bool:
    """Whether a length is at or below a printed limit."""
    return value <= Figure(limit, unit).si * (1 + NEAR)


def _o10_opening(distance: float) -> _Read:
    first, last = O10_INCH[0][0], O10_INCH[-1][1]
    if distance < Figure(first, "inch").si * (1 - NEAR):
        raise OutsideValidity(f"closer than the first row of Table O-10, {first:g} inch")
    for over, up_to, largest in O10_INCH:
        if _within(distance, up_to, "inch"):
            row = f"distance over {over:g} up to {up_to:g} inch"
            return _Read(_O10, row, Figure(largest, "inch"))
    raise OutsideValidity(f"beyond the last row of Table O-10, {last:g} inch")


def _o10_distance(opening: float) -> _Read:
    for over, _, largest in O10_INCH:
        if _within(opening, largest, "inch"):
            row = f"opening up to {largest:g} inch: more than {over:g} inch away"
            return _Read(_O10, row, Figure(over, "inch"))
    widest = O10_INCH[-1][2]
    raise OutsideValidity(f"wider than the last row of Table O-10, {widest:g} inch")


def _iso_distance(opening: float, shape: str, length: float | None) -> _Read:
    over, up_to, longest, near = ISO_SHORT_SLOT_MM
    slot = shape == "slot" and length is not None and _within(length, longest, "mm")
    if slot and _within(opening, up_to, "mm") and not _within(opening, over, "mm"):
        row = f"slot over {over} up to {up_to} mm, not longer than {longest} mm"
        return _Read(_ISO, row, Figure(near, "mm"))
    for row_mm in ISO_MM:
        if _within(opening, row_mm[0], "mm"):
            row = f"{shape} opening up to {row_mm[0]} mm"
            return _Read(_ISO, row, Figure(row_mm[_COLUMNS.index(shape)], "mm"))
    raise OutsideValidity("reaching through is not the right check for an opening this wide")


def _iso_opening(distance: float, shape: str) -> _Read:
    found = None
    for row_mm in ISO_MM:
        asked = row_mm[_COLUMNS.index(shape)]
        if distance >= Figure(asked, "mm").si * (1 - NEAR):
            row = f"{shape} opening up to {row_mm[0]} mm: {asked} mm away"
            found = _Read(_ISO, row, Figure(row_mm[0], "mm"))
    if found is None:
        raise OutsideValidity("closer than the first row of the ISO table")
    return found


def _marked(reads: list[_Read], *, smaller: bool) -> list[_Read]:
    """The same rows, the stricter first and marked."""
    ordered = sorted(reads, key=lambda read: read.figure.si, reverse=not smaller)
    return [_Read(ordered[0].table, ordered[0].row, ordered[0].figure, stricter=True), *ordered[1:]]


def _shape(asked: Mapping[str, Argument]) -> str:
    return word(asked, "shape", "the ISO table needs the shape: slot, square or round")


def _refuse_people(asked: Mapping[str, Argument]) -> None:
    if asked["people"].word == "children":
        raise OutsideValidity("the table for younger children is not held")
    if asked["reach"].word != "through":
        raise OutsideValidity("reaching over or under: other tables apply")


def look_up(asked: Mapping[str, Argument]) -> Answer:
    """Read one table or both, by distance or by opening."""
    _refuse_people(asked)
    tables = ("o10", "iso") if asked["table"].word == "both" else (asked["table"].word,)
    distance, opening = number(asked, "distance"), number(asked, "opening")
    if distance is None and opening is None:
        raise OutsideValidity("say the distance or the opening")
    reads: dict[str, list[_Read]] = {}
    if distance is not None:
        found = [
            _o10_opening(distance) if table == "o10" else _iso_opening(distance, _shape(asked))
            for table in tables
        ]
        reads["opening_max"] = _marked(found, smaller=True)
    if opening is not None:
        length = number(asked, "length")
        found = [
            _o10_distance(opening)
            if table == "o10"
            else _iso_distance(opening, _shape(asked), length)
            for table in tables
        ]
        reads["distance_min"] = _marked(found, smaller=False)
    return Answer(
        results={name: found[0].figure.si for name, found in reads.items()},
        printed={name: str(found[0].figure) for name, found in reads.items()},
        columns=("table", "row", "as printed", "stricter"),
        rows=tuple(
            (read.table, read.row, str(read.figure), "stricter" if read.stricter else "")
            for found in reads.values()
            for read in found
        ),
    )


GUARD_OPENING_METHOD: Final = TableMethod(
    name="guard_opening",
    title="Opening in a guard and its distance",
    purpose="Mesh and slot size against distance for belts, flywheels, couplings and shafts.",
    grade=Grade.A,
    parameters=(
        Parameter(
            "table", "table read: o10, iso or both", default="both", words=("o10", "iso", "both")
        ),
        Parameter("distance", "opening to the nearest moving part", "mm"),
        Parameter("opening", "narrow side of a slot, side of a square, diameter of a hole", "mm"),
        Parameter("shape", "shape of the opening", words=("slot", "square", "round")),
        Parameter("length", "long side of a slot", "mm"),
        Parameter(
            "people", "who may reach the guard", default="adults", words=("adults", "children")
        ),
        Parameter(
            "reach", "how an arm gets there", default="through", words=("through", "over", "under")
        ),
    ),
    results=(
        Result("opening_max", "largest opening", "mm"),
        Result("distance_min", "least distance", "mm"),
    ),
    limits=(
        Limit(
            "opening <= 120 mm",
            "reaching through is not the right check for an opening above 120 mm",
        ),
        Limit("opening > 0 mm", "the opening is missing"),
    ),
    valid=(
        "adults and young people of 14 and over, reaching through a regular opening of a rigid "
        "fixed guard",
        "where Table O-10 is read: distance 0.5 to 31.5 inch",
        "nothing is read between rows",
        "legs have a row of their own, not used here (opening up to 180 mm: 1100 mm)",
    ),
    sources=published("29cfr1910.217", "iso-13857"),
    caution="A guard must also be strong, fixed, and need a spanner to remove. Table O-10 is law "
    "for power presses and a guide elsewhere.",
    deferral="The surveyor and, for children aboard, the full standard.",
    do_not=("approve a guard", "read between rows"),
    proofs=GUARD_OPENING,
    contradictions=(
        Contradiction(
            topic="where Table O-10 stands in the law",
            printed=(
                Printed("section 1910.127", "the guard sheet of an insurer"),
                Printed("29 CFR 1910.217, Table O-10", "the Code of Federal Regulations"),
            ),
            effect="a reader who follows the sheet cannot find the law",
            handbook="cites 29 CFR 1910.217",
            sources=("29cfr1910.217",),
        ),
        Contradiction(
            topic="distance asked for behind a slot of 12 mm, half an inch",
            printed=(
                Printed("no distance at all", "an article on guarding"),
                Printed("100 mm; 80 mm for a square or round hole", "ISO 13857 Table 4"),
            ),
            effect="a finger reaches the belt",
            handbook="gives the distance of the table, never none",
            sources=("iso-13857",),
        ),
        Contradiction(
            topic="largest slot at 100 mm from the moving part",
            printed=(
                Printed("12 mm", "ISO 13857 Table 4"),
                Printed("0.625 inch, which is 15.9 mm", "29 CFR 1910.217 Table O-10"),
            ),
            effect="the two tables were made for different machines and differ in most rows",
            handbook="shows both rows and marks the stricter",
            sources=("iso-13857", "29cfr1910.217"),
        ),
    ),
    look_up=look_up,
)
