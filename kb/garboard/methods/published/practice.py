"""Makers' sheets, course notes and common practice that methods rest on, and how each was read."""

from typing import Final

from garboard.calc.method import Published

__all__ = ["PRACTICE"]

PRACTICE: Final = (
    Published(
        "bilge-design-exercise",
        "Bilge pipe calculation in a student ship design project",
        "not dated",
        "main, branch and pump capacity",
        "secondary",
    ),
    Published(
        "marine-wire-guide",
        "Marine conductor sizing guide for ABYC E-11 practice, bilge pump example, with AWG "
        "and SAE areas",
        "not dated",
        "circular mil formula and example",
        "original",
    ),
    Published(
        "refrigeration-wire-note",
        "Proper wire sizing, marine refrigeration maker technical note",
        "not dated",
        "examples 1 and 2",
        "original",
    ),
    Published(
        "api-510-questions",
        "Practice questions for the API 510 vessel inspector examination",
        "not dated",
        "shell and head questions",
        "secondary",
    ),
    Published(
        "separator-shell-example",
        "Shell thickness example for a 96 inch separator",
        "2018",
        "whole article",
        "secondary",
    ),
    Published(
        "energy-teaching-note",
        "Teaching notes on the energy stored in compressed gas",
        "not dated",
        "isothermal examples",
        "secondary",
    ),
    Published(
        "kinch-compressors",
        "R. J. Kinch, Evaluating true horsepower and CFM ratings of air compressors",
        "March 2021",
        "pump-up example",
        "original",
    ),
    Published(
        "fad-practice",
        "Compressor free-air-delivery test by receiver pump-up, energy-audit practice",
        "not dated",
        "formula with temperature factor",
        "original",
    ),
    Published(
        "leak-training-example",
        "Free air delivery and leak training example of a compressor maker",
        "July 2013",
        "leak by loading time",
        "original",
    ),
    Published(
        "srivastava-receiver",
        "A. Srivastava, Air receiver sizing (worked example)",
        "not dated",
        "surge example",
        "secondary",
    ),
    Published(
        "cruz-receiver",
        "C. J. Cruz, Air receivers volume calculation (worked example)",
        "7 August 2018",
        "example, buffer and refill",
        "secondary",
    ),
    Published(
        "pneumatics-exam",
        "Industrial pneumatics self-study examination",
        "not dated",
        "questions 1 and 5",
        "secondary",
    ),
    Published(
        "compressor-maker-humidity",
        "Compressor maker guidance on humidity of compressed air",
        "not dated",
        "20 and 35 degC example",
        "original",
    ),
    Published(
        "npsh-practice-25",
        "Best practice no. 25, net positive suction head",
        "not dated",
        "Example 4",
        "original",
    ),
    Published(
        "elsey-npsh",
        "J. Elsey, calculating suction head available, Pumps and Systems magazine",
        "July and August 2018",
        "parts 1 and 2",
        "original",
    ),
    Published(
        "gauge-practice-half",
        "Gauge selection practice: working reading at 50 to 75 percent of the scale",
        "not dated",
        "range selection",
        "original",
    ),
    Published(
        "gauge-practice-middle",
        "Gauge selection practice: working reading at 25 to 75 percent of the scale",
        "not dated",
        "range selection",
        "original",
    ),
    Published(
        "weld-sheet",
        "Eccentric load weld design sheet",
        "not dated",
        "one worked case",
        "secondary",
    ),
    Published(
        "transport-motion-sheet",
        "Transport acceleration calculation with standard motion parameters",
        "not dated",
        "roll, pitch and heave cases",
        "secondary",
    ),
    Published(
        "definition",
        "Arithmetic that follows from the definition or formula stated with the method; no "
        "publication stands behind the number",
        "this edition",
        "method formula",
        "constructed",
    ),
    Published(
        "house-rule",
        "garboard house rule: deliberately stricter than the regulations it leans on",
        "this edition",
        "see method",
        "constructed",
    ),
    Published(
        "fluids-doc-examples",
        "fluids library, worked examples in its documentation",
        "1.3.1",
        "friction factor, isothermal gas flow, relief area",
        "original",
    ),
)
