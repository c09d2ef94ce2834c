"""The examples of the eighteen kinds read without a fault, value for value."""

from datetime import date
from pathlib import Path

import pytest

from garboard.errors import Where
from garboard.reading.record_file import MarkdownFile, read_markdown
from garboard.records.base import Class, Record
from garboard.records.change import Change, Lasts
from garboard.records.decision import Decision
from garboard.records.hazard import Gravity, Hazard, Likelihood
from garboard.records.inspection import Review
from garboard.records.kinds import KINDS, kind_of
from garboard.records.procedure import Procedure, Second
from garboard.records.signoff import Capacity, Verdict

FOLDER = Path(__file__).parent / "examples"
EXAMPLES = sorted(path.stem for path in FOLDER.glob("*.md"))


def read(ident: str) -> MarkdownFile:
    """One example, as a file of its own name."""
    return read_markdown((FOLDER / f"{ident}.md").read_text("utf-8"), f"{ident}.md")


def record(ident: str) -> Record:
    """The record of one example."""
    thing = read(ident).thing
    assert isinstance(thing, Record)
    return thing


@pytest.mark.parametrize("ident", EXAMPLES)
def test_an_example_reads_without_a_fault(ident: str) -> None:
    found = read(ident)

    assert found.diagnostics == ()
    assert isinstance(found.thing, Record)
    assert (found.thing.id, found.thing.unread) == (ident, ())
    assert found.thing.text.strip()


def test_there_is_an_example_of_every_kind() -> None:
    shown = {kind_of(record(ident)) for ident in EXAMPLES}

    assert shown == set(KINDS)


def test_a_decision_keeps_refused_options_objections_and_signatures() -> None:
    found = record("SA-DD-003")

    assert isinstance(found, Decision)
    assert [option.why_not is None for option in found.options] == [False, False, True]
    objection = found.objections[0]
    assert (objection.by, objection.words) == ("volunteer-1", "twice the joints")
    assert (objection.answer, objection.answered_by) == ("put on rounds", "reviewer-1")
    line = found.signed[0]
    assert (line.capacity, line.on, line.verdict) == (
        Capacity.CHECKER,
        date(2031, 3, 12),
        Verdict.NO_FINDINGS,
    )
    assert line.saw == {"SA-PS-001.set": "18 bar(g)", "SA-FN-012": "77c0a915"}
    assert line.not_checked == ("wiring",)


def test_a_change_keeps_the_values_before_and_after() -> None:
    found = record("SA-CN-002")

    assert isinstance(found, Change)
    assert found.lasts is Lasts.PERMANENT
    moved = {address: (str(one.before), str(one.after)) for address, one in found.values.items()}
    assert moved == {"SA-PS-001.set": ("15 bar(g)", "18 bar(g)")}
    assert found.place("values.SA-PS-001.set") == Where("SA-CN-002.md", 12, 10)
    assert found.place("values.SA-PS-001.set.after") == Where("SA-CN-002.md", 12, 52)


def test_a_hazard_keeps_its_letters_and_figures_as_what_they_are() -> None:
    found = record("SA-HZ-001")

    assert isinstance(found, Hazard)
    assert (found.severity, found.likelihood) == (Gravity.CATASTROPHIC, Likelihood.C)
    assert found.message is not None
    assert found.message.hazard == "Air at [30 bar(g)](value:receiver-sizing.p_max)"


def test_a_procedure_keeps_its_steps_in_order_with_their_places() -> None:
    found = record("SA-PR-002")

    assert isinstance(found, Procedure)
    assert [step.do for step in found.steps] == ["Lock", "Lock", "Lock", "Open"]
    assert found.steps[1].second is Second.INDEPENDENT
    assert found.steps[3].see is not None
    assert found.steps[3].see.tag == "SA-PI-003"
    assert found.place("steps[3].see.tag") == Where("SA-PR-002.md", 16, 73)


def test_a_step_that_does_not_say_what_is_done_is_kept_with_the_rest_of_it() -> None:
    text = (FOLDER / "SA-PR-002.md").read_text("utf-8").replace("do: Open, ", "")

    found = read_markdown(text, "a.md")

    assert isinstance(found.thing, Procedure)
    assert [str(item).partition(" [")[0] for item in found.diagnostics] == [
        "a.md:16:5: STOP: steps[3] has no do"
    ]
    assert (found.thing.steps[3].do, found.thing.steps[3].tag) == ("", "SA-HV-012")


def test_a_review_tells_yes_from_no_from_a_record() -> None:
    found = record("SA-RW-001")

    assert isinstance(found, Review)
    assert found.confirms is not None
    assert (found.confirms.procedures, found.confirms.trained) == (True, False)
    assert found.confirms.as_built == "SA-TR-009"


def test_a_calculation_gives_its_fence_with_the_place_of_every_line() -> None:
    fence = read("SA-CL-001").fences[0]

    assert (fence.name, fence.owner, fence.options_text) == ("receiver-sizing", "SA-CL-001", "")
    assert len(fence.lines) == 7
    assert fence.lines[2].text == "V = 2 * 250 L  # both receivers, water volume [plate-R1]"
    assert fence.lines[2].where == Where("SA-CL-001.md", 18, 1)


def test_what_a_record_says_and_quotes_is_found_in_body_and_fields() -> None:
    texts = {text.field: text for text in read("SA-HZ-001").texts}

    link = texts["message.hazard"].links[0]
    assert (link.text, link.address) == ("30 bar(g)", "receiver-sizing.p_max")
    assert link.where == Where("SA-HZ-001.md", 19, 27)
    assert texts["message.avoid"].names[0].name == "SA-PI-003"
    assert texts["controls[0].what"].names == ()


def test_a_record_without_a_class_counts_as_the_gravest() -> None:
    found = read_markdown("---\nid: SA-OI-001\ntitle: Label\nsystem: SA\n---\nOne.\n", "a.md").thing

    assert isinstance(found, Record)
    assert (found.class_, found.weight) == (None, Class.A)
