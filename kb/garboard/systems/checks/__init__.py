"""The questions that are asked of a plant, by hand, each with whether locked valves are judged twice.

A module here holds the questions of one noun of the trade; each question yields findings under one code.
"""

from garboard.systems.checks.blowing import find_relief_blows
from garboard.systems.checks.cables import find_cable_above_fuse
from garboard.systems.checks.filling import (
    find_cannot_fill,
    find_no_drain,
    find_start_air_not_separate,
)
from garboard.systems.checks.flooding import find_back_flooding
from garboard.systems.checks.mounts import find_no_flexible
from garboard.systems.checks.outlets import find_relief_outlet_cut_off
from garboard.systems.checks.pumps import find_dead_head
from garboard.systems.checks.ratings import find_over_rating
from garboard.systems.checks.relief import find_relief_above_rating, find_relief_cut_off
from garboard.systems.checks.sensing import find_switch_cut_off
from garboard.systems.checks.setpoints import find_early_restart, find_set_points_crossed
from garboard.systems.checks.shut_off import find_cannot_isolate
from garboard.systems.checks.supply import find_lost_supply, find_single_point
from garboard.systems.checks.trapped import find_trapped_pressure
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
    (find_trapped_pressure, True),
    (find_dead_head, True),
    (find_over_rating, True),
    (find_back_flooding, False),
    (find_cannot_fill, False),
    (find_no_drain, False),
    (find_start_air_not_separate, False),
    (find_no_flexible, False),
    (find_lost_supply, False),
    (find_single_point, False),
    (find_cannot_isolate, False),
    (find_cable_above_fuse, False),
)
