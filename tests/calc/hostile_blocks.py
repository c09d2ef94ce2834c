"""Whole fences that mean harm: their lines, and the names that must not have a value."""

from typing import Final

__all__ = ["HOSTILE_BLOCKS"]

_MOST: Final = 120

HOSTILE_BLOCKS: Final[dict[str, tuple[list[str], tuple[str, ...]]]] = {
    "a ring through every line": (
        [f"x{n} = x{(n + 1) % _MOST}" for n in range(_MOST)],
        tuple(f"x{n}" for n in range(_MOST)),
    ),
    "every line uses every other": (
        [
            f"x{n} = " + " + ".join(f"x{m}" for m in range(_MOST) if m != n)[:380]
            for n in range(_MOST)
        ],
        ("x0", "x60", "x119"),
    ),
    "doubled at every line, with no end": (
        [f"x{n} = x{n + 1} * x{n + 1}" for n in range(_MOST - 1)],
        ("x0", "x118"),
    ),
    "squared at every line": (
        ["x0 = 1e12", *(f"x{n + 1} = x{n} * x{n}" for n in range(_MOST - 2))],
        ("x5", "x118"),
    ),
    "a power of a power at every line": (
        ["x0 = 9", *(f"x{n + 1} = x{n} ^ x{n}" for n in range(_MOST - 2))],
        ("x3", "x118"),
    ),
    "one name set five thousand times": (["x = 1"] * 5000, ()),
    "one endless line": (["y" * 10_000], ("y",)),
    "one endless line that starts well": (["y = 1 + " + "1 + " * 50_000], ("y",)),
    "endless empty lines, then a value": ([""] * 9000 + ["y = 1"], ("y",)),
    "endless comments, then a value": (["# a"] * 9000 + ["y = 1"], ("y",)),
    "more statements than a fence holds": (
        [f"x{n} = 1" for n in range(_MOST + 1)],
        (f"x{_MOST}",),
    ),
    "more terms than a fence holds": (
        [f"x{n} = " + " + ".join(["1"] * 60) for n in range(40)],
        ("x39",),
    ),
    "brackets that open on one line and close on the next": (
        ["y = (1 +", "2)", "w = ((1)", ")"],
        ("y", "w"),
    ),
    "a line that goes on with a backslash": (["y = 1 + \\", "  2"], ("y",)),
    "a fence inside a fence": (["y = 1 (", "```", "```calc other", "w = 1", "```"], ("y",)),
    "front matter inside a fence": (["---", "y: 1", "---"], ("y",)),
    "a document that a machine would load": (
        ["!!python/object/apply:os.system", "args: [id]", "y = !!int 1"],
        ("y",),
    ),
    "a whole program of another language": (
        ["import os", "def f(a):", "    return a", "y = f(os.getpid())", "print(y)"],
        ("y",),
    ),
    "a page of another": (
        ["<html>", "<script>", "y = document.cookie", "</script>"],
        ("y",),
    ),
    "a template": (["{% for a in b %}", "y = {{ a }}", "{% endfor %}"], ("y",)),
    "names that differ by what cannot be seen": (
        ["y = 1", "y\u200b = 2", "w = y\u200b"],
        ("w",),
    ),
    "names that differ by alphabet": (["a = 1", "\u0430 = 2", "w = \u0430"], ("w",)),
    "words of the language as names": (
        ["require = 1", "if = 1", "else = 1", "in = 1", "sqrt = 1", "pi = 1", "free_air = 1"],
        ("require", "if", "else", "in", "sqrt", "pi", "free_air"),
    ),
    "a value that comes to rest on a broken one through a hundred lines": (
        ["x0 = 1 / 0", *(f"x{n + 1} = x{n} + 1" for n in range(100))],
        ("x0", "x100"),
    ),
    "a choice that hides a ring": (
        ["a = 1 if b < 1 else c", "b = 2", "c = a"],
        ("a", "c"),
    ),
    "a requirement on a ring": (["a = b", "b = a", "require a < 1"], ("a", "b")),
    "a tolerance that reaches a hole": (
        ["a = 1 +/- 1", "y = 1 / a", "w = 1 / (a - 1)"],
        ("w",),
    ),
    "methods that are none": (
        ["y = nosuch(a = 1)", "w = nosuch(b = [1, 2])", "v = nosuch(c = word)"],
        ("y", "w", "v"),
    ),
    "signs of every plane": (
        [f"x{n} = {chr(n * 0x1111 + 0xA1)}" for n in range(90) if n != 12],
        ("x1", "x50"),
    ),
}
