"""Only one person aboard, or nobody, has shown to be able to do something that others have learnt.

Why: that person sleeps, falls ill, is ashore, or is the one who needs help.

Fix: show it to a second person and write the day; or write why one is enough, in a concession. What
nobody was ever shown is not counted here: a class A procedure names its competence itself. Who can do
it with help only does not count, nor who has no time aboard written down.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.competence import alone_aboard, skills_by_procedure
from garboard.errors import Diagnostic, Severity

CODE = "one-person-knows"
SEVERITY = Severity.WARN
BINDS_FROM = "in service"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Count who aboard can do each procedure that anybody has shown."""
    for key, found in skills_by_procedure(book).items():
        people = {one.person.key for one in alone_aboard(book, found)}
        if len(people) > 1:
            continue
        who = f"only {min(people)}" if people else "nobody"
        text = f"{who} aboard has shown to do {key} alone"
        whom = "a second person" if people else "somebody"
        cure = f"show {key} to {whom} and write the day, or ask for a concession"
        where = book.records[key].place("id")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, key)
