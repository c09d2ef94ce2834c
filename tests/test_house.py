"""The rules of the house: what may import what, who owns a risky import, how long a module may be."""

import ast
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

HOUSE = Path(__file__).parent.parent
CORE = HOUSE / "kb" / "garboard"
ADAPTER = HOUSE / "plugins" / "mkdocs_garboard"

MAPS = ("DEVELOPERS.md", "README.md")
SOURCES = ("kb", "plugins", "tests", "content_demo")

LAYERS = (
    ("errors", "names"),
    ("calc",),
    ("methods", "records"),
    ("systems",),
    ("schematic",),
    ("reading",),
    ("review",),
    ("book",),
    ("changes",),
    ("rules", "views"),
    ("handbook",),
    ("editions", "correspondence"),
    ("cli", "reader"),
    ("__main__",),
)
"""Lowest first: a module imports its own part of the house, or something strictly lower."""

OWNERS = {
    "pint": "calc/units.py",
    "yaml": "reading/strict_yaml.py",
    "subprocess": "reading/history.py",
}
SITE_GENERATOR = ("mkdocs", "material", "markdown", "jinja2", "mkdocs_garboard")
NEVER = ("pickle", "marshal", "shelve", "importlib.machinery")
BANNED_NAMES = ("utils", "helpers", "common", "misc", "manager", "tools", "lib")
SHORT = {"handbook.py": 150, "plugin.py": 150}
RUNS_TEXT = ("eval", "exec", "compile", "__import__")
PRINTER = {"print": "cli"}


def modules(root: Path) -> list[Path]:
    return sorted(root.rglob("*.py"))


