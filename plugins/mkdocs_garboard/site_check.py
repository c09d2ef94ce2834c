"""A look at the finished site: what was to be said is said, and every link lands.

Another plugin, a theme or a setting may stand between a page as drawn and a page as written. What is
checked here is what a reader will open: the words of review, the messages, links with their exact
letters, pictures with their text, and nothing from anywhere else.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from html import unescape
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import unquote

from selectolax.lexbor import LexborHTMLParser

from garboard.views.contents import Entry
from garboard.views.page import Fold, Message, Page, Steps
from mkdocs_garboard.joined import place

__all__ = ["SiteCheck", "off_site"]

TAG = re.compile(
    r"<([a-zA-Z][\w-]*)((?:\s+[^<>\"'=\s]+(?:=(?:\"[^\"]*\"|'[^']*'|[^\s\"'>]+))?)*)\s*/?>"
)
PART = re.compile(r"([^\s=\"'<>]+)(?:=(?:\"([^\"]*)\"|'([^']*)'|([^\s\"'>]+)))?")
ANY_TAG = re.compile(r"<(script|style)\b.*?</\1>|<[^>]*>", re.DOTALL)
LOADED = {"src", "srcset", "poster", "data", "action", "formaction", "background"}
SHEET = re.compile(r'<article class="sheet.*</article>', re.DOTALL)
SEAL = re.compile(r"#[0-9a-f]{24}\.\d+")
STYLED = re.compile(r"(?:url\(|@import)\s*[\"']?\s*([^\"')\s;]+)")
STYLE = re.compile(r"<style[^>]*>(.*?)</style>", re.DOTALL)
NOT_LOADED = ("canonical", "next", "prev", "author", "license")
"""Links of a page's head that lead somewhere and load nothing."""
ONE_FILE = 'class="one-file"'
"""How a file that holds all pages is known."""
OFF_SITE = re.compile(r"(?:[a-zA-Z][a-zA-Z0-9+.-]*:|//)")


class SiteCheck:
    """Reads every page of a site once and says what is wrong with each.

    Under a theme that is not ours only the sheets are looked at: what a theme puts around them is
    the choice of whoever took it.
    """

    def __init__(self, site: Path, *, own_face: bool = True) -> None:
        self._site = site
        self._own_face = own_face
        self._files = {
            path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()
        }
        self._ids: dict[str, Counter[str]] = {}
        self._tags: dict[str, list[tuple[str, dict[str, str]]]] = {}
        self._text: dict[str, str] = {}

    def faults(self, pages: Iterable[Page], entries: Iterable[Entry] = ()) -> Iterator[str]:
        """Everything that is wrong, page by page, then with what the Find box offers."""
        manifest = {f"{page.path}.html": page for page in pages}
        for name in manifest.keys() - self._files:
            yield f"{name}: the page is not in the site"
        for name in sorted(self._files):
            if name.endswith(".html") and name != "404.html":
                self._read(name)
        for name in sorted(self._tags):
            yield from (f"{name}: {fault}" for fault in self._page(name, manifest.get(name)))
        for name in sorted(name for name in self._tags if ONE_FILE in self._text[name]):
            yield from (f"{name}: {fault}" for fault in self._whole(name, manifest.values()))
        for entry in entries:
            if fault := self._landing(f"{entry.path}.html", entry.anchor):
                yield f"Find: {entry.title}: {fault}"

    def _read(self, name: str) -> None:
        text = (self._site / name).read_text("utf-8")
        sheet = SHEET.search(text)
        looked_at = sheet[0] if sheet and not self._own_face else text
        tags = [(tag.lower(), _parts(rest)) for tag, rest in TAG.findall(looked_at)]
        self._tags[name] = tags
        self._ids[name] = Counter(parts["id"] for _, parts in tags if "id" in parts)
        self._text[name] = text

    def _page(self, name: str, page: Page | None) -> Iterator[str]:
        for anchor, times in self._ids[name].items():
            if times > 1:
                yield f"the id {anchor} stands {times} times"
        for tag, parts in self._tags[name]:
            yield from self._tag(name, tag, parts)
        if SEAL.search(self._text[name]):
            yield "a mark was left where a link belongs"
        if page:
            written = letters(self._text[name])
            yield from (
                f"does not say: {text}" for text in must_say(page) if letters(text) not in written
            )

    def _whole(self, name: str, pages: Iterable[Page]) -> Iterator[str]:
        """What a file that holds the whole handbook does not say in the article of its page."""
        sheets = LexborHTMLParser(self._text[name]).css("article.sheet")
        said = {sheet.attributes.get("id"): "".join(sheet.text().split()) for sheet in sheets}
        for page in pages:
            written = said.get(place(page.path))
            if written is None:
                yield f"the page {page.path} is not in it"
                continue
            yield from (
                f"{page.path} does not say: {text}"
                for text in must_say(page)
                if letters(text) not in written
            )

    def _tag(self, name: str, tag: str, parts: dict[str, str]) -> Iterator[str]:
        if tag == "img" and not parts.get("alt", "").strip():
            yield f"picture {parts.get('src', '')} has no text"
        if parts.get("class") == "photograph" and not parts.get("aria-label", "").strip():
            yield "a photograph has no text"
        for key in parts.keys() & (LOADED | {"href"}):
            yield from self._address(name, tag, key, parts[key])

    def _address(self, name: str, tag: str, key: str, address: str) -> Iterator[str]:
        if OFF_SITE.match(address):
            if not address.startswith("data:"):
                yield f"{tag} {key} leads off the handbook: {address}"
            return
        path, _, anchor = address.partition("#")
        target = normpath(join(dirname(name), unquote(path.partition("?")[0]))) if path else name
        if fault := self._landing(target, unquote(anchor)):
            yield f"link to {address}: {fault}"

    def _landing(self, target: str, anchor: str) -> str:
        """What is wrong with a place that something leads to, or nothing."""
        if target not in self._files:
            return "there is no such page"
        if anchor and target in self._ids and anchor not in self._ids[target]:
            return "there is no such place on that page"
        return ""


