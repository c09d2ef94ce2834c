"""The demo handbook as a whole: what is built, what one change moves, what a fault does."""

import csv
import html
import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest

from garboard.calc.show import show_range
from garboard.cli import main
from garboard.editions.manifest import check_site
from garboard.editions.publish import publish
from garboard.errors import Severity
from garboard.handbook import Handbook, read
from garboard.records.kinds import KINDS, kind_of
from garboard.views.text import _verdict as verdict_words
from mkdocs_garboard.publisher import draw_edition
from tests.demo_site import NEVER_SAID, Built, build, copy_demo, demo_handbook, replace_in
from tests.mkdocs_garboard.browser import asked, requests

pytestmark = pytest.mark.site

ANOTHER_HOST = re.compile(
    r"""(?:src|href|srcset|action|data)\s*=\s*["']?(?:https?:)?//""", re.IGNORECASE
)

BROWSERS_OWN = ("googleapis.com", "google.com", "gstatic.com")
"""Hosts that the browser itself asks for, whatever page is open."""
KEPT_REPLY = re.compile(r"replies/[\w-]+\.txt")
"""The name of a kept reply says who wrote it, by key: it is confirmed under that name."""


@pytest.fixture(scope="module")
def demo() -> Handbook:
    return demo_handbook()


@pytest.fixture(scope="module")
def built(demo_built: Built) -> Built:
    return demo_built


def words_of(page: Path) -> str:
    """The text of a page as a reader sees it."""
    text = re.sub(r"<(script|style).*?</\1>", " ", page.read_text("utf-8"), flags=re.DOTALL)
    plain = html.unescape(re.sub(r"<[^>]+>", " ", text))
    return re.sub(r"[\s\u00a0\u202f]+", " ", plain)


def test_the_demo_builds_strict_and_clean(built: Built) -> None:
    assert built.status == 0, built.said
    assert "WARNING" not in built.said


def test_every_page_of_the_handbook_is_in_the_site(built: Built, demo: Handbook) -> None:
    missing = [page.path for page in demo.pages if not (built.site / f"{page.path}.html").is_file()]

    assert missing == []
    assert len(demo.pages) > 400


def test_the_demo_holds_what_is_held_on_purpose_and_no_stop(demo: Handbook) -> None:
    grave = {item.code for item in demo.diagnostics if item.severity is Severity.STOP}
    held = {item.code for item in demo.diagnostics if item.severity is Severity.HOLD}

    assert grave == set()
    assert "temporary-overdue" in held


def test_the_demo_has_a_record_of_every_kind_and_a_page_for_each(demo: Handbook) -> None:
    kinds = {kind.name for record in demo.book.records.values() if (kind := kind_of(record))}

    assert kinds == {kind.name for kind in KINDS}
    assert {str(one) for one in demo.book.records} <= {page.key for page in demo.pages}


def test_every_method_is_called_in_the_demo(demo: Handbook) -> None:
    from garboard.methods import METHODS  # noqa: PLC0415 - only this test asks

    lines = [line.text for fence in demo.book.content.fences for line in fence.lines]
    called = {name for name in METHODS if any(f"{name}(" in line for line in lines)}

    assert called == set(METHODS)


def test_ten_calculations_feed_one_another(demo: Handbook) -> None:
    def block(address: str) -> str:
        return address.split(".", maxsplit=1)[0]

    sheets = demo.book.network.sheets
    feeding = {
        name
        for address, users in demo.book.network.feeds.items()
        for user in users
        if block(address) in sheets and block(user) in sheets and block(address) != block(user)
        for name in (block(address), block(user))
    }

    assert len(feeding) >= 10


def test_each_page_says_how_far_it_may_be_relied_on(built: Built, demo: Handbook) -> None:
    for page in demo.pages:
        words = "".join(words_of(built.site / f"{page.path}.html").split())
        assert "".join(page.review.words.split()) in words, page.path
        assert "WORKINGCOPY" in words, page.path


def test_no_page_ever_says_the_word_that_only_an_authority_may_say(built: Built) -> None:
    assert [page.name for page in built.pages if NEVER_SAID in words_of(page).lower()] == []


def test_nothing_but_the_handbook_is_published(built: Built) -> None:
    endings = {path.suffix for path in built.site.rglob("*") if path.is_file()}

    assert endings <= {
        ".html",
        ".json",
        ".csv",
        ".tsv",
        ".css",
        ".js",
        ".png",
        ".jpg",
        ".webp",
        ".svg",
        ".xml",
        ".gz",
        ".ico",
    }


