"""Binders on paper: printed by a browser, then read back sheet by sheet."""

import fcntl
import os
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from selectolax.lexbor import LexborHTMLParser, LexborNode

from garboard.views.binder_plan import BinderOrder
from mkdocs_garboard.binder import write_binder
from mkdocs_garboard.joined import place
from mkdocs_garboard.print_paper import SIZES
from tests.demo_site import DEMO, Built, demo_handbook
from tests.mkdocs_garboard.guards import bare, unguarded, with_message
from tests.mkdocs_garboard.printed import PrintedBook, squeezed

pytestmark = pytest.mark.browser

ON_SCREEN_ONLY = {
    "used-on",
    "jumps",
    "report",
    "hint",
    "formula",
    "tiles",
    "what-if",
    "screen-only",
}
"""What paper leaves out: ways back, hints for a screen, formulas that stand in plain text below, drawings
that are printed in pieces."""
SAID_ABOVE = ":is(h1 + .schematic, h1 + .screen-only + .schematic) > .state, .foot > .beside:not(.afterwards)"
"""The review state beside a drawing, and which edition holders have, under a head that says both."""
NEVER_TEXT = ("script", "style", "math", "title", "desc")
PAINTED_LATER = {
    "plate",
    "message",
    "checklist",
    "looks",
    "do-first",
    "log-sheet",
    "listing",
    "rungs",
}
"""What is placed by itself is painted after the text around it: it is counted, not put in order. So is
the whole of an article with a list in columns, of which heads and columns are painted by turns."""
NEAR = 6000
"""So many letters on at most stands what comes next: what is painted later may stand between."""
BESIDE_A_LOG_SHEET = (
    ".sheet:has(> .log-sheet) > :is(h1, h2, .quiet), .log-sheet + .scroll, .log-sheet ~ .foot"
)
"""A log sheet names its round and says the rest itself; the list beside it is for a screen."""
SCALE_OF_A_LONG_LADDER = ".ladder.long :is(svg, .drawn)"
HEADING_OF_TILES = "Pagesofthissystem"
WAYS_IN = ("registers/emergencies", "registers/alarms", "registers/symptoms")
NUMBERED = re.compile(r", \d+\.\d+$")
MARGINS = {"a4": (15, 15, 18, 25), "a5": (12, 10, 18, 18)}


@dataclass(frozen=True)
class Bound:
    """A binder as written and as printed."""

    said: tuple[str, ...]
    document: Path
    book: PrintedBook

    @property
    def articles(self) -> list[LexborNode]:
        return LexborHTMLParser(self.document.read_text("utf-8")).css("article.sheet")

    def sheet_of(self, ident: str) -> int:
        """Number of a sheet, from 0."""
        found = self.book.reader.named_destinations[f"/{ident}"]
        number = self.book.reader.get_destination_page_number(found)
        assert number is not None, ident
        return number

    @property
    def placed(self) -> Iterator[tuple[LexborNode, int, int]]:
        """Each article, with the numbers of its first and last sheet."""
        articles = self.articles
        starts = [self.sheet_of(str(one.attributes["id"])) for one in articles]
        ends = [*starts[1:], len(self.book.sheets) - 1]
        yield from zip(articles, starts, ends, strict=True)


