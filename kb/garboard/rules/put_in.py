"""What a test put in, took off or opened for its own sake, and what its made-good list says came back.

Told from the words of its line-up and deviations, and from the steps of its procedure that no later
step undoes. A clause that denies it (`never gagged`, `nothing blanked`) puts nothing in.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from garboard.book import Book
from garboard.names import IDENTIFIER, is_tag
from garboard.records.base import bare_id
from garboard.records.inspection import Test
from garboard.records.procedure import Procedure, Step
from garboard.rules.line_ups import folded
from garboard.rules.steps import end_position, verb

__all__ = ["PutIn", "Sort", "made_good_in", "put_in"]


@dataclass(frozen=True, slots=True)
class Sort:
    """One sort of thing that a test leaves behind."""

    said: str
    """What is so while it is left: `a blank is in`."""
    cure: str
    puts: re.Pattern[str]
    """A clause of a line-up that puts it in."""
    undoes: re.Pattern[str]
    """A clause of a made-good list that takes it out."""
    does: re.Pattern[str]
    """A step of a procedure that puts it in."""
    kinds: tuple[str, ...] = ()
    """Of a step with a tag, the kinds of component that it is of; any where empty."""


def _words(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern, re.IGNORECASE)


LET_OUT: Final = r"(?:drains?|vents?|bleeds?)"
RELIEF: Final = r"(?:relief valves?|relief|safety valves?|bursting discs?)"
OFF: Final = r"(?:off|out|removed|taken off|taken out)"
BRIDGED: Final = r"(?:bridged|bypassed|by-passed|jumpered|inhibited|linked out)"
OPENED: Final = Sort(
    "a drain or vent is open",
    "shut it",
    _words(rf"\b{LET_OUT}(?: valves?)? (?:is |are |left |standing )?(?:cracked )?open\b"),
    _words(rf"\b{LET_OUT}\b"),
    _words(r"^(?:open|crack)\b"),
    ("drain valve", "vent valve", "test cock"),
)
SORTS: Final = (
    Sort(
        "a blank is in",
        "take it out",
        _words(r"\bblank(?:s|ed)?\b|\bspaded?s?\b(?! (?:terminal|connector|lug))"),
        _words(r"\b(?:blanks?|spades?|unblanked)\b"),
        _words(r"^(?:fit|put|set|insert)\b.*\b(?:blank|spade)s?\b|^blank\b"),
    ),
    Sort(
        "a gag is on",
        "take it off",
        _words(r"\bgag(?:s|ged)?\b"),
        _words(r"\b(?:un)?gag(?:s|ged)?\b"),
        _words(r"^(?:fit|put|set|screw)\b.*\bgags?\b|^gag\b"),
    ),
    Sort(
        "a relief valve is off",
        "refit it",
        _words(rf"\b{RELIEF} (?:is |are )?{OFF}\b|\b(?:removed|took off) the {RELIEF}\b"),
        _words(rf"\b{RELIEF}\b"),
        _words(r"^(?:remove|take off|take out|take\b.*\b(?:off|out)$)"),
        ("relief valve", "bursting disc"),
    ),
    OPENED,
    Sort(
        "a switch or alarm is bridged",
        "take the bridge out",
        _words(rf"\b{BRIDGED}\b"),
        _words(
            r"\b(?:bridges?|bypass(?:es)?|by-pass(?:es)?|jumpers?|inhibits?|links?|restored|in force|reset)\b"
        ),
        _words(r"^(?:bridge|bypass|by-pass|jumper|inhibit)\b"),
    ),
)
DENIED: Final = _words(r"\b(?:no|not|never|none|nothing|neither|without)\b")
STILL: Final = _words(r"\b(?:left (?:in|on|off|open)|stays?|still|not yet|remains?)\b")
CLAUSE: Final = re.compile(r"[;,.]\s")
SHUTS: Final = ("shut", "closed")


@dataclass(frozen=True, slots=True)
class PutIn:
    """One thing that was put in, and the words that say so."""

    sort: Sort
    words: str
    path: str
    """The field of the test that says so; `procedure` for one of its steps."""
    tags: frozenset[str]


def put_in(book: Book, test: Test) -> Iterator[PutIn]:
    """Everything that a test put in, as far as it can be told."""
    for path in ("line_up", "deviations"):
        for clause in CLAUSE.split(getattr(test, path) or ""):
            for sort in () if DENIED.search(clause) else SORTS:
                if sort.puts.search(clause):
                    yield PutIn(sort, clause.strip(), path, _tags(clause))
            yield from _opened(book, clause, path)
    procedure = book.records.get(bare_id(test.procedure)) if test.procedure else None
    if isinstance(procedure, Procedure):
        yield from _by_steps(book, procedure)


def _opened(book: Book, clause: str, path: str) -> Iterator[PutIn]:
    """A drain or vent that a line-up names by its tag alone: `SA-HV-005 open`."""
    sort = OPENED
    if DENIED.search(clause) or sort.puts.search(clause):
        return
    if re.search(r"\bopen\b", clause) and not re.search(r"\bshut\b", clause):
        valves = (book.components[tag] for tag in _tags(clause) if _is_of(book, tag, sort))
        tags = frozenset(str(valve.tag) for valve in valves if folded(valve.usual) in SHUTS)
        if tags:
            yield PutIn(sort, clause.strip(), path, tags)


def _by_steps(book: Book, procedure: Procedure) -> Iterator[PutIn]:
    for number, step in enumerate(procedure.steps):
        for sort in SORTS:
            after = procedure.steps[number + 1 :]
            if _does(book, step, sort) and not any(_undone(one, step, sort) for one in after):
                tags = frozenset((step.tag,) if step.tag else ())
                words = f"{procedure.id} step {number + 1}: {step.do} {step.tag or ''}".rstrip()
                yield PutIn(sort, words, "procedure", tags)


def _does(book: Book, step: Step, sort: Sort) -> bool:
    if not sort.does.search(step.do) or DENIED.search(step.do):
        return False
    return not sort.kinds or _is_of(book, step.tag or "", sort)


def _undone(later: Step, step: Step, sort: Sort) -> bool:
    """Whether a later step takes out again what a step put in."""
    if sort.kinds:
        back = end_position(later) in SHUTS or verb(later.do) in ("refit", "fit", "replace")
        return later.tag == step.tag and back
    return bool(sort.undoes.search(later.do)) and not sort.does.search(later.do)


def _is_of(book: Book, tag: str, sort: Sort) -> bool:
    part = book.components.get(tag)
    return part is not None and part.kind in sort.kinds


def _tags(clause: str) -> frozenset[str]:
    return frozenset(found for found in IDENTIFIER.findall(clause) if is_tag(found))


def made_good_in(test: Test, thing: PutIn) -> frozenset[str] | None:
    """The tags that a test says it made good of one thing; None where it says nothing of it."""
    found: set[str] = set()
    said = False
    clauses = [clause for one in test.made_good for clause in CLAUSE.split(one)]
    for clause in clauses:
        named = _tags(clause)
        if STILL.search(clause) or not (
            thing.sort.undoes.search(clause) or (thing.tags and thing.tags & named)
        ):
            continue
        said = True
        found |= named
    return frozenset(found) if said else None
