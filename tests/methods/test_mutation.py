"""Every figure of the methods matters: with one of them seven percent larger, some proof must fail.

Numbers are changed one at a time, in the Python of a module and in the formulas and limits it holds as
text, defaults included. A figure that no proof notices is a figure that nobody would miss when it is
mistyped.
"""

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType

import pytest

import garboard.methods
from garboard.calc.method import Method
from garboard.methods import METHODS
from garboard.methods.proof import Outcome, prove

FOLDER = Path(garboard.methods.__file__).parent
TEXTS = ("Limit", "Alarm")
"""Calls whose first argument is text in the calculation language."""
FIGURE = re.compile(r"#[^\n]*|(?<![\w.])(?P<figure>\d+(?:\.\d+)?)(?![\w.])")
"""A comment, which is passed over, or a number."""
MODULES = {
    "air_line": "air_line",
    "batteries": "batteries",
    "bilge": "bilge",
    "cable_current": "cable_current",
    "cable_size": "cable_size",
    "closed_volume": "closed_volume",
    "compressor": "compressor",
    "conductors": "cable_size",
    "conversion": "conversion",
    "deck": "closed_volume",
    "delivery": "delivery",
    "engine_room": "engine_room",
    "expansion": "expansion",
    "flammable_gas": "flammable_gas",
    "flooding": "flooding",
    "free_surface": "free_surface",
    "gauges": "gauges",
    "guards": "guards",
    "hydraulics": "hydraulics",
    "leak": "leak",
    "moisture": "moisture",
    "orifice": "orifice",
    "pipe_flow": "pipe_flow",
    "pressure_codes": "test_pressure",
    "pressure_parts": "pressure_parts",
    "pump_rows": "pump_rules",
    "pump_rules": "pump_rules",
    "receiver": "receiver",
    "relief": "relief",
    "relief_area": "relief",
    "sensing_line": "sensing_line",
    "ship_motion": "ship_motion",
    "starting_air": "starting_air",
    "starting_rules": "starting_rules",
    "stored_energy": "stored_energy",
    "suction": "suction",
    "surge": "surge",
    "tanks": "tanks",
    "test_pressure": "test_pressure",
    "threads": "threads",
    "welds": "welds",
}
"""A module with figures, and the one that declares the method which uses them."""


def figures(tree: ast.Module) -> Iterator[tuple[ast.Constant, int]]:
    """Every number of a module: the constant it stands in, and which one of that text it is."""
    places = {id(part) for node in ast.walk(tree) if isinstance(node, ast.Subscript)
              for part in ast.walk(node.slice)}  # fmt: skip
    formulas = {
        id(node.args[0])
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
        if node.func.id in TEXTS
    } | {
        id(node.value) for node in ast.walk(tree) if isinstance(node, ast.keyword)
        if node.arg == "body" or (node.arg == "default" and not is_unsaid(node.value))
    }  # fmt: skip
    for node in ast.walk(tree):
        if not isinstance(node, ast.Constant) or id(node) in places:
            continue
        if isinstance(node.value, str) and id(node) in formulas:
            for number, found in enumerate(FIGURE.finditer(node.value)):
                if float(found["figure"] or 0):
                    yield node, number
        elif (
            isinstance(node.value, int | float) and node.value and not isinstance(node.value, bool)
        ):
            yield node, 0


def is_unsaid(default: ast.expr) -> bool:
    """Whether a default is below zero, which only stands for what nobody said."""
    return isinstance(default, ast.Constant) and str(default.value).startswith("-")


def change(node: ast.Constant, which: int) -> str:
    """Make one number seven percent larger, and say which."""
    if not isinstance(node.value, str):
        assert isinstance(node.value, int | float)
        told = f"line {node.lineno}: {node.value}"
        node.value = round(node.value * 1.07, 12)
        return told
    found = list(FIGURE.finditer(node.value))[which]
    line = node.value.count("\n", 0, found.start())
    told = f"line {node.lineno + line}: {found[0]} in {node.value.splitlines()[line]}"
    larger = f"{float(found[0]) * 1.07:.12g}"
    node.value = node.value[: found.start()] + larger + node.value[found.end() :]
    return told


def load(name: str, tree: ast.Module, patch: pytest.MonkeyPatch) -> ModuleType:
    """The module that a changed text makes, in the place of the true one."""
    full = f"garboard.methods.{name}"
    module = ModuleType(full)
    patch.setitem(sys.modules, full, module)
    patch.setattr(garboard.methods, name, module)
    exec(compile(tree, name, "exec"), module.__dict__)  # noqa: S102 - our own text
    return module


def declared(module: ModuleType) -> Method:
    """The method that a module declares."""
    return next(value for value in vars(module).values() if isinstance(value, Method))


def is_noticed(name: str, tree: ast.Module, start: int) -> int | None:
    """The number of a proof that fails with this text, tried from `start` on; None if none does."""
    owner = MODULES[name]
    with pytest.MonkeyPatch.context() as patch:
        try:
            module = load(name, tree, patch)
            if owner != name:
                source = (FOLDER / f"{owner}.py").read_text("utf-8")
                module = load(owner, ast.parse(source), patch)
            method = declared(module)
        except (ArithmeticError, LookupError, TypeError, ValueError):
            return start
        proofs = method.proofs
        order: list[int] = [*range(start, len(proofs)), *range(start)]
        for number in order:
            if prove(method, proofs[number]).outcome is not Outcome.REPRODUCED:
                return number
    return None


def survivors(name: str) -> tuple[int, list[str]]:
    """How many numbers a module holds, and those that no proof misses."""
    tree = ast.parse((FOLDER / f"{name}.py").read_text("utf-8"))
    last, left = 0, []
    down_each_column = sorted(
        figures(tree), key=lambda found: (found[0].col_offset, found[0].lineno, found[1])
    )
    for node, which in down_each_column:
        right = node.value
        told = change(node, which)
        killer = is_noticed(name, tree, last)
        node.value = right
        if killer is None:
            left.append(told)
        else:
            last = killer
    return len(down_each_column), left


def test_every_module_with_a_method_is_tried() -> None:
    declaring = {
        path.stem for path in FOLDER.glob("*.py") if "_METHOD: Final = " in path.read_text("utf-8")
    }

    assert declaring == set(MODULES.values())
    assert len(declaring) == len(METHODS)


@pytest.mark.parametrize("name", MODULES)
def test_a_figure_seven_percent_larger_fails_a_proof(name: str) -> None:
    as_it_is = ast.parse((FOLDER / f"{name}.py").read_text("utf-8"))
    assert is_noticed(name, as_it_is, 0) is None

    _, unnoticed = survivors(name)

    assert unnoticed == []
