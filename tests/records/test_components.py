"""The table of component kinds and the properties of a component agree with one another."""

from dataclasses import fields

import pytest

from garboard.names import RECORD_LETTERS
from garboard.records.component import QUANTITIES, Component
from garboard.records.component_kinds import (
    COMPONENT_KINDS,
    EVERY_KIND,
    ComponentKind,
    kinds_of_letters,
)

NAMES = {item.name for item in fields(Component)}


@pytest.mark.parametrize("kind", COMPONENT_KINDS.values(), ids=lambda kind: kind.name)
def test_a_kind_names_properties_that_a_component_has(kind: ComponentKind) -> None:
    assert set(kind.numbers) <= {*QUANTITIES, "range"}
    assert set(kind.asks) <= NAMES


@pytest.mark.parametrize("kind", COMPONENT_KINDS.values(), ids=lambda kind: kind.name)
def test_what_a_kind_wants_it_can_have(kind: ComponentKind) -> None:
    numbers = set(kind.wants) & {*QUANTITIES, "range"}

    assert numbers <= set(kind.numbers)
    assert ("usual" in kind.wants) <= bool(kind.usual or kind.positions)


@pytest.mark.parametrize("kind", COMPONENT_KINDS.values(), ids=lambda kind: kind.name)
def test_no_tag_has_the_letters_of_a_record(kind: ComponentKind) -> None:
    assert kind.letters
    assert set(kind.letters).isdisjoint(RECORD_LETTERS)


def test_the_table_has_every_kind_of_the_trade_once() -> None:
    assert len(COMPONENT_KINDS) == 50
    assert COMPONENT_KINDS["changeover"].letters == ("XO",)


def test_letters_lead_back_to_their_kinds() -> None:
    assert kinds_of_letters("HV") == ("stop valve", "drain valve", "vent valve", "cock")
    assert kinds_of_letters("ZZ") == ()


def test_every_number_belongs_to_some_kind() -> None:
    known = {name for kind in COMPONENT_KINDS.values() for name in kind.numbers}

    assert set(QUANTITIES) <= known
    assert set(EVERY_KIND) <= set(QUANTITIES)
