"""Three findings have one cause and no lesson, or a lesson is built in nowhere.

Why: GAO-02-195 found lessons that were written down, filed, and learned again by accident. What
is not built into a procedure, a drawing or a rule is forgotten by the next crew.

Fix: write the lesson from the findings, and name under `into` the records it was built into;
where the causes only read alike, say what differs. What a lesson names counts as long as it has not
left; one that says it was built in and names nothing is a fault of its own.
"""

from collections.abc import Iterator
from datetime import date, timedelta

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import key_of
from garboard.records.base import bare_id
from garboard.records.finding import Finding, Lesson
from garboard.records.standing import has_left, refused
from garboard.rules.lessons import homes, taken_in

CODE = "cause-repeats"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True

MANY = 3
PATIENCE = timedelta(days=60)


def check(book: Book) -> Iterator[Diagnostic]:
    """Gather findings by cause, then look at lessons that stand nowhere."""
    lessons = [lesson for lesson in book.of_kind(Lesson) if not has_left(lesson)]
    taught = {bare_id(name) for lesson in lessons for name in lesson.event}
    causes: dict[str, list[Finding]] = {}
    for finding in book.of_kind(Finding):
        if finding.cause and not refused(finding):
            causes.setdefault(key_of(finding.cause), []).append(finding)
    for alike in causes.values():
        if len(alike) < MANY or any(str(one.id) in taught for one in alike):
            continue
        names = ", ".join(str(one.id) for one in alike)
        text = f"{names} have one cause, `{alike[0].cause}`, and no lesson"
        cure = "write the lesson, or say in the causes what differs"
        where = alike[-1].place("cause")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(alike[-1].id))
    for lesson in lessons:
        day = _written(lesson)
        waits = day is not None and book.today - day > PATIENCE
        if waits and not taken_in(lesson) and not [*homes(book, lesson)]:
            text = f"{lesson.id} of {day} is built in nowhere"
            cure = "build it into a procedure or a drawing and name it, or void the lesson"
            where = lesson.place("title")
            yield Diagnostic(where, Severity.HOLD, text, cure, CODE, str(lesson.id))


def _written(lesson: Lesson) -> date | None:
    """The day it was written; where nobody says, that of the first signature."""
    return lesson.drafted or min((line.on for line in lesson.signed), default=None)
