"""What a quotation of a value must say, and whether it still does.

A quotation is the text of a `value:` link. After a plain number any words may follow, `9 starts`; a
number with a unit stands alone.
"""

import re

__all__ = ["agrees", "requoted"]

LEADING_NUMBER = re.compile(r"[-\u2212]?\d[\d.]*(?:e-?\d+)?")
SPACES = re.compile(r"[\s\u00a0\u202f]+")


def agrees(typed: str, shown: str, *, has_unit: bool) -> bool:
    """Whether the typed text says what the value says.

    Args:
        typed: The link's text; empty means that it is to be filled in.
        shown: The value as shown, in the unit the link asks for.
        has_unit: Whether the value as shown ends in a unit.

    >>> agrees("9 starts", "9", has_unit=False), agrees("30 bar", "30 bar(g)", has_unit=True)
    (True, False)
    """
    said = _plain(typed)
    if not said or said == shown:
        return True
    return not has_unit and said.partition(" ")[0] == shown


def requoted(typed: str, shown: str, *, has_unit: bool) -> str:
    """The text put right, with the words that followed a plain number kept.

    >>> requoted("9 starts", "4", has_unit=False), requoted("30 bar(g)", "32 bar(g)", has_unit=True)
    ('4 starts', '32 bar(g)')
    """
    said = _plain(typed)
    number = LEADING_NUMBER.match(said)
    if has_unit or not number:
        return shown
    return f"{shown}{said[number.end() :]}"


def _plain(text: str) -> str:
    return SPACES.sub(" ", text).strip().replace("\u2212", "-")
