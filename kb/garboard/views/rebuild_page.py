"""How to rebuild one assembly: what was written, framed by what the records say of the same parts.

The written text stays as it is. Which parts it is about follows from what it names: tags, the procedures
that make parts safe, the tests and spares of parts, the photographs that show them.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from garboard.book import Book
from garboard.names import is_tag
from garboard.records.base import bare_id
from garboard.records.hazard import Hazard
from garboard.records.holds import parts_of, tests_of
from garboard.records.inspection import PlanLine, Point, Test
from garboard.records.pages import WrittenPage
from garboard.records.procedure import Procedure, Use
from garboard.records.standing import has_left
from garboard.records.stock import stock_of
from garboard.records.vessel import Spare
from garboard.views.assembly import closing_blocks, renewed_always
from garboard.views.draft import Draft
from garboard.views.inline import cell, day, shown
from garboard.views.inspection_plan import proof_words
from garboard.views.messages import message_of, worst_first
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
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
from garboard.views.schematics import shown_on
from garboard.views.text import text_blocks

__all__ = ["rebuild_page"]

LIMITS = ("rated", "test", "set", "trip", "size")
"""The numbers of a part that matter while it is open."""
LICENSED = (
    "Pressure parts, gas and electrics are worked on by licensed people; flag, class and surveyor decide"
    " what may be repaired. Torque: by the maker's sheet; where none is quoted here, none is recorded."
)


def rebuild_page(draft: Draft, page: WrittenPage, layout: str) -> None:
    """Fill the page of an assembly.

    Args:
        draft: The page.
        page: What was written.
        layout: Key of the page on which the sheets of its system stand.
    """
    book = draft.book
    named = _named(book, page)
    tags = _parts(book, page, named)
    draft.calculated = True
    draft.messages = tuple(message_of(book, one) for one in _hazards(book, named, tags))
    draft.add(Heading("Before anything is opened"), *_in_force(book, named, tags))
    draft.add(*_drawn(book, tags, layout), *_parts_needed(book, named, tags))
    draft.add(*closing_blocks(book, (book.components[tag] for tag in tags)))
    draft.add(Paragraph((LICENSED,), quiet=True), Heading("Sequence"))
    draft.add(*text_blocks(draft, page.text, page.where, page.text_line))
    draft.add(*_photos(page), *_proof(book, named, tags))


def _named(book: Book, page: WrittenPage) -> tuple[str, ...]:
    """Everything that the page names, in the order of its text."""
    return tuple(
        dict.fromkeys(bare_id(item.to) for item in book.mentions if item.by == page.where.path)
    )


def _parts(book: Book, page: WrittenPage, named: Iterable[str]) -> tuple[str, ...]:
    """The parts that the page is about."""
    found = [str(medium.tag) for medium in page.media if medium.tag]
    for name in named:
        record = book.records.get(name)
        if is_tag(name):
            found.append(name)
        elif isinstance(record, Procedure):
            found += map(str, record.isolates)
        elif isinstance(record, Test):
            found += (str(item.tag) for item in record.tested)
    for one in _spares_named(book, page.text):
        found += map(str, one.fits)
    own = (tag for tag in found if tag in book.components)
    return tuple(tag for tag in dict.fromkeys(own) if tag[:2] == page.system)


def _spares_named(book: Book, text: str) -> list[Spare]:
    return [one for key, one in book.content.spares.items() if key in text]


def _hazards(book: Book, named: Iterable[str], tags: Iterable[str]) -> list[Hazard]:
    """The hazards that stand at these parts, or in the steps of a procedure that is used."""
    about = {str(tag) for tag in tags}
    steps = {
        bare_id(step.message)
        for name in named
        if isinstance(record := book.records.get(name), Procedure)
        for step in record.steps
        if step.message
    }
    return worst_first(
        [
            one
            for one in book.of_kind(Hazard)
            if not has_left(one) and (str(one.id) in steps or about & set(map(str, one.where_)))
        ]
    )


def _in_force(book: Book, named: Iterable[str], tags: Iterable[str]) -> Iterator[Block]:
    """The written isolations of these parts, and how far each may be relied on."""
    about = set(tags)
    found = [
        one
        for one in book.of_kind(Procedure)
        if one.use is Use.ISOLATION
        and not has_left(one)
        and (str(one.id) in named or about & set(map(str, one.isolates)))
    ]
    if not found:
        yield Paragraph(
            (
                Strong(
                    "No procedure it names is written as an isolation of these parts: ask before you open."
                ),
            )
        )
    else:
        yield Bullets(tuple(_isolation(book, one) for one in found))


def _isolation(book: Book, one: Procedure) -> Cell:
    plates: list[Run] = [run for tag in one.isolates for run in (Plate(str(tag)), " ")]
    return (
        Strong("In force: "),
        Link(str(one.id), f"{one.id} {one.title}"),
        f" ({book.state(one)}) ",
        *plates,
    )


def _drawn(book: Book, tags: Iterable[str], layout: str) -> Iterator[Block]:
    """Each part with its limits and the sheet that shows it; its own page has the rest."""
    rows = []
    for tag in tags:
        part = book.components[tag]
        name: Cell = (Plate(tag), f" {part.name or part.kind}")
        sheets = shown_on(book, tag, layout) or ("not drawn",)
        place = part.place or "not recorded"
        rows.append(Row((name, (place,), _limits(book, tag) or ("none recorded",), sheets), tag))
    columns = tuple(map(Column, ("part", "place", "limits", "drawn on")))
    yield Table("Parts of the assembly", columns, tuple(rows), "none named")


def _limits(book: Book, tag: str) -> Cell:
    runs: list[Run] = []
    for name in LIMITS:
        if f"{tag}.{name}" in book.values:
            runs += [", "] if runs else []
            runs += [f"{name} ", replace(shown(book, f"{tag}.{name}"), strong=True)]
    return tuple(runs)


def _parts_needed(book: Book, named: Iterable[str], tags: Iterable[str]) -> Iterator[Block]:
    about, named = set(tags), set(named)
    renewed = renewed_always(book.components[tag] for tag in about)
    found = [
        one
        for key, one in book.content.spares.items()
        if key in named or key in renewed or about & set(map(str, one.fits))
    ]
    if found:
        yield Heading("Parts to have ready")
        yield Bullets(tuple(_needed(one, renewed=one.key in renewed) for one in found))


def _needed(one: Spare, *, renewed: bool) -> Cell:
    stock = stock_of(one)
    stands: Run = Strong(stock.words) if stock.low else stock.words
    where = f", {one.where_}" if one.where_ else ""
    always: Cell = ("; ", Strong("renewed each time")) if renewed else ()
    link = Link(f"registers/spares#{one.key}", str(one.key))
    return (link, f" {one.name}: ", stands, where, *always)


def _photos(page: WrittenPage) -> Iterator[Block]:
    """The photographs in the order of their days; one that stands in the text already is only dated."""
    media = sorted(page.media, key=lambda one: str(one.on or "9999"))
    if media:
        yield Heading("Photographs, in order")
    for number, medium in enumerate(media, 1):
        when = day(medium.on) if medium.on else "undated"
        words = f"{number}. {medium.view or page.title}, {medium.tag or 'no tag'}, {when}"
        if medium.photo in page.text:
            yield Paragraph((f"{words}; it stands in the text above.",))
        else:
            yield Photo(medium.photo, medium.view or page.title, words)


def _proof(book: Book, named: Iterable[str], tags: Iterable[str]) -> Iterator[Block]:
    """The plan lines and tests that are owed after it."""
    named, about = set(named), set(tags)
    every = list(book.of_kind(Test))
    lines = [
        one
        for one in book.of_kind(PlanLine)
        if not has_left(one) and (str(one.id) in named or about & parts_of(one, every))
    ]
    yield Heading("Tests after")
    yield Bullets(tuple(_owed(book, one, every) for one in lines) or (("no line of a plan",),))
    tests = [one for one in every if str(one.id) in named]
    if tests:
        yield Paragraph(("Tests that the text names:",))
        yield Bullets(tuple(proof_words(one) for one in tests))


def _owed(book: Book, line: PlanLine, every: Iterable[Test]) -> Cell:
    """A line of the plan: its point, what must come out, and how it came out last."""
    point = {Point.HOLD: "hold", Point.WITNESS: "witness"}.get(line.point or Point.HOLD, "")
    said: Cell = (f" ({point})",) if point else ()
    dated = [one for one in tests_of(line, every) if one.on and not has_left(one)]
    last = max(dated, key=lambda one: (str(one.on), str(one.id)), default=None)
    return (
        Link(str(line.id), f"{line.id} {line.title}"),
        *said,
        ": ",
        *(cell(book, line.criterion) or ("no criterion written",)),
        "; last ",
        *(proof_words(last) if last else ("never",)),
    )
