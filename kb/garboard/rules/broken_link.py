"""A link or picture in a text leads to a page, file or heading that is not there, or ashore.

Why: a link is a promise that the reason, the picture or the next step is one touch away. At sea
there is nobody to ask where it went, and no network to find it.

Fix: write the path as the file is named, letter case and all; name records by their id alone, which
never breaks. What lies on the network is copied in, or cited in sources.yml.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import nearest
from garboard.rules.markdown_text import Link, find_links
from garboard.rules.prose import bodies
from garboard.rules.shelves import Shelves, shelves_of

CODE = "broken-link"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True

SCHEME = re.compile(r"(?P<scheme>[A-Za-z][A-Za-z0-9+.-]*):|//")
NETWORK = ("http", "https", "ftp", "mailto", "tel", None)
ADD_PICTURE = "add the file, or take it out"
ADD_PAGE = (
    "add the file, or name a record by its id (Everything from A to Z lists them), or take it out"
)
Fault = tuple[Severity, str, str]


def check(book: Book) -> Iterator[Diagnostic]:
    """Follow every link and picture of every text."""
    shelves = shelves_of(book)
    for written in bodies(book.content.texts):
        for link in find_links(written):
            if fault := _fault(shelves, written.where.path, link):
                yield Diagnostic(link.where, *fault, CODE, written.owner)


def _fault(shelves: Shelves, path: str, link: Link) -> Fault | None:
    """What is wrong with a link in a file, and the cure."""
    if link.label:
        cure = f"add [{link.label}]: and a path below, or write [{link.text}](path)"
        return SEVERITY, f"[{link.label}] is defined nowhere in this text", cure
    if found := SCHEME.match(link.target):
        return _outside(link, found["scheme"])
    name, _, anchor = link.target.partition("#")
    if link.picture:
        return _picture(shelves, path, name)
    where = path if not name else shelves.named(name)
    if where is None:
        where = shelves.path_of(name, path)
        if where not in shelves.pages:
            return SEVERITY, *_lost(shelves, name, where, picture=False)
    known = shelves.anchors(where) if where else set()
    if where and anchor and anchor not in known:
        near = nearest(anchor, known)
        cure = (
            f"write #{near}, or leave it out"
            if near
            else f"write the page alone, without #{anchor}"
        )
        return SEVERITY, f"{where} has no heading #{anchor}", cure
    return None


def _outside(link: Link, scheme: str | None) -> Fault | None:
    """What is said of a link that leads off the handbook."""
    if scheme == "value":
        return None
    if link.picture:
        text = f"picture {link.target} is not in this handbook"
        return SEVERITY, text, "copy the picture in, and write its path here"
    if scheme is None or scheme.lower() in NETWORK:
        text = f"link to {link.target} works only with a network"
        return Severity.NOTE, text, "copy what it says into the book, or cite it in sources.yml"
    cure = "name a page, a picture or a record of this handbook"
    return SEVERITY, f"{scheme}: leads to nothing in this handbook", cure


def _picture(shelves: Shelves, path: str, name: str) -> Fault | None:
    where = shelves.path_of(name, path)
    photos = shelves.book.content.photos
    if where in photos or shelves.path_of(name, "") in photos:
        return None
    return SEVERITY, *_lost(shelves, name, where, picture=True)


def _lost(shelves: Shelves, name: str, where: str, *, picture: bool) -> tuple[str, str]:
    """What is said of a path that is not there, is written otherwise or is not published."""
    content, what = shelves.book.content, "picture" if picture else "page"
    if not picture and where in content.photos:
        return f"{name} is a picture and no page", f"show it: ![what it shows]({name})"
    if where in (*content.digests, *content.logs):
        return (
            f"{name} is kept but never published",
            "name the page that shows it, or say it in words",
        )
    near = shelves.near(where, picture=picture)
    if near and near.casefold() in (where.casefold(), name.casefold()):
        return (
            f"there is no {what} {where}; the file is {near}",
            "write its name as the file has it",
        )
    cure = ADD_PICTURE if picture else ADD_PAGE
    if near:
        cure = f"write the path of {near}, or take it out"
    return f"there is no {what} {where}", cure
