"""A system.yml from its components and its runs, and what is found in it under one code."""

from garboard.systems.finding import PathFinding
from tests.systems.pieces import survey_of

__all__ = ["found_of", "written"]


def written(parts: list[str], runs: list[str], headers: str = "", medium: str = "air") -> str:
    """A whole system.yml from its components and its runs."""
    lines = [f"system: SA\ntitle: test piece\nmedium: {medium}\ncomponents:"]
    lines += [f"  {part}" for part in parts]
    lines += [f"headers: {{{headers}}}"] if headers else []
    lines += ["connections:", *(f"  - {run}" for run in runs)]
    return "\n".join(lines) + "\n"


def found_of(text: str, code: str) -> list[PathFinding]:
    """What is found under one code."""
    return [found for found in survey_of(text).findings if found.code == code]
