"""Read a number that a person wrote into a record: quantity, tolerance, and the sources behind it.

`33 bar(g) +/- 0.5 bar [plate-R1, 46CFR54 54.10-10(b)]`: what stands in the last pair of brackets
names the sources, each with its clause.
"""

import re
from collections.abc import Iterator
from dataclasses import replace

from garboard.calc.quantity import read_quantity
from garboard.calc.value import Citation, Given
from garboard.errors import Where
from garboard.reading.scalars import SOURCE, Unfit

__all__ = ["read_citations", "read_given"]

LONGEST = 500
"""Signs of a quantity with its sources."""
CITED = re.compile(r"(?P<quantity>.*?)\s*\[(?P<sources>[^\[\]]*)\]")


def read_given(text: str, where: Where, address: str, about: str) -> Given:
    """Read a quantity with its sources.

    Args:
        text: As written.
        where: Of its first sign.
        address: The address it will have; empty where it has none.
        about: The tag or condition it belongs to.

    Raises:
        CalcFault: It is no quantity.
        Unfit: What stands in brackets names no source.
    """
    if len(text) > LONGEST:
        raise Unfit(f"a quantity of {len(text)} signs", "write number, unit and a few sources")
    found = CITED.fullmatch(text)
    written = found["quantity"] if found else text
    quantity = read_quantity(written, where, about)
    sources: tuple[Citation, ...] = ()
    if found:
        place = Where(where.path, where.line, where.column + found.start("sources"))
        sources = tuple(read_citations(found["sources"], place))
    return replace(quantity.given(address, where), sources=sources)


def read_citations(text: str, where: Where) -> Iterator[Citation]:
    """Read sources as cited, parted by commas.

    Args:
        text: What stands between the brackets.
        where: Of its first sign.

    Raises:
        Unfit: One of them names no source.

    >>> [(one.source, one.clause) for one in read_citations("A, B 4.2(b)", Where("a.yml"))]
    [('A', ''), ('B', '4.2(b)')]
    """
    for found in re.finditer(r"[^,]+|^(?=$)|(?<=,)(?=,|$)", text):
        source, _, clause = found[0].strip().partition(" ")
        if not SOURCE.fullmatch(source):
            raise Unfit(f"`[{text}]` names no source", "write [source clause], or [assumed]")
        start = found.start() + len(found[0]) - len(found[0].lstrip())
        yield Citation(source, clause.strip(), Where(where.path, where.line, where.column + start))
