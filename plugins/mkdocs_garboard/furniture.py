"""What stands around a page in our own theme: the column, the bar, the paper, the policy.

The column lists the pages of one section only, and the rest by one link each: pages stay small, and
a build grows with the number of pages, not with its square.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from garboard.handbook import Handbook
from garboard.views.contents import Section
from garboard.views.page import Block, Calculation, Copy, Fold, Page, QuickCard, Steps
from mkdocs_garboard.html import templates
from mkdocs_garboard.links import Links
from mkdocs_garboard.pages import CONTENTS, FIND, keys_of, listed_title
from mkdocs_garboard.policy import proof_of
from mkdocs_garboard.take_along import TAKE_ALONG

__all__ = ["POLICY", "Furniture", "Surroundings", "quoted"]

POLICY = (
    "default-src 'none'; img-src 'self' file: data:; style-src 'self' file: {paper}; script-src 'self' file:;"
    " base-uri 'none'; form-action 'none'"
)
"""What a page may load: its own folder, and nothing from anywhere else; `file:` for a memory stick."""
HOME, ALARMS = "index", "registers/alarms"
BARE = (
    "@page{@top-left{content:none}@top-right{content:none}@bottom-left{content:none}"
    "@bottom-right{content:none}}"
)
"""A card has its title block and its foot inside its frame, and its margins are narrow."""
NEAR = 8
"""So many pages before and after are listed of a long section."""


@dataclass(frozen=True, slots=True)
class Item:
    """A line of the column."""

    title: str
    way: str
    current: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """The pages of one section, as the column lists them."""

    title: str
    pages: tuple[Item, ...]
    left_out: int
    """So many more are in the contents."""


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What the theme puts around one page."""

    vessel: str
    policy: str
    """Empty while pages are served for writing, where the reload script must run."""
    copy: Copy
    """Of which edition, or a working copy."""
    paper: Markup
    """Size of the sheet and its margin boxes, as a style of this page alone."""
    bar: tuple[Item, ...]
    column: Markup
    what_if: bool
    """Whether something on it may be changed by the reader, which takes a script more."""
    steps: bool
    """Whether something on it is ticked, which takes another."""


class Furniture:
    """Makes the surroundings of each page of one handbook."""

    def __init__(self, handbook: Handbook, links: Links, *, strict: bool) -> None:
        self._handbook = handbook
        self._links = links
        self._strict = strict
        self._titles = {page.key: page for page in handbook.pages}

    def around(self, page: Page) -> Surroundings:
        """The surroundings of a page."""
        paper = _paper(page)
        policy = POLICY.format(paper=proof_of(paper)) if self._strict else ""
        column = Markup(templates().get_template("column.html").render(self._column(page)))  # noqa: S704
        return Surroundings(
            self._handbook.vessel,
            policy,
            page.copy,
            Markup(paper),  # noqa: S704
            self._bar(page),
            column,
            _opened(page.blocks),
            any(isinstance(block, Steps) for block in page.blocks),
        )

    def _bar(self, page: Page) -> tuple[Item, ...]:
        """Back, Home, Find, Alarms; without scripts Back leads to the section's first page."""
        chain = self._chains.get(page.key, ())
        back = next(
            (first for item in reversed(chain) if (first := self._first(item)) != page.key), None
        )
        ways = (
            ("Back", self._to(back or HOME, page) or self._way(HOME, page)),
            ("Home", self._way(HOME, page)),
            ("Find", self._way(FIND, page)),
            ("Alarms", self._to(ALARMS, page) or self._way(CONTENTS, page)),
        )
        return tuple(Item(title, way) for title, way in ways)

    def _column(self, page: Page) -> dict[str, object]:
        chain = self._chains.get(page.key, ())
        shown = chain[:1] if len(chain) < 2 else (chain[0], chain[-1])
        return {
            "vessel": self._handbook.vessel,
            "finding": page.path == FIND,
            "home": self._way(HOME, page),
            "alarms": self._to(ALARMS, page),
            "contents": self._way(CONTENTS, page),
            "take_along": self._links.to(TAKE_ALONG, page.path),
            "groups": [group for item in shown if (group := self._group(item, page)).pages],
            "beside": self._openings(chain[0].sections if chain else (), page, chain[-1:]),
            "systems": self._openings(self._handbook.contents, page, chain[:1]),
        }

    def _openings(
        self, sections: Iterable[Section], page: Page, current: Iterable[Section]
    ) -> list[Item]:
        """Each section by its first page."""
        here = {id(item) for item in current}
        return [
            Item(item.title, way, current=id(item) in here)
            for item in sections
            if (first := self._first(item)) and (way := self._to(first, page))
        ]

    def _group(self, section: Section, page: Page) -> Group:
        """The pages of a section; of a long one those beside the page."""
        known = [key for key in section.pages if key in self._titles]
        at = known.index(page.key) if page.key in known else 0
        start = max(0, min(at - NEAR, len(known) - 2 * NEAR - 1))
        shown = known[start : start + 2 * NEAR + 1]
        ways = [
            (listed_title(self._titles[key]), self._to(key, page), key == page.key) for key in shown
        ]
        items = tuple(Item(title, way, here) for title, way, here in ways if way)
        return Group(section.title, items, len(known) - len(shown))

    @cached_property
    def _chains(self) -> dict[str, tuple[Section, ...]]:
        """The sections that each page stands in, outermost first."""
        chains: dict[str, tuple[Section, ...]] = {}

        def walk(item: Section, above: tuple[Section, ...]) -> None:
            for key in item.pages:
                chains.setdefault(key, (*above, item))
            for inner in item.sections:
                walk(inner, (*above, item))

        for item in self._handbook.contents:
            walk(item, ())
        return chains

    def _first(self, section: Section) -> str | None:
        return next((key for key in keys_of(section) if key in self._titles), None)

    def _to(self, key: str, page: Page) -> str | None:
        known = self._titles.get(key)
        return self._links.way(page.path, known.path) if known else None

    def _way(self, path: str, page: Page) -> str:
        return self._links.way(page.path, path)


def _opened(blocks: Iterable[Block]) -> bool:
    """Whether an opened calculation stands among blocks."""
    return any(
        bool(block.what_if)
        if isinstance(block, Calculation)
        else isinstance(block, Fold) and _opened(block.blocks)
        for block in blocks
    )


GROUND = (
    "@media screen{html{background:#fff}"
    "@media (prefers-color-scheme:dark){html:not([data-light]){background:#121212}}"
    "html[data-light=dim]{background:#121212}html[data-light=red]{background:#000}}"
)
"""What is painted before the stylesheet has come: nobody on watch is dazzled by a white sheet."""


def _paper(page: Page) -> str:
    """The ground, and the sheet a page is printed on: what each sheet of it says at its edge."""
    if any(isinstance(block, QuickCard) for block in page.blocks):
        return GROUND + BARE
    head = " · ".join(part for part in (page.ident, page.title) if part)
    state = page.review.words.partition(".")[0]
    foot = f"{page.copy.line} · {state}" if state else page.copy.line
    return (
        f"{GROUND}@page{{@top-left{{content:{quoted(head)}}}@top-right{{content:{quoted(page.copy.name)}}}"
        f"@bottom-left{{content:{quoted(foot)}}}}}"
    )


def quoted(text: str) -> str:
    """Text as a string of a stylesheet, in letters that can end neither string nor element."""
    plain = "".join(
        c if (c.isalnum() and c.isascii()) or c in " -,.:" else f"\\{ord(c):x} " for c in text
    )
    return f'"{plain}"'
