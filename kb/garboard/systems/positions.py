"""Where valves and machines stand, in the words in which people write it."""

from garboard.records.system import OperatingState

__all__ = ["folded", "positions_of"]

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
