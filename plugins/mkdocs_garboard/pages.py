"""From a handbook to what MkDocs builds: one file a page, the contents, and no two with one address.

Nothing of the content folder is published as it lies there. MkDocs gets empty pages under the right
names, and their bodies when it asks for them, so that no setting and no other plugin can read an
author's text as something else.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, InclusionLevel

from garboard.handbook import Handbook
from garboard.views.contents import Section
from garboard.views.page import (
    Block,
    Bullets,
    Heading,
    Link,
    Page,
    Paragraph,
    QuickCard,
    Review,
    Strong,
)
from mkdocs_garboard.take_along import take_along_page

__all__ = ["CONTENTS", "FIND", "REPORT", "added", "clashes", "nav_of", "published", "uri_of"]

CONTENTS = "contents"
FIND = "find"
REPORT = "raise-a-finding"
DEEPEST = 6
REPORTING: tuple[Block, ...] = (
    Paragraph((Strong("If somebody could be hurt, stop first"), " and tell the person in charge.")),
    Paragraph(("Anyone may report, and may do it in any words. Write down, on anything:",)),
    Bullets(
        (
            ("the page, by its title and what stands at the right of its title block",),
            ("what the page says, word for word",),
            ("what you see, where, and when; a photograph of it",),
            ("the tag or part, if it has one",),
            ("whether the work was stopped, and who was told",),
        ),
        ordered=True,
    ),
    Paragraph(
        (
            "Hand it to the person in charge. It is filed as a finding under your first words, and it"
            " stays open until somebody else has seen that it was put right.",
        )
    ),
)


def uri_of(page: Page) -> str:
    """The name MkDocs knows a page by."""
    return f"{page.path}.md"


def published(config: MkDocsConfig, uri: str, content: str | bytes) -> File:
    """A file of the site that no file of the content folder is."""
    return File.generated(config, uri, content=content, inclusion=InclusionLevel.INCLUDED)


def added(handbook: Handbook, *, find: bool, outputs: bool = False) -> list[Page]:
    """Pages that hold the others together: the contents in full, a front page, a page to find things.

    Each is left out where the handbook brings one of its own.

    Args:
        handbook: What is published.
        find: Whether there is a page to find things.
        outputs: Whether what stands beside the pages is written too.
    """
    kept = {page.path.casefold() for page in handbook.pages}
    plain = Review("", trusted=True)
    blocks = tuple(_listed(handbook))
    made = [
        Page(CONTENTS, CONTENTS, "Contents", "contents", plain, ident="contents", blocks=blocks),
        Page("index", "index", handbook.vessel, "contents", plain, blocks=blocks),
        Page(REPORT, REPORT, "Report a problem", "how to", plain, ident="report", blocks=REPORTING),
    ]
    if find:
        made.append(Page(FIND, FIND, "Find", "find", plain, ident="find"))
    paths = [page.path for page in (*handbook.pages, *made)]
    made.append(take_along_page(handbook, paths, outputs=outputs))
    return [replace(page, copy=handbook.copy) for page in made if page.path not in kept]


def _listed(handbook: Handbook) -> Iterator[Block]:
    """The contents as headings and lists of links."""
    titles = {page.key: listed_title(page) for page in handbook.pages}

    def section(item: Section, level: int) -> Iterator[Block]:
        if any(key in titles for key in keys_of(item)):
            yield Heading(item.title, min(level, DEEPEST))
        links = tuple((Link(key, titles[key]),) for key in item.pages if key in titles)
        if links:
            yield Bullets(links)
        for inner in item.sections:
            yield from section(inner, level + 1)

    for item in handbook.contents:
        yield from section(item, 2)


def listed_title(page: Page) -> str:
    """What a page is called in a list: a quick card by its number too, as several are of one task."""
    carded = any(isinstance(block, QuickCard) for block in page.blocks)
    return f"{page.ident} {page.title}" if carded else page.title


def nav_of(handbook: Handbook, more: Iterable[Page]) -> list[object]:
    """The contents as MkDocs wants them; our own theme draws its own and needs them only to be whole."""
    known = {page.key: page for page in handbook.pages}

    def listed(item: Section) -> list[object]:
        pages: list[object] = [
            {listed_title(known[key]): uri_of(known[key])} for key in item.pages if key in known
        ]
        return pages + [{inner.title: found} for inner in item.sections if (found := listed(inner))]

    inside = {key for item in handbook.contents for key in keys_of(item)}
    loose = [page for page in handbook.pages if page.key not in inside]
    nav: list[object] = [{page.title: uri_of(page)} for page in loose if page.path == "index"]
    nav += [{item.title: found} for item in handbook.contents if (found := listed(item))]
    nav += [
        {page.title: uri_of(page)}
        for page in [*loose, *more]
        if page.path != "index" or page in more
    ]
    return nav


def keys_of(item: Section) -> Iterator[str]:
    """Keys of all pages in a section, in order."""
    yield from item.pages
    for inner in item.sections:
        yield from keys_of(inner)


def clashes(uris: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Pairs of names that are one file on a memory stick, where large and small letters are the same."""
    seen: dict[str, str] = {}
    for uri in uris:
        first = seen.setdefault(uri.casefold(), uri)
        if first is not uri:
            yield first, uri
