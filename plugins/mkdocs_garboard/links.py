"""Where things lead: from a key, id, tag, address or content file to a link as seen from a page.

Addresses are always relative and always end in .html, so that a folder on a memory stick works.
"""

import re
from collections.abc import Iterable
from functools import lru_cache
from posixpath import dirname, join, normpath
from urllib.parse import quote, unquote

from markupsafe import Markup, escape

from garboard.handbook import Handbook
from garboard.views.contents import IDENTIFIER, Target, is_tag
from garboard.views.page import Page

__all__ = [
    "NAMED",
    "Links",
    "as_value",
    "keep_together",
    "look_of",
    "relative",
    "unbroken",
    "whole_numbers",
]

NAMED = re.compile(rf"(?<![\w.-])({IDENTIFIER.pattern})(\.[A-Za-z]\w*)?(?![\w-])")
"""A bare id, tag or address of a component's value in running text."""

UNITS = (
    "bar mbar psi Pa kPa MPa mm cm m km m2 m3 cm3 in inch ft L mL gal_us"
    " gal_imp g kg t lb N kN kW W hp A mA V mV kV"
    " Ah Wh kWh Hz rpm s min h d days degC degF K % dB J kJ MJ starts turns turn"
).split()
PARTED = re.compile(rf"(?<=\d) (?=(?:{'|'.join(map(re.escape, UNITS))})(?![\w-]))")
MONTHS = (
    "January February March April May June July August September October November December"
    " Jan Feb Mar Apr Jun Jul Aug Sep Oct Nov Dec"
).split()
DAY = re.compile(rf"(?<=\d) (?=(?:{'|'.join(MONTHS)}) \d{{4}}\b)")
VALUE = re.compile(r"(?<=\d) (?=[^\s\d])")
TOLERANCE = re.compile(r"(?<=\+/-) (?=\d)")
PATH = re.compile(r"(?<![\w/<])[\w.-]+(?:/[\w.-]+){2,}\.\w{2,4}(?!\w)")
WHOLE = re.compile(
    r"(?<![\w./-])(?:\d{4}-\d{2}-\d{2}|(?=[A-Z-]*\d)[A-Z]{1,4}(?:-[A-Z0-9]{1,5}){1,3})(?![\w-])"
)
"""A day in figures; a part number, the number of an instrument, a card or a drawing."""


def keep_together(text: str) -> str:
    """Bind each number to its unit or its sign, and a day to its month, so that no line end parts them.

    >>> keep_together("30 bar(g) +/- 0.5 bar in receiver 1 within 10 s, 12 May 2027").count(chr(160))
    5
    """
    for parted in (PARTED, TOLERANCE, DAY):
        text = parted.sub("\N{NO-BREAK SPACE}", text)
    return text


def whole_numbers(html: str) -> str:
    """Keep a day in figures and a part number on one line; a browser may end a line behind a hyphen.

    >>> whole_numbers("until 2031-09-01")
    'until <span class="id">2031-09-01</span>'
    >>> whole_numbers("gasket SK-AIR-106, RE-ROUTED")
    'gasket <span class="id">SK-AIR-106</span>, RE-ROUTED'
    """
    return WHOLE.sub(r'<span class="id">\g<0></span>', html)


def _plain(text: str) -> str:
    """Text without a name in it, escaped."""
    return PATH.sub(_in_pieces, whole_numbers(str(escape(keep_together(text)))))


def _in_pieces(path: re.Match[str]) -> str:
    """The path of a file, which may go on in the next line behind each folder."""
    return path[0].replace("/", "/<wbr>")


def as_value(text: str) -> str:
    """The same for a text that is a value and nothing else, whatever its unit.

    >>> as_value("4 l of oil").count(chr(160))
    1
    """
    return VALUE.sub("\N{NO-BREAK SPACE}", text)


def unbroken(text: str) -> Markup:
    """Text, escaped, in which no line end splits a tag or id or parts a number from its unit."""
    parts: list[str] = []
    end = 0
    for match in NAMED.finditer(text):
        parts.append(_plain(text[end : match.start()]))
        parts.append(f'<span class="id">{match[0]}</span>')
        end = match.end()
    return Markup("".join([*parts, _plain(text[end:])]))  # noqa: S704 - each part is escaped


