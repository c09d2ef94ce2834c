"""The built site: what every page carries, what no page loads, what is never published."""

import re
import time
from dataclasses import replace
from pathlib import Path

import pytest
from mkdocs.exceptions import Abort, PluginError

from garboard.errors import Diagnostic, GarboardError, Severity, Where
from garboard.views.contents import Entry, Section
from garboard.views.page import Link, Page, Paragraph
from mkdocs_garboard import plugin as plugin_module
from mkdocs_garboard.furniture import NEAR
from mkdocs_garboard.pages import clashes
from mkdocs_garboard.plugin import GarboardPlugin
from mkdocs_garboard.site_check import SiteCheck
from tests.mkdocs_garboard import sample
from tests.mkdocs_garboard.conftest import Build, Site

pytestmark = pytest.mark.site
ADDRESS = re.compile(r"(?:https?|ftp|wss?)://|[\"'(]//")


def test_a_sound_handbook_builds_without_a_warning(site: Site) -> None:
    assert site.warnings == []


def test_every_page_of_the_handbook_is_in_the_site(site: Site) -> None:
    built = {path.relative_to(site.folder).as_posix() for path in site.pages}

    assert built == {f"{page.path}.html" for page in sample.handbook().pages} | {
        "404.html", "contents.html", "find.html", "raise-a-finding.html", "take-it-with-you.html"
    }  # fmt: skip


def test_every_page_says_that_it_is_a_working_copy(site: Site) -> None:
    for path in site.pages:
        text = path.read_text("utf-8")
        assert "WORKING COPY, not an edition. Not for use at sea." in text, path
        assert "<title>WORKING COPY: " in text, path


def test_every_page_has_its_title_block_language_and_landmarks(site: Site) -> None:
    for path in site.pages:
        text = path.read_text("utf-8")
        assert text.count('class="title-block"') == 1, path
        assert text.count("<h1>") == 1, path
        assert '<html lang="en"' in text
        assert text.count("<main") == 1


def test_every_page_may_load_its_own_folder_only(site: Site) -> None:
    for path in site.pages:
        if path.name != "404.html":
            policy = re.search(
                r'Content-Security-Policy" content="([^"]*)"', path.read_text("utf-8")
            )
            assert policy
            assert policy[1].startswith("default-src 'none';")
            assert "unsafe" not in policy[1]


def test_no_address_of_any_host_stands_anywhere_in_the_site(site: Site) -> None:
    for path in site.folder.rglob("*"):
        if path.suffix in (".html", ".css", ".js"):
            assert not ADDRESS.search(path.read_text("utf-8")), path


def test_no_page_holds_a_script_of_its_own(site: Site) -> None:
    for path in site.pages:
        text = path.read_text("utf-8")
        assert not re.search(r"<script(?![^>]* src=)", text), path
        assert not re.search(r"<[a-z][^>]* (on\w+|style)=", text), path


def test_nothing_of_the_content_folder_is_published_as_it_lies(site: Site) -> None:
    published = {
        path.relative_to(site.folder).as_posix()
        for path in site.folder.rglob("*")
        if path.is_file()
    }

    assert not [
        name for name in published if name.endswith((".yml", ".md", ".jpg", ".xml", ".gz", ".py"))
    ]
    assert "loose.js" not in published
    assert "private.html" not in published
    assert "photos/receivers.jpg.webp" in published


def test_a_page_is_small(site: Site) -> None:
    shell = sum(
        (site.folder / "assets" / name).stat().st_size
        for name in ("garboard.css", "light.js", "sheet.js", "find.js")
    )

    assert shell < 105_000
    assert max(path.stat().st_size for path in site.pages) + shell < 150_000


