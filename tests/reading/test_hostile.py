"""A hostile file ends in a diagnostic, never in a traceback, and stops no other."""

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from garboard.errors import GarboardError
from garboard.reading.content import Content, Stub
from garboard.reading.folder import read_folder
from garboard.reading.record_file import read_markdown
from garboard.reading.shapes import keys_of
from garboard.reading.system_file import read_system
from garboard.reading.vessel_files import LISTS, read_list, read_vessel
from garboard.records.base import Record
from garboard.records.kinds import KINDS, Kind
from garboard.records.pages import WrittenPage

Files = Mapping[str, str | bytes]

HEAD = b"---\nid: SA-FN-001\ntitle: Low air\nsystem: SA\n"
END = b"\n---\nHissing.\n"
MB = 1_000_000

HEADS: Mapping[str, bytes] = {
    "brackets without end": b"where: " + b"[" * 500_000,
    "braces without end": b"found: " + b"{" * 500_000,
    "brackets on lines of their own": b"where:\n" + b"- [\n" * 100_000,
    "a list within a list within a list": b"where:\n"
    + b"".join(b" " * n + b"-\n" for n in range(1200)),
    "dashes in a row": b"where: \n" + b"- " * 300_000,
    "an alias bomb": b"a: &a [x]\n"
    + b"".join(
        b"%c: &%c [%s]\n" % (n + 1, n + 1, b", ".join([b"*%c" % n] * 9)) for n in range(97, 121)
    ),
    "aliases without anchors": b"where: [" + b"*a, " * 100_000 + b"]",
    "a merge of a merge": b"<<: {<<: {<<: {title: x}}}",
    "tags that build things": b"words: !!python/object/apply:os.system ['true']",
    "a tag of one's own": b"words: !<tag:x> a",
    "keys without end": b"".join(b"k%d: v\n" % n for n in range(60_000)),
    "one key 50 000 times": b"k: v\n" * 50_000,
    "a key as long as the file": b"k" * 900_000 + b": v",
    "a value as long as the file": b"words: " + b"v" * 900_000,
    "a date as long as the file": b"effective_on: " + b"2031-" * 150_000,
    "a count as long as the file": b"revision: " + b"9" * 900_000,
    "a count of minutes without end": b"revision: " + b"1:" * 400_000,
    "a quote without end": b"words: '" + b"x\n" * 400_000,
    "quotes in quotes": b"words: " + b"'" * 900_000,
    "backslashes": b'words: "' + b"\\" * 900_000,
    "escapes of nothing": b'words: "' + b"\\x" * 400_000,
    "a block text without end": b"words: |\n" + b" x\n" * 250_000,
    "colons": b"words: " + b": " * 400_000,
    "question marks": b"? " * 400_000,
    "hashes": b"#" * 900_000,
    "commas": b"where: [" + b"," * 900_000 + b"]",
    "tabs": b"\t" * 900_000,
    "a tab in a key": b"wo\trds: x",
    "a null byte": b"words: a\x00b",
    "control signs": bytes(range(1, 32)),
    "bytes that are no text": bytes(range(128, 256)) * 1000,
    "an overlong sign": b"words: \xc0\xaf",
    "half a surrogate": b"words: \xed\xa0\x80",
    "a sign beyond the last": b"words: \xf4\x90\x80\x80",
    "text that runs backwards": "words: \u202egnissih".encode(),
    "a line end of another alphabet": "words: a\u2028b: c".encode(),
    "spaces of another alphabet": "\u3000danger: none".encode(),
    "a second document": b"---\nid: SA-FN-002",
    "documents without end": b"---\n" * 200_000,
    "a directive": b"%YAML 9.9\n",
    "directives without end": b"%TAG ! tag:x,2000:\n" * 40_000,
    "dots": b"...\n" * 200_000,
    "a number for a key": b"1: x",
    "an empty key": b": x",
    "a key of nothing": b"? \n: x",
    "a list for a key": b"[a, b]: x",
    "a mapping for a key": b"{a: b}: x",
    "lists where words belong": b"words: [[[[a]]]]\ngrade: [a]\ndanger: [b]",
    "mappings where words belong": b"words: {a: {b: c}}\ngrade: {a: b}\nfound: {by: {a: b}}",
    "words where lists belong": b"signed: yes\nmedia: yes\nwhere: yes\nactions: yes",
    "signatures without end": b"signed:\n"
    + b"- {capacity: checker, by: a, on: 2031-01-01}\n" * 3000,
    "signatures of nothing": b"signed: [{}, {}, [], '', ~]",
    "a class of a template": b"class: {{ 7 * 7 }}",
    "a template": b"words: '{{ cycler.__init__.__globals__.os.system(1) }}'",
    "a script": b"words: <script>alert(1)</script>",
    "a path that climbs": b"media: [{photo: ../../../etc/passwd}]",
    "an id that climbs": b"actions: [../../x]",
    "another template's name": b"template: 404.html",
    "letters that look alike": "w\u043erds: x".encode(),
    "accents without end": b"words: " + "e\u0301".encode() * 200_000,
    "every word a YAML 1.1 surprise": b"words: no\nrevision: 1_0\ncredit: off\nclass: on\nstate: ~",
}
"""What stands in the head of a record."""