def test_the_numbers_are_published_as_two_files_that_say_the_same(
    built: Built, demo: Handbook
) -> None:
    data = json.loads((built.site / "values.json").read_text("utf-8"))["values"]
    with (built.site / "values.csv").open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))

    assert [one["address"] for one in data] == sorted(demo.book.values)
    assert [one["address"] for one in rows] == sorted(demo.book.values)
    for one, row in zip(data, rows, strict=True):
        for name in ("value", "low", "high", "si"):
            assert (float(row[name]) if row[name] else None) == one[name]
        path, _, anchor = one["page"].partition("#")
        assert f'id="{anchor}"' in (built.site / path).read_text("utf-8"), one["address"]
    links = re.findall(
        r'href="(\.\./values\.(?:csv|json))"',
        (built.site / "registers" / "values.html").read_text("utf-8"),
    )
    assert links == ["../values.csv", "../values.json"]


def test_no_page_names_another_host(built: Built) -> None:
    named = [page.name for page in built.pages if ANOTHER_HOST.search(page.read_text("utf-8"))]

    assert named == []


def test_every_page_forbids_every_outside_request(built: Built) -> None:
    open_ = [
        page.name
        for page in built.pages
        if "Content-Security-Policy" not in page.read_text("utf-8")
    ]

    assert open_ == []


BINDERS = "binder"
"""Documents that are made to be printed, each of hundreds of pages."""


def test_a_page_of_the_demo_stays_small(built: Built) -> None:
    pages = [page for page in built.pages if page.parent.name != BINDERS]
    big = {page.name: size for page in pages if (size := page.stat().st_size) > 150_000}

    lists = ("values.html", "tags.html", "records.html", "-pages.html")
    assert {name for name in big if not name.endswith(lists)} == set()


OPENED = {"receiver-sizing", "starts-left", "battery-hours", "bilge-cable", "day-tank"}
"""Of one without a method, with one, with several; with one number open and with more."""


@pytest.mark.parametrize(
    "path", ["id/SA-CN-002", "id/DC-CN-003", "id/BG-FN-003", "id/SA-FN-010", "registers/lessons"]
)
def test_a_notice_and_a_finding_fit_a_narrow_phone(built: Built, path: str) -> None:
    script = "var r=document.documentElement;return [r.clientWidth,r.scrollWidth]"

    assert asked(built.site / f"{path}.html", script, (320, 800)) == [320, 320]


def test_what_is_opened_in_the_demo_is_small(demo: Handbook) -> None:
    sizes = {
        name: len(sheet.what_if.encode())
        for name, sheet in demo.book.network.sheets.items()
        if sheet.what_if
    }

    assert set(sizes) > OPENED
    assert max(sizes.values()) < 4_000
    assert sum(sizes.values()) < 2_500 * len(sizes)


@pytest.mark.browser
def test_at_first_the_page_shows_what_the_handbook_says(
    built: Built, demo: Handbook, tmp_path: Path
) -> None:
    programs = {name: json.loads(demo.book.network.sheets[name].what_if) for name in OPENED}
    page = tmp_path / "first.html"
    shutil.copy(built.site / "assets" / "what-if.js", tmp_path / "what-if.js")
    page.write_text(
        "<!doctype html><meta charset=utf-8><body><script src=what-if.js></script></body>", "utf-8"
    )
    script = (
        f"var all={json.dumps(programs)},out={{}},w=garboardWhatIf;Object.keys(all).forEach(function(name){{"
        "var p=w.ready(all[name]),f=w.follow(p,p.inputs.map(function(i){return w.read(i,i.text).si}));"
        "out[name]=[p.results.map(function(r,i){var t=w.showResult(r,f.results[i]);return [r.name,t.text,t.range]}),"
        "p.requirements.map(function(r,i){return [r.text,w.showVerdict(r,f.requirements[i])]}),f.alarms]});return out"
    )

    said = asked(page, script)

    shown = 0
    for name, (results, requirements, alarms) in said.items():
        for result, text, range_ in results:
            value = demo.book.values[f"{name}.{result}"]
            followed = next(one for one in programs[name]["results"] if one["name"] == result)
            kept = followed.get("worst", ()) is not None
            ends = show_range(value) if kept else "worst range not followed here"
            assert [text, range_] == [value.text, ends]
            shown += kept
        judged = {
            one.text: verdict_words(one)
            for one in demo.book.network.requirements
            if one.block == name
        }
        assert requirements
        assert [judged[text] for text, _ in requirements] == [words for _, words in requirements]
        assert alarms == []
    assert shown >= 15


