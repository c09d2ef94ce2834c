"""The pipes were traced by two people, and have been entered otherwise since.

Question: is the layout that is searched the one that was found on the vessel?

Why: every search of the layout is a search of what somebody wrote down. Two people with a torch hold
that against the pipes; one changed line afterwards, and nobody knows again. Until it is traced anew no
question to the layout prints a pass. Common practice, no source.

Bad: a tap moved in `connections`, and the line trace of last spring still the newest.

Good: a new test record with `what: line trace`, signed by who did it and by who did it again, with the
digest of the connections that `garboard check` prints.

Fix: trace the lines again and record it; where only the text was wrong and the trace had found it so,
say that in a new record too.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.line_trace import line_trace
from garboard.errors import Diagnostic, Severity

CODE = "line-trace-lapsed"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold the newest line trace of each system against its connections."""
    for code in book.systems:
        trace = line_trace(book, code)
        test = trace.test
        if test is None or trace.traced or not trace.digest:
            continue
        if test.connections is None:
            text = f"{test.id} does not say which connections were traced on {test.on}"
            cure = f"write `connections: {trace.digest}` and have that verified, or trace again"
        else:
            text = f"{test.id} of {test.on} traced {test.connections}, the connections are now {trace.digest}"
            cure = "trace the lines again, or put the connections back as they were found"
        where = test.place("connections" if test.connections else "what")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))
