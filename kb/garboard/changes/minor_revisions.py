"""Which revisions of a procedure changed words only, and which claims of that cannot be believed.

Whoever was shown a procedure can still do it after its words were mended. So that nobody is taken for
skilled by a slip of the pen, every revision counts as major unless the procedure says otherwise, and
what it says is held against the newest edition that holds an earlier revision. Where none does, against
what was signed before: a signature keeps the digest of the whole text, so it can show that not a word
moved or that a safety message or a limit did; that only words did it cannot show. Such a claim is told,
and not believed.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass, replace

from garboard.book import Book
from garboard.changes.step_diff import Held, guards_moved, steps_moved
from garboard.reading.references import VALUE_LINK
from garboard.records.base import bare_id
from garboard.records.edition import Edition
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.signoff import SignOff
from garboard.review.canonical import said, whole_digest
from garboard.review.issued import issued_record

__all__ = ["Claim", "believed_minor", "minor_claims"]

DONE_OTHERWISE = (
    *("use", "when", "people", "ppe", "isolation", "isolates", "points", "restores", "stop_if"),
    *("competence", "tools"),
)
"""What somebody does or needs otherwise when it moves, beside the steps."""
MOST_NAMED = 3
NOTHING_EARLIER = "no edition holds an earlier revision"


@dataclass(frozen=True, slots=True)
class Claim:
    """One revision that a procedure says changed words only."""

    number: int
    refused: str = ""
    """What speaks against it; empty where nothing is known to."""
    unproved: str = ""
    """Why nothing can speak for it; empty where it was held against an earlier text."""

    @property
    def believed(self) -> bool:
        """Whether who was shown the revision before still counts as able to do it."""
        return not (self.refused or self.unproved)


@dataclass(frozen=True, slots=True)
class _Text:
    """A procedure as one edition has it, or as it stands."""

    book: Book
    procedure: Procedure
    edition: Edition | None = None
    """None: as it stands."""

    @property
    def name(self) -> str:
        return f"edition {self.edition.number}" if self.edition else "today"

    def number(self, address: str) -> str | None:
        """A value as it was; None where it is not known."""
        values = self.edition.values if self.edition else self.book.values
        one = values.get(address)
        return one.text if one else None

    def message(self, key: str) -> object:
        """What a safety message said; None where it is not known."""
        issued = self.edition.records.get(key) if self.edition else None
        if self.edition is None:
            found = self.book.records.get(key)
        else:
            editions = self.book.content.editions
            found = issued_record(editions, issued, self.edition) if issued else None
        return said(found.message) if isinstance(found, Hazard) and found.message else None


def believed_minor(book: Book, procedure: Procedure) -> frozenset[int]:
    """The revisions of a procedure that changed words only, as far as that can be believed.

    Args:
        book: With every issued edition.
        procedure: As it stands.
    """
    return frozenset(one.number for one in minor_claims(book, procedure) if one.believed)


def minor_claims(book: Book, procedure: Procedure) -> tuple[Claim, ...]:
    """Every revision that is said to be minor, with what speaks against it or cannot speak for it.

    Args:
        book: With every issued edition.
        procedure: As it stands.
    """
    if not procedure.minor:
        return ()
    texts = (*_issued(book, procedure), _Text(book, procedure))
    return tuple(_claim(procedure, number, texts) for number in dict.fromkeys(procedure.minor))


def _issued(book: Book, procedure: Procedure) -> Iterator[_Text]:
    """The procedure as each edition has it, the oldest first."""
    editions = book.content.editions
    for edition in editions.issued:
        issued = edition.records.get(str(procedure.id))
        found = issued_record(editions, issued, edition) if issued else None
        if isinstance(found, Procedure):
            yield _Text(book, found, edition)


def _claim(procedure: Procedure, number: int, texts: tuple[_Text, ...]) -> Claim:
    if not 0 < number <= procedure.revision:
        return Claim(number, refused=f"it is revision {procedure.revision}")
    later = [one for one in texts if one.procedure.revision >= number]
    silent = next((one for one in later if number not in one.procedure.minor), None)
    if silent:
        return Claim(number, refused=f"{silent.name} was issued without that word")
    earlier = [one for one in texts if one.procedure.revision < number]
    if not earlier:
        return _by_signature(texts[-1], number)
    return _between(earlier[-1], later[0], number)


def _between(before: _Text, after: _Text, number: int) -> Claim:
    """Hold a claim against the two texts that it stands between."""
    between = range(before.procedure.revision + 1, after.procedure.revision + 1)
    if not all(one in after.procedure.minor for one in between):
        return Claim(number)  # a major one came with it, which has to be shown all the same
    moved = _named((*_steps_moved(before, after), *_limits_moved(before, after)))
    if moved:
        when = (
            f"between {before.name} and {after.name}" if after.edition else f"since {before.name}"
        )
        return Claim(number, refused=f"{when} {moved} changed")
    unknown = _named(tuple(_not_known(before, after)))
    if unknown:
        return Claim(number, unproved=f"{before.name} does not tell {unknown}")
    return Claim(number)


def _named(told: tuple[str, ...]) -> str:
    told = tuple(dict.fromkeys(told))
    more = f" and {len(told) - MOST_NAMED} more" if len(told) > MOST_NAMED else ""
    return f"{', '.join(told[:MOST_NAMED])}{more}"


def _steps_moved(before: _Text, after: _Text) -> Iterator[str]:
    """What is done otherwise, in words."""
    book, old, new = after.book, before.procedure, after.procedure
    if said(old.steps) != said(new.steps):
        held = Held(book, book, old, new)
        steps = [
            f"step {one.number_after}" if one.number_after else f"the old step {one.number_before}"
            for one in steps_moved(held)
        ]
        yield from (*steps, *(one.what for one in guards_moved(held))) or ("a step",)
    for name in DONE_OTHERWISE:
        if said(getattr(old, name)) != said(getattr(new, name)):
            yield name.replace("_", " ")


def _limits_moved(before: _Text, after: _Text) -> Iterator[str]:
    """Safety messages and numbers of the steps that say something else, where both are known."""
    for key in _messages(after.procedure):
        then, now = before.message(key), after.message(key)
        if then is not None and now is not None and then != now:
            yield f"the safety message of {key}"
    for address in _numbers(after.procedure):
        old, new = before.number(address), after.number(address)
        if old and new and old != new:
            yield f"{address} ({old}, then {new})"


def _not_known(before: _Text, after: _Text) -> Iterator[str]:
    """Safety messages and numbers of the steps that the earlier text does not have, and the later has."""
    for key in _messages(after.procedure):
        if before.message(key) is None and after.message(key) is not None:
            yield f"the safety message of {key}"
    for address in _numbers(after.procedure):
        if before.number(address) is None and after.number(address) is not None:
            yield address


def _messages(procedure: Procedure) -> Iterator[str]:
    yield from dict.fromkeys(bare_id(one.message) for one in procedure.steps if one.message)


def _numbers(procedure: Procedure) -> Iterator[str]:
    """The values that are quoted in what is done."""
    fields = ("steps", *DONE_OTHERWISE)
    text = json.dumps([said(getattr(procedure, name)) for name in fields], ensure_ascii=False)
    yield from dict.fromkeys(found["address"] for found in VALUE_LINK.finditer(text))


def _by_signature(text: _Text, number: int) -> Claim:
    """Hold a claim against what was signed before, where no edition has it."""
    procedure = text.procedure
    was = replace(
        procedure,
        revision=number - 1,
        minor=tuple(one for one in procedure.minor if one < number),
    )
    digests = [line.digest for line in procedure.signed if line.digest]
    if any(whole_digest(was).startswith(one) for one in digests):
        return Claim(number)  # raised by its number alone: not a word moved
    now = whole_digest(procedure)
    old = [line for line in procedure.signed if line.digest and not now.startswith(line.digest)]
    line = max(old, key=lambda one: one.on, default=None)
    moved = _named(tuple(_moved_since(text, line))) if line else ""
    if line and moved:
        return Claim(number, refused=f"since it was signed on {line.on} {moved} changed")
    return Claim(number, unproved=NOTHING_EARLIER)


def _moved_since(text: _Text, line: SignOff) -> Iterator[str]:
    """What guards or limits the steps and is not as an older signature saw it."""
    reviewed = text.book.reviews.get(str(text.procedure.id))
    now = reviewed.cover.saw if reviewed else {}
    saw = {"".join(name.split()): said for name, said in (line.saw or {}).items()}
    for key in _messages(text.procedure):
        if key in saw and saw[key] != now.get(key):
            yield key
    for address in _numbers(text.procedure):
        if address in saw and saw[address] != now.get(address):
            yield f"{address} ({saw[address]}, now {now.get(address, 'not known')})"
