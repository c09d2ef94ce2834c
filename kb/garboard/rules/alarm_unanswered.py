"""An alarm has no page that says what to do, or its wording is off by a character.

Why: at night a person looks up the words on the panel, to the letter, or finds nothing. An alarm
without an answer trains the watch to cancel it (ISA-18.2 family). Where two switches sound one
alarm, its page names the other under `means`.

Fix: write the alarm page; give the words as they stand on the panel; where nothing is to be done,
take the alarm off the panel.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.alarm import Alarm
from garboard.records.component import Component
from garboard.records.standing import has_left
from garboard.rules.recorded import recorded

CODE = "alarm-unanswered"
SEVERITY = Severity.HOLD
BINDS_FROM = "in service"
WAIVABLE = True

SWITCHES = ("pressure switch", "level switch")
CAPITALS = re.compile(r"\b[A-Z][A-Z0-9]*(?:[ -][A-Z0-9]+)+\b")
"""Two words or more in capitals: how a panel is quoted."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the page of every alarm, then for panel words that no page has to the letter."""
    alarms = [alarm for alarm in book.of_kind(Alarm) if not has_left(alarm)]
    answered = {str(alarm.tag) for alarm in alarms} | {str(alarm.set) for alarm in alarms}
    pages = {str(alarm.id) for alarm in alarms}
    answered |= {item.to for item in book.mentions if item.by in pages and item.field == "means"}
    for part in book.components.values():
        for name in _alarm_points(part):
            value = recorded(book, part, name)
            if value and not {str(part.tag), str(part.address(name))} & answered:
                text = f"{part.tag} alarms at {value.text} and no page answers it"
                cure = "write its alarm page (garboard new alarm), or take the alarm off the panel"
                yield Diagnostic(value.where, SEVERITY, text, cure, CODE, part.tag)
    yield from _misquoted(book, alarms)


def _alarm_points(part: Component) -> Iterator[str]:
    """The settings at which a component calls somebody; one that only stops a machine has none."""
    if part.kind in SWITCHES and not part.stops:
        yield "set"
    yield from ("alarm_low", "alarm_high")


def _misquoted(book: Book, alarms: list[Alarm]) -> Iterator[Diagnostic]:
    """Words in capitals that differ from one alarm's wording by a single character."""
    wordings = {alarm.wording: alarm for alarm in alarms if alarm.wording}
    for written in book.content.texts:
        for number, line in enumerate(written.text.splitlines()):
            for found in CAPITALS.finditer(line):
                near = [one for one in wordings if _one_off(found[0], one)]
                if found[0] in wordings or not near:
                    continue
                text = f"quotes {found[0]}, {wordings[near[0]].id} says {near[0]}"
                cure = "write it as it stands on the panel, in both places"
                start = written.where
                column = found.start() + (start.column if number == 0 else 1)
                where = Where(start.path, start.line + number, column)
                yield Diagnostic(where, SEVERITY, text, cure, CODE, written.owner)


def _one_off(one: str, other: str) -> bool:
    """Whether one character more, less or other makes the two the same.

    >>> _one_off("START AIR LW", "START AIR LOW"), _one_off("START AIR LOW", "START AIR LOW")
    (True, False)
    """
    if one == other or abs(len(one) - len(other)) > 1:
        return False
    same = next((at for at, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), None)
    at = min(len(one), len(other)) if same is None else same
    return any(
        left == right
        for left, right in (
            (one[at + 1 :], other[at + 1 :]),
            (one[at:], other[at + 1 :]),
            (one[at + 1 :], other[at:]),
        )
    )
