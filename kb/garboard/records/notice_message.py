"""A notice as it is sent to every holder: one plain message that a satellite terminal can carry.

It is made from the notice in one way only, so that what is printed, what is counted and what is
sent are the same signs.
"""

import unicodedata
from collections.abc import Iterable, Sequence

from garboard.records.edition import Edition
from garboard.records.vessel import Notice, Vessel

__all__ = [
    "LONGEST",
    "message_of",
    "messages",
    "plain_letters",
    "standing",
    "unsendable",
    "withdrawal",
]

LONGEST = 300
"""Signs; common practice for a plain satellite message, no source."""
PLAIN = {
    "\N{LATIN SMALL LETTER O WITH STROKE}": "o",
    "\N{LATIN CAPITAL LETTER O WITH STROKE}": "O",
    "\N{LATIN SMALL LETTER AE}": "ae",
    "\N{LATIN CAPITAL LETTER AE}": "AE",
    "\N{LATIN SMALL LETTER SHARP S}": "ss",
    "\N{LATIN SMALL LETTER L WITH STROKE}": "l",
    "\N{LATIN CAPITAL LETTER L WITH STROKE}": "L",
    "\N{LATIN SMALL LETTER D WITH STROKE}": "d",
    "\N{LATIN SMALL LETTER THORN}": "th",
    "\N{EN DASH}": "-",
    "\N{EM DASH}": "-",
    "\N{NON-BREAKING HYPHEN}": "-",
    "\N{HYPHEN}": "-",
    "\N{MINUS SIGN}": "-",
    "\N{LEFT SINGLE QUOTATION MARK}": "'",
    "\N{RIGHT SINGLE QUOTATION MARK}": "'",
    "\N{LEFT DOUBLE QUOTATION MARK}": '"',
    "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
    "\N{DEGREE SIGN}": " deg",
    "\N{PLUS-MINUS SIGN}": "+/-",
    "\N{MULTIPLICATION SIGN}": "x",
    "\N{MICRO SIGN}": "u",
    "\N{LESS-THAN OR EQUAL TO}": "<=",
    "\N{GREATER-THAN OR EQUAL TO}": ">=",
    "\N{HORIZONTAL ELLIPSIS}": "...",
}


def message_of(vessel: str, edition: int, notice: Notice, count: int) -> str:
    """The exact words that are sent.

    Args:
        vessel: Its name.
        edition: The edition it is a notice to; 0 where none was issued.
        notice: What is told.
        count: How many notices there are with this one, so that a holder sees if one is missing.

    >>> from datetime import date
    >>> notice = Notice(number="3", on=date(2031, 10, 2), says="Set too high", against=("SA-RV-001",))
    >>> message_of("Skerry Light", 2, notice, 3)
    'SKERRY LIGHT EDITION 2 NOTICE 3 OF 3 2031-10-02. DO NOT USE SA-RV-001. Set too high. UNTIL WITHDRAWN.'
    """
    never = f" DO NOT USE {', '.join(notice.against)}." if notice.against else ""
    words = " ".join(notice.says.split()).rstrip(".")
    until = f"UNTIL {notice.until}." if notice.until else "UNTIL WITHDRAWN."
    return f"{_head(vessel, edition, notice, count)} {notice.on}.{never} {words}. {until}"


def withdrawal(vessel: str, edition: int, notice: Notice, count: int) -> str:
    """The words that tell holders that a notice no longer stands."""
    head = _head(vessel, edition, notice, count)
    return f"{head} WITHDRAWN {notice.withdrawn or notice.on}. It no longer stands."


def _head(vessel: str, edition: int, notice: Notice, count: int) -> str:
    named = f"EDITION {edition}" if edition else "NO EDITION"
    return f"{vessel.upper()} {named} NOTICE {notice.number} OF {count}"


def messages(vessel: Vessel, editions: Sequence[Edition]) -> tuple[tuple[Notice, str], ...]:
    """Every notice with its words as sent, in the order they are written.

    Args:
        vessel: What handbook.yml says.
        editions: Those issued, oldest first; a notice belongs to the last before it.
    """
    return tuple(
        (one, message_of(vessel.vessel, _holding(editions, one), one, place))
        for place, one in enumerate(vessel.notices, 1)
    )


def _holding(editions: Iterable[Edition], notice: Notice) -> int:
    return max((one.number for one in editions if one.issued <= notice.on), default=0)


def standing(vessel: Vessel) -> tuple[Notice, ...]:
    """The notices that nobody has withdrawn."""
    return tuple(one for one in vessel.notices if one.withdrawn is None)


def unsendable(text: str) -> tuple[str, ...]:
    """The signs that a plain satellite message cannot carry, each once.

    >>> unsendable("Sjø at 5 °C, Sjø")
    ('ø', '°')
    """
    return tuple(dict.fromkeys(sign for sign in text if not " " <= sign <= "~"))


def plain_letters(text: str) -> str:
    """The same in letters that every terminal has; what has none is left out.

    >>> plain_letters("Sjø über 5 °C, naïve…")
    'Sjo uber 5 degC, naive...'
    """
    typed = "".join(PLAIN.get(sign, sign) for sign in text)
    parted = unicodedata.normalize("NFKD", typed)
    kept = "".join(sign if " " <= sign <= "~" else " " if sign.isspace() else "" for sign in parted)
    return " ".join(kept.split())
