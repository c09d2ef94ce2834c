"""The plot of a requirement: its left side against the input that moves it most, and the limit.

The same in sentences stands beside it: what comes out at the ends of the input's tolerance, and where
the limit is reached.
"""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from garboard.book import Book
from garboard.calc.show import Towards
from garboard.calc.value import Curve, Requirement, Value
from garboard.records.demand import sign_of
from garboard.views.axes import Axis
from garboard.views.inline import shown
from garboard.views.page import Cell, Drawing
from garboard.views.plot import Frame
from garboard.views.ranges import towards

__all__ = ["curve_plot"]

Point = tuple[float, float]
MOST_LETTERS = 30
"""Of the title of an axis, on a phone."""


@dataclass(frozen=True, slots=True)
class Plot:
    """What is plotted."""

    curve: Curve
    result: Value
    across: Value
    sign: str

    @property
    def least(self) -> bool:
        """Whether less is forbidden, rather than more."""
        return self.sign.startswith(">")

    @property
    def safe(self) -> Towards:
        """Where a result is rounded to, so that it looks no better than it is."""
        return Towards.DOWN if self.least else Towards.UP

    @property
    def answered(self) -> list[Point]:
        """The points at which there is an answer."""
        return [(x, y) for x, y in self.curve.points if y is not None and math.isfinite(y)]

    def result_at(self, si: float) -> float | None:
        """The result at an input, straight between two neighbours; None where one has no answer."""
        for (x0, y0), (x1, y1) in pairwise(self.curve.points):
            if x0 <= si <= x1:
                if y0 is None or y1 is None:
                    return None
                return y0 if x1 == x0 else y0 + (y1 - y0) * (si - x0) / (x1 - x0)
        return None

    def holds(self, y: float) -> bool:
        """Whether a result is on the right side of the limit."""
        gap = y - self.curve.limit if self.least else self.curve.limit - y
        return gap > 0 or (gap == 0 and self.sign.endswith("="))

    def crossings(self) -> list[float]:
        """The inputs at which the limit is met."""
        limit, found = self.curve.limit, []
        for (x0, y0), (x1, y1) in pairwise(self.curve.points):
            if y0 is None or y1 is None or (y0 - limit) * (y1 - limit) > 0 or y0 == y1:
                continue
            found.append(x0 + (x1 - x0) * (limit - y0) / (y1 - y0))
        return found

    def passed(self) -> list[float]:
        """The inputs past which the requirement no longer holds; on a step, its last point."""
        limit, found = self.curve.limit, []
        for (x0, y0), (x1, y1) in pairwise(self.curve.points):
            if y0 is None or y1 is None or self.holds(y0) is self.holds(y1):
                continue
            found.append(x0 + (x1 - x0) * (limit - y0) / (y1 - y0))
        return found

    def nearest(self, found: list[float]) -> float | None:
        """The one nearest the working point."""
        return min(found, key=lambda x: abs(x - self.curve.at[0]), default=None)


def curve_plot(book: Book, requirement: Requirement) -> Drawing | None:
    """The plot of a requirement; None where there is no curve.

    Args:
        book: Where the result and the input are looked up.
        requirement: A `require` line, judged.
    """
    curve, sign = requirement.curve, sign_of(requirement)
    if curve is None or not sign:
        return None
    result, across = book.values.get(curve.address), book.values.get(curve.across)
    if result is None or across is None:
        return None
    plot = Plot(curve, result, across, sign)
    if len(plot.answered) < 2:
        return None
    name = result.label or curve.address
    caption = f"{name}, against {across.label or curve.across}"
    place = re.sub(r"[^a-z0-9]+", "-", f"{requirement.block}-{requirement.where.line}".casefold())
    return Drawing(
        f"{caption[0].upper()}{caption[1:]}",
        _draw(plot, f"curve-{place}", requirement).svg(caption),
        tuple(_sentences(book, plot, requirement)),
    )


def _draw(plot: Plot, name: str, requirement: Requirement) -> Frame:
    across, result, curve = plot.across.unit, plot.result.unit, plot.curve
    points = plot.answered
    heights = [result.from_si(y) for _, y in points]
    limit = result.from_si(curve.limit)
    named = plot.across.label or curve.across
    frame = Frame(
        Axis(
            across.from_si(curve.points[0][0]),
            across.from_si(curve.points[-1][0]),
            _title(across.text, named),
        ),
        Axis.around((*heights, limit), _title(result.text, plot.result.label or curve.address)),
        name,
    )
    frame.hatch(*((frame.up.low, limit) if plot.least else (limit, frame.up.high)))
    low, high = plot.across.low, plot.across.high
    if low is not None and high is not None and low < high:
        frame.hatch_across(across.from_si(low), across.from_si(high))
    frame.level(limit)
    frame.curve(
        (across.from_si(x), None if y is None else result.from_si(y)) for x, y in curve.points
    )
    x, y = across.from_si(curve.at[0]), result.from_si(curve.at[1])
    frame.point(x, y)
    low_half = frame.across.part(x) < 0.5
    frame.label(x, y, plot.result.text, above=plot.least, end=not low_half)
    _label_limit(frame, limit, heights, plot, requirement.right)
    return frame


def _label_limit(frame: Frame, limit: float, heights: list[float], plot: Plot, words: str) -> None:
    """The limit, written where the curve is farther from it, on the side that is allowed."""
    at_end = abs(heights[-1] - limit) > abs(heights[0] - limit)
    place = frame.across.high if at_end else frame.across.low
    frame.label(place, limit, f"limit {words}", above=plot.least, end=at_end)


def _title(unit: str, words: str) -> str:
    """The title of an axis; where the words are too long the caption has them."""
    text = f"{unit}, {words}" if unit else words
    return (
        text if len(text) <= MOST_LETTERS else unit or f"{words[: MOST_LETTERS - 1].rstrip()}\u2026"
    )


def _sentences(book: Book, plot: Plot, requirement: Requirement) -> Iterator[Cell]:
    curve, across = plot.curve, plot.across
    yield (
        "At ",
        shown(book, curve.across),
        f", as given, {plot.result.text}; the limit is {requirement.right}.",
    )
    ends = (("low", across.low, Towards.NEAREST), ("high", across.high, Towards.NEAREST))
    for word, si, side in ends if across.low != across.high else ():
        found = plot.result_at(si) if si is not None else None
        if si is not None and found is not None:
            yield (f"At {towards(across, si, side)}, the {word} end, {_result(plot, found)}.",)
    yield (_limit_reached(plot),)


def _limit_reached(plot: Plot) -> str:
    """Where the limit is met, rounded towards the working point; where it is passed, if elsewhere."""
    across, here = plot.across, plot.curve.at[0]
    reached, passed = plot.nearest(plot.crossings()), plot.nearest(plot.passed())
    if reached is None:
        first, last = (towards(across, x, Towards.NEAREST) for x in _ends(plot))
        return f"The limit is not reached between {first} and {last}."

    def near(x: float) -> str:
        return towards(across, x, Towards.UP if x < here else Towards.DOWN)

    said = f"The limit is reached at about {near(reached)}"
    if passed is None:
        return f"{said} and not passed."
    return f"{said}." if near(passed) == near(reached) else f"{said} and passed at {near(passed)}."


def _ends(plot: Plot) -> tuple[float, float]:
    return plot.answered[0][0], plot.answered[-1][0]


def _result(plot: Plot, si: float) -> str:
    return towards(plot.result, si, plot.safe)
