"""Refuse signs that are not what they look like.

A Cyrillic a in a name, a hidden change of text direction or a true minus sign would make a line
read otherwise than it is worked out. What may stand outside a comment is plain ASCII, the plus-
minus sign, and the raised dot and figures of units.
"""

import re
import unicodedata

from garboard.calc.fault import CalcFault, Family, Line, Span

__all__ = ["check_characters", "sign_fault"]

HIDDEN = frozenset(("Cc", "Cf", "Co", "Cs", "Cn", "Zl", "Zp"))
ALLOWED = frozenset("±·⋅⁰¹²³⁴⁵⁶⁷⁸⁹⁻\u00b0\u00b5\u03bc\u03a9\u2126")
"""Outside comments; the last five only so that the list of units can name what to write."""

CURES = {
    "\u2212": "write the minus of the keyboard, -",
    "\u2013": "write the minus of the keyboard, -",
    "\u2014": "write the minus of the keyboard, -",
    "\u2010": "write the minus of the keyboard, -",
    "\u2011": "write the minus of the keyboard, -",
    "\u00d7": "write *",
    "\u2217": "write *",
    "\u00f7": "write /",
    "\u2215": "write /",
    "\u2044": "write /",
    "\u2264": "write <=",
    "\u2265": "write >=",
    "\u2260": "a requirement compares with <, <=, > or >=",
    "\u221a": "write sqrt(...)",
    "\u03c0": "write pi",
    "\u00a0": "retype the space",
    "\u2009": "retype the space",
    "\u202f": "retype the space",
    "\u00bd": "write 0.5",
    "\u2018": "words need no quotes; what it is goes behind #",
    "\u2019": "words need no quotes; what it is goes behind #",
    "\u201c": "words need no quotes; what it is goes behind #",
    "\u201d": "words need no quotes; what it is goes behind #",
    "'": "words need no quotes; what it is goes behind #",
    '"': "words need no quotes; what it is goes behind #",
    ";": "give each statement a line of its own",
    ":": "write name = expression, and the unit to show at the end as in UNIT",
    "{": "group with round brackets",
    "}": "group with round brackets",
    "\\": "keep a statement on one line; name a part of it on a line of its own",
    "!": "a requirement compares with <, <=, > or >=",
    "%": "write % behind a number and a space: 3 %",
    ".": "write a decimal number as 0.5; an address as block.name",
    "&": "write one require line for each comparison",
    "|": "name the two cases with a if ... else",
}
PLAIN = re.compile(r"[\t -~]*")


def check_characters(line: Line, code_end: int) -> None:
    """Look at every sign of a line.

    Args:
        line: The line.
        code_end: Where its comment starts; comments may hold any visible letter.

    Raises:
        CalcFault: A hidden sign anywhere, or a look-alike outside the comment.
    """
    if PLAIN.fullmatch(line.text):
        return
    for at, sign in enumerate(line.text):
        if sign.isascii() and sign.isprintable():
            continue
        if sign != "\t" and unicodedata.category(sign) in HIDDEN:
            text = f"a hidden sign {point(sign)} stands here"
            raise line.fault(Family.SYNTAX, Span(at, at + 1), text, "delete it, or retype the line")
        if at < code_end and sign != "\t" and sign not in ALLOWED:
            raise sign_fault(line, at)


def sign_fault(line: Line, at: int) -> CalcFault:
    """Refuse one sign of a line, with its code point where it is not of the keyboard."""
    sign = line.text[at]
    cure = CURES.get(sign)
    if sign.isascii():
        text = f"`{sign}` is no sign of this language"
        cure = cure or "use names, numbers with units, + - * / ^ ( ) and the listed functions"
    else:
        text = f"`{sign}` {point(sign)} is no sign of this language"
        cure = cure or "retype it; it may only look like a letter of the keyboard"
    return line.fault(Family.SYNTAX, Span(at, at + 1), text, cure)


def point(sign: str) -> str:
    """The code point of a sign.

    >>> point("-")
    'U+002D'
    """
    return f"U+{ord(sign):04X}"
