"""On paper nobody can follow a link: the page of a required value answers for it by itself."""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.calc.value import Requirement, Value
from garboard.handbook import Handbook
from garboard.records.inspection import Test
from garboard.views.inline import day, person
from garboard.views.page import Calculation, Page, WorkedLine
from garboard.views.ranges import ends
from tests.demo_site import demo_handbook


@pytest.fixture(scope="module")
def demo() -> Handbook:
    """The demo handbook."""
    return demo_handbook()


def texts(thing: object) -> Iterator[str]:
    """Every text of a page's data."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for part in thing:
            yield from texts(part)
    elif is_dataclass(thing):
        for item in fields(thing):
            yield from texts(getattr(thing, item.name))


def missing(book: Book, page: Page, asked: Requirement) -> list[str]:
    """What a page does not say of a requirement that stands on it."""
    (block,) = (
        one for one in page.blocks if isinstance(one, Calculation) and one.name == asked.block
    )
    (line,) = (
        one for one in block.lines if one.anchor == f"{asked.block}.require-{asked.where.line}"
    )
    lost = list(_judged(line, asked))
    said = " ".join(texts(block)) + " " + " ".join(texts(page.sources))
    for address in dict.fromkeys(
        one for used in asked.uses for one in (used, *book.network.upstream(used))
    ):
        value = book.values[address]
        inner = not (address in asked.uses or value.given)
        if not inner:
            lost += _number(value, said)
            lost += _sources(book, page, value, said)
    return lost


def _judged(line: WorkedLine, asked: Requirement) -> Iterator[str]:
    if asked.right not in line.limit:
        yield f"{asked.text}: limit {asked.right}"
    if asked.margin not in line.verdict:
        yield f"{asked.text}: margin {asked.margin}"
    if len(line.sources) < len(asked.sources):
        yield f"{asked.text}: source of the limit"


def _number(value: Value, said: str) -> Iterator[str]:
    if value.text not in said:
        yield f"{value.address}: value {value.text}"
    spread = ends(value, value.low, value.high)
    if spread and spread not in said and " and ".join(spread.split(" to ", 1)) not in said:
        yield f"{value.address}: range {spread}"


def _sources(book: Book, page: Page, value: Value, said: str) -> Iterator[str]:
    for cited in value.sources:
        lines = [one for one in page.sources if one.source == cited.source]
        if not any(f"[{one.number}]" in said or _numbered(page, one.number) for one in lines):
            yield f"{value.address}: source {cited.source}"
        text = " ".join(one.text for one in lines)
        known, record = book.content.sources.get(cited.source), book.records.get(cited.source)
        if known and known.edition and known.edition not in text:
            yield f"{value.address}: edition of {cited.source}"
        if cited.clause and cited.clause not in text:
            yield f"{value.address}: clause {cited.clause} of {cited.source}"
        if isinstance(record, Test):
            who = f"measured by {person(book, record.did)} on {day(record.on)}"
            if who not in text:
                yield f"{value.address}: {who}"


def _numbered(page: Page, number: int) -> bool:
    return any(
        number in line.sources
        for block in page.blocks
        if isinstance(block, Calculation)
        for line in block.lines
    )


def page_of(demo: Handbook, asked: Requirement) -> Page:
    owner = demo.book.network.sheets[asked.block].owner
    return next(page for page in demo.pages if owner in (page.key, page.source_path))


def test_every_required_value_answers_a_reviewer_on_its_own_page(demo: Handbook) -> None:
    requirements = demo.book.network.requirements

    lost = {
        f"{one.block}: {one.text}": found
        for one in requirements
        if (found := missing(demo.book, page_of(demo, one), one))
    }

    assert len(requirements) > 30
    assert lost == {}


@pytest.mark.parametrize(
    ("words", "loses"),
    [
        (r"at least|at most", "limit"),
        (r"Margin at the worst corner", "margin"),
        (r"measured by [a-z0-9 -]+ on", "measured by"),
        (r"\bto\b|\band\b", "range"),
    ],
)
def test_a_page_that_lost_a_part_of_the_answer_is_seen(
    demo: Handbook, words: str, loses: str
) -> None:
    def without(thing: object) -> object:
        if isinstance(thing, str):
            return "" if re.search(words, thing) else thing
        if isinstance(thing, tuple):
            return tuple(without(part) for part in thing)
        if (
            is_dataclass(thing)
            and not isinstance(thing, type)
            and type(thing).__module__.startswith("garboard.views")
        ):
            return type(thing)(
                **{item.name: without(getattr(thing, item.name)) for item in fields(thing)}
            )
        return thing

    asked = next(one for one in demo.book.network.requirements if one.block == "recharge")
    page = without(page_of(demo, asked))

    assert isinstance(page, Page)
    assert any(loses in one for one in missing(demo.book, page, asked))


def test_a_part_says_what_must_hold_of_it_and_who_measured_it(demo: Handbook) -> None:
    page = next(page for page in demo.pages if page.key == "BG-PS-001")

    said = " ".join(texts(page.blocks))

    for words in (
        "BG-PS-001.set >= p_least", "0.317 bar(d) (6 %)", "5.2 bar(g)", "in tolerance",
        "14 June 2031, volunteer, ", "BG-TR-004", "G-11", ", calibration in date that day, due 12 January 2032",
    ):  # fmt: skip
        assert words in said
    assert any("measured by volunteer on 14 June 2031" in one.text for one in page.sources)


def test_a_method_answers_for_itself(demo: Handbook) -> None:
    pages = [page for page in demo.pages if page.kind == "method"]
    asked = (
        "What it must not be used for", "Where it holds; past this it refuses", "Formula",
        "What it is given", "What it gives", "Proof, run at this build", "Sources", "who decides",
        "Caution: ", "grade",
    )  # fmt: skip

    lost = {
        page.key: [words for words in asked if words not in set(texts(page.blocks))]
        for page in pages
    }

    assert len(pages) > 8
    assert {key: words for key, words in lost.items() if words} == {}


def test_every_case_of_a_method_has_its_published_value_ours_and_the_tolerance(
    demo: Handbook,
) -> None:
    from garboard.handbook import proofs  # noqa: PLC0415 - only this test asks

    pages = {page.key: set(texts(page.blocks)) for page in demo.pages if page.kind == "method"}
    for one in proofs():
        said = pages[f"methods/{one.method.name}"]
        assert one.ours in said
        assert any(text.startswith(one.published) for text in said)
        if one.proof.relative:
            assert any(f"{100 * one.proof.relative:g} %" in text for text in said)
        source = next(item for item in one.method.sources if item.name == one.proof.source)
        assert {source.title, source.edition, source.clause} <= said


def test_the_demo_shows_a_drift_and_a_finding_that_covers_a_reading(demo: Handbook) -> None:
    drifting = {
        page.key
        for page in demo.pages
        if page.kind == "part" and any(text.endswith(", over time") for text in texts(page.blocks))
    }
    covered = [one for readings in demo.book.measured.values() for one in readings if one.finding]

    assert {"SA-PS-001", "SA-PS-002", "DC-EI-003"} <= drifting
    assert [(one.address, one.text, str(one.finding and one.finding.id)) for one in covered] == [
        ("SA-PS-002.set", "17.5 bar(g)", "SA-FN-015")
    ]


def test_the_demo_without_that_finding_is_held(tmp_path: Path) -> None:
    from garboard.handbook import read_book  # noqa: PLC0415 - only this test asks
    from garboard.rules import measured_off_design  # noqa: PLC0415
    from tests.demo_site import copy_demo  # noqa: PLC0415

    folder = copy_demo(tmp_path)
    for name in ("2031-09-24-second-switch-comes-low", "2031-09-28-sa-fn-016-review-of-sa-cn-002"):
        (folder / f"log/2031/{name}.md").unlink()

    found = list(measured_off_design.check(read_book(folder)))

    assert [item.text for item in found] == [
        "SA-PS-002.set reads 17.5 bar(g), design 18 bar(g) +/- 0.4 bar"
    ]
