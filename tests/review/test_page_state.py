"""A page is as well reviewed as the worst of what it shows, and says so in words."""

import random
import re
from dataclasses import replace
from datetime import date, timedelta
from itertools import product

import pytest

from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Class, Identifier, Mention, Record, RecordId
from garboard.records.finding import Finding
from garboard.records.kinds import BY_NAME, KINDS
from garboard.records.pages import PageKind, WrittenPage
from garboard.records.signoff import Capacity, SignOff, Verdict
from garboard.records.vessel import Notice
from garboard.review.covers import Cover
from garboard.review.page_state import PageState, Part, Standing, page_state, standing_of
from garboard.review.signoffs import Moved, Reviewed, Weighed
from tests.demo_site import NEVER_SAID, demo_handbook

FIRST = date(2031, 3, 1)
CHECKER, APPROVER, VERIFIER = Capacity.CHECKER, Capacity.APPROVER, Capacity.VERIFIER
PARTY = Capacity.NAMED_PARTY
WANTED = {
    "decision": (CHECKER, APPROVER), "change": (CHECKER, APPROVER), "finding": (APPROVER,),
    "action": (APPROVER,), "calculation": (CHECKER, APPROVER), "plan line": (PARTY,),
    "test": (CHECKER, APPROVER), "procedure": (CHECKER, APPROVER), "hazard": (CHECKER, APPROVER),
    "alarm": (CHECKER, APPROVER), "fault": (CHECKER, APPROVER), "lesson": (CHECKER,),
    "open item": (VERIFIER,), "concession": (APPROVER,), "temporary modification": (APPROVER,),
    "work package": (VERIFIER,), "review": (APPROVER,), "maintenance task": (CHECKER, APPROVER),
}  # fmt: skip
"""Whose signatures class A asks for; class B asks for the first of them, class C for none."""
ORDER = (
    "NOT REVIEWED. N", "NOT REVIEWED. Review of", "PARTLY REVIEWED", "Reviewed", "No review is asked for",
)  # fmt: skip


def signature(
    capacity: Capacity,
    by: str = "reviewer-1",
    day: int = 0,
    *,
    moved: bool = False,
    counts: bool = True,
    verdict: Verdict | None = None,
) -> Weighed:
    line = SignOff(capacity=capacity, by=by, on=FIRST + timedelta(days=day), verdict=verdict)
    what = (Moved("SA-RV-001.set", "31 bar(g)", "33 bar(g)"),) if moved and counts else ()
    return Weighed(line, 0, what, counts=counts)


def part(
    *signatures: Weighed,
    kind: str = "procedure",
    weight: str = "A",
    rests_on: tuple[str, ...] = (),
    not_checked: tuple[str, ...] = (),
    key: str = "",
) -> Part:
    name = BY_NAME[kind]
    key = key or f"SA-{name.letters}-001"
    record = name.record(id=RecordId(key), class_=Class(weight), where=Where("a.md"))
    return Part(record, Reviewed(key, "issued", Cover(""), signatures, rests_on, frozenset(), not_checked))  # fmt: skip


def both(**changes: object) -> tuple[Weighed, Weighed]:
    first = signature(CHECKER, "reviewer-1", 0)
    return replace(first, **changes), signature(APPROVER, "reviewer-2", 11)  # type: ignore[arg-type]


def words(*parts: Part) -> str:
    return page_state(frozenset(), (), (), parts).words


def test_two_persons_review_class_a() -> None:
    found = page_state(frozenset(), (), (), [part(*both())])

    expected = "Reviewed 12 March 2031 by two people. Nothing it rests on has changed."
    assert found == PageState(expected, trusted=True)


def test_one_person_in_both_capacities_is_not_enough() -> None:
    one = part(signature(CHECKER, "reviewer-1"), signature(APPROVER, "reviewer-1"))

    assert words(one) == "NOT REVIEWED. One person checked and approved it; two are wanted."
    assert standing_of(one) is Standing.NEVER


@pytest.mark.parametrize(("capacity", "open_"), [(CHECKER, "approver"), (APPROVER, "checker")])
def test_one_signature_is_not_enough_for_class_a(capacity: Capacity, open_: str) -> None:
    assert words(part(signature(capacity))) == f"NOT REVIEWED. Nobody has signed it as {open_}."


