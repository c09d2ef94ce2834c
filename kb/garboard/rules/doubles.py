"""Numbers that say the same thing in two places: each pair of them, whether they agree or not."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.kinds import Type
from garboard.calc.value import ASSUMED, Value
from garboard.errors import Where
from garboard.names import is_tag
from garboard.records.alarm import Alarm
from garboard.records.base import bare_id
from garboard.records.change import Change
from garboard.records.figure import figure_of
from garboard.records.inspection import PlanLine, Test
from garboard.records.installed import changes_of_value
from garboard.records.standing import is_live

__all__ = ["Double", "Said", "doubles"]


@dataclass(frozen=True, slots=True)
class Said:
    """A number, where it is said, and in which words."""

    words: str
    """`SA-PS-001.set is 18 bar(g)`."""
    si: float
    type: Type
    where: Where


@dataclass(frozen=True, slots=True)
class Double:
    """Two numbers of one thing; the second is the one to look at."""

    first: Said
    second: Said
    about: str

    @property
    def differ(self) -> bool:
        """Whether they are not the same number of the same kind."""
        one, other = self.first, self.second
        near = abs(one.si - other.si) <= 1e-9 * max(abs(one.si), abs(other.si))
        return one.type == other.type and not near


def doubles(book: Book) -> Iterator[Double]:
    """Every pair that a handbook gives room for."""
    yield from _changes(book)
    yield from _cited_tags(book)
    yield from _same_label(book)
    yield from _alarms(book)
    yield from _criteria(book)


def _changes(book: Book) -> Iterator[Double]:
    """What the last installed change made a value, and what it is."""
    moved = {address for change in book.of_kind(Change) for address in change.values}
    for address in sorted(moved & book.values.keys()):
        value, dated = book.values[address], changes_of_value(book.of_kind(Change), address)
        if not dated or value.si is None:
            continue
        change = dated[-1][1]
        after = figure_of(book.values, change.values[address].after)
        if after is not None and not after.address:
            where = change.place(f"values.{address}.after")
            words = f"{change.id} makes {address} {after.text}"
            made = Said(words, after.si, after.type, where)
            yield Double(_said(value), made, str(change.id))


def _cited_tags(book: Book) -> Iterator[Double]:
    """A number in a fence that cites a component, and what the component's own data say."""
    for value in book.values.values():
        for citation in value.sources if _in_fence(book, value) else ():
            own = [
                other
                for other in book.values.values()
                if is_tag(citation.source) and other.address.startswith(f"{citation.source}.")
                if other.si is not None and other.type == value.type
            ]
            if own and not any(other.si == value.si for other in own):
                nearest = min(own, key=lambda other: abs((other.si or 0.0) - (value.si or 0.0)))
                yield Double(_said(nearest), _said(value), value.address)


def _same_label(book: Book) -> Iterator[Double]:
    """Two numbers in fences that have the same name and label and cite the same source."""
    seen: dict[tuple[object, ...], Value] = {}
    for value in book.values.values():
        sources = tuple(sorted((item.source, item.clause) for item in value.sources))
        free = any(source == ASSUMED or is_tag(source) for source, _ in sources)
        if free or not (_in_fence(book, value) and value.label and sources):
            continue
        name = value.address.partition(".")[2]
        first = seen.setdefault((name, value.label.casefold(), sources), value)
        if first is not value:
            yield Double(_said(first), _said(value), value.address)


def _alarms(book: Book) -> Iterator[Double]:
    """What an alarm is set to, and at what its vessel's data say that it comes."""
    for alarm in book.of_kind(Alarm):
        setting = book.values.get(alarm.set or "")
        part = book.components.get(alarm.tag or "")
        if setting is None or part is None or alarm.direction is None or not is_live(alarm):
            continue
        for tag in (part.tag, *part.watches):
            stated = book.values.get(f"{tag}.alarm_{alarm.direction}")
            if stated and stated.si is not None and setting.si is not None:
                yield Double(_said(setting), _said(stated), tag)


def _criteria(book: Book) -> Iterator[Double]:
    """What a line of the inspection plan asks for, and what its test was held against."""
    for test in book.of_kind(Test):
        line = book.records.get(bare_id(test.line or ""))
        if not isinstance(line, PlanLine) or not is_live(test):
            continue
        asked = figure_of(book.values, line.criterion or "")
        held = figure_of(book.values, test.criterion or "")
        if asked and held:
            asks, was = f"{line.id} asks {asked.text}", f"{test.id} is held against {held.text}"
            first = Said(asks, asked.si, asked.type, line.place("criterion"))
            second = Said(was, held.si, held.type, test.place("criterion"))
            yield Double(first, second, str(test.id))


def _in_fence(book: Book, value: Value) -> bool:
    owner = value.address.partition(".")[0]
    return value.given and value.si is not None and owner in book.network.sheets


def _said(value: Value) -> Said:
    si = value.si if value.si is not None else 0.0
    return Said(f"{value.address} is {value.text}", si, value.type, value.where)
