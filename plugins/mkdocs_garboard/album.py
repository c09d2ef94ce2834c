"""The photographs of a document of many pages: each stands in it once, however many pages show it.

A page shows a photograph by pointing at it (`use` of SVG), which browsers do without scripts and on
paper too; its alternative text stays where it is shown. The photographs stand behind all pages, so
that nobody who came for words waits for pictures.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from markupsafe import Markup

from mkdocs_garboard.joined import Files, place, way

__all__ = ["Album", "Photograph"]

SHOWN: Final = Markup(
    '<svg class="photograph" role="img" aria-label="{alt}" width="{width}" height="{height}"'
    ' viewBox="0 0 {width} {height}"><use href="{way}"></use></svg>'
)


@dataclass(frozen=True, slots=True)
class Photograph:
    """One photograph as it stands in the document."""

    place: str
    """Its id there."""
    width: str
    """Pixels, as the page that shows it says; and the same of the height."""
    height: str
    data: str
    """The whole of it, as a `data:` address."""


class Album:
    """Hands out pointers to photographs, and keeps what they point at."""

    def __init__(self, files: Files) -> None:
        """Say where the photographs are.

        Args:
            files: A file of the site as data; None where it may not stand in the document.
        """
        self._files = files
        self._kept: dict[str, Photograph] = {}

    def __iter__(self) -> Iterator[Photograph]:
        """Every photograph that a page shows, once, in the order they were first shown."""
        return iter(self._kept.values())

    def shown(self, uri: str, attributes: dict[str, str | None]) -> str | None:
        """What stands on a page in place of its `img`.

        Args:
            uri: Path of the photograph in the site.
            attributes: Those of the `img`: its size and its alternative text.

        Returns:
            The pointer as HTML; None where there is no such photograph.
        """
        width, height = attributes.get("width") or "", attributes.get("height") or ""
        if uri not in self._kept:
            data = self._files(uri)
            if data is None:
                return None
            self._kept[uri] = Photograph(place(uri), width, height, data)
        alt = attributes.get("alt") or ""
        return str(SHOWN.format(alt=alt, width=width, height=height, way=way(uri)))
