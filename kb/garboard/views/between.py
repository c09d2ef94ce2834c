"""What stands between each sensor or relief valve of a system and its vessel, as the connections have it."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.records.system import System
from garboard.systems.between import Between, Strictly, find_between
from garboard.systems.medium import Medium
from garboard.views.draft import Draft
from garboard.views.line_trace import layout_stamp
from garboard.views.page import Cell, Column, Link, Paragraph, Plate, Row, Table

__all__ = ["between", "has_sensors"]

STRICT = (
    "The strict view: anything that can close counts, a check valve too, and two valves side by side can both"
    " be shut. It passes where one way holds nothing that closes. A locked valve or a three-way valve is never"
    " passed here: a named reviewer decides and signs. The checks of the layout grade finer; what they find"
    " stands with what is open against the system. What was counted on the pipe itself is judged by "
)
METHOD = "sensing_line_cut_off"
COLUMNS = (
    "what must see it",
    "vessel",
    "can close between",
    "each of which alone does",
    "strictly",
)


def has_sensors(book: Book, system: System) -> bool:
    """Whether there is anything to tell: a sensor or a relief valve that a connection names."""
    surveyed = book.surveys.get(system.code)
    if surveyed is None or surveyed.plant.medium is Medium.CURRENT:
        return False
    return next(find_between(surveyed.plant), None) is not None


def between(draft: Draft, system: System) -> None:
    """The table, what its words mean, and what it does not say."""
    plant = draft.book.surveys[system.code].plant
    rows = tuple(_rows(find_between(plant)))
    draft.add(
        Paragraph(
            (STRICT, Link(f"methods/{METHOD}", "the strict question to a sensing line"), ".")
        ),
        Table("What stands between", tuple(Column(title) for title in COLUMNS), rows),
        *layout_stamp(draft.book, system.code),
    )


def _rows(found: Iterable[Between]) -> Iterator[Row]:
    """A row for each pair; the first of a sensor is where a link to it lands."""
    told: set[str] = set()
    for one in found:
        yield Row(_cells(one), "" if one.sensor in told else one.sensor)
        told.add(one.sensor)


def _cells(one: Between) -> tuple[Cell, ...]:
    apart = one.strictly is Strictly.APART
    return (
        (Plate(one.sensor),),
        (Plate(one.vessel),),
        _plates(one.parts, "nothing is joined" if apart else "nothing"),
        _plates(one.alone, "none"),
        (str(one.strictly),),
    )


def _plates(tags: tuple[str, ...], otherwise: str) -> Cell:
    cells: list[Plate | str] = []
    for tag in tags:
        cells += [", ", Plate(tag)] if cells else [Plate(tag)]
    return tuple(cells) or (otherwise,)
