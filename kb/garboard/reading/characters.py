"""Find signs that nobody can see, in what people wrote.

A hidden sign makes two names look alike and text run backwards; a tab looks like spaces and counts
as something else. Joiners stay: some scripts need them to be written rightly.
"""

import re
from collections.abc import Iterator
from itertools import islice

__all__ = ["LONGEST_LINE", "find_hidden", "find_long_lines"]

HIDDEN = (
    "\x00-\x08\x0b-\x1f\x7f-\x9f"  # control signs, other line ends among them
    "\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180e"
    "\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\u3164\ufdd0-\ufdef\ufeff\uffa0\ufff0-\uffff"
    "\U000e0000-\U000e0fff"
)
LONGEST_LINE = 10_000
"""Signs; no sentence and no table comes near it."""
SPACES = "\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000"

MOST = 20
"""Said of one text; who has mended these meets the rest."""

ANY = re.compile(f"[{HIDDEN}]")
ANY_OR_TAB = re.compile(f"[\t{HIDDEN}]|(?m:^ *[{SPACES}])")


def find_hidden(text: str, *, tabs: bool) -> Iterator[tuple[int, int, str, str]]:
    r"""Find hidden signs.

    Args:
        text: With plain line feeds.
        tabs: Whether tabs, and odd spaces at the start of a line, may stand in it.

    Yields:
        At most twenty times line and column counted from 0, what stands there, and the cure.

    >>> list(find_hidden("a: b\n\tc", tabs=False))
    [(1, 0, 'a tab stands here', 'write spaces')]
    """
    pattern = ANY if tabs else ANY_OR_TAB
    for found in islice(pattern.finditer(text), MOST):
        at = found.end() - 1
        line = text.count("\n", 0, at)
        column = at - (text.rfind("\n", 0, at) + 1)
        sign = text[at]
        if sign == "\t":
            yield line, column, "a tab stands here", "write spaces"
        elif not ANY.match(sign):
            said = f"a U+{ord(sign):04X} stands here and looks like a space"
            yield line, column, said, "write plain spaces"
        else:
            said = f"a sign that cannot be seen, U+{ord(sign):04X}, stands here"
            yield line, column, said, "delete it, or retype the line"


def find_long_lines(text: str) -> Iterator[tuple[int, str, str]]:
    r"""Find the first line that is longer than anything a person writes.

    Args:
        text: With plain line feeds.

    Yields:
        Its number counted from 0, what stands there, and the cure; nothing where there is none.

    >>> list(find_long_lines("a\n" + "b" * 10_001))
    [(1, 'a line of 10001 signs, more than 10000', 'break it into lines')]
    """
    for number, line in enumerate(text.split("\n")):
        if len(line) > LONGEST_LINE:
            said = f"a line of {len(line)} signs, more than {LONGEST_LINE}"
            yield number, said, "break it into lines"
            return
