"""What somebody aboard has shown is of an older procedure, or has run out.

Why: a person does what they were shown. Where the procedure has moved on, the old way is in the hands,
and no page takes it out again. So a major revision takes a rank away: who could do it alone or teach it
can do it with help, who could do it with help has not been shown it. Two such revisions take two.

Fix: show it again by the procedure as it is and write the day and the revision; or write the day until
which they are aboard; or, where a revision changed words only, say so under `minor:` of the procedure.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.competence import Skill, skills
from garboard.errors import Diagnostic, Severity

CODE = "skill-outdated"
SEVERITY = Severity.HOLD
BINDS_FROM = "in service"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold what everybody aboard was last seen to do against the procedure and the day."""
    for one in skills(book):
        if not one.person.may_be_aboard(book.today):
            continue
        key = str(one.procedure.id)
        cure = f"show {key} again and write the day, or the day {one.person.key} leaves"
        for text in _told(one):
            yield Diagnostic(one.where, SEVERITY, text, cure, CODE, key)


def _told(one: Skill) -> Iterator[str]:
    key, who, procedure = str(one.procedure.id), one.person.key, one.procedure
    if one.majors:
        since = f" since {one.since}" if one.since else ""
        yield (
            f"{who} was shown {key} r{one.shown.revision}, {one.written}; it is r{procedure.revision},"
            f" so that counts as {one.counts_as}{since}"
        )
    if one.doubt:
        yield f"{who} is said to have shown {key} r{one.shown.revision}, but {one.doubt}"
    if one.ran_out:
        yield f"what {who} has shown of {key} ran out {one.shown.until}"
