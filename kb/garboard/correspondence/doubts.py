"""What speaks against it, what nobody has looked at yet, and what the reviewer is asked."""

from collections.abc import Iterator

from garboard.calc.value import ASSUMED
from garboard.correspondence.matter import hazards_of
from garboard.correspondence.pack import Line, Part, Sort, fact, say
from garboard.correspondence.reach import moved_words
from garboard.correspondence.subject import Subject
from garboard.records.base import Record
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.finding import Finding
from garboard.records.kinds import kind_of
from garboard.records.procedure import Procedure
from garboard.records.reply import SCOPES
from garboard.records.signoff import Capacity, Verdict, standing_objections
from garboard.records.states import at_rest
from garboard.review.signoffs import JUDGING
from garboard.views.inline import day, person
from garboard.views.tables import stands

__all__ = ["against", "not_checked", "open_findings", "questions", "unchecked"]

SENSES = ("watches", "protects", "stops")


def against(subject: Subject) -> Part:
    """Objections and open findings, to the letter."""
    book, thing = subject.book, subject.thing
    lines: list[Line] = []
    for line in standing_objections(thing.signed):
        lines.append(_who(f"objection of the {person(book, line.by)}, {day(line.on)}"))
        lines.append(Line(Sort.VERBATIM, line.words or "no words given"))
    for one in book.waiting.get(subject.key, ()):
        if one.reply.verdict is Verdict.OBJECT:
            lines.append(_who(f"objection in a reply of {day(one.reply.on)}, not confirmed"))
            lines.append(Line(Sort.VERBATIM, one.reply.words or "no words given"))
    for each in thing.objections if isinstance(thing, Decision) else ():
        lines.append(_who(f"objection of the {person(book, each.by)}"))
        lines.append(Line(Sort.VERBATIM, each.words))
        lines.append(fact("answer", each.answer or "not answered"))
    for found in open_findings(subject):
        state = stands(subject.book, found)
        lines.append(
            _who(
                f"finding {found.id}, {found.title} ({state}, danger {found.danger or 'not stated'})"
            )
        )
        lines.append(Line(Sort.VERBATIM, found.words or "no words given"))
    return Part(
        "Objections and open findings against it", tuple(lines) or (say("None recorded."),), cut=9
    )


def _who(words: str) -> Line:
    return Line(Sort.STRONG, f"{words[:1].upper()}{words[1:]}:")


def open_findings(subject: Subject) -> list[Finding]:
    """Findings that are not at rest, against it or at a part that it is about."""
    near = {subject.key, *subject.tags}
    return [
        one
        for one in subject.book.of_kind(Finding)
        if near & {*one.against, *one.where_}
        and one is not subject.thing
        and not at_rest("finding", subject.book.state(one))
    ]


def unchecked(subject: Subject) -> tuple[str, ...]:
    """What a check says it left out, and no other one covered."""
    covered = {part for line in subject.thing.signed for part in line.scope}
    left = (part for line in subject.thing.signed for part in line.not_checked)
    return tuple(dict.fromkeys(part for part in left if part not in covered))


def not_checked(subject: Subject) -> Part:
    """What nobody has checked so far, and what became of the checks that there were."""
    reviewed = subject.book.reviews.get(subject.key)
    covered = dict.fromkeys(part for line in subject.thing.signed for part in line.scope)
    missing = [one for one in SCOPES if one not in covered]
    lines = [fact("left out by a check", one) for one in unchecked(subject)]
    nothing = "nothing of the usual list"
    lines.append(fact("looked at by nobody so far", ", ".join(missing) or nothing))
    judged = [
        each for each in (reviewed.signatures if reviewed else ()) if each.line.capacity in JUDGING
    ]
    for each in judged:
        line = each.line
        moved = f"; LAPSED since: {'; '.join(map(str, each.moved[:5]))}" if each.moved else ""
        scope = f"looked at {', '.join(line.scope)}" if line.scope else "does not say at what"
        who = f"{line.capacity} of {line.on.isoformat()}"
        lines.append(fact(who, f"{scope}; {line.verdict or 'no verdict stated'}{moved}"))
    if not judged:
        lines.append(Line(Sort.STRONG, "Nobody has checked it yet."))
    return Part("Not checked so far", tuple(lines), cut=10)


