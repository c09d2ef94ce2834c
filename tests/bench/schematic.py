"""How long a drawing takes to lay out, and how that grows."""

import time

from garboard.schematic.layout import lay_out_sheets
from tests.schematic.random_systems import ship_like
from tests.systems.pieces import plant_of

__all__ = ["drawing"]

SEEDS = range(8)
"""Systems of each size; the middle one counts."""


def seconds(parts: int) -> float:
    """Seconds of the processor to lay out a system of so many parts, the middle of several."""
    taken = []
    for seed in SEEDS:
        plant = plant_of(ship_like(seed, parts))
        start = time.process_time()
        lay_out_sheets(plant, plant.components)
        taken.append(time.process_time() - start)
    return sorted(taken)[len(taken) // 2]


def drawing() -> None:
    """Print the table."""
    at_30, at_55, at_120 = seconds(30), seconds(55), seconds(120)
    print("\n| drawing a system | figure |\n|---|---|")
    print(f"| a sheet of 60 parts, milliseconds | {at_55 * 1000:.0f} |")
    print(f"| t(120 parts) / t(30 parts) | {at_120 / at_30:.1f} |")


if __name__ == "__main__":
    drawing()
