"""Cases for the starts that rules ask for."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["STARTS_REQUIRED"]

_M61: Final = partial(Proof, source="iacs-ur-m61", seen="original", basis="rule")
_DNV: Final = partial(Proof, source="dnv-ships-4-6-5", seen="secondary", basis="rule")
_CFR: Final = partial(Proof, source="46cfr112.50-7", seen="original", basis="rule")

STARTS_REQUIRED: Final = (
    _M61(
        name="req-reversible",
        call={"engine": "reversible_main"},
        result="starts",
        value="12",
    ),
    _M61(
        name="req-non-reversible",
        call={"engine": "non_reversible_main"},
        result="starts",
        value="6",
    ),
    _M61(
        name="req-fill-time",
        call={"engine": "non_reversible_main"},
        result="fill_time",
        value="1 h",
    ),
    _M61(
        name="req-independent-share-min",
        call={"engine": "non_reversible_main"},
        result="independent_share_min",
        value="0.5",
    ),
    _M61(
        name="req-independent-share",
        call={"engine": "non_reversible_main", "independent_share": "0.5"},
        result="verdict",
        value="within",
    ),
    _DNV(
        name="req-several-main-total",
        call={"engine": "several_main_engines", "starts": "10"},
        result="verdict",
        value="below",
        expect=Expect.ALARM,
    ),
    _M61(
        name="req-receivers",
        call={"engine": "reversible_main"},
        result="receivers",
        value="2",
    ),
    _M61(
        name="req-one-receiver",
        call={"engine": "reversible_main", "receivers": "1"},
        result="verdict",
        value="below",
        expect=Expect.ALARM,
    ),
    _M61(
        name="req-share-below",
        call={"engine": "non_reversible_main", "independent_share": "0.49"},
        result="verdict",
        value="below",
        expect=Expect.ALARM,
    ),
    _DNV(
        name="req-other-engine",
        call={"engine": "other_engine"},
        result="starts",
        value="3",
    ),
    _DNV(
        name="req-several-least",
        call={"engine": "several_main_engines"},
        result="starts",
        value="12",
    ),
    _DNV(
        name="req-several-most",
        call={"engine": "several_main_engines"},
        result="starts_most",
        value="18",
    ),
    _CFR(
        name="req-emergency-generator",
        call={"engine": "emergency_generator_air"},
        result="starts",
        value="6",
    ),
    _M61(
        name="req-electric-within",
        call={"engine": "electric_main"},
        result="within",
        value="30 min",
    ),
    _M61(
        name="req-electric-batteries",
        call={"engine": "electric_main"},
        result="batteries",
        value="2",
    ),
    _M61(
        name="req-electric-auxiliary",
        call={"engine": "electric_auxiliary"},
        result="starts",
        value="3",
    ),
    _M61(
        name="req-share-above-the-whole",
        call={"engine": "non_reversible_main", "independent_share": "1.05"},
        result="verdict",
        value="a share is not above the whole",
        expect=Expect.REFUSE,
    ),
    _M61(
        name="req-unknown-arrangement",
        call={"engine": "steam_main"},
        result="starts",
        value="steam_main",
        expect=Expect.REFUSE,
    ),
)
