"""What a pack is about in words: what and why, the class, and the worst that can come of it."""

import re
from collections.abc import Iterator
from dataclasses import replace

from garboard.book import Book
from garboard.correspondence.block_lines import in_lines, message_lines
from garboard.correspondence.joins import drawn_lines, joined_lines
from garboard.correspondence.pack import Line, Part, Sort, fact, point, say
from garboard.correspondence.subject import Subject
from garboard.names import IDENTIFIER
from garboard.records.base import Class, Record
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.hazard import Hazard
from garboard.records.signal_word import signal_word
from garboard.records.standing import has_left, kind_name
from garboard.views.draft import Draft
from garboard.views.fields import field_blocks, label_of, line_of
from garboard.views.inline import cell, title_of
from garboard.views.messages import message_of, worst_first
from garboard.views.runs import plain
from garboard.views.tables import stands
from garboard.views.text import text_blocks

__all__ = ["about_line", "class_words", "hazards_of", "matter", "outcome", "weight"]

CLASS_WORDS = {
    Class.A: "safety-significant: it can injure, flood, burn, lose propulsion, steering or power, or"
    " defeat a safety device",
    Class.B: "function-significant: it changes a number, material, line-up or procedure",
    Class.C: "minor or in kind",
}
SEVERITIES = {1: "catastrophic", 2: "critical", 3: "marginal", 4: "negligible"}
FULL = 3
"""Hazards that are told in full; the others by their first line."""


def about_line(subject: Subject) -> str:
    """Kind, class and state."""
    record = subject.record
    if record is None:
        return "written page"
    stated = record.class_ or "A (none stated)"
    return f"{kind_name(record)}, class {stated}, state: {stands(subject.book, record)}"


def class_words(record: Record) -> str:
    """`A, safety-significant: ...`."""
    stated = str(record.class_) if record.class_ else "none stated, counts as A"
    return f"{stated}, {CLASS_WORDS[record.weight]}"


def matter(subject: Subject) -> Part:
    """What it is and why: its own fields and its text."""
    return Part("What and why", tuple(_own(subject)), cut=5)


def _own(subject: Subject) -> Iterator[Line]:
    book, thing = subject.book, subject.thing
    draft = Draft(book, subject.key, thing.title, "", system=thing.system)
    if isinstance(thing, Record):
        if thing.author:
            yield fact("author", plain(line_of(book, thing, "author")))
        for name in ("drafted", "supersedes", "follows", "effective"):
            line = line_of(book, thing, name)
            if line:
                yield fact(label_of(name), plain(line))
        left_out = frozenset({"values"} if isinstance(thing, Change) else ())
        own = in_lines(field_blocks(book, thing, left_out))
        yield from (_titled(book, line) for line in own)
    if isinstance(thing, Change):
        for address, shift in thing.values.items():
            yield fact(address, f"from {shift.before} to {shift.after}")
        yield from _basis(book, thing)
    blocks = text_blocks(draft, thing.text, thing.where, thing.text_line)
    text = tuple(in_lines(blocks, lambda words: plain(cell(book, words))))
    if text:
        yield Line(Sort.HEADING, "Its text")
        yield from text
        yield from _sources(draft)
    if thing.gaps:
        yield Line(Sort.HEADING, "Known to be missing")
        yield from (point(plain(cell(book, gap))) for gap in thing.gaps)
    yield from joined_lines(subject)
    yield from drawn_lines(subject)


def _sources(draft: Draft) -> Iterator[Line]:
    """What the numbers in brackets stand for, and how each was read."""
    cited = draft.page().sources
    if cited:
        yield Line(Sort.HEADING, "Sources")
    for one in cited:
        seen = f" ({one.seen})" if one.seen else ""
        yield say(f"[{one.number}] {one.text or one.source}{seen}")


def _titled(book: Book, line: Line) -> Line:
    """A line with the title behind each id and tag, for a reader who has no handbook."""

    def named(found: re.Match[str]) -> str:
        title = title_of(book, found[0])
        return f"{found[0]} ({title})" if title else found[0]

    text = IDENTIFIER.sub(named, line.text) if line.sort in (Sort.FACT, Sort.POINT) else line.text
    return replace(line, text=text)


