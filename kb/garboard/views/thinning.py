"""Fewer points of a long curve, so that what is drawn still shows every peak and trough."""

from collections.abc import Sequence

__all__ = ["COLUMNS", "thinned"]

COLUMNS = 100
"""Steps across a plot on a phone, of two to three pixels."""
Drawn = tuple[float, float | None]


def thinned(points: Sequence[Drawn], columns: int = COLUMNS) -> list[Drawn]:
    """At most a lowest, a highest and one gap for each column, and the first and last point.

    Args:
        points: Rising across; None where there is no answer.
        columns: Into how many steps of equal width they are put.

    Returns:
        Some of the points, in their order; all of them where they are few.
    """
    if len(points) <= 2 * columns:
        return list(points)
    start, span = points[0][0], points[-1][0] - points[0][0]
    kept: set[int] = {0, len(points) - 1}
    lowest: dict[int, int] = {}
    highest: dict[int, int] = {}
    gaps: dict[int, int] = {}
    for at, (x, y) in enumerate(points):
        column = min(columns - 1, int(columns * (x - start) / span)) if span > 0 else 0
        if y is None:
            gaps.setdefault(column, at)
            continue
        least, most = (points[which.setdefault(column, at)][1] for which in (lowest, highest))
        if least is not None and y < least:
            lowest[column] = at
        if most is not None and y > most:
            highest[column] = at
    kept.update(lowest.values(), highest.values(), gaps.values())
    return [points[at] for at in sorted(kept)]
