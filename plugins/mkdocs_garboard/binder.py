"""Binders: in the site, one document a system and one of everything; by command, also as PDF and on A5."""

from pathlib import Path

from garboard.errors import GarboardError
from garboard.handbook import Handbook
from garboard.views.binder_plan import BinderOrder, BinderPlan
from garboard.views.page import Page
from mkdocs_garboard.joined import Files, data_of, inlined
from mkdocs_garboard.manual import Manual
from mkdocs_garboard.photos import Photos
from mkdocs_garboard.print_book import Book, cards_html
from mkdocs_garboard.print_paper import SIZES, Size
from mkdocs_garboard.print_pdf import print_pdf, sheets_of
from mkdocs_garboard.take_along import BINDERS, binder_name

__all__ = ["write_binder", "write_binders"]

ROUNDS = 3
"""The contents are filled in after the first; that they moved nothing is seen after the second."""


def write_binders(manual: Manual, site: Path) -> None:
    """Write every binder into a finished site, as documents that any browser prints on A4.

    Args:
        manual: The handbook as it was drawn.
        site: The finished site.
    """
    handbook, photos = manual.handbook, inlined(site)
    bodies: dict[str, str] = {}

    def draw(page: Page) -> str:
        """The body of a page, drawn once for all the books it is in."""
        if page.path not in bodies:
            bodies[page.path] = manual.draw(page)
        return bodies[page.path]

    for plan in handbook.binders:
        (site / BINDERS).mkdir(exist_ok=True)
        book = Book(plan, handbook.vessel, handbook.copy, draw, photos)
        (site / binder_name(plan.name)).write_text(book.html(SIZES["a4"]), "utf-8")


def write_binder(
    handbook: Handbook, content: Path, to: Path, order: BinderOrder
) -> tuple[str, ...]:
    """Write one binder, or the cards that belong to it.

    Args:
        handbook: What is drawn.
        content: The folder it was read from, with its photographs.
        to: A folder for it.
        order: What is wanted.

    Returns:
        What was written, a line a file.

    Raises:
        GarboardError: There is no card, or it cannot be printed.
    """
    plan = next(one for one in handbook.binders if one.system == order.system)
    photos = Photos(content)
    manual = Manual(handbook, photos, own_face=True, serving=False)
    if order.cards:
        return _cards(manual, plan, _photos(photos), to, pdf=order.pdf)
    book = Book(plan, handbook.vessel, handbook.copy, manual.draw, _photos(photos))
    size = SIZES[order.size]
    document = to / f"{plan.name}-{order.size}.html"
    document.write_text(book.html(size), "utf-8")
    if not order.pdf:
        return (f"{document}: {len(plan.pages)} pages of the handbook, to print on {size.name}",)
    pdf = document.with_suffix(".pdf")
    sheets = _printed(book, size, document, pdf)
    return (str(document), f"{pdf}: {sheets} pages of {size.name}, {_size(pdf)}")


def _cards(
    manual: Manual, plan: BinderPlan, photos: Files, to: Path, *, pdf: bool
) -> tuple[str, ...]:
    """Write the quick cards of a plan.

    Raises:
        GarboardError: There is none, or they cannot be printed.
    """
    if not plan.cards:
        raise GarboardError(
            f"there is no quick card of {plan.title!r}; name one under cards: in handbook.yml"
        )
    document = to / f"{plan.name}-cards.html"
    title = f"{manual.handbook.vessel}, quick cards: {manual.copy.name}"
    document.write_text(cards_html(title, plan.cards, manual.draw, photos), "utf-8")
    if not pdf:
        return (f"{document}: {len(plan.cards)} cards, to print on A5",)
    printed = document.with_suffix(".pdf")
    print_pdf(document, printed)
    sheets, _ = sheets_of(printed)
    return (str(document), f"{printed}: {sheets} pages of A5, {_size(printed)}")


def _size(file: Path) -> str:
    return f"{file.stat().st_size / 1e6:.1f} MB"


def _photos(photos: Photos) -> Files:
    """Photos as data, as soon as pages have asked for them."""
    made: dict[str, bytes] = {}

    def give(uri: str) -> str | None:
        if uri not in made:
            made.update(photos.published())
        return data_of(uri, made[uri]) if uri in made else None

    return give


def _printed(book: Book, size: Size, document: Path, pdf: Path) -> int:
    """Print a book until its contents name the sheets that its pages stand on.

    Raises:
        GarboardError: It cannot be printed, or the contents move what they name.
    """
    named: dict[str, int] = {}
    for _ in range(ROUNDS):
        document.write_text(book.html(size, named), "utf-8")
        print_pdf(document, pdf)
        sheets, on = sheets_of(pdf)
        found = {entry.place: on.get(entry.place, 0) for entry in book.entries}
        if found == named:
            return sheets
        named = found
    raise GarboardError(f"{pdf} is written, but its contents do not name the right sheets")
