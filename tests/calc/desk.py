"""A desk to calculate on: one or more fences, a few given values, and what came of them."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from garboard.calc.directory import Directory
from garboard.calc.method import Method
from garboard.calc.network import Network, evaluate
from garboard.calc.quantity import read_quantity
from garboard.calc.sheet import Fence, WorkedLine
from garboard.calc.shelf import Shelf
from garboard.calc.value import Given, Requirement, Value
from garboard.calc.workings import Layout, Workings
from garboard.errors import Diagnostic, Where

FIRST_LINE = 10
"""The line of the file on which the first line of a fence stands."""


@dataclass(frozen=True)
class Desk:
    """What came of one fence called `desk`."""

    network: Network

    @property
    def faults(self) -> tuple[Diagnostic, ...]:
        return self.network.diagnostics

    @property
    def fault(self) -> Diagnostic:
        (only,) = self.network.diagnostics
        return only

    def value(self, name: str) -> Value:
        return self.network.values[f"desk.{name}"]

    def si(self, name: str) -> float:
        found = self.value(name).si
        assert found is not None, self.network.diagnostics
        return found

    def ends(self, name: str) -> tuple[float, float]:
        value = self.value(name)
        assert value.low is not None
        assert value.high is not None
        return value.low, value.high

    def text(self, name: str) -> str:
        return self.value(name).text

    def line(self, name: str) -> WorkedLine:
        return next(line for line in self.network.sheets["desk"].lines if line.name == name)

    @property
    def requirement(self) -> Requirement:
        (only,) = self.network.requirements
        return only


def given(address: str, text: str) -> Given:
    """A value that stands outside the fences, on line 3 of its file."""
    where = Where("handbook.yml", 3, 5)
    return read_quantity(text, where).given(address, where)


def fence(name: str, text: str, *, options: str = "", path: str = "") -> Fence:
    """A fence whose first line stands on FIRST_LINE."""
    where = Where(path or f"{name}.md", FIRST_LINE, 1)
    return Fence(name, options, tuple(text.strip("\n").split("\n")), where, "SA-CL-001")


def desk(
    text: str,
    givens: Mapping[str, str] | None = None,
    methods: Mapping[str, Method] | None = None,
    *,
    options: str = "",
) -> Desk:
    """Work one fence out."""
    known = {address: given(address, written) for address, written in (givens or {}).items()}
    return Desk(evaluate([fence("desk", text, options=options)], known, methods or {}))


def network(
    fences: Mapping[str, str],
    givens: Mapping[str, str] | None = None,
    paths: Sequence[str] = (),
) -> Network:
    """Work several fences out, by name; `paths` says in which order they stand in the handbook."""
    known = {address: given(address, written) for address, written in (givens or {}).items()}
    places = {name: f"{at}.md" for at, name in enumerate(paths)}
    drawn = [fence(name, text, path=places.get(name, "")) for name, text in fences.items()]
    return evaluate(drawn, known, {})


def workings(
    fences: Iterable[Fence],
    givens: Mapping[str, Given] | None = None,
    methods: Mapping[str, Method] | None = None,
) -> Workings:
    """All fences worked out, without the pages that a handbook makes of them."""
    shelf = Shelf(fences, methods or {}, None, "")
    layout = Layout(shelf, Directory(shelf.cards, givens or {}, {}))
    found = Workings(layout, methods or {})
    found.enter(range(len(layout.groups)))
    return found
