"""Whether a quick card fits on one side of A5: reckoned from its words, before anything is printed.

Type is never made smaller and nothing is left out. The figures were measured in print with a wide face,
so that what fits here fits there.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Final

from garboard.records.component import Component
from garboard.records.hazard import Hazard
from garboard.records.quick_card import MOST_FIRST, MOST_THEN, CardPlan, CardRow
from garboard.records.rows import lines_of, message_lines, printed_words

__all__ = ["card_lines", "fitted", "over_one_side"]

ROWS_WITH_MESSAGE: Final = 9
ROWS_WITHOUT: Final = 12
ROOM: Final = 27.9
"""Lines of 12 pt between the task and the foot, measured in print with a wide face."""
ACROSS: Final = 52
"""Signs on a line of 12 pt over the whole card, in the same face."""
BESIDE_NUMBER: Final = 47
BOLD: Final = 1.35
"""How much wider 14 pt bold runs than 12 pt."""
ACROSS_BOLD: Final = 38
BESIDE_BOLD: Final = 34
BESIDE_CODE: Final = 40
"""Signs on a line beside the QR code."""
ACROSS_TASK: Final = 30
"""Signs on a line of 16 pt bold."""
TASK: Final = 1.3
"""Lines that a further line of the task takes."""
SYSTEM: Final = "Direct-current power. Hangs at:"
"""Stands for the name of a system before the place."""
ACROSS_TITLE: Final = 38
"""Signs on a line of 10 pt beside the number of the card."""
SMALL: Final = 0.85
"""Lines of 12 pt that one of 10 pt takes."""
NARROWER: Final = 0.7
"""Lines that a message takes less on a card than on a page, for its frame stands closer."""
TALL: Final = 1.1
"""Lines that one with a tag or a value of 14 pt takes."""
HEADING: Final = 1.25
"""Lines that the heading of a section takes."""
FREE_STOP: Final = 1
"""Lines under *Stop and call if* that stand beside the QR code, which is as high."""
AROUND_ROW: Final = 0.2
LARGER = re.compile(r"[A-Z]{2}-(?!PR|AL|FT|HZ)[A-Z]{2,3}-\d{3}|\d+(?:\.\d+)? [a-zA-Z/()]+")
"""Tags and values, which stand in 14 pt bold."""
WIDER: Final = "wwww"
MARKED = re.compile(r"\s*(?:[-*+|>#]|\d+[.)])")
BARE_NUMBER = re.compile(r"[<>=]?\s*[-+]?\d+(?:[.,]\d+)?")


def card_lines(
    plan: CardPlan, components: Mapping[str, Component], hazards: Iterable[Hazard]
) -> dict[str, float]:
    """Lines of 12 pt that each section takes, reckoned from its words.

    Args:
        plan: What stands on the card.
        components: By tag, for the names of parts.
        hazards: Those of its safety messages.
    """
    common = f"Where nothing else is said, if not: {plan.common_if_not}"
    before = [*plan.before, common] if plan.common_if_not else plan.before
    names = components if plan.names else {}
    then = _rows_lines(plan.then, names) + _text_lines(plan.text)
    stop = sum(_lines(one, BESIDE_CODE) for one in plan.stop)
    return {
        "the title": max(0.0, TASK * (lines_of(plan.task, ACROSS_TASK) - 1))
        + SMALL * (lines_of(f"{SYSTEM} {plan.place}", ACROSS_TITLE) - 1),
        "the safety messages": sum(message_lines(one, ACROSS) - NARROWER for one in hazards),
        "what stands before it": float(sum(_lines(one, ACROSS) for one in before)),
        "Do first": _rows_lines(plan.first, names) + (HEADING if plan.first else 0),
        "Then": then + (HEADING if then else 0),
        "You should see": sum(lines_of(f"{tag} {said}", ACROSS_BOLD) for tag, said in plan.seen)
        * TALL
        + (HEADING if plan.seen else 0),
        "Stop and call if": max(0.0, stop - FREE_STOP),
    }


def _lines(text: str, across: int) -> float:
    """Lines of text in which tags and values are larger than the rest, and make their lines taller."""
    said = printed_words(text)
    lines = lines_of(LARGER.sub(lambda found: found[0] + WIDER, said), across)
    return lines * (TALL if LARGER.search(said) else 1)


def _rows_lines(rows: Iterable[CardRow], components: Mapping[str, Component]) -> float:
    return sum(_row_lines(row, components) for row in rows)


def _row_lines(row: CardRow, components: Mapping[str, Component]) -> float:
    part = components.get(row.tag)
    name = (part.name or part.kind) if part else ""
    to = f"to {row.to}" if row.to else ""
    place = f", {row.place}" if row.place else ""
    said = " ".join(word for word in (row.do, row.tag, name, to) if word) + place
    seen = row.see
    shown = f"{row.on} {seen.value or ''} {seen.within or ''}".strip() if seen else ""
    wide = len(printed_words(said)) + (len(WIDER) if row.tag else 0)
    one_line = wide + len(printed_words(shown)) * BOLD + 4 <= BESIDE_NUMBER
    lines = TALL if one_line else _lines(said, BESIDE_NUMBER) + lines_of(shown, BESIDE_BOLD) * TALL
    for under in (f"If not: {row.if_not}" if row.if_not else "", row.second, row.hold):
        lines += _lines(under, BESIDE_NUMBER)
    return lines + AROUND_ROW


def _text_lines(text: str) -> float:
    """Lines of contributed text: its paragraphs, a list or a table line by line."""
    paragraphs = [one for one in re.split(r"\n\s*\n", text.strip()) if one.strip()]
    lines = 0.0
    for one in paragraphs:
        rows = one.split("\n")
        parts = rows if any(map(MARKED.match, rows)) else [one]
        lines += sum(_lines(" ".join(part.split()), ACROSS) for part in parts) + AROUND_ROW
    return lines


def fitted(
    plan: CardPlan, components: Mapping[str, Component], hazards: Iterable[Hazard]
) -> CardPlan:
    """The plan as it goes on paper.

    Where the *if not* branches of the rows do not all fit, none stands on the card: half of them would
    be taken for all. The card then says that one stops, and where they stand. Where that is not enough,
    the names of parts are left to their label plates, and the tags stand alone.
    """
    hazards = tuple(hazards)
    for one in (plan, _without_branches(plan), replace(_without_branches(plan), names=False)):
        if sum(card_lines(one, components, hazards).values()) <= ROOM:
            return one
    return replace(_without_branches(plan), names=False)


def _without_branches(plan: CardPlan) -> CardPlan:
    if not any(row.if_not for row in plan.rows):
        return plan
    elsewhere = f"a line is not as shown: see {plan.of}"
    return replace(
        plan,
        first=tuple(replace(row, if_not="") for row in plan.first),
        then=tuple(replace(row, if_not="") for row in plan.then),
        stop=(*plan.stop, elsewhere),
    )


def over_one_side(
    plan: CardPlan, components: Mapping[str, Component], hazards: Iterable[Hazard]
) -> tuple[str, ...]:
    """Why something does not fit on one side of A5 at 12 pt; nothing where it does."""
    return tuple(_over(plan, card_lines(plan, components, hazards)))


def _over(plan: CardPlan, lines: Mapping[str, float]) -> Iterator[str]:
    if not plan.rows and not plan.text.strip():
        yield "nothing to do stands on it"
    for title, rows, most in (("Do first", plan.first, MOST_FIRST), ("Then", plan.then, MOST_THEN)):
        if len(rows) > most:
            yield f"{len(rows)} rows under {title}, {most} at most"
    most = ROWS_WITH_MESSAGE if plan.messages else ROWS_WITHOUT
    if len(plan.rows) > most:
        beside = "beside a message" if plan.messages else "without a message"
        yield f"{len(plan.rows)} rows, {most} fit {beside}"
    needed = sum(lines.values())
    if needed > ROOM:
        longest = max(lines, key=lambda title: lines[title])
        yield (
            f"about {needed:.0f} lines of 12 pt, {ROOM:.0f} fit; the longest are {longest}"
            f" with {lines[longest]:.0f}"
        )
    if "```" in plan.text:
        yield "a calculation stands in its text, which no card carries"
    for row in plan.rows:
        if row.see and row.see.value and BARE_NUMBER.fullmatch(row.see.value):
            yield f"`{row.see.value}` under row {row.number} is parted from its unit"
