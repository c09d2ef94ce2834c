"""Blocks to HTML: every block of a page drawn by a template of its own, everything in it escaped.

The templates are ours and fixed; what is on a page comes in as data. Two things are not escaped:
prose, which has been cleaned, and drawings and formulas, which the core made itself.
"""

import re
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from hashlib import sha256
from itertools import pairwise
from typing import Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from garboard.errors import Diagnostic, Severity, Where
from garboard.views.contents import IDENTIFIER
from garboard.views.page import (
    AgainstIt,
    Block,
    Calculation,
    Cell,
    Copy,
    Download,
    Drawing,
    Heading,
    HowSure,
    Link,
    Message,
    MessagesHere,
    Page,
    Photo,
    Plate,
    Prose,
    QuickCard,
    Run,
    Schematic,
    Shown,
    Steps,
    Strong,
    WorkedLine,
)
from mkdocs_garboard.anchors import Anchors, prose_of
from mkdocs_garboard.links import Links, as_value, unbroken
from mkdocs_garboard.pages import FIND, REPORT
from mkdocs_garboard.photos import Picture
from mkdocs_garboard.prose import Fault, ProseWriter, references
from mkdocs_garboard.qr import code_of
from mkdocs_garboard.stretches import Stretch, stretches
from mkdocs_garboard.which_copy import clock, which

__all__ = ["Sheet", "templates"]

VALUE_OF = re.compile(r"\.[A-Za-z]")
"""How the name of a value goes on behind the tag of its part."""
CITED = re.compile(r"\[(\d{1,4})\]")
AT_HEAD: Final = 3
"""So many notices stand at the head in full; a STOP always does."""
SMALL_SHEETS: Final = ("procedure", "quick card")
"""Page kinds that are printed on A5; an isolation is not: it has its drawing with it."""


