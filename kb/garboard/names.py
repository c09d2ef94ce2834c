"""The grammar of names: record ids, component tags, block names, value addresses.

Ids and tags look alike and share one register, so that no string on a vessel ever means two things.
The letters decide which is which: those in RECORD_LETTERS belong to records.
"""

import re
from collections.abc import Iterable
from difflib import get_close_matches
from heapq import nsmallest

__all__ = [
    "ADDRESS",
    "BLOCK",
    "IDENTIFIER",
    "RECORD_LETTERS",
    "is_identifier",
    "is_record_id",
    "is_tag",
    "key_of",
    "meant_tag",
    "nearest",
    "system_of",
]

RECORD_LETTERS = frozenset("DD CN FN CA CL IT TR PR HZ AL FT LL OI CO TM WP RW MT".split())

IDENTIFIER = re.compile(r"[A-Z]{2}-[A-Z]{2}-\d{3}")
"""A record id or a full component tag, such as SA-DD-003 or SA-RV-001."""

BLOCK = re.compile(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*")
"""The name of a calc fence, unique in the handbook, such as receiver-sizing."""

ADDRESS = re.compile(
    r"(?P<owner>[A-Z]{2}-[A-Z]{2}-\d{3}|[a-z][a-z0-9]*(?:-[a-z0-9]+)*)"
    r"\.(?P<name>[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)?)"
)
"""The address of a value: block.name, block.name.result, TAG.property or site.name."""

TYPED_TAG = re.compile(r"(?P<letters>(?:[A-Za-z]{2}-)?[A-Za-z]{2})[- ]?(?P<figures>[0-9lIOo]{1,3})")
LOOK_ALIKES = str.maketrans("lIOo", "1100")

MOST_COMPARED = 12
"""Names that are compared sign by sign with a misspelt one: those that share the most signs."""


def is_identifier(text: str) -> bool:
    """Whether the text has the form of a record id or a full tag.

    >>> is_identifier("SA-RV-001"), is_identifier("RV-001")
    (True, False)
    """
    return IDENTIFIER.fullmatch(text) is not None


def is_record_id(text: str) -> bool:
    """Whether the text has the form of a record id.

    >>> is_record_id("SA-DD-003"), is_record_id("SA-RV-001")
    (True, False)
    """
    return is_identifier(text) and text[3:5] in RECORD_LETTERS


def is_tag(text: str) -> bool:
    """Whether the text has the form of a full component tag.

    >>> is_tag("SA-RV-001"), is_tag("SA-DD-003")
    (True, False)
    """
    return is_identifier(text) and text[3:5] not in RECORD_LETTERS


def system_of(identifier: str) -> str:
    """The system code that an id or a tag starts with.

    >>> system_of("SA-RV-001")
    'SA'
    """
    return identifier[:2]


def key_of(text: str) -> str:
    """Fold a name to the key people find it by: no case, spaces, hyphens, dots or slashes.

    >>> key_of("SA-RV-001"), key_of("sa rv 001")
    ('sarv001', 'sarv001')
    """
    return re.sub(r"[\s\-./_]+", "", text).casefold()


def meant_tag(text: str) -> str:
    """The tag that a slip stands for, where letters were typed for figures or noughts left out; else nothing.

    >>> meant_tag("AR-l"), meant_tag("ar 12"), meant_tag("SA-AR-OO1"), meant_tag("filling line")
    ('AR-001', 'AR-012', 'SA-AR-001', '')
    """
    typed = TYPED_TAG.fullmatch(text)
    if typed is None:
        return ""
    figures = typed["figures"].translate(LOOK_ALIKES)
    return f"{typed['letters'].upper()}-{figures:0>3}"


def nearest(word: str, known: Iterable[str], least: float = 0.6) -> str | None:
    """The known name closest to a misspelt one, or None when nothing comes near.

    Args:
        word: As it was written.
        known: The names.
        least: How alike the two must be, 1 for the same.

    >>> nearest("clas", ["class", "title"])
    'class'
    """
    wanted = word.casefold()[:80]
    signs = set(wanted)
    folded = {name.casefold(): name for name in sorted(known, reverse=True)}

    def apart(name: str) -> int:
        return len(signs.symmetric_difference(name)) + abs(len(name) - len(wanted)) // 4

    # The full comparison is dear, and a hostile file asks for it at every line.
    likely = nsmallest(MOST_COMPARED, folded, key=apart)
    found = get_close_matches(wanted, likely, n=1, cutoff=least)
    return folded[found[0]] if found else None
