"""What the checks of a layout found, as diagnostics of one rule."""

from collections.abc import Callable, Iterator

from garboard.book import Book
from garboard.errors import Diagnostic
from garboard.systems.finding import PathFinding
from garboard.systems.plant import Plant

__all__ = ["GRADED", "path_diagnostics"]

GRADED = "graded"
"""`BINDS_FROM` of a rule that binds by the level of what it finds: a danger from a sketch on, a warning from
building, a note from the tests."""


def path_diagnostics(
    book: Book, code: str, said: Callable[[PathFinding], bool] | None = None
) -> Iterator[Diagnostic]:
    """The findings of one code in every system.

    Args:
        book: It holds what every system was asked.
        code: Of the rule.
        said: Whether the rule has told the cause of a finding already, in other words.
    """
    for surveyed in book.surveys.values():
        for found in surveyed.findings:
            if found.code == code and not (said and said(found)):
                about = _owner(surveyed.plant, found)
                yield Diagnostic(
                    found.where,
                    found.level.severity,
                    found.text,
                    found.help,
                    code,
                    about,
                    fingerprint=found.fingerprint,
                )


def _owner(plant: Plant, found: PathFinding) -> str:
    """Whose service status binds it: a tag, or the system of a header without one."""
    header = (plant.system.headers or {}).get(found.about)
    if header is None:
        return found.about
    return str(header.tag or plant.system.code)
