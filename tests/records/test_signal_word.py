"""The word over a safety message follows from the hazard and from nothing else."""

import pytest

from garboard.errors import Where
from garboard.records.base import Mention
from garboard.records.hazard import Gravity, Harms, Hazard, IfIgnored, Message
from garboard.records.signal_word import SIGNAL_WORDS, signal_word

PEOPLE, PLANT = Harms.PEOPLE, Harms.PLANT
WILL, COULD = IfIgnored.WILL, IfIgnored.COULD


def hazard(harms: Harms | None, severity: int | None, if_ignored: IfIgnored | None) -> Hazard:
    return Hazard(
        where=Where("a.md"),
        harms=harms,
        severity=None if severity is None else Gravity(severity),
        if_ignored=if_ignored,
    )


@pytest.mark.parametrize(
    ("harms", "severity", "if_ignored", "word"),
    [
        (PEOPLE, 1, WILL, "DANGER"),
        (PEOPLE, 2, WILL, "DANGER"),
        (PEOPLE, 1, COULD, "WARNING"),
        (PEOPLE, 2, COULD, "WARNING"),
        (PEOPLE, 3, WILL, "CAUTION"),
        (PEOPLE, 3, COULD, "CAUTION"),
        (PEOPLE, 4, WILL, "CAUTION"),
        (PEOPLE, 4, COULD, "CAUTION"),
        (PLANT, 1, WILL, "NOTICE"),
        (PLANT, 4, COULD, "NOTICE"),
    ],
)
def test_every_mix_of_harm_and_sureness_has_one_word(
    harms: Harms, severity: int, if_ignored: IfIgnored, word: str
) -> None:
    assert signal_word(hazard(harms, severity, if_ignored)) == word


def test_what_nobody_has_said_counts_as_the_worst() -> None:
    assert signal_word(hazard(None, None, None)) == "DANGER"
    assert signal_word(hazard(None, 1, COULD)) == "WARNING"
    assert signal_word(hazard(PEOPLE, None, WILL)) == "DANGER"


def test_plant_alone_never_borrows_the_word_for_people() -> None:
    words = {
        signal_word(hazard(PLANT, grade, way)) for grade in (1, 2, 3, 4) for way in (WILL, COULD)
    }

    assert words == {"NOTICE"}


def test_a_word_typed_into_the_message_changes_nothing() -> None:
    typed = Hazard(
        where=Where("a.md"),
        harms=PEOPLE,
        severity=Gravity.CATASTROPHIC,
        if_ignored=WILL,
        message=Message(hazard=Mention("CAUTION air")),
    )

    assert signal_word(typed) == "DANGER"


def test_every_word_is_on_the_list() -> None:
    words = {
        signal_word(hazard(harms, grade, way))
        for harms in Harms
        for grade in (1, 2, 3, 4)
        for way in IfIgnored
    }

    assert words == set(SIGNAL_WORDS)
