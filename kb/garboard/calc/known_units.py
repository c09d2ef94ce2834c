"""What the units library has said of the names so far, as text, so that a later run need not load it.

Only whitelisted names are recalled, each as an exact fraction; a name that a run knows already is
not changed.
"""

import json
from fractions import Fraction

from garboard.calc.dimensions import BASES, Dimension
from garboard.calc.unit_names import LIBRARY_NAMES
from garboard.calc.units import RESOLVED, ZEROS

__all__ = ["recall_units", "write_units"]

LONGEST = 1000
"""Signs; the factor of a degree is a long fraction of pi."""


def write_units() -> str:
    """Every name looked up so far: JSON, a line a name.

    >>> write_units().startswith("{")
    True
    """
    lines = []
    for name, (factor, measure) in sorted(RESOLVED.items()):
        row: list[object] = [str(factor), [str(part) for part in measure]]
        if name in ZEROS:
            row.append(str(ZEROS[name]))
        lines.append(f"{json.dumps(name)}:{json.dumps(row)}")
    return "{" + ",\n".join(lines) + "}"


def recall_units(text: str) -> bool:
    """Take over what an earlier run looked up.

    Args:
        text: As written by `write_units`.

    Returns:
        Whether it was that; nothing is taken over from anything else.
    """
    factors: dict[str, tuple[Fraction, Dimension]] = {}
    zeros: dict[str, Fraction] = {}
    try:
        for name, (factor, measure, *zero) in json.loads(text).items():
            parts = tuple(read(part) for part in measure)
            if name not in LIBRARY_NAMES or len(parts) != len(BASES):
                return False
            factors[name] = (read(factor), parts)
            if zero:
                zeros[name] = read(zero[0])
    except (ValueError, TypeError, AttributeError, RecursionError, ZeroDivisionError):
        return False
    for name, found in factors.items():
        RESOLVED.setdefault(name, found)
    for name, point in zeros.items():
        ZEROS.setdefault(name, point)
    return True


def read(text: object) -> Fraction:
    """An exact number.

    Raises:
        ValueError: It is none.
    """
    if not isinstance(text, str) or len(text) > LONGEST:
        raise ValueError(text)
    return Fraction(text)
