"""What a reader may change in a page: one block as a small program with its inputs and results.

A fence names its opened inputs, `; what-if p_max p_min`. The page is handed the steps that rest on
them, from whatever block, and everything else as numbers; so it follows them without a network, and
with the same ranges, margins and refusals. As JSON, what stands at its default is left out.
"""

import json
from dataclasses import dataclass, fields, is_dataclass

from garboard.calc.page_program import Code, number

__all__ = ["Followed", "Opened", "Result", "Steady", "Warned", "WhatIf"]

ShownIn = tuple[str, float, float]
"""A unit as written, its scale and its zero in SI: `("bar(g)", 100000.0, 0.0)`."""
PLAIN: ShownIn = ("", 1.0, 0.0)


@dataclass(frozen=True, slots=True)
class Opened:
    """An input that the reader may change."""

    name: str
    label: str
    unit: ShownIn
    """Shown beside the field, never typed."""
    text: str
    """The number of the handbook as shown, without its unit."""
    si: float
    tolerance: str = ""
    """As written: `0.5 bar`, `5 %`."""
    width: float = 0.0
    """The tolerance in SI, at the number of the handbook."""
    share: float = 0.0
    """The same as a share of the value, where it is stated in per cent."""
    whole: bool = False
    """A count: only whole numbers."""
    lowest: float | None = None
    """In SI: below it there is no such thing, such as a pressure under a vacuum."""
    highest: float | None = None
    least: str = ""
    """The lowest as shown, with its unit."""
    most: str = ""
    slider: tuple[float, ...] = ()
    """From, to and step of a slider, in the unit as shown; empty where none can be derived."""


@dataclass(frozen=True, slots=True)
class Steady:
    """An input with a tolerance that the reader may not change, in SI."""

    si: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Result:
    """One result of the block that rests on an opened input."""

    name: str
    label: str
    code: Code | None
    """Its cell; None where a table is read at an opened input, and it is not followed."""
    unit: ShownIn = PLAIN
    digits: int = 3
    whole: bool = False
    si: float | None = None
    """As the handbook has it, where that is printed otherwise than rounded."""
    text: str = ""
    """How it is printed there."""
    answer: bool = False
    """What the block was made for."""
    worst: tuple[int, ...] | None = ()
    """The cells of the toleranced inputs it rests on; None: its range is not followed."""


@dataclass(frozen=True, slots=True)
class Followed:
    """One requirement of the block that rests on an opened input."""

    text: str
    """As written: `n >= 6`."""
    label: str
    sign: str
    left: Code | None
    """None where it is not followed."""
    right: Code | None = None
    unit: ShownIn = PLAIN
    margin: tuple[str, float] = ("", 1.0)
    """The unit of the margin and its scale."""
    digits: int = 3
    whole: tuple[bool, bool] = (False, False)
    worst: tuple[int, ...] | None = ()


@dataclass(frozen=True, slots=True)
class Warned:
    """An alarm of a method that rests on an opened input."""

    text: str
    when: Code
    limits: tuple[Code, ...] = ()
    """The cells of the limits of its method: outside them it has nothing to say."""
    worst: tuple[int, ...] | None = ()


@dataclass(frozen=True, slots=True)
class WhatIf:
    """One block as a page follows it."""

    inputs: tuple[Opened, ...]
    """The first cells."""
    steady: tuple[Steady, ...] = ()
    """The cells after them."""
    spread: tuple[int, ...] = ()
    """The cells of all toleranced inputs, in the order in which the core goes through corners."""
    steps: tuple[Code, ...] = ()
    """The cells that follow."""
    words: tuple[str, ...] = ()
    """Why a method holds no longer."""
    results: tuple[Result, ...] = ()
    requirements: tuple[Followed, ...] = ()
    alarms: tuple[Warned, ...] = ()

    @property
    def text(self) -> str:
        """As JSON."""
        return json.dumps(plain(self), ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def plain(what: object) -> object:
    """Plain data: of a dataclass only what does not stand at its default.

    >>> plain(Result("n", "", [4], whole=True))
    {'name': 'n', 'label': '', 'code': [4], 'whole': True}
    """
    if is_dataclass(what) and not isinstance(what, type):
        return {
            each.name: plain(own)
            for each in fields(what)
            if (own := getattr(what, each.name)) != each.default
        }
    if isinstance(what, tuple | list):
        return [plain(part) for part in what]
    return number(what) if isinstance(what, float) else what
