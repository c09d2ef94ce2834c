"""Formulas for properties of air and water vapour that methods rest on, and how each was read."""

from typing import Final

from garboard.calc.method import Published

__all__ = ["AIR_PROPERTIES"]

AIR_PROPERTIES: Final = (
    Published(
        "ashrae-saturation",
        "ASHRAE Handbook Fundamentals, psychrometrics, saturation pressure over liquid water",
        "2017, as restated in the source of the PsychroLib library 2.5.0",
        "chapter 1, equation 6",
        "secondary",
    ),
    Published(
        "standard-atmosphere-1976",
        "U.S. Standard Atmosphere, viscosity of air by temperature",
        "1976, as restated in the documentation of the fluids library 1.3.1",
        "dynamic viscosity",
        "secondary",
    ),
    Published(
        "serghides-1984",
        "T. K. Serghides, Estimate friction factor accurately, Chemical Engineering 91(5), an "
        "explicit form of the Colebrook equation",
        "1984, as restated in the documentation of the fluids library 1.3.1",
        "pages 63 to 64",
        "secondary",
    ),
)
