"""Taking replies in: what is raised, what is kept, what is refused, and that nothing is ever lost."""

import re
import textwrap
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import read, read_book
from garboard.reading.reply_form import HOW
from garboard.records.finding import Danger, Finding
from garboard.records.reply import Seal
from garboard.review.covers import Covers
from garboard.review.seals import seal_of
from tests.review.signed_sample import WRITTEN, write_sample


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small handbook with a decision in check."""
    return write_sample(tmp_path / "content")


def seal(folder: Path, key: str = "SA-DD-003") -> Seal:
    book = read_book(folder)
    thing = book.records.get(key) or next(
        one for one in book.content.pages if one.where.path == key
    )
    return seal_of(key, Covers(book.content, book.network).of(thing))


def form(ref: object, **changed: str) -> str:
    """A filled form with two findings."""
    fields = {
        "REF": str(ref),
        "NAME KEY": "reviewer-1",
        "DATE": "2031-09-28",
        "AS": "[x] checker  [ ] approver",
        "VERDICT": "[ ] no findings  [ ] comments  [ ] finding  [x] object",
        "CHECKED": "[x] layout  [ ] units",
        "NOT CHECKED": "wiring",
        "WORDS": "The stop still cuts it off.",
    } | {key.replace("_", " "): text for key, text in changed.items()}
    points = (
        "FINDING\nWHERE: SA-PS-001\nSEEN: Shut the stop and it reads the header.\n"
        "DANGER: [ ] none  [x] possible  [ ] immediate\n"
        "FINDING\nWHERE: the label\nSEEN: It cannot be read.\nDANGER: [x] none  [ ] possible\n"
    )
    lines = "\n".join(f"{label}: {text}" for label, text in fields.items() if text != "-")
    return f"{lines}\n{points}END OF REPLY\n"


def mail(folder: Path, text: str | bytes, name: str = "mail.txt") -> Path:
    file = folder.parent / name
    file.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return file


def files(folder: Path) -> dict[str, bytes]:
    """Everything that a person wrote."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and ".garboard" not in path.parts
    }


def take(folder: Path, *mails: Path) -> int:
    return main(["intake", *map(str, mails), "--by", "lead", "--folder", str(folder)])


