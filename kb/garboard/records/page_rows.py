"""How many rows of paper the page of a record takes, and how many its kind may take.

Counted is what is read with hands at work: messages, what is wanted before step 1, steps, the end. Who
signed it and where it is used follows after, and nobody turns to that at night. The reckoning is of
rows as in `records/rows.py`. Printed in the browser of the tests, procedures took 9 to 12 of them a side
of A5, because a row is never split and what is left over at the foot of a side stays white.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from garboard.records.alarm import Alarm, Check, Fault
from garboard.records.base import Record, bare_id
from garboard.records.component import Component
from garboard.records.hazard import Hazard
from garboard.records.pages import PageKind, WrittenPage
from garboard.records.procedure import Procedure, Use
from garboard.records.rows import A4, A5, lines_of, message_lines, rows_of, step_lines
from garboard.records.system import Round

__all__ = [
    "Budget",
    "alarm_rows",
    "budget_of",
    "fault_rows",
    "procedure_rows",
    "round_rows",
    "text_rows",
]

FOLDED: Final = 4
"""Sides of A5 on a sheet of A4 that is printed on both faces and folded once."""
AT_NIGHT: Final = frozenset((Use.NORMAL, Use.ABNORMAL, Use.EMERGENCY))
"""Uses in which nobody may have to look for a second sheet; work that was planned has two."""
HEAD: Final = 4
"""Lines of the two headings over what is wanted and over the steps."""
PICTURE: Final = 20
"""Lines that a picture takes."""
HEADING: Final = 2
LABEL: Final = 14
"""Signs that the label before a fact takes."""
BEFORE: Final = ("when", "people", "competence", "tools", "parts", "ppe", "time", "isolation")
ANSWERED: Final = (
    "means",
    "consequence",
    "time_to_act",
    "confirm",
    "automatic",
    "silence",
    "tested",
)
PICTURED = re.compile(r"!\[[^\]]*\]\([^)]*\)")
ITEM = re.compile(r"(?:\d+\.|[-*+]) ")


@dataclass(frozen=True, slots=True)
class Budget:
    """What one kind of page may take."""

    rows: int
    paper: str
    """In words: how much paper that is."""


def budget_of(thing: Record | WrittenPage | Round) -> Budget | None:
    """How long a page may be; None where its kind has no budget in rows.

    Args:
        thing: A record, a written page or a watch round.
    """
    if isinstance(thing, Procedure):
        in_hand = thing.use is None or thing.use in AT_NIGHT
        return NIGHT if in_hand else PLANNED
    if isinstance(thing, WrittenPage):
        return WRITTEN.get(thing.page) if thing.page else None
    return OTHERS.get(type(thing))


def _sides(count: int) -> int:
    """Rows on so many sides of A5: the first has the title block and a message, the others do not."""
    return A5.with_message + (count - 1) * A5.without


NIGHT: Final = Budget(_sides(FOLDED), "one sheet folded to four sides of A5")
PLANNED: Final = Budget(_sides(2 * FOLDED), "two sheets folded to four sides of A5 each")
OTHERS: Final[Mapping[type, Budget]] = {
    Alarm: Budget(A4.without // 2, "half a side of A4"),
    Fault: Budget(A4.without, A4.name),
    Round: Budget(2 * A4.with_message, "one sheet of A4, both sides"),
}
WRITTEN: Final[Mapping[PageKind, Budget]] = {
    PageKind.WHAT_IT_DOES: Budget(A4.without, A4.name),
    PageKind.NORMAL_VALUES: Budget(A4.without, A4.name),
    PageKind.HOW_TO_REBUILD_IT: Budget(2 * A4.with_message, "one sheet of A4, both sides"),
}
"""Of what is written; tables and drawings that join it have budgets of their own."""


def procedure_rows(
    procedure: Procedure, records: Mapping[str, Record], components: Mapping[str, Component]
) -> int:
    """Rows of a procedure on A5.

    Args:
        procedure: The procedure.
        records: Filed records by id, for the messages of its steps.
        components: By tag, for names and places.
    """
    across = A5.across
    said = [procedure.purpose, procedure.stop_if]
    lines = HEAD + sum(map(float, _lines(said, across)))
    for name in BEFORE:
        written = getattr(procedure, name)
        text = ", ".join(map(str, written)) if isinstance(written, tuple) else written
        lines += lines_of(str(text), across - LABEL) if text else 0
    place = ""
    for step in procedure.steps:
        lines += step_lines(step, components, across)
        hazard = records.get(bare_id(step.message)) if step.message else None
        lines += message_lines(hazard, across) if isinstance(hazard, Hazard) else 0
        if step.at and step.at != place:
            place, lines = step.at, lines + HEADING
    restored = procedure.restores
    lines += HEADING + (len(restored) if isinstance(restored, Mapping) else 1 if restored else 0)
    return rows_of(lines)


def alarm_rows(alarm: Alarm) -> int:
    """Rows of an alarm on A4: its wording, what to do first, what it means."""
    facts = [getattr(alarm, name) for name in ANSWERED]
    lines = HEADING * 2 + sum(_lines([alarm.wording, *alarm.first], A4.across))
    return rows_of(lines + sum(_lines(facts, A4.across - LABEL)))


def fault_rows(fault: Fault) -> int:
    """Rows of a fault on A4: symptoms, the safe state, each check with both answers."""
    said = ["; ".join(fault.symptoms), fault.safe_first, fault.stop_when]
    more = [fault.causes, fault.remedy, fault.get_home]
    lines = HEADING + sum(_lines([*said, *more], A4.across)) + sum(map(_check_lines, fault.checks))
    return rows_of(lines)


def _check_lines(check: Check) -> int:
    """Lines of one check: its columns stand side by side, and the longest of them counts."""
    column = A4.across // 4
    cells = (f"{check.do} {check.tag or ''}", check.see, check.yes, check.no)
    return max(_lines(cells, column))


def round_rows(walked: Round) -> int:
    """Rows of the log sheet of a round: one for each stop, and more where its words are long."""
    column = A4.across // 3
    stops = (
        max(2, *_lines((stop.look, stop.within, stop.if_not), column)) for stop in walked.order
    )
    return rows_of(HEADING + sum(stops))


def text_rows(text: str) -> int:
    """Rows of Markdown on A4, as far as its signs tell: paragraphs, items, headings, pictures."""
    lines = 0
    for part in re.split(r"\n\s*\n|\n(?=\s*(?:\d+\.|[-*+]) )", text.strip()):
        lines += PICTURE * len(PICTURED.findall(part))
        words = PICTURED.sub("", part)
        lines += lines_of(ITEM.sub("", words.strip()), A4.across)
        lines += HEADING - 1 if words.lstrip().startswith("#") else 0
    return rows_of(lines)


def _lines(texts: Iterable[str | None], across: int) -> list[int]:
    return [lines_of(str(text), across) if text else 0 for text in texts]
