"""The procedures of the demo walked, as they are written and with mistakes put in."""

from dataclasses import replace

import pytest

from garboard.book import Book
from garboard.handbook import read_book
from garboard.records.procedure import Procedure, See, Step
from garboard.systems.actions import actions_of
from garboard.systems.forbidden import Fault
from garboard.systems.state import State, start_of
from garboard.systems.walk import walk
from garboard.systems.walked import Walked, walk_all
from garboard.systems.ways import Ways
from tests.demo_site import DEMO


@pytest.fixture(scope="module")
def book() -> Book:
    return read_book(DEMO)


def act(do: str, tag: str, to: str | None = None) -> Step:
    return Step(do=do, tag=tag, to=to)  # type: ignore[arg-type]


def walked_otherwise(book: Book, name: str, **changes: object) -> Walked:
    """One procedure of the demo, changed and walked again."""
    written = book.records[name]
    assert isinstance(written, Procedure)
    changed = replace(written, **changes)  # type: ignore[arg-type]
    others = [one for one in book.of_kind(Procedure) if one.id != name]
    plants = {code: surveyed.plant for code, surveyed in book.surveys.items()}
    return walk_all([changed, *others], plants, book.values)[name]


def steps_of(book: Book, name: str) -> list[Step]:
    written = book.records[name]
    assert isinstance(written, Procedure)
    return list(written.steps)


def found(walked: Walked) -> list[tuple[int, Fault, str]]:
    return [(met.step, met.trouble.fault, met.trouble.about) for met in walked.walk.met]


def test_every_procedure_with_steps_is_walked_from_where_it_says(book: Book) -> None:
    written = [one for one in book.of_kind(Procedure) if one.steps]

    assert len(written) >= 18
    assert set(book.walks) == {str(one.id) for one in written}
    assert [name for name, walked in book.walks.items() if not walked.begins] == []


def test_no_procedure_of_the_demo_comes_to_a_state_that_must_never_be(book: Book) -> None:
    assert {name: found(walked) for name, walked in book.walks.items() if walked.walk.met} == {}


@pytest.mark.parametrize(
    ("name", "before", "step", "expected"),
    [
        ("SA-PR-012", 2, act("Open", "SA-HV-002", "open"), (3, Fault.OPENED, "SA-RV-002")),
        ("SA-PR-012", 2, act("Shut", "SA-HV-004", "shut"), None),
        ("SA-PR-012", 5, act("Open", "SA-HV-006", "open"), (5, Fault.REACHED, "SA-RV-002")),
        ("SA-PR-012", 5, act("Open", "SA-HV-002", "open"), (5, Fault.REACHED, "SA-RV-002")),
        ("SA-PR-006", 1, act("Start", "SA-CP-001", "running"), None),
        ("BG-PR-003", 6, act("Open", "BG-SN-001", "open"), None),
        ("BG-PR-003", 7, act("Start", "BG-PU-001", "running"), (8, Fault.OPENED, "BG-ST-001")),
    ],
)
def test_a_step_put_in_is_found_where_it_harms_and_only_there(
    book: Book, name: str, before: int, step: Step, expected: tuple[int, Fault, str] | None
) -> None:
    steps = steps_of(book, name)
    steps.insert(before - 1, step)

    walked = walked_otherwise(book, name, steps=tuple(steps))

    assert found(walked) == ([expected] if expected else [])


def test_a_procedure_begun_from_the_wrong_state_is_found(book: Book) -> None:
    walked = walked_otherwise(book, "SA-PR-006", when="ready")

    assert found(walked) == [(1, Fault.OPENED, "SA-RV-002")]


def test_a_procedure_begun_from_nowhere_takes_each_valve_the_worst_way(book: Book) -> None:
    walked = walked_otherwise(book, "SA-PR-012", when=None, isolation=None)

    (met,) = walked.walk.met

    assert met.trouble.fault is Fault.OPENED
    assert met.trouble.text.startswith("which an open way feeds from SA-AR-001")


def test_a_procedure_without_a_state_begins_where_its_isolation_ends(book: Book) -> None:
    walked = walked_otherwise(book, "SA-PR-012", when=None)

    assert walked.begins == "SA-PR-005"
    assert found(walked) == []


READ = Step(do="Read", tag="BG-PI-002", see=See(tag="BG-PI-002", value="0 bar(g)"))  # type: ignore[arg-type]


def strainer_opened(book: Book, *proofs: Step) -> set[tuple[int, ...]]:
    """The slips that nothing catches when the strainer is opened after some readings."""
    shut, drain = act("Shut", "BG-HV-001", "shut"), act("Open", "BG-HV-009", "open")
    steps = (shut, drain, *proofs, act("Open", "BG-ST-001"), act("Refit", "BG-ST-001"))
    walked = walked_otherwise(book, "BG-PR-003", steps=steps)
    return {slip.steps for slip in walked.slips if slip.uncaught}


def test_a_strainer_that_is_read_once_does_not_forgive_the_reading_left_out(book: Book) -> None:
    assert strainer_opened(book, READ) == {(3,), (3, 4)}


def test_a_strainer_that_is_read_twice_does(book: Book) -> None:
    assert strainer_opened(book, READ, READ) == set()


def test_an_isolation_with_a_switch_left_on_is_found_when_the_work_starts(book: Book) -> None:
    slips = {slip.steps: slip for slip in book.walks["DC-PR-002"].slips}

    assert slips[2,].caught == 5
    met = slips[2,].met
    assert met is not None
    assert met.step > len(book.walks["DC-PR-002"].procedure.steps)
    assert book.walks["DC-PR-002"].harm_of(slips[2,]).startswith("the work opens DC-BB-001")


def test_a_walk_asks_for_as_many_states_as_it_has_steps(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[State] = []
    settle = Ways.settle

    def counted(self: Ways, state: State) -> State:
        asked.append(state)
        return settle(self, state)

    monkeypatch.setattr(Ways, "settle", counted)
    plant = book.surveys["SA"].plant
    ways = Ways(plant)
    shut, opened = act("Shut", "SA-HV-006", "shut"), act("Open", "SA-HV-006", "open")
    states = plant.system.operating_states or {}
    start = ways.begin(start_of(plant, states["ready"]))

    walk(ways, start, actions_of(plant, [shut, opened] * 50, {}))

    assert len(asked) == 100
    assert len(ways._settled) <= 4
