"""A book of many pages in one document: cover, how to use it, contents, articles on their sheets.

It is made from pages as they are drawn for the screen, so that paper cannot say anything else. The
contents name sections in the document, and sheets where it is known on which each article begins.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from importlib.resources import files
from urllib.parse import unquote

from markupsafe import Markup
from selectolax.lexbor import LexborHTMLParser, LexborNode

from garboard.views.binder_plan import BinderPlan
from garboard.views.contents import IDENTIFIER
from garboard.views.page import Copy, Page, Table
from mkdocs_garboard.html import templates
from mkdocs_garboard.joined import Files, Joined, place, place_of, way
from mkdocs_garboard.policy import proof_of
from mkdocs_garboard.print_paper import Leaf, Size, leaves, paper
from mkdocs_garboard.which_copy import which

__all__ = ["Book", "Contents", "Printed", "cards_html"]

STYLES = ("garboard.css", "binder.css")
POLICY = "default-src 'none'; img-src data:; style-src {style}; base-uri 'none'; form-action 'none'"
NAMED = frozenset(("plate", "value", "source", "id", "report"))
"""Looks of links whose words say already where they lead, or that lead nowhere on paper."""
TAGS = "registers/tags"
A_TO_Z = "registers/a-to-z"
BROAD, CROWDED, WIDE = 5, 7, 9
"""A table of so many columns is printed as lists of label and value on A5, one less where a cell has more than
`WORDY` letters; on A4 too, where one has; across the sheet on A4."""
WORDY = 60
SHORT = 13
"""Letters of a cell that is not parted into lines: a number with its unit, a word or two."""
LONG = 15
"""Letters of a word that may be parted anywhere, as a digest or an address is."""
LISTED = ".listing, .scroll:not(.log-sheet + *), h2 + .fold"
"""Lists and tables, and a heading that has nothing but a fold; the list of a log sheet is for a screen."""
DRAWN = ".schematic"
NOTHING = "\N{EN DASH}"
"""What a cell says in which nothing stands; a list of label and value leaves it out."""

Draw = Callable[[Page], str]


@dataclass(frozen=True, slots=True)
class Entry:
    """A line of the contents."""

    section: str
    page: Page
    place: str


@dataclass(frozen=True, slots=True)
class Contents:
    """A chapter in the contents."""

    number: int
    title: str
    entries: tuple[Entry, ...]
    unwritten: tuple[str, ...]
    """Titles of pages on which nothing is recorded yet, and which are not printed."""


@dataclass(frozen=True, slots=True)
class Printed:
    """A leaf with its articles."""

    leaf: Leaf
    articles: tuple[Markup, ...]


class Book:
    """One book on its way to paper; its articles are drawn once, however often it is written."""

    def __init__(
        self, plan: BinderPlan, vessel: str, copy: Copy, draw: Draw, files_of: Files
    ) -> None:
        """Draw every article.

        Args:
            plan: Which pages, in which order.
            vessel: Its name.
            copy: The edition it is of, or a working copy.
            draw: Draws the body of a page.
            files_of: What stands for a photo, by its path in the site.
        """
        self.plan = plan
        self.vessel = vessel
        self.copy = copy
        self.chapters = tuple(
            Contents(
                number,
                chapter.title,
                tuple(
                    Entry(f"{number}.{below}", page, place(page.path))
                    for below, page in enumerate(chapter.pages, 1)
                ),
                chapter.unwritten,
            )
            for number, chapter in enumerate(plan.chapters, 1)
        )
        self._sections = {entry.page.path: entry.section for entry in self.entries}
        self._tags = frozenset(
            row.anchor
            for page in plan.pages
            if page.key == TAGS
            for block in page.blocks
            if isinstance(block, Table)
            for row in block.rows
        )
        joined = Joined(self._sections, files_of, self._elsewhere)
        self._articles = {
            entry.page.path: self._told(joined.article(entry.page.path, draw(entry.page)), entry)
            for entry in self.entries
        }
        self._leaves = leaves((entry.section, entry.page) for entry in self.entries)

    @property
    def title(self) -> str:
        """For the head of the document."""
        return f"{self.vessel}, {self.plan.title}: {self.copy.name}"

    @property
    def elsewhere(self) -> dict[str, list[str]]:
        """What is not in the book, by where it is."""
        found: dict[str, list[str]] = {}
        for one in self.plan.left_out:
            found.setdefault(one.where, []).append(one.what)
        return found

    @property
    def entries(self) -> Iterator[Entry]:
        """Every line of the contents."""
        return (entry for chapter in self.chapters for entry in chapter.entries)

    def html(self, size: Size, sheets: Mapping[str, int] | None = None) -> str:
        """The whole document.

        Args:
            size: Of the paper.
            sheets: On which sheet each place begins; left out, the contents name sections alone.
        """
        foot = f"{self.vessel} · {self.copy.line}"
        style = _style() + paper(self._leaves, size, f"{self.vessel} · {self.plan.title}", foot)
        return (
            templates()
            .get_template("binder.html")
            .render(
                book=self,
                size=size,
                sheets=sheets,
                style=Markup(style),  # noqa: S704 - ours, and quoted
                policy=_policy(style),
                which=which(self.copy),
                leaves=[
                    Printed(leaf, tuple(self._articles[page.path] for page in leaf.pages))
                    for leaf in self._leaves
                ],
            )
        )

    def _elsewhere(self, path: str, _anchor: str) -> str | None:
        """Of what has no page here, where it is told: the page of its system, or its row among the tags."""
        if told := self.plan.told_under.get(path):
            return way(told)
        tag = path.removeprefix("id/")
        return f"#{place(TAGS, tag)}" if tag in self._tags else None

    def _lead(self, link: LexborNode, page: Page) -> None:
        """Say beside a link which section it leads to; where its words print an id, beside that."""
        path, _ = place_of(unquote(str(link.attributes["href"])[1:]))
        section = self._sections.get(path)
        looks = NAMED.intersection((link.attributes.get("class") or "").split())
        printed = link if "data-id" in link.attributes else link.css_first("[data-id]")
        if (
            not section
            or path in (page.path, TAGS)
            or (looks and not (looks == {"id"} and page.key == A_TO_Z))
        ):
            return
        if printed:
            printed.attrs["data-id"] = f"{printed.attributes['data-id']}, {section}"
        elif looks or page.key == A_TO_Z or not IDENTIFIER.match(link.text()):
            link.attrs["data-section"] = section

    def _told(self, article: str, entry: Entry) -> Markup:
        """An article in which links say the section they lead to, and wide tables lie across."""
        body = LexborHTMLParser(article).body
        if (
            body is None or body.child is None
        ):  # pragma: no cover - the parser gives every document one
            return Markup(article)  # noqa: S704 - drawn and joined by us
        sheet = body.child
        for link in sheet.css("a[href^='#']"):
            self._lead(link, entry.page)
        for table in sheet.css("table"):
            _laid(table)
        _foot_before_list(sheet)
        return Markup(sheet.html or "")  # noqa: S704 - drawn and joined by us


def _laid(table: LexborNode) -> None:
    """Lay a table for paper: across the sheet, as lists of label and value, or in its columns."""
    head = table.css_first("tr")
    columns = len(head.css("th, td")) if head else 0
    cells = table.css("td")
    longest = max((len(cell.text()) for cell in cells), default=0)
    looks = [table.attributes.get("class") or ""]
    if columns >= BROAD or (columns == BROAD - 1 and longest > WORDY):
        looks.append("broad")
    if columns > CROWDED:
        looks.append("crowded")
    if CROWDED <= columns < WIDE and longest > WORDY:
        looks.append("run-on")
    table.attrs["class"] = " ".join(looks).strip()
    if columns >= WIDE and table.parent:
        table.parent.attrs["class"] = "scroll wide"
    for cell in cells:
        words = cell.text().strip()
        short = len(words) <= SHORT and columns < CROWDED
        long = any(len(word) > LONG for word in words.split())
        look = "nothing" if words == NOTHING else "long" if long else "short" if short else ""
        cell.attrs["class"] = f"{cell.attributes.get('class') or ''} {look}".strip()


def _foot_before_list(sheet: LexborNode) -> None:
    """Set the foot of an article before the first list or table where it ends with one, or before the drawings.

    Lists in columns, and rows of a table, are filled to the end of a sheet, and a drawing lies across: nothing
    keeps a foot with the last of them, and it would stand on the next sheet alone.
    """
    parts = list(sheet.iter())
    if len(parts) < 2 or not parts[-1].css_matches(".foot"):
        return
    listed, drawn = ([part.css_matches(what) for part in parts] for what in (LISTED, DRAWN))
    if listed[-2]:
        first = listed.index(True)
        first -= parts[first - 1].tag == "h2"
    elif drawn[-2]:
        first = len(parts) - 1 - [*drawn[-2::-1], False].index(False)
    else:
        return
    parts[first].insert_before(parts[-1])
    parts[-1].decompose()


def cards_html(title: str, cards: Iterable[Page], draw: Draw, files_of: Files) -> str:
    """Quick cards in one document, each as its page prints it.

    Args:
        title: For the head of the document.
        cards: Their pages.
        draw: Draws the body of a page.
        files_of: What stands for a photo, by its path in the site.
    """
    pages = tuple(cards)
    joined = Joined([page.path for page in pages], files_of)
    style = _style()
    return (
        templates()
        .get_template("binder_cards.html")
        .render(
            title=title,
            style=Markup(style),  # noqa: S704 - ours
            policy=_policy(style),
            articles=[Markup(joined.article(page.path, draw(page))) for page in pages],  # noqa: S704
        )
    )


def _policy(style: str) -> str:
    """What a document may load: its own style, pictures that stand in it, and nothing else."""
    return POLICY.format(style=proof_of(style))


def _style() -> str:
    assets = files("mkdocs_garboard") / "theme" / "assets"
    return "".join((assets / name).read_text("utf-8") for name in STYLES)
