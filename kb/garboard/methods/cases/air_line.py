"""Cases for the pressure lost in an air line."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.deck import off_deck

__all__ = ["AIR_LINE_PRESSURE_DROP"]

_OWN: Final = partial(
    Proof, result="drop", source="definition", seen="constructed", basis="constructed"
)
_REFUSED: Final = partial(_OWN, expect=Expect.REFUSE)
_LINE: Final = {
    "q": "free_air(3 m3/min, 101325 Pa(a), 20 degC)",
    "L": "50 m",
    "D": "27 mm",
    "p": "7 bar(g)",
    "rough": "0.045 mm",
    "T": "20 degC",
    "p_atm": "1.01325 bar(a)",
}
_CONTROL: Final = {**_LINE, "L": "20 m", "D": "6 mm", "rough": "0 mm"}
_ENDS: Final = {
    "rho": "11.3 kg/m3",
    "f": "0.00185",
    "P_1": "10 bar(a)",
    "P_2": "9 bar(a)",
    "L": "1000 m",
    "D": "0.5 m",
}

AIR_LINE_PRESSURE_DROP: Final = (
    _OWN(
        name="airline-27-mm",
        call=_LINE,
        value="0.257 bar(d)",
        relative=0.02,
        independent="fluids 1.3.1: 0.2575 bar",
        note="free air density 1.204 kg/m3; smooth 0.183, rough 0.351 bar",
    ),
    Proof(
        name="airline-isothermal-doc",
        call=_ENDS,
        result="m_dot",
        value="145.4848 kg/s",
        relative=1e-5,
        source="fluids-doc-examples",
        seen="original",
        basis="published",
        must_not_give=(
            ("72.74 kg/s", "f taken for the Fanning factor and made four times as much"),
        ),
        independent="fluids 1.3.1: 145.48476 kg/s",
    ),
    _OWN(
        name="airline-27-mm-unrounded",
        call=_LINE,
        value="0.258093 bar(d)",
        relative=1e-5,
        must_not_give=(("0.248 bar(d)", "the air taken to keep its density along the line"),),
        independent="fluids 1.3.1, isothermal_gas with Colebrook: 0.2580934 bar",
    ),
    _OWN(
        name="airline-27-mm-smooth",
        call={**_LINE, "rough": "0 mm"},
        value="0.178730 bar(d)",
        relative=1e-4,
        independent="fluids 1.3.1, isothermal_gas with Colebrook: 0.1787304 bar",
    ),
    _OWN(
        name="airline-27-mm-rough",
        call={**_LINE, "rough": "0.15 mm"},
        value="0.351487 bar(d)",
        relative=1e-5,
        independent="fluids 1.3.1, isothermal_gas with Colebrook: 0.3514867 bar",
    ),
    _OWN(
        name="airline-band-low",
        call=_LINE,
        result="drop_low",
        value="0.206475 bar(d)",
        relative=1e-5,
    ),
    _OWN(
        name="airline-band-high",
        call=_LINE,
        result="drop_high",
        value="0.309712 bar(d)",
        relative=1e-5,
    ),
    _OWN(
        name="airline-control-laminar",
        call={**_CONTROL, "q": "0.2 m3(n)/h"},
        value="0.000859662 bar(d)",
        relative=1e-5,
        must_not_give=(("0.000214916 bar(d)", "16 / Re, the Fanning factor"),),
        independent="fluids 1.3.1, isothermal_gas: 0.0008596623 bar",
    ),
    _OWN(
        name="airline-short-and-fast",
        call={
            **_LINE,
            "q": "290 m3(n)/h",
            "D": "25.4 mm",
            "L": "1.2 m",
            "p": "2 bar(g)",
            "rough": "0.15 mm",
        },
        value="0.0950948387468 bar(d)",
        relative=2e-9,
        independent="scipy 1.17.1, brentq, with the factor of Serghides from fluids 1.3.1: "
        "0.09509483874678 bar",
        note="the air that speeds up counts here; so tight that each step of the body is held",
    ),
    _OWN(
        name="airline-just-turbulent",
        call={**_CONTROL, "q": "0.962 m3(n)/h"},
        value="0.01039421951913 bar(d)",
        relative=2e-9,
        independent="scipy 1.17.1, brentq, with the factor of Serghides from fluids 1.3.1: "
        "0.01039421951913 bar; with Colebrook 0.01039424 bar",
        note="Re 4041: turbulent from 4000 upwards",
    ),
    _REFUSED(
        name="airline-over-a-tenth",
        call={**_LINE, "q": "299 m3(n)/h"},
        value="keep drop / P <= 0.1",
    ),
    _REFUSED(
        name="airline-far-over-a-tenth",
        call={**_LINE, "q": "480 m3(n)/h"},
        value="keep short <= 0.5",
    ),
    _REFUSED(
        name="airline-choked",
        call={**_LINE, "q": "1000 m3(n)/h"},
        value="use the compressible form with both ends, P_1 and P_2",
    ),
    _REFUSED(
        name="airline-neither-laminar-nor-turbulent",
        call={**_CONTROL, "q": "0.7 m3(n)/h"},
        value="neither laminar nor turbulent: no one number",
    ),
    _REFUSED(
        name="airline-too-fast",
        call={**_LINE, "q": "580 m3(n)/h", "L": "0.1 m", "p": "2 bar(g)"},
        value="faster than 100 m/s",
    ),
    _REFUSED(
        name="airline-no-roughness",
        call={name: text for name, text in _LINE.items() if name != "rough"},
        value="smooth and rusty pipe differ by a factor of two",
    ),
    _REFUSED(
        name="airline-rougher-than-a-pipe",
        call={**_LINE, "rough": "1.4 mm"},
        value="rougher than a twentieth of the bore",
    ),
    _REFUSED(
        name="airline-roughness-below-zero",
        call={**_LINE, "rough": "-0.1 mm"},
        value="a roughness is not negative",
    ),
    _REFUSED(name="airline-nothing-flows", call={**_LINE, "q": "0 m3(n)/h"}, value="nothing flows"),
    _REFUSED(
        name="airline-no-bore", call={**_LINE, "D": "0 mm"}, value="length and bore of the line"
    ),
    _REFUSED(
        name="airline-no-length", call={**_LINE, "L": "0 m"}, value="length and bore of the line"
    ),
    _REFUSED(
        name="airline-no-pressure",
        call={**_LINE, "p": "0 bar(g)"},
        value="no pressure in the line",
    ),
    _REFUSED(
        name="airline-over-40-bar",
        call={**_LINE, "p": "41 bar(g)"},
        value="outside the ideal range",
    ),
    _REFUSED(
        name="airline-flow-without-its-state",
        call={**_LINE, "q": "3 m3/min"},
        value="is a volume flow; give it in a unit such as m3(n)/h",
    ),
    _REFUSED(
        name="airline-no-factor",
        call={**_ENDS, "f": "0"},
        result="m_dot",
        value="the Darcy factor is missing",
    ),
    _REFUSED(
        name="airline-no-density",
        call={**_ENDS, "rho": "0 kg/m3"},
        result="m_dot",
        value="the density is missing",
    ),
    _REFUSED(
        name="airline-to-nothing",
        call={**_ENDS, "P_2": "0 bar(a)"},
        result="m_dot",
        value="no pressure downstream",
    ),
    _REFUSED(
        name="airline-backwards",
        call={**_ENDS, "P_2": "11 bar(a)"},
        result="m_dot",
        value="the pressure upstream is not above that downstream",
    ),
    _OWN(
        name="airline-barometer-of-the-vessel",
        call={
            **{name: text for name, text in _LINE.items() if name != "p_atm"},
            "site.atmosphere": "0.95 bar(a)",
        },
        value="0.260223 bar(d)",
        relative=1e-5,
        must_not_give=(("0.258093 bar(d)", "the standard atmosphere taken on a day that differs"),),
    ),
    _OWN(
        name="airline-control-creeping",
        call={**_CONTROL, "q": "0.002 m3(n)/h"},
        value="0.00000859616 bar(d)",
        relative=1e-5,
        independent="64 / Re by hand: a hundredth of the laminar case",
        note="Re 8: laminar however slow",
    ),
    *off_deck("airline", _LINE, "drop", "T"),
)
