"""The page of a rule has its question, its reasons and its examples, each under its label."""

from garboard.book import Book
from garboard.rules import RULES, joined_to_nothing
from garboard.views.manual import rule_drafts
from garboard.views.page import Facts, Paragraph
from garboard.views.rule_text import LABELS, asks_the_layout, labelled, question_of
from garboard.views.runs import Strong, plain
from tests.traced_plant import layout_rule


def labels_of(book: Book, code: str) -> list[str]:
    """The labels on the page of a rule, in order."""
    page = next(one for one in rule_drafts(book, RULES) if one.key == f"manual/rules/{code}")
    firsts = [block.runs[0] for block in page.blocks if isinstance(block, Paragraph)]
    return [run.text for run in firsts if isinstance(run, Strong)]


def test_a_rule_of_the_layout_shows_bad_and_good(book: Book) -> None:
    assert labels_of(book, "joined-to-nothing") == ["Question:", "Why:", "Bad:", "Good:", "Fix:"]
    assert labels_of(book, "hose-out-of-date") == ["Why:", "Fix:"]


def test_no_word_is_lost_when_a_label_is_set_off() -> None:
    said = "Why: at the worst: nobody knew."

    assert plain(labelled(said)) == said
    assert labelled("Note: this is no label.") == ("Note: this is no label.",)


def test_every_rule_that_asks_the_layout_has_all_its_labels() -> None:
    wanted = [f"{label}: " for label in LABELS if label != "Basis"]

    asking = [
        rule for rule in RULES if asks_the_layout(rule) or "Question:" in (rule.__doc__ or "")
    ]

    assert joined_to_nothing in asking
    for rule in asking:
        missing = [label for label in wanted if f"\n\n{label}" not in (rule.__doc__ or "")]
        assert (rule.CODE, missing) == (rule.CODE, [])


def test_a_rule_without_a_question_is_told_by_what_it_finds() -> None:
    assert question_of(joined_to_nothing).endswith("?")
    assert question_of(layout_rule("x", "Is it so?")) == "Is it so?"
    assert question_of(RULES[0]) == (RULES[0].__doc__ or "").split("\n\n")[0].replace("\n", " ")


def test_a_graded_rule_says_in_words_from_when_it_binds(book: Book) -> None:
    page = next(iter(rule_drafts(book, [layout_rule("dead-head")])))
    facts = next(block for block in page.blocks if isinstance(block, Facts))

    assert plain(dict(facts.rows)["binds from"]).startswith(
        "by the level of what is found: a danger"
    )
