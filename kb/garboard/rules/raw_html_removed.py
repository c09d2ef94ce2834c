"""Raw HTML in a text does not reach the page.

Why: a page made by many hands must not be able to hide a safety message, run a script or fetch
something from elsewhere, so all but plain formatting is taken out. Whoever wrote it should know.

Fix: say it in Markdown: a link, a picture, a table, a list. Plain tags without attributes, such as
<sub>, <kbd> or <br>, stay.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.markdown_text import find_raw_tags
from garboard.rules.prose import bodies

CODE = "raw-html-removed"
SEVERITY = Severity.WARN
BINDS_FROM = "sketch"
WAIVABLE = True

BLOCKS = ("p", "br", "hr", "blockquote", "pre", "ul", "ol", "li", "dl", "dt", "dd")
TABLES = ("table", "thead", "tbody", "tr", "th", "td", "caption")
WORDS = ("em", "strong", "b", "i", "s", "del", "ins", "sub", "sup", "kbd", "abbr", "code")
KEPT = frozenset((*BLOCKS, *TABLES, *WORDS, "h2", "h3", "h4", "h5", "h6"))
INSTEAD = {
    "a": "write [text](where it leads)",
    "img": "write ![what it shows](picture)",
    "h1": "write ## and the words of the heading",
    "span": "write the words alone",
    "div": "write the words alone",
    "u": "write *words*",
    "font": "write *words*",
    "center": "write the words alone",
}


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every HTML tag in every text."""
    for written in bodies(book.content.texts):
        for tag in find_raw_tags(written):
            if tag.name in KEPT and not tag.attributes:
                continue
            kept = tag.name in KEPT
            what = f"the attributes of <{tag.name}> are" if kept else f"<{tag.name}> is"
            cure = (
                f"write <{tag.name}> alone" if kept else INSTEAD.get(tag.name, "say it in Markdown")
            )
            cure += "; to show it as it stands put it in `backticks`"
            yield Diagnostic(tag.where, SEVERITY, f"{what} taken out", cure, CODE, written.owner)
