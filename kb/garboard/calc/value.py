"""A value: one number of the handbook, what it is, where it stands and how sure it is."""

from dataclasses import dataclass
from enum import StrEnum

from garboard.calc.kinds import Type
from garboard.calc.units import Unit
from garboard.errors import Diagnostic, Where

__all__ = ["ASSUMED", "Citation", "Curve", "Given", "Mover", "Requirement", "Value", "Verdict"]

ASSUMED = "assumed"
"""Cited in place of a source: nobody measured it or read it anywhere."""


@dataclass(frozen=True, slots=True)
class Citation:
    """A source as cited: its id in sources.yml, or a record, tag or plate; and the clause."""

    source: str
    clause: str = ""
    where: Where | None = None


@dataclass(frozen=True, slots=True)
class Given:
    """A number that a person wrote down, in a fence, a component or the vessel's conditions."""

    address: str
    si: float
    low: float
    """The unfavourable ends of its tolerance, in SI; equal to `si` where none is stated."""
    high: float
    unit: Unit
    type: Type
    shown: str
    """As written, without the tolerance: `30 bar(g)`."""
    where: Where
    tolerance: str = ""
    """As written: `0.5 bar`, `10 %`; empty where none is stated."""
    label: str = ""
    sources: tuple[Citation, ...] = ()


@dataclass(frozen=True, slots=True)
class Mover:
    """What one toleranced input does to a value."""

    address: str
    """Of the input."""
    low: float
    """The value, in SI, at the end of this input that makes it least, all others nominal."""
    high: float
    share: float
    """Its part of the usual range: of the sum of squares, 0 to 1."""


@dataclass(frozen=True, slots=True)
class Curve:
    """A value against the input that moves it most, all others nominal."""

    address: str
    """Of the value."""
    across: str
    """Of the input."""
    points: tuple[tuple[float, float | None], ...]
    """Input and value in SI, rising; None where the value has no answer."""
    at: tuple[float, float]
    """The working point."""
    limit: float
    """What the value is held against, in SI."""


@dataclass(frozen=True, slots=True)
class Value:
    """One number of the handbook, worked out or given."""

    address: str
    where: Where
    type: Type
    unit: Unit
    """The unit it is shown in."""
    si: float | None
    """In SI units; readings of pressure in Pa above the atmosphere, of temperature in K. None: not
    computed."""
    low: float | None
    """Smallest and largest when everything is at its worst; equal to `si` where nothing upstream
    has a tolerance. None beside a value: at some corner it has no answer."""
    high: float | None
    text: str
    """As shown: `30 bar(g)`, `9`, `1.91 MJ`; `not computed` for a broken one."""
    label: str = ""
    sources: tuple[Citation, ...] = ()
    given: bool = False
    """Written down by a person rather than worked out."""
    tolerance: str = ""
    uses: tuple[str, ...] = ()
    """Addresses it is worked out from directly."""
    fault: Diagnostic | None = None
    """Why it is not computed."""
    whole: bool = False
    """A count, shown without decimals."""
    digits: int = 3
    """Significant digits it is shown with."""
    usual: tuple[float, float] | None = None
    """What it usually lies between, in SI: the root of the sum of squares of what each toleranced
    input does. None where nothing upstream has a tolerance, or the ends have no answer."""
    movers: tuple[Mover, ...] = ()
    """The toleranced inputs, the one that moves it most first; none for a value written down."""
    sampled: bool = False
    """Not monotone between the corners: low and high are the widest of corners and samples, and a
    narrow peak may stand a little higher."""

    @property
    def assumed(self) -> bool:
        """Whether it is openly a guess."""
        return any(one.source == ASSUMED for one in self.sources)


class Verdict(StrEnum):
    """How a requirement stands."""

    HOLDS = "holds at the worst corner"
    NOMINAL = "holds only at nominal"
    FAILS = "fails"
    UNKNOWN = "not computed"


@dataclass(frozen=True, slots=True)
class Requirement:
    """One `require` line, judged."""

    block: str
    where: Where
    text: str
    """As written, `n >= 6`."""
    why: str
    """The comment: what asks for it."""
    sources: tuple[Citation, ...]
    verdict: Verdict
    left: str
    """Both sides as shown."""
    right: str
    margin: str
    """At the worst corner, in the unit of the left side: `3`, `-0.5 bar(d)`."""
    margin_percent: float | None
    """Of the limit, at the worst corner."""
    uses: tuple[str, ...] = ()
    curve: Curve | None = None
    """The left side against what moves it most, with the limit; None where there is nothing to see."""
