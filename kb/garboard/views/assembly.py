"""What it takes to put parts together again: joints and their torque, clearances, what is renewed, tools."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from garboard.book import Book
from garboard.records.assembly import Clearance, Joint
from garboard.records.component import Component
from garboard.views.inline import cell, shown
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Plate,
    Row,
    Strong,
    Table,
)
from garboard.views.runs import plain

__all__ = ["closing_blocks", "renewed_always"]

JOINTS = ("joint", "bolts", "torque", "how it is drawn up", "gasket or ring")
GAPS = ("clearance", "when fitted", "worn out at", "how it is measured")


def closing_blocks(book: Book, parts: Iterable[Component]) -> Iterator[Block]:
    """Joints, clearances and special tools of some parts; nothing where none are written.

    Args:
        book: The book.
        parts: In the order in which they are shown.
    """
    parts = tuple(parts)
    joints = _merged(
        (part, _named(one.name, key), _joint(book, part, key, one))
        for part in parts
        for key, one in (part.joints or {}).items()
    )
    gaps = _merged(
        (part, _named(one.name, key), _gap(book, f"{part.tag}.{key}", one))
        for part in parts
        for key, one in (part.clearances or {}).items()
    )
    tools = tuple(
        (Plate(str(part.tag)), f" {part.name or part.kind}: {'; '.join(part.special_tools)}")
        for part in parts
        if part.special_tools
    )
    if joints or gaps:
        yield Heading("How it is closed")
    if joints:
        yield Table("Joints", tuple(map(Column, JOINTS)), joints)
    if gaps:
        yield Table("Clearances", tuple(map(Column, GAPS)), gaps)
    if tools:
        yield Heading("Special tools")
        yield Bullets(tools)


def renewed_always(parts: Iterable[Component]) -> frozenset[str]:
    """The part numbers that are renewed whenever one of the parts was open."""
    found = set()
    for part in parts:
        found |= set(part.renew)
        found |= {joint.gasket for joint in (part.joints or {}).values() if joint.gasket}
    return frozenset(found)


def _named(name: str | None, key: str) -> str:
    return name or key.replace("_", " ")


def _merged(found: Iterable[tuple[Component, str, tuple[Cell, ...]]]) -> tuple[Row, ...]:
    """One row for parts that are closed alike, with the plate of each."""
    alike: dict[tuple[str, ...], tuple[list[str], str, tuple[Cell, ...]]] = {}
    for part, name, cells in found:
        known = alike.setdefault((name, *map(plain, cells)), ([], name, cells))
        known[0].append(str(part.tag))
    return tuple(
        Row(((*(run for tag in tags for run in (Plate(tag), " ")), name), *cells))
        for tags, name, cells in alike.values()
    )


def _joint(book: Book, part: Component, key: str, one: Joint) -> tuple[Cell, ...]:
    bolts: Cell = (one.bolts or "not recorded",)
    holds: Cell = ("; ", Strong("holds pressure")) if one.holds_pressure else ()
    order = cell(book, one.order) if one.order else ("order not recorded",)
    threads = f"; threads {one.threads}" if one.threads else "; dry or oiled is not recorded"
    gasket: Cell = ("none",)
    if one.gasket:
        gasket = (Link(f"registers/spares#{one.gasket}", one.gasket), ", new one each time")
    torque = _number(book, f"{part.tag}.{key}.torque", "not recorded: by the maker's sheet")
    return ((*bolts, *holds), torque, (*order, threads), gasket)


def _gap(book: Book, address: str, one: Clearance) -> tuple[Cell, ...]:
    return (
        _number(book, f"{address}.fitted", "not recorded"),
        _number(book, f"{address}.worn", "not recorded"),
        cell(book, one.measured) if one.measured else ("not recorded",),
    )


def _number(book: Book, address: str, missing: str) -> Cell:
    """A number with its tolerance; in words that it is missing."""
    value = book.values.get(address)
    if value is None:
        return (missing,)
    spread = f" +/- {value.tolerance}" if value.tolerance else ""
    return (replace(shown(book, address), strong=True), spread)