def off_site(site: Path) -> Iterator[str]:
    """Everything that a site loads from elsewhere, whoever's look it has: pages and styles, file by file.

    A link is nothing that is loaded; a script may ask for anything, and our own pages forbid it that.
    """
    for file in sorted(site.rglob("*")):
        name = file.relative_to(site).as_posix()
        if file.suffix == ".html":
            loaded = _loaded_by_page(file.read_text("utf-8"))
        elif file.suffix == ".css":
            loaded = (one[1] for one in STYLED.finditer(file.read_text("utf-8")))
        else:
            continue
        for address in dict.fromkeys(loaded):
            if OFF_SITE.match(address) and not address.startswith(("data:", "file:")):
                yield f"{name} loads {address} [needs-network]"


def _loaded_by_page(text: str) -> Iterator[str]:
    for tag, rest in TAG.findall(text):
        parts = _parts(rest)
        yield from (parts[key] for key in sorted(parts.keys() & LOADED))
        if tag.lower() == "link" and parts.get("rel", "") not in NOT_LOADED:
            yield parts.get("href", "")
    for style in STYLE.findall(text):
        yield from (one[1] for one in STYLED.finditer(style))


def must_say(page: Page) -> Iterator[str]:
    """The words that may never be missing from a page."""
    if page.review.words:
        yield page.review.words
    yield from filter(None, (page.copy.words, page.copy.beside, page.copy.afterwards))
    for message in messages(page):
        yield message.word
        for cell in (message.hazard, message.harm, message.avoid):
            yield from (run for run in cell if isinstance(run, str))


def messages(page: Page) -> Iterator[Message]:
    """Every safety message of a page, at its head or before a step."""
    yield from page.messages
    row = list(page.blocks)
    while row:
        block = row.pop(0)
        if isinstance(block, Message):
            yield block
        elif isinstance(block, Steps):
            yield from (step.message for step in block.steps if step.message)
        elif isinstance(block, Fold):
            row[:0] = block.blocks


def letters(html: str) -> str:
    """The text of a page without its tags and its white space, which a theme may set as it likes."""
    return "".join(unescape(ANY_TAG.sub("", html)).split())


def _parts(rest: str) -> dict[str, str]:
    return {
        name.lower(): unescape(double or single or bare)
        for name, double, single, bare in PART.findall(rest)
    }
