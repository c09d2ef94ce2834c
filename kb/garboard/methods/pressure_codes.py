"""What each code asks of a pressure test: its factor or band, its floor, its hold.

Every code is one function of the arguments, and says its rule in words beside the pressure. Factors
stay with their code: a factor from elsewhere is refused.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from garboard.calc.method import Argument
from garboard.errors import OutsideValidity
from garboard.methods.figures import NEAR, Figure, number, required

__all__ = ["BAR", "CODES", "FLOORS", "Asked", "Found"]

BAR: Final = 100_000.0
"""Pa of one bar, for the pressures of a message."""
_VIII_WATER, _VIII_GAS = 1.3, 1.1
_PED, _PED_LOADING = 1.43, 1.25
_PIPE_WATER: Final = 1.5
_PIPE_GAS_LEAST, _PIPE_GAS_MOST = 1.2, 1.25
_HOLD: Final = Figure(10, "min")
_TANK, _TANK_PSI = Figure(35, "kPa(g)"), Figure(5, "psi(g)")
_STANDPIPE, _STANDPIPE_FT = Figure(3.5, "m"), Figure(11.5, "ft")
_COOKING: Final = Figure(5, "psi(g)")
_FRESH_WATER: Final = 998.2 * 9.80665
"""Pa of one metre of fresh water: 998.2 kg/m3 at 20 degC, standard gravity."""
FLOORS: Final = {
    "fire_main": Figure(150, "psi(g)"),
    "fuel_discharge_to_burners": Figure(500, "psi(g)"),
    "compressed_gas_cargo": Figure(150, "psi(g)"),
}

Asked = Mapping[str, Argument]


@dataclass(frozen=True, slots=True)
class Found:
    """Test pressures in Pa(g), what the source prints of them, and what stands beside them."""

    results: Mapping[str, float]
    source: str
    rule: str
    gas: bool = False
    printed: Mapping[str, Figure] | None = None
    notes: tuple[str, ...] = ()


def _working(asked: Asked) -> float:
    return required(asked, "mawp", "the maximum allowable working pressure is read from the plate")


def _own_factor(asked: Asked, own: float) -> float:
    """The factor of the code; one that the author asks for must be the same."""
    factor = number(asked, "factor")
    if factor is not None and abs(factor - own) > NEAR:
        raise OutsideValidity(
            f"factor {factor:g} is not the factor of this code, {own:g}: "
            "1.3, 1.43 and 1.5 are not interchangeable"
        )
    return own


def _stress_ratio(asked: Asked) -> float:
    return required(asked, "stress_ratio", "the factor is times the ratio of stress, cold over hot")


def viii_water(asked: Asked) -> Found:
    """ASME VIII-1 UG-99(b), water."""
    pressure = _own_factor(asked, _VIII_WATER) * _working(asked) * _stress_ratio(asked)
    edition = (
        "1.3 belongs to the 1999 addenda onward, another factor stood before (verify before citing)"
    )
    rule = f"{_VIII_WATER:g} x MAWP x stress ratio"
    return Found({"p_test": pressure}, "asme-viii-1", rule, notes=(edition,))


def viii_gas(asked: Asked) -> Found:
    """ASME VIII-1 UG-100, gas."""
    pressure = _own_factor(asked, _VIII_GAS) * _working(asked) * _stress_ratio(asked)
    rule = f"{_VIII_GAS:g} x MAWP x stress ratio; half, then tenths"
    return Found({"p_test": pressure}, "asme-viii-1", rule, gas=True)


def ped(asked: Asked) -> Found:
    """Pressure Equipment Directive, Annex I 7.4, the larger of two."""
    why = "the larger of two pressures needs the loading ratio"
    loaded = _PED_LOADING * required(asked, "loading_ratio", why)
    pressure = max(loaded, _own_factor(asked, _PED)) * _working(asked)
    rule = f"the larger of {_PED:g} x PS and {_PED_LOADING:g} x loading ratio x PS"
    return Found({"p_test": pressure}, "ped-annex-i", rule)


def pipe_water(asked: Asked) -> Found:
    """46 CFR 56.97-40(a), installed piping with water, and the floors of some services."""
    if "service" not in asked:
        raise OutsideValidity(
            "say the service: fire mains, fuel to burners and gas cargo have a floor"
        )
    pressure = _own_factor(asked, _PIPE_WATER) * _working(asked)
    floor = FLOORS.get(asked["service"].word)
    rule = f"{_PIPE_WATER:g} x MAWP, witnessed by a marine inspector"
    if floor is None:
        return Found({"p_test": pressure}, "46cfr56.97-40", rule)
    rule += f"; not below {floor}"
    if pressure >= floor.si * (1 - NEAR):
        return Found({"p_test": pressure}, "46cfr56.97-40", rule)
    return Found({"p_test": floor.si}, "46cfr56.97-40", rule, printed={"p_test": floor})


def pipe_gas(asked: Asked) -> Found:
    """46 CFR 56.97-35, piping with gas: a band, steps and a hold."""
    planned, factor = number(asked, "p_test"), number(asked, "factor")
    results = {"hold": _HOLD.si}
    if "mawp" in asked or planned is None:
        working = _working(asked)
        results["p_test_min"] = _PIPE_GAS_LEAST * working
        results["p_test_max"] = _PIPE_GAS_MOST * working
        if planned is None and factor is not None:
            planned = factor * working
        if planned is not None and not _between(planned, results):
            raise OutsideValidity(
                f"{planned / BAR:g} bar(g) is outside the band, {_PIPE_GAS_LEAST:g} to "
                f"{_PIPE_GAS_MOST:g} times {working / BAR:g} bar(g)"
            )
    if planned is not None:
        results["p_test"] = planned
    band = f"{_PIPE_GAS_LEAST:g} to {_PIPE_GAS_MOST:g} x MAWP"
    rule = f"{band}; half, then tenths; hold {_HOLD} at least"
    return Found(results, "46cfr56.97-35", rule, gas=True, printed={"hold": _HOLD})


def _between(planned: float, band: Mapping[str, float]) -> bool:
    least, most = band["p_test_min"] * (1 - NEAR), band["p_test_max"] * (1 + NEAR)
    return least <= planned <= most


def fuel_tank(asked: Asked) -> Found:
    """46 CFR 182.435, integral fuel tanks: a pressure, or the service head if greater."""
    head = required(asked, "head", "the service head may be greater: measure it to the vent")
    rule = f"{_TANK} ({_TANK_PSI}), or the service head if greater"
    printed = {"standpipe_m": _STANDPIPE, "standpipe_ft": _STANDPIPE_FT}
    service = head * _FRESH_WATER
    if service <= _TANK.si:
        printed |= {"p_test": _TANK, "p_test_psi": _TANK_PSI}
    results = {"p_test": service} | {name: figure.si for name, figure in printed.items()}
    notes = (f"a standpipe of {_STANDPIPE} ({_STANDPIPE_FT}) is printed beside it",)
    return Found(results, "46cfr182.435", rule, printed=printed, notes=notes)


def lpg_cooking(_: Asked) -> Found:
    """46 CFR 58.16-19, gas for cooking and heating."""
    notes = ("then a leak test, repeated monthly and logged with date and name",)
    printed = {"p_test_min": _COOKING}
    rule = f"air at not less than {_COOKING}"
    return Found({"p_test_min": _COOKING.si}, "46cfr58.16-19", rule, printed=printed, notes=notes)


CODES: Final[Mapping[str, Callable[[Asked], Found]]] = {
    "asme_viii_1_hydro": viii_water,
    "asme_viii_1_pneumatic": viii_gas,
    "ped": ped,
    "cfr46_pipe_hydro": pipe_water,
    "cfr46_pipe_pneumatic": pipe_gas,
    "cfr46_fuel_tank": fuel_tank,
    "cfr46_lpg_cooking": lpg_cooking,
}