@pytest.mark.browser
def test_opened_from_a_folder_nothing_is_asked_of_any_host(built: Built, tmp_path: Path) -> None:
    log = tmp_path / "log.json"
    own = {urlsplit(one).hostname for one in requests("about:blank", log)}
    for name in ("index", "starting-air/normal-values", "id/SA-PR-002", "find"):
        asked_for = {
            urlsplit(one).hostname for one in requests((built.site / f"{name}.html").as_uri(), log)
        }
        assert {host for host in asked_for - own if not str(host).endswith(BROWSERS_OWN)} == set()


@pytest.mark.browser
def test_every_name_of_the_demo_is_found_first_in_four_spellings(
    built: Built, demo: Handbook, tmp_path: Path
) -> None:
    names = [*demo.book.components, *(str(one) for one in demo.book.records)]
    spellings = {
        written: name
        for name in names
        for written in (name, name.lower(), name.replace("-", ""), name.replace("-", " ").lower())
    }
    page = tmp_path / "find.html"
    shutil.copytree(built.site / "assets", tmp_path / "assets")
    page.write_text(
        '<!doctype html><meta charset="utf-8"><body><script src="assets/find-index.js"></script>'
        '<script src="assets/find.js"></script></body>',
        "utf-8",
    )
    script = (
        f"var e=garboardFind.ready(window.garboardIndex);return {json.dumps(list(spellings))}"
        ".map(function(q){var a=garboardFind.find(e,q).results[0];return a?a.entry.address:null})"
    )

    first = asked(page, script)

    assert isinstance(first, list)
    wrong = {
        written: got
        for (written, name), got in zip(spellings.items(), first, strict=True)
        if not str(got).startswith(f"id/{name}.html")
    }
    assert wrong == {}


