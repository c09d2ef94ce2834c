"""How wide words are on a drawing, for what is set in lines of a given width: a wide face is assumed."""

from collections.abc import Iterator

from garboard.schematic.sheet import TEXT

__all__ = ["LINE", "broken", "width_of"]

LINE = 18
"""From one line of words to the next, in drawing units."""
NARROW, BROAD = "iljtfrI.,:;'()|! -", "mwMW@%"


def width_of(words: str, *, bold: bool = False) -> float:
    """Width of words at the height of the drawing's letters, in drawing units."""
    wide = sum(0.36 if one in NARROW else 0.93 if one in BROAD else 0.64 for one in words)
    return wide * TEXT * (1.08 if bold else 1)


def broken(words: str, width: float, *, bold: bool = False) -> Iterator[str]:
    """Words set in lines no wider than a width; a word that is wider stands alone.

    >>> list(broken("open the drain first", 70))
    ['open the', 'drain', 'first']
    """
    line = ""
    for word in words.split():
        longer = f"{line} {word}".strip()
        if line and width_of(longer, bold=bold) > width:
            yield line
            line = word
        else:
            line = longer
    if line:
        yield line
