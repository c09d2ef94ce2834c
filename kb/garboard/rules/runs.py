"""What an instrument looks at: what it says it watches, and what stands in one run of pipe with it.

Only the line of the connections is read that names the instrument; what other ways lead to it is a
question to the layout. A regulator, a check valve or a machine ends the look: beyond it the
pressure is another one.
"""

from collections.abc import Iterable, Iterator, Mapping

from garboard.book import Book
from garboard.records.component import Component
from garboard.records.system import End, Joins

__all__ = ["INSTRUMENTS", "RELIEF", "find_views", "relief_of"]

INSTRUMENTS = ("gauge", "transmitter", "pressure switch", "level switch", "voltmeter", "ammeter")
RELIEF = ("relief valve", "bursting disc")
ENDS_THE_LOOK = (*RELIEF, "regulator", "check valve", "stop-check valve", "compressor", "pump")


def find_views(book: Book) -> Mapping[str, tuple[str, ...]]:
    """The tags that each instrument looks at, each once, in the order they are written."""
    found: dict[str, list[str]] = {
        part.tag: list(part.watches)
        for part in book.components.values()
        if part.kind in INSTRUMENTS
    }
    for system in book.systems.values():
        for run in system.runs:
            for number, end in enumerate(run.ends):
                if end.name in found:
                    found[end.name].extend(_until_it_changes(book, reversed(run.ends[:number])))
                    found[end.name].extend(_until_it_changes(book, run.ends[number + 1 :]))
    return {tag: tuple(dict.fromkeys(seen)) for tag, seen in found.items()}


def relief_of(book: Book) -> Mapping[str, list[Component]]:
    """The relief valves and bursting discs that say they protect a part, by its tag."""
    found: dict[str, list[Component]] = {}
    for part in book.components.values():
        for tag in part.protects if part.kind in RELIEF else ():
            found.setdefault(tag, []).append(part)
    return found


def _until_it_changes(book: Book, ends: Iterable[End]) -> Iterator[str]:
    for end in ends:
        part = book.components.get(end.name)
        if part is not None and part.kind in ENDS_THE_LOOK:
            return
        if end.joins is Joins.PART:
            yield end.name