@pytest.fixture(scope="module")
def lowered(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo with the compressor's cut-out lowered in one file."""
    folder = tmp_path_factory.mktemp("lowered")
    content = copy_demo(folder)
    replace_in(
        content / "systems/starting-air/sa-cl-001-starts-in-one-charge.md",
        "p_max = 30 bar(g)",
        "p_max = 29 bar(g)",
    )
    return content


def test_a_typed_number_left_behind_is_a_stop_at_its_line(lowered: Path) -> None:
    stale = [item for item in read(lowered).diagnostics if item.code == "stale-number"]

    places = {item.where.path for item in stale}
    assert "systems/starting-air/what-it-does.md" in places
    assert "systems/starting-air/sa-hz-001-stored-air.md" in places
    for item in stale:
        line = (lowered / item.where.path).read_text("utf-8").splitlines()[item.where.line - 1]
        assert "30 bar(g)](value:receiver-sizing.p_max)" in line
        assert item.severity is Severity.STOP


def test_refresh_mends_and_no_built_page_keeps_the_old_number(
    lowered: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["refresh", str(lowered)]) == 0
    assert "'30 bar(g)' -> '29 bar(g)'" in capsys.readouterr().out

    after = build(lowered.parent, tmp_path / "site")

    assert after.status == 0
    assert [item for item in read(lowered).diagnostics if item.code == "stale-number"] == []
    quoted = list(quotations(after, "receiver-sizing.p_max", "SA-PS-003.cuts_out"))
    assert len(quoted) >= 8
    assert {text for _, text in quoted if text[0].isdigit()} == {"29 bar(g)"}


def quotations(built: Built, *addresses: str) -> Iterator[tuple[str, str]]:
    """Every place of the site that shows one of these values: page and text."""
    ends = "|".join(re.escape(address) for address in addresses)
    link = re.compile(rf'<a class="value" href="[^"#]*#(?:{ends})">(.*?)</a>', re.DOTALL)
    for page in built.pages:
        for found in link.finditer(page.read_text("utf-8")):
            text = html.unescape(re.sub(r"<[^>]+>", "", found[1]))
            yield page.name, re.sub(r"[\s\u00a0\u202f]+", " ", text).strip()


def test_one_change_moves_what_rests_on_it_on_other_pages(lowered: Path, demo: Handbook) -> None:
    before, after = demo.book.values, read(lowered).book.values

    for address in ("receiver-sizing.stored", "recharge.t_full", "air-gauges.habit.scale_min_half"):
        assert after[address].si != before[address].si
    assert after["SA-PS-003.cuts_out"].text == "29 bar(g)"


def test_a_copy_with_a_stop_still_builds_marked_and_fails_strict(tmp_path: Path) -> None:
    content = copy_demo(tmp_path)
    replace_in(
        content / "systems/starting-air/what-it-does.md",
        "[30 bar(g)](value:receiver-sizing.p_max)",
        "[31 bar(g)](value:receiver-sizing.p_max)",
    )

    plain = build(tmp_path, tmp_path / "site")
    strict = build(tmp_path, tmp_path / "strict", "--strict")

    assert plain.status == 0
    assert strict.status != 0
    assert "stale-number" in strict.said
    words = words_of(plain.site / "starting-air" / "what-it-does.html")
    assert "STOP" in words
    assert "text says 31 bar(g), receiver-sizing.p_max is 30 bar(g)" in words


def test_a_record_that_cannot_be_read_is_a_marked_page_and_all_others_build(tmp_path: Path) -> None:
    content = copy_demo(tmp_path)
    bad = content / "systems/starting-air/sa-hz-001-stored-air.md"
    bad.write_text(bad.read_text("utf-8").replace("---\n", "---\ntitle: [half\n", 1), "utf-8")

    after = build(tmp_path, tmp_path / "site")

    assert after.status == 0
    stub = next((after.site / "unread").rglob("*.html"))
    assert "could not be read" in words_of(stub)
    assert (after.site / "id" / "SA-HZ-002.html").is_file()


def test_an_edition_of_the_demo_is_published_whole_small_and_without_a_persons_key(
    demo: Handbook, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    content = copy_demo(tmp_path)
    assert main(["edition", "issue", "--by", "lead", str(content)]) == 1
    assert "STOP: card K-12 is of SA-PR-009 as" in capsys.readouterr().err
    replace_in(
        content / "handbook.yml",
        "digest: aacbe0a0894d8a6d}",
        "digest: aacbe0a0894d8a6d, removed: 2031-10-01}",
    )
    shutil.rmtree(content / "editions")
    assert main(["edition", "issue", "--by", "lead", str(content)]) == 0
    said = capsys.readouterr().out

    publish(content, 1, tmp_path / "sea", draw_edition, tmp_path / "mkdocs.yml")
    work = build(tmp_path, tmp_path / "work", "--strict")

    assert "valid until 2031-12-31: concession HY-CO-001 ends 2031-12-31" in said
    assert "past already, and not counted: temporary modification BG-TM-001" in said
    assert work.status == 0, work.said
    assert check_site(tmp_path / "sea") == ()
    keys = [key for key in demo.book.content.people if "-" in key]
    for site, own, other in (
        ("sea", "EDITION 1", "WORKING COPY"),
        ("work", "WORKING COPY", "EDITION 1"),
    ):
        for page in (tmp_path / site).rglob("*.html"):
            words = KEPT_REPLY.sub("", words_of(page))
            assert own in words, page
            assert other not in words, page
            assert [key for key in keys if key in words] == [], page
            large = page.name in ("values.html", "1-pages.html") or page.parent.name == BINDERS
            large |= page.name.endswith("-handbook.html")
            assert page.stat().st_size < 150_000 or large, page


def test_two_builds_are_equal_byte_for_byte_wherever_and_whenever(
    built: Built, tmp_path: Path
) -> None:
    (tmp_path / "another place").mkdir()
    copy_demo(tmp_path / "another place")
    again = build(
        tmp_path / "another place",
        tmp_path / "site",
        TZ="Pacific/Kiritimati",
        PYTHONHASHSEED="4021",
        LC_ALL="tr_TR.UTF-8",
        SOURCE_DATE_EPOCH="86400",
    )

    def bytes_of(site: Path) -> dict[str, bytes]:
        return {
            path.relative_to(site).as_posix(): path.read_bytes()
            for path in sorted(site.rglob("*"))
            if path.is_file()
        }

    first, second = bytes_of(built.site), bytes_of(again.site)
    assert first.keys() == second.keys()
    assert [name for name in first if first[name] != second[name]] == []