def imports(path: Path) -> Iterator[tuple[int, str]]:
    """Line and full name of everything a module imports, wherever in it."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            for name in node.names:
                yield node.lineno, name.name
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.lineno, node.module


def part(name: str) -> str:
    """The part of the house that a dotted core name belongs to."""
    return name.split(".")[1] if "." in name else "garboard"


def layer(of: str) -> int:
    return next(number for number, names in enumerate(LAYERS) if of in names)


def upward_imports(root: Path) -> list[str]:
    faults = []
    for path in modules(root):
        mine = path.relative_to(root).parts[0].removesuffix(".py")
        if mine == "__init__":
            continue
        for line, name in imports(path):
            if not name.startswith("garboard."):
                continue
            theirs = part(name)
            if theirs != mine and layer(theirs) >= layer(mine):
                faults.append(f"{path.relative_to(root)}:{line} imports {name}")
    return faults


def foreign_owners(root: Path, owners: dict[str, str]) -> list[str]:
    return [
        f"{path.relative_to(root)}:{line} imports {name}"
        for path in modules(root)
        for line, name in imports(path)
        if (owner := owners.get(name.split(".")[0])) and path.relative_to(root).as_posix() != owner
    ]


def test_imports_point_downwards() -> None:
    assert upward_imports(CORE) == []


def test_an_upward_import_is_seen(tmp_path: Path) -> None:
    (tmp_path / "calc").mkdir()
    (tmp_path / "calc" / "units.py").write_text("def f():\n    from garboard.rules import run\n")

    assert upward_imports(tmp_path) == ["calc/units.py:2 imports garboard.rules"]


def test_every_part_of_the_house_has_a_layer() -> None:
    parts = {path.relative_to(CORE).parts[0].removesuffix(".py") for path in modules(CORE)}

    assert parts - {"__init__"} <= {name for names in LAYERS for name in names}


def test_every_layer_is_a_part_of_the_house() -> None:
    parts = {path.relative_to(CORE).parts[0].removesuffix(".py") for path in modules(CORE)}

    assert {name for names in LAYERS for name in names} - parts == set()


def test_each_risky_import_has_one_owner() -> None:
    assert foreign_owners(CORE, OWNERS) == []


def test_a_second_owner_is_seen(tmp_path: Path) -> None:
    (tmp_path / "book.py").write_text("import yaml\n")

    assert foreign_owners(tmp_path, OWNERS) == ["book.py:1 imports yaml"]


def named_generators(root: Path) -> list[str]:
    return [
        f"{path.relative_to(root)}:{line} imports {name}"
        for path in modules(root)
        for line, name in imports(path)
        if name.split(".")[0] in SITE_GENERATOR
    ]


def test_the_core_names_no_site_generator() -> None:
    assert named_generators(CORE) == []


def test_importing_the_core_loads_no_site_generator() -> None:
    program = (
        f"import sys, garboard.cli; print([m for m in {SITE_GENERATOR!r} if m in sys.modules])"
    )

    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )

    assert done.stdout.strip() == "[]"


def back_doors(root: Path) -> list[str]:
    doors = ("garboard", "garboard.handbook", "garboard.views", "garboard.errors")
    return [
        f"{path.relative_to(root)}:{line} imports {name}"
        for path in modules(root)
        for line, name in imports(path)
        if name.split(".")[0] == "garboard"
        and not (name in doors or name.startswith("garboard.views."))
    ]


def called(root: Path, names: tuple[str, ...]) -> list[str]:
    return [
        f"{path.relative_to(root)}:{node.lineno} calls {node.func.id}"
        for path in modules(root)
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in names
        and path.relative_to(root).parts[0] != PRINTER.get(node.func.id)
    ]


def loaders(root: Path) -> list[str]:
    return [
        f"{path.relative_to(root)}:{line} imports {name}"
        for path in modules(root)
        for line, name in imports(path)
        if name in NEVER
    ]


def long_modules(root: Path) -> list[str]:
    return [
        f"{path.relative_to(root)} has {lines} lines"
        for path in modules(root)
        if (lines := len(path.read_text("utf-8").splitlines())) > SHORT.get(path.name, 350)
    ]


def vague_names(root: Path) -> list[str]:
    return [path.name for path in modules(root) if path.stem in BANNED_NAMES]


def silent_modules(root: Path) -> list[str]:
    return [
        path.relative_to(root).as_posix()
        for path in modules(root)
        if not ast.get_docstring(ast.parse(path.read_text("utf-8")))
    ]


BOTH = pytest.mark.parametrize("root", [CORE, ADAPTER], ids=["core", "adapter"])


def test_the_adapter_enters_the_core_by_its_front_doors() -> None:
    assert back_doors(ADAPTER) == []


@BOTH
def test_nothing_that_was_written_is_ever_executed(root: Path) -> None:
    assert called(root, RUNS_TEXT) + loaders(root) == []


@BOTH
def test_modules_stay_short_enough_to_read(root: Path) -> None:
    assert long_modules(root) == []


@BOTH
def test_modules_are_named_after_nouns_of_the_trade(root: Path) -> None:
    assert vague_names(root) == []


@BOTH
def test_every_module_says_what_it_is_for(root: Path) -> None:
    assert silent_modules(root) == []


@BOTH
def test_only_the_command_line_prints(root: Path) -> None:
    assert called(root, ("print",)) == []


@pytest.mark.parametrize(
    ("guard", "name", "text"),
    [
        (named_generators, "book.py", "def f():\n    from mkdocs.plugins import BasePlugin\n"),
        (back_doors, "pages.py", "from garboard.calc.units import read_unit\n"),
        (loaders, "cache.py", "import pickle\n"),
        (long_modules, "book.py", "x = 1\n" * 351),
        (long_modules, "handbook.py", "x = 1\n" * 151),
        (vague_names, "utils.py", ""),
        (silent_modules, "book.py", "x = 1\n"),
        (lambda root: called(root, RUNS_TEXT), "book.py", "eval('1')\n"),
        (lambda root: called(root, ("print",)), "book.py", "print('1')\n"),
        (lambda root: called(root, ("print",)), "cli.py", "print('1')\n"),
    ],
)
def test_each_guard_sees_what_it_guards_against(
    tmp_path: Path, guard: Callable[[Path], list[str]], name: str, text: str
) -> None:
    (tmp_path / name).write_text(text)

    assert len(guard(tmp_path)) == 1


# ---- what the map of the house names

CODE = re.compile(r"`([^`\n]+)`")
FENCE = re.compile(r"^(`{3,}).*?^\1$", re.DOTALL | re.MULTILINE)
FILE = re.compile(r"[\w./-]+\.(?:py|js|css|yml|toml)")
OF_CODE = re.compile(r"[A-Za-z]+_\w+|[a-z]+[A-Z]\w+|[A-Z][a-z]+[A-Z]\w+")
"""A name that can be nothing but one of the code: `read_book`, `garboardWay`, `PathFinding`."""
OF_THE_GENERATOR = {"site_url"}
BELONGS_TO_NOBODY = re.compile(r"<\w+>")
"""Stands for a name that somebody has yet to give."""


def house_files() -> list[Path]:
    """Every file of the house that is text of ours."""
    found = [path for root in SOURCES for path in (HOUSE / root).rglob("*") if path.is_file()]
    return [path for path in found if "__pycache__" not in path.parts]


def quoted(text: str) -> list[str]:
    """What a map says in letters of code, outside its fences."""
    return CODE.findall(FENCE.sub("", text))


def files_named_in_vain(text: str, known: list[Path]) -> list[str]:
    """Files that a map names and that are not there, by the end of their path."""
    ends = [f"/{path.relative_to(HOUSE).as_posix()}" for path in known]
    ends += [f"/{path.name}" for path in HOUSE.iterdir()]
    named = [each for each in quoted(text) if FILE.fullmatch(each)]
    return [one for one in named if not any(end.endswith(f"/{one}") for end in ends)]


def names_named_in_vain(text: str, known: list[Path]) -> list[str]:
    """Names of functions, classes and fields that a map uses and that no file of the house has."""
    there = {
        name
        for path in known
        if path.suffix in (".py", ".js", ".yml", ".html")
        for name in re.findall(r"\w+", path.read_text("utf-8"))
    } | OF_THE_GENERATOR
    named = [
        name
        for each in quoted(text)
        if not FILE.fullmatch(each)
        for name in OF_CODE.findall(BELONGS_TO_NOBODY.sub("", each))
    ]
    return [name for name in dict.fromkeys(named) if name not in there]


def targets_named_in_vain(text: str) -> list[str]:
    """What a map tells to make and the Makefile does not."""
    rules = re.findall(r"^(\w+):", (HOUSE / "Makefile").read_text("utf-8"), re.MULTILINE)
    told = re.findall(r"\bmake (\w+)", "\n".join((*quoted(text), *code_lines(text))))
    return [one for one in dict.fromkeys(told) if one not in rules]


def code_lines(text: str) -> list[str]:
    """The lines of the fences of a map."""
    return [line for fence in FENCE.finditer(text) for line in fence[0].splitlines()]


def layers_of(text: str) -> tuple[tuple[str, ...], ...]:
    """The order of the rooms as a map tells it: `calc` < `methods records` < ..."""
    chain = re.search(r"`[\w ]+`(?:\s*<\s*`[\w ]+`)+", text)
    return tuple(tuple(each.split()) for each in CODE.findall(chain[0])) if chain else ()


@pytest.mark.parametrize("name", MAPS)
def test_what_the_map_names_is_there(name: str) -> None:
    text, known = (HOUSE / name).read_text("utf-8"), house_files()

    found = targets_named_in_vain(text)
    if name == "DEVELOPERS.md":  # the other names files of a reader's own handbook and of its site
        found += files_named_in_vain(text, known) + names_named_in_vain(text, known)

    assert found == []


def test_the_map_tells_the_rooms_in_their_order() -> None:
    text = (HOUSE / "DEVELOPERS.md").read_text("utf-8")
    rows = re.findall(r"^\| `([\w/ ]+)` \|", text, re.MULTILINE)

    assert layers_of(text) == tuple(names for names in LAYERS if names != ("__main__",))
    assert set(" ".join(rows).split()) == {
        *(name for names in LAYERS for name in names if name != "__main__"),
        "plugins/mkdocs_garboard",
    }


def test_a_name_in_vain_is_seen() -> None:
    known = house_files()

    assert files_named_in_vain("`calc/gone.py`, `calc/units.py` and `gone.yml`", known) == [
        "calc/gone.py",
        "gone.yml",
    ]
    assert files_named_in_vain("`its.py`", known) == ["its.py"]
    gone, here = "GoneFor" + "Good", "`Diagnostic.in_full` and `rules/<fault_in_words>.py`"
    assert names_named_in_vain(f"`{gone}.of(it)`, {here}", known) == [gone]
    assert targets_named_in_vain("`make tea` and\n```\nmake test\nmake haste\n```\n") == [
        "tea",
        "haste",
    ]
    assert layers_of("`a b` < `c`, then") == (("a", "b"), ("c",))
