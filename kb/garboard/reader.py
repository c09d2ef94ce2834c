"""The handbook's numbers for a program or a notebook: `garboard.read("content")`.

Nothing can be changed here. A number keeps its unit, its range and its sources with it, so that none of
them is lost on the way into a table of somebody else's.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from html import escape
from pathlib import Path

from garboard.calc.show import show_in, show_range
from garboard.calc.units import read_unit
from garboard.calc.value import Value
from garboard.errors import Diagnostic
from garboard.handbook import Handbook
from garboard.handbook import read as read_handbook
from garboard.names import nearest
from garboard.views.numbers import NumberRow, SourceCited, in_unit
from garboard.views.values_data import Flat, flat, values_csv, values_json

__all__ = ["Number", "Numbers", "OpenBook", "read"]


@dataclass(frozen=True, slots=True, repr=False)
class Number:
    """One number of the handbook, in one unit."""

    row: NumberRow
    """Everything about it as plain data."""
    known: Value

    @property
    def address(self) -> str:
        """How it is quoted."""
        return self.row.address

    @property
    def label(self) -> str:
        """What it is."""
        return self.row.label

    @property
    def text(self) -> str:
        """As the handbook shows it: `30 bar(g)`."""
        return self.row.text

    @property
    def unit(self) -> str:
        """The unit of value, low, high and usual."""
        return self.row.unit

    @property
    def kind(self) -> str:
        """What it measures and counts from: `gauge pressure`."""
        return self.row.kind

    @property
    def value(self) -> float | None:
        """The number in its unit; None where it is not computed."""
        return self.row.value

    @property
    def si(self) -> float | None:
        """The number in SI units, to the last bit."""
        return self.row.si

    @property
    def low(self) -> float | None:
        """Least, in its unit, when everything is at its worst."""
        return self.row.low

    @property
    def high(self) -> float | None:
        """Most, in its unit, when everything is at its worst."""
        return self.row.high

    @property
    def usual(self) -> tuple[float, float] | None:
        """What it usually lies between, in its unit; None where no tolerance reaches it."""
        low, high = self.row.usual_low, self.row.usual_high
        return None if low is None or high is None else (low, high)

    @property
    def given(self) -> bool:
        """Written down by a person rather than worked out."""
        return self.row.origin == "given"

    @property
    def tolerance(self) -> str:
        """As written."""
        return self.row.tolerance

    @property
    def sources(self) -> tuple[SourceCited, ...]:
        """Where it comes from, with edition and clause."""
        return self.row.sources

    @property
    def formula(self) -> str:
        """Its line with numbers in place of names; empty for a number outside the calculations."""
        return self.row.worked

    @property
    def page(self) -> str:
        """Path and place of its page in the site."""
        return self.row.page

    @property
    def fault(self) -> str:
        """Why it is not computed; empty where it is."""
        return self.row.fault

    def in_unit(self, unit: str) -> "Number":
        """The same number in another unit of the same kind.

        Args:
            unit: `psi(g)`, `gal_us`.

        Raises:
            ValueError: The unit measures something else, or is none.
        """
        text = show_in(self.known, unit)
        if text is None:
            kind = self.row.kind
            raise ValueError(
                f"{self.address} is {self.text}, a {kind}: it has no value in {unit!r}"
            )
        other, row = read_unit(unit), self.row
        ends = in_unit(
            other, (row.si, row.si_low, row.si_high, row.si_usual_low, row.si_usual_high)
        )
        value, low, high, usual_low, usual_high = ends
        shown = replace(
            row, text=text, unit=unit, value=value, low=low, high=high,
            usual_low=usual_low, usual_high=usual_high,
        )  # fmt: skip
        return replace(self, row=shown, known=replace(self.known, unit=other, text=text))

    def __float__(self) -> float:
        """The number in its unit.

        Raises:
            ValueError: It is not computed.
        """
        if self.row.value is None:
            raise ValueError(f"{self.address} is not computed: {self.fault}")
        return self.row.value

    def __repr__(self) -> str:
        return f"<{' | '.join(self._said())}>"

    def _repr_html_(self) -> str:
        """For a notebook; everything in it is escaped."""
        first, *others = (escape(part) for part in self._said())
        return f"<b>{first}</b>{''.join(f'<br>{part}' for part in others)}"

    def _said(self) -> Iterator[str]:
        yield f"{self.address} = {self.text}"
        if self.label:
            yield self.label
        if spread := show_range(self.known):
            yield spread
        if self.sources:
            yield ", ".join(f"{one.source} {one.clause}".strip() for one in self.sources)
        if self.fault:
            yield self.fault


class Numbers(Mapping[str, Number]):
    """The numbers of a handbook by address, in order of address."""

    def __init__(self, handbook: Handbook) -> None:
        self._rows = {row.address: row for row in handbook.numbers}
        self._values = handbook.book.values

    def __getitem__(self, address: str) -> Number:
        """One number.

        Raises:
            KeyError: There is none of that address; the nearest is named.
        """
        row = self._rows.get(address)
        if row is None:
            near = nearest(address, self._rows)
            hint = f"; did you mean {near}?" if near else ""
            raise KeyError(f"there is no value {address!r}{hint}")
        return Number(row, self._values[address])

    def __iter__(self) -> Iterator[str]:
        return iter(self._rows)

    def __len__(self) -> int:
        return len(self._rows)

    def __repr__(self) -> str:
        return f"<{len(self)} numbers, {', '.join(list(self)[:3])}, ...>"

    def rows(self) -> Iterator[Flat]:
        """Plain flat dicts, one a number: `pandas.DataFrame(book.values.rows())`."""
        return (flat(row) for row in self._rows.values())


@dataclass(frozen=True, slots=True)
class OpenBook:
    """A handbook that was read: its numbers, and what stands against it."""

    handbook: Handbook
    values: Numbers

    @property
    def vessel(self) -> str:
        """Name of the vessel."""
        return self.handbook.vessel

    @property
    def diagnostics(self) -> tuple[Diagnostic, ...]:
        """Everything the rules found, by place."""
        return self.handbook.diagnostics

    def json(self) -> str:
        """The numbers as the site publishes them in values.json."""
        return values_json(self.handbook.numbers, self.vessel)

    def csv(self) -> str:
        """The numbers as the site publishes them in values.csv."""
        return values_csv(self.handbook.numbers)

    def __repr__(self) -> str:
        return f"<{self.vessel}: {len(self.values)} numbers, {len(self.diagnostics)} diagnostics>"


def read(folder: str | Path) -> OpenBook:
    """Read a content folder, work it out and check it.

    Args:
        folder: The folder that holds handbook.yml.

    Raises:
        GarboardError: There is no such folder, or it is no content folder.
    """
    handbook = read_handbook(Path(folder))
    return OpenBook(handbook, Numbers(handbook))
