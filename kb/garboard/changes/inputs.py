"""The inputs that differ between two books, and the old calculations with one of them exchanged.

An input is a number of a part or of the vessel, where such a number is drawn from, or one line of a
calculation. A unit in another spelling, a comment, a label or the layout of a line is no difference.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace

from garboard.book import Calculations
from garboard.calc.draft import Draft, Entry, read_draft
from garboard.calc.fault import Line, Span
from garboard.calc.method import Method, terms_of
from garboard.calc.sheet import Fence
from garboard.calc.syntax import Assignment, Number, Tolerance
from garboard.calc.units import Unit
from garboard.calc.value import Given
from garboard.changes.sequences import pair_up

__all__ = ["NEW_LINE", "Exchange", "find_exchanges"]

NEW_LINE = "nothing in the older book uses it"
GONE_LINE = "what used it in the older book cannot be worked out without it"


@dataclass(frozen=True, slots=True)
class Exchange:
    """One input that differs."""

    address: str
    """Of the value; of a requirement the block."""
    before: str
    """As written; empty where it is new."""
    after: str
    """As written; empty where it is gone."""
    with_it: Calculations | None = None
    """The old calculations with this alone exchanged; None where that makes no sense."""
    not_tried: str = ""
    """Why not."""
    requires: bool = False
    """It is a requirement."""


def find_exchanges(
    old: Calculations, new: Calculations, methods: Mapping[str, Method]
) -> tuple[Exchange, ...]:
    """Every input that differs.

    Args:
        old: What the older book works out.
        new: What the newer one does.
        methods: The bundled methods by name.
    """
    names = tuple((name, terms_of(method)) for name, method in methods.items())
    return (*_outside(old, new), *_in_fences(old, new, names))


def _outside(old: Calculations, new: Calculations) -> Iterator[Exchange]:
    """Numbers that stand outside the fences."""
    for address in {**old.givens, **old.aliases, **new.givens, **new.aliases}:
        one, other = _written(old, address), _written(new, address)
        if _facts(one) == _facts(other):
            continue
        before, after = _shown(one), _shown(other)
        if one is None or other is None:
            why = NEW_LINE if one is None else GONE_LINE
            yield Exchange(address, before, after, not_tried=why)
            continue
        givens = {key: value for key, value in old.givens.items() if key != address}
        aliases = {key: value for key, value in old.aliases.items() if key != address}
        if isinstance(other, Given):
            givens[address] = other
        else:
            aliases[address] = other
        yield Exchange(address, before, after, replace(old, givens=givens, aliases=aliases))


def _written(book: Calculations, address: str) -> Given | str | None:
    return book.givens.get(address) or book.aliases.get(address)


def _facts(written: Given | str | None) -> object:
    """What an input is, whatever unit it is written in."""
    if isinstance(written, Given):
        kind = written.type
        return written.si, written.low, written.high, kind.dimension, kind.kind
    return written


def _shown(written: Given | str | None) -> str:
    if isinstance(written, Given):
        return f"{written.shown} +/- {written.tolerance}" if written.tolerance else written.shown
    return f"drawn from {written}" if written else ""


def _in_fences(
    old: Calculations, new: Calculations, names: tuple[tuple[str, int], ...]
) -> Iterator[Exchange]:
    """Lines of calculations, those of a calculation that came or went included."""
    here, there = _by_name(old.fences), _by_name(new.fences)
    for block in {**here, **there}:
        one, other = here.get(block), there.get(block)
        if one and other and one.lines == other.lines:
            continue
        drafts = [read_draft(fence, names) if fence else None for fence in (one, other)]
        yield from _in_block(old, block, drafts[0], drafts[1])


def _by_name(fences: tuple[Fence, ...]) -> dict[str, Fence]:
    found: dict[str, Fence] = {}
    for fence in sorted(fences, key=lambda each: each.where):
        found.setdefault(fence.name, fence)
    return found


@dataclass(frozen=True, slots=True)
class _Row:
    """One line of a fence."""

    at: int
    """Which line of the fence, from 0."""
    text: str
    """With its comment."""
    written: str
    facts: object


def _in_block(
    old: Calculations, block: str, before: Draft | None, after: Draft | None
) -> Iterator[Exchange]:
    rows = _setting(before), _setting(after)
    for name in {**rows[0], **rows[1]}:
        one, other = rows[0].get(name), rows[1].get(name)
        if one is None or other is None:
            if (one or other) is not None:
                why = NEW_LINE if one is None else GONE_LINE
                texts = _right(one), _right(other)
                yield Exchange(f"{block}.{name}", *texts, not_tried=why)
        elif one.facts != other.facts:
            changed = _exchanged(old, block, one, other)
            yield Exchange(f"{block}.{name}", _right(one), _right(other), changed)
    asked = _requiring(before), _requiring(after)
    for pair in pair_up(*([row.written for row in row_of] for row_of in asked)):
        if pair.before is None or pair.after is None:
            continue
        one, other = asked[0][pair.before], asked[1][pair.after]
        if one.facts != other.facts:
            changed = _exchanged(old, block, one, other)
            yield Exchange(block, one.written, other.written, changed, requires=True)


def _right(row: _Row | None) -> str:
    """What stands behind the name that a line sets."""
    return row.written.partition("=")[2].strip() if row else ""


def _exchanged(old: Calculations, block: str, one: _Row, other: _Row) -> Calculations:
    fence = _by_name(old.fences)[block]
    lines = (*fence.lines[: one.at], other.text, *fence.lines[one.at + 1 :])
    changed = replace(fence, lines=lines)
    return replace(old, fences=tuple(changed if each is fence else each for each in old.fences))


def _setting(draft: Draft | None) -> dict[str, _Row]:
    """The lines that set something, by the name they set; of two with one name the first."""
    found: dict[str, _Row] = {}
    for line in draft.lines if draft else ():
        if isinstance(line, Entry):
            if isinstance(line.statement, Assignment):
                found.setdefault(line.statement.name, _row(draft, line))
        elif line.name:
            at = line.where.line - draft.fence.where.line if draft else 0
            row = _Row(at, draft.fence.lines[at] if draft else "", line.written, line.written)
            found.setdefault(line.name, row)
    return found


def _requiring(draft: Draft | None) -> list[_Row]:
    found = draft.entries if draft else ()
    return [_row(draft, line) for line in found if not isinstance(line.statement, Assignment)]


def _row(draft: Draft | None, entry: Entry) -> _Row:
    line = entry.statement.line
    first = draft.fence.where.line if draft else line.where.line
    return _Row(line.where.line - first, line.text, entry.written, facts_of(entry.statement))


def facts_of(part: object) -> object:
    """What a line works out, whatever unit, spacing and place it is written in."""
    match part:
        case Span() | Line() | Unit() | None:
            return None
        case Number():
            unit = part.unit
            return "number", unit.exact(part.number), unit.type.dimension, unit.type.kind
        case Tolerance():
            return "tolerance", part.low, part.high
        case tuple():
            return tuple(facts_of(each) for each in part)
        case _ if is_dataclass(part) and not isinstance(part, type):
            own = (
                facts_of(getattr(part, item.name)) for item in fields(part) if item.name != "terms"
            )
            return type(part).__name__, *own
        case _:
            return part
