"""Contributed text as blocks: prose as it is written, and each calculation worked in its place."""

from collections.abc import Iterator

from garboard.calc.sheet import Sheet
from garboard.calc.sheet import WorkedLine as SheetLine
from garboard.calc.show import show_range
from garboard.calc.value import Requirement, Verdict
from garboard.errors import Where
from garboard.records.demand import sign_of
from garboard.views.curve_plot import curve_plot
from garboard.views.draft import Draft
from garboard.views.how_sure import how_sure, rests_on
from garboard.views.page import (
    Block,
    Calculation,
    Cell,
    Column,
    Paragraph,
    Prose,
    Row,
    Table,
    WorkedLine,
)
from garboard.views.ranges import percent_down

__all__ = ["calculation", "text_blocks"]

AGAINST = {">=": "at least", ">": "more than", "<=": "at most", "<": "less than"}


def text_blocks(draft: Draft, text: str, where: Where, first_line: int = 1) -> Iterator[Block]:
    """Split contributed text at its calc fences.

    Args:
        draft: The page it goes on; sources of the fences are numbered there.
        text: Markdown as written.
        where: A place in its file.
        first_line: Line of the file on which the text starts.

    Yields:
        Prose and Calculation blocks in the order of the text.
    """
    lines = text.split("\n")
    owner = draft.ident or where.path
    start = 0
    for fence in draft.book.fences_of(owner):
        first, last = fence.span
        yield from _prose(lines[start:first], where.path, first_line + start)
        sheet = draft.book.network.sheets.get(fence.name)
        if sheet is None:
            yield Paragraph((f"The calculation {fence.name} could not be read: not computed.",))
        else:
            yield calculation(draft, sheet)
        start = last + 1
    yield from _prose(lines[start:], where.path, first_line + start)


def _prose(lines: list[str], path: str, line: int) -> Iterator[Block]:
    text = "\n".join(lines)
    if text.strip():
        yield Prose(text, Where(path, line, 1))


def calculation(draft: Draft, sheet: Sheet) -> Calculation:
    """A worked fence; its sources join the page's list."""
    draft.calculated = True
    lines = [part for line in sheet.lines for part in _worked(draft, sheet, line)]
    tables = tuple(
        Table(
            f"Rows read by {line.name}",
            tuple(Column(title) for title in line.table.columns),
            tuple(Row(tuple(_text(part) for part in row)) for row in line.table.rows),
        )
        for line in sheet.lines
        if line.table
    )
    options = sheet.options
    return Calculation(
        sheet.name,
        sheet.name,
        tuple(lines),
        tables,
        rests_on=rests_on(draft, sheet.name, _asked_of(sheet, lines)),
        hide_working=options.hide_working,
        what_if=sheet.what_if,
        card=options.hide_working and len(options.what_if) == 1,
    )


def _asked_of(sheet: Sheet, lines: list[WorkedLine]) -> tuple[str, ...]:
    """Addresses of the answers of a calculation and of all that is required in it."""
    required = (name for line in sheet.lines if line.requirement for name in line.requirement.uses)
    answers = (line.anchor for line in lines if line.answer)
    return tuple(dict.fromkeys((*answers, *required)))


def _text(part: str) -> Cell:
    return (part,) if part else ()


def _worked(draft: Draft, sheet: Sheet, line: SheetLine, within: str = "") -> Iterator[WorkedLine]:
    if line.requirement:
        yield _requirement(draft, sheet, line)
    else:
        yield _value(draft, sheet, line, within)
    for step in line.steps:
        yield from _worked(draft, sheet, step, f"{line.name}.")
    for kind, words in (("note", line.notes), ("alarm", line.alarms)):
        for text in words:
            yield WorkedLine("", "", text, "", "", "", "", given=False, kind=kind)


def _requirement(draft: Draft, sheet: Sheet, line: SheetLine) -> WorkedLine:
    judged = line.requirement
    fails = judged is None or judged.verdict is not Verdict.HOLDS
    return WorkedLine(
        name="",
        anchor=f"{sheet.name}.require-{line.where.line}",
        label=line.label,
        text=line.worked.split(": holds")[0].split(": fails")[0],
        mathml=line.mathml,
        result="",
        range="",
        given=False,
        sources=draft.cite(*line.sources),
        kind="requirement",
        verdict=_verdict(judged) if judged else "",
        fails=fails,
        fault=line.fault.text if line.fault else "",
        limit=_limit(judged) if judged else "",
        plot=curve_plot(draft.book, judged) if judged else None,
    )


def _limit(judged: Requirement) -> str:
    """What a requirement holds its left side against: `at least 6`; both sides where it says more."""
    sign = sign_of(judged)
    return f"{AGAINST[sign]} {judged.right}" if sign else f"{judged.left} against {judged.right}"


def _value(draft: Draft, sheet: Sheet, line: SheetLine, within: str) -> WorkedLine:
    value = line.value
    name = f"{within}{line.name}"
    from_table = bool(within) and bool(value and value.given)
    answer = _is_answer(draft, sheet, name, line)
    return WorkedLine(
        name=name,
        anchor=f"{sheet.name}.{name}",
        label=line.label,
        text="" if from_table or line.steps else line.worked,
        mathml="" if from_table else line.mathml,
        result=value.text if value else "" if line.steps or not line.fault else "not computed",
        range=show_range(value) if value else "",
        given=bool(value and value.given),
        sources=draft.cite(*line.sources),
        fault=line.fault.text if line.fault else "",
        answer=answer,
        sure=how_sure(draft.book, value, line.label or name) if value and answer else None,
    )


def _is_answer(draft: Draft, sheet: Sheet, name: str, line: SheetLine) -> bool:
    """Whether a line is what its calculation was made for."""
    value, address = line.value, f"{sheet.name}.{name}"
    if value is None or value.given or line.steps:
        return False
    required = any(
        one.block == sheet.name and address in one.uses and one.left == value.text
        for one in draft.book.network.requirements
    )
    inner = "." in name
    used = any(
        user.startswith(f"{sheet.name}.") for user in draft.book.network.feeds.get(address, ())
    )
    return required or not (inner or used)


def _verdict(judged: Requirement) -> str:
    if judged.verdict is Verdict.UNKNOWN:
        return "Not computed: it cannot be judged."
    percent = judged.margin_percent
    share = f" ({percent_down(percent)} of the limit)" if percent is not None else ""
    words = str(judged.verdict)
    return f"{words[0].upper()}{words[1:]}. Margin at the worst corner: {judged.margin}{share}."