def test_each_finding_of_a_reply_becomes_a_raised_record_in_the_words_it_was_said_in(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status = take(folder, mail(folder, form(seal(folder))))

    book = read_book(folder)
    found = sorted(book.of_kind(Finding), key=lambda one: str(one.id))
    assert status == 0
    assert [one.words for one in found] == [
        "Shut the stop and it reads the header.",
        "It cannot be read.",
    ]
    first, second = found
    assert (first.id, first.state, first.author) == ("SA-FN-001", "raised", "reviewer-1")
    assert (first.where_, first.against, first.danger) == (
        ("SA-PS-001",),
        ("SA-DD-003",),
        Danger.POSSIBLE,
    )
    assert first.found
    assert first.found.during == "review of SA-DD-003"
    assert "entered by the lead builder" in first.text
    assert (second.where_, second.affects) == (("SA-DD-003",), ("the label",))
    assert book.content.diagnostics == ()
    assert "finding SA-FN-002 drafted" in capsys.readouterr().out


def test_a_reply_is_kept_to_the_letter_and_signs_nothing(folder: Path) -> None:
    text = f"Dear lead,\n\n{form(seal(folder))}\nwith kind regards\n"

    take(folder, mail(folder, text))

    book = read_book(folder)
    assert files(folder)["replies/2031-09-28-sa-dd-003-reviewer-1.txt"] == text.encode()
    assert book.records["SA-DD-003"].signed == ()
    assert [one.by for one in book.waiting["SA-DD-003"]] == ["reviewer-1"]


def test_an_objection_that_waits_stands_at_the_head_of_its_page_and_on_the_list(
    folder: Path,
) -> None:
    take(folder, mail(folder, form(seal(folder))))

    handbook = read(folder)
    page = next(one for one in handbook.pages if one.key == "SA-DD-003")
    register = next(one for one in handbook.pages if one.key == "registers/to-be-filed")
    said = (
        "A reply of the remote reviewer of 28 September 2031 waits to be confirmed: verdict object"
    )
    assert page.review.words.startswith("NOT ")
    assert said in str(page.blocks)
    assert said in str(register.blocks)


def test_the_review_state_gives_an_unconfirmed_objection_in_its_words(folder: Path) -> None:
    text = re.sub(r"FINDING\n(.*\n){3}", "", form(seal(folder)))

    take(folder, mail(folder, text))

    page = next(one for one in read(folder).pages if one.key == "SA-DD-003")
    assert page.review.words == (
        "NOT REVIEWED. An objection in a reply of 28 September 2031 waits to be confirmed:"
        " \u201cThe stop still cuts it off.\u201d"
    )


def test_the_same_reply_comes_in_once_however_it_was_quoted(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = form(seal(folder))
    take(folder, mail(folder, text))
    before = files(folder)
    again = "On 3 Oct 2031, lead wrote:\n" + "".join(f"> {line}\n" for line in text.splitlines())

    status = take(folder, mail(folder, again))

    assert status == 0
    assert files(folder) == before
    assert "this reply came before" in capsys.readouterr().out


def test_a_second_word_of_the_same_reviewer_on_the_same_day_is_kept_beside_the_first(
    folder: Path,
) -> None:
    ref = seal(folder)
    take(folder, mail(folder, form(ref)))

    take(folder, mail(folder, form(ref, WORDS="Now I see it.", VERDICT="[x] no findings")))

    waiting = read_book(folder).waiting["SA-DD-003"]
    assert [one.path[-6:-4] for one in waiting] == ["-2", "-1"]


def test_two_forms_in_one_mail_are_two_replies(folder: Path) -> None:
    text = form(seal(folder)) + "\n" + form(seal(folder, "SA-CL-001"))

    take(folder, mail(folder, text))

    book = read_book(folder)
    assert sorted(book.waiting) == ["SA-CL-001", "SA-DD-003"]
    assert len(list(book.of_kind(Finding))) == 4
    assert [len(one) for one in book.waiting.values()] == [1, 1]


def test_a_written_page_is_answered_under_its_path(folder: Path) -> None:
    take(folder, mail(folder, form(seal(folder, WRITTEN))))

    handbook = read(folder)
    page = next(one for one in handbook.pages if one.source_path == WRITTEN)
    assert "waits to be confirmed" in str(page.blocks)


REFUSED = [
    ({"REF": "-"}, "the REF line of the form is missing", "send a new pack"),
    ({"REF": "SA-DD-003 0123"}, "the REF line is not whole", "as it was sent"),
    ({"NAME KEY": "somebody"}, "people.yml knows nobody by the key 'somebody'", "ask who wrote it"),
    ({"NAME KEY": "-"}, "no name key", "ask who wrote it"),
    ({"NAME KEY": "volunteer-1"}, "volunteer-1 may not act as checker", "widen people.yml"),
    (
        {"DATE": "2032-01-01"},
        "the reply is of 2032-01-01, after today, 2031-10-01",
        "ask for the day",
    ),
]


@pytest.mark.parametrize(("changed", "said", "cure"), REFUSED, ids=[one[1][:30] for one in REFUSED])
def test_a_reply_that_cannot_be_whose_it_says_is_refused_and_nothing_is_thrown_away(
    folder: Path, capsys: pytest.CaptureFixture[str], changed: dict[str, str], said: str, cure: str
) -> None:
    file = mail(folder, form(seal(folder), **changed))
    before, sent = files(folder), file.read_bytes()

    status = take(folder, file)

    err = capsys.readouterr().err
    assert status == 2
    assert re.search(rf"mail\.txt:\d+:1: STOP: {re.escape(said)}", err)
    assert cure in err
    assert f"Keep {file} as it is" in err
    assert files(folder) == before
    assert file.read_bytes() == sent


def test_a_forged_id_is_seen_by_the_line_itself(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    forged = str(seal(folder)).replace("SA-DD-003", "SA-CL-001")

    assert take(folder, mail(folder, form(forged))) == 2

    assert "not as it was sent" in capsys.readouterr().err


def test_an_id_that_was_never_here_is_refused_with_the_nearest(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = Seal("SA-DD-004", "0" * 16, "0" * 16)

    assert take(folder, mail(folder, form(other))) == 2

    assert "is SA-DD-003 meant?" in capsys.readouterr().err


@pytest.mark.parametrize(
    "key", ["../../etc/passwd", "/etc/passwd", "SA-DD-003/../../x", "~", "con"]
)
def test_an_id_that_is_a_path_leads_nowhere(folder: Path, key: str) -> None:
    before = files(folder.parent)

    status = take(folder, mail(folder, form(Seal(key, "0" * 16, "0" * 16)), "hostile.txt"))

    assert status == 2
    assert {name for name in files(folder.parent) if name not in before} == {"hostile.txt"}


HOSTILE = [
    "--- \nid: SA-FN-900",
    "!!python/object/apply:os.system ['id']",
    "*anchor &anchor {{ config }} {% raw %} ${x} `id`",
    "<script>alert(1)</script><img src=x onerror=alert(1)>",
    "[5](value:starts.n) (valve: SA-PS-001.set) [a]: value:starts.n",
    "It says [5](value:starts.n) there",
    "\"'\\ \" ' \\n \\u0000 #: - [a, {b: c}]",
    "\u202eevil\u2066 \x00\x07\x1b[31m \u200b",
    "```calc x\ny = 1\n```",
    "x" * 20_000,
]


@pytest.mark.parametrize("words", HOSTILE, ids=[repr(one[:16]) for one in HOSTILE])
def test_hostile_words_are_words(folder: Path, words: str) -> None:
    text = form(seal(folder), WORDS=words).replace("It cannot be read.", words)

    status = take(folder, mail(folder, text))

    book = read_book(folder)
    assert status == 0
    assert sorted(map(str, book.records)) == ["SA-CL-001", "SA-DD-003", "SA-FN-001", "SA-FN-002"]
    assert [
        one for one in book.content.diagnostics if one.where.path.startswith("log/2031/2031-09")
    ] == []
    assert not [one for one in book.mentions if one.by == "SA-FN-002" and "." in one.to]
    assert {one.rpartition("/")[0] for one in files(folder)} <= {
        "",
        "log/2031",
        "replies",
        "systems/starting-air",
    }


def test_what_was_said_in_another_script_is_kept_in_it(folder: Path) -> None:
    words = "\u041a\u043b\u0430\u043f\u0430\u043d \u0437\u0430\u043a\u0440\u044b\u0442, \u5f01\u304c\u9589"
    take(folder, mail(folder, form(seal(folder)).replace("It cannot be read.", words)))

    assert words in {one.words for one in read_book(folder).of_kind(Finding)}


def test_what_could_not_be_read_is_said_with_its_lines_and_kept(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = form(seal(folder), VERDICT="[x] no findings  [x] object", DATE="2/3/31")

    assert take(folder, mail(folder, f"first words\n{text}last words\n")) == 0

    out = capsys.readouterr().out
    assert "VERDICT is ticked 2 times: no findings, object" in out
    assert "'2/3/31' is no day that can be read" in out
    assert "line 1: not in a form, kept: 'first words'" in out
    (path,) = (one for one in files(folder) if one.startswith("replies/"))
    assert path == "replies/undated-sa-dd-003-reviewer-1.txt"
    assert b"last words" in files(folder)[path]


@pytest.mark.parametrize("columns", [72, 40])
def test_what_the_form_itself_says_is_not_told_as_somebodys_words(
    columns: int, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    head = f"15. REPLY FORM\n--------------\n{textwrap.fill(HOW, columns)}\n"
    sent = textwrap.indent(f"{head}{form(seal(folder))}", "> ", lambda _: True)

    take(folder, mail(folder, f"Dear lead,\nit is tight.\n{sent}\nwith kind regards\n"))

    told = [line for line in capsys.readouterr().out.splitlines() if "not in a form" in line]
    assert [line.partition("not in a form, kept: ")[2] for line in told] == [
        "'Dear lead,'",
        "'with kind regards'",
    ]
    assert "lines 1-2:" in told[0]


def test_words_between_the_lines_of_a_quoted_pack_are_told_of(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = f"> REVIEW PACK\n> the switch\nthis is wrong\n> the valve\n{form(seal(folder))}"

    take(folder, mail(folder, text))

    assert "line 3: not in a form, kept: 'this is wrong'" in capsys.readouterr().out


def test_a_finding_that_was_written_under_the_form_is_not_passed_over_in_silence(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    under = "FINDING\nWHERE: SA-PS-001\nSEEN: It leans.\n"

    take(folder, mail(folder, f"{form(seal(folder))}{under}"))

    assert "a FINDING outside the form was not taken in" in capsys.readouterr().out


def test_a_form_that_was_cut_off_says_so(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cut = form(seal(folder)).partition("WHERE: the label")[0]

    assert take(folder, mail(folder, cut)) == 0

    assert "it may have been cut off" in capsys.readouterr().out
    assert len(list(read_book(folder).of_kind(Finding))) == 1


def test_without_a_form_it_says_what_a_reply_holds_and_shows_one(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = files(folder)

    assert take(folder, mail(folder, "Looks fine to me!")) == 2

    err = capsys.readouterr().err
    assert "no filled form" in err
    assert "VERDICT: [ ] no findings" in err
    assert files(folder) == before


def test_ten_megabytes_are_not_read(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = files(folder)

    assert take(folder, mail(folder, b"x" * 10_000_000)) == 2

    assert "copy the form out of it" in capsys.readouterr().err
    assert files(folder) == before


def test_a_mail_in_another_encoding_is_read_and_said(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = form(seal(folder)).replace("It cannot be read.", "F\u00fcr niemanden lesbar.")

    assert take(folder, mail(folder, text.encode("cp1252"))) == 0

    assert "no UTF-8" in capsys.readouterr().out
    assert "F\u00fcr niemanden lesbar." in {one.words for one in read_book(folder).of_kind(Finding)}


def test_one_reply_that_is_refused_keeps_no_other_out(folder: Path) -> None:
    good, bad = mail(folder, form(seal(folder))), mail(folder, form("nothing"), "bad.txt")

    assert take(folder, bad, good) == 2

    assert "SA-DD-003" in read_book(folder).waiting