@cache
def templates() -> Environment:
    """Our own templates, with everything escaped and nothing left undefined."""
    made = Environment(
        loader=PackageLoader("mkdocs_garboard", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.filters["together"] = as_value
    made.filters["unbroken"] = unbroken
    made.globals["zip"] = zip
    return made


class Sheet:
    """One page of the handbook while it is drawn."""

    def __init__(
        self, page: Page, prose: ProseWriter, vessel: str, tell: Callable[[Fault], None]
    ) -> None:
        self.page = page
        self.vessel = vessel
        self._prose = prose
        self._links: Links = prose.links
        self._tell = tell
        self._last_said = page.title
        self._anchors = Anchors(page)
        self._references = references(prose_of(page.blocks))

    def html(self) -> Markup:
        """The whole page."""
        return self._draw("page.html", page=self.page)

    def blocks(self, blocks: Iterable[Block]) -> Markup:
        """A row of blocks."""
        return Markup("\n").join(self.block(block) for block in blocks)

    def block(self, block: Block | Message | HowSure) -> Markup:
        """One block."""
        if isinstance(block, Prose):
            return self._prose.write(block, self.page.path, self._anchors.name, self._references)
        return self._draw(f"blocks/{type(block).__name__.lower()}.html", block=block)

    def runs(self, cell: Cell) -> Markup:
        """Runs of text: escaped, names as links, tags as label plates, values led to their owner."""
        made = [self._run(run) for run in cell]
        for place, (run, after) in enumerate(pairwise(cell)):
            if isinstance(run, Plate) and isinstance(after, str) and VALUE_OF.match(after):
                made[place] += Markup("<wbr>")  # on a phone a plate fills the line
        return Markup("").join(made)

    def named(self, text: str) -> Markup:
        """A line of our own, with the names in it as links, and `[3]` led to the third source."""
        return Markup(CITED.sub(self._cited, self._links.named(text, self.page.path)))  # noqa: S704

    def linked(self, link: Link) -> Markup:
        """A link; where it leads nowhere, its words alone."""
        way = self.way(link.target)
        if way is None:
            return Markup("<span>{}</span>").format(link.text)
        beside = "" if way.startswith("#") else self.beside(link)
        return Markup('<a href="{}"{}>{}</a>').format(way, beside, unbroken(link.text))

    @staticmethod
    def beside(link: Link) -> Markup:
        """On paper a link prints the id it leads to, where its words do not name it already."""
        key = link.target.partition("#")[0]
        if IDENTIFIER.fullmatch(key) and key not in link.text:
            return Markup(' data-id="{}"').format(key)
        return Markup("")

    def way(self, target: str) -> str | None:
        """The way to what a key names; a link that leads nowhere is reported."""
        way = self._links.to(target, self.page.path)
        if way is None:
            self.lost(f"link to {target} leads nowhere", "broken-link")
        return way

    @property
    def report(self) -> str:
        """The way to the page that says how to report a problem."""
        return self._links.to(REPORT, self.page.path) or self._links.way(self.page.path, REPORT)

    @property
    def small(self) -> bool:
        """Whether this page is printed on A5."""
        return self.page.kind.casefold() in SMALL_SHEETS

    @property
    def grave(self) -> list[Diagnostic]:
        """What stands against the page and holds it up, gravest first."""
        found = [
            item for item in self.page.standing if item.severity in (Severity.STOP, Severity.HOLD)
        ]
        return sorted(found, key=lambda item: item.severity.rank)

    @property
    def hurried(self) -> bool:
        """Whether the page is read in a hurry: then its head is short and the rest stands below."""
        return any(isinstance(block, AgainstIt) for block in self.page.blocks)

    @property
    def messages_at_head(self) -> bool:
        """Whether the safety messages stand before everything else, and not at a place of their own."""
        return not any(isinstance(block, MessagesHere) for block in self.page.blocks)

    def offers(self, target: str) -> bool:
        """Whether a way in is there: a search is left out under a theme that brings its own."""
        return target != FIND or self._links.find(FIND) is not None

    @property
    def at_head(self) -> list[Diagnostic]:
        """The notices at the head of the page: every STOP, and HOLDs while there are few."""
        return [
            item
            for place, item in enumerate(self.grave)
            if place < AT_HEAD or item.severity is Severity.STOP
        ]

    @property
    def standing(self) -> list[Diagnostic]:
        """All that stands against the page, gravest first."""
        return sorted(self.page.standing, key=lambda item: item.severity.rank)

    @staticmethod
    def stretches(block: Steps) -> Iterator[Stretch]:
        """Steps that stand together: in one place, and under one message where one begins them."""
        return stretches(block)

    def kept(self, block: Steps) -> Markup:
        """What ticks are kept under on the reader's device: they belong to these steps of this edition."""
        copy = self.page.copy
        stamp = sha256(repr(block).encode()).hexdigest()[:16]
        made = Markup(' data-vessel="{}" data-copy="{}" data-page="{}" data-stamp="{}"')
        return made.format(
            self.vessel, copy.number, self.page.key, f"{copy.issued} {stamp}".strip()
        )

    def just_said(self, caption: str) -> bool:
        """Whether a caption only repeats the heading it stands under, or the title of the page."""
        return caption.casefold() == self._last_said.casefold()

    def anchor(self, heading: Heading) -> str:
        """The id of a heading."""
        self._last_said = heading.text
        return heading.anchor or self._anchors.name(heading.text)

    @staticmethod
    def which(copy: Copy) -> Markup:
        """Which copy of the handbook the page belongs to."""
        return which(copy)

    @staticmethod
    def clock(copy: Copy) -> Markup:
        """The days that the reader's own clock is held against."""
        return clock(copy)

    def new_id(self, words: str) -> str:
        """An id for a part of a block."""
        return self._anchors.name(words)

    def picture(self, photo: Photo) -> Picture | None:
        """A photo as published; one that is missing is reported."""
        picture = self._prose.photos.want(photo.path)
        if picture is None:
            self.lost(f"there is no picture {photo.path}", "broken-link")
        if not photo.alt:
            self.lost(f"picture {photo.path} has no text", "image-without-text")
        return picture

    @property
    def messages(self) -> tuple[Message, ...]:
        """The safety messages at the head of the page; those of a card stand on the card."""
        carded = any(isinstance(one, QuickCard) and not one.refused for one in self.page.blocks)
        return () if carded else self.page.messages

    def written(self, card: QuickCard) -> Markup:
        """The contributed text of a card."""
        return self.block(Prose(card.text, card.where)) if card.text else Markup("")

    @staticmethod
    def code(text: str) -> Markup:
        """A text as a QR code."""
        return code_of(text)

    def file(self, uri: str) -> str:
        """The way to a file of the site."""
        return Links.file(self.page.path, uri)

    def drawing(self, block: Drawing | Schematic) -> Markup:
        """A drawing of the core, with its links led where they go."""

        def lead(found: re.Match[str]) -> str:
            way = self.way(found[1])
            return Markup('href="{}"').format(way) if way else Markup('role="img"')

        svg = re.sub(r'href="find:([^"]*)"', lead, block.svg)
        return Markup(svg)  # noqa: S704 - made by the core

    @staticmethod
    def trusted(mathml: str) -> Markup:
        """A formula as the core made it."""
        return Markup(mathml)  # noqa: S704 - made by the core

    @staticmethod
    def data(json: str) -> Markup:
        """JSON of the core inside a script element that no browser runs: nothing in it can end that."""
        plain = json.replace("&", r"\u0026").replace("<", r"\u003c").replace(">", r"\u003e")
        return Markup(plain)  # noqa: S704 - the signs that mark anything up are gone

    @staticmethod
    def answers(block: Calculation) -> list[WorkedLine]:
        """What a calculation was made for, then what is required of it and what it warns of."""
        values = [line for line in block.lines if not line.given and line.kind == "value"]
        made_for = [line for line in values if line.answer] or values[-1:]
        return made_for + [line for line in block.lines if line.kind != "value"]

    def lost(self, text: str, code: str) -> None:
        """Report what this page lost."""
        self._tell(Fault(Where(self.page.source_path or self.page.path), text, code))

    def _cited(self, found: re.Match[str]) -> str:
        if any(line.number == int(found[1]) for line in self.page.sources):
            return f'<a class="source" href="#source-{found[1]}">[{found[1]}]</a>'
        return found[0]

    def _run(self, run: Run) -> Markup:
        if isinstance(run, str):
            return self.named(run)
        if isinstance(run, Strong):
            return Markup("<strong>{}</strong>").format(self.named(run.text))
        if isinstance(run, Link):
            return self.linked(run)
        if isinstance(run, Download):
            return Markup('<a href="{}">{}</a>').format(self.file(run.path), run.text)
        if isinstance(run, Plate):
            return _plate(run.tag, self.way(run.tag))
        return self._shown(run)

    def _shown(self, run: Shown) -> Markup:
        words = escape(as_value(run.text))
        text = Markup("<strong>{}</strong>").format(words) if run.strong else words
        way = self.way(run.address)
        return Markup('<a class="value" href="{}">{}</a>').format(way, text) if way else text

    def _draw(self, name: str, **what: object) -> Markup:
        return Markup(templates().get_template(name).render(sheet=self, **what))  # noqa: S704 - autoescaped


def _plate(tag: str, way: str | None) -> Markup:
    if way is None:
        return Markup('<span class="plate">{}</span>').format(tag)
    return Markup('<a class="plate" href="{}">{}</a>').format(way, tag)
