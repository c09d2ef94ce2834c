"""A picture says nothing of when it was taken, what it shows or from where; or it shows the past.

Why: a photograph is believed before any word beside it. One without a date is taken for how things
are, and one older than the last change to its part shows what is no longer there.

Fix: give the day, the tag and the view; a picture from before a change belongs in the record of
that change, and the page wants a new one.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Medium, Record
from garboard.records.change import Change
from garboard.records.installed import changes_of_tag, last_since
from garboard.records.pages import WrittenPage
from garboard.records.standing import describes

CODE = "picture-undated"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every picture that a record or a page brings."""
    owners: tuple[Record | WrittenPage, ...] = (*book.records.values(), *book.content.pages)
    for owner in owners:
        about = str(owner.id) if isinstance(owner, Record) else owner.where.path
        for number, picture in enumerate(owner.media):
            where = owner.place(f"media[{number}].photo")
            wanted = {"date": picture.on, "tag": picture.tag, "view": picture.view}
            missing = [name for name, said in wanted.items() if not said]
            if missing:
                text = f"{picture.photo} has no {', no '.join(missing)}"
                cure = "say when, of what and from where, or leave the picture out"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
            elif overtaken := _overtaken(book, owner, picture):
                cure = "take a new one, or move this one to the record of that change"
                yield Diagnostic(where, Severity.HOLD, overtaken, cure, CODE, about)


def _overtaken(book: Book, owner: Record | WrittenPage, picture: Medium) -> str:
    """What a picture that tells how things are missed since; empty where it missed nothing."""
    if not (picture.on and picture.tag) or not (isinstance(owner, WrittenPage) or describes(owner)):
        return ""
    since = last_since(changes_of_tag(book.of_kind(Change), picture.tag), picture.on)
    if since is None:
        return ""
    day, change = since
    return f"{picture.photo} is of {picture.on}, {change.id} changed {picture.tag} on {day}"
