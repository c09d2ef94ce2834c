"""The page of one tag: what it is, where, its numbers, what it is joined with, what names it."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.calc.value import Value
from garboard.records.component import QUANTITIES, Component
from garboard.records.hazard import Hazard
from garboard.records.holds import parts_of
from garboard.records.inspection import PlanLine, Result, Test
from garboard.records.safety_device import is_safety_device
from garboard.records.signal_word import signal_word
from garboard.records.standing import has_left
from garboard.records.work import MaintenanceTask
from garboard.views.draft import Draft
from garboard.views.drift_plot import drift_plot
from garboard.views.fields import line_of
from garboard.views.inline import cell, day, shown
from garboard.views.inspection_plan import plan_table, proof_words
from garboard.views.layout import run_sentence
from garboard.views.limits import limits_table
from garboard.views.measured import quantity_ladder, quantity_tables
from garboard.views.messages import message_of, worst_first
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Facts,
    Heading,
    Link,
    Paragraph,
    Photo,
    Plate,
    Row,
    Run,
    Strong,
    Table,
)
from garboard.views.positions import board_word
from garboard.views.schematics import shown_on
from garboard.views.system_pages import system_key
from garboard.views.tables import record_table
from garboard.views.vouched import approved_by, edition_says, edition_title
from garboard.views.zones import RUNGS

__all__ = ["component_draft"]

FACTS = (
    "kind",
    "type",
    "place",
    "mount",
    "usual",
    "fails",
    "locked",
    "secured",
    "round",
    "key",
    "part_no",
)
DATES = ("fitted", "expires")
STANDS = ("usual", "locked")
IN_FULL = 2
"""So many safety messages stand on the page of a part; the rest by name."""


def component_draft(book: Book, part: Component, isolation: Iterable[Block] = ()) -> Draft:
    """Start the page of a component.

    Args:
        book: The book.
        part: The component.
        isolation: What is said of how it is made safe to work on.
    """
    draft = Draft(book, part.tag, part.name or part.kind, "part", system=part.system)
    draft.source_path = part.where.path
    found = [
        one for one in book.of_kind(Hazard) if str(part.tag) in {str(name) for name in one.where_}
    ]
    worst = worst_first(found)
    draft.messages = tuple(message_of(book, one) for one in worst[:IN_FULL])
    draft.add(*_also_here(worst[IN_FULL:]))
    tests = [one for one in book.of_kind(Test) if any(item.tag == part.tag for item in one.tested)]
    draft.add(Facts((*_asked_most(book, part, tests), *_facts(book, part))), *isolation)
    draft.add(_numbers(draft, part), *_measured(draft, part))
    draft.add(*_joined(book, part), *_proof(book, part, tests))
    if part.photo:
        draft.add(Photo(part.photo, f"{part.name or part.kind}, {part.tag}"))
    return draft


def _also_here(others: list[Hazard]) -> Iterator[Paragraph]:
    """The hazards whose messages do not stand here in full, so that what was looked for is not far down."""
    runs: list[Run] = []
    for one in others:
        runs += [Strong(signal_word(one)), " ", Link(str(one.id), f"{one.id} {one.title}"), ". "]
    if runs:
        yield Paragraph(("Also here: ", *runs))


def _asked_most(book: Book, part: Component, tests: list[Test]) -> Iterator[tuple[str, Cell]]:
    """What a part is looked up for: when it was last proved, and where a spare lies."""
    last = _newest(tests)
    if last:
        yield "last test", proof_words(last)
    for one in book.content.spares.values():
        if part.tag in one.fits:
            lies = one.where_ or "place not recorded"
            count = one.aboard if one.aboard is not None else "number not recorded"
            yield (
                "spare",
                (
                    Link(f"registers/spares#{one.key}", one.key),
                    f" {one.name}: {count} aboard, {lies}",
                ),
            )


def _facts(book: Book, part: Component) -> Iterator[tuple[str, Cell]]:
    for name in FACTS:
        stands = name in STANDS and getattr(part, name)
        line = (board_word(part, stands),) if stands else line_of(book, part, name)
        if line:
            yield name.replace("_", " "), line
    yield from _drawn_on(book, part)
    for name in DATES:
        when = getattr(part, name)
        if when:
            yield name, (day(when),)


def _drawn_on(book: Book, part: Component) -> Iterator[tuple[str, Cell]]:
    """The sheets of its system that show it."""
    system = book.systems.get(part.system)
    drawn = shown_on(book, str(part.tag), system_key(system, "layout")) if system else ()
    if drawn:
        yield "drawn on", drawn
    if part.positions:
        words = "; ".join(
            f"{name}: joins {', '.join(pairs)}" for name, pairs in part.positions.items()
        )
        yield "positions", (words,)
    for name, tags in (
        ("protects", part.protects),
        ("watches", part.watches),
        ("stops", part.stops),
    ):
        if tags:
            yield name, tuple(run for tag in tags for run in (Plate(tag), " "))
    if part.item:
        yield "fitted there", line_of(book, part, "item")
    if part.note:
        yield "note", cell(book, part.note)


def _numbers(draft: Draft, part: Component) -> Table:
    book, vouched = draft.book, is_safety_device(part)
    rows = []
    for name in part.number_names:
        value = book.values.get(f"{part.tag}.{name}")
        if value:
            cells = _number_row(draft, value, name)
            if vouched:
                cells += (approved_by(book, value.address), edition_says(book, value.address))
            rows.append(Row(cells, value.address))
    stood_for = ("approved", edition_title(book)) if vouched else ()
    titles = ("what", "value", "tolerance", "comes from", "moves", *stood_for)
    columns = tuple(
        Column(title, number=title == "value", strong=title == "value") for title in titles
    )
    return Table("Numbers", columns, tuple(rows), "no numbers recorded", across=vouched)


def _number_row(draft: Draft, value: Value, name: str) -> tuple[Cell, ...]:
    book = draft.book
    drawn: Cell = tuple(run for one in value.uses for run in (shown(book, one), f" {one} "))
    refs = "".join(f"[{number}]" for number in draft.cite(*value.sources))
    feeds = book.network.feeds.get(value.address, ())
    moved: Cell = tuple(run for one in feeds for run in (shown(book, one), f" {one} "))
    return (
        (name.replace("_", " ").replace(".", ", "),),
        (shown(book, value.address),),
        (f"+/- {value.tolerance}",) if value.tolerance else ("none stated",),
        drawn or ((refs,) if refs else ("no source recorded",)),
        moved or ("nothing",),
    )


def _measured(draft: Draft, part: Component) -> Iterator[Block]:
    """The scale of each quantity that has limits or readings, what must hold, the readings."""
    book = draft.book
    addresses = [address for name in QUANTITIES if (address := f"{part.tag}.{name}") in book.values]
    for address in addresses:
        if address.rpartition(".")[2] in RUNGS or book.measured.get(book.source_of(address)):
            yield from quantity_ladder(book, address)
    asked = [one for one in book.network.requirements if set(addresses) & set(one.uses)]
    if asked:
        yield limits_table(draft, asked)
    readings = [one for at in addresses for one in book.measured.get(book.source_of(at), ())]
    yield from quantity_tables(book, readings)
    for address in addresses:
        yield from drift_plot(book, address)


def _joined(book: Book, part: Component) -> Iterator[Block]:
    system = book.systems.get(part.system)
    runs = (
        [run for run in system.runs if any(end.name == part.tag for end in run.ends)]
        if system
        else []
    )
    if runs:
        yield Heading("Joined with")
        yield Bullets(tuple(run_sentence(run) for run in runs))


def _proof(book: Book, part: Component, tests: list[Test]) -> Iterator[Block]:
    lines = [
        one
        for one in book.of_kind(PlanLine)
        if part.tag in parts_of(one, tests) and not has_left(one)
    ]
    if tests or lines:
        yield Heading("Proof")
    unmended = _failed_last(tests)
    if unmended:
        yield Paragraph(
            (
                Strong("Its last test failed, and none was passed since: "),
                *proof_words(unmended),
            )
        )
    if lines:
        yield plan_table(book, lines, "Inspection and test plan: the lines about it")
    if tests:
        yield record_table(book, "Tests of it, failures kept", tests, "what", "on", "result")
    tasks = [one for one in book.of_kind(MaintenanceTask) if one.tag == part.tag]
    if tasks:
        yield record_table(book, "Maintenance", tasks, "task", "every")


def _failed_last(tests: list[Test]) -> Test | None:
    """The newest test, where it failed; None where it was passed or none has a day."""
    last = _newest(tests)
    return last if last and last.result is Result.FAIL else None


def _newest(tests: list[Test]) -> Test | None:
    dated = [one for one in tests if one.on and one.result and not has_left(one)]
    return max(dated, key=lambda one: (str(one.on), str(one.id)), default=None)
