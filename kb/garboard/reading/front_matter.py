"""Part a Markdown file into its head and its body, and lose neither.

A head starts on the first line with `---` and ends with `---`. A file without one is all body, also
where its first line looks like a key: `Caution: ...` is a sentence.
"""

import re
from dataclasses import dataclass

from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.nodes import Tree
from garboard.reading.strict_yaml import CODE, read_yaml

__all__ = ["Parts", "part_file"]

FENCE = re.compile(r"---[ ]*")
NEARLY = re.compile(r"\s*(?:-{2,}|[\u2013\u2014]-*|\+{3,}|\*{3,}|\.{3})\s*")
"""What people write for `---` by mistake."""


@dataclass(frozen=True, slots=True)
class Parts:
    """A file in two parts."""

    head: Tree | None
    """What stands between the fences; None where there is no head."""
    body: str
    body_line: int
    """Line of the file on which the body starts."""
    diagnostics: tuple[Diagnostic, ...] = ()
    head_text: str = ""


def part_file(text: str, path: str) -> Parts:
    """Part a file.

    Args:
        text: The whole file, with plain line feeds.
        path: Of the file, for places.
    """
    lines = text.split("\n")
    if not FENCE.fullmatch(lines[0]):
        return Parts(None, text, 1, tuple(_late_head(lines, path)))
    for number, line in enumerate(lines[1:], start=1):
        if FENCE.fullmatch(line):
            head = "\n".join(lines[1:number])
            tree = read_yaml(head, path, first_line=2)
            body = "\n".join(lines[number + 1 :])
            return Parts(tree, body, number + 2, tree.diagnostics, head)
    fault = Diagnostic(
        Where(path, 1, 1),
        Severity.STOP,
        "the front matter opens here and is never closed",
        _where_to_close(lines),
        CODE,
    )
    return Parts(Tree(None, (fault,)), text, 1, (fault,), "\n".join(lines[1:]))


def _late_head(lines: list[str], path: str) -> list[Diagnostic]:
    """A head that does not start on the first line, or whose first line is misspelt."""
    first = next((n for n, line in enumerate(lines) if line.strip()), 0)
    line = lines[first]
    keyed = any(
        re.match(r"(?:id|title|page|system): ", row) for row in lines[first + 1 : first + 4]
    )
    if not keyed or not NEARLY.fullmatch(line):
        return []
    where = Where(path, first + 1, 1)
    text = "front matter starts on the first line, with three dashes"
    cure = (
        "delete what stands before it" if FENCE.fullmatch(line) else f"write --- for {line.strip()}"
    )
    return [Diagnostic(where, Severity.STOP, text, cure, CODE)]


def _where_to_close(lines: list[str]) -> str:
    for number, line in enumerate(lines[1:], start=2):
        if NEARLY.fullmatch(line):
            return f"write --- for {line.strip()} on line {number}"
    return "write a line of --- after its last key"
