"""Labels of valves and other parts: a list for each system as a file, and sheets of valve labels to print.

The QR code of a label says the tag and nothing else: a label is there for years, a tag is never used
again for another thing, and anything that finds a page finds it by its tag.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.names import system_of
from garboard.records.component import Component
from garboard.records.component_kinds import SWITCHES
from garboard.views.card_block import Label, LabelSheet
from garboard.views.draft import Draft
from garboard.views.page import Bullets, Cell, Download, Heading, Paragraph
from garboard.views.positions import board_word
from garboard.views.values_data import guarded

__all__ = ["HEAD", "label_file", "label_files", "labels_draft"]

HEAD = ("tag", "name", "position normally", "place", "QR text")
VALVES = ("valve", "cock", "plug", "coupling", "changeover")
"""Words of the kinds that get a printed label, beside switches and breakers."""


def label_file(code: str) -> str:
    """The file of a system's labels, from the root of the site.

    >>> label_file("SA")
    'labels/SA.tsv'
    """
    return f"labels/{code}.tsv"


def label_files(book: Book) -> dict[str, str]:
    """Every list of labels: tab-delimited UTF-8, a head line, one part a line."""
    return {label_file(code): _text(book, code) for code in book.systems if _parts(book, code)}


def labels_draft(book: Book) -> Draft:
    """The page that leads to the lists, and the labels to print."""
    draft = Draft(book, "registers/labels", "Labels", "register")
    files: tuple[Cell, ...] = tuple(
        (Download(path, path), f": {book.systems[code].title}, {len(_parts(book, code))} parts")
        for code in book.systems
        if (path := label_file(code)) in label_files(book)
    )
    draft.add(
        Paragraph(
            (
                "Every tagged part of a system as a list for whoever engraves or prints labels: tab between"
                " the columns, UTF-8, one head line. A cell that a spreadsheet would work out begins with"
                " an apostrophe.",
            )
        ),
        Bullets(files) if files else Paragraph(("No part has a tag yet.",)),
        Paragraph(
            (
                "Below stand the labels of valves, switches and breakers, to print on A4 and cut out. Hold each"
                " against the part before it is fixed: the pipe tells which valve it is, not the label.",
            )
        ),
    )
    for code, system in book.systems.items():
        labels = tuple(Label(part.tag, part.name or part.kind) for part in _turned(book, code))
        if labels:
            draft.add(Heading(system.title), LabelSheet(labels))
    return draft


def _parts(book: Book, code: str) -> list[Component]:
    found = [part for tag, part in book.components.items() if system_of(tag) == code]
    return sorted(found, key=lambda part: part.tag)


def _turned(book: Book, code: str) -> Iterator[Component]:
    for part in _parts(book, code):
        if part.kind in SWITCHES or any(word in part.kind for word in VALVES):
            yield part


def _text(book: Book, code: str) -> str:
    rows = [HEAD, *(_row(part) for part in _parts(book, code))]
    return "".join("\t".join(map(_cell, row)) + "\n" for row in rows)


def _row(part: Component) -> tuple[str, ...]:
    usual = board_word(part, part.usual) if part.usual else ""
    return (part.tag, part.name or "", usual, part.place or "", part.tag)


def _cell(text: str) -> str:
    """One cell: no tab and no line end in it, nothing that is worked out."""
    return guarded(" ".join(text.split()))