def bound(factory: pytest.TempPathFactory, system: str, size: str) -> Bound:
    """A printed binder, made by the first of all workers that wants it."""
    base = factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base
    to = shared / f"binder-{system}-{size}"
    with (shared / f"{to.name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (to / "said").exists():
            to.mkdir()
            said = write_binder(demo_handbook(), DEMO, to, BinderOrder(system, size, pdf=True))
            (to / "said").write_text("\n".join(said), "utf-8")
    document = next(to.glob("*.html"))
    lines = tuple((to / "said").read_text("utf-8").splitlines())
    return Bound(lines, document, PrintedBook(document.with_suffix(".pdf"), MARGINS[size]))


@pytest.fixture(scope="module", params=["SA-a4", "DC-a5"])
def printed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Bound:
    system, size = request.param.split("-")
    return bound(tmp_path_factory, system, size)


@pytest.fixture(scope="module")
def starting_air(tmp_path_factory: pytest.TempPathFactory) -> Bound:
    return bound(tmp_path_factory, "SA", "a4")


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Bound:
    return bound(tmp_path_factory, "", "a4")


def test_nothing_stands_in_a_margin_or_is_cut(printed: Bound) -> None:
    assert printed.book.outside() == []


def test_no_sheet_is_empty(printed: Bound) -> None:
    assert printed.book.empty() == []


def test_no_sheet_holds_the_last_words_of_a_page_alone(printed: Bound) -> None:
    assert printed.book.scanty() == []


def test_a_list_that_lies_across_keeps_its_head_and_foot(printed: Bound) -> None:
    for article, first, last in printed.placed:
        if article.css_matches(":has(> .scroll.wide)") and printed.document.stem.endswith("a4"):
            lie = [one.across for one in printed.book.sheets[first:last]]
            assert all(lie), article.attributes["id"]


def test_no_sheet_ends_with_a_heading(printed: Bound) -> None:
    assert len(printed.book.headings) > 100
    assert printed.book.orphans() == []
    document = LexborHTMLParser(printed.document.read_text("utf-8"))
    folds, heads = document.css("details.fold > summary"), document.css("thead")
    assert len(folds) > 10
    assert len(heads) > 10
    assert printed.book.ending_with({squeezed(one.text()) for one in (*folds, *heads)}) == []


def test_type_is_printed_in_the_size_it_was_set_in(printed: Bound) -> None:
    """Something too wide would make the browser shrink every sheet."""
    for number in range(3, len(printed.book.sheets), 7):
        sizes = printed.book.sizes(number)
        text = [size for size in sizes if size > 10.2]
        if not printed.book.sheets[number].across and text:
            assert min(text) >= 11.95, f"sheet {number + 1}: {sizes}"
            assert min(sizes) >= 9.9, f"sheet {number + 1}: {sizes}"


def test_every_word_of_every_page_is_printed_once_a_use_and_in_order(printed: Bound) -> None:
    missing = [
        fault
        for article, first, last in printed.placed
        for fault in lost(printed, article, first, last)
    ]

    assert missing == []


def test_the_whole_book_has_every_word_too(whole: Bound) -> None:
    missing = [
        fault
        for article, first, last in whole.placed
        for fault in lost(whole, article, first, last)
    ]

    heads = LexborHTMLParser(whole.document.read_text("utf-8")).css("thead")
    assert missing == []
    assert whole.book.ending_with({squeezed(one.text()) for one in heads}) == []
    assert whole.book.outside() == []
    assert whole.book.orphans() == []
    assert whole.book.empty() == []
    assert whole.book.scanty() == []


def test_no_message_is_cut_in_two(printed: Bound) -> None:
    looked_at = 0
    for article, first, last in printed.placed:
        sheets = [squeezed(text) for text in printed.book.stream[first : last + 1]]
        for message in article.css(".message"):
            assert with_message(sheets, message), f"{article.attributes['id']}: {message.text()}"
            looked_at += 1
    assert looked_at > 10


def test_a_line_up_and_a_long_ladder_stand_on_one_sheet_of_a4(starting_air: Bound) -> None:
    article, first, last = next(
        one for one in starting_air.placed if one[0].attributes["id"] == "starting-air/line-ups"
    )
    heads = {squeezed(one.text()) for one in article.css("table.many thead")}
    begins = [starting_air.book.lines(number)[0] for number in range(first, last)]
    ladder = next(rungs for one in starting_air.articles for rungs in one.css(".ladder.long ol"))
    rungs = [squeezed(one.text()) for one in ladder.css("li .about")]

    assert len(article.css("table.many")) > 3
    assert [one for one in begins if one in heads] == []
    assert len(rungs) > 14
    assert any(all(rung in squeezed(text) for rung in rungs) for text in starting_air.book.stream)


def test_a_message_is_whole_on_every_sheet_that_has_a_step_it_guards(starting_air: Bound) -> None:
    looked_at = 0
    for article, first, last in starting_air.placed:
        sheets = [squeezed(text) for text in starting_air.book.stream[first : last + 1]]
        for stretch in article.css(".stretch"):
            if stretch.css_first(".message") is not None:
                assert unguarded(sheets, stretch) == [], article.attributes["id"]
                looked_at += len(stretch.css(".step"))
    assert looked_at > 10


def test_steps_are_painted_in_their_order(starting_air: Bound) -> None:
    looked_at = 0
    for article, first, last in starting_air.placed:
        text = "".join(squeezed(one) for one in starting_air.book.stream[first : last + 1])
        for keel in article.css(".checklist:not(.stands), .looks"):
            steps = [longest(step) for step in keel.css(".step .do, .look")]
            assert in_order(text, steps), f"{article.attributes['id']}: {steps}"
            looked_at += len(steps)
    assert looked_at > 50


def test_the_contents_name_the_sheet_that_each_page_stands_on(printed: Bound) -> None:
    lines = LexborHTMLParser(printed.document.read_text("utf-8")).css(".contents a.entry")

    assert len(lines) == len(printed.articles)
    for line in lines:
        named = line.css_first(".on")
        assert named is not None
        ident = str(line.attributes["href"]).removeprefix("#")
        assert int(named.text()) == printed.sheet_of(ident) + 1, ident


def test_each_sheet_says_what_it_is_of_which_edition_and_its_number(starting_air: Bound) -> None:
    reader = starting_air.book.reader
    total = len(reader.pages)
    first, last = next(
        (a, b)
        for article, a, b in starting_air.placed
        if article.attributes["id"] == place("id/SA-PR-002")
    )

    for number in range(first, last):
        text = squeezed(reader.pages[number].extract_text())
        assert squeezed("SA-PR-002 · Empty the start header") in text
        assert f"page{number + 1}of{total}" in text
        assert "WORKINGCOPY-NOTFORUSEATSEA" in text
        assert "withoutituncontrolled" in text
        assert "Startingair" in text


def test_a_procedure_has_its_sheets_to_itself(starting_air: Bound) -> None:
    places = {str(one.attributes["id"]): first for one, first, _ in starting_air.placed}
    starts = sorted(places.values())
    alone = [first for ident, first in places.items() if "-PR-" in ident]

    assert len(alone) > 10
    assert all(starts.count(first) == 1 for first in alone)


def test_every_way_in_names_its_section_and_no_heading_stands_over_what_is_not_printed(
    whole: Bound,
) -> None:
    """At three in the morning the number behind a line is the way to the sheet."""
    sheets = {str(one.attributes["id"]): one for one in whole.articles}
    ways = [way for ident in WAYS_IN for way in sheets[ident].css(".ways-in .words")]

    unnumbered = [
        way.text() for way in ways if not NUMBERED.search(way.attributes.get("data-id") or "")
    ]

    assert len(ways) > 40
    assert unnumbered == []
    assert HEADING_OF_TILES not in squeezed("".join(whole.book.stream))


def test_a_place_that_names_a_part_says_all_the_same_where_the_places_are(whole: Bound) -> None:
    """An id among the words of a link hid the section that it leads to."""
    listed = next(one for one in whole.articles if one.attributes["id"] == "registers/a-to-z")

    places = [
        link
        for link in listed.css("a")
        if str(link.attributes.get("href")).startswith("#registers/places")
    ]

    assert any("DC-BA-002" in link.text() for link in places)
    assert [link.text() for link in places if not link.attributes.get("data-section")] == []


def test_a_table_of_many_words_runs_on_and_leaves_out_empty_cells(whole: Bound) -> None:
    told = next(
        one for one in whole.articles if one.attributes["id"] == "starting-air/what-went-wrong"
    )
    findings = told.css_first("table")

    assert findings is not None
    assert "run-on" in looks_of_table(findings.css("td")[0])
    empty = [cell for cell in findings.css("td") if cell.text() == "\N{EN DASH}"]
    assert empty
    assert all("nothing" in str(cell.attributes.get("class")) for cell in empty)


def test_the_pdf_has_tags_an_outline_a_title_and_a_language(starting_air: Bound) -> None:
    root: Any = starting_air.book.reader.trailer["/Root"]

    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert starting_air.book.reader.metadata is not None
    assert starting_air.book.reader.metadata.title == "Skerry Light, Starting air: WORKING COPY"
    titles = {squeezed(text) for _, _, text in starting_air.book.headings}
    assert {"Contents", "Raisestartingair", "Normalvalues"} <= titles


@pytest.mark.parametrize("size", ["SA-a4", "DC-a5", "-a4"])
def test_no_letter_of_any_sheet_is_under_nine_points(
    size: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """Letters of drawings and of plots too; in the binder of A5 a drawing lies on A4, folded once."""
    book = bound(tmp_path_factory, *size.split("-")).book
    small = {
        f"sheet {number + 1}": min(sizes)
        for number in range(len(book.sheets))
        if (sizes := book.letters(number)) and min(sizes) < 8.99
    }

    assert small == {}


def test_the_whole_book_can_be_carried(whole: Bound) -> None:
    assert len(whole.book.sheets) < 450
    assert whole.said[-1].startswith(str(whole.document.with_suffix(".pdf")))
    assert f": {len(whole.book.sheets)} pages of A4" in whole.said[-1]


def test_sheets_have_the_size_and_the_bound_edge_that_was_asked_for(printed: Bound) -> None:
    size = "a5" if printed.document.stem.endswith("a5") else "a4"
    upright = {
        (round(one.width), round(one.height)) for one in printed.book.sheets if not one.across
    }

    assert upright == {{"a4": (595, 842), "a5": (420, 595)}[size]}
    assert SIZES[size].name.casefold() == size


@pytest.mark.parametrize("name", ["starting-air", "whole-book"])
def test_the_site_holds_binders_that_any_browser_prints(demo_built: Built, name: str) -> None:
    text = (demo_built.site / "binder" / f"{name}.html").read_text("utf-8")
    document = LexborHTMLParser(text)

    assert document.css("article.sheet")
    assert document.css("script") == []
    policy = document.css_first("meta[http-equiv]")
    assert policy is not None
    assert str(policy.attributes["content"]).startswith("default-src 'none'; img-src data:")
    assert document.css(".contents .on") == [], "a sheet that nobody has counted is not named"
    idents = [str(one.attributes["id"]) for one in document.css("[id]")]
    assert len(idents) == len(set(idents))


def test_a_shifted_word_a_lone_heading_and_a_lost_step_are_noticed(starting_air: Bound) -> None:
    """The reading of sheets is tried on sheets that were spoilt."""
    article, first, last = next(
        one for one in starting_air.placed if one[0].css(".checklist .if-not")
    )
    assert lost(starting_air, article, first, last) == []
    step = article.css_first(".if-not, .facts dd")
    assert step is not None
    step.insert_child("a step that nobody printed")

    assert lost(starting_air, article, first, last)

    cut = PrintedBook(starting_air.book.pdf, (15, 60, 18, 25))
    assert cut.outside()
    short = PrintedBook(starting_air.book.pdf, (15, 15, 180, 25))
    assert short.orphans()


def test_a_step_without_its_message_and_steps_out_of_order_are_noticed(starting_air: Bound) -> None:
    """The same, of messages and steps."""
    article, first, last = next(
        one for one in starting_air.placed if one[0].css(".stretch .message")
    )
    sheets = [squeezed(text) for text in starting_air.book.stream[first : last + 1]]
    stretch = next(one for one in article.css(".stretch") if one.css(".message"))
    avoid = squeezed(str(stretch.css(".message .avoid")[0].text()))
    spoilt = [sheet.replace(avoid, "") for sheet in sheets]
    every = [longest(step) for step in article.css(".checklist:not(.stands) .step .do")]

    assert unguarded(sheets, stretch) == []
    assert unguarded(spoilt, stretch)
    assert in_order("".join(sheets), every)
    assert not in_order("".join(sheets), every[::-1])


def longest(do: LexborNode) -> str:
    """The longest piece of text of a step, which tells it best from others."""
    return max((squeezed(one) for one in bare(do)), key=len, default="")


def in_order(text: str, pieces: list[str]) -> bool:
    """Whether a text has all pieces, each after the one before."""
    at = 0
    for piece in pieces:
        at = text.find(piece, at)
        if at < 0:
            return False
        at += len(piece)
    return True


def lost(made: Bound, article: LexborNode, first: int, last: int) -> Iterator[str] | list[str]:
    """Words of an article that its sheets do not have, or not where they belong."""
    sheets = [squeezed(text) for text in made.book.stream[first : last + 1]]
    text = "".join(sheets)
    found, at, used = [], 0, Counter[str]()
    in_columns = bool(article.css(".listing"))
    small = made.document.stem.endswith("a5")
    for words, later in texts(article, later=in_columns, small=small):
        if words == HEADING_OF_TILES or split(words, sheets):
            continue
        used[words] += 1
        if later:
            if text.count(words) < used[words]:
                found.append(f"{article.attributes['id']}: {words}")
            continue
        place_of_it = text.find(words, at, at + NEAR)
        if place_of_it < 0:
            found.append(f"{article.attributes['id']}: {words}")
        else:
            at = place_of_it + len(words)
    return found


def split(words: str, sheets: list[str]) -> bool:
    """Whether a text runs over the edge of a sheet, where what is painted later stands between."""
    if any(words in sheet for sheet in sheets):
        return False
    return any(
        words[:cut] in one and words[cut:] in two
        for one, two in pairwise(sheets)
        for cut in range(3, len(words) - 2)
    )


def texts(node: LexborNode, *, later: bool, small: bool) -> Iterator[tuple[str, bool]]:
    """Every piece of text of an article that is printed, and whether it is painted later.

    On A5 a broad table has the title of the column before each cell, and no head.
    """
    for child in node.iter(include_text=True):
        if child.tag == "-text":
            if words := squeezed(child.text_content or ""):
                yield words, later
            continue
        looks = set((child.attributes.get("class") or "").split())
        of_table = looks_of_table(child)
        listed = "run-on" in of_table or (small and "broad" in of_table)
        if child.tag in NEVER_TEXT or looks & ON_SCREEN_ONLY or (listed and child.tag == "thead"):
            continue
        if child.css_matches(BESIDE_A_LOG_SHEET) or child.css_matches(SAID_ABOVE):
            continue
        if small and child.css_matches(SCALE_OF_A_LONG_LADDER):
            continue
        if listed and child.tag == "td" and "nothing" in looks:
            continue
        if listed and child.tag == "td":
            yield squeezed(child.attributes.get("data-label") or ""), True
        late = later or bool(looks & PAINTED_LATER) or child.tag == "svg"
        yield from texts(child, later=late, small=small)


def looks_of_table(node: LexborNode) -> set[str]:
    """Classes of the table that a head or a cell belongs to."""
    table = node.parent
    while table is not None and node.tag in ("thead", "td") and table.tag != "table":
        table = table.parent
    return set((table.attributes.get("class") or "").split()) if table is not None else set()
