"""Cases for a nameplate against a measured wall."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["PRESSURE_PART_RECHECK"]

_HELD: Final = {"record": "held"}
_SHELL: Final = {**_HELD, "P": "100 psi(g)", "R": "48.125 inch", "S": "17500 psi(d)", "E": "0.85"}
_QUESTION: Final = partial(
    Proof, source="api-510-questions", seen="secondary", basis="consistency", relative=0.005
)
_REFUSED: Final = partial(OWN, result="t_shell", expect=Expect.REFUSE)
_MEASURED: Final = {
    **_HELD,
    "t": "0.906 inch",
    "R": "24.344 inch",
    "S": "20000 psi(d)",
    "E": "1",
}

PRESSURE_PART_RECHECK: Final = (
    Proof(
        name="part-separator",
        call={**_SHELL, "allowance": "0.125 inch"},
        result="t_shell",
        value="0.4498 inch",
        relative=0.005,
        source="separator-shell-example",
        seen="secondary",
        basis="consistency",
        independent="scipy 1.17.1, exact thick-wall formula plus allowance: 0.44962 inch",
        note="the article rounds up to half-inch plate",
    ),
    _QUESTION(
        name="part-shell-48",
        call={**_HELD, "t": "1.25 inch", "R": "24 inch", "S": "20000 psi(d)", "E": "0.85"},
        result="P_shown",
        value="859 psi(g)",
        independent="scipy 1.17.1: 862.39 psi(g)",
    ),
    _QUESTION(
        name="part-thinned",
        call=_MEASURED,
        result="P_shown",
        value="729 psi(g)",
        must_not_give=(("738.2 psi(g)", "radius before thinning"),),
        independent="scipy 1.17.1: 730.49 psi(g)",
    ),
    _QUESTION(
        name="part-with-head",
        call={
            **_HELD,
            "P": "1355 psi(g)",
            "static_head": "5 ft",
            "R": "24.125 inch",
            "S": "18800 psi(d)",
            "E": "1",
        },
        result="t_shell",
        value="1.8204 inch",
        relative=0.002,
        must_not_give=(("1.811 inch", "radius before corrosion"),),
        independent="scipy 1.17.1: 1.8092 inch",
    ),
    _QUESTION(
        name="part-expression-29",
        call={**_HELD, "t": "1 inch", "R": "29 inch", "S": "20000 psi(d)", "E": "1"},
        result="P_shown",
        value="675.7 psi(g)",
        relative=0.002,
        independent="scipy 1.17.1: 677.77 psi(g)",
    ),
    Proof(
        name="part-head-60",
        call={
            **_HELD,
            "P": "125 psi(g)",
            "D": "60 inch",
            "S": "15000 psi(d)",
            "E": "1",
            "head": "ellipsoidal_2_1",
        },
        result="t_head",
        value="0.2502 inch",
        relative=0.002,
        source="asme-viii-1",
        seen="secondary",
        basis="consistency",
    ),
    Proof(
        name="part-too-thick",
        call={**_HELD, "P": "9000 psi(g)", "R": "24 inch", "S": "20000 psi(d)", "E": "1"},
        result="t_shell",
        value="above 0.385*S*E",
        expect=Expect.REFUSE,
        source="asme-viii-1",
        seen="secondary",
        basis="rule",
    ),
    Proof(
        name="part-wall-above-half-the-radius",
        call={**_MEASURED, "t": "12.9 inch"},
        result="P_shown",
        value="above half the radius",
        expect=Expect.REFUSE,
        source="asme-viii-1",
        seen="secondary",
        basis="rule",
    ),
    OWN(
        name="part-wall-just-under-half-the-radius",
        call={**_MEASURED, "t": "12 inch"},
        result="P_shown",
        value="7608.4 psi(g)",
        relative=1e-5,
        note="20 000 x 12 / (24.344 + 7.2)",
    ),
    Proof(
        name="part-no-record",
        call={name: text for name, text in _SHELL.items() if name != "record"},
        result="t_shell",
        value="no nameplate and inspection record: record first",
        expect=Expect.REFUSE,
        source="house-rule",
        seen="constructed",
        basis="constructed",
    ),
    _REFUSED(
        name="part-record-none",
        call={**_SHELL, "record": "none"},
        value="no nameplate and inspection record: record first",
    ),
    _REFUSED(
        name="part-other-head",
        call={**_HELD, "P": "9 bar(g)", "D": "1 m", "S": "100 N/mm2", "E": "1", "head": "flat"},
        value="2:1 ellipsoidal head",
    ),
    _REFUSED(
        name="part-joint-better-than-plate",
        call={**_SHELL, "E": "1.05"},
        value="a joint is not better than the plate",
    ),
    OWN(
        name="part-thick-by-a-little",
        call={**_HELD, "P": "7600 psi(g)", "R": "24 inch", "S": "20000 psi(d)", "E": "1"},
        result="t_shell",
        value="11.8135 inch",
        relative=0.0001,
        note="7600 x 24 / (20 000 - 4560), just under 0.385 x 20 000",
    ),
    OWN(
        name="part-too-thick-by-a-little",
        call={**_HELD, "P": "7750 psi(g)", "R": "24 inch", "S": "20000 psi(d)", "E": "1"},
        result="t_shell",
        value="above 0.385*S*E",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="part-high-head",
        call={
            **_HELD,
            "P": "2500 psi(g)",
            "D": "60 inch",
            "S": "15000 psi(d)",
            "E": "1",
            "allowance": "0.1 inch",
        },
        result="t_head",
        value="5.1847 inch",
        relative=0.0001,
        note="2500 x 60 / (30 000 - 500) + 0.1",
    ),
    OWN(
        name="part-wall-that-fits-the-nameplate",
        call={**_MEASURED, "P": "700 psi(g)"},
        result="P_shown",
        value="728.067 psi(g)",
        relative=1e-5,
    ),
    OWN(
        name="part-wall-below-the-nameplate",
        call={**_MEASURED, "P": "740 psi(g)"},
        result="P_shown",
        value="728.067 psi(g)",
        relative=1e-5,
        expect=Expect.ALARM,
    ),
    OWN(
        name="part-water-above-takes-it-below",
        call={**_MEASURED, "P": "728 psi(g)", "static_head": "2 ft"},
        result="P_shown",
        value="728.067 psi(g)",
        relative=1e-5,
        expect=Expect.ALARM,
    ),
    OWN(
        name="part-little-water-above",
        call={**_MEASURED, "P": "727.2 psi(g)", "static_head": "2 ft"},
        result="t_shell",
        value="0.906 inch",
        relative=0.001,
    ),
)
