"""How far the lines of a system were traced, in the words that are stamped on whatever rests on the layout."""

from garboard.book import Book
from garboard.changes.line_trace import LineTrace, line_trace
from garboard.systems.survey import NOT_CHECKED
from garboard.views.inline import cell, day
from garboard.views.page import Block, Cell, Paragraph

__all__ = ["layout_stamp", "nothing_words", "trace_sentence", "trace_words", "words_of"]


def trace_words(book: Book, system: str) -> str:
    """Whether two people traced the lines, and when: `lines traced by two people on 26 April 2031 (SA-TR-013)`.

    Args:
        book: The book.
        system: Code of the system.
    """
    return words_of(line_trace(book, system))


def trace_sentence(book: Book, system: str) -> Cell:
    """The same as a sentence of a page."""
    words = trace_words(book, system)
    return cell(book, f"{words[0].upper()}{words[1:]}.")


def layout_stamp(book: Book, system: str) -> tuple[Block, ...]:
    """What stands on every page that rests on the layout: who traced the lines, and what nobody looked at.

    Args:
        book: The book.
        system: Code of the system.
    """
    return Paragraph(trace_sentence(book, system)), Paragraph((NOT_CHECKED,), quiet=True)


def words_of(trace: LineTrace) -> str:
    """The words for one line trace."""
    if not trace.digest:
        return "no connections entered"
    test = trace.test
    if test is None:
        unsigned = f": {trace.alone.id} is not signed by two people" if trace.alone else ""
        return f"lines not traced{unsigned}"
    if trace.traced:
        return f"lines traced by two people on {day(test.on)} ({test.id})"
    if test.connections is None:
        return f"lines traced on {day(test.on)} ({test.id}), which connections is not said"
    return f"lines traced on {day(test.on)} ({test.id}), connections changed since"


def nothing_words(trace: LineTrace, faults: int, code: str) -> str:
    """The answer where one question found nothing: a pass only where the lines were traced.

    Args:
        trace: How far the lines were traced.
        faults: How much of the connections could not be understood.
        code: Of the rule that asked.
    """
    what = "no cut-off found" if code.endswith("cut-off") else "nothing found"
    if not trace.digest:
        return "not asked: no connections entered"
    if faults:
        many = "1 fault" if faults == 1 else f"{faults} faults"
        return f"{what} in what could be read; {many} in the connections: no pass"
    if trace.traced:
        return f"{what}; {words_of(trace)}"
    return f"{what} in the layout as entered; {words_of(trace)}: no pass"
