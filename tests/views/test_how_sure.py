"""How sure a result is said to be, and what is said to move it."""

from dataclasses import replace

from garboard.book import Book
from garboard.calc.value import Mover
from garboard.views.draft import Draft
from garboard.views.how_sure import MOST_ROWS, SAMPLED, how_sure
from garboard.views.page import Calculation, HowSure, WorkedLine
from garboard.views.ranges import UNSTATED, ends, percent_down, spread_words
from garboard.views.record_page import record_draft
from garboard.views.runs import plain


def said(found: HowSure | None) -> list[str]:
    assert found is not None
    return [plain(line) for line in found.sentences]


def worked(book: Book, name: str) -> WorkedLine:
    page = record_draft(book, book.records["SA-CL-001"]).page()
    (block,) = (one for one in page.blocks if isinstance(one, Calculation))
    return next(line for line in block.lines if name in (line.name, line.label))


def test_an_answer_says_its_worst_and_its_usual_range_rounded_outwards(book: Book) -> None:
    line = worked(book, "n")

    assert line.answer
    assert said(line.sure) == [
        "Between 17.6 and 22.9 if everything is at its worst.",
        "Usually between 18.1 and 21.9.",
    ]


def test_what_moves_it_is_ranked_with_its_share_as_text_and_the_result_at_both_ends(
    book: Book,
) -> None:
    line = worked(book, "n")

    assert line.sure is not None
    assert [
        (plain(row.what), row.share, row.least, row.most, row.part) for row in line.sure.rows
    ] == [
        ("one start takes: 0.9 bar(d) +/- 10 %", "94 %", "18.1", "22.3", 0.9412),
        ("compressor cut-out: 30 bar(g) +/- 0.5 bar", "6 %", "19.4", "20.6", 0.0588),
    ]
    assert line.sure.rest == ""


def test_a_count_that_no_tolerance_moves_is_not_called_untold(book: Book) -> None:
    value = replace(book.values["sizing.n"], low=20.0, high=20.0, usual=(20.0, 20.0))

    found = how_sure(book, value, "starts")

    assert said(found) == ["The same at every end of the tolerances it rests on."]
    assert found is not None
    assert found.rows == ()  # nothing moves it
    assert spread_words(value) == "the same at every end of the tolerances it rests on"
    assert spread_words(replace(value, usual=None)) == "no tolerance stated"


def test_more_than_six_inputs_are_summed_up(book: Book) -> None:
    value = book.values["sizing.n"]
    many = tuple(Mover("sizing.each", 18.0, 22.0, 0.12) for _ in range(MOST_ROWS + 2))

    found = how_sure(book, replace(value, movers=many), "starts")
    one_more = how_sure(book, replace(value, movers=many[: MOST_ROWS + 1]), "starts")

    assert found is not None
    assert one_more is not None
    assert len(found.rows) == MOST_ROWS
    assert found.rest == "and 2 smaller ones, 24 % together"
    assert one_more.rest == "and 1 smaller one, 12 %"


def test_a_result_that_was_sampled_says_so_in_words(book: Book) -> None:
    value = replace(book.values["sizing.n"], sampled=True)

    assert said(how_sure(book, value, "starts"))[-1] == SAMPLED
    assert SAMPLED not in said(how_sure(book, book.values["sizing.n"], "starts"))


def test_a_result_that_rests_on_no_tolerance_does_not_look_sure(book: Book) -> None:
    value = replace(book.values["sizing.n"], low=20.0, high=20.0, usual=None, movers=())

    assert said(how_sure(book, value, "starts")) == [UNSTATED]


def test_a_range_that_is_not_known_is_said_not_to_be(book: Book) -> None:
    value = replace(book.values["sizing.n"], low=None, high=None, usual=None, movers=())

    assert said(how_sure(book, value, "starts")) == [
        "How far it can be out is not known: at some corner it has no answer."
    ]


def test_what_is_not_computed_has_no_range(book: Book) -> None:
    assert how_sure(book, replace(book.values["sizing.n"], si=None), "starts") is None


def test_a_count_keeps_to_whole_numbers_rounded_outwards(book: Book) -> None:
    count = replace(book.values["sizing.n"], whole=True)

    assert ends(count, 8.2, 9.9) == "8 to 10"


def test_a_margin_is_never_shown_better_than_it_is() -> None:
    assert [percent_down(one) for one in (7.99, 33.3, 0.99, -0.01, -7.2)] == [
        "7 %",
        "33 %",
        "0.9 %",
        "-0.1 %",
        "-8 %",
    ]


def test_a_requirement_gives_limit_margin_and_source(book: Book) -> None:
    line = worked(book, "non-reversible engine")

    assert line.limit == "at least 6"
    assert line.verdict == (
        "Holds at the worst corner. Margin at the worst corner: 11.7 (194 % of the limit)."
    )
    assert line.sources != ()


def test_numbers_of_other_pages_stand_with_their_source(book: Book) -> None:
    page = record_draft(book, book.records["SA-CL-001"]).page()
    (block,) = (one for one in page.blocks if isinstance(one, Calculation))

    assert block.rests_on is not None
    (row,) = block.rests_on.rows
    number = plain(row.cells[3]).strip("[]")
    (source,) = (one for one in page.sources if str(one.number) == number)
    assert [plain(cell) for cell in row.cells[:3]] == [
        "set of Low air 1",
        "18 bar(g)",
        "+/- 0.5 bar: 17.5 to 18.5 bar(g)",
    ]
    assert source.source == "LOGBOOK"


def test_a_source_that_is_a_test_says_who_measured_and_when(book: Book) -> None:
    draft = Draft(book, "x", "x", "x")
    draft.cite(*book.values["sizing.p_max"].sources)

    (line,) = draft.page().sources

    assert line.text == (
        "SA-TR-001 Counted starts; measured by volunteer on 2 April 2031, with G-07"
        " (calibration in date that day)"
    )
