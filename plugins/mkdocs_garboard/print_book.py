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
from garboard.views.page import Copy, Page, Table
from mkdocs_garboard.html import templates, which
from mkdocs_garboard.joined import Files, Joined, place, place_of
from mkdocs_garboard.policy import proof_of
from mkdocs_garboard.print_paper import Leaf, Size, leaves, paper

__all__ = ["Book", "Contents", "Printed", "cards_html"]

STYLES = ("garboard.css", "binder.css")
POLICY = "default-src 'none'; img-src data:; style-src {style}; base-uri 'none'; form-action 'none'"
NAMED = ".plate, .value, .source, .id, [data-id], .report"
"""Links whose words say already where they lead, or that lead nowhere on paper."""
TAGS = "registers/tags"
BROAD, WIDE = 5, 9
"""A table of so many columns is printed as lists of label and value on A5; across the sheet on A4."""

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
        """A part has no page here; its row in the register of tags says where it is."""
        tag = path.removeprefix("id/")
        return f"#{place(TAGS, tag)}" if tag in self._tags else None

    def _told(self, article: str, entry: Entry) -> Markup:
        """An article in which links say the section they lead to, and wide tables lie across."""
        body = LexborHTMLParser(article).body
        if (
            body is None or body.child is None
        ):  # pragma: no cover - the parser gives every document one
            return Markup(article)  # noqa: S704 - drawn and joined by us
        sheet = body.child
        for link in sheet.css("a[href^='#']"):
            path, _ = place_of(unquote(str(link.attributes["href"])[1:]))
            section = self._sections.get(path)
            if section and path != entry.page.path and not link.css_matches(NAMED):
                link.attrs["data-section"] = section
        for table in sheet.css("table"):
            head = table.css_first("tr")
            holder = table.parent
            columns = len(head.css("th, td")) if head else 0
            if columns >= BROAD:
                table.attrs["class"] = f"{table.attributes.get('class') or ''} broad"
            if columns >= WIDE and holder:
                holder.attrs["class"] = "scroll wide"
        _foot_before_list(sheet)
        return Markup(sheet.html or "")  # noqa: S704 - drawn and joined by us


def _foot_before_list(sheet: LexborNode) -> None:
    """Set the foot of an article before the first list or table where it ends with one.

    Lists in columns, and rows of a table, are filled to the end of a sheet: nothing keeps a foot with
    the last of their lines, and it would stand on the next sheet alone.
    """
    parts = list(sheet.iter())
    listed = [part.css_matches(".listing, .scroll") for part in parts]
    if len(parts) < 2 or not parts[-1].css_matches(".foot") or not listed[-2]:
        return
    first = listed.index(True)
    before = parts[first - 1] if parts[first - 1].tag == "h2" else parts[first]
    before.insert_before(parts[-1])
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
