"""The temperatures that air aboard can have; what lies outside is a slip of the pen.

The usual slips are degrees typed as kelvin (20 K for 20 degC) and kelvin typed as degrees (293 degC
for 293 K). Either moves an amount of air several times over, and no other guard would see it.
"""

from typing import Final

from garboard.calc.method import Limit

__all__ = ["deck_temperature"]

COLDEST: Final = 230
"""Kelvin: colder than any deck."""
HOTTEST: Final = 423
"""Kelvin, 150 degC: hotter than the air in any receiver or room."""


def deck_temperature(name: str) -> tuple[Limit, Limit]:
    """The limits of one temperature of a method.

    Args:
        name: The parameter, an absolute temperature [K(a)].

    Returns:
        From 230 to 423 K(a). By hand: 20 K(a) is refused, and so is 293 degC, which is 566 K(a).

    Source:
        230 K is the limit of the closed volume, a house rule; 423 K is common practice, no source.
    """
    return (
        Limit(
            f"{name} >= {COLDEST} K(a)",
            f"colder than {COLDEST} K, outside any deck temperature: are these degrees?",
        ),
        Limit(
            f"{name} <= {HOTTEST} K(a)",
            f"hotter than {HOTTEST} K, no temperature of air aboard: are these kelvin?",
        ),
    )