BODIES: Mapping[str, bytes] = {
    "fences without end": b"```calc x\n" * 90_000,
    "fences in fences": b"".join(b"`" * n + b"calc x\n" for n in range(3, 1200)),
    "tildes": b"~" * 900_000,
    "backticks": b"`" * 900_000,
    "backticks of every length": b" ".join(b"`" * n for n in range(1, 1300)),
    "a calc line without end": b"```calc x\na = " + b"1 + " * 220_000 + b"\n```\n",
    "many calc lines": b"```calc x\n" + b"a = 1\n" * 140_000 + b"```\n",
    "links without end": b"[9](value:" * 90_000,
    "links in links": b"[" * 450_000 + b"](value:a.b)" * 30_000,
    "values that climb": b"[9](value:../../etc)" * 40_000,
    "brackets and numbers": b"[1 " * 300_000,
    "comments without end": b"<!-- " * 180_000,
    "numbers without end": b"1" * 900_000,
    "numbers and dots": b"1." * 450_000,
    "numbers and units": b"1 bar " * 150_000,
    "ids without end": b"SA-RV-001" * 100_000,
    "ids in a row": b"SA-RV-001 " * 90_000,
    "round brackets": b"(" * 900_000,
    "one line of blanks": b" " * 900_000,
    "lines of blanks": b" \n" * 450_000,
    "list marks": b"- " * 450_000,
    "quotation marks": b"> " * 450_000,
    "a misspelt fence, often": b"```cacl x\n```\n" * 60_000,
    "hidden signs": "\u200b".encode() * 2000,
    "a null byte": b"a\x00b",
}
"""What stands in the text of a record."""

WHOLE: Mapping[str, tuple[str, bytes]] = {
    "nothing": ("log/a.md", b""),
    "one line end": ("log/a.md", b"\n"),
    "a fence alone": ("log/a.md", b"---"),
    "two fences": ("log/a.md", b"---\n---"),
    "fences alone": ("log/a.md", b"---\n" * 250_000),
    "a picture": ("log/a.md", b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 100),
    "UTF-16": ("log/a.md", HEAD.decode().encode("utf-16")),
    "UTF-32": ("log/a.md", HEAD.decode().encode("utf-32")),
    "more than a megabyte": ("log/a.md", HEAD + b"words: " + b"x" * MB),
    "carriage returns": ("log/a.md", b"\r" * 900_000),
    "a handbook of brackets": ("handbook.yml", b"[" * 900_000),
    "a handbook of bytes": ("handbook.yml", b"\xff" * 1000),
    "a handbook of nothing": ("handbook.yml", b""),
    "systems that climb": ("handbook.yml", b"vessel: S\nsystems: {SA: ../../etc, '..': x}"),
    "people without end": ("people.yml", b"".join(b"p%d: {}\n" % n for n in range(9_000))),
    "a source that is a list": ("sources.yml", b"- a\n- b\n"),
    "components without end": (
        "systems/starting-air/system.yml",
        b"components:\n" + b"".join(b"  ZZ-%03d: {}\n" % (n % 1000) for n in range(20_000)),
    ),
    "one run without end": (
        "systems/starting-air/system.yml",
        b"connections:\n  - CP-001" + b" > AR-001" * 90_000,
    ),
    "runs of nothing": ("systems/starting-air/system.yml", b"connections: [[], {}, '', ~, '>']"),
    "a number without end": (
        "systems/starting-air/system.yml",
        b"components:\n  RV-001: {kind: relief valve, set: " + b"3" * 900_000 + b" bar(g)}",
    ),
    "a unit without end": (
        "systems/starting-air/system.yml",
        b"components:\n  RV-001: {kind: relief valve, set: 3 " + b"bar." * 200_000 + b"}",
    ),
    "sources without end": (
        "systems/starting-air/system.yml",
        b'components:\n  RV-001: {kind: relief valve, set: "3 bar(g) [' + b"a," * 400_000 + b']"}',
    ),
}
"""A whole file, where it lies and what is in it."""


