"""The same answers by another route: exact fractions, a slow simulation, another library's units.

Nothing here uses the calculation language; a slip in a body or in the language itself shows here even
where a published value is coarse.
"""

import math
from decimal import Decimal
from fractions import Fraction

import pint
import pytest

from garboard.methods import METHODS
from garboard.methods.proof import Outcome, prove

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
ATMOSPHERE = Fraction("1.01325")


def ours(method: str, proof: str) -> tuple[float, str]:
    """What the method answers to one of its proofs, as number and unit of the published value."""
    declared = next(item for item in METHODS[method].proofs if item.name == proof)
    result = prove(METHODS[method], declared)
    assert result.outcome is Outcome.REPRODUCED, result.why
    assert result.number is not None
    _, _, unit = declared.value.partition(" ")
    return result.number, unit


def air_after_quick_starts(volume: float, start: float, end: float, steps: int) -> float:
    """Air let out of a receiver that takes up no heat, a small puff at a time, at 1.01325 bar."""
    left, pressure, let_out = volume * start / float(ATMOSPHERE), start, 0.0
    puff = left / steps
    while pressure > end:
        middle = pressure * (1 - 0.7 * puff / left)
        pressure -= 1.4 * middle * puff / (left - puff / 2)
        left -= puff
        let_out += puff
    return let_out


@pytest.mark.parametrize(
    ("method", "proof", "other"),
    [
        (
            "pressure_datum",
            "datum-100psig-abs",
            float(REGISTRY.Quantity(100, "psi").to("bar").magnitude) + float(ATMOSPHERE),
        ),
        (
            "pressure_datum",
            "datum-free-air-total",
            float(Fraction(1, 2) * (30 + ATMOSPHERE) / ATMOSPHERE),
        ),
        ("pressure_datum", "datum-free-air-usable", float(Fraction(1, 2) * 20 / ATMOSPHERE)),
        (
            "pressure_datum",
            "datum-compress-200ft3",
            float(200 * Fraction("14.7") / (90 + Fraction("14.7"))),
        ),
        (
            "starting_air_receiver",
            "start-500L-30bar-unrounded",
            float(Fraction(1, 2) * 20 / (ATMOSPHERE * Fraction("0.8"))),
        ),
        (
            "starting_air_receiver",
            "start-volume-six",
            float(6 * Fraction("0.8") * ATMOSPHERE / 20),
        ),
        (
            "starting_air_receiver",
            "start-volume-twelve",
            float(12 * Fraction("1.1") * ATMOSPHERE / 18),
        ),
        ("starting_air_receiver", "start-fill-rate-1h", float(30 / ATMOSPHERE)),
        (
            "bilge_pipe_bore",
            "bore-main-14x12",
            float(25 + Decimal("1.68") * Decimal("257.6").sqrt()),
        ),
        (
            "bilge_pipe_bore",
            "bore-main-83-m",
            float(25 + Decimal("1.68") * (83 * Decimal(21)).sqrt()),
        ),
        (
            "bilge_pipe_bore",
            "bore-branch-28",
            float(25 + Decimal("2.15") * Decimal("515.2").sqrt()),
        ),
    ],
    ids=lambda value: value if isinstance(value, str) else None,
)
def test_another_route_gives_the_same_number(method: str, proof: str, other: float) -> None:
    number, _ = ours(method, proof)

    assert number == pytest.approx(other, rel=1e-9)


def test_a_receiver_emptied_puff_by_puff_gives_the_fast_starts() -> None:
    number, _ = ours("starting_air_receiver", "start-500L-30bar-fast")

    slow = air_after_quick_starts(0.5, 31.01325, 11.01325, 200_000) / 0.8

    assert number == pytest.approx(slow, rel=1e-4)


def test_the_pump_that_goes_with_a_bore_moves_water_at_two_metres_a_second() -> None:
    number, _ = ours("bilge_pipe_bore", "bore-pump-151.63")

    through = 2 * 3600 * math.pi / 4 * 0.15163**2

    assert number == pytest.approx(through, rel=0.002)


@pytest.mark.parametrize(
    ("method", "proof", "real_air"),
    [
        ("pressure_datum", "datum-free-air-total", 15.437),
        ("pressure_datum", "datum-free-air-usable", 9.9836),
        ("starting_air_receiver", "start-500L-30bar-unrounded", 12.479),
        ("starting_air_receiver", "start-500L-30bar-fast", 9.9385),
    ],
)
def test_real_air_stays_within_two_percent_of_the_ideal_gas(
    method: str, proof: str, real_air: float
) -> None:
    number, _ = ours(method, proof)

    assert number == pytest.approx(real_air, rel=0.02)
