"""What only the reader of a part can say of its joints and clearances: names, addresses, sorts of units."""

import re
from dataclasses import dataclass, fields, replace
from functools import cache
from typing import Final

from garboard.calc.units import read_unit
from garboard.calc.value import Given
from garboard.errors import Diagnostic, Severity
from garboard.reading.strict_yaml import CODE, shorten
from garboard.records.component import Component

__all__ = ["settle_assembly"]

MISFIT: Final = "dimension-clash"
NAME: Final = re.compile(r"[a-z][a-z0-9_]*")
FORCES: Final = frozenset(("N", "kN", "MN", "lbf", "kgf"))
"""A torque is written with one of them: in joules it would be an energy of the same size."""
OWN: Final = frozenset(item.name.rstrip("_") for item in fields(Component))


@dataclass(frozen=True, slots=True)
class Sort:
    """What one of the numbers must be."""

    unit: str
    noun: str
    example: str


TORQUE: Final = Sort("N.m", "a torque", "180 N.m +/- 10 N.m")
LENGTH: Final = Sort("mm", "a length", "0.15 mm +/- 0.03 mm")


def settle_assembly(part: Component) -> tuple[Component, tuple[Diagnostic, ...]]:
    """Give the numbers of joints and clearances their addresses, and say what does not fit.

    Args:
        part: As read; a number without an address counts for nothing.

    Returns:
        The part, and the faults. What is misnamed or of another sort is left out.
    """
    faults = [
        fault
        for field, keys in (("joints", part.joints), ("clearances", part.clearances))
        for key in keys or {}
        if (fault := _misnamed(part, field, key))
    ]
    joints, clearances = dict(part.joints or {}), dict(part.clearances or {})
    for key, joint in joints.items():
        torque = _number(part, f"joints.{key}.torque", joint.torque, TORQUE, faults)
        joints[key] = replace(joint, torque=torque)
    for key, gap in clearances.items():
        fitted = _number(part, f"clearances.{key}.fitted", gap.fitted, LENGTH, faults)
        worn = _number(part, f"clearances.{key}.worn", gap.worn, LENGTH, faults)
        clearances[key] = replace(gap, fitted=fitted, worn=worn)
    return replace(part, joints=joints or None, clearances=clearances or None), tuple(faults)


def _number(
    part: Component, path: str, given: Given | None, sort: Sort, faults: list[Diagnostic]
) -> Given | None:
    """A number with its address; nothing where it is of another sort, or has no name of its own."""
    if given is None:
        return None
    field, key, number = path.split(".", 2)
    wrong = _misfit(part, path, given, sort)
    if wrong:
        faults.append(wrong)
    if wrong or _misnamed(part, field, key):
        return None
    label = given.label or f"{number} of {key.replace('_', ' ')}"
    return replace(given, address=f"{part.tag}.{key}.{number}", label=label)


def _misnamed(part: Component, field: str, key: str) -> Diagnostic | None:
    """A name under which its numbers could not be found."""
    where = part.at_place(f"{field}.{key}")
    if not NAME.fullmatch(key):
        short = re.sub(r"[^a-z0-9]+", "_", key.casefold()).strip("_") or "cover"
        text = f"`{shorten(key)}` under {field} is no name that an address can hold"
        cure = f"write {short}, and name: {shorten(key)} under it"
        return Diagnostic(where, Severity.STOP, text, cure, CODE, part.tag)
    if key in OWN:
        text = f"`{key}` under {field} is the name of a property of every part"
        return Diagnostic(where, Severity.STOP, text, "give it another name", CODE, part.tag)
    if field == "clearances" and key in (part.joints or {}):
        text = f"{part.tag} has a joint and a clearance of the name `{key}`"
        return Diagnostic(where, Severity.STOP, text, "give each its own name", CODE, part.tag)
    return None


def _misfit(part: Component, path: str, given: Given, sort: Sort) -> Diagnostic | None:
    """A number whose unit says that it is something else."""
    fits = given.type == _type(sort.unit)
    if sort is TORQUE:
        fits = fits and bool(FORCES & set(re.findall(r"[A-Za-z]+", given.unit.text)))
    if fits:
        return None
    text = f"{path} of {part.tag} is {given.shown}, which is not {sort.noun}"
    cure = f"write {sort.example}, with its source"
    return Diagnostic(part.at_place(path), Severity.STOP, text, cure, MISFIT, part.tag)


@cache
def _type(unit: str) -> object:
    return read_unit(unit).type
