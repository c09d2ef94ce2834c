"""Cases for the hazard figures of a flammable gas: every figure, and what is never printed."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["FLAMMABLE_GAS_FACTS"]

_IEC: Final = partial(Proof, source="iec-60079-20-1", seen="secondary")
_OSHA: Final = partial(Proof, source="osha-propane", seen="original")
_ENTRY: Final = partial(Proof, source="29cfr1915-b-app-a", seen="original", basis="rule")
_HOT_WORK: Final = partial(Proof, source="cal-t8-8395", seen="original", basis="rule")
_REFUSED: Final = partial(
    Proof, source="aws-f4.1", seen="original", basis="rule", result="alarm", expect=Expect.REFUSE
)
_PROPANE: Final = {"gas": "propane"}
_SPACE: Final = {**_PROPANE, "V": "20 m3", "T": "20 degC", "p_atm": "1.01325 bar(a)"}

_PUBLISHED: Final = (
    _IEC(
        name="gas-alarm",
        call=_PROPANE,
        result="alarm",
        value="1700 ppm",
        basis="rule",
        must_not_give=(("2100 ppm", "the higher published limit used for the alarm"),),
        independent="chemicals 1.5.2: 1700 ppm, lower limit 0.017",
    ),
    _OSHA(
        name="gas-vapour-density",
        call=_PROPANE,
        result="vapour_density",
        value="1.55",
        absolute="0.01",
        basis="published",
        independent="CoolProp 8.0.0: 1.5483, heavier than air: it lies in the bilge",
    ),
    _OSHA(
        name="gas-mass-20-m3-upper",
        call={**_SPACE, "limit": "0.021"},
        result="mass",
        value="0.78 kg",
        relative=0.02,
        basis="constructed",
        independent="CoolProp 8.0.0: 0.7833 kg",
    ),
    _REFUSED(
        name="gas-purge-time",
        call={**_PROPANE, "question": "air_changes"},
        value="no purge time or air changes are printed",
    ),
)

_NEVER: Final = tuple(
    _REFUSED(
        name=f"gas-never-{question.replace('_', '-')}",
        call={**_SPACE, "question": question},
        value=reason,
    )
    for question, reason in (
        ("purge_time", "no purge time or air changes are printed"),
        ("gas_free", "gas-free is not printed"),
        ("safe_to_weld", "safe to weld is not printed"),
        ("enter_space", "no advice on entering a space is given"),
        ("convert_cylinder", "a gas cylinder is never converted to another service"),
    )
)

_EDGES: Final = (
    _IEC(
        name="gas-mass-20-m3-lower",
        call=_SPACE,
        result="mass",
        value="0.6345 kg",
        relative=0.002,
        basis="constructed",
        must_not_give=(("0.7838 kg", "the higher published limit taken for a warning"),),
        note="1.7 percent of 20 m3, 1.55 times air of 1.2039 kg/m3",
    ),
    OWN(
        name="gas-mass-warm",
        call={**_SPACE, "T": "40 degC"},
        result="mass",
        value="0.59396 kg",
        relative=0.002,
    ),
    Proof(
        name="gas-limit-above-all",
        call={**_SPACE, "limit": "2.2 %"},
        result="mass",
        value="no source held puts the lower limit above 2.1 %",
        source="nfpa-497",
        seen="secondary",
        basis="rule",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="gas-no-temperature",
        call={**_PROPANE, "V": "20 m3"},
        result="mass",
        value="the temperature of the space is missing",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="gas-not-said",
        call={"V": "20 m3", "T": "20 degC"},
        result="mass",
        value="say the gas: facts are held for propane only",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="gas-not-held",
        call={"gas": "acetylene"},
        result="alarm",
        value="`acetylene` is no word for `gas`",
        expect=Expect.REFUSE,
    ),
    _HOT_WORK(
        name="gas-meter-above-ten",
        call={**_PROPANE, "reading": "10.5 %"},
        result="alarm",
        value="1700 ppm",
        expect=Expect.ALARM,
        note="no hot work",
    ),
    _HOT_WORK(
        name="gas-meter-at-ten",
        call={**_PROPANE, "reading": "10 %"},
        result="alarm",
        value="1700 ppm",
        note="no stop, and no leave to weld either",
    ),
)

_FIGURES: Final = (
    *(
        _IEC(name=f"gas-{name}", call=_PROPANE, result=name, value=value, basis="table")
        for name, value in (("lower", "1.7 %"), ("upper", "10.9 %"))
    ),
    *(
        _OSHA(
            name=f"gas-{name.replace('_', '-')}",
            call=_PROPANE,
            result=name,
            value=value,
            basis="table",
        )
        for name, value in (
            ("lower_other", "2.1 %"),
            ("upper_other", "9.5 %"),
            ("molar_mass", "44.1 g/mol"),
            ("boiling", "-44 degF"),
            ("flash", "-156 degF"),
            ("vapour_pressure", "8.4 atm(a)"),
        )
    ),
    Proof(
        name="gas-dangerous",
        call=_PROPANE,
        result="dangerous",
        value="2100 ppm",
        source="osha-idlh",
        seen="original",
        basis="table",
    ),
    *(
        _ENTRY(name=f"gas-{name.replace('_', '-')}", call=_PROPANE, result=name, value=value)
        for name, value in (("oxygen_least", "19.5 %"), ("oxygen_fresh", "20.8 %"))
    ),
)

FLAMMABLE_GAS_FACTS: Final = _PUBLISHED + _NEVER + _EDGES + _FIGURES
