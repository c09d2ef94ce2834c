"""How an engineering method is declared: parameters, limits, source, cautions, proof.

A formula method has its body as text in the calculation language, so that its working, ranges and
what-if come from the same reader as an author's own lines. A table method is plain Python behind
the same declaration. `calc` is handed the table of methods; it never imports one.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final

__all__ = [
    "Alarm",
    "Answer",
    "Argument",
    "Contradiction",
    "Expect",
    "FormulaMethod",
    "Grade",
    "Limit",
    "Method",
    "Parameter",
    "Printed",
    "Proof",
    "Result",
    "TableMethod",
    "terms_of",
]

WORD: Final = re.compile(r"[A-Za-z_][\w.]*|\d[\d.]*")
TABLE_TERMS: Final = 90
"""What the call of a table counts for: it is read once at every corner of what it is handed."""


class Grade(StrEnum):
    """How far a method is proven."""

    A = "A"
    """Official or definitional."""
    B = "B"
    """A printed result is reproduced and independently confirmed."""
    C = "C"
    """Consistency only; marked so on the page."""


@dataclass(frozen=True, slots=True)
class Parameter:
    """One named argument."""

    name: str
    meaning: str
    unit: str = ""
    """A unit whose kind and dimension the argument must have: `bar(g)`, `m3(n)`; empty: a plain
    number."""
    default: str | None = None
    """Text in the calculation language, such as `site.atmosphere` or another name of the method;
    None: may be left out only when no result asked for needs it."""
    words: tuple[str, ...] = ()
    """The bare words it may be, instead of a quantity."""
    refused: Mapping[str, str] = field(default_factory=dict)
    """Words that are understood and refused, each with the reason: `{"lifting": "lifting gear:
    competent person only"}`."""
    listed: bool = False
    """Takes a list `[a, b]` of quantities."""
    missing: str = ""
    """Why it cannot be done without: `the lowest starting pressure must be measured, never taken as
    zero`."""
    required: bool = False
    """A call without it is answered nothing, whichever result is asked for."""


@dataclass(frozen=True, slots=True)
class Result:
    """One named result, bound under the name on the left of the call."""

    name: str
    meaning: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Limit:
    """Where the method holds: a comparison in the calculation language, and why not past it."""

    holds: str
    """`p_hi <= 40 bar(g)`."""
    reason: str
    of: tuple[str, ...] = ()
    """Results that alone are held back where it does not hold; empty: the whole call is refused."""


@dataclass(frozen=True, slots=True)
class Alarm:
    """What a formula method warns of: a comparison in the calculation language, and the words."""

    when: str
    """`T_out > 121 degC`."""
    text: str


@dataclass(frozen=True, slots=True)
class Printed:
    """What one publication or edition prints."""

    says: str
    """As printed, with its unit: `51.3 mm`."""
    where: str
    """The publication, edition or column it stands in."""


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Publications that contradict each other: shown side by side, never picked from quietly."""

    topic: str
    """What they disagree on: `bore of a branch of 28 m`."""
    printed: tuple[Printed, ...]
    """Two at least, or one that disagrees with the rule it restates."""
    effect: str
    """How far apart they are, and what that does to a boat."""
    handbook: str
    """What this handbook does about it, and the figure it holds to, where there is one."""
    sources: tuple[str, ...] = ()
    """Ids in the method's own list of sources."""


class Expect(StrEnum):
    """What a proof expects of a call."""

    VALUE = "value"
    ALARM = "alarm"
    """The value and an alarm must both appear."""
    REFUSE = "refuse"
    """No number; the reason in words."""


@dataclass(frozen=True, slots=True)
class Proof:
    """A published (or constructed) case that the method must reproduce at every build."""

    name: str
    call: Mapping[str, str]
    """Arguments as text in the calculation language: {"V": "500 L", "p_reading": "30 bar(g)"}."""
    result: str
    """The result looked at."""
    value: str
    """As printed: `39.0 bar(g)`, `12`; for a refusal the reason, or a part of it."""
    source: str
    """Id in the method's own list of sources."""
    seen: str
    """How the source was read: original, secondary, remembered, constructed."""
    basis: str
    """published, table, rule, consistency or constructed."""
    expect: Expect = Expect.VALUE
    relative: float = 0.0
    """Tolerance of the value; where a relative and an absolute one are given, meeting either is
    enough."""
    absolute: str = ""
    """Absolute tolerance with its unit."""
    must_not_give: tuple[tuple[str, str], ...] = ()
    """Answers that a known mistake would produce, and which mistake."""
    independent: str = ""
    """Which library or other route agrees, and its value."""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Published:
    """A publication a method rests on."""

    name: str
    title: str
    edition: str
    clause: str
    seen: str


@dataclass(frozen=True, slots=True)
class Argument:
    """What a table method is handed for one parameter: a quantity in SI, or a word."""

    si: float | None = None
    word: str = ""
    text: str = ""
    """As written, for messages."""
    items: tuple[float, ...] = ()
    """The values of a list, in SI."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What a table method gives back."""

    results: Mapping[str, float]
    """Result name to SI value."""
    printed: Mapping[str, str] = field(default_factory=dict)
    """Result name to the figure exactly as the source prints it, where it is one."""
    words: Mapping[str, str] = field(default_factory=dict)
    """Results that are words, such as a verdict."""
    columns: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    """The rows of the table that were read, to be shown by the fence."""
    notes: tuple[str, ...] = ()
    alarms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Method:
    """What every method declares."""

    name: str
    title: str
    purpose: str
    grade: Grade
    parameters: tuple[Parameter, ...]
    results: tuple[Result, ...]
    limits: tuple[Limit, ...] = ()
    valid: tuple[str, ...] = ()
    """Validity in words, for what no comparison can test."""
    sources: tuple[Published, ...]
    caution: str
    deferral: str
    do_not: tuple[str, ...]
    """What it must not be used for."""
    proofs: tuple[Proof, ...]
    contradictions: tuple[Contradiction, ...] = ()
    """Where publications on its subject disagree; its page shows them side by side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaMethod(Method):
    """A method whose body is text in the calculation language."""

    body: str
    """One `name = expression in UNIT  # what it is` a line; parameters and other names may be used.
    A line that needs a parameter which was left out is left out with it; a parameter of the same
    name stands in its place where it is given."""
    only: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Lines that are worked only under some words of a parameter: `{"p_water": ("fluid", "water")}`,
    the parameter first. Under another word they are left out."""
    alarms: tuple[Alarm, ...] = ()
    """Judged where the method has given values, at nominal and at every corner."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TableMethod(Method):
    """A method that reads a table, a rule or a graph."""

    look_up: Callable[[Mapping[str, Argument]], Answer]
    """Raises OutsideValidity where the table has no answer."""


def terms_of(method: Method) -> int:
    """How many terms of a fence a call of a method counts for: those of its body and limits."""
    if not isinstance(method, FormulaMethod):
        return TABLE_TERMS
    body = (line.partition("#")[0].partition("=")[2] for line in method.body.splitlines())
    limits = (*(one.holds for one in method.limits), *(one.when for one in method.alarms))
    return len(WORD.findall(" ".join((*body, *limits))))
