"""Pages joined into one document: the sheet is the same, and everything in it leads where it led."""

from pathlib import Path

import pytest
from selectolax.lexbor import LexborHTMLParser, LexborNode

from mkdocs_garboard.joined import Joined, NoSheetError, inlined, place, place_of, way

PATHS = ("index", "id/SA-PR-001", "starting-air/layout")


def sheet(inner: str) -> str:
    return f'<!doctype html><nav>bar</nav><main id="sheet"><article class="sheet small" data-until="2032-01-01">{inner}</article></main>'


def joined(inner: str, path: str = "id/SA-PR-001", *, programs: bool = False) -> LexborNode:
    made = Joined(PATHS, "data:,{}".format, programs=programs).article(path, sheet(inner))
    found = LexborHTMLParser(made).css_first("article")
    assert found is not None
    return found


def attribute(inner: str, name: str, path: str = "id/SA-PR-001") -> str | None:
    """What the first part of the sheet that has an attribute says in it."""
    parts = [one.attributes for one in joined(inner, path).css("*")]
    return next((one[name] for one in parts[1:] if name in one), None)


def test_an_article_bears_the_name_of_its_page_and_keeps_how_it_is_drawn() -> None:
    made = joined("<h1>Fill</h1>")

    assert made.attributes == {
        "class": "sheet small",
        "data-until": "2032-01-01",
        "id": "id/SA-PR-001",
    }
    assert made.text(strip=True) == "Fill"


@pytest.mark.parametrize(
    ("written", "leads"),
    [
        ("../starting-air/layout.html", "#starting-air/layout"),
        ("../starting-air/layout.html#sa-1", "#starting-air/layout:sa-1"),
        ("SA-PR-001.html", "#id/SA-PR-001"),
        ("#step-4", "#id/SA-PR-001:step-4"),
        ("#sheet", "#id/SA-PR-001"),
        ("../index.html#sheet", "#index"),
        ("../values.csv", "data:,values.csv"),
        ("https://example.org/", "https://example.org/"),
        ("#caf%C3%A9", "#id/SA-PR-001:caf%C3%A9"),
    ],
)
def test_a_link_leads_to_where_its_page_now_is(written: str, leads: str) -> None:
    assert attribute(f'<a href="{written}">x</a>', "href") == leads


def test_a_link_to_a_page_that_is_not_taken_along_keeps_its_words_and_leads_nowhere() -> None:
    made = joined('<a class="plate" href="SA-RV-001.html">SA-RV-001</a>').css_first("a")

    assert made is not None
    assert made.attributes == {"class": "plate"}
    assert made.text() == "SA-RV-001"


def test_a_link_to_a_page_that_is_not_taken_along_may_be_led_elsewhere() -> None:
    made = Joined(PATHS, lambda _: None, lambda path, anchor: f"../{path}.html#{anchor}")

    text = made.article("index", sheet('<a href="id/SA-RV-001.html#set">set</a>'))

    assert 'href="../id/SA-RV-001.html#set"' in text


@pytest.mark.parametrize(
    ("inner", "name", "becomes"),
    [
        ('<h2 id="standing">x</h2>', "id", "id/SA-PR-001:standing"),
        ('<i aria-labelledby="a b">x</i>', "aria-labelledby", "id/SA-PR-001:a id/SA-PR-001:b"),
        ('<i aria-describedby="d">x</i>', "aria-describedby", "id/SA-PR-001:d"),
        ('<label for="box">x</label>', "for", "id/SA-PR-001:box"),
        ('<table><td headers="h1 h2">x</table>', "headers", "id/SA-PR-001:h1 id/SA-PR-001:h2"),
        ('<svg><use href="#base"/></svg>', "href", "#id/SA-PR-001:base"),
        ('<svg><use xlink:href="#base"/></svg>', "xlink:href", "#id/SA-PR-001:base"),
        ('<svg><path fill="url(#hatch)"/></svg>', "fill", "url(#id/SA-PR-001:hatch)"),
        ("<svg><path mask=\"url('#m')\"/></svg>", "mask", "url(#id/SA-PR-001:m)"),
        ('<svg><path fill="#ffffff"/></svg>', "fill", "#ffffff"),
        ('<i data-for="#row">x</i>', "data-for", "#id/SA-PR-001:row"),
        ('<i data-id="SA-RV-001">x</i>', "data-id", "SA-RV-001"),
        ('<img src="../photos/a%20b.webp">', "src", "data:,photos/a b.webp"),
        ('<img src="data:,x">', "src", "data:,x"),
        ('<input autofocus value="1">', "autofocus", None),
        ('<svg viewBox="0 0 1 1"></svg>', "viewBox", "0 0 1 1"),
    ],
)
def test_what_names_a_place_names_it_in_the_document(
    inner: str, name: str, becomes: str | None
) -> None:
    assert attribute(inner, name) == becomes


def test_nothing_that_runs_is_taken_along_and_data_only_where_it_is_asked_for() -> None:
    inner = (
        '<script>one()</script><style>p{}</style><script type="application/json">{"a":1}</script>'
    )

    assert joined(inner).css("script, style") == []
    kept = joined(inner, programs=True).css("script, style")
    assert [part.text() for part in kept] == ['{"a":1}']


def test_what_only_looks_like_a_mark_is_text() -> None:
    made = joined('<p title="&lt;a href=#x id=y>">write &lt;i id="z"&gt; there</p>')

    assert made.text() == 'write <i id="z"> there'
    assert 'title="<a href=#x id=y>"' in (made.html or "").replace("&lt;", "<").replace("&gt;", ">")


def test_the_bar_of_a_page_is_led_like_its_sheet() -> None:
    text = (
        '<nav class="bar"><a href="../index.html">Home</a></nav><article class="sheet"></article>'
    )

    made = Joined(PATHS, lambda _: None).parts("id/SA-PR-001", text, "nav.bar", "article.sheet")

    assert made == [
        '<nav class="bar"><a href="#index">Home</a></nav>',
        '<article class="sheet" id="id/SA-PR-001"></article>',
    ]


def test_a_page_without_a_sheet_is_named() -> None:
    with pytest.raises(NoSheetError, match=r"index: there is no article\.sheet"):
        Joined(PATHS, lambda _: None).article("index", "<p>nothing</p>")


@pytest.mark.parametrize(
    ("path", "anchor"),
    [("id/SA-PR-001", ""), ("a b:c", "d"), ("a~20~b", "x:y z"), ("é", "ü~")],
)
def test_a_place_is_told_apart_again_and_can_stand_as_an_id(path: str, anchor: str) -> None:
    made = place(path, anchor)

    assert place_of(made) == (path, anchor)
    assert not any(sign.isspace() for sign in made)
    assert way(path, anchor).startswith("#")


def test_files_of_the_site_become_data_and_one_that_is_not_there_is_left_out(
    tmp_path: Path,
) -> None:
    (tmp_path / "a.webp").write_bytes(b"RIFF")

    files = inlined(tmp_path)

    assert files("a.webp") == "data:image/webp;base64,UklGRg=="
    assert files("b.webp") is None
