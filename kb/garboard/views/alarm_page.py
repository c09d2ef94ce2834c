"""An alarm and a fault: the first line is what to do first."""

from collections.abc import Iterator

from garboard.records.alarm import Alarm, Fault
from garboard.views.draft import Draft
from garboard.views.fields import line_of, table_of
from garboard.views.inline import cell
from garboard.views.page import Block, Bullets, Facts, Heading, Paragraph, Strong

__all__ = ["alarm_head", "fault_head"]


def alarm_head(draft: Draft, record: Alarm) -> Iterator[Block]:
    """An alarm: its exact wording, what to do first, what it means.

    Args:
        draft: Its page.
        record: The alarm.
    """
    book = draft.book
    yield Paragraph((Strong(record.wording or "wording not recorded"),))
    if record.first:
        yield Heading("Do first")
        yield Bullets(tuple(cell(book, one) for one in record.first), ordered=True)
    named = (
        ("means", "it means"),
        ("consequence", "if nobody acts"),
        ("time_to_act", "time to act"),
        ("confirm", "see that it is true"),
        ("automatic", "happens by itself"),
        ("tag", "raised by"),
    )
    rows = [(label, line_of(book, record, name)) for name, label in named]
    if record.set:
        rows.append(
            (f"set, {record.direction or 'direction not recorded'}", cell(book, record.set))
        )
    rows.append(("alarm priority", (f"alarm priority: {record.priority or 'not recorded'}",)))
    yield Facts(tuple((label, line) for label, line in rows if line))


def fault_head(draft: Draft, record: Fault) -> Iterator[Block]:
    """A fault: the safe state first, then the checks.

    Args:
        draft: Its page.
        record: The fault.
    """
    book = draft.book
    if record.symptoms:
        yield Paragraph(
            ("The crew says: ", "; ".join(f"\u201c{word}\u201d" for word in record.symptoms))
        )
    if record.safe_first:
        yield Paragraph((Strong("Make it safe first: "), *cell(book, record.safe_first)))
    if record.checks:
        yield Heading("Checks, in order")
        yield table_of(book, "checks", record.checks)
    if record.stop_when:
        yield Paragraph((Strong("Stop and call when: "), *cell(book, record.stop_when)))
