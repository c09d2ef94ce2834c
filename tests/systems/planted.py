"""Mistakes and harmless edits planted in the systems of the demo, as a table of finds and replacements."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from garboard.book import Book
from garboard.calc.network import evaluate
from garboard.calc.value import Given
from garboard.errors import Severity
from garboard.handbook import read_book
from garboard.reading.system_file import read_system
from garboard.systems.finding import Level, PathFinding
from garboard.systems.laying import lay_out_plant
from garboard.systems.survey import survey

DEMO = Path(__file__).parent.parent.parent / "content_demo"
FILE = Path(__file__).parent / "planted.yml"


@dataclass(frozen=True)
class Planted:
    """One edit of one system, and what must newly be found."""

    says: str
    folder: str
    given: Mapping[str, Any]
    """Edits that are made first: of a design that the demo does not have."""
    edits: Mapping[str, Any]
    appears: frozenset[str]
    """`code tag level`; empty: the edit is harmless."""


def planted() -> list[Planted]:
    """The whole table."""
    return [
        Planted(
            one["says"],
            one["system"],
            one.get("given", {}),
            {key: one[key] for key in ("adds", "change", "rename") if key in one},
            frozenset(one["appears"]),
        )
        for one in yaml.safe_load(FILE.read_text("utf-8"))
    ]


def demo_text(folder: str) -> str:
    """The system.yml of one system of the demo."""
    return (DEMO / "systems" / folder / "system.yml").read_text("utf-8")


def edited(text: str, edits: Mapping[str, Any]) -> str:
    """A text with components added, and with finds replaced.

    Raises:
        ValueError: Something to be replaced does not stand there exactly once; to be renamed, at all.
    """
    adds = "".join(f"  {line}\n" for line in edits.get("adds", ()))
    text = text.replace("components:\n", f"components:\n{adds}", 1)
    for old, new in edits.get("change", {}).items():
        if text.count(old) != 1:
            raise ValueError(f"{text.count(old)} times in the text: {old}")
        text = text.replace(old, new)
    for old, new in edits.get("rename", {}).items():
        if old not in text:
            raise ValueError(f"nowhere in the text: {old}")
        text = text.replace(old, new)
    return text


@cache
def demo_book() -> Book:
    """The demo, read and worked out."""
    return read_book(DEMO)


def findings_of(text: str, folder: str) -> Sequence[PathFinding]:
    """What the checks find in a system of the demo with another text."""
    book = demo_book()
    code = next(c for c, s in book.systems.items() if s.folder.endswith(f"/{folder}"))
    file = read_system(text, f"systems/{folder}/system.yml", code)
    stops = [str(fault) for fault in file.diagnostics if fault.severity is Severity.STOP]
    assert stops == [], stops
    own = {str(part.tag): part for part in file.components}
    others = {tag: part for tag, part in book.components.items() if part.system != code}
    givens = {f"{tag}.{name}": given for tag, part in own.items() for name, given in part.givens()}
    headers = {
        f"{header.tag}.rated": header.rated
        for header in (file.system.headers or {}).values()
        if header.tag and isinstance(header.rated, Given)
    }
    values = {**book.values, **evaluate((), {**givens, **headers}, {}, {}).values}
    plant = lay_out_plant(file.system, {**others, **own}, values)
    return survey(plant).findings


def keys(findings: Sequence[PathFinding]) -> set[str]:
    """What is asked of somebody: all but the asides."""
    return {
        f"{one.code} {one.about} {one.level}" for one in findings if one.level is not Level.ASIDE
    }


def newly_found(one: Planted) -> set[str]:
    """What is found after an edit, and was not before."""
    before = edited(demo_text(one.folder), one.given)
    after = edited(before, one.edits)
    return keys(findings_of(after, one.folder)) - keys(findings_of(before, one.folder))
