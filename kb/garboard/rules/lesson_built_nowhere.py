"""A lesson says that it was built in, and names nothing that it was built into.

Why: a lesson changes nothing by being written down. It is learned when the procedure, the round or
the rule that the next crew follows says it.

Fix: name under `into` the record, the code of the rule, the watch round or the path of the page that
carries it now; or set the lesson back to `validated` until one does.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import is_record_id, nearest
from garboard.records.base import bare_id
from garboard.records.finding import Lesson
from garboard.rules.lessons import known_homes, taken_in

CODE = "lesson-built-nowhere"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every lesson that is written as built in."""
    for lesson in book.of_kind(Lesson):
        if taken_in(lesson):
            yield from _nowhere(book, lesson)


def _nowhere(book: Book, lesson: Lesson) -> Iterator[Diagnostic]:
    about, known = str(lesson.id), known_homes(book)
    if not lesson.into:
        text = f"{about} is {lesson.state} and names nothing that it was built into"
        cure = "name the record, rule or round that carries it, or set it back to validated"
        yield Diagnostic(lesson.place("state"), SEVERITY, text, cure, CODE, about)
    for number, name in enumerate(lesson.into):
        if is_record_id(bare_id(name)) or name in known:
            continue
        text = f"{about} is built into `{name}`, which is no record, rule, watch round or page"
        near = nearest(name, known)
        cure = f"write {near}" if near else "name the record, rule or round that carries it"
        cure = f"{cure}, or set the lesson back to validated"
        yield Diagnostic(lesson.place(f"into[{number}]"), SEVERITY, text, cure, CODE, about)
