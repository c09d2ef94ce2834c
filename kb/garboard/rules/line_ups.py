"""Where valves and machines stand: in an operating state, and at the end of a procedure."""

from collections.abc import Mapping

from garboard.book import Book
from garboard.records.system import OperatingState

__all__ = ["folded", "positions_of", "state_positions"]

ALIKE = {"closed": "shut", "close": "shut", "on": "running", "off": "stopped", "opened": "open"}
SWITCHED = {"on": "open", "off": "shut"}
"""A switch is a valve for current, and open is where it passes."""
SWITCHES = ("switch", "breaker", "quick-closing valve", "solenoid valve")


def folded(position: str | None, kind: str = "") -> str:
    """A position as it is compared: closed is shut; off is stopped, of a switch shut.

    Args:
        position: As written.
        kind: The kind of component that stands in it.

    >>> folded("Closed"), folded("off"), folded("off", "switch"), folded("left")
    ('shut', 'stopped', 'shut', 'left')
    """
    word = (position or "").strip().casefold()
    alike = ALIKE | SWITCHED if kind in SWITCHES else ALIKE
    return alike.get(word, word)


def positions_of(state: OperatingState) -> dict[str, str]:
    """Where each part stands that an operating state names."""
    found = {str(tag): "open" for tag in state.open}
    found |= {str(tag): "shut" for tag in state.shut}
    found |= {str(tag): folded(position) for tag, position in (state.turned or {}).items()}
    return found | {str(tag): "running" for tag in state.running}


def state_positions(book: Book) -> Mapping[str, Mapping[str, Mapping[str, str]]]:
    """By system code and name of the operating state: where each named part stands."""
    return {
        code: {name: positions_of(state) for name, state in (system.operating_states or {}).items()}
        for code, system in book.systems.items()
    }
