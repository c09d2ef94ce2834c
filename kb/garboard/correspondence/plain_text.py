"""A pack as plain text: 72 columns, for any mail program, with signs that every machine has.

Lines never end in `=`, which a mail program could take for a fold of its own. Somebody's own words
keep their letters, whatever the script; only typographic signs and units are spelt out.
"""

import textwrap
from collections.abc import Iterable, Iterator

from garboard.correspondence.pack import Line, Pack, Part, Sort
from garboard.correspondence.size import MORE

__all__ = ["COLUMNS", "in_plain_signs", "plain_text"]

COLUMNS = 72
GLUE = "\u00a0"
"""Keeps `=` from the end of a line."""
SET_OFF = (Sort.HEADING, Sort.FIGURES, Sort.STRONG)
"""Sorts that a blank line stands before."""
SIGNS = str.maketrans(
    {
        "\u2018": "'",
        "\u2019": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u2013": "-",
        "\u2014": "-",
        "\u2212": "-",
        "\u2026": "...",
        "\u00a0": " ",
        "\u202f": " ",
        "\u2009": " ",
        "\u00b0": "deg",
        "\u00b2": "^2",
        "\u00b3": "^3",
        "\u00b5": "u",
        "\u03bc": "u",
        "\u00b7": "*",
        "\u00d7": "x",
        "\u00b1": "+/-",
        "\u2264": "<=",
        "\u2265": ">=",
        "\u2192": "->",
        "\u03a9": "ohm",
    }
)


def in_plain_signs(text: str) -> str:
    """Text with typographic signs and units spelt out.

    >>> in_plain_signs("\u2265 5 m\u00b2, 20 \u00b0C")
    '>= 5 m^2, 20 degC'
    """
    return text.translate(SIGNS)


def plain_text(pack: Pack) -> str:
    """Write a pack as plain text.

    Args:
        pack: Already as short as it must be.

    Returns:
        Lines of at most 72 columns, apart from single words that are longer.
    """
    rows = [
        *_folded(f"REVIEW PACK, {pack.vessel}".upper()),
        *_folded(pack.title),
        *_folded(pack.about),
        *_folded(pack.made),
        *_folded(
            f"{len(pack.parts)} parts and a reply form at the end. You sign nothing by reading."
        ),
        *(row for one in pack.left_out for row in _folded(one)),
    ]
    for number, part in enumerate(pack.all_parts):
        rows += _part(part, number)
    return in_plain_signs("\n".join((*rows, "")))


def _part(part: Part, number: int) -> Iterator[str]:
    yield ""
    title = f"{number}. {part.title}".upper() if number else part.title.upper()
    yield title
    yield "-" * min(COLUMNS, len(title))
    for before, line in zip((None, *part.lines), part.lines, strict=False):
        if line.sort in SET_OFF and before is not None:
            yield ""
        yield from _line(line)
    if part.left_out:
        yield from _folded(MORE.format(part.left_out))


def _line(line: Line) -> Iterator[str]:
    match line.sort:
        case Sort.FORM:
            yield from [line.text] if len(line.text) <= COLUMNS else _folded(line.text)
        case Sort.POINT:
            yield from _folded(line.text, "- ", "  ")
        case Sort.FACT:
            yield from _folded(f"{line.label}: {line.text}", "", "    ")
        case Sort.FIGURES:
            yield from _folded(line.text)
            yield from _cells(line.cells)
        case Sort.VERBATIM:
            yield from _folded(line.text, "  | ", "  | ")
        case Sort.HEADING:
            yield from _folded(f"{line.text}:")
        case _:
            yield from _folded(line.text)


def _cells(cells: Iterable[tuple[str, str]]) -> Iterator[str]:
    """Cells with their labels, as many in a row as fit."""
    row = ""
    for label, text in cells:
        told = f"{label} {text}"
        if row and len(row) + len(told) + 3 > COLUMNS - 4:
            yield from _folded(row, "    ", "      ")
            row = ""
        row = f"{row}; {told}" if row else told
    if row:
        yield from _folded(row, "    ", "      ")


def _folded(text: str, first: str = "", more: str = "") -> list[str]:
    words = in_plain_signs(" ".join(text.split())).replace("= ", f"={GLUE}")
    rows = textwrap.wrap(
        words,
        COLUMNS,
        initial_indent=first,
        subsequent_indent=more,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return [row.replace(GLUE, " ") for row in rows] or [first.rstrip()]
