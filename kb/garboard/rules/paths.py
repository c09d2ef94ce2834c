"""What the checks of a layout found, and what of a layout could not be understood, by the code of a rule."""

from collections.abc import Callable, Iterator

from garboard.book import Book
from garboard.errors import Diagnostic
from garboard.rules.misread import after_the_slip, slips_of
from garboard.systems.finding import GRADED, PathFinding
from garboard.systems.laying import LOOSE
from garboard.systems.plant import Plant

__all__ = ["GRADED", "laying_faults", "path_diagnostics"]


def path_diagnostics(
    book: Book, code: str, said: Callable[[PathFinding], bool] | None = None
) -> Iterator[Diagnostic]:
    """The findings of one code in every system.

    Args:
        book: It holds what every system was asked.
        code: Of the rule.
        said: Whether the rule has told the cause of a finding already, in other words.
    """
    slips = slips_of(book)
    for system, surveyed in book.surveys.items():
        for found in surveyed.findings:
            if found.code == code and not (said and said(found)):
                about = _owner(surveyed.plant, found)
                item = Diagnostic(
                    found.of.where,
                    found.level.severity,
                    found.text,
                    found.help,
                    code,
                    about,
                    fingerprint=found.fingerprint,
                )
                yield after_the_slip(item, slips.get(system, ()))


def laying_faults(book: Book, code: str) -> Iterator[Diagnostic]:
    """What of the connections of every system could not be understood, by code."""
    slips = slips_of(book) if code == LOOSE else {}
    for system, surveyed in book.surveys.items():
        for item in surveyed.plant.faults:
            if item.code == code:
                yield after_the_slip(item, slips.get(system, ()))


def _owner(plant: Plant, found: PathFinding) -> str:
    """Whose service status binds it: a tag, or the system of a header without one."""
    header = (plant.system.headers or {}).get(found.about)
    if header is None:
        return found.about
    return str(header.tag or plant.system.code)
