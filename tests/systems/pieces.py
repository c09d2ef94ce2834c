"""Systems made of a few lines of text, for the tests of the graph: the same reader as a handbook's."""

from garboard.calc.network import evaluate
from garboard.errors import Diagnostic
from garboard.reading.system_file import read_system
from garboard.systems.laying import lay_out_plant
from garboard.systems.plant import Plant
from garboard.systems.survey import Survey, survey

__all__ = ["plant_of", "survey_of"]

AIR = "system: SA\ntitle: test piece\nmedium: air\n"


def plant_of(text: str, code: str = "SA") -> Plant:
    """A whole system.yml as a graph; a text that does not read cleanly is a fault of the test."""
    file = read_system(text, "systems/piece/system.yml", code)
    assert [str(fault) for fault in file.diagnostics if fault.severity != "WARN"] == []
    parts = {str(part.tag): part for part in file.components}
    givens = {
        f"{tag}.{name}": given for tag, part in parts.items() for name, given in part.givens()
    }
    return lay_out_plant(file.system, parts, evaluate((), givens, {}, {}).values)


def faults_of(text: str, code: str = "SA") -> tuple[Diagnostic, ...]:
    """What of a system.yml cannot be laid out."""
    return plant_of(text, code).faults


def survey_of(text: str, code: str = "SA") -> Survey:
    """What the checks find in a whole system.yml."""
    return survey(plant_of(text, code))


def short(tag: str) -> str:
    """A tag without its system: `RV-001`."""
    return tag[3:] if tag[2:3] == "-" and tag[5:6] == "-" else tag