def test_a_checker_alone_reviews_class_b() -> None:
    found = words(part(signature(CHECKER), weight="B"))

    assert found == "Reviewed 1 March 2031 by one person. Nothing it rests on has changed."


def test_class_c_asks_for_nobody_but_says_when_something_moved() -> None:
    assert (
        words(part(weight="C")) == "No review is asked for: nothing here can hurt or stop anything."
    )
    moved = page_state(frozenset(), (), (), [part(signature(CHECKER, moved=True), weight="C")])
    assert moved.words.startswith("NOT REVIEWED. Review of 1 March 2031 has lapsed")
    leaning = part(signature(CHECKER), weight="C", rests_on=("SA-CL-001",))
    assert words(leaning) == "NOT REVIEWED. It rests on SA-CL-001, whose review has lapsed."


def test_a_written_page_asks_for_a_checker() -> None:
    page = WrittenPage(where=Where("a.md"), page=PageKind.LAYOUT, title="How it works")
    never = Part(page, Reviewed("a.md", "", Cover("")))
    checked = Part(page, Reviewed("a.md", "", Cover(""), (signature(CHECKER),)))

    assert words(never) == "NOT REVIEWED. Nobody has checked this page."
    assert words(checked).startswith("Reviewed 1 March 2031 by one person.")


@pytest.mark.parametrize(("kind", "weight"), list(product(WANTED, "ABC")))
def test_every_kind_but_class_c_asks_for_somebody(kind: str, weight: str) -> None:
    wanted = {"A": WANTED[kind], "B": WANTED[kind][:1], "C": ()}[weight]

    assert part(kind=kind, weight=weight).wanted == wanted


def test_every_kind_stands_in_that_list() -> None:
    assert set(WANTED) == {kind.name for kind in KINDS}


def test_no_class_stated_counts_as_a() -> None:
    stated = part()
    assert isinstance(stated.thing, Record)
    silent = Part(replace(stated.thing, class_=None), stated.reviewed)

    assert silent.wanted == stated.wanted


def test_what_moved_is_told_with_both_values() -> None:
    moved = (Moved("SA-RV-001.set", "31 bar(g)", "33 bar(g)"), Moved("SA-CN-014", "a", "b"))

    assert words(part(*both(moved=moved))) == (
        "NOT REVIEWED. Review of 1 March 2031 has lapsed: 2 things changed "
        "(SA-RV-001.set 31 bar(g) to 33 bar(g); SA-CN-014)."
    )


def test_what_was_not_checked_is_told() -> None:
    found = page_state(frozenset(), (), (), [part(*both(), not_checked=("pump curve",))])

    assert found == PageState(
        "PARTLY REVIEWED 12 March 2031. Not checked: pump curve.", trusted=False
    )


def test_who_found_against_it_is_told() -> None:
    against = signature(CHECKER, verdict=Verdict.OBJECT)

    found = words(part(against, signature(APPROVER, "reviewer-2")))

    assert found == "NOT REVIEWED. The checker of 1 March 2031 found against it."


def test_signatures_that_carry_nothing_any_more_are_not_called_nobody() -> None:
    old = part(signature(CHECKER, counts=False), signature(APPROVER, "reviewer-2", 3, counts=False))

    assert words(old) == (
        "NOT REVIEWED. Last signed 4 March 2031; what changed since is not weighed once it is issued."
    )


def test_a_part_that_nobody_checked_makes_the_page_unreviewed_however_well_the_others_are() -> None:
    good = [part(*both(), key=f"SA-PR-00{number}") for number in range(2, 9)]

    assert words(*good, part()) == "NOT REVIEWED. Nobody has checked SA-PR-001."
    half = part(signature(CHECKER), key="SA-PR-009")
    assert words(*good, half) == "NOT REVIEWED. Nobody has finished the review of SA-PR-009."


def test_a_page_without_parts_was_checked_by_nobody() -> None:
    assert words() == "NOT REVIEWED. Nobody has checked this page."


