"""The kinds of record, their fields and their questions agree with one another."""

from dataclasses import fields, is_dataclass
from typing import get_args, get_type_hints

import pytest

from garboard.errors import Where
from garboard.names import RECORD_LETTERS
from garboard.records.base import Asked, Class, Record
from garboard.records.component import Component
from garboard.records.kinds import BY_LETTERS, KINDS, Kind, Place, kind_of
from garboard.records.pages import WrittenPage
from garboard.records.people import PersonEntry
from garboard.records.questions import meaning_of, questions_of, words_of
from garboard.records.system import System
from garboard.records.vessel import Retired, Source, Spare, Term, Vessel

READ = (Component, System, Vessel, PersonEntry, Source, Term, Spare, Retired, WrittenPage)


def parts_of(kind: type) -> set[type]:
    """A dataclass and every dataclass that is read within it."""
    found: set[type] = set()
    waiting: list[object] = [kind]
    while waiting:
        part = waiting.pop()
        if not isinstance(part, type) or not is_dataclass(part) or part in found:
            continue
        if part.__module__.startswith("garboard.records"):
            found.add(part)
            hints = get_type_hints(part)
            read = (hints[item.name] for item in fields(part) if not item.metadata.get("beside"))
            waiting += [inner for hint in read for inner in flat(hint)]
    return found


def flat(hint: object) -> list[object]:
    """A type and every type within it."""
    return [hint, *(inner for arg in get_args(hint) for inner in flat(arg))]


EVERY_PART = sorted(
    set().union(*(parts_of(kind.record) for kind in KINDS), *(parts_of(kind) for kind in READ)),
    key=lambda part: part.__qualname__,
)


def test_the_letters_of_the_kinds_are_those_that_records_own() -> None:
    assert set(BY_LETTERS) == RECORD_LETTERS
    assert len(KINDS) == 18


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_kind_and_its_class_have_the_same_letters(kind: Kind) -> None:
    assert kind.record.letters == kind.letters
    assert kind.machine.start in kind.machine.states


def test_what_happened_lies_in_the_log_and_what_is_in_the_system() -> None:
    in_systems = {kind.letters for kind in KINDS if kind.place is Place.SYSTEM}

    assert in_systems == {"CL", "IT", "TR", "PR", "HZ", "AL", "FT", "MT"}


def test_a_record_knows_its_kind_and_an_unfiled_one_has_none() -> None:
    made = KINDS[0].record(where=Where("a.md"))

    assert kind_of(made) is KINDS[0]
    assert kind_of(Record(where=Where("a.md"))) is None


@pytest.mark.parametrize("part", EVERY_PART, ids=lambda part: part.__qualname__)
def test_every_field_that_is_read_has_a_question_under_it(part: type) -> None:
    questions = questions_of(part)

    silent = [
        item.name
        for item in fields(part)
        if not item.metadata.get("beside") and not questions.get(item.name)
    ]

    assert silent == []
    assert meaning_of(part)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_field_is_wanted_by_start_or_by_class_and_never_by_both(kind: Kind) -> None:
    for item in fields(kind.record):
        asked = item.metadata.get("asked", Asked())
        assert not (asked.before_leaving_start and asked.classes)
        assert set(asked.classes) <= set("ABC")


@pytest.mark.parametrize(
    ("letters", "later"),
    [
        ("CN", {"installed", "looked_at"}),
        ("FN", {"interim", "extent", "cause", "disposition", "actions", "effective_on"}),
        ("CA", {"evidence", "result"}),
        ("TR", {"made_good", "deviations"}),
        ("WP", {"done"}),
        ("MT", {"done"}),
        ("TM", {"fitted"}),
    ],
)
def test_what_is_filled_after_the_signature_is_marked_so(letters: str, later: set[str]) -> None:
    kind = BY_LETTERS[letters]

    marked = {
        item.name for item in fields(kind.record) if item.metadata.get("asked", Asked()).later
    }

    assert marked == later


def test_no_other_kind_has_fields_that_are_filled_later() -> None:
    others = {kind.letters for kind in KINDS} - {"CN", "FN", "CA", "TR", "WP", "MT", "TM"}

    assert not any(
        item.metadata.get("asked", Asked()).later
        for letters in others
        for item in fields(BY_LETTERS[letters].record)
    )


def test_words_of_a_closed_list_say_what_they_mean() -> None:
    assert words_of(Class)["C"] == "Minor or in kind."
