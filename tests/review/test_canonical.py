"""What moves the digest of a record, and what does not."""

import json
import os
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from datetime import date, timedelta
from enum import Enum
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from garboard.calc.value import Given
from garboard.reading.folder import read_folder
from garboard.reading.record_file import read_markdown
from garboard.records.base import Asked, Record
from garboard.records.component import Component
from garboard.records.inspection import Review
from garboard.records.kinds import KINDS, Kind, kind_of
from garboard.records.pages import WrittenPage
from garboard.records.vessel import Source
from garboard.review.canonical import canonical, own_digest
from tests.demo_site import DEMO, HOUSE, THIS_TREE

HEAD = """\
id: SA-CL-090
title: Starts in one charge
system: SA
class: A
author: lead
drafted: 2031-03-10
purpose: enough starts
method: Boyle
assumptions: [compressor off, receiver warm]
"""
BODY = """\
One charge gives [9 starts](value:starts.n?in=1) and no more
than that, with `a  b` set.

1. Open the drain.
2. Shut it.

| part | bar |
|---|---|
| SA-AR-001 | 30 |

    as typed  here

```calc starts; digits 3; hide working
V = 500 L  # both receivers [plate-R1, LOGBOOK 1.2]
each = 50 L  # one start [LOGBOOK]
n = floor(V / each)  # starts
require n >= 6  # six [BOYLE]
```

~~~text
left  as it is
~~~
"""


def digest(head: str = HEAD, body: str = BODY) -> str:
    thing = read_markdown(f"---\n{head}---\n{body}", "systems/starting-air/sa-cl-090.md").thing
    assert isinstance(thing, Record | WrittenPage)
    return own_digest(thing)


