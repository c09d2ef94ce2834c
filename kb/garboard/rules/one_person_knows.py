"""Only one person aboard, or nobody, has shown to be able to do something that others have learnt.

Why: that person sleeps, falls ill, is ashore, or is the one who needs help.

Fix: show it to a second person and write the day; or write why one is enough, in a concession. What
nobody was ever shown is not counted here: a class A procedure names its competence itself. Who can do
it with help only does not count.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left
from garboard.rules.aboard import aboard, competences

CODE = "one-person-knows"
SEVERITY = Severity.WARN
BINDS_FROM = "in service"
WAIVABLE = True

WITH_HELP = "with help"


def check(book: Book) -> Iterator[Diagnostic]:
    """Count who aboard can do each procedure that anybody has shown."""
    able: dict[str, set[str]] = {}
    for person, one, _ in competences(book):
        record = book.records.get(bare_id(one.procedure))
        if not isinstance(record, Procedure) or has_left(record):
            continue
        knowing = able.setdefault(str(record.id), set())
        runs = one.until is None or one.until >= book.today
        fresh = runs and one.revision >= record.revision and one.level != WITH_HELP
        if fresh and aboard(person, book.today):
            knowing.add(person.key)
    for key, people in able.items():
        if len(people) > 1:
            continue
        who = f"only {min(people)}" if people else "nobody"
        text = f"{who} aboard has shown to do {key}"
        whom = "a second person" if people else "somebody"
        cure = f"show {key} to {whom} and write the day, or ask for a concession"
        where = book.records[key].place("id")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, key)
