"""Whether a nameplate pressure and a measured wall are in the same world: a record, no approval.

The thin-wall formulas know a plain shell and a plain 2:1 head under inside pressure. Radius and
diameter are the inside ones of the wall as it is now, corroded: the radius before thinning would
flatter the wall. The static head of water above the part goes onto the pressure first, the
corrosion allowance onto the wall last.

By hand: 100 psi(g) on R 48.125 inch, S 17 500 psi, E 0.85: 100 x 48.125 / (17 500 x 0.85 - 0.6 x
100) = 0.3248 inch, with 0.125 inch of allowance 0.4498 inch. A wall of 0.906 inch on R 24.344 inch,
S 20 000 psi: 20 000 x 0.906 / (24.344 + 0.6 x 0.906) = 728 psi(g). Five feet of water add 5 x
0.433 = 2.165 psi.
"""

from typing import Final

from garboard.calc.method import Alarm, FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.pressure_parts import PRESSURE_PART_RECHECK
from garboard.methods.publications import published

__all__ = ["PRESSURE_PART_RECHECK_METHOD"]

_RECORD: Final = "no nameplate and inspection record: record first, this is no design page"
_THICK: Final = "thick wall: above 0.385*S*E the thin-wall formula does not hold"
_OTHER_HEAD: Final = "the formula held is that of the 2:1 ellipsoidal head"

PRESSURE_PART_RECHECK_METHOD: Final = FormulaMethod(
    name="pressure_part_recheck",
    title="Nameplate against measured wall",
    purpose="Let a reviewer see whether a nameplate pressure and a measured thickness are in the "
    "same world. Record and compare only.",
    grade=Grade.C,
    parameters=(
        Parameter(
            "record",
            "nameplate and inspection record of this very part",
            words=("held",),
            refused={"none": _RECORD},
            missing=_RECORD,
            required=True,
        ),
        Parameter("P", "pressure on the nameplate", "bar(g)"),
        Parameter("R", "inside radius of the shell, corroded", "mm"),
        Parameter("D", "inside diameter of the head, corroded", "mm"),
        Parameter("S", "allowable stress of the material, from its record", "N/mm2"),
        Parameter("E", "joint efficiency, from the record"),
        Parameter("t", "wall as measured, thinnest place", "mm"),
        Parameter("allowance", "corrosion allowance", "mm", default="0 mm"),
        Parameter("static_head", "height of water above the part", "m", default="0 m"),
        Parameter(
            "head",
            "form of the head",
            default="ellipsoidal_2_1",
            words=("ellipsoidal_2_1",),
            refused={
                "torispherical": _OTHER_HEAD,
                "hemispherical": _OTHER_HEAD,
                "flat": _OTHER_HEAD,
            },
        ),
    ),
    results=(
        Result("t_shell", "wall the formula gives for the shell, allowance in it", "mm"),
        Result("t_head", "wall the formula gives for a 2:1 head, allowance in it", "mm"),
        Result("P_shown", "pressure the measured wall of the shell would give", "bar(g)"),
    ),
    limits=(
        Limit("difference(p_part) <= 0.385 * S * E", _THICK),
        Limit("t <= R / 2", "thick wall: above half the radius the formula does not hold"),
        Limit("P > 0 bar(g)", _RECORD),
        Limit("R > 0 mm", "the inside radius is missing"),
        Limit("D > 0 mm", "the inside diameter is missing"),
        Limit("S > 0 N/mm2", "the allowable stress is missing"),
        Limit("E > 0", "the joint efficiency is missing"),
        Limit("E <= 1", "a joint is not better than the plate: efficiency is at most 1"),
        Limit("t > 0 mm", "the wall is missing: measure it"),
        Limit("allowance >= 0 mm", "a corrosion allowance is not negative"),
        Limit("static_head >= 0 m", "a height of water is not negative"),
    ),
    valid=(
        "a thin wall under inside pressure; the wall not above half the radius, the pressure not "
        "above 0.385 times stress times efficiency",
        "openings, supports, outside pressure, fatigue and pitting are not in this sum",
        "a nameplate and an inspection record of this part are held",
    ),
    sources=published(
        "asme-viii-1",
        "api-510-questions",
        "separator-shell-example",
        "definition",
        "house-rule",
    ),
    caution="Not a design, repair or fitness approval. No stamp, no pressure.",
    deferral="Authorised inspector and authorised shop.",
    do_not=(
        "print a required thickness as approval",
        "give a remaining life",
        "re-rate a vessel",
        "judge the reinforcement of a nozzle or the repair of a weld",
    ),
    proofs=PRESSURE_PART_RECHECK,
    alarms=(
        Alarm(
            "P_shown < p_part",
            "the measured wall shows less than the nameplate: no pressure until an authorised "
            "inspector has seen it",
        ),
    ),
    body="""\
p_part = P + static_head * 0.433 psi/ft in bar(g)  # pressure at the part, water above it counted
t_shell = difference(p_part) * R / (S * E - 0.6 * difference(p_part)) + allowance in mm  # shell
t_head = difference(p_part) * D / (2 * S * E - 0.2 * difference(p_part)) + allowance in mm  # head
P_shown = 0 bar(g) + S * E * t / (R + 0.6 * t) in bar(g)  # pressure the measured wall would give
""",
)