def _basis(book: Book, change: Change) -> Iterator[Line]:
    """What the decision says that a change carries out."""
    decision = book.records.get(str(change.basis))
    if not isinstance(decision, Decision):
        return
    yield Line(Sort.HEADING, f"{decision.id}, the decision behind it")
    for name in (
        "question",
        "chosen",
        "reasons",
        "accepts",
        "assumptions",
        "reconsider_if",
        "undo",
    ):
        line = line_of(book, decision, name)
        if line:
            yield fact(label_of(name), plain(line))
    for option in decision.options:
        if option.why_not:
            yield fact("not chosen", f"{option.option}: {option.why_not}")


def weight(subject: Subject) -> Part:
    """Its class, and why it has it."""
    record = subject.record
    if record is None:
        lines = [say("A written page has no class of its own; it counts as the gravest it shows.")]
    else:
        lines = [fact("class", class_words(record))]
        if record.affects:
            told = fact("affects", plain(line_of(subject.book, record, "affects")))
            lines.append(_titled(subject.book, told))
    if isinstance(record, Change):
        said = plain(line_of(subject.book, record, "safety")) or "nothing said"
        lines.append(fact("what it does to safety", said))
    return Part("Class and why", tuple(lines))


def hazards_of(subject: Subject) -> list[Hazard]:
    """The hazards at its parts, at what they watch, and in procedures it touches; the worst first."""
    book, record = subject.book, subject.record
    near = {*subject.tags, subject.key}
    for tag in subject.tags:
        part = book.components[tag]
        near.update(str(one) for one in (*part.watches, *part.protects, *part.stops))
    if isinstance(record, Hazard):
        return [record]
    by = {subject.key, *subject.touched.of_kind(book, "procedure")}
    named = {item.to for item in book.mentions if item.by in by}
    found = [
        one
        for one in book.of_kind(Hazard)
        if not has_left(one) and (near & set(one.where_) or str(one.id) in named)
    ]
    ordered = worst_first(found)
    return sorted(ordered, key=lambda one: (signal_word(one) == "NOTICE", one.severity or 0))


def _reached(subject: Subject, hazard: Hazard) -> str:
    """How a hazard comes to stand here."""
    there = {str(one) for one in hazard.where_}
    at = [tag for tag in subject.tags if tag in there]
    if at:
        return f"at {', '.join(at)}"
    watched = [
        f"{one}, which {tag} watches, guards or stops"
        for tag in subject.tags
        for part in (subject.book.components[tag],)
        for one in (*part.watches, *part.protects, *part.stops)
        if one in there
    ]
    named = [item.by for item in subject.book.mentions if item.to == hazard.id]
    procedures = [key for key in dict.fromkeys(named) if key in subject.touched.records]
    if watched:
        return f"at {watched[0]}"
    return f"warned of in {', '.join(procedures)}" if procedures else "named in its own words"


def outcome(subject: Subject) -> Part:
    """The worst that is known to be able to happen at the parts it touches."""
    book, found = subject.book, hazards_of(subject)
    lines: list[Line] = []
    if not found:
        lines.append(
            Line(
                Sort.STRONG,
                "None recorded: no hazard names a part that this touches or watches.",
            )
        )
    for number, one in enumerate(found):
        lines += message_lines(message_of(book, one))
        lines.append(fact("reached", _reached(subject, one)))
        if number >= FULL:
            continue
        severity = (
            f"{one.severity.value} {SEVERITIES[one.severity]}" if one.severity else "not recorded"
        )
        lines += [
            fact("severity", severity),
            fact("hurts", str(one.harms or "not recorded")),
            fact("likelihood", str(one.likelihood or "not recorded")),
            fact("sequence", plain(cell(book, one.sequence)) or "not recorded"),
            fact("who", plain(cell(book, one.who)) or "not recorded"),
        ]
        for control in one.controls:
            proof = f"proved by {control.verified}" if control.verified else "no test proves it"
            lines.append(
                fact("control", f"{plain(cell(book, control.what))} ({control.rank}; {proof})")
            )
    record = subject.record
    if isinstance(record, Change):
        said = plain(line_of(book, record, "safety"))
        lines.append(fact("the change itself says", said or "none recorded"))
    return Part("Worst credible outcome", tuple(lines), cut=8)
