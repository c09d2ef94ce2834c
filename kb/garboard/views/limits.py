"""Normal values: a ladder of set values for each pressure zone, and every limit with its margin."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Requirement, Verdict
from garboard.records.system import System
from garboard.views.draft import Draft
from garboard.views.drift_plot import drift_plot
from garboard.views.inline import shown
from garboard.views.measured import measured_table, quantity_ladder, zone_ladder
from garboard.views.number_index import SAID
from garboard.views.page import (
    Block,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Strong,
    Table,
)
from garboard.views.ranges import percent_down
from garboard.views.zones import zone_marks

__all__ = ["limits_table", "normal_values"]


def normal_values(draft: Draft, system: System) -> None:
    """Ladders, then limits, then what was measured, then every number."""
    book = draft.book
    ladders = list(_ladders(book, system))
    draft.add(*ladders)
    if not ladders:
        draft.add(Paragraph(("No limits are recorded for this system yet.",)))
    draft.add(Heading("What must hold"))
    draft.add(
        limits_table(
            draft,
            [one for one in book.network.requirements if _system(book, one.block) == system.code],
        )
    )
    draft.add(*_measured(draft, system))
    draft.add(_numbers(draft, system))


def _ladders(book: Book, system: System) -> Iterator[Block]:
    for marks in zone_marks(book, system):
        if len({mark.word for mark in marks}) > 1:
            yield zone_ladder(book, marks)


def _measured(draft: Draft, system: System) -> Iterator[Block]:
    """What was measured in a system: of a calculation its ladder too, of a part it is on its page."""
    book = draft.book
    found = {
        address: readings
        for address, readings in book.measured.items()
        if _owner_system(book, address) == system.code
    }
    if not found:
        return
    yield Heading("As measured")
    yield measured_table(book, [one for readings in found.values() for one in readings])
    for address in found:
        if address.partition(".")[0] not in book.components:
            yield from quantity_ladder(book, address)
        yield from drift_plot(book, address)


def _owner_system(book: Book, address: str) -> str:
    owner = address.partition(".")[0]
    part = book.components.get(owner)
    if part:
        return part.system
    return _system(book, owner) if owner in book.network.sheets else ""


def _system(book: Book, block: str) -> str:
    owner = book.network.sheets[block].owner
    record = book.records.get(owner)
    if record:
        return record.system
    return next((page.system for page in book.content.pages if page.where.path == owner), "")


def limits_table(draft: Draft, requirements: list[Requirement]) -> Table:
    """Each requirement with both sides and its margin at the worst corner."""
    rows = []
    for one in requirements:
        numbers = draft.cite(*one.sources)
        refs = "".join(f" [{number}]" for number in numbers)
        draft.calculated = True
        share = one.margin_percent
        percent = f" ({percent_down(share)})" if share is not None else ""
        rows.append(
            Row(
                (
                    (Link(f"{one.block}", one.text), f" {one.why}{refs}"),
                    (one.left,),
                    (Strong(one.right),),
                    (f"{one.margin}{percent}",),
                    ("holds",) if one.verdict is Verdict.HOLDS else (Strong(str(one.verdict)),),
                )
            )
        )
    titles = ("what must hold", "is", "limit", "margin at worst", "stands")
    numbers_of = ("is", "limit", "margin at worst")
    columns = tuple(
        Column(title, number=title in numbers_of, strong=title == "limit") for title in titles
    )
    return Table(
        "Requirements, judged at the worst corner", columns, tuple(rows), "none written down yet"
    )


def _numbers(draft: Draft, system: System) -> Table:
    book = draft.book
    rows = []
    for tag, part in book.components.items():
        if part.system != system.code:
            continue
        for name in part.number_names:
            value = book.values.get(f"{tag}.{name}")
            if value is None:
                continue
            refs = (
                "".join(f" [{number}]" for number in draft.cite(*value.sources)) or "none recorded"
            )
            spread: Cell = (f"+/- {value.tolerance}",) if value.tolerance else ("none stated",)
            rows.append(
                Row(
                    (
                        (Plate(tag),),
                        (part.name or part.kind,),
                        (SAID.get(name, name.replace("_", " ").replace(".", ", ")),),
                        (shown(book, value.address),),
                        spread,
                        (refs.strip(),),
                    )
                )
            )
    titles = ("tag", "name", "what", "value", "tolerance", "source")
    columns = tuple(
        Column(title, number=title == "value", strong=title == "value") for title in titles
    )
    return Table("Every recorded number", columns, tuple(rows))
