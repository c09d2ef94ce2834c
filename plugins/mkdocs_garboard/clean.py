"""What contributed text may bring into a page: an allow-list, and nothing of ours can be forged.

Markdown lets raw HTML through, so what it makes is cleaned. No class, id, style, address or picture
of an author's own survives: links and pictures reach the page only as marks that were set while the
Markdown was read, and a mark carries a digest of the whole text, which no text can contain of itself.
"""

import re
from collections.abc import Iterable, Sequence
from hashlib import sha256
from typing import Final

import nh3

__all__ = ["TAGS", "clean", "mark", "removed", "seal_of"]

BLOCKS = (
    "p",
    "br",
    "hr",
    "h2",
    "h3",
    "h4",
    "h5",
    "h6",
    "ul",
    "ol",
    "li",
    "dl",
    "dt",
    "dd",
    "blockquote",
    "pre",
)
TABLES = ("table", "caption", "thead", "tbody", "tr", "th", "td")
WORDS = (
    "em",
    "strong",
    "b",
    "i",
    "s",
    "del",
    "ins",
    "sub",
    "sup",
    "kbd",
    "abbr",
    "code",
    "a",
    "img",
)
TAGS: Final = frozenset((*BLOCKS, *TABLES, *WORDS))
ATTRIBUTES: Final = {
    "a": {"href"},
    "img": {"src", "alt"},
    "th": {"align"},
    "td": {"align"},
    "ol": {"start"},
}
SWALLOWED: Final = {
    "script",
    "style",
    "iframe",
    "object",
    "embed",
    "noscript",
    "template",
    "svg",
    "math",
}
"""Removed with all that is in them; other tags that are not allowed leave their words."""

TAG = re.compile(r"<([A-Za-z][\w:-]*)([^<>]*)")
ATTRIBUTE = re.compile(r"([\w:-]+)\s*=")
PICTURE = re.compile(r'<img(?:\s+[\w-]+="[^"]*")*\s*/?>')
ALIGNED = re.compile(r'<(th|td) align="(left|right|center)">')


def seal_of(text: str) -> str:
    """The digest that makes a mark ours."""
    return sha256(text.encode("utf-8", "replace")).hexdigest()[:24]


def mark(seal: str, number: int) -> str:
    """The address of a link or picture until the text is clean."""
    return f"#{seal}.{number}"


def clean(html: str, seal: str, marks: Sequence[str]) -> str:
    """Contributed HTML, cleaned, with each mark replaced by the attributes it stands for."""

    def keep(_tag: str, attribute: str, value: str) -> str | None:
        if attribute in ("href", "src") and not value.startswith(f"#{seal}."):
            return None
        return value

    safe = nh3.clean(
        html,
        tags=set(TAGS),
        clean_content_tags=SWALLOWED,
        attributes=ATTRIBUTES,
        attribute_filter=keep,
        link_rel=None,
        url_schemes=set(),
    )
    ours = f'src="#{seal}.'
    safe = PICTURE.sub(lambda found: found[0] if ours in found[0] else "", safe)
    safe = re.sub(rf'(?:href|src)="#{seal}\.(\d+)"', lambda found: marks[int(found[1])], safe)
    return ALIGNED.sub(r'<\1 class="\2">', safe)


def removed(raw: Iterable[str]) -> list[str]:
    """Names of the tags and attributes in raw HTML that do not reach the page."""
    gone = set()
    for piece in raw:
        for tag, rest in TAG.findall(piece):
            name = tag.lower()
            if name not in TAGS or name in ("a", "img"):
                gone.add(name)
            else:
                gone |= {f"{name} {word.lower()}" for word in ATTRIBUTE.findall(rest)}
    return sorted(gone)
