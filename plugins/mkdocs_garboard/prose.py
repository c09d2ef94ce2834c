"""Contributed Markdown to HTML: ids become links, values are filled in, the rest is kept in bounds.

Each piece of prose is read by itself, so that nothing left open in it can swallow what stands after
it: a comment or a fence that is never closed ends with its own piece. Only tables, sane lists and
fenced code are added to plain Markdown; attributes, snippets and templates are not.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.extensions.fenced_code import FencedCodeExtension
from markdown.extensions.sane_lists import SaneListExtension
from markdown.extensions.tables import TableExtension
from markdown.treeprocessors import Treeprocessor
from markupsafe import Markup, escape

from garboard.errors import Where
from garboard.views.page import Prose
from mkdocs_garboard.clean import clean, mark, removed, seal_of
from mkdocs_garboard.links import NAMED, Links, as_value, look_of
from mkdocs_garboard.photos import Photos

__all__ = ["Fault", "ProseWriter", "references"]

UNTOUCHED = frozenset(("a", "code", "pre"))
SCHEME = re.compile(r"([A-Za-z][A-Za-z0-9+.-]*):|//")
VALUE = re.compile(r"value:([^?#]+)(?:\?in=([^&#]+))?$")
DEFINED = re.compile(r"^ {0,3}\[([^\]^\n][^\]\n]*)\]:[ \t]*<?([^\s<>]+)", re.MULTILINE)
NOT_COMPUTED = "not computed"
HEADING = re.compile(r"<(h[2-6])>(.*?)</\1>", re.DOTALL)
WORDS_ONLY = re.compile(r"<[^>]*>")


def references(texts: Iterable[str]) -> dict[str, tuple[str, str]]:
    """Where `[words][label]` leads, for all pieces that a page's text was parted into.

    >>> references(["[maker]: ../maker.md"])
    {'maker': ('../maker.md', '')}
    """
    found = (match for text in texts for match in DEFINED.finditer(text))
    return {" ".join(match[1].split()).lower(): (match[2], "") for match in found}


@dataclass(frozen=True, slots=True)
class Fault:
    """What a page lost on its way: a link that leads nowhere, a picture that is not there."""

    where: Where
    text: str
    code: str

    def __str__(self) -> str:
        return f"{self.where}: {self.text} [{self.code}]"


class ProseWriter(Extension):
    """Writes contributed prose as clean HTML; one reader serves every page."""

    def __init__(self, links: Links, photos: Photos, tell: Callable[[Fault], None]) -> None:
        super().__init__()
        self.links = links
        self.photos = photos
        self._tell = tell
        self.path = ""
        self.where = Where("")
        self.seal = ""
        self.marks: list[str] = []
        tables = TableExtension(use_align_attribute=True)
        self._reader = Markdown(
            extensions=[tables, SaneListExtension(), FencedCodeExtension(), self]
        )

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the name the library calls
        """Take our place after the inline patterns and before the tree is written out."""
        md.treeprocessors.register(NamesAndValues(md, self), "garboard", 15)

    def write(
        self,
        prose: Prose,
        path: str,
        name: Callable[[str], str],
        defined: Mapping[str, tuple[str, str]],
    ) -> Markup:
        """Draw a piece of prose on the page at a path.

        Args:
            prose: The text.
            path: Of the page it stands on.
            name: Gives a heading its anchor.
            defined: Where the references lead that any piece of the page defines.
        """
        self.path, self.where = path, prose.where
        self.seal, self.marks = seal_of(prose.text), []
        self._reader.reset()
        self._reader.references.update(defined)
        try:
            html = self._reader.convert(prose.text)
        except RecursionError:
            self.tell("text is nested too deep and is shown as it was typed", "raw-html-removed")
            return Markup("<pre>{}</pre>").format(prose.text)
        raw = [piece for piece in self._reader.htmlStash.rawHtmlBlocks if isinstance(piece, str)]
        if gone := removed(piece for piece in raw if not piece.startswith("<pre><code")):
            self.tell(f"raw HTML was taken out: {', '.join(gone)}", "raw-html-removed")
        safe = clean(html, self.seal, self.marks)
        safe = HEADING.sub(lambda found: _anchored(found, name), safe)
        safe = safe.replace(
            "<table>", '<div class="scroll" role="group" aria-label="Table" tabindex="0"><table>'
        )
        return Markup(safe.replace("</table>", "</table></div>"))  # noqa: S704 - cleaned just above

    def tell(self, text: str, code: str) -> None:
        """Report what this piece of prose lost."""
        self._tell(Fault(self.where, text, code))

    def mark(self, attributes: Markup) -> str:
        """Keep the attributes of a link or picture until the text is clean."""
        self.marks.append(str(attributes))
        return mark(self.seal, len(self.marks) - 1)


def _anchored(found: re.Match[str], name: Callable[[str], str]) -> str:
    words = Markup(WORDS_ONLY.sub("", found[2])).unescape()  # noqa: S704 - unescaped to make an anchor
    return f'<{found[1]} id="{escape(name(words))}">{found[2]}</{found[1]}>'


class NamesAndValues(Treeprocessor):
    """Gives links, values, names and pictures what they stand for."""

    def __init__(self, md: Markdown, writer: ProseWriter) -> None:
        super().__init__(md)
        self.writer = writer

    def run(self, root: Element) -> None:
        """Go over the whole tree once."""
        for element in list(root.iter()):
            if element.tag == "a":
                self._link(element)
            elif element.tag == "img":
                self._picture(element)
            elif element.tag == "h1":
                element.tag = "h2"
        self._names(root)

    def _link(self, element: Element) -> None:
        href = element.attrib.get("href", "")
        element.attrib.clear()
        if value := VALUE.match(href):
            self._value(element, value[1], value[2] or "")
        elif href.startswith("#"):
            self._lead(element, Markup('href="{}"').format(href))
        elif SCHEME.match(href):
            self._outside(element, href)
        elif way := self.writer.links.from_file(href, self.writer.where.path, self.writer.path):
            self._lead(element, Markup('href="{}"').format(way))
        else:
            element.tag = "span"
            _append(element, " (no such page)")
            self.writer.tell(f"link to {href} leads nowhere", "broken-link")

    def _lead(self, element: Element, attributes: Markup) -> None:
        element.set("href", self.writer.mark(attributes))

    def _value(self, element: Element, address: str, unit: str) -> None:
        """Fill in what was left empty; a number that failed is never shown as it was typed."""
        shown = self.writer.links.handbook.show(address, unit) or NOT_COMPUTED
        typed = "".join(element.itertext()).strip()
        if NOT_COMPUTED in shown or not typed:
            _replace(element, shown)
        else:
            element.text = as_value(element.text or "")
            if not self.writer.links.handbook.agrees(typed, address, unit):
                _append(element, f" (now {as_value(shown)})")
        way = self.writer.links.to(address, self.writer.path)
        if way is None:
            element.tag = "strong"
        else:
            self._lead(element, Markup('class="value" href="{}"').format(way))

    def _outside(self, element: Element, href: str) -> None:
        """A link off the handbook leads nowhere at sea: its address is printed instead."""
        element.tag = "span"
        if href.lower().startswith(("http://", "https://")):
            if href not in "".join(element.itertext()):
                _append(element, f" ({href})")
        else:
            self.writer.tell(
                f"link to {href.split(':', maxsplit=1)[0]}: was taken out", "raw-html-removed"
            )

    def _picture(self, element: Element) -> None:
        source, alt = element.attrib.get("src", ""), element.attrib.get("alt", "")
        element.attrib.clear()
        picture = None
        if not SCHEME.match(source):
            beside = self.writer.where.path.rpartition("/")[0]
            for path in (source, f"{beside}/{source}"):
                picture = picture or self.writer.photos.want(_inside(path))
        if not alt:
            self.writer.tell(f"picture {source} has no text", "image-without-text")
        if picture is None:
            element.tag = "span"
            element.text = f"(picture missing: {alt or source})"
            self.writer.tell(f"there is no picture {source}", "broken-link")
            return
        way = Links.file(self.writer.path, picture.uri)
        size = Markup('src="{}" width="{}" height="{}" loading="lazy"')
        element.set("src", self.writer.mark(size.format(way, picture.width, picture.height)))
        element.set("alt", alt or "picture without a description")

    def _names(self, parent: Element) -> None:
        if parent.tag in UNTOUCHED:
            return
        parent.text, children = self._split(parent.text)
        for child in list(parent):
            self._names(child)
            child.tail, made = self._split(child.tail)
            children += [child, *made]
        parent[:] = children

    def _split(self, text: str | None) -> tuple[str | None, list[Element]]:
        """Text up to the first name that leads somewhere, and the links with what follows them."""
        if not text or "-" not in text:
            return text, []
        made: list[Element] = []
        head, end, close = text, 0, ""
        for match in NAMED.finditer(text):
            stop, way = self.writer.links.name_at(match, self.writer.path)
            if way is None:
                continue
            before = close + text[end : match.start()]
            close = ""
            if made:
                made[-1].tail = before
            else:
                head = before
            link = Element("a")
            link.text = text[match.start() : stop]
            self._lead(link, Markup('class="{}" href="{}"').format(look_of(match, stop), way))
            made.append(link)
            end = stop
            heir = self.writer.links.heir(match[1])
            if heir and heir not in text:
                made.append(self._beside(link, heir))
                close = ")"
        if made:
            made[-1].tail = close + text[end:]
        return head, made

    def _beside(self, link: Element, heir: str) -> Element:
        """The record that took the place of one that is named, to stand behind it in brackets."""
        link.tail = " (superseded by "
        other = Element("a")
        other.text = heir
        way = self.writer.links.to(heir, self.writer.path) or ""
        self._lead(other, Markup('class="id" href="{}"').format(way))
        return other


def _append(element: Element, text: str) -> None:
    if len(element):
        element[-1].tail = (element[-1].tail or "") + text
    else:
        element.text = (element.text or "") + text


def _replace(element: Element, text: str) -> None:
    element[:] = []
    element.text = as_value(text)


def _inside(path: str) -> str:
    """A path without the steps up that a link may take; what climbs out of the folder names nothing."""
    parts: list[str] = []
    for part in path.split("/"):
        if part == "..":
            parts = parts[:-1] if parts else [".."]
        elif part not in ("", "."):
            parts.append(part)
    return "/".join(parts)