def questions(subject: Subject) -> Part:
    """What the reviewer is asked, worked out from all of this."""
    asked = tuple(dict.fromkeys(_asked(subject)))
    lines = tuple(Line(Sort.SAY, f"Q{number}. {text}") for number, text in enumerate(asked, 1))
    return Part("Questions to you", lines or (say("None could be worked out."),), cut=11)


def _asked(subject: Subject) -> Iterator[str]:
    yield from _of_numbers(subject)
    yield from _of_procedures(subject)
    yield from _of_parts(subject)
    for one in unchecked(subject):
        yield f"Nobody has checked: {one}. Can you?"
    for number in subject.numbers:
        if number.guess == ASSUMED:
            yield f"{number.address} is assumed ({number.after}): is that on the safe side?"
        elif number.guess.startswith("rests on"):
            yield f"{number.address} {number.guess}: is that on the safe side?"
    yield from _of_record(subject)


def _of_numbers(subject: Subject) -> Iterator[str]:
    for one in subject.numbers:
        name = one.address + (f" ({one.label})" if one.label else "")
        if one.margin_after is not None and one.margin_after < 0:
            yield f"{name} does not hold its limit, {one.limit}, at the worst: may it be so?"
        elif one.margin_lost > 0:
            falls = f"from {one.margin(one.margin_before)} to {one.margin(one.margin_after)}"
            yield f"The margin of {name} falls {falls}: is that enough?"
        elif one.limit and one.margin_after is None:
            yield f"The margin of {name} is not known: does {one.limit} hold?"


def _of_procedures(subject: Subject) -> Iterator[str]:
    for how in subject.shifts:
        for one in how.weaker:
            yield f"{how.about} got weaker in {moved_words(one)}. Is that on purpose, and safe?"


def _of_parts(subject: Subject) -> Iterator[str]:
    for tag in subject.tags:
        part = subject.book.components[tag]
        for name in SENSES:
            them = getattr(part, name)
            if them:
                said = f"{tag} ({part.name or part.kind})"
                yield f"Which valve position cuts {said} off from what it {name}, {', '.join(them)}?"


def _of_record(subject: Subject) -> Iterator[str]:
    record = subject.record
    if isinstance(record, Change) and record.voids and not record.retests:
        yield f"It voids {', '.join(record.voids)} and names no re-test: what proves it now?"
    if isinstance(record, Procedure):
        yield "At which step could somebody be hurt without having been warned directly before it?"
    for hazard in hazards_of(subject)[:3]:
        unproved = [str(one.what) for one in hazard.controls if not one.verified]
        if unproved:
            yield f"{hazard.id}: no test proves {'; '.join(unproved[:3])}. What shows that it works?"
    if not hazards_of(subject):
        yield "No hazard is recorded at these parts: who could be hurt, and how?"
    for gap in subject.thing.gaps:
        yield f"Known to be missing: {gap}. Can it be judged without?"
    yield "What would have to be true for this to hurt somebody?"


def capacities(record: Record | None) -> tuple[Capacity, ...]:
    """In which capacities somebody could sign it who did not make it."""
    kind = kind_of(record) if record else None
    judges = (Capacity.CHECKER, Capacity.APPROVER, Capacity.VERIFIER, Capacity.NAMED_PARTY)
    if kind is None:
        return (Capacity.CHECKER,)
    known = {move.by for moves in kind.machine.moves.values() for move in moves}
    return tuple(one for one in judges if one in known) or (Capacity.CHECKER,)
