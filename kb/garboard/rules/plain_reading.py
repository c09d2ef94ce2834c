"""What makes a text hard to read on a small screen, aloud, or in a hurry, as far as its source shows it."""

import re
from collections.abc import Iterator
from pathlib import PurePosixPath
from typing import Final, NamedTuple

from garboard.book import Book
from garboard.errors import Where
from garboard.reading.content import Written
from garboard.records.procedure import Procedure, Step
from garboard.rules.markdown_text import find_head_rows, find_headings, find_links
from garboard.rules.prose import bodies
from garboard.rules.steps import live_procedures

__all__ = ["HardToRead", "hard_to_read"]

SIDE_BY_SIDE: Final = 2
"""Columns that stand beside each other on 320 px; of more, each cell is read by its heading alone."""
MOST_WORDS: Final = 120
"""In one piece of a step."""
LEADS_NOWHERE: Final = frozenset(
    "here|click|click here|this|this link|this page|link|more|read more|see here|there".split("|")
)
SHOWS_NOTHING: Final = frozenset("photo photograph picture image img drawing figure".split())
TOP: Final = 2
"""The level of the first heading under the title of a page; `#` in a text counts as this as well."""


class HardToRead(NamedTuple):
    """One such place."""

    about: str
    where: Where
    text: str
    cure: str


def hard_to_read(book: Book) -> Iterator[HardToRead]:
    """Every such place in the texts and in the steps of procedures."""
    for written in bodies(book.content.texts):
        yield from _headless_columns(written)
        yield from _empty_words(written)
        yield from _jumped_levels(written)
    for procedure in live_procedures(book):
        yield from _long_steps(procedure)


def _headless_columns(written: Written) -> Iterator[HardToRead]:
    for head in find_head_rows(written):
        bare = [str(number) for number, cell in enumerate(head.cells, 1) if not cell]
        if len(head.cells) > SIDE_BY_SIDE and bare:
            which = f"column {bare[0]} has" if len(bare) == 1 else f"columns {', '.join(bare)} have"
            text = f"a table of {len(head.cells)} columns, of which {which} no heading"
            cure = "write a word above each column: on a phone a row is read without its neighbours"
            yield HardToRead(written.owner, head.where, text, cure)


def _empty_words(written: Written) -> Iterator[HardToRead]:
    """Links that do not say where they lead, and pictures whose words do not say what they show."""
    for link in find_links(written):
        words = " ".join(re.sub(r"[*_`.:!>]+", " ", link.text).split()).casefold()
        if link.raw or not words:
            continue  # raw HTML and pictures without words have rules of their own
        if link.picture:
            if words in SHOWS_NOTHING or _file_name(link.text, link.target):
                text = f"picture {link.target} is described as `{link.text}`"
                cure = "say what it shows, and from where"
                yield HardToRead(written.owner, link.where, text, cure)
        elif words in LEADS_NOWHERE:
            text = f"the words of the link to {link.target} are `{link.text}`"
            cure = "write what stands there: links are read aloud and listed without their sentence"
            yield HardToRead(written.owner, link.where, text, cure)


def _file_name(text: str, target: str) -> bool:
    path = PurePosixPath(target)
    return text.strip().casefold() in {path.name.casefold(), path.stem.casefold()}


def _jumped_levels(written: Written) -> Iterator[HardToRead]:
    before = TOP - 1
    for heading in find_headings(written):
        level = max(TOP, heading.level)
        if level > before + 1:
            above = f"one of level {before}" if before >= TOP else "the title of the page"
            text = f"heading `{heading.words}` is of level {level}, under {above}"
            cure = (
                f"write it with {'#' * (before + 1)}: who hears the page looks for what is between"
            )
            yield HardToRead(written.owner, heading.where, text, cure)
        before = level


def _long_steps(procedure: Procedure) -> Iterator[HardToRead]:
    for number, step in enumerate(procedure.steps):
        for name, said in _pieces(step):
            count = len(said.split())
            if count > MOST_WORDS:
                where = procedure.place(f"steps[{number}].{name}")
                text = f"`{name}` of step {number + 1} of {procedure.id} has {count} words"
                cure = f"part it into steps; {MOST_WORDS} words in one piece at most"
                yield HardToRead(str(procedure.id), where, text, cure)


def _pieces(step: Step) -> Iterator[tuple[str, str]]:
    yield "do", step.do
    yield "if_not", step.if_not or ""
    yield "at", step.at or ""
    yield "see.value", str(step.see.value or "") if step.see else ""
