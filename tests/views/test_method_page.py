"""The page of a method: formula, limits, sources, both editions where they differ, and its proof."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from garboard.book import Book
from garboard.calc.method import FormulaMethod, Method
from garboard.methods import METHODS
from garboard.methods.proof import Outcome, ProofResult, prove
from garboard.views.draft import Draft
from garboard.views.method_page import method_drafts
from garboard.views.page import Block, Bullets, Facts, Heading, Paragraph, Table
from garboard.views.runs import plain


def page_of(book: Book, method: Method, *proofs: ProofResult) -> Draft:
    return next(
        draft
        for draft in method_drafts(book, {method.name: method}, proofs)
        if draft.key == f"methods/{method.name}"
    )


def words(blocks: list[Block]) -> Iterator[str]:
    for block in blocks:
        match block:
            case Heading():
                yield block.text
            case Paragraph():
                yield plain(block.runs)
            case Bullets():
                yield from (plain(item) for item in block.items)
            case Facts():
                yield from (plain(cell) for _, cell in block.rows)
            case Table():
                yield block.caption
                yield from (plain(cell) for row in block.rows for cell in row.cells)


def proof_rows(draft: Draft) -> list[dict[str, str]]:
    table = next(
        block
        for block in draft.blocks
        if isinstance(block, Table) and block.caption.startswith("Proof")
    )
    titles = [column.title for column in table.columns]
    return [
        dict(zip(titles, (plain(cell) for cell in row.cells), strict=True)) for row in table.rows
    ]


def proven(name: str, case: str) -> ProofResult:
    method = METHODS[name]
    return prove(method, next(one for one in method.proofs if one.name == case))


def test_a_proof_stands_with_published_value_ours_difference_and_what_is_allowed(
    book: Book,
) -> None:
    result = proven("bilge_pipe_bore", "bore-main-14x12")

    (row,) = proof_rows(page_of(book, METHODS["bilge_pipe_bore"], result))

    assert row["published"] == "51.96 mm"
    assert row["ours"] == result.ours
    assert row["difference"] == "+0.0074 %"
    assert row["allowed"] == "0.005 mm"
    assert row["verdict"] == "reproduced"
    names = [one.name for one in METHODS["bilge_pipe_bore"].sources]
    assert row["from"] == f"source {names.index('bilge-design-exercise') + 1}"


def test_a_case_that_differs_says_by_how_much_and_why(book: Book) -> None:
    result = replace(
        proven("bilge_pipe_bore", "bore-main-14x12"),
        difference=-2.5,
        outcome=next(one for one in Outcome if one is not Outcome.REPRODUCED),
        why="the published value is 51.96 mm",
    )

    (row,) = proof_rows(page_of(book, METHODS["bilge_pipe_bore"], result))

    assert row["difference"] == "-2.5 %"
    assert row["verdict"].startswith(str(result.outcome))
    assert row["verdict"].endswith("the published value is 51.96 mm")


def test_a_refusal_is_a_case_without_numbers(book: Book) -> None:
    result = proven("bilge_pipe_bore", "bore-compartment-too-long")

    (row,) = proof_rows(page_of(book, METHODS["bilge_pipe_bore"], result))

    assert row["published"].endswith("(a refusal)")
    assert (row["difference"], row["allowed"]) == ("no numbers", "to the letter")


@pytest.mark.parametrize("method", METHODS.values(), ids=METHODS)
def test_a_page_says_all_that_its_method_declares(book: Book, method: Method) -> None:
    said = "\n".join(words(page_of(book, method).blocks))

    for source in method.sources:
        assert source.title in said
        assert source.edition in said
        assert source.clause in said
    for limit in method.limits:
        assert limit.reason in said
    meanings = [one.meaning for one in method.parameters]
    meanings += [one.meaning for one in method.results]
    assert [text for text in meanings if text not in said] == []
    for text in (method.caution, method.deferral, *method.valid):
        assert text in said
    for text in method.do_not:
        assert text.removeprefix("do not ") in said
    if isinstance(method, FormulaMethod):
        for line in method.body.strip().splitlines():
            assert line.partition("#")[0].strip() in said
        for alarm in method.alarms:
            assert alarm.text in said


@pytest.mark.parametrize(
    "method", [one for one in METHODS.values() if one.contradictions], ids=lambda one: one.name
)
def test_publications_that_contradict_each_other_stand_side_by_side(
    book: Book, method: Method
) -> None:
    said = "\n".join(words(page_of(book, method).blocks))

    for one in method.contradictions:
        assert one.topic in said
        assert one.effect in said
        assert one.handbook in said
        for printed in one.printed:
            assert printed.says in said
            assert printed.where in said
