"""A check of a fault page leads nowhere: one of its two answers has no way on.

Why: the page is read when something is wrong, by somebody who does what it says next. Where it
says nothing, he does something.

Fix: give both answers an action, the next check, another page, or "stop and call".
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.alarm import Fault
from garboard.records.standing import has_left

CODE = "dead-end-branch"
SEVERITY = Severity.HOLD
BINDS_FROM = "in service"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at both answers of every check."""
    for fault in book.of_kind(Fault):
        if has_left(fault):
            continue
        for number, one in enumerate(fault.checks):
            last = number == len(fault.checks) - 1
            for name in ("yes", "no"):
                answer = (getattr(one, name) or "").strip()
                nowhere = last and answer.casefold() in ("next", "go on", "next check")
                if answer and not nowhere:
                    continue
                text = f"check {number + 1} of {fault.id} has no way on for {name}"
                text += f": `{answer}`, and it is the last" if nowhere else ""
                cure = "say what is done then, or `stop and call`"
                where = fault.places.get(
                    f"checks[{number}].{name}", fault.place(f"checks[{number}]")
                )
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(fault.id))