LAYOUT: Mapping[str, tuple[str, str]] = {
    "a wrapped line": (HEAD, BODY.replace("more\nthan", "more than")),
    "more space between words": (HEAD, BODY.replace("One charge", "One   charge")),
    "a space at the end of lines": (HEAD, BODY.replace("drain.\n", "drain.  \n")),
    "more blank lines": (HEAD, BODY.replace("\n\n1.", "\n\n\n\n1.")),
    "a comment": (HEAD, BODY.replace("more\n", "more <!-- ask the yard -->\n")),
    "a comment over blank lines": (HEAD, BODY + "\n<!-- ask\n\nthe yard -->\n"),
    "a comment that names a value": (HEAD, BODY.replace("more\n", "more <!-- starts.V -->\n")),
    "the order of keys": (
        "purpose: enough starts\n" + HEAD.replace("purpose: enough starts\n", ""),
        BODY,
    ),
    "quotes around a field": (HEAD.replace("method: Boyle", 'method: "Boyle"'), BODY),
    "other quotes": (HEAD.replace("method: Boyle", "method: 'Boyle'"), BODY),
    "a list by lines": (
        HEAD.replace("[compressor off, receiver warm]", "\n  - compressor off\n  - receiver warm"),
        BODY,
    ),
    "a folded field": (HEAD.replace("enough starts", ">-\n  enough\n  starts"), BODY),
    "a comment in the front matter": (HEAD + "# ask the yard\n", BODY),
    "a label of a calculation": (HEAD, BODY.replace("# one start [", "# free air of one start [")),
    "a comment line in a calculation": (HEAD, BODY.replace("n = floor", "# ask [YARD]\nn = floor")),
    "space in a calculation": (HEAD, BODY.replace("floor(V / each)", "floor( V  /  each )")),
    "the order of calculation lines": (
        HEAD,
        BODY.replace("V = 500 L  # both receivers [plate-R1, LOGBOOK 1.2]\n", "").replace(
            "n = floor", "V = 500 L  # both receivers [plate-R1, LOGBOOK 1.2]\nn = floor"
        ),
    ),
    "the order of sources": (HEAD, BODY.replace("plate-R1, LOGBOOK 1.2", "LOGBOOK 1.2, plate-R1")),
    "options of a fence": (HEAD, BODY.replace("; digits 3; hide working", "; digits 5")),
    "columns lined up": (
        HEAD,
        BODY.replace("| part | bar |\n|---|---|", "| part      | bar |\n|-----------|-----|"),
    ),
    "the number in a quotation": (HEAD, BODY.replace("[9 starts]", "[10 starts]")),
    "a state": (HEAD + "state: checked\n", BODY),
    "a signature": (
        HEAD + "signed:\n  - {capacity: checker, by: reviewer-1, on: 2031-03-12}\n",
        BODY,
    ),
}
MEANING: Mapping[str, tuple[str, str]] = {
    "a word": (HEAD, BODY.replace("no more", "no fewer")),
    "a title": (HEAD.replace("Starts in", "Tries in"), BODY),
    "a class": (HEAD.replace("class: A", "class: B"), BODY),
    "the order of a list": (HEAD.replace("compressor off, receiver warm", "receiver warm, compressor off"), BODY),
    "the order of steps": (HEAD, BODY.replace("1. Open the drain.\n2. Shut it.", "1. Shut it.\n2. Open the drain.")),
    "a cell": (HEAD, BODY.replace("| 30 |", "| 33 |")),
    "a cell moved to another row": (HEAD, BODY.replace("| SA-AR-001 | 30 |", "| SA-AR-001 |\n| 30 |")),
    "a minus in a cell": (HEAD, BODY.replace("| 30 |", "| - |")),
    "code in a line": (HEAD, BODY.replace("`a  b`", "`a  c`")),
    "set-in code": (HEAD, BODY.replace("as typed", "as told")),
    "space in fenced code": (HEAD, BODY.replace("left  as", "left as")),
    "the word of fenced code": (HEAD, BODY.replace("as it is", "as it was")),
    "the words of a quotation": (HEAD, BODY.replace("[9 starts]", "[9 tries]")),
    "the address of a quotation": (HEAD, BODY.replace("value:starts.n", "value:starts.V")),
    "the unit of a quotation": (HEAD, BODY.replace("?in=1", "?in=%")),
    "a number in a calculation": (HEAD, BODY.replace("50 L", "51 L")),
    "a unit in a calculation": (HEAD, BODY.replace("50 L", "50 m3")),
    "a tolerance": (HEAD, BODY.replace("50 L", "50 L +/- 5 L")),
    "an expression": (HEAD, BODY.replace("V / each", "V * each")),
    "a name in a calculation": (HEAD, BODY.replace("n = floor", "m = floor")),
    "the name of a fence": (HEAD, BODY.replace("calc starts", "calc stops")),
    "a source": (HEAD, BODY.replace("[LOGBOOK]", "[BOYLE]")),
    "the clause of a source": (HEAD, BODY.replace("LOGBOOK 1.2", "LOGBOOK 1.3")),
    "a criterion": (HEAD, BODY.replace("n >= 6", "n >= 5")),
    "the sense of a criterion": (HEAD, BODY.replace("n >= 6", "n <= 6")),
    "a line left out": (HEAD, BODY.replace("require n >= 6  # six [BOYLE]\n", "")),
    "a field left out": (HEAD.replace("method: Boyle\n", ""), BODY),
}  # fmt: skip


@pytest.mark.parametrize("what", LAYOUT)
def test_the_layout_does_not_move_the_digest(what: str) -> None:
    head, body = LAYOUT[what]
    assert (head, body) != (HEAD, BODY)

    assert digest(head, body) == digest()


@pytest.mark.parametrize("what", MEANING)
def test_what_is_said_moves_the_digest(what: str) -> None:
    head, body = MEANING[what]
    assert (head, body) != (HEAD, BODY)

    assert digest(head, body) != digest()


def test_no_two_things_that_are_said_have_one_digest() -> None:
    found = [digest(*each) for each in MEANING.values()]

    assert len(set(found)) == len(found)


