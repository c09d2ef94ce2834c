"""Cases for openings in guards: the published ones, then every row of both tables typed again."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["GUARD_OPENING"]

_O10: Final = partial(Proof, source="29cfr1910.217", seen="secondary", basis="table")
_ISO: Final = partial(Proof, source="iso-13857", seen="secondary", basis="table")
_REFUSED: Final = partial(
    Proof, source="iso-13857", seen="secondary", basis="rule", expect=Expect.REFUSE
)

_PUBLISHED: Final = (
    _O10(
        name="guard-4-in",
        call={"table": "o10", "distance": "4 inch"},
        result="opening_max",
        value="0.625 inch",
    ),
    _O10(
        name="guard-boundary-1.5-in",
        call={"table": "o10", "distance": "1.5 inch"},
        result="opening_max",
        value="0.25 inch",
        must_not_give=(("0.375 inch", "the wider of two rows at the shared limit"),),
    ),
    _ISO(
        name="guard-slot-9",
        call={"table": "iso", "opening": "9 mm", "shape": "slot"},
        result="distance_min",
        value="80 mm",
    ),
    _ISO(
        name="guard-square-25",
        call={"table": "iso", "opening": "25 mm", "shape": "square"},
        result="distance_min",
        value="120 mm",
    ),
    _ISO(
        name="guard-100-mm-both",
        call={"table": "both", "distance": "100 mm", "shape": "slot"},
        result="opening_max",
        value="12 mm",
        must_not_give=(("15.875 mm", "the looser table alone"),),
        note="Table O-10 would allow 15.875 mm; print both, mark 12 mm as the stricter",
    ),
    _REFUSED(
        name="guard-opening-130",
        call={"table": "iso", "opening": "130 mm", "shape": "round"},
        result="distance_min",
        value="opening above 120 mm",
    ),
    _ISO(
        name="guard-slot-25-long",
        call={"table": "iso", "opening": "25 mm", "shape": "slot", "length": "70 mm"},
        result="distance_min",
        value="850 mm",
        must_not_give=(("200 mm", "short-slot row used for a slot over 65 mm"),),
    ),
)

_EDGES: Final = (
    _ISO(
        name="guard-slot-12-half-inch",
        call={"table": "iso", "opening": "12 mm", "shape": "slot"},
        result="distance_min",
        value="100 mm",
        must_not_give=(("0 mm", "a guarding article says openings up to 12 mm need no distance"),),
    ),
    _ISO(
        name="guard-opening-12-both",
        call={"opening": "12 mm", "shape": "slot"},
        result="distance_min",
        value="100 mm",
        must_not_give=(("63.5 mm", "the looser table alone"),),
    ),
    _ISO(
        name="guard-short-slot",
        call={"table": "iso", "opening": "21 mm", "shape": "slot", "length": "60 mm"},
        result="distance_min",
        value="200 mm",
    ),
    _ISO(
        name="guard-short-slot-longer",
        call={"table": "iso", "opening": "25 mm", "shape": "slot", "length": "68 mm"},
        result="distance_min",
        value="850 mm",
    ),
    _ISO(
        name="guard-short-slot-wider",
        call={"table": "iso", "opening": "31 mm", "shape": "slot", "length": "60 mm"},
        result="distance_min",
        value="850 mm",
    ),
    _O10(
        name="guard-boundary-in-mm",
        call={"table": "o10", "distance": "38.1 mm"},
        result="opening_max",
        value="0.25 inch",
        note="1.5 inch written in millimetres is still the shared limit",
    ),
    _O10(
        name="guard-at-the-first-row",
        call={"table": "o10", "distance": "0.5 inch"},
        result="opening_max",
        value="0.25 inch",
    ),
    _REFUSED(
        name="guard-closer-than-the-first-row",
        call={"table": "o10", "distance": "0.48 inch"},
        result="opening_max",
        value="closer than the first row",
        source="29cfr1910.217",
    ),
    _REFUSED(
        name="guard-beyond-the-last-row",
        call={"table": "o10", "distance": "32 inch"},
        result="opening_max",
        value="beyond the last row",
        source="29cfr1910.217",
    ),
    _REFUSED(
        name="guard-wider-than-o10",
        call={"table": "o10", "opening": "2.2 inch"},
        result="distance_min",
        value="wider than the last row",
        source="29cfr1910.217",
    ),
    _REFUSED(
        name="guard-iso-too-close",
        call={"table": "iso", "distance": "1.9 mm", "shape": "slot"},
        result="opening_max",
        value="closer than the first row",
    ),
    _REFUSED(
        name="guard-opening-125",
        call={"table": "iso", "opening": "125 mm", "shape": "round"},
        result="distance_min",
        value="opening above 120 mm",
    ),
    _REFUSED(
        name="guard-no-shape",
        call={"table": "iso", "opening": "9 mm"},
        result="distance_min",
        value="needs the shape",
    ),
    _REFUSED(
        name="guard-nothing-asked",
        call={"table": "iso", "shape": "slot"},
        result="distance_min",
        value="say the distance or the opening",
    ),
    _REFUSED(
        name="guard-children",
        call={"table": "iso", "opening": "9 mm", "shape": "slot", "people": "children"},
        result="distance_min",
        value="the table for younger children is not held",
    ),
    _REFUSED(
        name="guard-reaching-over",
        call={"table": "iso", "opening": "9 mm", "shape": "slot", "reach": "over"},
        result="distance_min",
        value="other tables apply",
    ),
)

_O10_ROWS: Final = tuple(
    _O10(
        name=f"guard-o10-{distance}-in",
        call={"table": "o10", "distance": f"{distance} inch"},
        result="opening_max",
        value=f"{opening} inch",
    )
    for distance, opening in (
        ("1.55", "0.375"),
        ("2.6", "0.5"),
        ("3.6", "0.625"),
        ("5.7", "0.75"),
        ("6.7", "0.875"),
        ("7.7", "1.25"),
        ("12.9", "1.5"),
        ("16", "1.875"),
        ("18", "2.125"),
    )
)

_O10_OPENINGS: Final = tuple(
    _O10(
        name=f"guard-o10-opening-{opening}-in",
        call={"table": "o10", "opening": f"{opening} inch"},
        result="distance_min",
        value=f"{distance} inch",
    )
    for opening, distance in (
        ("0.25", "0.5"),
        ("0.375", "1.5"),
        ("0.5", "2.5"),
        ("0.625", "3.5"),
        ("0.75", "5.5"),
        ("0.875", "6.5"),
        ("1.25", "7.5"),
        ("1.5", "12.5"),
        ("1.875", "15.5"),
        ("2.125", "17.5"),
    )
)

_ISO_ROWS: Final = tuple(
    _ISO(
        name=f"guard-iso-{shape}-{opening}",
        call={"table": "iso", "opening": f"{opening} mm", "shape": shape},
        result="distance_min",
        value=f"{distance} mm",
    )
    for opening, distances in (
        ("3", ("2", "2", "2")),
        ("4.2", ("10", "5", "5")),
        ("6.2", ("20", "15", "5")),
        ("8.2", ("80", "25", "20")),
        ("10.2", ("100", "80", "80")),
        ("12.4", ("120", "120", "120")),
        ("20.5", ("850", "120", "120")),
        ("31", ("850", "200", "120")),
        ("41", ("850", "850", "850")),
    )
    for shape, distance in zip(("slot", "square", "round"), distances, strict=True)
)

_ISO_DISTANCES: Final = tuple(
    _ISO(
        name=f"guard-iso-distance-{distance}",
        call={"table": "iso", "distance": f"{distance} mm", "shape": "slot"},
        result="opening_max",
        value=f"{opening} mm",
    )
    for distance, opening in (("80", "10"), ("110", "12"), ("840", "20"), ("900", "120"))
)

GUARD_OPENING: Final = _PUBLISHED + _EDGES + _O10_ROWS + _O10_OPENINGS + _ISO_ROWS + _ISO_DISTANCES
