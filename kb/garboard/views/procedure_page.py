"""A procedure as it is done: what is needed, then messages and steps, then how everything stands."""

from collections.abc import Iterator

from garboard.records.procedure import Procedure
from garboard.views.crew import claimed_minor, who_can
from garboard.views.draft import Draft
from garboard.views.end_state import end_state
from garboard.views.fields import line_of
from garboard.views.inline import cell
from garboard.views.listing import Jumps
from garboard.views.page import Block, Facts, Heading, Paragraph, Strong
from garboard.views.steps import step_rows

__all__ = ["procedure_head"]

BEFORE = ("when", "people", "competence", "tools", "parts", "ppe", "time", "isolation")
"""What stands before step 1."""
FEW = 3
"""More of it than this fills a phone: then a way leads past it."""
STEPS = "Steps"


def procedure_head(draft: Draft, record: Procedure) -> Iterator[Block]:
    """The procedure itself.

    Args:
        draft: Its page.
        record: The procedure.

    Yields:
        Purpose, what is needed, the steps with their messages, the end state.
    """
    book = draft.book
    if record.purpose:
        yield Paragraph((Strong("When it is done: "), *cell(book, record.purpose)))
    rows = [(name, line_of(book, record, name)) for name in BEFORE]
    named = {"when": "start from", "ppe": "wear"}
    needed = tuple((named.get(name, name), line) for name, line in rows if line)
    if len(needed) > FEW:
        yield Jumps("Steps", (("To step 1", STEPS.casefold()),))
    if needed:
        yield Heading("Before step 1")
        yield Facts(needed)
    yield who_can(book, record)
    yield from claimed_minor(book, record)
    if record.isolates or record.points:
        yield Facts(
            tuple(
                (label, line_of(book, record, name))
                for name, label in (("isolates", "makes safe"), ("points", "isolation points"))
                if getattr(record, name)
            )
        )
    if record.stop_if:
        yield Paragraph((Strong("Stop and call if: "), *cell(book, record.stop_if)))
    yield Heading(STEPS)
    yield step_rows(book, record)
    yield from end_state(book, record)
