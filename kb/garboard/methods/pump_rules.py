"""Rows of several regulations on bilge and fire pumps, side by side, in both printed columns.

Two columns of one row need not agree: 14.3 m3/h stands beside 66.6 gpm, and neither is turned
into the other. Where the text leaves a gap, the gap is printed as an alarm beside the larger
figure. The rule is chosen by the flag, never here.

By hand: at 130 ft the fire pump row of a sailing school vessel is 14.3 m3/h, 66.6 gpm. At
exactly 120 ft the table says "under 120" and "over 120": no row, so the larger figure with the
gap beside it.
"""

from collections.abc import Callable, Mapping
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
from garboard.methods import pump_rows as rows
from garboard.methods.cases.pump_rules import BILGE_AND_FIRE_PUMP_RULES
from garboard.methods.figures import NEAR, Figure, answer, number, required, word
from garboard.methods.publications import published

__all__ = ["BILGE_AND_FIRE_PUMP_RULES_METHOD"]

_NO_RULE: Final = "the rule set is chosen by the flag and its inspector, never here"
_LENGTH: Final = "the length chooses the row"
_ODD: Final = (
    "the hand pump is printed as a maximum of 5 gpm where the other rows give minima: "
    "ask the inspector"
)

_Asked = Mapping[str, Argument]


def _under(length: float, limit: Figure) -> bool:
    """Whether a length is below a printed limit, not at it."""
    return length < limit.si * (1 - NEAR)


def _over(length: float, limit: Figure) -> bool:
    """Whether a length is above a printed limit, not at it."""
    return length > limit.si * (1 + NEAR)


def _long(length: float) -> tuple[bool, tuple[str, ...]]:
    """Whether a length is over 19.8 m (65 ft), and what to say where only one column thinks so."""
    if _over(length, rows.LONG_M) and not _over(length, rows.LONG_FT):
        return True, (
            f"over {rows.LONG_M} and not over {rows.LONG_FT}: the larger figure is shown",
        )
    return _over(length, rows.LONG_M), ()


def _few(asked: _Asked) -> bool | None:
    """Whether she carries up to 49 passengers; None where nobody said."""
    passengers = number(asked, "passengers")
    return None if passengers is None else passengers <= rows.MANY


def small_passenger_bilge(asked: _Asked) -> Answer:
    """46 CFR 182.520(a), small passenger vessels."""
    length = required(asked, "length", _LENGTH)
    long, alarms = _long(length)
    if long:
        return answer([rows.PASSENGER_LONG], alarms=alarms)
    few = _few(asked)
    if few is None:
        raise OutsideValidity("the number of passengers chooses the row")
    ferry = asked["ferry"].word if "ferry" in asked else ""
    if not few or ferry == "yes":
        return answer([rows.PASSENGER_MANY])
    if not ferry:
        raise OutsideValidity("say ferry = yes or no: every ferry has the larger row")
    if _under(length, rows.SHORTEST):
        raise OutsideValidity(f"no row is held for a length under {rows.SHORTEST} (26 ft)")
    return answer([rows.PASSENGER_FEW], notes=["the third row was seen in part; ask for the text"])


def bilge_pipe(asked: _Asked) -> Answer:
    """46 CFR 182.510(b), nominal size of bilge pipe."""
    long, alarms = _long(required(asked, "length", _LENGTH))
    return answer([rows.PIPE_LONG if long else rows.PIPE_SHORT, rows.STRAINER], alarms=alarms)


def small_passenger_fire(asked: _Asked) -> Answer:
    """46 CFR 181.300, fire pumps of small passenger vessels."""
    ferry = "ferry" in asked and asked["ferry"].word == "yes"
    if ferry and _few(asked):
        return answer([rows.FIRE_FERRY])
    return answer([rows.FIRE_PUMP])


def sailing_school_bilge(asked: _Asked) -> Answer:
    """46 CFR 169.654, bilge pumps of sailing school vessels."""
    length = required(asked, "length", _LENGTH)
    tons = number(asked, "gross_tons")
    shortest, small, large, largest = rows.SCHOOL_FT
    if not _under(length, largest) or (tons is not None and tons >= rows.HEAVY):
        return answer([rows.SCHOOL_LARGEST], notes=["the capacity is not held: ask the inspector"])
    if not _under(length, large):
        if tons is None:
            raise OutsideValidity("say the gross tons: 100 and over has another row")
        return answer([rows.SCHOOL_LARGE])
    found = [rows.SCHOOL_HAND]
    if not _under(length, shortest):
        found.append(rows.SCHOOL_SMALL if _under(length, small) else rows.SCHOOL_MIDDLE)
    return answer(found, notes=[_ODD])


def sailing_school_fire(asked: _Asked) -> Answer:
    """46 CFR 169.559, fire pumps of sailing school vessels."""
    length = required(asked, "length", _LENGTH)
    short, long = rows.SCHOOL_FIRE_FT
    under, between, over = rows.SCHOOL_FIRE_ROWS
    notes = ["both columns as printed; they differ by up to 6 percent and are not converted"]
    if _under(length, short):
        return answer([rows.SCHOOL_FIRE_HAND, under], notes)
    if _under(length, long):
        return answer([rows.SCHOOL_FIRE_HAND, between], notes)
    gap = f"exactly {long} is in no row, the text says under and over: the larger figure is shown"
    return answer([rows.SCHOOL_FIRE_HAND, over], notes, [] if _over(length, long) else [gap])


