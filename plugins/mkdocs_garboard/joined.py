"""Many finished pages in one document: no two places of one name, every link led to where it now leads.

A page keeps its place: what was `id/SA-PR-001.html` is the article `#id/SA-PR-001`, and what was
`id/SA-PR-001.html#step-4` is `#id/SA-PR-001:step-4`. Pages are read and written by a parser that
builds the same tree as a browser does, so that a drawing keeps the spelling of its attributes and
nothing is found in a text that only looks like a mark. Nothing that runs is taken along.
"""

import re
from base64 import b64encode
from collections.abc import Callable, Collection, Iterator
from mimetypes import guess_type
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import quote, unquote

from selectolax.lexbor import LexborHTMLParser, LexborNode

__all__ = [
    "Files",
    "Joined",
    "NoSheetError",
    "Outside",
    "Pictures",
    "data_of",
    "inlined",
    "place",
    "place_of",
    "way",
]

ARTICLE = "article.sheet"
WHOLE = "sheet"
"""The place that the theme gives to the whole page."""
PAGE = ".html"
NAMES = frozenset(
    "for form list headers popovertarget commandfor aria-activedescendant aria-controls aria-describedby"
    " aria-details aria-errormessage aria-flowto aria-labelledby aria-owns".split()
)
"""What names places of its own page, several parted by spaces."""
LEADS = frozenset(("href", "xlink:href"))
LOADS = frozenset(("src", "poster"))
PAINTS = frozenset("fill stroke clip-path mask filter marker-start marker-mid marker-end".split())
PAINTED = re.compile(r"url\(\s*[\"']?#([^\"')\s]+)[\"']?\s*\)")
ELSEWHERE = re.compile(r"[a-zA-Z][a-zA-Z0-9+.-]*:|//")
PARTING = re.compile(r"[\s:~]")
PARTED = re.compile(r"~([0-9a-f]+)~")

Outside = Callable[[str, str], str | None]
"""Where a link to a page that is not in the document leads, from its path and the place on it; with
None its words stay and lead nowhere."""
Files = Callable[[str], str | None]
"""What stands for a file of the site, such as a photo, by its path there; None where it is left out."""
Pictures = Callable[[str, dict[str, str | None]], str | None]
"""What stands for a picture, as HTML, from its path in the site and the attributes of its `img`; with
None it stays an `img`."""


class NoSheetError(ValueError):
    """What was given as a page holds no sheet."""


def place(path: str, anchor: str = "") -> str:
    """The id of a page in the document, or of a place on it; `place_of` tells it apart again.

    >>> place("id/SA-PR-001"), place("id/SA-PR-001", "step-4"), place("a b", "c:d")
    ('id/SA-PR-001', 'id/SA-PR-001:step-4', 'a~20~b:c~3a~d')
    """
    own = PARTING.sub(_kept, path)
    return f"{own}:{PARTING.sub(_kept, anchor)}" if anchor else own


def place_of(ident: str) -> tuple[str, str]:
    """The page and the place on it that an id of the document stands for.

    >>> place_of("id/SA-PR-001"), place_of("a~20~b:c~3a~d")
    (('id/SA-PR-001', ''), ('a b', 'c:d'))
    """
    path, _, anchor = ident.partition(":")
    return _given_back(path), _given_back(anchor)


def way(path: str, anchor: str = "") -> str:
    """The link to a page in the document, or to a place on it."""
    return "#" + quote(place(path, anchor), safe="/:~")


def inlined(site: Path) -> Files:
    """Files of a site as data in the document itself.

    Args:
        site: The finished site.

    Returns:
        What gives the whole of a file as a `data:` address, or None where there is no such file.
    """
    made: dict[str, str | None] = {}

    def give(uri: str) -> str | None:
        if uri not in made:
            file = site / uri
            made[uri] = data_of(uri, file.read_bytes()) if file.is_file() else None
        return made[uri]

    return give


