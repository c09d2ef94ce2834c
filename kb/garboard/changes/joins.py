"""What is joined otherwise in each system between two books: joins that went and came, parts they touch."""

from collections import defaultdict
from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.changes.comparison import Rejoined
from garboard.schematic.words import join_words
from garboard.systems.plant import Plant

__all__ = ["joins_moved", "rejoined"]


def joins_moved(old: Book, new: Book) -> Iterator[Rejoined]:
    """Every system that is joined otherwise, in the order of the newer book; what is gone last."""
    for code in dict.fromkeys((*new.surveys, *old.surveys)):
        system = new.systems.get(code) or old.systems[code]
        found = rejoined(code, system.title, _plant(old, code), _plant(new, code))
        if found is not None:
            yield found


def _plant(book: Book, code: str) -> Plant | None:
    surveyed = book.surveys.get(code)
    return surveyed.plant if surveyed else None


def rejoined(code: str, title: str, before: Plant | None, after: Plant | None) -> Rejoined | None:
    """How one system is joined otherwise.

    Args:
        code: Of the system.
        title: Of the system.
        before: As it was; None where it was not there.
        after: As it is; None where it is gone.

    Returns:
        What differs; None where every join is as it was and no part came or went.
    """
    was, now = _joins(before), _joins(after)
    parted = tuple(words for words in was if words not in now)
    joined = tuple(words for words in now if words not in was)
    old = set(before.numbers) if before else set()
    new = set(after.numbers) if after else set()
    if not parted and not joined and old == new:
        return None
    touched = {tag for words in parted for tag in was[words]}
    touched |= {tag for words in joined for tag in now[words]}
    return Rejoined(
        system=code,
        title=title,
        new=tuple(sorted(new - old)),
        gone=tuple(sorted(old - new)),
        moved=tuple(sorted(touched & old & new)),
        parted=parted,
        joined=joined,
    )


def _joins(plant: Plant | None) -> Mapping[str, tuple[str, ...]]:
    """Every join as a sentence, with the parts at its ends."""
    found: dict[str, set[str]] = defaultdict(set)
    if plant is not None:
        for pipe in plant.pipes:
            found[join_words(plant, pipe)] |= {pipe.a.name, pipe.b.name} & set(plant.numbers)
    return {words: tuple(sorted(tags)) for words, tags in found.items()}
