"""A plot as SVG: a frame with its axes, lines, hatching, labels.

A plot has no fixed size. Positions are per cent of the drawing and letters keep the size of the page,
so that it is read on a phone and on paper alike. Ink is `currentColor`; nothing says anything by colour.
The bytes depend on the numbers alone.
"""

from collections.abc import Iterable, Iterator, Sequence
from html import escape

from garboard.views.axes import Axis, tick_text, ticks
from garboard.views.thinning import thinned

__all__ = ["MOST_BYTES", "Frame"]

MOST_BYTES = 4096
"""A plot that grows past this is wrong."""
LEFT, RIGHT, HEAD, FOOT = 17.0, 97.0, 12.0, 83.0
"""Edges of the frame, in per cent of the drawing."""
HEIGHT = 340
"""In pixels; the width is that of the page."""
Place = tuple[float, float]
"""Per cent from the left and from the head."""


class Frame:
    """A plot while it is drawn."""

    def __init__(self, across: Axis, up: Axis, name: str) -> None:
        self.across = across
        self.up = up
        self.name = name
        """Begins its ids."""
        self._parts: list[str] = []
        self._labels: list[str] = []

    def x(self, number: float) -> float:
        """Per cent from the left."""
        return LEFT + (RIGHT - LEFT) * self.across.part(number)

    def y(self, number: float) -> float:
        """Per cent from the head."""
        return FOOT - (FOOT - HEAD) * self.up.part(number)

    def hatch(self, low: float, high: float, *, leaning: bool = True) -> None:
        """Hatch a band of heights across the frame: what is forbidden, or a tolerance."""
        top, foot = sorted((self.y(low), self.y(high)))
        self._hatched(LEFT, top, RIGHT - LEFT, foot - top, "no" if leaning else "band")

    def hatch_across(self, low: float, high: float) -> None:
        """Shade a band of the range across, with an edge at either end."""
        left, right = self.x(low), self.x(high)
        self._hatched(left, HEAD, max(right - left, 0.3), FOOT - HEAD, "band")
        for at in (left, right):
            self._line((at, HEAD), (at, FOOT), 1, dashes="2 4")

    def _hatched(self, x: float, y: float, wide: float, high: float, which: str) -> None:
        self._parts.append(
            f'<rect x="{x:.1f}%" y="{y:.1f}%" width="{wide:.1f}%" height="{high:.1f}%"'
            f' fill="url(#{self.name}-{which})"/>'
        )

    def level(self, number: float, *, thick: bool = True) -> None:
        """A line across the frame at a height: a limit, a design value."""
        at = self.y(number)
        self._line((LEFT, at), (RIGHT, at), 3 if thick else 1.5, dashes="" if thick else "9 4")

    def _line(self, start: Place, stop: Place, width: float, dashes: str = "") -> None:
        (x1, y1), (x2, y2) = start, stop
        dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
        self._parts.append(
            f'<line x1="{x1:.1f}%" y1="{y1:.1f}%" x2="{x2:.1f}%" y2="{y2:.1f}%"'
            f' stroke-width="{width:g}"{dashed}/>'
        )

    def curve(self, points: Iterable[tuple[float, float | None]]) -> None:
        """A line through points, thinned to what is seen; it breaks off where there is no answer."""
        path = "".join(self._steps(thinned(list(points))))
        self._parts.append(
            f'<svg x="{LEFT}%" y="{HEAD}%" width="{RIGHT - LEFT}%" height="{FOOT - HEAD}%"'
            f' viewBox="0 0 1000 1000" preserveAspectRatio="none"><path d="{path}" fill="none"'
            ' stroke="currentColor" stroke-width="2.5" vector-effect="non-scaling-stroke"/></svg>'
        )

    def _steps(self, points: Iterable[tuple[float, float | None]]) -> Iterator[str]:
        """The path in thousandths of the frame, each place counted from the one before."""
        last: tuple[int, int] | None = None
        for x, y in points:
            if y is None:
                last = None
                continue
            at = round(1000 * self.across.part(x)), round(1000 - 1000 * self.up.part(y))
            if last is None:
                yield f"M{at[0]} {at[1]}"
            else:
                up = at[1] - last[1]
                yield f"l{at[0] - last[0]}{' ' if up >= 0 else ''}{up}"
            last = at

    def point(self, x: float, y: float, *, out: bool = False) -> None:
        """A mark: a filled disc, or a ring about a dot for what is out."""
        at = f'cx="{self.x(x):.1f}%" cy="{self.y(y):.1f}%"'
        filled = f'<circle {at} r="6" fill="currentColor"/>'
        ring = f'<circle {at} r="8" stroke-width="3"/><circle {at} r="2" fill="currentColor"/>'
        self._parts.append(ring if out else filled)

    def label(self, x: float, y: float, text: str, *, above: bool, end: bool) -> None:
        """Words beside a place in the frame, on a halo so that a line behind them does no harm.

        Args:
            x: Where, as the axis across has it.
            y: Where, as the upright axis has it.
            text: The words.
            above: Over the place rather than under it.
            end: They end there rather than begin.
        """
        anchor = ' text-anchor="end"' if end else ""
        shift = "-8" if end else "8"
        self._labels.append(
            f'<text class="halo" x="{self.x(x):.1f}%" y="{self.y(y):.1f}%" dx="{shift}"'
            f' dy="{"-9" if above else "22"}"{anchor}>{escape(text)}</text>'
        )

    def svg(self, title: str, across: Sequence[tuple[float, str]] = ()) -> str:
        """The whole drawing.

        Args:
            title: What it shows, for who cannot see it.
            across: Marks of the axis across, where they are no plain numbers.
        """
        words = "".join((*self._axis_words(across), *self._labels))
        lines = "".join((*self._axis_lines(across), *self._parts))
        return (
            f'<svg class="plot" width="100%" height="{HEIGHT}" role="img" aria-labelledby="{self.name}-t"'
            ' font-size="16" fill="none" stroke="none">'
            f'<title id="{self.name}-t">{escape(title)}</title><defs>{self._patterns()}</defs>'
            f'<g stroke="currentColor">{lines}</g><g fill="currentColor">{words}</g></svg>'
        )

    def _patterns(self) -> str:
        made = (
            '<pattern id="{}-{}" width="{}" height="{}" patternUnits="userSpaceOnUse"'
            ' patternTransform="rotate({})"><path d="{}" stroke="currentColor" stroke-width="{}"/></pattern>'
        )
        return made.format(self.name, "no", 9, 9, 45, "M0 0V9", 1.5) + made.format(
            self.name, "band", 5, 5, 0, "M2 2h1", 1.5
        )

    def _ticks_across(self, named: Sequence[tuple[float, str]]) -> list[tuple[float, str]]:
        rounds = ticks(self.across.low, self.across.high, 4)
        return [*named] or [(one, tick_text(one, rounds)) for one in rounds]

    def _axis_lines(self, across: Sequence[tuple[float, str]]) -> Iterable[str]:
        for tick in ticks(self.up.low, self.up.high):
            at = self.y(tick)
            yield f'<line x1="{LEFT}%" y1="{at:.1f}%" x2="{RIGHT}%" y2="{at:.1f}%" stroke-width=".5"/>'
        for tick, _ in self._ticks_across(across):
            at = self.x(tick)
            yield f'<line x1="{at:.1f}%" y1="{FOOT}%" x2="{at:.1f}%" y2="{FOOT + 2}%"/>'
        yield (
            f'<rect x="{LEFT}%" y="{HEAD}%" width="{RIGHT - LEFT}%" height="{FOOT - HEAD}%"'
            ' stroke-width="1.5"/>'
        )

    def _axis_words(self, across: Sequence[tuple[float, str]]) -> Iterable[str]:
        marks = ticks(self.up.low, self.up.high)
        for tick in marks:
            yield _text((LEFT, self.y(tick)), tick_text(tick, marks), "end", dx=-6, dy=5)
        for tick, text in self._ticks_across(across):
            at = self.x(tick)
            side = "start" if at < LEFT + 8 else "end" if at > RIGHT - 8 else "middle"
            yield _text((at, FOOT), text, side, dy=24)
        yield _text((0, HEAD), self.up.title, "start", dy=-12)
        yield _text((RIGHT, FOOT), self.across.title, "end", dy=48)


def _text(place: Place, words: str, anchor: str, dx: int = 0, dy: int = 0) -> str:
    x, y = place
    moved = f' dx="{dx}"' if dx else ""
    side = f' text-anchor="{anchor}"' if anchor != "start" else ""
    return f'<text x="{x:.1f}%" y="{y:.1f}%"{moved} dy="{dy}"{side}>{escape(words)}</text>'