def fault(code: str, severity: Severity) -> Diagnostic:
    return Diagnostic(Where("a.md"), severity, "the gauge is out of date", "test it", code)


NOTICE = Notice(
    number="12", on=FIRST, against=(Identifier("SA-PR-001"),), says=Mention("do not open SA-HV-001")
)
FINDING = Finding(
    where=Where("b.md"), id=RecordId("SA-FN-003"), title="the line can be shut off", class_=Class.A,
    where_=(Identifier("SA-PR-001"),),
)  # fmt: skip


def test_the_first_that_applies_is_said() -> None:
    keys, good = frozenset({"SA-PR-001"}), [part(*both())]
    held = fault("instrument-uncalibrated", Severity.HOLD)

    assert page_state(keys, [NOTICE], [FINDING], good, [held]).words == (
        "DO NOT USE. Notice 12 to holders stands against this page: do not open SA-HV-001"
    )
    assert page_state(keys, [], [FINDING], good, [held]).words == (
        "NOT SAFE TO RELY ON. Open safety finding SA-FN-003: the line can be shut off."
    )
    assert page_state(keys, [], [], good, [held]).words == "NOT REVIEWED. The gauge is out of date."
    assert page_state(keys, [], [], good).trusted


def test_what_stands_against_another_page_does_not_count() -> None:
    keys, good = frozenset({"SA-PR-002"}), [part(*both())]
    note = fault("vague-step", Severity.NOTE)

    assert page_state(keys, [NOTICE], [FINDING], good, [note]).trusted
    lower = replace(FINDING, class_=Class.B, where_=(Identifier("SA-PR-002"),))
    assert page_state(keys, [], [lower], good).trusted
    gone = replace(NOTICE, against=(Identifier("SA-PR-002"),), withdrawn=FIRST)
    assert page_state(keys, [gone], [], good).trusted


def test_a_fault_that_the_signatures_tell_is_told_by_them() -> None:
    lapsed = [part(*both(moved=(Moved("its own words", "a", "b"),)))]

    found = page_state(frozenset(), (), (), lapsed, [fault("sign-off-lapsed", Severity.HOLD)])

    assert found.words == (
        "NOT REVIEWED. Review of 1 March 2031 has lapsed: 1 thing changed (its own words)."
    )


def random_part(chance: random.Random) -> Part:
    kind = chance.choice(list(WANTED))
    verdicts = (None, Verdict.NO_FINDINGS, Verdict.COMMENTS, Verdict.NO_FINDINGS, Verdict.FINDING)
    signatures = [
        signature(
            capacity,
            chance.choice(("reviewer-1", "reviewer-2", "reviewer-3")),
            chance.randint(0, 300),
            moved=chance.random() < 0.15,
            counts=chance.random() < 0.9,
            verdict=chance.choice(verdicts),
        )
        for capacity in (CHECKER, APPROVER, VERIFIER, PARTY)
        if chance.random() < 0.8
    ]
    return part(
        *signatures,
        kind=kind,
        weight=chance.choice("ABC"),
        rests_on=("SA-CL-009",) if chance.random() < 0.15 else (),
        not_checked=("wiring",) if chance.random() < 0.3 else (),
        key=f"SA-{BY_NAME[kind].letters}-{chance.randint(1, 999):03}",
    )


def worth(one: Part) -> int:
    """How far a part is reviewed, counted plainly: 0 never, 1 lapsed, 2 partly, 3 reviewed, 4 not asked."""
    assert isinstance(one.thing, Record)
    kind = next(kind.name for kind in KINDS if kind.record is type(one.thing))
    wanted = {"A": WANTED[kind], "B": WANTED[kind][:1], "C": ()}[str(one.thing.class_)]
    live = [each for each in one.reviewed.signatures if each.counts]
    lapsed = any(each.moved for each in live)
    stands = [each for each in live if not each.moved]
    if not wanted:
        return 1 if lapsed or (one.reviewed.rests_on and stands) else 4
    if any(all(each.line.capacity is not one_of for each in live) for one_of in wanted):
        return 0
    if any(each.line.verdict is Verdict.FINDING for each in live):
        return 0
    judges = [each.line.by for each in live if each.line.capacity in (*wanted, CHECKER, APPROVER)]
    if len(set(judges)) < len(wanted):
        return 0
    if lapsed or one.reviewed.rests_on:
        return 1
    return 2 if one.reviewed.not_checked else 3