SHOWN_ALL_THE_SAME = (
    "`<!--` Open {} `-->`",
    "<!-- never closed {}",
    "a <!-- b\n\n{} --> c",
    "<!--> {} -->",
    "a <!---> {} -->",
    "<!-- a --!> {} -->",
    "a `x <!-- {}` z --> w",
    "\\<!-- {} -->",
    "    <!-- {} -->",
    "a\n\n    x\n    <!-- {} -->",
    "`[{} starts](value:starts.n)`",
    "\\`a` [{}](value:starts.n) `",
)


@pytest.mark.parametrize("text", SHOWN_ALL_THE_SAME)
def test_what_looks_like_a_comment_or_a_quotation_and_is_shown_counts(text: str) -> None:
    assert digest(HEAD, text.format(18)) != digest(HEAD, text.format(31))


HIDDEN = ("<!-- {} -->", "a <!-- {} --> b", "   <!--\n\n{}\n-->", "`a` <!-- {} --> `b`")


@pytest.mark.parametrize("text", HIDDEN)
def test_what_no_reader_sees_does_not_count(text: str) -> None:
    assert digest(HEAD, text.format(18)) == digest(HEAD, text.format(31))


def test_a_quotation_that_is_broken_over_two_lines_is_one() -> None:
    assert digest(HEAD, "It gives [9\nstarts](value:starts.n).") == digest(
        HEAD, "It gives [10 starts](value:starts.n)."
    )


@cache
def demo() -> Mapping[str, Record]:
    return read_folder(DEMO).records


def samples() -> list[tuple[Kind, list[Record]]]:
    """For each kind the records of the demo."""
    return [(kind, [one for one in demo().values() if kind_of(one) is kind]) for kind in KINDS]


def changed(value: Any) -> Iterator[Any]:
    """The same field with something else in it, once for each place inside it."""
    if isinstance(value, Given):
        yield replace(value, shown="77 bar(g)")
        yield replace(value, tolerance="7 %")
        yield replace(value, sources=())
    elif isinstance(value, tuple | Mapping):
        yield from in_container(value)
    elif is_dataclass(value) and not isinstance(value, type):
        for item in fields(value):
            for new in changed(getattr(value, item.name)):
                yield replace(value, **{item.name: new})
    else:
        yield other(value)


def in_container(value: Any) -> Iterator[Any]:
    """One thing more, one less, in another order, and each thing changed."""
    if isinstance(value, Mapping):
        yield {**value, "one more": "x"}
        yield from ({**value, key: new} for key, one in value.items() for new in changed(one))
        return
    yield (*value, "one more")
    yield value[:-1]
    if value[::-1] != value:
        yield value[::-1]
    for number, one in enumerate(value):
        yield from ((*value[:number], new, *value[number + 1 :]) for new in changed(one))


def other(value: Any) -> Any:
    """Another plain value of the same sort."""
    match value:
        case bool():
            return not value
        case Enum():
            return next((one for one in type(value) if one is not value), "other")
        case int() | float():
            return value + 1
        case str():
            return f"{value} x"
        case date():
            return value + timedelta(days=1)
    return "something"


def is_left_out(item: Any) -> bool:
    asked = item.metadata.get("asked")
    later = isinstance(asked, Asked) and asked.later
    return later or bool(item.metadata.get("beside")) or item.name in ("state", "signed")


@pytest.mark.parametrize(("kind", "records"), samples(), ids=[kind.name for kind in KINDS])
def test_every_field_of_every_kind_counts_but_those_that_are_filled_later(
    kind: Kind, records: list[Record]
) -> None:
    filled: set[str] = set()
    for record in records:
        before = own_digest(record)
        for item in fields(record):
            value = getattr(record, item.name)
            if item.name == "text":
                assert own_digest(replace(record, text=f"{value}\n\nx")) != before
                continue
            for new in changed(value):
                after = own_digest(replace(record, **{item.name: new}))
                if new != value:
                    filled.add(item.name)
                    assert (after == before) is is_left_out(item), (record.id, item.name, new)

    assert {item.name for item in fields(kind.record)} - filled == {"text"}


