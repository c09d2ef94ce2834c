"""What a text names and quotes is found at its place; code and targets are passed over."""

import pytest

from garboard.errors import Where
from garboard.reading.fences import find_fences
from garboard.reading.references import References, find_references


def find(text: str) -> References:
    """The references of a text that starts in column 8 of line 5."""
    spans = find_fences(text, "a.md", 5).spans
    return find_references(text, Where("a.md", 5, 8), spans, "SA-FN-001")


def test_a_quoted_value_keeps_its_text_address_unit_and_places() -> None:
    text = "Alarm at [18 bar(g)](value:SA-PS-001.set),\nfull at [1 gal](value:tank.V?in=gal_us)."

    first, second = find(text).links

    assert (first.text, first.address, first.unit) == ("18 bar(g)", "SA-PS-001.set", "")
    assert (first.where, first.text_where) == (Where("a.md", 5, 17), Where("a.md", 5, 18))
    assert text[slice(*first.span)] == "[18 bar(g)](value:SA-PS-001.set)"
    assert (second.address, second.unit, second.where) == ("tank.V", "gal_us", Where("a.md", 6, 9))


def test_a_unit_with_brackets_and_an_empty_text_may_be_quoted() -> None:
    link = find("[](value:a-b.p?in=bar(a)) and so on").links[0]

    assert (link.text, link.unit) == ("", "bar(a)")


def test_ids_and_tags_are_found_with_what_hangs_on_them() -> None:
    names = find("SA-RV-001, (SA-DD-003) and SA-PS-001.set. See SA-HV-002.").names

    assert [(name.name, name.property, name.where.column) for name in names] == [
        ("SA-RV-001", "", 8),
        ("SA-DD-003", "", 20),
        ("SA-PS-001", "set", 35),
        ("SA-HV-002", "", 54),
    ]


@pytest.mark.parametrize(
    "text",
    [
        "`SA-RV-001`",
        "``a ` SA-RV-001``",
        "```\nSA-RV-001 30 bar\n```",
        "~~~ text\nSA-RV-001 [9](value:x.y)\n~~~",
        "<!-- SA-RV-001 30 bar [9](value:x.y) -->",
        "![](photos/SA-RV-001.jpg)",
        "[picture](photos/SA-RV-001-30bar.jpg)",
        "[page](SA-RV-001.md)",
        "[page][SA-RV-001]",
        "<mailto:SA-RV-001>",
        "<https://example.invalid/SA-RV-001>",
        "XSA-RV-001",
        "SA-RV-0011",
        "SA-RV-001-2",
        "photos/SA-RV-001",
    ],
)
def test_code_comments_targets_and_longer_words_name_nothing(text: str) -> None:
    assert find(text) == References()


def test_a_name_within_a_link_is_named_and_not_linked_again() -> None:
    names = find("[see SA-RV-001](x.md) and SA-RV-002").names

    assert [(name.name, name.linkable) for name in names] == [
        ("SA-RV-001", False),
        ("SA-RV-002", True),
    ]


def test_a_lone_backtick_hides_nothing() -> None:
    assert [name.name for name in find("it's ` SA-RV-001\n\nand ` SA-RV-002").names] == [
        "SA-RV-001",
        "SA-RV-002",
    ]


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("30 bar(g) now", ["30 bar(g)"]),
        ("30bar", ["30bar"]),
        ("12 bar", ["12 bar"]),
        ("2 x 250 L", ["250 L"]),
        ("3/8 inch", ["3/8 inch"]),
        ("1.5 kJ/(kg.K)", ["1.5 kJ/(kg.K)"]),
        ("10 % at 25 \u00b0C", ["10 %", "25 \u00b0C"]),
        ("9 m3(n) a start", ["9 m3(n)"]),
        ("33 barg, 4 gal, 200 cfm", ["33 barg", "4 gal", "200 cfm"]),
        ("wait 30 min.", ["30 min"]),
        ("-5 degC", ["-5 degC"]),
    ],
)
def test_a_typed_number_with_a_unit_is_a_candidate(text: str, numbers: list[str]) -> None:
    assert [number.text for number in find(text).numbers] == numbers


@pytest.mark.parametrize(
    "text",
    [
        *("3 valves", "on 2031-03-09", "at 10:30", "M61.1.4", "46 CFR 54", "5 in hand", "3 a day"),
        *("Rev.3 2024", "[30 bar(g)](value:a.b)", "edition 7", "2nd", "SA-RV-001"),
    ],
)
def test_a_number_without_a_unit_is_none(text: str) -> None:
    assert find(text).numbers == ()


def said(text: str) -> list[str]:
    """The messages, without the code."""
    return [str(item).replace(" [unreadable-record]", "") for item in find(text).diagnostics]


REFUSED = {
    "a space before the bracket": "[9] (value:sizing.n)",
    "a space behind the colon": "[9](value: sizing.n)",
    "a misspelt scheme": "[9](valeu:sizing.n)",
    "a scheme in capitals": "[9](Value:sizing.n)",
    "no text before it": "(value:sizing.n)",
    "a definition elsewhere": "[9][n]\n\n[n]: value:sizing.n",
}


@pytest.mark.parametrize("says", REFUSED)
def test_what_was_meant_to_quote_a_value_is_told(says: str) -> None:
    found = said(REFUSED[says])

    assert len(found) == 1
    assert (
        "quotes no value as it stands\n  help: write [text](value:block.name) in one piece"
        in found[0]
    )


def test_a_quoted_value_without_an_address_is_told() -> None:
    assert said("[9](value:SA-RV-001)") == [
        "a.md:5:18: STOP: `SA-RV-001` is no address of a value\n"
        "  help: write which property: SA-RV-001.set, SA-RV-001.rated"
    ]
    assert said("[9](value:Sizing.n)")[0].startswith("a.md:5:18: STOP: `Sizing.n` is no address")


@pytest.mark.parametrize("text", ["the value: 3 valves", "(value: see below)", "[x](mailto:a.b@c)"])
def test_prose_about_values_is_left_alone(text: str) -> None:
    assert said(text) == []


HOSTILE = (
    ("[", 50_000),
    ("`", 50_000),
    ("[a](", 20_000),
    ("<!--", 20_000),
    ("1", 50_000),
    ("1 ", 50_000),
    ("` `` ``` ", 8_000),
    ("[1](value:", 10_000),
    ("SA-", 30_000),
    ("(value:a.b ", 10_000),
    ("]", 50_000),
    ("1.", 30_000),
    ("1 a/", 30_000),
    ("[\\", 30_000),
    ("[x](((", 20_000),
    ("![", 30_000),
    ("<a:", 30_000),
    ("(abcdef", 20_000),
    ("\n\n", 20_000),
    (" ", 100_000),
    ("\t", 100_000),
    ("0.1,", 20_000),
    ("bar ", 20_000),
)


@pytest.mark.parametrize(("piece", "times"), HOSTILE)
def test_a_hostile_text_is_searched_to_its_end(piece: str, times: int) -> None:
    first, *_ = find(f"SA-RV-001 {piece * times}").names  # a search that never ends is stopped

    assert first.name == "SA-RV-001"
