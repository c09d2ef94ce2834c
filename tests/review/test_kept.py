"""What is kept of each kind for ever, and what still speaks for it in a later text."""

from dataclasses import replace

import pytest

from garboard.reading.record_file import read_markdown
from garboard.records.base import Record
from garboard.records.kinds import KINDS
from garboard.review.kept import kept_words, lost_lines, lost_words, signed_line

FIELDS = {
    "decision": "options: [{option: on the header, why_not: it hides}, {option: one on each}]\n"
    "objections: [{by: lead, words: no room}]\nreasons: short",
    "change": "values: {SA-PS-001.set: {before: 15 bar(g), after: 18 bar(g)}}\ninstalled: 2031-04-05",
    "finding": "words: It reads the header.\nmedia: [{photo: photos/a.png, view: the header}]\n"
    "interim: {measure: shut it, by: lead, on: 2031-04-05}\ncause: short run",
    "action": "action: trace it\nresult: none found",
    "calculation": "purpose: enough starts\nsecond: {by: lead, how: counted, result: ten}",
    "plan line": "activity: test\npoint: H",
    "test": "readings: [{of: p, value: 49 bar(g)}]\nresult: fail\n"
    "log: {file: log/a.csv, time: t, channels: {p: {of: pressure}}}",
    "procedure": "purpose: fill\nsteps: [{do: Look}]",
    "hazard": "controls: [{rank: guard, what: relief valve, verified: SA-TR-001}]\nwho: anyone",
    "alarm": "wording: LOW\nmeans: low",
    "fault": "symptoms: [hisses]",
    "lesson": "learned: look\nrecommend: tap first",
    "open item": "what: no label",
    "concession": "departs_from: hose-out-of-date\nuntil: 2031-12-31",
    "temporary modification": "what: hose\nfitted: {by: lead, on: 2031-04-05}",
    "work package": "makes_true: done\ndone: {by: lead, on: 2031-04-05}",
    "review": "covers: [SA-AR-001]",
    "maintenance task": "done: [{on: 2031-04-12, by: lead, as_found: wet, as_left: dry}]",
}
FROM_THE_FIRST = {
    "decision": {"objections[0]": '{"by":"lead","words":"no room"}'},
    "change": {"installed": '"2031-04-05"'},
    "finding": {
        "words": '"It reads the header."',
        "media[0]": '{"photo":"photos/a.png","view":"the header"}',
    },
    "test": {"readings[0]": '{"of":"p","value":"49 bar(g)"}', "result": '"fail"'},
    "maintenance task": {"done[0]": '{"as_found":"wet","by":"lead","on":"2031-04-12"}'},
}
ONCE_MOVED = {
    "decision": {"options[0]": '{"option":"on the header","why_not":"it hides"}'},
    "change": {"values.SA-PS-001.set.before": '"15 bar(g)"'},
    "plan line": {"point": '"H"'},
    "test": {"log": "log/a.csv"},
    "hazard": {"controls[0]": '{"rank":"guard","what":"relief valve"}'},
}


def record(name: str, state: str = "", words: str = "") -> Record:
    """A record of a kind, in a state."""
    kind = next(one for one in KINDS if one.name == name)
    head = (
        f"id: SA-{kind.letters}-001\ntitle: Thing\nsystem: SA\nstate: {state or kind.machine.start}"
    )
    read = read_markdown(f"---\n{head}\n{words or FIELDS[name]}\n---\nSo.\n", "a.md")
    assert isinstance(read.thing, Record)
    assert not read.diagnostics
    return read.thing


@pytest.mark.parametrize("name", [one.name for one in KINDS])
def test_a_kind_keeps_what_was_agreed_and_nothing_else(name: str) -> None:
    kind = next(one for one in KINDS if one.name == name)
    start, *beyond = kind.machine.states

    assert kept_words(record(name, start)) == FROM_THE_FIRST.get(name, {})
    for state in beyond:
        both = FROM_THE_FIRST.get(name, {}) | ONCE_MOVED.get(name, {})
        assert kept_words(record(name, state)) == both


def test_a_record_that_was_ever_moved_by_a_signature_stays_kept_at_its_start() -> None:
    words = (
        FIELDS["decision"]
        + "\nsigned: [{capacity: checker, by: lead, on: 2031-04-05, to: drafted}]"
    )

    assert "options[0]" in kept_words(record("decision", words=words))


def test_a_test_that_passed_and_a_point_that_is_no_hold_are_not_kept() -> None:
    assert "result" not in kept_words(record("test", words="result: pass"))
    assert "result" not in kept_words(record("test", words="result: incomplete"))
    assert kept_words(record("plan line", "called", "point: W")) == {}


def test_a_hold_that_took_the_place_of_a_line_is_kept_before_it_is_called() -> None:
    assert kept_words(record("plan line", words="point: H\nsupersedes: SA-IT-002")) == {
        "point": '"H"'
    }


def objections(*words: str) -> Record:
    return record("decision", words=f"objections: [{', '.join(words)}]")


FIRST, ANSWERED = "{by: lead, words: no}", "{by: lead, words: no, answer: so be it}"
OTHERWISE = "{by: lead, words: no, answer: never}"


@pytest.mark.parametrize(
    ("before", "after", "lost"),
    [
        ([FIRST], [ANSWERED], 0),
        ([ANSWERED], [FIRST], 1),
        ([ANSWERED], [OTHERWISE], 1),
        ([FIRST, FIRST], [FIRST], 1),
        ([FIRST, ANSWERED], [ANSWERED], 1),
        ([FIRST, ANSWERED], [ANSWERED, OTHERWISE], 0),
        ([FIRST, ANSWERED], [OTHERWISE, ANSWERED, FIRST], 0),
        ([FIRST], ["{by: lead, words: 'no  '}"], 0),
        ([FIRST], ["{by: lead, words: no!}"], 1),
        ([FIRST], ["{by: volunteer-1, words: no}"], 1),
    ],
)
def test_each_thing_of_a_list_still_speaks_for_itself_and_for_one_only(
    before: list[str], after: list[str], lost: int
) -> None:
    issued = kept_words(objections(*before))

    assert len(lost_words(issued, objections(*after))) == lost


def test_what_was_kept_is_looked_for_in_a_record_that_was_set_back() -> None:
    issued = kept_words(record("decision", "checked"))

    assert lost_words(issued, record("decision", "drafted")) == ()


def test_a_signature_that_is_written_otherwise_is_gone() -> None:
    line = "signed: [{capacity: checker, by: lead, on: 2031-04-05, scope: [layout]}]"
    signed = record("decision", words=line).signed
    issued = [signed_line(one) for one in signed]

    assert lost_lines(issued, signed) == ()
    assert lost_lines(issued, ()) == tuple(issued)
    assert lost_lines(issued, [replace(signed[0], scope=())]) == tuple(issued)
    assert lost_lines([*issued, *issued], signed) == tuple(issued)
