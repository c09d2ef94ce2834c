"""What a number is here: every number with a unit, by kind of quantity and size, each with what it is.

Somebody reads 30 bar on a gauge or a plate and asks what it has to do with this vessel. Numbers that
are equal whatever their unit stand together, with the other customary unit beside them.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.kinds import words
from garboard.calc.show import show_in, show_number
from garboard.calc.value import Value
from garboard.names import is_identifier
from garboard.records.component_kinds import noun_of
from garboard.views.draft import Draft
from garboard.views.inline import title_of
from garboard.views.listing import Jumps, Listed, Listing, slug
from garboard.views.page import Cell, Heading, Link, Paragraph, Run, Strong
from garboard.views.runs import plain

__all__ = [
    "NUMBERS",
    "SAID",
    "SameNumber",
    "number_index",
    "same_numbers",
    "what_it_is",
]

NUMBERS = "registers/numbers"
NEAR = 1e-3
"""Two numbers this near to each other, as a share of the larger, are one in the index."""
OTHERS = "Other quantities"
FEW = 4
"""A kind of quantity with fewer numbers has no part of its own."""

OTHER_UNIT: Mapping[str, str] = {
    "bar(g)": "psi(g)",
    "mbar(g)": "psi(g)",
    "kPa(g)": "bar(g)",
    "MPa(g)": "bar(g)",
    "Pa(g)": "mbar(g)",
    "psi(g)": "bar(g)",
    "bar(a)": "psi(a)",
    "mbar(a)": "psi(a)",
    "atm(a)": "bar(a)",
    "psi(a)": "bar(a)",
    "bar(d)": "psi(d)",
    "kPa(d)": "bar(d)",
    "psi(d)": "bar(d)",
    "N/mm2": "psi(d)",
    "mm": "inch",
    "m": "ft",
    "inch": "mm",
    "ft": "m",
    "L": "gal_us",
    "m3": "L",
    "gal_us": "L",
    "gal_imp": "L",
    "m3/h": "gal_us/min",
    "m3/min": "m3/h",
    "L/min": "gal_us/min",
    "L/h": "gal_us/h",
    "gal_us/min": "L/min",
    "ft3/min": "m3/h",
    "kW": "hp",
    "W": "hp",
    "hp": "kW",
    "kg": "lb",
    "t": "lb",
    "lb": "kg",
    "kN": "lbf",
    "N": "lbf",
    "lbf": "N",
    "degC": "degF",
    "degF": "degC",
}
"""The unit that somebody from the other side of an ocean would have read (common practice, no source)."""

OTHERWISE = (
    "Read in another unit: 1 MPa is 10 bar, 100 kPa is 1 bar, 1 kgf/cm2 is 0.981 bar, 1 bar is 14.5 psi;"
    " 1 inch is 25.4 mm; 1 US gallon is 3.785 L, 1 imperial gallon is 4.546 L;"
    " 1 m3/h is 16.7 L/min; 1 kW is 1.34 hp."
)
"""For paper: what the pairs beside the numbers leave out (NIST SP 811, appendix B.8)."""
LIMITS = frozenset(
    "set rated low high alarm_low alarm_high trip cuts_in cuts_out test fails_at limit".split()
)
"""Properties of a part that are a setting or a limit, and are set off in bold."""
SAID = {"range.from": "start of the scale", "range.to": "end of the scale"}


@dataclass(frozen=True, slots=True)
class SameNumber:
    """A number, and everything here that is that number."""

    kind: str
    """`gauge pressure`."""
    text: str
    """As most plainly shown: `24 V` rather than `24.0 V`."""
    other: str
    """In the other customary unit; empty where there is none."""
    values: tuple[Value, ...]
    """By address."""
    anchor: str
    """Where it stands on the page of numbers."""


def same_numbers(book: Book) -> Iterator[SameNumber]:
    """Every number with a unit, the kinds with most numbers first, then by size."""
    kinds: dict[str, list[Value]] = {}
    for _, value in sorted(book.values.items()):
        if value.si is not None and value.unit.text:
            said = words(value.type).removeprefix("an ").removeprefix("a ")
            kinds.setdefault(said, []).append(value)
    taken: set[str] = set()
    for kind, values in sorted(kinds.items(), key=lambda one: (-len(one[1]), one[0])):
        for group in _grouped(values):
            yield _same_number(kind, group, taken)


def _grouped(values: list[Value]) -> Iterator[list[Value]]:
    """Numbers of one kind by size, those as good as equal together."""
    group: list[Value] = []
    for value in sorted(values, key=lambda one: (one.si or 0.0, one.address)):
        if group and not _near(group[0], value):
            yield group
            group = []
        group.append(value)
    yield group


def _near(one: Value, other: Value) -> bool:
    """Whether two values of one kind are as good as equal, in the unit of the first."""
    first, second = (one.unit.from_si(value.si or 0.0) for value in (one, other))
    return abs(first - second) <= NEAR * max(abs(first), abs(second))


def _same_number(kind: str, group: list[Value], taken: set[str]) -> SameNumber:
    """One line of the index; two worked numbers that are shown alike get unlike anchors."""
    plainest = min(group, key=lambda value: (len(value.text), value.text))
    unit = OTHER_UNIT.get(plainest.text.rpartition(" ")[2])
    other = show_in(plainest, unit) if unit else None
    if other == plainest.text:  # shown as a rule book prints it, whatever unit it is worked out in
        si = plainest.si or 0.0
        other = show_number(plainest.unit.from_si(si), plainest.digits, plainest.unit.text)
    wanted = anchor = slug(f"{kind} {plainest.text}")
    number = 1
    while anchor in taken:
        number += 1
        anchor = f"{wanted}-{number}"
    taken.add(anchor)
    values = tuple(sorted(group, key=lambda value: value.address))
    return SameNumber(kind, plainest.text, other or "", values, anchor)


def what_it_is(book: Book, value: Value) -> tuple[str, str]:
    """What a number is: the limit it is, empty for any other number, and the rest of the words."""
    owner, _, name = value.address.partition(".")
    part = book.components.get(owner)
    if part is None:
        return "", value.label or title_of(book, owner) or value.address
    said = SAID.get(name) or noun_of(name)
    called = part.name or part.kind
    if name in LIMITS:
        return said, called
    return "", f"{said} of {called}"


def number_index(draft: Draft) -> None:
    """The page of numbers: in parts by quantity, each number once, settings and limits in bold."""
    found = tuple(same_numbers(draft.book))
    often = Counter(same.kind for same in found)
    parts: dict[str, list[SameNumber]] = {}
    for same in found:
        rare = often[same.kind] < FEW or "^" in same.kind
        parts.setdefault(OTHERS if rare else same.kind.capitalize(), []).append(same)
    later = parts.pop(OTHERS, None)
    if later:
        parts[OTHERS] = later
    draft.add(
        Paragraph(
            (
                "What is this number here? Look under its kind, then by size; in bold what is a setting"
                " or a limit. Numbers that differ by less than one in a thousand stand together.",
            )
        ),
        Paragraph((OTHERWISE,)),
        Jumps("Kinds of quantity", tuple((title, f"kind-{slug(title)}") for title in parts)),
    )
    for title, numbers in parts.items():
        items = tuple(_item(draft.book, one) for one in numbers)
        draft.add(Heading(title, anchor=f"kind-{slug(title)}"), Listing(title, items))


def _item(book: Book, same: SameNumber) -> Listed:
    other = f" = {same.other}" if same.other else ""
    lines = {plain(line): line for value in same.values for line in (_line(book, same, value),)}
    return Listed((Strong(same.text), other), tuple(lines.values()), same.anchor)


def _line(book: Book, same: SameNumber, value: Value) -> Cell:
    limit, rest = what_it_is(book, value)
    block = value.address.partition(".")[0]
    sheet = book.network.sheets.get(block)
    owner = sheet.owner if sheet else block
    runs: list[Run] = [Strong(limit), ", "] if limit else []
    runs.append(Link(value.address, f"{rest}, {owner}" if is_identifier(owner) else rest))
    if value.text != same.text:
        runs.append(f", shown as {value.text}")
    return tuple(runs)
