"""What is needed to put a part together again: its joints with their torque, its clearances.

Each has a name, so that its numbers have addresses like any other of the part: `SA-AR-001.cover.torque`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from garboard.calc.value import Given
from garboard.records.base import Mention

__all__ = ["CLEARANCE_NUMBERS", "JOINT_NUMBERS", "Clearance", "Joint", "assembly_givens"]

JOINT_NUMBERS: Final = ("torque",)
CLEARANCE_NUMBERS: Final = ("fitted", "worn")


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """What is bolted or screwed together, and how tight."""

    name: str | None = None
    """What is it called, as one would say it?"""
    holds_pressure: bool = False
    """Does it hold pressure in?"""
    bolts: str | None = None
    """How many of which size and grade?"""
    torque: Given | None = None
    """How tight, with its tolerance and source: `180 N.m +/- 10 N.m [sheet-cover]`?"""
    order: Mention | None = None
    """In which order and in how many rounds are they drawn up?"""
    threads: str | None = None
    """Dry or oiled, and with what? The same torque pulls an oiled bolt much harder."""
    gasket: str | None = None
    """Which part number has the gasket or ring between?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearance:
    """A gap between parts that move, new and worn out."""

    name: str | None = None
    """Between what, as one would say it?"""
    fitted: Given | None = None
    """How wide is it when put together, with its tolerance and source?"""
    worn: Given | None = None
    """At what is it worn out, so that it is not put together again as it is?"""
    measured: Mention | None = None
    """How is it measured?"""


def assembly_givens(
    joints: Mapping[str, Joint] | None, clearances: Mapping[str, Clearance] | None
) -> Iterator[tuple[str, Given]]:
    """Every number of joints and clearances that is written, as `cover.torque`."""
    for kinds, numbers in ((joints, JOINT_NUMBERS), (clearances, CLEARANCE_NUMBERS)):
        for key, one in (kinds or {}).items():
            for number in numbers:
                given = getattr(one, number)
                if given is not None:
                    yield f"{key}.{number}", given
