"""The command that says what differs between two editions, or since one: numbers first, then what to do."""

import argparse
import json
from collections.abc import Iterable, Iterator

import msgspec

from garboard.book import Book
from garboard.changes.causes import causes_of, input_line, inputs_apart, side_words, verdict_line
from garboard.changes.compare import LIMITS
from garboard.changes.comparison import Affected, Comparison, Number, Sort, Strength
from garboard.changes.effects import REWORDED, TOUCHED
from garboard.changes.kept_comparisons import KeptComparisons
from garboard.changes.numbers import LAST_FIGURES
from garboard.cli.arguments import add_folder, content_folder
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.records.edition import Edition
from garboard.views.edition_diff import counts, entry_words, step_words
from garboard.views.layout_changes import join_parts, layout_words

__all__ = ["add_diff", "comparison_lines", "diff"]

AT_HAND = "the working copy"


def add_diff(one: argparse.ArgumentParser) -> None:
    """Declare the arguments of the verb."""
    one.add_argument("older", metavar="A", help="number of the older edition")
    one.add_argument(
        "newer", metavar="B", nargs="?", default="", help="of the newer; left out: the working copy"
    )
    one.add_argument("--format", choices=("text", "json"), default="text", help="how it is printed")
    add_folder(one)


def diff(args: argparse.Namespace) -> int:
    """Print what differs; always 0, as a difference is no fault."""
    folder = content_folder(args.folder)
    book = read_book(folder)
    older = _numbered(book, args.older)
    newer = _numbered(book, args.newer) if args.newer else None
    compared = KeptComparisons(folder).of(book, older, newer)
    if compared.found is None:
        raise GarboardError(compared.refused)
    if args.format == "json":
        print(json.dumps(msgspec.to_builtins(compared.found), indent=1, ensure_ascii=False))
    else:
        for line in comparison_lines(compared.found):
            print(line)
    return 0


def _numbered(book: Book, written: str) -> Edition:
    """The edition of a number as typed.

    Raises:
        GarboardError: There is none; the nearest one is named.
    """
    issued = book.content.editions.issued
    if not issued:
        raise GarboardError("no edition was issued yet, so there is nothing to compare with")
    known = {str(one.number): one for one in issued}
    if written in known:
        return known[written]
    row = f"issued are {', '.join(known)}" if len(known) > 1 else f"issued is {', '.join(known)}"
    if not written.isdecimal():
        raise GarboardError(f"there is no edition {written!r}; write its number: {row}")
    near = min(known, key=lambda one: abs(int(one) - int(written[:12])))
    raise GarboardError(f"there is no edition {written}; did you mean {near}? {row}")


def comparison_lines(found: Comparison) -> Iterator[str]:
    """Everything that differs, in lines short enough for a phone and a mail.

    Args:
        found: What differs.
    """
    yield f"From {side_words(found.before, AT_HAND)} to {side_words(found.after, AT_HAND)}."
    unread = found.before.unread + found.after.unread
    if unread:
        yield f"{unread} files could not be read as records and were not compared."
    if found.empty:
        yield "Nothing differs."
    else:
        yield from (f"- {line}" for line in counts(found))
        yield from _limits(found)
        yield from _numbers(found)
        yield from _joins(found)
        yield from _inputs(found)
        yield from _cautions(found)
        yield from _steps(found)
        yield from _layouts(found)
        yield from _effects(found)
        yield from _entries(found)
    yield ""
    yield LIMITS


def _section(title: str, lines: Iterable[str]) -> Iterator[str]:
    """A title and its lines, where there are any."""
    told = list(lines)
    if told:
        yield from ("", title.upper(), *told)


def _limits(found: Comparison) -> Iterator[str]:
    lines: list[str] = []
    for one in (limit for limit in found.limits if limit.visible):
        lines.append(f"- {one.key}")
        if one.before and one.after and one.before != one.after:
            lines.append(f"  was asked as {one.before}")
        lines.append(f"  {verdict_line(one)}")
        lines += (f"  {line}" for line in causes_of(found, one))
        if one.asks:
            lines.append(f"  asked by: {one.asks}")
    return _section("Limits, the most margin lost first", lines)


def _numbers(found: Comparison) -> Iterator[str]:
    told = [one for one in found.numbers if one.note != LAST_FIGURES]
    lines = [line for one in told if not one.inner for line in _number(found, one)]
    left = len(found.numbers) - len(told)
    if left:
        lines.append(f"- {left} more differ {LAST_FIGURES}")
    yield from _section("Numbers, the most margin lost first", lines)
    inner = (f"- {one.address}: {_sides(one)}" for one in told if one.inner)
    yield from _section("Steps within methods", inner)
    balanced = [line for one in found.balanced for line in _number(found, one)]
    yield from _section("The same in the end, though changes alone would have moved it", balanced)


