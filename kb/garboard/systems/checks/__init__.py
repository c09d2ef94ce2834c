"""The questions that are asked of a plant, by hand, each with whether locked valves are judged twice.

A module here holds the questions of one noun of the trade; each question yields findings under one code.
"""

from garboard.systems.enquiry import Check

__all__ = ["CHECKS"]

CHECKS: tuple[tuple[Check, bool], ...] = ()
