"""Normal values: a ladder of set values for each pressure zone, and every limit with its margin."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.kinds import Type
from garboard.calc.value import Requirement, Value, Verdict
from garboard.records.alarm import Alarm, Direction
from garboard.records.component import QUANTITIES, Component
from garboard.records.system import End, Joins, Run, System
from garboard.views.draft import Draft
from garboard.views.inline import shown
from garboard.views.page import (
    Cell,
    Column,
    Heading,
    Ladder,
    Link,
    Paragraph,
    Plate,
    Row,
    Rung,
    Strong,
    Table,
)

__all__ = ["limits_table", "normal_values"]

RUNGS = {
    "rated": "rating",
    "set": "setting",
    "trip": "trip",
    "alarm_high": "high alarm",
    "cuts_out": "stops at",
    "high": "high",
    "normal": "normal",
    "cuts_in": "starts at",
    "low": "low",
    "alarm_low": "low alarm",
}
"""Properties that are marks on a ladder, and their words."""

RELIEF = ("relief valve", "bursting disc")
HOLDS = ("receiver", "tank", "separator", "filter", "cooler", "battery", "bus")
"""Parts whose rating is a mark of its own; of all others the weakest in the zone is one."""
MOST_PLATES = 4
KEPT_APART = ("regulator",)
"""Parts with another pressure on each side."""


@dataclass(frozen=True, slots=True)
class Mark:
    """One value on a ladder."""

    value: Value
    word: str
    part: Component


def normal_values(draft: Draft, system: System) -> None:
    """Ladders, then limits."""
    book = draft.book
    zones = _zones(book, system)
    shown_any = False
    for marks in _ladders(book, system, zones):
        draft.add(_ladder(marks))
        shown_any = True
    if not shown_any:
        draft.add(Paragraph(("No limits are recorded for this system yet.",)))
    draft.add(Heading("What must hold"))
    draft.add(
        limits_table(
            draft, [one for one in book.network.requirements if _system(book, one) == system.code]
        )
    )
    draft.add(_numbers(draft, system))


def _system(book: Book, requirement: Requirement) -> str:
    owner = book.network.sheets[requirement.block].owner
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
        percent = f" ({one.margin_percent:.0f} %)" if one.margin_percent is not None else ""
        rows.append(
            Row(
                (
                    (Link(f"{one.block}", one.text),),
                    (one.left,),
                    (Strong(one.right),),
                    (f"{one.margin}{percent}",),
                    ("holds",) if one.verdict is Verdict.HOLDS else (Strong(str(one.verdict)),),
                    (f"{one.why}{refs}",),
                )
            )
        )
    titles = ("what must hold", "is", "limit", "margin at worst", "stands", "because")
    numbers_of = ("is", "limit", "margin at worst")
    columns = tuple(
        Column(title, number=title in numbers_of, strong=title == "limit") for title in titles
    )
    return Table(
        "Requirements, judged at the worst corner", columns, tuple(rows), "none written down yet"
    )


def _zones(book: Book, system: System) -> dict[str, str]:
    """Parts that see the same pressure when every valve is open; a regulator parts two zones."""
    parent: dict[str, str] = {}

    def root(name: str) -> str:
        while parent.setdefault(name, name) != name:
            name = parent[name]
        return name

    for run in system.runs:
        for left, right in zip(run.ends, run.ends[1:], strict=False):
            parent[root(_side(book, run, left, "out"))] = root(_side(book, run, right, "in"))
    return {name.removesuffix(" out"): root(name) for name in list(parent)}


def _side(book: Book, run: Run, end: End, side: str) -> str:
    """The name of a zone's end: open air belongs to no other run, a regulator has two sides."""
    part = book.components.get(end.name)
    if part and part.kind in KEPT_APART:
        return f"{end.name} {side}"
    return f"{end.name} {run.written}" if end.joins is Joins.OUTSIDE else end.name


def _ladders(book: Book, system: System, zones: dict[str, str]) -> Iterator[list[Mark]]:
    groups: dict[tuple[str, Type], list[Mark]] = defaultdict(list)
    for tag, part in book.components.items():
        for name in RUNGS if part.system == system.code else ():
            value = book.values.get(f"{tag}.{name}")
            if value and value.si is not None:
                mark = Mark(value, _word(book, part, name), part)
                groups[zones.get(tag, ""), value.type].append(mark)
    for marks in sorted(groups.values(), key=len, reverse=True):
        kept = _telling(marks)
        if len({mark.word for mark in kept}) > 1:
            yield sorted(kept, key=lambda mark: -(mark.value.si or 0.0))


def _telling(marks: list[Mark]) -> list[Mark]:
    """Every mark but the ratings of fittings, of which only the weakest says anything."""
    fittings = [mark for mark in marks if mark.word == "rating" and mark.part.kind not in HOLDS]
    least = min((mark.value.si or 0.0 for mark in fittings), default=0.0)
    strong = [mark for mark in fittings if (mark.value.si or 0.0) > least]
    return [mark for mark in marks if mark not in strong]


def _word(book: Book, part: Component, name: str) -> str:
    if name != "set":
        return RUNGS[name]
    if part.kind in RELIEF:
        return "relief"
    for alarm in book.of_kind(Alarm):
        if alarm.set == f"{part.tag}.set":
            return "high alarm" if alarm.direction is Direction.HIGH else "low alarm"
    return "setting"


def _ladder(marks: list[Mark]) -> Ladder:
    heights = sorted({mark.value.si or 0.0 for mark in marks})
    span = max(len(heights) - 1, 1)
    merged: dict[tuple[str, str], list[Mark]] = {}
    for mark in marks:
        merged.setdefault((mark.word, mark.value.text), []).append(mark)
    rungs = []
    for (word, text), alike in merged.items():
        height = heights.index(alike[0].value.si or 0.0) / span
        about = _plates(alike)
        rungs.append(Rung(word, (Strong(text),), about, height, strong=word != "normal"))
    unit = marks[0].value.unit.text
    what = "pressures above the atmosphere" if unit.endswith("(g)") else f"values in {unit}"
    return Ladder(f"From the top: {what}", tuple(rungs))


def _plates(marks: list[Mark]) -> Cell:
    runs: list[Plate | str] = []
    for mark in marks[:MOST_PLATES]:
        runs += [Plate(mark.part.tag), " "]
    more = len(marks) - MOST_PLATES
    return (*runs, f"and {more} more") if more > 0 else tuple(runs)


def _numbers(draft: Draft, system: System) -> Table:
    book = draft.book
    rows = []
    for tag, part in book.components.items():
        if part.system != system.code:
            continue
        for name in (*QUANTITIES, "range.from", "range.to"):
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
                        (name.replace("_", " "),),
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
