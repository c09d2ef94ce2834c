"""Hazard figures of propane for an entry that speaks of hot work, and nothing that says go.

Published lower limits differ: both are shown, and an alarm is taken from the lower. The mass that
brings a whole space to the limit is an average; pockets, sludge and liquid make any average
meaningless, so it only ever shows how little gas is enough.

By hand: 10 percent of the lower limit of 1.7 percent is 0.17 percent, 1700 ppm. In 20 m3 at 20
degC the limit of 2.1 percent is 0.42 m3 of vapour; 1.55 times air of 1.204 kg/m3 is 1.866 kg/m3,
so 0.78 kg is enough.
"""

from collections.abc import Mapping
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
from garboard.calc.units import read_unit
from garboard.errors import OutsideValidity
from garboard.methods.cases.flammable_gas import FLAMMABLE_GAS_FACTS
from garboard.methods.figures import NEAR, Figure, number, required, word
from garboard.methods.publications import published

__all__ = ["FLAMMABLE_GAS_FACTS_METHOD"]

_IEC, _OSHA, _NFPA, _IDLH = "iec-60079-20-1", "osha-propane", "nfpa-497", "osha-idlh"
_ENTRY, _HOT_WORK, _SCOPE = "29cfr1915-b-app-a", "cal-t8-8395", "aws-f4.1"

_LOWER: Final = Figure(1.7, "%")
_FACTS: Final[tuple[tuple[str, str, Figure, str], ...]] = (
    ("lower", "lower limit, the lower one published", _LOWER, _IEC),
    ("lower_other", "lower limit elsewhere", Figure(2.1, "%"), f"{_OSHA}, {_NFPA}"),
    ("upper", "upper limit, the higher one published", Figure(10.9, "%"), _IEC),
    ("upper_other", "upper limit elsewhere", Figure(9.5, "%"), f"{_OSHA}, {_NFPA}"),
    ("vapour_density", "weight of the vapour against air", Figure(1.55), _OSHA),
    ("molar_mass", "molar mass", Figure(44.1, "g/mol"), _OSHA),
    ("boiling", "boils at", Figure(-44, "degF"), _OSHA),
    ("flash", "flash point", Figure(-156, "degF"), _OSHA),
    ("vapour_pressure", "vapour pressure at 70 degF", Figure(8.4, "atm(a)"), _OSHA),
    ("dangerous", "dangerous to life and health at", Figure(2100, "ppm"), _IDLH),
    ("oxygen_least", "least oxygen where people work", Figure(19.5, "%"), _ENTRY),
    ("oxygen_fresh", "oxygen of a washed and ventilated space", Figure(20.8, "%"), _ENTRY),
)
"""Result, what it is, the figure as printed, where it is printed."""

_MOST_PUBLISHED: Final = Figure(2.1, "%")
"""No source held puts the lower limit higher."""
_ALARM_SHARE: Final = 0.1
"""Of the lower limit."""
_HOT_WORK_MOST: Final = Figure(10, "%")
"""Reading of the meter, as a share of the lower limit, above which there is no hot work."""
_GAS_CONSTANT: Final = Figure(8.314462618, "J/(mol.K)")
_AIR: Final = Figure(28.96, "g/mol")

_NO_GAS: Final = "say the gas: facts are held for propane only"
_CERTIFICATE: Final = "a certificate on the day decides"
_REFUSED: Final = {
    "purge_time": "no purge time or air changes are printed: no calculation makes a container safe",
    "air_changes": "no purge time or air changes are printed: no calculation makes a container "
    "safe",
    "gas_free": f"gas-free is not printed: no calculation makes a container safe, {_CERTIFICATE}",
    "safe_to_weld": f"safe to weld is not printed: {_CERTIFICATE}",
    "enter_space": f"no advice on entering a space is given: {_CERTIFICATE}",
    "convert_cylinder": "a gas cylinder is never converted to another service, and never welded or "
    "cut",
}
"""What may be asked, and why no answer is given."""
_Asked = Mapping[str, Argument]


def _air_density(asked: _Asked) -> float:
    """Air at the temperature and barometer of the space [kg/m3], by the ideal gas."""
    temperature = required(asked, "T", "the temperature of the space is missing")
    pressure = required(asked, "p_atm", "the barometer is missing")
    return _AIR.si * pressure / (_GAS_CONSTANT.si * temperature)


def _mass(asked: _Asked, volume: float, heavier: float) -> float:
    """Vapour that brings the whole space to the limit [kg]."""
    limit = number(asked, "limit")
    if limit is None:
        limit = _LOWER.si
    if limit > _MOST_PUBLISHED.si * (1 + NEAR):
        raise OutsideValidity(f"no source held puts the lower limit above {_MOST_PUBLISHED}")
    return limit * volume * heavier * _air_density(asked)


