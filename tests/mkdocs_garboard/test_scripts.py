"""Scripts written in parts: each short, each leaning on those before it, and no name twice."""

import re
from collections.abc import Iterator

import pytest

from mkdocs_garboard.scripts import PARTS, SCRIPTS, part, script
from tests.mkdocs_garboard.conftest import Site

LONGEST = 250
COMMENT = re.compile(r"^ *//.*$", re.MULTILINE)
DECLARED = re.compile(r"^(?:function|var|const|let) .*", re.MULTILINE)
NAMED = re.compile(r"(?:^function |^(?:var|const|let) |, )(\w+)(?= = |\()")
INSIDE = re.compile(r"\bfunction (\w+)\(")


def declared(text: str) -> list[str]:
    """What a part lets those after it use."""
    found = []
    for line in DECLARED.findall(text):
        names = NAMED.findall(line)
        found += names[:1] if line.startswith("function") else names
    return found


def used(text: str, name: str) -> bool:
    """Whether a part calls a function or reads a constant that it does not declare itself."""
    if name.isupper() or "_" in name:
        return bool(re.search(rf"(?<![\w.]){name}\b", text))
    return name not in INSIDE.findall(text) and bool(re.search(rf"(?<![\w.]){name}\(", text))


def faults(texts: dict[str, str]) -> Iterator[str]:
    """Names declared twice, and names used before the part that declares them."""
    bare = {name: COMMENT.sub("", text) for name, text in texts.items()}
    order = list(bare)
    owner: dict[str, str] = {}
    for name, text in bare.items():
        for own in declared(text):
            if own in owner:
                yield f"{own} stands in {owner[own]} and in {name}"
            owner[own] = name
    for own, home in owner.items():
        for name in order[: order.index(home)]:
            if used(bare[name], own):
                yield f"{name} uses {own} of {home}"


def parts(name: str) -> dict[str, str]:
    return {own: part(name, own) for own in PARTS[name]}


@pytest.mark.parametrize("name", PARTS)
def test_a_part_leans_only_on_those_before_it(name: str) -> None:
    texts = parts(name)

    assert list(faults(texts)) == []
    assert all(declared(text) for text in texts.values())


@pytest.mark.parametrize("name", PARTS)
def test_parts_in_the_wrong_order_and_a_name_twice_are_seen(name: str) -> None:
    texts = parts(name)
    first = next(iter(texts))

    assert list(faults(dict(reversed(texts.items()))))
    assert list(faults({**texts, "more": f"function {declared(texts[first])[-1]}() {{}}\n"}))


@pytest.mark.parametrize("name", PARTS)
def test_a_part_is_short_and_says_what_it_is_for(name: str) -> None:
    for own, text in parts(name).items():
        assert text.startswith("// "), own
        assert len(text.splitlines()) <= LONGEST, own


def test_a_page_loads_each_script_as_one(site: Site) -> None:
    for uri, name in SCRIPTS.items():
        assert (site.folder / uri).read_text("utf-8") == script(name)
    shipped = {path.relative_to(site.folder).as_posix() for path in site.folder.rglob("*.js")}

    assert set(SCRIPTS) < shipped
    assert not {own for uri in shipped for own in uri.split("/")[:-1]} & {"find", "what-if"}
