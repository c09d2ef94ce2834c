"""Where valves and machines stand, in the words in which people write it."""

import re
from collections.abc import Iterator

from garboard.names import IDENTIFIER
from garboard.records.system import OperatingState

__all__ = ["PLAIN", "folded", "positions_of", "positions_said"]

SAYS = re.compile(rf"\b({IDENTIFIER.pattern})\s+(?:is\s+)?(\w+)")
PLAIN = ("open", "shut", "running", "stopped")
"""Positions that any part may stand in."""

ALIKE = {"closed": "shut", "close": "shut", "on": "running", "off": "stopped", "opened": "open"}
SWITCHED = {"on": "open", "off": "shut"}
"""A switch is a valve for current, and open is where it passes."""
SWITCHES = ("switch", "breaker", "quick-closing valve", "solenoid valve")
FUSED = {"out": "pulled", "off": "pulled", "fitted": "in", "on": "in"}


def folded(position: str | None, kind: str = "") -> str:
    """A position as it is compared: closed is shut; off is stopped, of a switch shut.

    Args:
        position: As written.
        kind: The kind of component that stands in it.

    >>> folded("Closed"), folded("off"), folded("off", "switch"), folded("left"), folded("out", "fuse")
    ('shut', 'stopped', 'shut', 'left', 'pulled')
    """
    word = (position or "").strip().casefold()
    if kind == "fuse":
        return FUSED.get(word, word)
    alike = ALIKE | SWITCHED if kind in SWITCHES else ALIKE
    return alike.get(word, word)


def positions_of(state: OperatingState) -> dict[str, str]:
    """Where each part stands that an operating state names."""
    found = {str(tag): "open" for tag in state.open}
    found |= {str(tag): "shut" for tag in state.shut}
    found |= {str(tag): folded(position) for tag, position in (state.turned or {}).items()}
    return found | {str(tag): "running" for tag in state.running}


def positions_said(text: str) -> Iterator[tuple[str, str]]:
    """Names in a text, each with the word behind it, which may be a position.

    >>> list(positions_said("SA-HV-012 open; then SA-CP-002 is stopped"))
    [('SA-HV-012', 'open'), ('SA-CP-002', 'stopped')]
    """
    return ((found[1], found[2]) for found in SAYS.finditer(text))
