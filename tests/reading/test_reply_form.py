"""What is read from a form, sign by sign: the few places where a mail and its writer could be mixed up."""

from datetime import date

import pytest

from garboard.reading.reply_form import read_forms
from garboard.records.reply import Reply, Seal
from garboard.records.signoff import Verdict

REF = f"REF: {Seal('SA-CN-002', '0' * 16, 'a' * 16)}"
END = "END OF REPLY"


def read_one(*lines: str) -> Reply:
    (reply,) = read_forms("\n".join(lines)).replies
    return reply


def test_a_sign_of_more_than_is_no_quotation_mark() -> None:
    plain = read_one(REF, "WORDS: it opens at", "> 30 bar(g)", END)
    quoted = read_one(f"> {REF}", "> WORDS: it opens at", "> > 30 bar(g)", f"> {END}")

    assert plain.words == quoted.words == "it opens at > 30 bar(g)"


def test_a_bar_at_the_start_of_a_folded_line_stays_in_a_mail_quoted_otherwise() -> None:
    assert read_one(f"> {REF}", "> WORDS: |p|", "| is what I mean", f"> {END}").words == (
        "|p| | is what I mean"
    )


def test_a_number_that_looks_like_an_escaped_byte_stays_a_number() -> None:
    forms = read_forms("\n".join((REF, "WORDS: SA-PS-001.set=20", "and a = b", END)))

    assert forms.replies[0].words == "SA-PS-001.set=20 and a = b"
    assert "ends in '=20', as from quoted-printable; it was left as it is" in forms.unread[0].text


def test_left_over_escapes_at_many_lines_are_taken_off_and_said() -> None:
    text = "\n".join((f"{REF}=20", "NAME KEY: a=20", "WORDS: a = b=20", "DATE: 2031-09-28", END))

    forms = read_forms(text)

    assert (forms.replies[0].by, forms.replies[0].words) == ("a", "a = b")
    assert [one.first for one in forms.unread] == [1, 2, 3]


DAYS = [
    ("2031-09-28", date(2031, 9, 28)),
    ("28 September 2031", date(2031, 9, 28)),
    ("28th Sept. 2031", date(2031, 9, 28)),
    ("Sep 28, 2031", date(2031, 9, 28)),
    ("9/28/2031", None),
    ("28.9.31", None),
    ("2031-02-30", None),
    ("soon", None),
]


@pytest.mark.parametrize(("text", "day"), DAYS, ids=[one[0] for one in DAYS])
def test_a_day_is_read_only_where_it_can_be_but_one(text: str, day: date | None) -> None:
    reply = read_one(REF, f"DATE: {text}", END)

    assert reply.on == day
    assert [one.first for one in reply.remarks] == ([] if day else [2])


def test_what_somebody_wrote_may_be_a_part_of_the_words() -> None:
    words = "On the 3rd of May somebody on watch wrote:"

    assert read_one(REF, "WORDS: see", words, "shut", END).words == f"see {words} shut"


def test_a_form_that_was_cut_off_ends_where_the_quoted_mail_starts() -> None:
    lines = (
        REF,
        "WORDS: shut",
        "",
        "On 3 Oct 2031, lead wrote:",
        f"> {REF}",
        "> WORDS:",
        f"> {END}",
    )

    forms = read_forms("\n".join(lines))

    assert [one.words for one in forms.replies] == ["shut"]
    assert forms.empty == 1
    assert "it may have been cut off" in forms.replies[0].remarks[0].text


def test_labels_typed_in_small_letters_count_outside_of_words() -> None:
    reply = read_one(REF, "name key: a", "verdict: object", "words: shut", "where: it is", END)

    assert (reply.by, reply.verdict, reply.words) == ("a", Verdict.OBJECT, "shut where: it is")


def test_a_field_that_stands_twice_is_said() -> None:
    reply = read_one(REF, "NAME KEY: a", "WORDS: one", "WORDS: other", END)

    assert reply.words == "one"
    assert [str(one) for one in reply.remarks] == [
        "line 4: WORDS stands here once more, not read: 'other'"
    ]


def test_every_line_outside_of_a_form_is_accounted_for() -> None:
    text = "\n".join(("Dear all,", "", "here:", REF, "NAME KEY: a", END, "yours", "", "me"))

    unread = read_forms(text).unread

    assert [(one.first, one.last) for one in unread] == [(1, 3), (7, 9)]


def test_fifty_forms_are_read_and_the_rest_is_kept() -> None:
    forms = read_forms(
        "\n".join((REF, "NAME KEY: a", END)) * 1 + "\n" + f"{REF}\nNAME KEY: a\n{END}\n" * 80
    )

    assert len(forms.replies) == 50
    assert forms.unread[-1].last == 243
