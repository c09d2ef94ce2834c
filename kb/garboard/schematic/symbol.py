"""What a symbol is made of: how a part stands, and the strokes that show it."""

from dataclasses import dataclass

__all__ = ["Drawn", "Look", "circle", "line", "over", "solid"]

INK = 1.8
"""Width of a stroke that is not said otherwise; the group round the symbols has it."""


@dataclass(frozen=True, slots=True)
class Look:
    """How one part stands."""

    shut: bool = False
    closed: frozenset[str] = frozenset()
    """Of what is turned: the ports that its position leaves apart."""
    locked: bool = False
    blows: bool = False
    """Of a relief valve: it blows free, nothing is joined to its outlet."""
    letters: str = ""
    """Of an instrument: what stands in its circle."""
    number: str = ""


@dataclass(frozen=True, slots=True)
class Drawn:
    """A symbol: its strokes, and its letters, which are never turned with it."""

    strokes: str
    letters: tuple[str, ...] = ()
    """One under the other."""
    lettered: tuple[int, int] = (0, 0)
    """Their middle, from that of the symbol."""


def line(path: str, width: float = INK) -> str:
    """Strokes that cover nothing."""
    return f'<path d="{path}"{_wide(width)}/>'


def over(path: str, width: float = INK) -> str:
    """An outline that covers what lies under it."""
    return f'<path class="o" fill="#ffffff" d="{path}"{_wide(width)}/>'


def solid(path: str) -> str:
    """An outline that is filled with ink."""
    return f'<path fill="currentColor" d="{path}"/>'


def circle(radius: float) -> str:
    """A circle about the middle, as a path.

    >>> circle(5)
    'M-5,0A5,5 0 1 1 5,0A5,5 0 1 1 -5,0Z'
    """
    r = f"{radius:g}"
    return f"M-{r},0A{r},{r} 0 1 1 {r},0A{r},{r} 0 1 1 -{r},0Z"


def _wide(width: float) -> str:
    return "" if width == INK else f' stroke-width="{width:g}"'
