"""The whole handbook as one file, for a phone: every page in it, one shown at a time, nothing beside it.

Which page is shown follows from the place in the address, by the style alone, so that it works
without scripts. The pages are those of the finished site, word for word. All but the first stand in
a `noscript`: without scripts they are there like any other words; where scripts run a browser takes
them for plain text, reads 11 MB of it in a moment, and unpacks the page that somebody opens. Styles,
scripts, the list for Find and the photographs stand in the file; its policy names each style and
script by its digest and allows nothing else, from anywhere.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from posixpath import dirname, join, normpath
from typing import Final

from markupsafe import Markup
from selectolax.lexbor import LexborHTMLParser

from garboard.views.contents import Section
from mkdocs_garboard.album import Album
from mkdocs_garboard.furniture import quoted
from mkdocs_garboard.html import templates
from mkdocs_garboard.joined import Joined, inlined, place, way
from mkdocs_garboard.manual import STYLE, Manual
from mkdocs_garboard.policy import proof_of
from mkdocs_garboard.search import INDEX
from mkdocs_garboard.take_along import single_file_name

__all__ = ["FRONT", "NotAloneError", "write_single_file"]

FRONT: Final = "index"
PHOTOS: Final = "photos/"
POLICY: Final = (
    "default-src 'none'; img-src data:; style-src {style}; script-src {scripts};"
    " base-uri 'none'; form-action 'none'"
)
OUTSIDE: Final = re.compile(r"@import|url\(\s*[\"']?(?!data:|#)")
ENDS: Final = re.compile(r"</(?:script|style)|<!--", re.IGNORECASE)
UNPACKS: Final = re.compile(r"<(?=/noscript)", re.IGNORECASE)
"""What would end a packed page too soon. It can stand in an attribute only, such as a text for a picture,
and there only where the parser writes it out as it is: some versions of it do."""
SCRIPTED: Final = 'document.documentElement.classList.add("scripted");\n'
WITHOUT_SCRIPTS: Final = ".held-back{display:none}"
"""A browser that was told to run no scripts holds nothing back: it has every page."""


class NotAloneError(ValueError):
    """Something cannot stand in the one file."""


@dataclass(frozen=True, slots=True)
class Leaf:
    """One page in the file."""

    title: str
    place: str
    way: str
    front: bool
    """Whether it is shown when no page is asked for."""
    html: Markup
    """Its sheet and its bar, packed unless it is the front."""


@dataclass(frozen=True, slots=True)
class Gathering:
    """The pages of one section of the contents."""

    title: str
    """Empty where they belong to no section."""
    leaves: tuple[Leaf, ...]


def write_single_file(manual: Manual, site: Path) -> None:
    """Write the handbook as one file into the folder of its site.

    Args:
        manual: The handbook as it was drawn.
        site: The finished site.

    Raises:
        NotAloneError: A style or script of the site cannot stand in the file.
    """
    pages = {
        page.path: (site / f"{page.path}.html").read_text("utf-8") for page in manual.pages.values()
    }
    whole = inlined(site)
    album = Album(lambda uri: whole(uri) if uri.startswith(PHOTOS) else None)
    name = single_file_name(manual.vessel, pages)
    joined = Joined(
        pages,
        lambda _uri: None,
        lambda path, _anchor: way(FRONT) if f"{path}.html" == name else None,
        pictures=album.shown,
        programs=True,
    )
    gatherings = tuple(_gatherings(manual, pages, joined))
    first, last, style = _parts(pages, site)
    opening = (files("mkdocs_garboard") / "templates" / "single_file.js").read_text("utf-8")
    paper = _paper(manual)
    before, _, after = _title(pages[FRONT]).partition(manual.pages[f"{FRONT}.md"].title)
    text = (
        templates()
        .get_template("single_file.html")
        .render(
            before=before,
            after=after,
            line=manual.copy.line,
            title=_title(pages[FRONT]),
            policy=_policy((style + paper, WITHOUT_SCRIPTS), (first, opening, *last)),
            first=_raw(first),
            style=_raw(style + paper),
            without_scripts=_raw(WITHOUT_SCRIPTS),
            opening=_raw(opening),
            scripts=[_raw(script) for script in last],
            gatherings=gatherings,
            album=tuple(album),
            column=_column(joined, pages[FRONT]),
        )
    )
    (site / name).write_text(text, "utf-8")


def _gatherings(manual: Manual, pages: dict[str, str], joined: Joined) -> Iterator[Gathering]:
    """All pages once, in the order of the contents, those that stand nowhere in it last."""
    known = {page.key: page for page in manual.pages.values()}

    def leaves(keys: Iterable[str]) -> tuple[Leaf, ...]:
        found = [known.pop(key) for key in keys if key in known]
        made = []
        for page in found:
            html = "\n".join(joined.parts(page.path, pages[page.path], "article.sheet", "nav.bar"))
            front = page.path == FRONT
            own = Markup(html) if front else _packed(html)  # noqa: S704 - from a page that was drawn
            made.append(Leaf(page.title, place(page.path), way(page.path), front, own))
        return tuple(made)

    def gathered(section: Section, above: tuple[str, ...]) -> Iterator[Gathering]:
        titles = (*above, section.title)
        yield Gathering(": ".join(titles), leaves(section.pages))
        for inner in section.sections:
            yield from gathered(inner, titles)

    yield Gathering("", leaves([key for key, page in known.items() if page.path == FRONT]))
    for section in manual.contents:
        yield from (one for one in gathered(section, ()) if one.leaves)
    yield Gathering("", leaves(list(known)))


def _packed(html: str) -> Markup:
    """A page that a browser takes for plain text where scripts run.

    >>> print(_packed('<p title="</NoScript>">words</p>'))
    <noscript><p title="&lt;/NoScript>">words</p></noscript>
    """
    return Markup(f"<noscript>{UNPACKS.sub('&lt;', html)}</noscript>")  # noqa: S704 - from a page that was drawn


def _column(joined: Joined, front: str) -> Markup:
    """The column of the front page, without the lists of what stands near that page alone."""
    column = LexborHTMLParser(joined.parts(FRONT, front, "nav.column")[0])
    for part in column.css("ul.near, ul.beside"):
        before = part.prev
        while before is not None and not before.is_element_node:
            before = before.prev
        if before is not None and before.attributes.get("class") == "group":
            before.decompose()
        part.decompose()
    for part in column.css("[aria-current]"):
        del part.attrs["aria-current"]
    for part in column.css(".here"):
        del part.attrs["class"]
    nav = column.css_first("nav.column")
    return Markup(nav.html if nav else "")  # noqa: S704 - from a page that was drawn


def _parts(pages: dict[str, str], site: Path) -> tuple[str, list[str], str]:
    """The script that sets the light, all others in the order of the pages, and the style."""
    heads: dict[str, None] = {}
    scripts: dict[str, None] = {}
    for path, text in pages.items():
        page = LexborHTMLParser(text)
        for script in page.css("script[src]"):
            address = normpath(join(dirname(path), script.attributes["src"] or ""))
            kept = heads if script.parent is not None and script.parent.tag == "head" else scripts
            kept[address] = None
    first = SCRIPTED + "".join(_alone(site, address) for address in heads)
    last = [_alone(site, address) for address in (INDEX, *scripts)]
    return first, last, _alone(site, STYLE)


def _alone(site: Path, address: str) -> str:
    """The text of a script or style, which may load nothing and hold nothing that would end it.

    Raises:
        NotAloneError: It does.
    """
    text = (site / address).read_text("utf-8")
    if ENDS.search(text) or (address.endswith(".css") and OUTSIDE.search(text)):
        raise NotAloneError(f"{address} cannot stand in one file with the pages")
    return text


def _paper(manual: Manual) -> str:
    """What each sheet of paper says at its edge where no script adds the name of the page."""
    copy = manual.copy
    return (
        f"\n@page{{@top-left{{content:{quoted(manual.vessel)}}}@top-right{{content:{quoted(copy.name)}}}"
        f"@bottom-left{{content:{quoted(copy.line)}}}}}\n"
    )


def _policy(styles: Iterable[str], scripts: Iterable[str]) -> str:
    return POLICY.format(
        style=" ".join(map(proof_of, styles)), scripts=" ".join(map(proof_of, scripts))
    )


def _title(page: str) -> str:
    found = LexborHTMLParser(page).css_first("head > title")
    return found.text() if found else ""


def _raw(text: str) -> Markup:
    return Markup(text)  # noqa: S704 - our own style, or a script that the site has as a file
