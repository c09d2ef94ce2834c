"""Where a layout could not be read whole: what is found of it may follow from the hole, and not be so.

Such a slip is told before everything else, and what was found of that layout says where to begin.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.runs import CONNECTION
from garboard.records.system import Joins
from garboard.systems.laying import NO_PORT

__all__ = ["after_the_slip", "slips_of"]


def slips_of(book: Book) -> Mapping[str, tuple[Where, ...]]:
    """The places of slips in the layout of each system that has any, by its code, from the top."""
    found = {code: tuple(sorted(set(_slips(book, code)))) for code in book.systems}
    return {code: places for code, places in found.items() if places}


def _slips(book: Book, code: str) -> Iterator[Where]:
    system, surveyed = book.systems[code], book.surveys.get(code)
    file = f"{system.folder}/system.yml"
    parts = any(part.system == code for part in book.components.values())
    for item in book.content.diagnostics:
        of_layout = not parts or item.family == CONNECTION or item.about != code
        if item.where.path == file and item.severity is Severity.STOP and of_layout:
            yield item.where
    for item in surveyed.plant.faults if surveyed else ():
        if item.code == NO_PORT:
            yield item.where
    for run in system.runs:
        for end in run.ends:
            lost = end.joins is Joins.PART and end.name not in book.components
            if lost or end.joins is Joins.UNKNOWN:
                yield end.where


def after_the_slip(item: Diagnostic, slips: tuple[Where, ...]) -> Diagnostic:
    """What was found of a layout, with the slip to mend first where it has one."""
    if not slips:
        return item
    line = f"mend line {slips[0].line} of {slips[0].path} first"
    return replace(item, help=f"{line}, the layout was not read whole; then {item.help}")
