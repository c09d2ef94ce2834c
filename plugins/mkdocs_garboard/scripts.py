"""Scripts that are written in several files, each about one thing, and that a browser loads as one.

One script a page, so that the one file, a policy and a document of another build name one thing.
The parts share their names: what one of them declares, those after it may use, and nobody else.
"""

import re
from importlib.resources import files
from typing import Final

__all__ = ["PARTS", "SCRIPTS", "part", "script"]

PARTS: Final = {
    "find": ("words", "numbers", "list", "names", "phrases", "question", "box"),
    "what-if": ("arithmetic", "corners", "verdicts", "shown", "typed", "form"),
}
"""Script to its parts, each after those that it leans on."""
MARGIN: Final = re.compile(r"^ *(?://.*)?\n|^ +", re.MULTILINE)
"""Lines that are a comment or empty, and what stands before the others."""
SCRIPTS: Final = {f"assets/{name}.js": name for name in PARTS}
"""Where each of them stands in the site."""


def part(name: str, own: str) -> str:
    """The text of one part of a script."""
    return (files("mkdocs_garboard") / "templates" / name / f"{own}.js").read_text("utf-8")


def script(name: str) -> str:
    """A whole script, as a page loads it: every page does, so what only its makers read stays at home."""
    body = "".join(MARGIN.sub("", part(name, own)) for own in PARTS[name])
    return f'(function () {{\n"use strict";\n{body}}})();\n'
