"""How many rows of paper something takes, reckoned from its words before anything is printed.

A row is what one step of one line takes: two lines of type, so that a wet finger finds its place.
The reckoning knows no printer. It takes the wide face that the budgets were measured with, so that
what fits here fits in print, and what does not may still fit by luck. A word is never broken, and a
value never parted from its unit.
"""

import re
import textwrap
from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil
from typing import Final

from garboard.records.component import Component
from garboard.records.hazard import Hazard
from garboard.records.procedure import Second, Step

__all__ = [
    "A4",
    "A5",
    "CARD",
    "LINES_A_ROW",
    "Paper",
    "lines_of",
    "message_lines",
    "printed_words",
    "rows_of",
    "step_lines",
]

LINES_A_ROW: Final = 2
"""The least height of a step, 48 px, is two lines of 14 pt type."""
UNDER_STEP: Final = 0.5
"""Lines of white space over and under what stands below a step."""
AROUND_MESSAGE: Final = 2.5
"""Lines that the band, the frame and the space around a message take beside its words."""
SHOWN: Final = "00.00 bar(g)"
"""Stands for a value that is worked out: as long as most of them."""
VALUE = re.compile(r"\[(?P<text>[^\[\]]*)\]\(value:(?:[^()\s]|\([^()\s]*\))*\)")
ADDRESS_ALONE = re.compile(r"[A-Za-z][\w-]*(?:\.[A-Za-z_]\w*)+")
AND_UNIT = re.compile(r"(?<=\d) (?=[^\W\d_])")
SECOND: Final = {Second.CONCURRENT: 48, Second.INDEPENDENT: 47}
"""Signs of the words that ask for a second person."""


@dataclass(frozen=True, slots=True)
class Paper:
    """What one side of a paper holds."""

    name: str
    across: int
    """Signs on one line beside the step's number."""
    with_message: int
    """Rows that fit under the title block beside one message."""
    without: int
    """Rows that fit where there is none."""


CARD: Final = Paper("one side of A5, as a card", across=50, with_message=9, without=12)
A5: Final = Paper("one side of A5", across=40, with_message=9, without=12)
A4: Final = Paper("one side of A4", across=62, with_message=17, without=20)


def printed_words(text: str | None) -> str:
    """A text as it is printed: a quoted value by its words, or by a value of the usual length.

    >>> printed_words("not below [49.5 bar(g)](value:SA-AR-001.test) on G-07")
    'not below 49.5 bar(g) on G-07'
    >>> printed_words("[](value:test-pressures.p_half) on G-07")
    '00.00 bar(g) on G-07'
    """
    words = VALUE.sub(lambda found: found["text"] or SHOWN, text or "")
    return SHOWN if ADDRESS_ALONE.fullmatch(words) else words


def lines_of(text: str | None, across: int) -> int:
    """Lines that a text takes.

    Args:
        text: As written in a record.
        across: Signs on one line.

    >>> lines_of("shut", 40), lines_of("Close the drain and see that it holds 30 bar(g)", 40), lines_of("", 40)
    (1, 2, 0)
    """
    kept = AND_UNIT.sub("\u00a0", printed_words(text))
    return len(textwrap.wrap(kept, across, break_long_words=False, break_on_hyphens=False))


def rows_of(lines: float) -> int:
    """Rows that so many lines take, in full rows.

    >>> rows_of(2), rows_of(2.5), rows_of(0)
    (1, 2, 0)
    """
    return ceil(lines / LINES_A_ROW)


def message_lines(hazard: Hazard, across: int) -> float:
    """Lines of the safety message of a hazard, its band and its frame included."""
    said = hazard.message
    parts = (said.hazard, said.harm, said.avoid) if said else (hazard.source, hazard.sequence)
    return AROUND_MESSAGE + sum(max(1, lines_of(part, across)) for part in parts)


def step_lines(step: Step, components: Mapping[str, Component], across: int) -> float:
    """Lines of one step with what stands under it, its message left out.

    Args:
        step: The step.
        components: By tag, for names and places.
        across: Signs on one line.
    """
    part = components.get(step.tag) if step.tag else None
    label = f"{step.tag} {part.name or part.kind}" if part and step.tag else step.tag or ""
    to = f"to {step.to}" if step.to else ""
    place = str(step.at or (part.place if part else "") or "")
    seen = (
        f"{step.see.tag or ''} {step.see.value or ''} {step.see.within or ''}" if step.see else ""
    )
    said = " ".join(word for word in (step.do, label, to, place) if word)
    one_line = len(f"{printed_words(said)} {printed_words(seen)}") <= across
    lines: float = 1 if one_line else lines_of(said, across) + lines_of(seen, across)
    lines = max(float(LINES_A_ROW), lines + UNDER_STEP)
    if step.if_not:
        lines += lines_of(f"If not: {step.if_not}", across) + UNDER_STEP
    if step.second in SECOND:
        lines += ceil(SECOND[step.second] / across) + UNDER_STEP
    if step.hold:
        lines += lines_of(f"Hold point: not before it is released: {step.hold}", across)
        lines += UNDER_STEP
    return lines