def canada_sail_training_bilge(asked: _Asked) -> Answer:
    """Transport Canada, sail training vessels, 7.1."""
    length = required(asked, "length", _LENGTH)
    return answer([rows.CANADA_SHORT if _under(length, rows.CANADA_M) else rows.CANADA_LONG])


_RULES: Final[Mapping[str, Callable[[_Asked], Answer]]] = {
    "small_passenger_bilge": small_passenger_bilge,
    "bilge_pipe": bilge_pipe,
    "small_passenger_fire": small_passenger_fire,
    "sailing_school_bilge": sailing_school_bilge,
    "sailing_school_fire": sailing_school_fire,
    "canada_sail_training_bilge": canada_sail_training_bilge,
}


def look_up(asked: _Asked) -> Answer:
    """Read the rows of one rule set."""
    return _RULES[word(asked, "rule", _NO_RULE)](asked)


BILGE_AND_FIRE_PUMP_RULES_METHOD: Final = TableMethod(
    name="bilge_and_fire_pump_rules",
    title="Bilge and fire pumps that rules ask for",
    purpose="Show the rows of several regulations side by side so the crew can ask the surveyor "
    "the right question.",
    grade=Grade.A,
    parameters=(
        Parameter(
            "rule",
            "regulation row set",
            words=tuple(_RULES),
            missing=_NO_RULE,
        ),
        Parameter("length", "vessel length as the regulation defines it", "m"),
        Parameter("passengers", "number of passengers"),
        Parameter("ferry", "whether she is a ferry", words=("yes", "no")),
        Parameter("gross_tons", "US regulatory tons, a plain number: it is no mass"),
    ),
    results=(
        Result("pumps", "number of fixed pumps"),
        Result("pump_l_min", "capacity per power pump, metric column", "L/min"),
        Result("pump_gpm", "capacity per power pump, US column", "gal_us/min"),
        Result("pump_m3_h", "capacity per power pump, metric column", "m3/h"),
        Result("hand_l_min", "portable hand pump, metric column", "L/min"),
        Result("hand_gpm", "portable hand pump, US column", "gal_us/min"),
        Result("hand_m3_h", "hand pump, metric column", "m3/h"),
        Result("combined_gpm", "both pumps together, US column", "gal_us/min"),
        Result("combined_m3_h", "both pumps together, metric column", "m3/h"),
        Result("pipe_nominal_mm", "nominal bilge pipe, metric column", "mm"),
        Result("pipe_nominal_inch", "nominal bilge pipe, US column", "inch"),
        Result("strainer_open_area", "open area of the strainer, times the pipe"),
        Result("fire_l_min", "fire pump, metric column", "L/min"),
        Result("fire_gpm", "fire pump, US column", "gal_us/min"),
        Result("fire_m3_h", "fire pump, metric column", "m3/h"),
        Result("fire_kpa", "fire pump pressure, metric column", "kPa(g)"),
        Result("fire_psi", "fire pump pressure, US column", "psi(g)"),
        Result("jet_m", "reach of the jet, metric column", "m"),
        Result("jet_ft", "reach of the jet, US column", "ft"),
    ),
    limits=(
        Limit("length > 0 m", "the length is missing"),
        Limit("passengers >= 0", "a number of passengers is not negative"),
    ),
    valid=(
        "US inspected small passenger vessels, US sailing school vessels, Canadian sail training "
        "vessels, as each row says",
        "a rule set that is not a row set here is refused: no rows are held for it",
        "a length in a gap of the text gives the gap as an alarm, beside the larger figure",
    ),
    sources=published(
        "46cfr182.520",
        "46cfr182.510",
        "46cfr181.300",
        "46cfr169.559",
        "46cfr169.654",
        "tc-sail-training",
        "gerr-boat-systems",
    ),
    caution="Rated capacity is at zero head: measure it over the side. Rules depend on flag, "
    "length and passengers.",
    deferral="The flag state and its inspector choose the rule set.",
    do_not=(
        "choose the regulation for the crew",
        "convert one printed column into the other",
        "state that a vessel meets a rule",
    ),
    proofs=BILGE_AND_FIRE_PUMP_RULES,
    contradictions=(
        Contradiction(
            topic="capacity of a fire pump, sailing school vessel over 120 ft",
            printed=(
                Printed("14.3 m3/h", "46 CFR 169.559, metric column"),
                Printed("66.6 gpm, which is 15.1 m3/h", "46 CFR 169.559, US column"),
            ),
            effect="the columns of one row are 5.8 percent apart",
            handbook="quotes both columns, and never converts one into the other",
            sources=("46cfr169.559",),
        ),
        Contradiction(
            topic="fire pump of a sailing school vessel of exactly 120 ft",
            printed=(
                Printed("90 ft to under 120 ft", "46 CFR 169.559(b), one row"),
                Printed("over 120 ft", "46 CFR 169.559(b), the next row"),
            ),
            effect="a vessel of exactly that length is in neither row",
            handbook="says that there is a gap and shows the larger figure",
            sources=("46cfr169.559",),
        ),
        Contradiction(
            topic="portable hand pump of a small sailing school vessel",
            printed=(
                Printed("a maximum of 5 gpm", "46 CFR 169.654(a), this row"),
                Printed("minima", "46 CFR 169.654, the other rows"),
            ),
            effect="read as printed, somebody may fit too small a pump",
            handbook="prints the row as found and sends the question to the inspector",
            sources=("46cfr169.654",),
        ),
    ),
    look_up=look_up,
)
