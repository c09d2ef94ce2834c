"""The area a choked gas asks of a relief valve, by the printed formula, as a figure of plausibility.

The formula counts in US units and its constant of 520 is rounded, a tenth of a per cent above the
exact one; it is kept as it is printed. Free air is turned into a mass by the ideal gas.
"""

import math
from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Argument
from garboard.calc.unit_names import FREE_AIR
from garboard.calc.units import read_unit
from garboard.errors import OutsideValidity
from garboard.methods.figures import Figure, number, required

__all__ = [
    "NO_FLOW",
    "NO_KD",
    "NO_OVERPRESSURE",
    "NO_SETTING",
    "NO_TEMPERATURE",
    "plausible_area",
]

_API: Final = 520
"""Of the printed formula, which counts in lb/h, psi(a), degR(a), lb/lbmol and inch2."""
_AIR_K: Final = 1.4
_AIR_M: Final = Figure(28.96, "g/mol")
_GAS: Final = Figure(8.314462618, "J/(mol.K)")

NO_KD: Final = "the discharge coefficient is missing: read it from the maker's certificate"
NO_FLOW: Final = "give the mass flow W, or the free air q"
NO_TEMPERATURE: Final = "the temperature of the gas at the valve is missing"
NO_OVERPRESSURE: Final = "the share above the setting is missing"
_NOT_CHOKED: Final = "the flow is not choked: the area of this formula does not hold"
NO_SETTING: Final = "the set pressure is missing"


def _mass_flow(asked: Mapping[str, Argument]) -> float:
    """Gas to be relieved [kg/s]."""
    mass, free_air = number(asked, "W"), number(asked, "q")
    if (mass is None) == (free_air is None):
        raise OutsideValidity(NO_FLOW)
    if mass is not None:
        return mass
    pressure, temperature = FREE_AIR["n"]
    density = _molar_mass(asked) * pressure / (_GAS.si * float(temperature))
    return density * (free_air or 0)


def _molar_mass(asked: Mapping[str, Argument]) -> float:
    return number(asked, "M") or _AIR_M.si


def _relieving_pressure(asked: Mapping[str, Argument]) -> float:
    """Pressure at the valve while it relieves [Pa(a)]."""
    stated = number(asked, "P1")
    if stated is not None:
        return stated
    over = required(asked, "overpressure", NO_OVERPRESSURE)
    barometer = required(asked, "p_atm", "the barometer is missing")
    return required(asked, "setting", NO_SETTING) * (1 + over) + barometer


def plausible_area(asked: Mapping[str, Argument]) -> float:
    """Area by the printed formula for a choked gas.

    Args:
        asked: Flow (W or q), temperature T, discharge coefficient Kd, relieving pressure (P1, or
            setting, overpressure and barometer), and what departs from air.

    Returns:
        Area [m2].

    Raises:
        OutsideValidity: The flow is not choked, or something is missing.

    Source:
        API 520 Part 1, gas in choked flow, in lb/h, psi(a), degR(a), lb/lbmol and inch2. By hand:
        24270 kg/h of a gas of 51 g/mol at 670 kPa(a) and 348 K is 3699 mm2.
    """
    kd, temperature = required(asked, "Kd", NO_KD), required(asked, "T", NO_TEMPERATURE)
    k, z = number(asked, "k") or _AIR_K, number(asked, "Z") or 1.0
    flow, pressure = _mass_flow(asked), _relieving_pressure(asked)
    back = number(asked, "P2")
    if back is None:
        back = required(asked, "p_atm", "the barometer is missing")
    if back > pressure * math.pow(2 / (k + 1), k / (k - 1)):
        raise OutsideValidity(_NOT_CHOKED)
    constant = _API * math.sqrt(k * math.pow(2 / (k + 1), (k + 1) / (k - 1)))
    kb, kc = number(asked, "Kb") or 1.0, number(asked, "Kc") or 1.0
    pounds = read_unit("lb/h").from_si(flow)
    rankine = read_unit("degR(a)").from_si(temperature)
    molar = read_unit("g/mol").from_si(_molar_mass(asked))
    inches = pounds / (constant * kd * kb * kc * read_unit("psi(a)").from_si(pressure))
    return Figure(inches * math.sqrt(rankine * z / molar), "inch2").si