def cases() -> Iterator[tuple[str, str, bytes]]:
    """Every hostile file: what it is, where it lies, its bytes."""
    for says, data in HEADS.items():
        yield f"head: {says}", "log/a.md", (HEAD + data + END)[:MB]
    for says, data in BODIES.items():
        yield f"text: {says}", "log/a.md", (HEAD + b"---\n" + data)[:MB]
    for says, (path, data) in WHOLE.items():
        yield f"file: {says}", path, data


CASES = tuple(cases())
HARMLESS = {
    "head: hashes",
    "head: a template",
    "head: a script",
    "head: a path that climbs",
    "head: another template's name",
    "head: a block text without end",
    "head: a second document",
    "head: documents without end",
    "text: lines of blanks",
    "file: a handbook of nothing",
}
"""Text that is no fault to read: a page shows it escaped, and where it leads is a rule's matter."""


def test_there_are_a_hundred_hostile_files() -> None:
    assert len(CASES) >= 100


@pytest.mark.parametrize(("says", "path", "data"), CASES, ids=[case[0] for case in CASES])
def test_a_hostile_file_ends_in_a_message_and_stops_no_other(
    write_content: Callable[[Files], Path], says: str, path: str, data: bytes
) -> None:
    good = "---\nid: SA-FN-900\ntitle: Low air\nsystem: SA\n---\nHissing.\n"
    folder = write_content({path: data, "log/z.md": good})

    content = read_folder(folder)

    assert "SA-FN-900" in content.records
    assert all(item.help and len(str(item)) < 2000 for item in content.diagnostics)
    assert signed_by_nobody(content)
    if says not in HARMLESS:
        assert content.diagnostics


def signed_by_nobody(content: Content) -> bool:
    """Whether nothing hostile got a signature that was not written as one."""
    return all(line.by == "a" for record in content.records.values() for line in record.signed)


WORDS = st.sampled_from(
    ["a", "yes", "12", "2031-03-09", "30 bar(g)", "SA-RV-001", "SA-DD-003", "[x]", "{a: b}", "- "]
)
VALUES = st.recursive(
    WORDS | st.text(max_size=12),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(WORDS | st.text(max_size=6), inner, max_size=3)
    ),
    max_leaves=8,
)
KEYS = st.sampled_from(sorted({key for kind in KINDS for key in keys_of(kind.record)}))


def as_yaml(value: object) -> str:
    """A value in one line, every text in quotes."""
    if isinstance(value, list):
        return f"[{', '.join(as_yaml(item) for item in value)}]"
    if isinstance(value, dict):
        return f"{{{', '.join(f'{as_yaml(key)}: {as_yaml(item)}' for key, item in value.items())}}}"
    text = str(value).encode("unicode_escape").decode("ascii")
    return '"' + text.replace('"', '\\"') + '"'


@settings(max_examples=300, suppress_health_check=[HealthCheck.too_slow], deadline=None)
@given(st.sampled_from(KINDS), st.dictionaries(KEYS, VALUES, max_size=5))
def test_any_value_in_any_field_ends_in_a_thing_and_messages(
    kind: Kind, fields: dict[str, object]
) -> None:
    head = "".join(f"{key}: {as_yaml(value)}\n" for key, value in fields.items() if key != "id")

    read = read_markdown(f"---\nid: SA-{kind.letters}-001\n{head}---\nText.\n", "log/a.md")

    assert isinstance(read.thing, Record | Stub)
    assert all(item.where.path == "log/a.md" and item.help for item in read.diagnostics)


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=400))
def test_any_text_is_some_sort_of_file(text: str) -> None:
    for path in ("log/a.md", "index.md", "systems/starting-air/a.md"):
        assert isinstance(read_markdown(text, path).thing, Record | WrittenPage | Stub)
    read_system(text, "systems/starting-air/system.yml", "SA")
    read_vessel(text, "handbook.yml")
    for kind in LISTS:
        read_list(kind, text)


@settings(
    max_examples=200, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.binary(max_size=300))
def test_any_bytes_are_some_sort_of_folder(tmp_path: Path, data: bytes) -> None:
    for name in ("handbook.yml", "people.yml", "a.md"):
        (tmp_path / name).write_bytes(data)

    try:
        read_folder(tmp_path)
    except GarboardError:
        pytest.fail("a folder with a handbook.yml is a handbook's content, whatever is in it")
