"""A calculation: what it is for, by what method, and how it was got a second time.

Inputs, results and criteria stand in the `calc` fence of its text, not in fields.
"""

from dataclasses import dataclass
from typing import ClassVar

from garboard.records.base import Mention, Person, Record, SourceId, asked

__all__ = ["Calculation", "SecondWay"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondWay:
    """The same result, got by another person in another way."""

    by: Person
    """Who got it a second time?"""
    how: Mention
    """In which other way?"""
    result: Mention
    """What came out? A value, or the record that holds it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Calculation(Record):
    """A result that others rest on, with its method and its limits."""

    letters: ClassVar[str] = "CL"

    purpose: Mention | None = asked()
    """What is it for?"""
    method: Mention | None = asked()
    """By which method?"""
    method_source: SourceId | None = asked("A")
    """Where does the method come from? A key of sources.yml."""
    valid: Mention | None = None
    """Within which limits may it be used?"""
    assumptions: tuple[Mention, ...] = ()
    """What was taken to be so?"""
    second: SecondWay | None = asked("A")
    """Who got it a second time, how, and what came out?"""
    reconciled: Mention | None = None
    """Where the two differ: why, and which holds?"""
