"""YAML is read as it looks, with a place for every node, by whichever parser is built in."""

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from garboard.errors import Where
from garboard.reading import strict_yaml
from garboard.reading.nodes import ListNode, MapNode, Node, ScalarNode, Style, Tree
from garboard.reading.strict_yaml import read_yaml
from tests.reading.broken import BROKEN

PARSERS = {"built in C": yaml.CSafeLoader, "pure Python": yaml.SafeLoader}


@pytest.fixture(params=PARSERS)
def parser(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """Each parser in turn."""
    monkeypatch.setattr(strict_yaml, "LOADER", PARSERS[request.param])
    return str(request.param)


def values(node: Node | None) -> object:
    """A tree as plain text, lists and dictionaries."""
    if isinstance(node, ScalarNode):
        return node.text
    if isinstance(node, ListNode):
        return [values(item) for item in node.items]
    if isinstance(node, MapNode):
        return {entry.key.text: values(entry.value) for entry in node.entries}
    return None


def both(text: str) -> list[Tree]:
    """What each parser makes of a text."""
    trees = []
    before = strict_yaml.LOADER
    try:
        for loader in PARSERS.values():
            strict_yaml.LOADER = loader
            trees.append(read_yaml(text, "a.yml"))
    finally:
        strict_yaml.LOADER = before
    return trees


@pytest.mark.usefixtures("parser")
def test_words_that_other_tools_guess_at_stay_text() -> None:
    text = "a: no\nb: off\non: yes\nc: 010\nd: 12:30\ne: 1e3\nf: 0x10\ng: 2031-03-09\nh: null-1\n"

    tree = read_yaml(text, "a.yml")

    assert tree.diagnostics == ()
    assert values(tree.node) == {
        "a": "no",
        "b": "off",
        "on": "yes",
        "c": "010",
        "d": "12:30",
        "e": "1e3",
        "f": "0x10",
        "g": "2031-03-09",
        "h": "null-1",
    }


@pytest.mark.usefixtures("parser")
def test_every_node_knows_its_place() -> None:
    tree = read_yaml("a:\n  - {b: x, c: [1, 'two']}\n", "s/a.yml", first_line=5)

    top = tree.node
    assert isinstance(top, MapNode)
    listed = top.entries[0].value
    assert isinstance(listed, ListNode)
    inner = listed.items[0]
    assert isinstance(inner, MapNode)
    assert inner.flow
    last = inner.entries[1].value
    assert isinstance(last, ListNode)
    two = last.items[1]
    assert isinstance(two, ScalarNode)
    assert [top.where, listed.where, inner.where, inner.entries[0].key.where, two.where] == [
        Where("s/a.yml", 5, 1),
        Where("s/a.yml", 6, 3),
        Where("s/a.yml", 6, 5),
        Where("s/a.yml", 6, 6),
        Where("s/a.yml", 6, 19),
    ]
    assert (two.text, two.style, two.end) == ("two", Style.SINGLE, Where("s/a.yml", 6, 24))


@pytest.mark.usefixtures("parser")
def test_an_empty_value_stands_where_its_key_stands() -> None:
    tree = read_yaml("a: {b: , c: x}\nd:\n", "a.yml")

    top = tree.node
    assert isinstance(top, MapNode)
    inner, last = top.entries[0].value, top.entries[1].value
    assert isinstance(inner, MapNode)
    assert isinstance(last, ScalarNode)
    assert inner.entries[0].value.where == Where("a.yml", 1, 5)
    assert last.empty
    assert last.where == Where("a.yml", 2, 1)


@pytest.mark.usefixtures("parser")
def test_an_empty_text_is_no_fault() -> None:
    assert read_yaml("", "a.yml") == Tree(None, ())
    assert read_yaml("# a comment alone\n", "a.yml") == Tree(None, ())


@pytest.mark.usefixtures("parser")
def test_comments_set_off_by_two_spaces_are_comments() -> None:
    text = "# one\na: x  # two\nb:  # three\n  - y   # four\n#c: z\n\nd: 'q' # one will do here\n"

    tree = read_yaml(text, "a.yml")

    assert tree.diagnostics == ()
    assert values(tree.node) == {"a": "x", "b": ["y"], "d": "q"}


@pytest.mark.usefixtures("parser")
def test_a_numbered_line_under_a_text_is_not_lost_as_a_comment() -> None:
    tree = read_yaml("a: pumps\n  #2 runs\n", "a.yml")

    assert [str(item).partition(" [")[0] for item in tree.diagnostics] == [
        "a.yml:2:3: STOP: `#2 runs` is left out as a comment"
    ]


@pytest.mark.usefixtures("parser")
def test_block_texts_keep_their_lines_and_their_hashes() -> None:
    tree = read_yaml("a: |\n  one #1\n  two: 2\nb: >\n  three\n  four\n", "a.yml")

    assert tree.diagnostics == ()
    assert values(tree.node) == {"a": "one #1\ntwo: 2\n", "b": "three four\n"}


REFUSED = {
    "a second document": (
        "a: b\n---\nc: d\n",
        "a.yml:2:1: STOP: a second document starts here",
    ),
    "a directive": ("%YAML 1.1\n---\na: b\n", "a.yml:1:1: STOP: a line starts with %"),
    "a line of dots": ("a: b\n...\nc: d\n", "a.yml:2:1: STOP: a line starts with ..."),
    "a bracket too many": ("{a: b}}\n", "a.yml:1:7: STOP: `}` stands after the end"),
    "lists within lists within lists": (
        "[" * 30,
        "a.yml:1:21: STOP: more than 20 lists and mappings within each other",
    ),
    "more keys than a record can have": (
        "".join(f"k{number}: v\n" for number in range(10_001)),
        "a.yml:10001:1: STOP: more than 20000 keys and values",
    ),
    "a text longer than any record": (
        "a: " + "x" * 1_000_000,
        "a.yml:1:1: STOP: 1000003 signs, more than 1000000",
    ),
    "a bracket that a comment left open": (
        "a: [b #c]\nd: e\n",
        "a.yml:1:4: STOP: the [ is not closed on its line; a # in it makes the rest a comment",
    ),
    "an alias with nothing behind it": ("a: *\n", "a.yml:1:5: STOP: nothing follows `*`"),
    "a question mark at the start": ("a: ? b\n", "a.yml:1:4: STOP: `?` cannot start unquoted text"),
    "a question mark in a one-line list": (
        "a: [is it shut? x]\n",
        "a.yml:1:15: STOP: `?` stands in unquoted text within [",
    ),
    "a question mark in a one-line entry": (
        "a: {b: c,\n  d: is it shut? x}\n",
        "a.yml:2:16: STOP: `?` stands in unquoted text within {",
    ),
    "a bracket at the start": ("a: ]\n", "a.yml:1:4: STOP: `]` cannot start unquoted text"),
    "text behind a closing bracket": ("a: [b]c\n", "a.yml:1:7: STOP: `c` follows the closing ]"),
    "a line that fits nowhere": (
        "a:\n  - x\n y\n",
        "a.yml:3:2: STOP: `y` does not fit under the line above",
    ),
}


@pytest.mark.usefixtures("parser")
@pytest.mark.parametrize("says", REFUSED)
def test_what_cannot_be_read_as_it_looks_is_refused(says: str) -> None:
    text, expected = REFUSED[says]

    tree = read_yaml(text, "a.yml")

    assert expected in [str(item).partition(" [unreadable")[0] for item in tree.diagnostics]
    assert all(item.help for item in tree.diagnostics)


def test_an_alias_bomb_is_refused_before_it_goes_off() -> None:
    bomb = "a: &a [x, x, x, x, x, x, x, x, x]\n"
    bomb += "".join(
        f"{name}: &{name} [{', '.join(['*' + before] * 9)}]\n"
        for before, name in zip("abcdefgh", "bcdefghi", strict=True)
    )

    tree = read_yaml(bomb, "a.yml")

    assert len(tree.diagnostics) == 9 + 8 * 9
    assert all(item.code == "unreadable-record" for item in tree.diagnostics)


@pytest.mark.parametrize("says", BROKEN)
def test_both_parsers_say_the_same_of_a_broken_entry(says: str) -> None:
    one, other = both(BROKEN[says][0])

    assert one == other


PIECES = st.sampled_from(
    (
        *(
            "a",
            "b: ",
            "- ",
            "\n",
            "  ",
            "[",
            "]",
            "{",
            "}",
            ", ",
            "'",
            '"',
            "#",
            " #2",
            "x y",
            "? ",
        ),
        *("\u00e9", ": ", "|\n", ">\n", "\\", "&a ", "*a", "!t ", "---\n", "...\n", "%", "@", "~"),
        "30 bar(g)",
    )
)


@given(st.lists(PIECES, max_size=25).map("".join))
def test_both_parsers_accept_the_same_texts_and_read_them_alike(text: str) -> None:
    one, other = both(text)

    assert (one.node is None) == (other.node is None)
    if one.node is not None:
        assert one == other


@given(st.text(max_size=300))
def test_any_text_ends_in_a_tree_or_a_message(text: str) -> None:
    tree = read_yaml(text, "a.yml")

    assert all(item.help and item.where.line >= 1 for item in tree.diagnostics)


@given(
    st.recursive(
        st.text(max_size=20),
        lambda inner: (
            st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner, max_size=4)
        ),
        max_leaves=12,
    )
)
def test_what_a_plain_dump_holds_is_read_back(data: object) -> None:
    text = yaml.dump({"top": data}, default_style='"', allow_unicode=False)

    tree = read_yaml(text, "a.yml")

    if not tree.diagnostics:
        assert values(tree.node) == {"top": data}
