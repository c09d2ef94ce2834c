"""What the string under each field says: the question of a started record, the entry of the manual.

The strings are read from the source of the module once; they stand beside the type of the field, so
that neither can be changed without the other in sight.
"""

import ast
import inspect
import sys
from collections.abc import Iterator, Mapping
from functools import cache

__all__ = ["meaning_of", "questions_of", "words_of"]


@cache
def _strings(module: str) -> Mapping[str, Mapping[str, str]]:
    """Class to name to the string under it, of one module."""
    tree = ast.parse(inspect.getsource(sys.modules[module]))
    return {node.name: dict(_under(node)) for node in tree.body if isinstance(node, ast.ClassDef)}


def _under(node: ast.ClassDef) -> Iterator[tuple[str, str]]:
    for first, second in zip(node.body, node.body[1:], strict=False):
        name = _name(first)
        text = _text(second)
        if name and text:
            yield name, " ".join(text.split())


def _name(node: ast.stmt) -> str:
    if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
        return node.target.id
    if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
        return node.targets[0].id
    return ""


def _text(node: ast.stmt) -> str:
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return node.value.value if isinstance(node.value.value, str) else ""
    return ""


def questions_of(kind: type) -> Mapping[str, str]:
    """What each field of a dataclass asks, by field name, inherited ones included.

    >>> from garboard.records.procedure import See
    >>> questions_of(See)["value"]
    'What does it show?'
    """
    found: dict[str, str] = {}
    for part in reversed(kind.__mro__):
        if part.__module__.startswith("garboard."):
            found |= _strings(part.__module__).get(part.__name__, {})
    return found


def words_of(words: type) -> Mapping[str, str]:
    """What each word of a closed list means, by the name of the member; only those that say it.

    >>> from garboard.records.inspection import Point
    >>> words_of(Point)["REVIEW"]
    'The papers are read.'
    """
    return _strings(words.__module__).get(words.__name__, {})


def meaning_of(kind: type) -> str:
    """The first paragraph of what a class says about itself, in one line."""
    return " ".join((inspect.getdoc(kind) or "").partition("\n\n")[0].split())
