"""What stands against a page in its first words, so that the first action is not pushed off the screen.

A STOP is never cut. Of a HOLD the words before its first colon are kept; those that the bar of the
review tells already are one line. Whatever was cut stands whole below the first action.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from garboard.errors import Diagnostic, Severity
from garboard.review.page_state import TOLD_BELOW
from garboard.views.at_once import WaysIn
from garboard.views.page import Block, Page
from garboard.views.reliance import InShort

__all__ = ["first_words", "in_short", "ways_told"]


def first_words(text: str) -> str:
    """A notice up to its first colon; whole where it has none.

    >>> first_words("checker's signature of 2031-02-28 lapsed: SA-PS-001.set 15 bar(g) -> 18 bar(g)")
    "checker's signature of 2031-02-28 lapsed"
    """
    return text.partition(": ")[0]


def in_short(standing: Iterable[Diagnostic]) -> tuple[InShort, ...]:
    """The STOPs and HOLDs against a page, the gravest first.

    Args:
        standing: What the rules found against the page.
    """
    grave = [*standing]
    stops = [one for one in grave if one.severity is Severity.STOP]
    holds = [one for one in grave if one.severity is Severity.HOLD]
    told = [one for one in holds if one.code in TOLD_BELOW]
    lines = [InShort(str(one.severity), one.text) for one in stops]
    lines += [_cut(one) for one in holds if one not in told]
    if len(told) == 1:
        lines.append(_cut(told[0]))
    elif told:
        words = f"{first_words(told[0].text)}, and {len(told) - 1} more"
        lines.append(InShort(str(Severity.HOLD), words, tuple(one.text for one in told)))
    return tuple(lines)


def _cut(notice: Diagnostic) -> InShort:
    words = first_words(notice.text)
    return InShort(str(notice.severity), words, (notice.text,) if words != notice.text else ())


def ways_told(pages: tuple[Page, ...]) -> tuple[Page, ...]:
    """Pages of which each way in says what stands against the page that it leads to.

    Args:
        pages: Every page, with its review.
    """
    against = {
        page.key: page.review.brief or page.review.words
        for page in pages
        if not page.review.trusted
    }
    return tuple(
        replace(page, blocks=tuple(_told(one, against) for one in page.blocks))
        if any(isinstance(one, WaysIn) for one in page.blocks)
        else page
        for page in pages
    )


def _told(block: Block, against: Mapping[str, str]) -> Block:
    if not isinstance(block, WaysIn):
        return block
    ways = []
    for way in block.ways:
        words = against.get(way.link.target, "")
        ways.append(replace(way, against=words.partition(". ")[0] if block.close else words))
    return replace(block, ways=tuple(ways))