def _meter(asked: _Asked) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is said of a meter reading: a stop, or that it is no certificate."""
    reading = number(asked, "reading")
    if reading is None:
        return (), ()
    told = f"the meter reads {read_unit('%').from_si(reading):.3g} % of the lower limit"
    if reading > _HOT_WORK_MOST.si * (1 + NEAR):
        return (f"STOP: {told}: no hot work, get out and air the space",), ()
    return (), (f"{told}: that is no certificate; pockets and sludge give gas again",)


def look_up(asked: _Asked) -> Answer:
    """Show the figures of one gas, and refuse whatever a certificate has to say."""
    word(asked, "gas", _NO_GAS)
    question = asked["question"].word
    if question in _REFUSED:
        raise OutsideValidity(_REFUSED[question])
    results = {name: figure.si for name, _, figure, _ in _FACTS}
    printed = {name: str(figure) for name, _, figure, _ in _FACTS}
    alarm = Figure(round(read_unit("ppm").from_si(_ALARM_SHARE * _LOWER.si)), "ppm")
    results["alarm"] = alarm.si
    rows = [(told, str(figure), source) for _, told, figure, source in _FACTS]
    rows.append((f"alarm, {_ALARM_SHARE:.0%} of the lower limit published", str(alarm), _HOT_WORK))
    volume = number(asked, "V")
    if volume is not None:
        results["mass"] = _mass(asked, volume, results["vapour_density"])
    stops, notes = _meter(asked)
    return Answer(
        results=results,
        printed={**printed, "alarm": str(alarm)},
        columns=("propane", "as printed", "source"),
        rows=tuple(rows),
        notes=(
            "facts only: no calculation makes a container safe to weld",
            "heavier than air: it lies in the bilge",
            f"not covered by {_SCOPE}: compressed-gas containers, containers people can enter, "
            "tanks and compartments on ships",
            *notes,
        ),
        alarms=stops,
    )


FLAMMABLE_GAS_FACTS_METHOD: Final = TableMethod(
    name="flammable_gas_facts",
    title="Hazard figures of a flammable gas",
    purpose="Put the hazard figures beside any entry that speaks of cutting, welding or gas near "
    "tanks, and send it to a certificate.",
    grade=Grade.A,
    parameters=(
        Parameter("gas", "gas", words=("propane",), missing=_NO_GAS),
        Parameter("V", "volume of the space", "m3"),
        Parameter("limit", "lower limit; the lower one published if left out"),
        Parameter("T", "air temperature", "K(a)"),
        Parameter("reading", "meter reading, as a share of the lower limit"),
        Parameter(
            "question",
            "what is asked for",
            default="facts",
            words=("facts", *_REFUSED),
        ),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(
        Result("alarm", "alarm setting", "ppm"),
        Result("mass", "gas that brings the whole space to the limit", "kg"),
        Result("vapour_density", "weight of the vapour against air"),
        Result("lower", "lower limit, the lower one published", "%"),
        Result("lower_other", "lower limit elsewhere", "%"),
        Result("upper", "upper limit, the higher one published", "%"),
        Result("upper_other", "upper limit elsewhere", "%"),
        Result("molar_mass", "molar mass", "g/mol"),
        Result("boiling", "boiling point", "degF"),
        Result("flash", "flash point", "degF"),
        Result("vapour_pressure", "vapour pressure at 70 degF", "atm(a)"),
        Result("dangerous", "dangerous to life and health", "ppm"),
        Result("oxygen_least", "least oxygen where people work", "%"),
        Result("oxygen_fresh", "oxygen of a washed and ventilated space", "%"),
    ),
    limits=(
        Limit("V > 0 m3", "the volume of the space is missing"),
        Limit("limit > 0", "the lower limit is missing"),
        Limit("T > 0 K(a)", "the temperature of the space is missing"),
        Limit("reading >= 0", "a meter reading is not negative"),
    ),
    valid=(
        "worked out as mass = limit x V x 1.55 x density of air at T, and alarm = 10 percent of "
        "the lower limit",
        "propane only, facts only",
        "pockets, sludge and liquid make any average of a space meaningless",
        "where sources differ both figures are shown, and the alarm is taken from the lower",
        "a lower limit above 2.1 percent is refused: no source held prints one",
    ),
    sources=published(
        _OSHA, _IDLH, _IEC, _NFPA, _SCOPE, _ENTRY, _HOT_WORK, "definition", "house-rule"
    ),
    caution="No calculation makes a container safe to weld. Never weld, cut or convert a gas "
    "cylinder into an air receiver.",
    deferral="Marine chemist or competent person, certificate on the day, on board.",
    do_not=(
        "print a purge time or a number of air changes",
        "print gas-free or safe to weld",
        "advise on entering a closed space",
    ),
    proofs=FLAMMABLE_GAS_FACTS,
    contradictions=(
        Contradiction(
            topic="lower explosive limit of propane",
            printed=(
                Printed("2.1 %", "US sources"),
                Printed("1.7 %", "IEC 60079-20-1"),
            ),
            effect="an alarm at 10 percent of it is 2100 or 1700 ppm",
            handbook="alarms on the lower, and shows both",
            sources=(
                "osha-propane",
                "nfpa-497",
                "iec-60079-20-1",
            ),
        ),
    ),
    look_up=look_up,
)
