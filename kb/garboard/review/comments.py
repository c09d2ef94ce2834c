"""Comments in contributed text: what no reader of the page sees, and what only looks like one.

A comment is taken out only where a page surely hides it. What a browser or the Markdown reader would
show all the same stays in: else words that a reader sees could change under a signature.
"""

import re
from collections.abc import Callable

from garboard.reading.references import code_spans

__all__ = ["outside_code", "without_comments"]

COMMENT = re.compile(
    r"(?:(?<=\n)|\A)(?P<inset> {0,3})<!--(?!-?>)(?:(?!--|`).)*-->"
    r"|(?<!\\)<!--(?!-?>)(?:(?!--|`|\n[ \t]*\n).)*-->",
    re.DOTALL,
)
"""One that starts a line may hold blank lines; no other may. `<!-->` and `--!>` end one early."""
PARTED = re.compile(r"(\n[ \t]*\n)")


def without_comments(text: str) -> str:
    r"""Markdown without its comments; those in code stay, for they are shown.

    Args:
        text: Without fences.

    >>> without_comments("a <!-- b --> c"), without_comments("a `<!--` c `-->`")
    ('a  c', 'a `<!--` c `-->`')
    """
    if "<!--" not in text:
        return text
    kept, at = [], 0
    code = _code(text)
    for found in COMMENT.finditer(text):
        start = text.index("<!--", found.start())
        line = text[text.rfind("\n", 0, start) + 1 : start]
        set_in = not line.strip() and len(line.expandtabs(4)) > 3
        if not set_in and not any(first <= start < last for first, last in code):
            kept.append(text[at:start])
            at = found.end()
    return "".join((*kept, text[at:]))


def outside_code(text: str, pattern: re.Pattern[str], put: Callable[[re.Match[str]], str]) -> str:
    """Put something else for what a pattern finds, but not in code, which is shown as typed."""
    code = _code(text)

    def one(found: re.Match[str]) -> str:
        inside = any(first <= found.start() < last for first, last in code)
        return found[0] if inside else put(found)

    return pattern.sub(one, text)


def _code(text: str) -> list[tuple[int, int]]:
    """The code of each paragraph; all of one with an escaped mark, which is read in two ways."""
    if "`" not in text:
        return []
    spans: list[tuple[int, int]] = []
    at = 0
    for part in PARTED.split(text):
        end = at + len(part)
        spans += [(at, end)] if "\\`" in part else code_spans(text, at, end)
        at = end
    return spans
