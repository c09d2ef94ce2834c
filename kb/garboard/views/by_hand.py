"""What is filled in by hand, on paper: nothing that is written there is ever kept by this tool."""

from dataclasses import dataclass

from garboard.views.runs import Cell

__all__ = ["ToSign"]


@dataclass(frozen=True, slots=True)
class ToSign:
    """Rows with room to write beside each."""

    caption: str
    room: tuple[str, ...]
    """What is written beside each row: `shown by`, `on`."""
    rows: tuple[Cell, ...]
    what: str = "what"
    """What the rows are."""
