"""Each part of a block's key is needed: left out, an edit would leave an old number standing."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import pytest

from garboard.calc import network as network_module
from garboard.calc import shelf
from garboard.calc.block_keys import BlockKeys, text_key
from garboard.calc.engine import digest
from garboard.calc.method import Method
from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence
from garboard.calc.store import Store
from garboard.errors import Where
from tests.calc.desk import fence, given
from tests.calc.exactness import first_difference
from tests.calc.sample_methods import RATIO

Patch = pytest.MonkeyPatch


@dataclass(frozen=True)
class State:
    """A handbook at one time."""

    fences: Mapping[str, str]
    givens: Mapping[str, str] | None = None
    aliases: Mapping[str, str] | None = None
    options: str = ""
    owner: str = "SA-CL-001"
    methods: Mapping[str, Method] | None = None

    def build(self, store: Store | None = None) -> Network:
        fences = [
            replace(fence(name, text, options=self.options), owner=self.owner)
            for name, text in self.fences.items()
        ]
        known = {address: given(address, text) for address, text in (self.givens or {}).items()}
        return evaluate(fences, known, self.methods or {}, self.aliases or {}, store)


def after(before: State, now: State) -> tuple[Network, str]:
    """The incremental build after an edit, and how it differs from a clean one."""
    store = Store()
    before.build(store)
    incremental = now.build(Store.read(store.write()))
    return incremental, first_difference(incremental, now.build())


def without_text(engine: str, one: Fence) -> str:
    return digest(engine, one.name, one.owner, one.options_text, *["" for _ in one.lines])


def without_owner(engine: str, one: Fence) -> str:
    return text_key(engine, replace(one, owner=""))


def without_options(engine: str, one: Fence) -> str:
    return text_key(engine, replace(one, options_text=""))


def without_engine(_: str, one: Fence) -> str:
    return text_key("", one)


def text_left_out(spoilt: Callable[[str, Fence], str]) -> Callable[[Patch], None]:
    return lambda patch: patch.setattr(shelf, "text_key", spoilt)


def fact_left_out(sort: str, *places: int) -> Callable[[Patch], None]:
    """Leave some of the facts of what a block uses out of its key."""

    def leave_out(patch: Patch) -> None:
        name = "facts" if sort == "line" else "given_facts"
        right: Callable[..., list[Any] | None] = getattr(BlockKeys, name)

        def spoilt(self: BlockKeys, what: Any) -> list[Any] | None:
            found = right(self, what)
            if found and found[0] == sort:
                return [None if at in places else part for at, part in enumerate(found)]
            return found

        patch.setattr(BlockKeys, name, spoilt)

    return leave_out


def address_left_out(patch: Patch) -> None:
    right = BlockKeys.key_of

    def spoilt(
        self: BlockKeys, blocks: Sequence[str], asked: Mapping[str, Sequence[tuple[str, str]]]
    ) -> str:
        return right(self, blocks, dict.fromkeys(asked, ()))

    patch.setattr(BlockKeys, "key_of", spoilt)


def neighbour_left_out(patch: Patch) -> None:
    """The other blocks of a group that is worked out together."""
    right = BlockKeys.key_of

    def spoilt(
        self: BlockKeys, blocks: Sequence[str], asked: Mapping[str, Sequence[tuple[str, str]]]
    ) -> str:
        return right(self, sorted(blocks)[:1], asked)

    patch.setattr(BlockKeys, "key_of", spoilt)


def air_left_out(patch: Patch) -> None:
    right = BlockKeys.__init__

    def spoilt(self: BlockKeys, *rest: Any) -> None:
        right(self, *rest)
        self.air = "air"

    patch.setattr(BlockKeys, "__init__", spoilt)


def air_above_left_out(patch: Patch) -> None:
    right = BlockKeys.full_key
    patch.setattr(
        BlockKeys, "full_key", lambda self, key, *, air: right(self, key, air=air and False)
    )


def line(text: str, *, user: str = "y = over.x * 2", **rest: Any) -> State:
    return State({"over": text, "user": user}, **rest)


def part(text: str, user: str = "y = 2 * SA-RV-001.set") -> State:
    return State({"user": user}, {"SA-RV-001.set": text})


AIR = {"site.atmosphere": "1 bar(a) +/- 10 mbar"}
MORE_AIR = {"site.atmosphere": "1 bar(a) +/- 20 mbar"}
CALL = "r = pressure_ratio(p_1 = 1 bar(a), p_2 = 4 bar(a))"
OTHER_RATIO = replace(RATIO, body="ratio = p_2 / p_1 + 1  # ratio\n")
PARTS: Mapping[str, tuple[Callable[[Patch], None], State, State]] = {
    "lines": (text_left_out(without_text), State({"a": "x = 1"}), State({"a": "x = 2"})),
    "owner": (
        text_left_out(without_owner), State({"a": "x = 1"}), State({"a": "x = 1"}, owner="SA-CL-009")
    ),
    "options": (
        text_left_out(without_options),
        State({"a": "x = 1 / 3"}),
        State({"a": "x = 1 / 3"}, options="; digits 5"),
    ),
    "method": (
        text_left_out(without_engine),
        State({"a": CALL}, methods={"pressure_ratio": RATIO}),
        State({"a": CALL}, methods={"pressure_ratio": OTHER_RATIO}),
    ),
    "what a name stands for": (
        address_left_out,
        line("x = 3\nz = 3", user="y = other.x", aliases={"other.x": "over.x"}),
        line("x = 3\nz = 3", user="y = other.x", aliases={"other.x": "over.z"}),
    ),
    "bits of a value": (
        fact_left_out("line", 1), line("x = 1 m / 3"), line("x = 1 m / 3.0000001")
    ),
    "text of a value": (fact_left_out("line", 2), line("x = 250 L"), line("x = 250.0 L")),
    "whether it is a count": (
        fact_left_out("line", 3),
        State({"over": "x = 6 / 2", "user": "y = over.x * 2"}, options="; digits 1"),
        State({"over": "x = floor(6 / 2)", "user": "y = over.x * 2"}, options="; digits 1"),
    ),
    "kind of a value": (
        fact_left_out("line", 5),
        line("x = 2.00", user="y = over.x * 1 bar(d)"),
        line("x = 2 bar(a) / (1 bar(d))", user="y = over.x * 1 bar(d)"),
    ),
    "what its range comes from": (
        fact_left_out("line", 6),
        line("x = 30 bar(g) +/- 0.5 bar"),
        line("x = 30 bar(g) +/- 0.6 bar"),
    ),
    "bits of a given": (
        fact_left_out("given", 2, 3, 4, 5, 7), part("30 bar(g)"), part("31 bar(g)")
    ),
    "tolerance of a given": (
        fact_left_out("given", 3, 4, 6), part("30 bar(g) +/- 1 bar"), part("30 bar(g) +/- 2 bar")
    ),
    "text of a given": (fact_left_out("given", 5), part("30 bar(g)"), part("30.0 bar(g)")),
    "neighbour in a group": (
        neighbour_left_out,
        State({"one": "a = 1\nb = two.c", "two": "c = one.a\nd = 1"}),
        State({"one": "a = 1\nb = two.c", "two": "c = one.a\nd = 2"}),
    ),
    "atmosphere": (
        air_left_out,
        State({"a": "x = absolute(1 bar(g))"}, AIR),
        State({"a": "x = absolute(1 bar(g))"}, {"site.atmosphere": "990 mbar(a)"}),
    ),
    "atmosphere of a block above": (
        air_above_left_out,
        State({"over": "x = absolute(1 bar(g))", "user": "y = over.x * 2"}, AIR),
        State({"over": "x = absolute(1 bar(g))", "user": "y = over.x * 2"}, MORE_AIR),
    ),
}  # fmt: skip
EVERY = pytest.mark.parametrize("name", PARTS)


@EVERY
def test_an_edit_of_each_part_is_worked_out_again(name: str) -> None:
    _, before, now = PARTS[name]

    assert after(before, now)[1] == ""


@EVERY
def test_a_key_without_one_part_would_leave_an_old_number(name: str, monkeypatch: Patch) -> None:
    leave_out, before, now = PARTS[name]
    leave_out(monkeypatch)

    assert after(before, now)[1] != ""


def test_another_engine_works_everything_out_again(monkeypatch: Patch) -> None:
    state = State({"a": "x = 1", "b": "y = a.x"})
    store = Store()
    state.build(store)

    monkeypatch.setattr(network_module, "engine_of", lambda _: "another engine")

    assert state.build(Store.read(store.write())).evaluated == ("a", "b")


def test_a_method_whose_code_the_engine_does_not_hold_is_never_kept() -> None:
    from tests.calc.sample_methods import METHODS  # noqa: PLC0415 - tables of this file's neighbour

    state = State({"a": "x = 1"}, methods=METHODS)
    store = Store()
    state.build(store)

    assert store.lines == {}
    assert state.build(store).evaluated == ("a",)


def test_an_input_that_is_clipped_in_its_own_block_works_one_block_out() -> None:
    user = "y = over.n * 2 m"
    before = State({"over": "a = 5\nn = min(a, 3)", "user": user, "last": "z = user.y + 1 m"})
    now = State({"over": "a = 7\nn = min(a, 3)", "user": user, "last": "z = user.y + 1 m"})

    incremental, difference = after(before, now)

    assert incremental.evaluated == ("over",)
    assert difference == ""
    assert incremental.values["over.a"].si == 7.0


def test_a_fence_that_moves_is_not_worked_out_again_and_knows_its_new_place() -> None:
    text = "x = 3 m +/- 1 mm  # as built [SA-TR-001]\nrequire x > 2 m  # enough [SA-TR-002]"
    here = fence("a", text)
    there = replace(here, where=Where("elsewhere.md", 77, 3))
    store = Store()
    evaluate([here], {}, {}, store=store)

    moved = evaluate([there], {}, {}, store=Store.read(store.write()))

    assert moved.evaluated == ()
    assert first_difference(moved, evaluate([there], {}, {})) == ""
    assert moved.values["a.x"].where == Where("elsewhere.md", 77, 3)
    assert moved.requirements[0].sources[0].where == Where("elsewhere.md", 78, 30)


def test_blocks_that_use_each_other_are_worked_out_together() -> None:
    before, now = PARTS["neighbour in a group"][1:]

    assert set(after(before, now)[0].evaluated) == {"one", "two"}


def test_what_is_at_fault_is_never_kept() -> None:
    state = State({"good": "x = 1", "bad": "y = 3 x", "rests": "z = bad.y", "fine": "w = good.x"})
    store = Store()
    state.build(store)

    again = state.build(Store.read(store.write()))

    assert set(again.evaluated) == {"bad", "rests"}
    assert {name.removesuffix(" sheet") for name in store.lines} == {"good", "fine"}


def test_a_range_after_an_edit_is_taken_over_the_corners_of_all_inputs_upstream() -> None:
    """x - x is nothing at every corner, however uncertain x is."""
    over = "x = 30 bar(g) +/- 1 bar"
    before = State({"over": over, "user": "y = over.x + 1 bar(d)", "last": "z = user.y"})
    now = State({"over": over, "user": before.fences["user"], "last": "z = user.y - over.x"})

    incremental, difference = after(before, now)

    assert difference == ""
    assert incremental.evaluated == ("last",)
    assert incremental.values["last.z"].low == incremental.values["last.z"].high == 1e5


def test_workings_are_found_when_they_are_asked_for() -> None:
    state = State({"over": "a = 5 m +/- 1 m\nn = 2 * a", "user": "y = over.n + 1 m", "no": "k = 1"})
    store = Store()
    clean = state.build(store)
    kept = state.build(Store.read(store.write()))

    assert kept.evaluated == ()
    assert kept.recompute({"over.a": 7.0}, ["user.y"]) == (15.0,)
    formula, own = kept.formula("user.y"), clean.formula("user.y")
    assert formula is not None
    assert own is not None
    assert (formula.si, formula.text) == (own.si, own.text)
    assert "no.k" not in kept.workings.slots
    assert kept.slots.keys() == clean.slots.keys()
    assert kept.formula("nowhere.x") is None


def test_workings_reach_beyond_a_value_that_was_taken_as_known() -> None:
    before = State({"over": "a = 5\nn = 2 * a", "user": "y = over.n + 1"})
    now = State({"over": "a = 5\nn = 2 * a", "user": "y = over.n + 2"})

    incremental, _ = after(before, now)

    assert incremental.evaluated == ("user",)
    assert incremental.recompute({"over.a": 6.0}, ["user.y"]) == (14.0,)


def test_a_sheet_is_opened_as_it_was_when_its_block_was_taken() -> None:
    first, second = State({"a": "x = 1"}), State({"a": "x = 2"})
    store = Store()
    first.build(store)
    taken = first.build(store)
    second.build(store)

    assert taken.evaluated == ()
    assert taken.sheets["a"].lines[0].worked == "x = 1"
    assert first_difference(taken, first.build()) == ""
