"""Systems made of a few lines of text, for the tests of the graph: the same reader as a handbook's."""

from collections.abc import Mapping

from garboard.calc.network import evaluate
from garboard.calc.value import Value
from garboard.errors import Diagnostic
from garboard.reading.system_file import read_system
from garboard.records.component import Component
from garboard.records.system import System
from garboard.systems.laying import lay_out_plant
from garboard.systems.plant import Plant
from garboard.systems.survey import Survey, survey

__all__ = ["plant_of", "read_piece", "survey_of"]

AIR = "system: SA\ntitle: test piece\nmedium: air\n"


Piece = tuple[System, Mapping[str, Component], Mapping[str, Value]]
"""A system that was read: what is laid out."""


def read_piece(text: str, code: str = "SA") -> Piece:
    """A whole system.yml; a text that does not read cleanly is a fault of the test."""
    file = read_system(text, "systems/piece/system.yml", code)
    assert [str(fault) for fault in file.diagnostics if fault.severity != "WARN"] == []
    parts = {str(part.tag): part for part in file.components}
    givens = {
        f"{tag}.{name}": given for tag, part in parts.items() for name, given in part.givens()
    }
    return file.system, parts, evaluate((), givens, {}, {}).values


def plant_of(text: str, code: str = "SA") -> Plant:
    """The same as a graph."""
    return lay_out_plant(*read_piece(text, code))


def faults_of(text: str, code: str = "SA") -> tuple[Diagnostic, ...]:
    """What of a system.yml cannot be laid out."""
    return plant_of(text, code).faults


def survey_of(text: str, code: str = "SA") -> Survey:
    """What the checks find in a whole system.yml."""
    return survey(plant_of(text, code))


def short(tag: str) -> str:
    """A tag without its system: `RV-001`."""
    return tag[3:] if tag[2:3] == "-" and tag[5:6] == "-" else tag
