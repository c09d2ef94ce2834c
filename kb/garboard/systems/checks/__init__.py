"""The questions that are asked of a plant, by hand, each with whether locked valves are judged twice.

A module here holds the questions of one noun of the trade; each question yields findings under one code.
"""

from garboard.systems.checks.blowing import find_relief_blows
from garboard.systems.checks.outlets import find_relief_outlet_cut_off
from garboard.systems.checks.relief import find_relief_above_rating, find_relief_cut_off
from garboard.systems.checks.sensing import find_switch_cut_off
from garboard.systems.checks.setpoints import find_early_restart, find_set_points_crossed
from garboard.systems.enquiry import Check

__all__ = ["CHECKS"]

CHECKS: tuple[tuple[Check, bool], ...] = (
    (find_relief_cut_off, True),
    (find_relief_above_rating, True),
    (find_relief_outlet_cut_off, True),
    (find_relief_blows, True),
    (find_switch_cut_off, True),
    (find_early_restart, False),
    (find_set_points_crossed, False),
)
