"""What is joined otherwise in each system between two books: joins that went and came, parts they touch."""

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import replace

from garboard.book import Book
from garboard.changes.comparison import DrawnJoins, Rejoined
from garboard.schematic.overlays import Overlay, gone_overlay
from garboard.schematic.paper import draw_for_paper
from garboard.schematic.title_block import TitleBlock
from garboard.schematic.words import join_words
from garboard.systems.plant import Plant

__all__ = ["drawn_joins", "joins_moved", "rejoined"]

LINK = re.compile(r' href="find:[^"]*"')
NOT_REVIEWED = "Drawn for comparison; whether it was reviewed stands beside it."


def joins_moved(old: Book, new: Book) -> Iterator[Rejoined]:
    """Every system that is joined otherwise, in the order of the newer book; what is gone last."""
    for code in dict.fromkeys((*new.surveys, *old.surveys)):
        system = new.systems.get(code) or old.systems[code]
        found = rejoined(code, system.title, _plant(old, code), _plant(new, code))
        if found is not None:
            yield replace(found, before=tuple(_drawn_before(old, found)))


def _drawn_before(old: Book, found: Rejoined) -> Iterator[DrawnJoins]:
    """The sheets that show what went and what is joined otherwise now."""
    was = _plant(old, found.system)
    if was is not None:
        overlay = gone_overlay(was, (*found.gone, *found.moved))
        yield from drawn_joins(old, found, overlay, "before the change")


def drawn_joins(book: Book, found: Rejoined, overlay: Overlay, when: str) -> Iterator[DrawnJoins]:
    """The sheets of a system that an overlay marks something on, without links.

    Args:
        book: The book that the sheets are of.
        found: How the system is joined otherwise.
        overlay: What is new, or what is gone.
        when: `before the change`.
    """
    plant = book.surveys[found.system].plant
    for sheet in book.sheets[found.system]:
        if {symbol.tag for symbol in sheet.symbols} & set(overlay.marks):
            title = f"{found.title}, {when}"
            of = f", sheet {sheet.number} of {sheet.of}" if sheet.of > 1 else ""
            for one in draw_for_paper(sheet, plant, TitleBlock(title, NOT_REVIEWED), overlay):
                part = f", {one.part}" if one.part else ""
                svg = LINK.sub(' role="img"', one.svg)
                yield DrawnJoins(caption=f"{title}{of}{part}", svg=svg, only=one.only)


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