class Joined:
    """Makes pages of one site into articles of one document."""

    def __init__(
        self,
        paths: Collection[str],
        files: Files,
        outside: Outside = lambda _path, _anchor: None,
        *,
        pictures: Pictures = lambda _uri, _attributes: None,
        programs: bool = False,
    ) -> None:
        """Say what the document will hold.

        Args:
            paths: Path of every page in the document, as in `Page.path`: without `.html`.
            files: What stands for a photo or another file of the site.
            outside: Where links to all other pages lead.
            pictures: What stands for a picture that a page shows.
            programs: Whether blocks of data that a script of the document reads are taken along.
        """
        self._paths = frozenset(paths)
        self._files = files
        self._outside = outside
        self._pictures = pictures
        self._programs = programs

    def article(self, path: str, html: str) -> str:
        """One page as an article of the document.

        Args:
            path: Path of the page in the site, without `.html`.
            html: The finished page, or its drawn body.

        Returns:
            The article as HTML; it bears the id of the page.

        Raises:
            NoSheetError: There is no sheet in it.
        """
        return self.parts(path, html, ARTICLE)[0]

    def parts(self, path: str, html: str, *selectors: str) -> list[str]:
        """Several parts of one page, such as its sheet and its bar, each as a piece of the document.

        Args:
            path: Path of the page in the site, without `.html`.
            html: The finished page.
            selectors: Each names a part, as a stylesheet does; the first that fits is taken.

        Returns:
            The parts as HTML, in the order asked for; a sheet among them bears the id of the page.

        Raises:
            NoSheetError: There is no such part in it.
        """
        page = LexborHTMLParser(html)
        made: list[str] = []
        for selector in selectors:
            part = page.css_first(selector)
            if part is None:
                raise NoSheetError(f"{path}: there is no {selector} on this page")
            made.append(self._taken(path, part))
        return made

    def _taken(self, path: str, whole: LexborNode) -> str:
        for part in whole.css("script, style, link, base, meta"):
            if not (self._programs and part.attributes.get("type") == "application/json"):
                part.decompose()
        for part in whole.css("[autofocus]"):
            del part.attrs["autofocus"]  # one document opens on one page, not in a field of another
        pictures = list(self._pictured(path, whole))
        for part in whole.css("*"):
            self._mend(path, part)
        for image, made in pictures:
            image.replace_with(made)
        if whole.tag == "article":
            whole.attrs["id"] = place(path)
        return whole.html or ""

    def _pictured(self, path: str, whole: LexborNode) -> Iterator[tuple[LexborNode, LexborNode]]:
        """Each `img` of a page for which something else stands, and what."""
        for image in whole.css("img[src]"):
            source = image.attributes["src"] or ""
            if not ELSEWHERE.match(source):
                html = self._pictures(_from(path, source), dict(image.attributes))
                made = html and LexborHTMLParser(html).css_first("body > *")
                if made:
                    yield image, made

    def _mend(self, path: str, part: LexborNode) -> None:
        """Lead everything in one element to where it now is."""
        for name, value in part.attributes.items():
            if not value or (made := self._mended(path, name, value)) == value:
                continue
            if made is None:
                del part.attrs[name]
            else:
                part.attrs[name] = made

    def _mended(self, path: str, name: str, value: str) -> str | None:
        """The value of an attribute in the document; None where it is left out."""
        if name == "id":
            return place(path, value)
        if name in LEADS or (name.startswith("data-") and value.startswith("#")):
            return self._led(path, value)
        if name in LOADS:
            return value if ELSEWHERE.match(value) else self._files(_from(path, value))
        if name in NAMES:
            return " ".join(place(path, one) for one in value.split())
        if name in PAINTS:
            return PAINTED.sub(lambda found: f"url({way(path, unquote(found[1]))})", value)
        return value

    def _led(self, path: str, address: str) -> str | None:
        """Where a link of a page leads in the document."""
        if ELSEWHERE.match(address):
            return address
        there, _, anchor = address.partition("#")
        anchor = unquote(anchor)
        target = _from(path, there) if there else path + PAGE
        if not target.endswith(PAGE):
            return self._files(target)
        target = target.removesuffix(PAGE)
        if target in self._paths or not there:
            return way(target, "" if anchor == WHOLE else anchor)
        return self._outside(target, anchor)


def _from(path: str, address: str) -> str:
    """The path in the site that a relative address on a page means."""
    return normpath(join(dirname(path), unquote(address.partition("?")[0])))


def data_of(name: str, content: bytes) -> str:
    """A file as a `data:` address; its name says what sort it is.

    >>> data_of("a.png", b"abc")
    'data:image/png;base64,YWJj'
    """
    sort = guess_type(name)[0] or "application/octet-stream"
    return f"data:{sort};base64,{b64encode(content).decode()}"


def _kept(found: re.Match[str]) -> str:
    return f"~{ord(found[0]):x}~"


def _given_back(text: str) -> str:
    return PARTED.sub(lambda found: chr(int(found[1], 16)), text)
