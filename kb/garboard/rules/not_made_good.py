"""What a test put in is still in, as far as its made-good list says: a blank, a gag, an open drain.

Why: a blank that nobody took out is a valve that nobody knows of, and it lies in the way of the
next relief. The test was passed; nobody looks there again.

Fix: take it out, have somebody else see it, and write it into `made_good`. Looked for are blanks and
spades, gags, relief valves taken off, drains and vents opened, switches and alarms bridged: in the
words of `line_up` and `deviations`, and in steps of the procedure that no later step of it undoes. A
list is taken at its word where it names the thing, and the tags where both name some; what a re-test
that `follows` made good counts too. What is said in other words is not seen.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.inspection import Test
from garboard.records.standing import has_left
from garboard.rules.put_in import PutIn, made_good_in, put_in
from garboard.rules.retests import following

CODE = "not-made-good"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare what each finished test put in with what was made good after it."""
    for test in book.of_kind(Test):
        if test.result is None or has_left(test):
            continue
        lists = [test, *following(book, test)]
        said: set[str] = set()
        for thing in put_in(book, test):
            left = _left(lists, thing)
            if left is None or thing.sort.said in said:
                continue
            said.add(thing.sort.said)
            at = f" at {', '.join(sorted(left))}" if left else ""
            text = (
                f"{thing.sort.said}{at} after {test.id} (`{thing.words}`), as far as made_good says"
            )
            cure = f"{thing.sort.cure} and write it into made_good, or say there who saw it done"
            where = test.places.get("made_good", test.place(thing.path))
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))


def _left(lists: list[Test], thing: PutIn) -> frozenset[str] | None:
    """The tags of a thing that no list makes good, empty where it names none; None where all is good."""
    found = [tags for test in lists if (tags := made_good_in(test, thing)) is not None]
    if not found:
        return thing.tags
    back = frozenset[str]().union(*found)
    return (thing.tags - back or None) if back and thing.tags else None
