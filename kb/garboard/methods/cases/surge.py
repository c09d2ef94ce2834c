"""Cases for the receiver that carries a draw.

Where a publication counts free air at the temperature of the receiver and says none, 15 degC is
taken for both: it cancels.
"""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN
from garboard.methods.cases.deck import off_deck

__all__ = ["RECEIVER_SURGE_VOLUME"]

_REFUSED: Final = partial(OWN, result="volume", expect=Expect.REFUSE)
_SURGE: Final = {
    "t": "5 min",
    "q_out": "free_air(350 ft3/min, 14.7 psi(a), 15 degC)",
    "q_in": "free_air(250 ft3/min, 14.7 psi(a), 15 degC)",
    "T_receiver": "15 degC",
    "p_hi": "100 psi(g)",
    "p_lo": "60 psi(g)",
}
_BUFFER: Final = {
    "t": "15 min",
    "q_out": "free_air(50 m3/h, 1.013 bar(a), 273.15 K(a))",
    "q_in": "0 m3(n)/h",
    "T_receiver": "278.15 K(a)",
    "p_hi": "9 bar(g)",
    "p_lo": "6 bar(g)",
    "p_atm": "0.76 bar(a)",
}

RECEIVER_SURGE_VOLUME: Final = (
    Proof(
        name="surge-350-250-cfm",
        call=_SURGE,
        result="volume",
        value="183.75 ft3",
        relative=1e-4,
        source="srivastava-receiver",
        seen="secondary",
        basis="published",
        independent="CoolProp 8.0.0: 183.01 ft3, real air, 21 degC",
    ),
    Proof(
        name="surge-normal-air",
        call=_BUFFER,
        result="volume",
        value="4.3 m3",
        absolute="0.05 m3",
        source="cruz-receiver",
        seen="secondary",
        basis="published",
        must_not_give=(("4.22 m3", "normal air at 0 degC not brought to receiver temperature"),),
        independent="CoolProp 8.0.0: 4.2655 m3, real air",
        note="unrounded 4.2981 m3",
    ),
    OWN(
        name="surge-normal-air-unrounded",
        call=_BUFFER,
        result="volume",
        value="4.2981 m3",
        relative=2e-5,
        must_not_give=(("4.2208 m3", "normal air at 0 degC not brought to receiver temperature"),),
        independent="exact arithmetic: 4.298097 m3",
    ),
    Proof(
        name="surge-refill-flow",
        call={"q_out": "50 m3(n)/h", "t_buffer": "15 min", "t_refill": "5 min"},
        result="q_total",
        value="200 m3(n)/h",
        relative=1e-6,
        source="cruz-receiver",
        seen="secondary",
        basis="published",
        independent="exact arithmetic: 200 m3/h",
    ),
    Proof(
        name="surge-gallons",
        call=_SURGE,
        result="volume",
        value="1374.5 gal_us",
        absolute="0.1 gal_us",
        source="srivastava-receiver",
        seen="secondary",
        basis="published",
        must_not_give=(("1144.6 gal_us", "imperial gallons"),),
        independent="pint 0.25.3: 1374.545 gal_us",
    ),
    Proof(
        name="surge-no-reference-state",
        call={**_BUFFER, "q_out": "50 m3/h"},
        result="volume",
        value="`50 m3/h` is a volume flow; give it in a unit such as m3(n)/h",
        source="house-rule",
        seen="constructed",
        basis="constructed",
        expect=Expect.REFUSE,
        note="reference state of the free air missing",
    ),
    _REFUSED(
        name="surge-nothing-usable",
        call={**_BUFFER, "p_lo": "9 bar(g)"},
        value="no usable pressure",
    ),
    _REFUSED(
        name="surge-over-40-bar",
        call={**_BUFFER, "p_hi": "41 bar(g)"},
        value="outside the ideal range",
    ),
    _REFUSED(
        name="surge-below-vacuum",
        call={**_BUFFER, "p_lo": "-0.8 bar(g)"},
        value="below a perfect vacuum",
    ),
    _REFUSED(
        name="surge-covered-by-the-compressor",
        call={**_BUFFER, "q_in": "60 m3(n)/h"},
        value="what is delivered covers the draw",
    ),
    _REFUSED(
        name="surge-no-temperature",
        call={name: text for name, text in _BUFFER.items() if name != "T_receiver"},
        value="a cold receiver holds more air at the same reading: measure it",
    ),
    _REFUSED(
        name="surge-no-time",
        call={**_BUFFER, "t": "0 min"},
        value="the time the draw lasts is missing",
    ),
    OWN(
        name="surge-no-refill-time",
        call={"q_out": "50 m3(n)/h", "t_buffer": "15 min", "t_refill": "0 min"},
        result="q_total",
        value="the refill time is missing",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="surge-negative-buffer",
        call={"q_out": "50 m3(n)/h", "t_buffer": "-15 min", "t_refill": "5 min"},
        result="q_total",
        value="a time is not negative",
        expect=Expect.REFUSE,
    ),
    _REFUSED(
        name="surge-without-q-out",
        call={name: text for name, text in _BUFFER.items() if name != "q_out"},
        value="give q_out: free air without its reference state is no amount",
    ),
    _REFUSED(
        name="surge-without-q-in",
        call={name: text for name, text in _BUFFER.items() if name != "q_in"},
        value="give q_in: free air without its reference state is no amount",
    ),
    _REFUSED(
        name="surge-without-p-hi",
        call={name: text for name, text in _BUFFER.items() if name != "p_hi"},
        value="give p_hi: the draw needs both readings",
    ),
    _REFUSED(
        name="surge-without-p-lo",
        call={name: text for name, text in _BUFFER.items() if name != "p_lo"},
        value="give p_lo: the draw needs both readings",
    ),
    _REFUSED(
        name="surge-delivery-below-zero",
        call={**_BUFFER, "q_in": "-10 m3(n)/h"},
        value="a compressor takes no air out",
    ),
    *off_deck("surge", _BUFFER, "volume", "T_receiver"),
)