def _number(found: Comparison, one: Number) -> Iterator[str]:
    yield f"- {one.label} ({one.address})" if one.label else f"- {one.address}"
    yield f"  {_sides(one)}"
    if one.sort in (Sort.NEW, Sort.GONE):
        yield from (f"  {each}" for each in (one.range_before, one.range_after) if each)
    elif one.range_before != one.range_after:
        yield f"  {one.range_before or 'sure'} -> {one.range_after or 'sure'}"
    if one.note or one.sort is Sort.REWRITTEN:
        yield f"  {one.note or one.sort}"
    yield from (f"  {line}" for line in causes_of(found, one))
    if one.behind:
        yield f"  behind it: {', '.join(one.behind)}"


def _sides(one: Number) -> str:
    """A number before and after, with the change: `9 -> 7, -2 (-22 %)`."""
    if one.sort in (Sort.NEW, Sort.GONE):
        return f"{one.sort}: {one.before or one.after}"
    percent = f" ({one.percent})" if one.percent else ""
    return f"{one.before} -> {one.after}{f', {one.change}{percent}' if one.change else ''}"


def _inputs(found: Comparison) -> Iterator[str]:
    lines: list[str] = []
    told, fresh = inputs_apart(found)
    for one in told:
        lines.append(f"- {input_line(one)}")
        if one.not_tried:
            lines.append(f"  not tried alone: {one.not_tried}")
        lines.append(f"  behind it: {', '.join(one.behind) or 'no record names it'}")
    if fresh:
        names = ", ".join(one.address for one in fresh)
        lines.append(f"- {len(fresh)} new that nothing in the older book uses: {names}")
    return _section("What was written otherwise", lines)


def _joins(found: Comparison) -> Iterator[str]:
    lines: list[str] = []
    for one in found.joins:
        lines.append(f"- {one.title}")
        lines += (f"  no longer: {words}" for words in one.parted)
        lines += (f"  now: {words}" for words in one.joined)
        lines += (f"  {words}" for words in join_parts(one))
    return _section("Joined otherwise", lines)


def _cautions(found: Comparison) -> Iterator[str]:
    titles = {
        Strength.WEAKENED: "Warnings and guards weakened",
        Strength.CHANGED: "Warnings and guards in other words",
        Strength.STRENGTHENED: "Warnings and guards strengthened",
    }
    for strength, title in titles.items():
        lines: list[str] = []
        for one in found.cautions:
            if one.strength is strength:
                lines.append(f"- {one.about} {one.title}: {one.what}")
                lines.append(f"  before: {one.before or 'nothing'}")
                lines.append(f"  after: {one.after or 'nothing'}")
        yield from _section(title, lines)


def _steps(found: Comparison) -> Iterator[str]:
    lines: list[str] = []
    for one in found.steps:
        lines.append(f"- {one.procedure} {one.title}: step {step_words(one)}")
        lines += [f"  before: {one.before}"] if one.before else []
        lines += [f"  after: {one.after}"] if one.after else []
    return _section("Steps", lines)


def _layouts(found: Comparison) -> Iterator[str]:
    lines: list[str] = []
    for one in found.layout:
        lines.append(f"- {one.code} of {one.about}: {layout_words(one)}")
        lines += [f"  before: {one.before}"] if one.before else []
        lines += [f"  after: {one.after}"] if one.after else []
        lines.append(f"  behind it: {', '.join(one.behind) or 'no record names it'}")
    return _section("What the layouts show", lines)


def _effects(found: Comparison) -> Iterator[str]:
    rows: tuple[tuple[str, tuple[Affected, ...]], ...] = (
        ("Cards to see to", found.cards),
        ("People to tell and to train again, by role", found.people),
        ("Tests that prove how things were", found.tests),
        ("Spares to look at", found.spares),
    )
    for title, things in rows:
        lines: list[str] = []
        for one in things:
            lines.append(f"- {one.name}: {one.what}")
            lines += (f"  {why}" for why in one.why if why not in (TOUCHED, REWORDED))
        yield from _section(title, lines)
    names = ", ".join(one.name for one in found.pages)
    yield from _section(
        "Pages that are touched", [f"- {len(found.pages)}: {names}"] if names else []
    )


def _entries(found: Comparison) -> Iterator[str]:
    lines: list[str] = []
    for one in found.entries:
        lines.append(f"- {one.name} ({one.kind}) {one.title}")
        lines += (f"  {line}" for line in entry_words(one))
    return _section("Records, parts and lists", lines)