@lru_cache(maxsize=65536)
def relative(folder: str, path: str) -> str:
    """The way from a folder of the site to a page of it.

    >>> relative("starting-air", "id/SA-RV-001"), relative("", "index")
    ('../id/SA-RV-001.html', 'index.html')
    """
    here = folder.split("/") if folder else []
    there = path.split("/")
    shared = 0
    while shared < len(here) and shared < len(there) - 1 and here[shared] == there[shared]:
        shared += 1
    return quote("/".join([*[".."] * (len(here) - shared), *there[shared:]]) + ".html")


class Links:
    """Finds where things lead, for every page of one handbook."""

    def __init__(self, handbook: Handbook, more: Iterable[Page] = ()) -> None:
        self.handbook = handbook
        self._written = {page.source_path: page for page in handbook.pages if page.source_path}
        self._pages = {page.key: page for page in (*more, *handbook.pages)}

    def find(self, key: str) -> Target | None:
        """What a key, id, tag, address, or the path of a content file names."""
        if target := self.handbook.find(key):
            return target
        page = self._pages.get(key) or self._written.get(key)
        return Target(page.path, "", page.title) if page else None

    def to(self, key: str, path: str, anchor: str = "") -> str | None:
        """The way from the page at a path to what a key names, or None where nothing is named so."""
        if not anchor and "#" in key:
            key, anchor = key.split("#", 1)
        target = self.find(key)
        if target is None:
            return None
        return self.way(path, target.path, anchor or target.anchor)

    def heir(self, key: str) -> str:
        """Id of the record that took the place of the one a key names; empty where none did."""
        target = self.find(key)
        return target.heir if target else ""

    @staticmethod
    def way(path: str, to: str, anchor: str = "") -> str:
        """The way from one page of the site to another."""
        mark = f"#{quote(anchor)}" if anchor else ""
        if path == to and mark:
            return mark
        return relative(dirname(path), to) + mark

    @staticmethod
    def file(path: str, uri: str) -> str:
        """The way from a page to a photo or script of the site."""
        return "../" * path.count("/") + quote(uri)

    def from_file(self, href: str, where: str, path: str) -> str | None:
        """The way that a link in a content file means: a key first, else another content file."""
        name, _, anchor = href.partition("#")
        name, anchor = unquote(name), unquote(anchor)
        beside = normpath(join(dirname(where), name))
        return self.to(name, path, anchor) or self.to(beside, path, anchor)

    def named(self, text: str, path: str) -> Markup:
        """Text of our own, escaped, with every id and tag in it as a link or a label plate."""
        parts: list[str] = []
        end = 0
        for match in NAMED.finditer(text):
            stop, way = self.name_at(match, path)
            if way is None:
                continue
            parts += [_plain(text[end : match.start()])]
            look, words = look_of(match, stop), text[match.start() : stop]
            shown = _address(match) if look == "value" else words
            parts += [str(Markup('<a class="{}" href="{}">{}</a>').format(look, way, shown))]
            end = stop
        return Markup("".join([*parts, _plain(text[end:])]))  # noqa: S704 - each part is escaped

    def name_at(self, match: re.Match[str], path: str) -> tuple[int, str | None]:
        """Where a bare name ends and where it leads: the whole address, else its id or tag."""
        if match.group(2) and (way := self.to(match.group(0), path)):
            return match.end(), way
        return match.end(1), self.to(match.group(1), path)


def _address(match: re.Match[str]) -> Markup:
    """The address of a part's value: a line may end behind the tag, and nowhere in it."""
    return Markup('<span class="id">{}</span><wbr>{}').format(match[1], match[2])


def look_of(match: re.Match[str], stop: int) -> str:
    """How a bare name is drawn: a tag as its label plate, an id and an address as links."""
    if stop > match.end(1):
        return "value"
    return "plate" if is_tag(match.group(1)) else "id"