def test_every_property_of_a_part_and_every_line_of_a_source_counts() -> None:
    content = read_folder(DEMO)
    things: tuple[Component | Source, ...] = (
        *content.components.values(),
        *content.sources.values(),
    )
    for thing in things:
        before = own_digest(thing)
        for item in fields(thing):
            value = getattr(thing, item.name)
            for new in changed(value):
                after = own_digest(replace(thing, **{item.name: new}))
                if new != value:
                    assert (after == before) is is_left_out(item), (thing, item.name, new)


def test_later_fields_are_those_that_the_moves_fill() -> None:
    later = {
        kind.name: {
            item.name
            for item in fields(kind.record)
            if isinstance(item.metadata.get("asked"), Asked) and item.metadata["asked"].later
        }
        for kind in KINDS
    }

    assert {name: found for name, found in later.items() if found} == {
        "change": {"installed", "looked_at"},
        "finding": {"interim", "extent", "cause", "disposition", "actions", "effective_on"},
        "action": {"evidence", "result"},
        "test": {"made_good", "deviations"},
        "work package": {"done"},
        "maintenance task": {"done"},
        "temporary modification": {"fitted"},
    }


def test_a_no_is_not_the_same_as_no_answer() -> None:
    review = next(one for one in demo().values() if isinstance(one, Review) and one.confirms)
    confirms = review.confirms
    assert confirms is not None
    found = {
        own_digest(replace(review, confirms=replace(confirms, trained=answer)))
        for answer in (True, False, None)
    }

    assert len(found) == 3


def test_no_two_records_of_the_demo_have_one_digest() -> None:
    found = [own_digest(record) for record in demo().values()]

    assert len(set(found)) == len(found)


def test_the_canonical_form_is_json_that_reads_back() -> None:
    for record in demo().values():
        assert json.loads(canonical(record))["title"] == " ".join(record.title.split())


PRINTED = """\
import sys
from pathlib import Path
from garboard.handbook import read_book
reviews = read_book(Path(sys.argv[1])).reviews
for key in sorted(reviews):
    print(key, reviews[key].cover.own, sorted(reviews[key].cover.saw.items()))
"""


@pytest.fixture
def copy(tmp_path: Path) -> Callable[[str, Callable[[bytes], bytes]], Path]:
    """Copy the starting air of the demo, each file put through a function."""

    def write(name: str, put: Callable[[bytes], bytes]) -> Path:
        for path in sorted(DEMO.rglob("*")):
            inside = path.relative_to(DEMO)
            if path.suffix not in (".md", ".yml", ".csv") or "bilge-fire" in inside.parts:
                continue
            target = tmp_path / name / inside
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(put(path.read_bytes()))
        return tmp_path / name

    return write


def printed(folder: Path, where: Path, **environment: str) -> str:
    ran = subprocess.run(
        [sys.executable, "-c", PRINTED, str(folder)],
        capture_output=True,
        check=True,
        cwd=where,
        encoding="utf-8",
        env={**os.environ, "PYTHONPATH": THIS_TREE, "PYTHONUTF8": "1", **environment},
    )
    return ran.stdout


def test_digests_are_the_same_on_every_machine(
    copy: Callable[[str, Callable[[bytes], bytes]], Path], tmp_path: Path
) -> None:
    as_written = printed(copy("plain", lambda text: text), HOUSE, PYTHONHASHSEED="1")

    other = printed(
        copy("windows", lambda text: b"\xef\xbb\xbf" + text.replace(b"\r\n", b"\n").replace(b"\n", b"\r\n")),
        tmp_path,
        PYTHONHASHSEED="2",
        TZ="Pacific/Kiritimati",
        LC_ALL="tr_TR.UTF-8",
        LANG="tr_TR.UTF-8",
    )  # fmt: skip

    assert len(as_written.splitlines()) > 90
    assert other == as_written