def rank(found: PageState) -> int:
    """The same of a page, read from its words."""
    said = found.words
    if re.match(r"NOT REVIEWED\. (Review of .* has lapsed|It rests on)", said):
        return 1
    starts = ("NOT REVIEWED. ", "\0", "PARTLY REVIEWED ", "Reviewed ", "No review is asked for")
    return next(number for number, start in enumerate(starts) if said.startswith(start))


def test_a_page_is_the_worst_of_its_parts_and_no_edit_makes_it_better_than_that() -> None:
    chance = random.Random(20310313)  # noqa: S311 - the same parts at every run
    seen = set()
    for _ in range(400):
        shown = [random_part(chance) for _ in range(chance.randint(1, 5))]
        for _ in range(4):
            found = page_state(frozenset(), (), (), shown)
            worst = min(map(worth, shown))
            assert rank(found) == worst, (found, shown)
            assert found.trusted is (worst >= 3)
            assert rank(found) == min(rank(page_state(frozenset(), (), (), [one])) for one in shown)
            seen.add(rank(found))
            shown[chance.randrange(len(shown))] = random_part(chance)

    assert seen == {0, 1, 2, 3, 4}


def test_one_more_part_or_one_more_move_never_makes_a_page_better() -> None:
    chance = random.Random(20310314)  # noqa: S311 - the same parts at every run
    for _ in range(400):
        shown = [random_part(chance) for _ in range(chance.randint(1, 4))]
        before = rank(page_state(frozenset(), (), (), shown))

        assert rank(page_state(frozenset(), (), (), [*shown, random_part(chance)])) <= before
        one = shown[0]
        moved = tuple(
            replace(each, moved=(Moved("BOYLE", "a", "b"),)) if each.counts else each
            for each in one.reviewed.signatures
        )
        spoilt = Part(one.thing, replace(one.reviewed, signatures=moved))
        assert rank(page_state(frozenset(), (), (), [spoilt, *shown[1:]])) <= before


WORDS = re.compile(
    r"DO NOT USE\. Notice \d+ to holders stands against this page: .+"
    r"|NOT SAFE TO RELY ON\. Open safety finding [A-Z]{2}-FN-\d{3}: .+\."
    r"|NOT REVIEWED\. .+[.\u201d]"
    r"|PARTLY REVIEWED \d+ [A-Z][a-z]+ \d{4}\. Not checked: .+\."
    r"|Reviewed \d+ [A-Z][a-z]+ \d{4} by .+\. Nothing it rests on has changed\."
    r"|No review is asked for: nothing here can hurt or stop anything\."
    r"|Manual of the tool\. Nothing here was entered for this vessel, so no review of it is kept\."
)


def test_every_page_of_the_demo_says_one_of_the_states() -> None:
    for page in demo_handbook().pages:
        assert WORDS.fullmatch(page.review.words), (page.key, page.review.words)
        rests = page.review.words.startswith(("Reviewed", "No review", "Manual of the tool"))
        assert page.review.trusted is rests
        assert NEVER_SAID not in page.review.words.casefold()


def test_no_page_of_the_demo_is_trusted_over_a_record_that_is_not() -> None:
    book = demo_handbook().book
    for page in demo_handbook().pages:
        reviewed = book.reviews.get(page.key)
        if reviewed and (reviewed.lapsed or (book.records[page.key].weight is not Class.C and not reviewed.signatures)):  # fmt: skip
            assert not page.review.trusted, page.key


def test_only_pages_of_the_tool_itself_say_that_no_review_of_them_is_kept() -> None:
    kept = {
        page.kind
        for page in demo_handbook().pages
        if page.review.words.startswith("Manual of the tool")
    }
    others = {
        page.kind for page in demo_handbook().pages if not page.review.words.startswith("Manual")
    }

    assert kept == {"manual", "rule", "method"}
    assert not kept & others
    assert {"procedure", "part", "register", "report"} <= others
