"""What changed between two editions, and since the last one: what is different, why, what to do."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.changes.causes import causes_of, input_line, inputs_apart, side_words, verdict_line
from garboard.changes.compare import LIMITS
from garboard.changes.comparison import (
    Affected,
    Comparison,
    Entry,
    Limit,
    Number,
    Sort,
    StepChange,
    Strength,
)
from garboard.changes.kept_comparisons import Compared
from garboard.changes.numbers import LAST_FIGURES
from garboard.records.pages import PageKind
from garboard.views.draft import Draft
from garboard.views.inline import days_in_words, linked
from garboard.views.layout_changes import join_parts, layout_rows
from garboard.views.page import (
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Row,
    Run,
    Strong,
    Table,
)

__all__ = ["edition_diff_drafts"]

ARROW = " \u2192\u00a0"
"""Never parted from what follows it."""
AT_HAND = "this book"
NUMBERED = "number|before|after|change, and what did it"
NOTHING = "Nothing differs."


def edition_diff_drafts(book: Book, compared: Iterable[Compared]) -> Iterator[Draft]:
    """A page for each comparison.

    Args:
        book: The book at hand, for links.
        compared: The last edition against it, and each edition against the one before.
    """
    for one in compared:
        if one.after:
            key, title = f"editions/{one.after}-changes", f"What edition {one.after} changed"
        else:
            key = f"editions/since-{one.before}"
            title = f"What changed since edition {one.before}"
        draft = Draft(book, key, title, str(PageKind.EDITION))
        if one.found is None:
            draft.add(Paragraph((Strong("The two cannot be compared: "), one.refused)))
        else:
            fill(draft, one.found)
        yield draft


def fill(draft: Draft, found: Comparison) -> None:
    """Put everything on the page, numbers first."""
    first, second = side_words(found.before, AT_HAND), side_words(found.after, AT_HAND)
    draft.add(Paragraph((days_in_words(f"From {first} to {second}."),)))
    unread = found.before.unread + found.after.unread
    if unread:
        words = f"{unread} files could not be read as records and were not compared."
        draft.add(Paragraph((Strong(words),)))
    if found.empty:
        draft.add(Paragraph((NOTHING,)))
    else:
        draft.add(Bullets(tuple((line,) for line in counts(found))))
        sections = (limits, numbers, joins, inputs, cautions, steps, layouts, effects, entries)
        for section in sections:
            section(draft, found)
    draft.add(Paragraph((LIMITS,), quiet=True))


def counts(found: Comparison) -> Iterator[str]:
    """How much there is of each, what was weakened first."""
    weakened = sum(one.strength is Strength.WEAKENED for one in found.cautions)
    worse = sum(one.worse > 0 for one in found.limits)
    rows: tuple[tuple[int, str], ...] = (
        (weakened, "warnings or guards weakened"),
        (worse, "limits that stand worse than before"),
        (len(found.numbers), "numbers"),
        (len(found.joins), "systems joined otherwise"),
        (len(found.steps), "steps of procedures"),
        (len(found.layout), "findings of the layouts"),
        (len(found.cards), "cards to see to"),
        (len(found.people), "groups of people to tell"),
        (len(found.tests), "tests that prove how things were"),
        (len(found.entries), "records, parts and lists"),
    )
    return (f"{words}: {count}" for count, words in rows if count)


def limits(draft: Draft, found: Comparison) -> None:
    """Requirements, the most margin lost first."""
    rows = tuple(
        Row(
            (
                _asked(draft.book, one),
                _lines(draft.book, [verdict_line(one)]),
                _lines(draft.book, causes_of(found, one, brief=True)),
            )
        )
        for one in found.limits
        if one.visible
    )
    _table(draft, "Limits, the most margin lost first", "must hold|how it stands|what did it", rows)


def _asked(book: Book, one: Limit) -> Cell:
    """A requirement with what it was before, and who asks it."""
    was = f" (was {one.before})" if one.before and one.after and one.before != one.after else ""
    asks = f", {one.asks}" if one.asks else ""
    text = f": {one.after or one.before}{was}{asks}"
    return (_address(book, one.block), *linked(book, text))


def numbers(draft: Draft, found: Comparison) -> None:
    """Numbers, those with the most margin lost first."""
    told = [one for one in found.numbers if one.note != LAST_FIGURES]
    rows = tuple(_number(draft.book, found, one) for one in told if not one.inner)
    _table(draft, "Numbers", NUMBERED, rows)
    rows = tuple(_number(draft.book, found, one) for one in told if one.inner)
    _table(draft, "Steps within methods", NUMBERED, rows)
    left = len(found.numbers) - len(told)
    if left:
        draft.add(Paragraph((f"{left} more differ {LAST_FIGURES}.",), quiet=True))
    rows = tuple(_number(draft.book, found, one) for one in found.balanced)
    _table(
        draft,
        "The same in the end, though changes alone would have moved it",
        NUMBERED,
        rows,
    )


def _number(book: Book, found: Comparison, one: Number) -> Row:
    sides = [
        f"{text} ({spread})" if spread else text
        for text, spread in ((one.before, one.range_before), (one.after, one.range_after))
    ]
    change = " ".join(
        part for part in (one.change, f"({one.percent})" if one.percent else "") if part
    )
    if one.sort is not Sort.MOVED:
        change = str(one.sort)
    if one.note:
        change = f"{change}; {one.note}" if change else one.note
    why = [change, *causes_of(found, one, brief=True), *one.behind]
    last = _lines(book, (line for line in why if line))
    name: Cell = (
        f"{one.label} (" if one.label else "",
        _address(book, one.address),
        ")" if one.label else "",
    )
    return Row((name, (sides[0],), (sides[1],), last))


def inputs(draft: Draft, found: Comparison) -> None:
    """What somebody wrote otherwise, with the records behind it."""
    told, fresh = inputs_apart(found)
    rows = tuple(
        Row(
            (
                _lines(draft.book, [input_line(one)]),
                (one.not_tried or "tried alone",),
                _lines(draft.book, one.behind) or ("no record names it",),
            )
        )
        for one in told
    )
    _table(
        draft,
        "What was written otherwise, and why",
        "input|tried alone|decisions and findings behind it",
        rows,
    )
    _named(draft, "New, and nothing in the older book uses it", [one.address for one in fresh])


def joins(draft: Draft, found: Comparison) -> None:
    """Systems that are joined otherwise."""
    rows = tuple(
        Row(
            (
                (one.title,),
                _lines(draft.book, one.parted) or ("nothing",),
                _lines(draft.book, one.joined) or ("nothing",),
                _lines(draft.book, join_parts(one)) or ("none",),
            )
        )
        for one in found.joins
    )
    _table(draft, "Joined otherwise", "system|no longer joined|now joined|parts", rows)


def cautions(draft: Draft, found: Comparison) -> None:
    """Warnings and guards, the weakened first."""
    titles = {
        Strength.WEAKENED: "Warnings and guards weakened",
        Strength.CHANGED: "Warnings and guards in other words",
        Strength.STRENGTHENED: "Warnings and guards strengthened",
    }
    for strength, title in titles.items():
        rows = tuple(
            Row(
                (
                    (*linked(draft.book, one.about), f" {one.title}"),
                    (one.what,),
                    linked(draft.book, one.before) or ("nothing",),
                    linked(draft.book, one.after) or ("nothing",),
                )
            )
            for one in found.cautions
            if one.strength is strength
        )
        _table(draft, title, "of|what|before|after", rows)


def steps(draft: Draft, found: Comparison) -> None:
    """Steps of procedures, in order."""
    rows = tuple(
        Row(
            (
                (*linked(draft.book, one.procedure), f" {one.title}"),
                (step_words(one),),
                linked(draft.book, one.before),
                linked(draft.book, one.after),
            )
        )
        for one in found.steps
    )
    _table(draft, "Steps", "procedure|step|before|after", rows)


def layouts(draft: Draft, found: Comparison) -> None:
    """What the search of the layouts finds otherwise."""
    columns = "question|what became of it|before|after|behind it"
    _table(draft, "What the layouts show", columns, layout_rows(draft.book, found))


def step_words(one: StepChange) -> str:
    """Which step, and what became of it."""
    if one.sort is Sort.NEW:
        return f"{one.number_after}, added"
    if one.sort is Sort.GONE:
        return f"{one.number_before}, removed"
    if one.sort is Sort.MOVED:
        return f"{one.number_before} is now {one.number_after}"
    was = f", it was {one.number_before}" if one.number_before != one.number_after else ""
    return f"{one.number_after}, reworded{was}"


def effects(draft: Draft, found: Comparison) -> None:
    """Cards, people, tests, spares, pages."""
    rows: tuple[tuple[str, str, tuple[Affected, ...]], ...] = (
        ("Cards to see to", "card|of, and place|why", found.cards),
        ("People to tell and to train again, by role", "who|of|what changed", found.people),
        ("Tests that prove how things were", "test|of|why", found.tests),
        ("Spares to look at", "part number|name|why", found.spares),
    )
    for title, columns, things in rows:
        lines = tuple(
            Row(
                (
                    linked(draft.book, one.name),
                    linked(draft.book, one.what),
                    _lines(draft.book, one.why),
                )
            )
            for one in things
        )
        _table(draft, title, columns, lines)
    pages = [
        one.name for one in found.pages if "/" in one.name and not one.name.startswith("jobs/")
    ]
    _named(draft, "Pages that are touched, beside those of records and parts", pages)


def entries(draft: Draft, found: Comparison) -> None:
    """Records, parts and lists."""
    rows = tuple(
        Row(
            (
                linked(draft.book, one.name),
                (f"{one.kind}: {one.title}",),
                _lines(draft.book, entry_words(one)),
            )
        )
        for one in found.entries
    )
    _table(draft, "Records, parts and lists", "name|what|what became of it", rows)


def entry_words(one: Entry) -> Iterator[str]:
    """What became of a record or part, in short lines."""
    if one.sort is not Sort.CHANGED:
        yield str(one.sort)
    if one.state_before and one.state_after and one.state_before != one.state_after:
        yield f"{one.state_before} -> {one.state_after}"
    elif one.sort is Sort.NEW and one.state_after:
        yield one.state_after
    if one.replaced_by:
        yield f"replaced by {one.replaced_by}"
    if one.sort is Sort.CHANGED and one.revision_before != one.revision_after:
        yield f"revision {one.revision_before} -> {one.revision_after}"
    if one.fields:
        yield f"changed: {', '.join(one.fields)}"
    yield from (f"signed by {line}" for line in one.signed)


def _table(draft: Draft, title: str, columns: str, rows: tuple[Row, ...]) -> None:
    """A heading and a table, where there is anything."""
    if rows:
        named = tuple(Column(name) for name in columns.split("|"))
        draft.add(Heading(title), Table("", named, rows))


def _named(draft: Draft, title: str, names: list[str]) -> None:
    """A heading and one paragraph of names: a row each would fill sheets and say nothing more."""
    if names:
        runs = _lines(draft.book, names)
        draft.add(Heading(title), Paragraph((f"{len(names)}: ", *runs)))


def _lines(book: Book, lines: Iterable[str]) -> Cell:
    """Several short lines in one cell."""
    runs: list[Run] = []
    for line in lines:
        if runs:
            runs.append("; ")
        runs += linked(book, line.replace(" -> ", ARROW))
    return tuple(runs)


def _address(book: Book, address: str) -> Run:
    known = address in book.values or address in book.network.sheets
    return Link(address, address) if known else address
