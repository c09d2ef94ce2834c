"""What of a built handbook can be taken along, under which names, and the page that says how.

The page is laid out before the files are written. It names those that this build will write and no
others; that each is there is seen when the finished site is looked at.
"""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from typing import Final

from garboard.handbook import Handbook
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Download,
    Heading,
    Link,
    Page,
    Paragraph,
    Review,
    Strong,
)
from garboard.views.values_data import CSV, JSON

__all__ = ["BINDERS", "TAKE_ALONG", "binder_name", "single_file_name", "take_along_page"]

TAKE_ALONG: Final = "take-it-with-you"
BINDERS: Final = "binder"
"""The folder of the binders in a site."""
CARDS = "registers/cards"
LABELS = "registers/labels"

ON_A_PHONE: tuple[Cell, ...] = (
    ("Copy the one file onto the phone: by cable, from a memory stick, or sent to it.",),
    ("Open it from the phone's own list of files, in a browser if it asks.",),
    ("Read its first line: which edition it is, and until when it is valid.",),
    (
        "Switch the phone's network off and open it again, before you rely on it: page, Find, a"
        " photograph.",
    ),
    ("When the next edition comes, put its file in the place of this one.",),
)
NOT_THE_FOLDER = (
    "Do not copy the folder of pages onto a phone: on many phones a page opened from a folder cannot"
    " lead to the next one. Ticks stay on the device they were made on; a device that keeps none says"
    " so beside the steps. A phone is no paper: what is needed when it is dead or wet belongs on paper too."
)
ON_PAPER: tuple[Cell, ...] = (
    ("Open the book in the browser of a computer, and print it on A4 at 100 %.",),
    ("For one page alone, open that page and print it; what is folded is printed open.",),
    ("Look at the edge of a sheet: it says which edition it is. Keep sheets of one edition together.",),
    ("When the next edition comes, take the old sheets and cards out and destroy them.",),
)  # fmt: skip


def single_file_name(vessel: str, taken: Iterable[str] = ()) -> str:
    """The name of the file, after the vessel, in letters that every phone and memory stick takes.

    Args:
        vessel: Her name.
        taken: Paths of pages, none of which it may cover.

    >>> single_file_name("Skerry Light"), single_file_name("Åse", ["ase-handbook"])
    ('skerry-light-handbook.html', 'ase-handbook-whole.html')
    """
    plain = unicodedata.normalize("NFKD", vessel.casefold()).encode("ascii", "ignore").decode()
    words = [*re.findall(r"[a-z0-9]+", plain), "handbook"]
    while "-".join(words) in {path.casefold() for path in taken}:
        words.append("whole")
    return "-".join(words) + ".html"


def binder_name(name: str) -> str:
    """The file of a binder, from the root of the site.

    >>> binder_name("whole-book")
    'binder/whole-book.html'
    """
    return f"{BINDERS}/{name}.html"


def take_along_page(handbook: Handbook, taken: Iterable[str], *, outputs: bool) -> Page:
    """The page about what can be taken along.

    Args:
        handbook: What is published.
        taken: Paths of all other pages.
        outputs: Whether this build writes the one file and the binders.
    """
    one_file = single_file_name(handbook.vessel, (*taken, TAKE_ALONG)) if outputs else ""
    blocks = (
        *_things(handbook, one_file, binders=outputs),
        *(_phone() if one_file else ()),
        Heading("Onto paper"),
        Bullets(ON_PAPER, ordered=True),
    )
    plain = Review("", trusted=True)
    return Page(
        TAKE_ALONG, TAKE_ALONG, "Take it with you", "how to", plain, ident="take along", blocks=blocks
    )  # fmt: skip


def _phone() -> Iterator[Block]:
    yield Heading("Onto a phone")
    yield Bullets(ON_A_PHONE, ordered=True)
    yield Paragraph((NOT_THE_FOLDER,))


def _things(handbook: Handbook, one_file: str, *, binders: bool) -> Iterator[Block]:
    """What there is, what it is for, and where."""
    if one_file:
        yield Heading("The whole handbook in one file")
        yield Paragraph(
            (
                Download(one_file, one_file),
                ": for a phone, a tablet, a memory stick. Every page, drawing and photograph, Find and the"
                " ticks of procedures are in it. It needs no network and nothing beside it.",
            )
        )
    if binders and handbook.binders:
        yield Heading("Books to print")
        yield Paragraph(("For a shelf aboard: in the order it is needed, emergencies first.",))
        yield Bullets(
            tuple((Download(binder_name(one.name), one.title),) for one in handbook.binders)
        )
    cards = sum(page.kind == "quick card" for page in handbook.pages)
    if cards:
        many = "1 card" if cards == 1 else f"{cards} cards"
        yield Heading("Quick cards")
        yield Paragraph(
            (
                f"To hang where the work is done, one side of A5 each: {many}, ",
                Link(CARDS, "listed with the places they hang"),
                ". They are printed from an issued edition, never from a working copy.",
            )
        )
    if handbook.labels:
        yield Heading("Lists of labels")
        yield Paragraph(("For whoever engraves them: ", Link(LABELS, "what is in a list"), "."))
        yield Bullets(tuple((Download(path, path),) for path in handbook.labels))
    yield Heading("The numbers")
    yield Bullets(
        (
            (Download(CSV, CSV), ": every number with its unit and where it is from, for a spreadsheet",),
            (Download(JSON, JSON), ": the same, for a program"),
        )
    )  # fmt: skip
    yield Paragraph(
        (
            Strong("A copy does not learn of what changes afterwards."),
            " Whoever keeps one goes on the list of holders, so that notices and the next edition reach it.",
        )
    )
