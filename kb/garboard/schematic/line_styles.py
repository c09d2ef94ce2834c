"""How the pipes of each service are drawn: by width and dashes, never by colour."""

from collections.abc import Mapping
from dataclasses import dataclass

from garboard.records.system import Service

__all__ = ["LINE_STYLES", "LineStyle", "line_style"]


@dataclass(frozen=True, slots=True)
class LineStyle:
    """One way of drawing a pipe."""

    width: float
    """In drawing units."""
    dashes: str = ""
    """As SVG has them; empty: unbroken."""

    @property
    def attributes(self) -> str:
        """As attributes of an element."""
        dashed = f' stroke-dasharray="{self.dashes}"' if self.dashes else ""
        return f'stroke-width="{self.width:g}"{dashed}'


LINE_STYLES: Mapping[str, LineStyle] = {
    "heavy": LineStyle(4.4),
    "medium": LineStyle(2.6),
    "thin": LineStyle(1.6),
    "dashed": LineStyle(1.6, "6 4"),
    "dash-dot": LineStyle(1.6, "12 4 2 4"),
}
"""By the word that a service has for its line."""
USUAL = {"sensing": "dashed", "drain": "dash-dot", "vent": "dash-dot"}
"""The word for a service that says none, by its name."""


def line_style(service: str, services: Mapping[str, Service] | None) -> LineStyle:
    """How a service is drawn.

    Args:
        service: Its name; empty where a pipe has none.
        services: Those of the system.
    """
    known = (services or {}).get(service)
    word = (known.line if known else None) or USUAL.get(service, "medium")
    return LINE_STYLES.get(word, LINE_STYLES["medium"])
