"""The signal word of a hazard: computed from what it does and how sure that is, never typed.

After ANSI Z535 and ISO 3864-2 (verify before citing). What nobody has said yet counts as the worst:
a word that is too strong is asked about, one that is too weak is believed.
"""

from typing import Final

from garboard.records.hazard import Gravity, Harms, Hazard, IfIgnored

__all__ = ["SIGNAL_WORDS", "signal_word"]

SIGNAL_WORDS: Final = ("DANGER", "WARNING", "CAUTION", "NOTICE")
"""Gravest first."""


def signal_word(hazard: Hazard) -> str:
    """The word that stands over the message of a hazard.

    Args:
        hazard: Its `harms`, `severity` and `if_ignored` are looked at, nothing else.

    Returns:
        DANGER where people are killed or maimed if it is ignored, WARNING where they could be,
        CAUTION where they are hurt less, NOTICE where only plant is.
    """
    if hazard.harms is Harms.PLANT:
        return "NOTICE"
    if hazard.severity in (Gravity.MARGINAL, Gravity.NEGLIGIBLE):
        return "CAUTION"
    return "WARNING" if hazard.if_ignored is IfIgnored.COULD else "DANGER"