def test_two_builds_are_equal_byte_for_byte(
    build_site: Build, site: Site, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TZ", "Pacific/Auckland")
    time.tzset()
    other = build_site()
    monkeypatch.undo()
    time.tzset()

    one, two = (
        {
            path.relative_to(each.folder): path.read_bytes()
            for path in each.folder.rglob("*")
            if path.is_file()
        }
        for each in (site, other)
    )
    assert one == two


def test_a_stop_fails_a_strict_build_and_no_other(build_site: Build) -> None:
    stop = Diagnostic(Where("a.md"), Severity.STOP, "is crossed", "mend it", "set-points-crossed")

    assert any(
        "is crossed" in text
        for text in build_site(replace(sample.handbook(), diagnostics=(stop,))).warnings
    )
    with pytest.raises(Abort):
        build_site(replace(sample.handbook(), diagnostics=(stop,)), strict=True)


def test_a_hold_is_told_and_builds_in_strict_mode(build_site: Build) -> None:
    built = build_site(strict=True)

    assert any("can be cut off" in text for text in built.notes)


def test_a_folder_that_is_no_content_ends_in_one_line(
    build_site: Build, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(_folder: Path) -> None:
        raise GarboardError("there is no handbook.yml in content")

    def patched(*_: object, **__: object) -> None:
        monkeypatch.setattr(plugin_module, "read", refuse)

    monkeypatch.setattr(GarboardPlugin, "on_pre_build", patched, raising=False)
    with pytest.raises(Abort):
        build_site()


def test_half_a_build_is_refused() -> None:
    with pytest.raises(PluginError, match="leave out --dirty"):
        GarboardPlugin().on_startup(command="build", dirty=True)


def test_pages_that_are_served_for_writing_may_reload(
    build_site: Build, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(GarboardPlugin, "serving", True)

    assert "Content-Security-Policy" not in build_site().page("index")


def test_front_matter_cannot_steer_the_theme(site: Site) -> None:
    page = site.page("starting-air/what-it-does")

    assert "<title>WORKING COPY: What starting air does - Skerry Light handbook</title>" in page


def test_bodies_are_whole_under_a_theme_that_is_not_ours(build_site: Build) -> None:
    built = build_site(theme="material", strict=True)
    page = built.page("id/SA-PR-001")

    assert built.warnings == []
    assert 'class="message danger"' in page
    assert 'class="title-block"' in page
    assert "assets/garboard.css" in page
    assert (built.folder / "assets" / "garboard.css").is_file()
    assert not (built.folder / "find.html").exists()


def test_bodies_are_whole_under_the_stock_theme(build_site: Build) -> None:
    assert 'class="checklist"' in build_site(theme="mkdocs", strict=True).page("id/SA-PR-001")


def test_the_contents_list_every_page_under_its_section(site: Site) -> None:
    contents = site.page("contents")

    for page in sample.handbook().pages:
        if page.path != "index":
            assert f'href="{page.path}.html"' in contents, page.key


def test_a_page_lists_its_neighbours_and_not_the_whole_book(build_site: Build) -> None:
    book = sample.handbook()
    many = tuple(
        Page(f"p/{n:03}", f"p/{n:03}", f"Page {n:03}", "register", sample.NOT_REVIEWED)
        for n in range(120)
    )
    targets = {
        **book.targets,
        **{page.key: replace(book.targets["index"], path=page.path) for page in many},
    }
    sections = (*book.contents, Section("Long", tuple(page.key for page in many)))
    built = build_site(replace(book, pages=book.pages + many, targets=targets, contents=sections))
    column = built.page("p/060").partition('class="column"')[2]

    assert "Page 060" in column
    assert len(re.findall(r">Page \d+<", column)) == 2 * NEAR + 1
    assert "103 more" in column


def test_the_bar_leads_back_home_to_find_and_to_the_alarms(site: Site) -> None:
    bar = site.page("id/SA-PR-001").partition('<nav class="bar"')[2].partition("</nav>")[0]

    assert re.findall(r'href="([^"]*)"[^>]*>(\w+)', bar) == [
        ("../starting-air/what-it-does.html", "Back"), ("../index.html", "Home"), ("../find.html", "Find"),
        ("../registers/alarms.html", "Alarms"),
    ]  # fmt: skip


def test_any_alarm_is_three_touches_away(site: Site) -> None:
    assert 'href="registers/alarms.html"' in site.page("index")
    assert 'href="../id/SA-AL-001.html"' in site.page("registers/alarms")


def test_two_names_that_differ_by_case_only_are_reported(build_site: Build) -> None:
    book = sample.handbook()
    twin = replace(sample.NORMAL, key="twin", path="Starting-Air/normal-values")

    assert list(clashes(["a/b.html", "A/b.html", "c.html"])) == [("a/b.html", "A/b.html")]
    assert any(
        "one file on a memory stick" in text
        for text in build_site(replace(book, pages=(*book.pages, twin))).warnings
    )


def test_a_link_that_leads_nowhere_is_a_warning(build_site: Build) -> None:
    book = sample.handbook()
    page = replace(
        sample.LAYOUT, blocks=(Paragraph((Link("nowhere", "x"), Link("SA-CL-001#nowhere", "y"))),)
    )
    pages = tuple(page if each.key == page.key else each for each in book.pages)
    warnings = build_site(replace(book, pages=pages)).warnings

    assert any("link to nowhere leads nowhere [broken-link]" in text for text in warnings)
    assert any(
        "layout.html: link to ../id/SA-CL-001.html#nowhere: there is no such place" in text
        for text in warnings
    )


FAULTS = {
    '<img src="a.png" alt=" ">': "picture a.png has no text",
    '<a href="Index.html">x</a>': "link to Index.html: there is no such page",
    '<a href="#no">x</a>': "link to #no: there is no such place on that page",
    "<script src='https://x.example/a.js'></script>": "script src leads off the handbook: https://x.example/a.js",
    '<link rel=stylesheet href="//x.example/a.css">': "link href leads off the handbook: //x.example/a.css",
    '<p id="sheet">x</p>': "the id sheet stands 2 times",
    f'<a href="#{"a" * 24}.3">x</a>': "a mark was left where a link belongs",
}


@pytest.mark.parametrize(("fault", "said"), FAULTS.items())
def test_a_fault_in_the_finished_site_is_seen(build_site: Build, fault: str, said: str) -> None:
    built = build_site()
    page = built.folder / "index.html"
    page.write_text(page.read_text("utf-8").replace("</main>", f"{fault}</main>"), "utf-8")

    assert f"index.html: {said}" in list(SiteCheck(built.folder).faults(sample.handbook().pages))


def test_a_message_or_review_word_that_went_missing_is_seen(build_site: Build) -> None:
    built = build_site()
    page = built.folder / "id" / "SA-PR-001.html"
    text = page.read_text("utf-8")
    page.write_text(
        text.replace("It throws a loosened fitting", "").replace("NOT REVIEWED. Nobody", ""),
        "utf-8",
    )
    (built.folder / "id" / "SA-HZ-001.html").unlink()
    faults = list(SiteCheck(built.folder).faults(sample.handbook().pages))

    assert "id/SA-PR-001.html: does not say: NOT REVIEWED. Nobody has checked this page." in faults
    assert (
        "id/SA-PR-001.html: does not say: It throws a loosened fitting through a hand or an eye."
        in faults
    )
    assert "id/SA-HZ-001.html: the page is not in the site" in faults


def test_what_the_box_offers_is_checked_too(build_site: Build) -> None:
    entry = Entry("Lost", "value", "", "id/SA-RV-001", "nowhere", "", (), "", "")
    built = build_site(replace(sample.handbook(), entries=(entry,)))

    assert any("Find: Lost: there is no such place on that page" in text for text in built.warnings)


def test_the_word_that_is_never_printed_stands_nowhere() -> None:
    root = Path(plugin_module.__file__).parent
    word = "com" + "pliant"

    assert not [
        path
        for path in root.rglob("*")
        if path.is_file() and word in path.read_text("utf-8", "ignore").lower()
    ]
