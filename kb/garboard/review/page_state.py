"""The review state of a page, in words with the reason: the worst of what stands against it.

A page shows parts: the record or text that it is, and the records that it draws on. Each part needs
signatures that stand: class A a checker and an approver, two persons; class B and written pages a
checker; class C none. Where the moves of a kind know no checker, an approver, a verifier or the named
party speaks in that place: only class C asks for nobody.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import IntEnum

from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class, Record
from garboard.records.finding import Finding
from garboard.records.kinds import kind_of
from garboard.records.pages import WrittenPage
from garboard.records.reply import Waiting
from garboard.records.signoff import Capacity, SignOff, Verdict, standing_objections
from garboard.records.standing import has_left
from garboard.records.vessel import Notice
from garboard.review.proof import Proof
from garboard.review.signoffs import Moved, Reviewed, Weighed

__all__ = ["TOLD_BELOW", "PageState", "Part", "Standing", "page_state", "standing_of"]

NEVER = "NOT REVIEWED. Nobody has checked this page."
UNPROVED = "NOT REVIEWED. Its signatures cannot be proved here: ssh-keygen is not on this machine."
TOLD_BELOW = ("sign-off-lapsed", "rests-on-lapsed", "scope-too-narrow", "approved-result-moved")
"""Faults that the state of the signatures itself tells, in its own words."""
GRAVE = (Severity.STOP, Severity.HOLD)
MOST_SHOWN = 3
JUDGES = (Capacity.CHECKER, Capacity.APPROVER)
OTHERS = (Capacity.VERIFIER, Capacity.NAMED_PARTY)
"""Who judges where a kind has neither."""
MONTHS = (
    "January February March April May June July August September October November December".split()
)


@dataclass(frozen=True, slots=True)
class PageState:
    """How far a page may be relied on."""

    words: str
    trusted: bool
    brief: str = ""
    """The words without their details, where they have any: for a page that is read in a hurry."""


class Standing(IntEnum):
    """How far one part is reviewed, the worst first."""

    NEVER = 0
    LAPSED = 1
    PARTLY = 2
    REVIEWED = 3
    NOT_ASKED = 4
    """Of class C, or of a kind that nobody checks."""


@dataclass(frozen=True, slots=True)
class Part:
    """One record or written page that a page shows."""

    thing: Record | WrittenPage
    reviewed: Reviewed
    waiting: tuple[Waiting, ...] = ()
    """Replies about it that nobody has confirmed yet."""

    @property
    def wanted(self) -> tuple[Capacity, ...]:
        """The capacities in which somebody must have signed."""
        if isinstance(self.thing, WrittenPage):
            return (Capacity.CHECKER,)
        kind = kind_of(self.thing)
        if kind is None:
            return (Capacity.CHECKER,)
        known = {move.by for moves in kind.machine.moves.values() for move in moves}
        judges = [each for each in (*JUDGES, *OTHERS) if each in known]
        if self.thing.weight is Class.A:
            return tuple(each for each in judges if each in JUDGES) or tuple(judges[:1])
        return tuple(judges[:1]) if self.thing.weight is Class.B else ()

    @property
    def objections(self) -> tuple[SignOff, ...]:
        """The objections that stand; against what has left nobody need object any more."""
        left = isinstance(self.thing, Record) and has_left(self.thing)
        return () if left else standing_objections(self.thing.signed)

    @property
    def unconfirmed(self) -> tuple[Waiting, ...]:
        """Replies that object: shown at once, because they can only make things worse."""
        left = isinstance(self.thing, Record) and has_left(self.thing)
        objecting = (one for one in self.waiting if one.reply.verdict is Verdict.OBJECT)
        return () if left else tuple(objecting)


def standing_of(part: Part) -> Standing:
    """How far one part is reviewed."""
    wanted, reviewed = part.wanted, part.reviewed
    if not wanted:
        leans = reviewed.rests_on and any(each.stands for each in reviewed.signatures)
        return Standing.LAPSED if reviewed.lapsed or leans else Standing.NOT_ASKED
    counting = {each.line.capacity for each in reviewed.signatures if each.counts}
    if not set(wanted) <= counting or _objected(part) or not _enough_persons(part):
        return Standing.NEVER
    if reviewed.lapsed or reviewed.rests_on:
        return Standing.LAPSED
    return Standing.PARTLY if reviewed.not_checked else Standing.REVIEWED


def _objected(part: Part) -> Weighed | None:
    """The newest word of somebody who was to judge it, where that is against it."""
    against = (Verdict.OBJECT, Verdict.FINDING)
    counting = (each for each in part.reviewed.signatures if each.counts)
    return next((each for each in counting if each.line.verdict in against), None)


def _enough_persons(part: Part) -> bool:
    """Whether each wanted capacity was held by another person, be it that what they saw has moved."""
    able = (*part.wanted, *JUDGES)
    counting = (each.line for each in part.reviewed.signatures if each.counts)
    return len({line.by for line in counting if line.capacity in able}) >= len(part.wanted)


def _held(part: Part) -> tuple[Weighed, ...]:
    """The signatures that stand in the capacities that are wanted, or that judged beside them."""
    return part.reviewed.standing(*part.wanted, *JUDGES)


def page_state(
    keys: frozenset[str],
    notices: Iterable[Notice],
    findings: Iterable[Finding],
    parts: Iterable[Part] = (),
    faults: Iterable[Diagnostic] = (),
) -> PageState:
    """Work out the state of a page.

    Args:
        keys: Ids and tags that the page is about.
        notices: Notices to holders.
        findings: Findings that are still open.
        parts: What it shows.
        faults: What the rules found against it.

    Returns:
        The first that applies of: withdrawn by notice, an open class A finding, an objection that stands,
        one that waits to be confirmed, a fault that holds it, never reviewed, lapsed, partly reviewed,
        reviewed.
    """
    for notice in notices:
        if notice.withdrawn is None and keys & set(notice.against):
            words = f"DO NOT USE. Notice {notice.number} to holders stands against this page: {notice.says}"
            return PageState(words, trusted=False)
    for finding in findings:
        if finding.weight is Class.A and keys & {*finding.where_, *finding.against}:
            brief = f"NOT SAFE TO RELY ON. Open safety finding {finding.id}"
            words = f"{brief}: {finding.title}."
            return PageState(words, trusted=False, brief=f"{brief}.")
    shown = [*parts]
    objecting = next((line for part in shown for line in part.objections), None)
    if objecting:
        said = f"The {objecting.capacity}'s objection of {_day(objecting.on)} stands"
        words = f": \u201c{objecting.words}\u201d" if objecting.words else "."
        return PageState(
            f"NOT REVIEWED. {said}{words}", trusted=False, brief=f"NOT REVIEWED. {said}."
        )
    written = next((one for part in shown for one in part.unconfirmed), None)
    if written:
        on = f" of {_day(written.reply.on)}" if written.reply.on else ""
        said = f"An objection in a reply{on} waits to be confirmed"
        words = f": \u201c{written.reply.words}\u201d" if written.reply.words else "."
        return PageState(
            f"NOT REVIEWED. {said}{words}", trusted=False, brief=f"NOT REVIEWED. {said}."
        )
    held = next((each for each in faults if _holds(each)), None)
    if held:
        return PageState(f"NOT REVIEWED. {held.text[:1].upper()}{held.text[1:]}.", trusted=False)
    return _of_parts(shown)


def _holds(fault: Diagnostic) -> bool:
    return fault.severity in GRAVE and fault.code not in TOLD_BELOW


def _of_parts(parts: list[Part]) -> PageState:
    """The state that the signatures give."""
    states = {id(part): standing_of(part) for part in parts}
    worst = min(states.values(), default=Standing.NEVER)
    at_worst = [part for part in parts if states[id(part)] is worst]
    asked = [part for part in parts if states[id(part)] is not Standing.NOT_ASKED]
    match worst:
        case Standing.NEVER:
            return PageState(_never(parts, at_worst), trusted=False)
        case Standing.LAPSED:
            words = _lapsed(at_worst)
            brief = f"{words.partition(' (')[0]}." if words.endswith(").") else ""
            return PageState(words, trusted=False, brief=brief)
        case Standing.PARTLY:
            left_out = dict.fromkeys(
                name for part in at_worst for name in part.reviewed.not_checked
            )
            words = f"PARTLY REVIEWED {_day(_last(asked))}. Not checked: {', '.join(left_out)}."
            return PageState(words, trusted=False)
        case Standing.REVIEWED:
            people = {each.line.by for part in asked for each in _held(part)}
            count = {1: "one person", 2: "two people"}.get(len(people), f"{len(people)} people")
            words = f"Reviewed {_day(_last(asked))} by {count}. Nothing it rests on has changed."
            return PageState(words, trusted=True)
    return PageState(
        "No review is asked for: nothing here can hurt or stop anything.", trusted=True
    )


def _never(parts: list[Part], unchecked: list[Part]) -> str:
    """Which of several parts has not been reviewed; of one, what is wanting."""
    if any(each.proof is Proof.UNKNOWN for part in unchecked for each in part.reviewed.signatures):
        return UNPROVED
    names = [_called(part.reviewed.key) for part in unchecked]
    if not names:
        return NEVER
    if len(parts) == 1:
        return _wanting(unchecked[0])
    more = f" and {len(names) - MOST_SHOWN} more" if len(names) > MOST_SHOWN else ""
    listed = f"{', '.join(names[:MOST_SHOWN])}{more}"
    if any(_judged(part) for part in unchecked):
        return f"NOT REVIEWED. Nobody has finished the review of {listed}."
    return f"NOT REVIEWED. Nobody has checked {listed}."


def _called(key: str) -> str:
    """A record by its id; a written page, which has none, not by the way to its file."""
    return "its written text" if key.endswith(".md") else key


def _judged(part: Part) -> list[Weighed]:
    """Every signature of somebody who judged it, counting or not."""
    return [each for each in part.reviewed.signatures if each.line.capacity in part.wanted]


def _wanting(part: Part) -> str:
    """Why one part is not reviewed."""
    judged = _judged(part)
    against = _objected(part)
    if against:
        line = against.line
        return f"NOT REVIEWED. The {line.capacity} of {_day(line.on)} found against it."
    if not judged:
        return NEVER
    counting = {each.line.capacity for each in judged if each.counts}
    if not counting:
        last = max(each.line.on for each in judged)
        state = part.reviewed.state
        words = f"Last signed {_day(last)}; what changed since is not weighed once it is {state}."
        return f"NOT REVIEWED. {words}"
    open_ = next((each for each in part.wanted if each not in counting), None)
    if open_:
        return f"NOT REVIEWED. Nobody has signed it as {open_}."
    return "NOT REVIEWED. One person checked and approved it; two are wanted."


def _lapsed(parts: list[Part]) -> str:
    """What changed since the review, with both values; or what it rests on that lapsed."""
    moved: dict[str, Moved] = {}
    for part in parts:
        for each in part.reviewed.lapsed:
            for one in each.moved:
                moved.setdefault(
                    f"{part.reviewed.key} {one.what}" if not one.is_value else one.what, one
                )
    if not moved:
        names = list(dict.fromkeys(name for part in parts for name in part.reviewed.rests_on))
        return (
            f"NOT REVIEWED. It rests on {', '.join(names[:MOST_SHOWN])}, whose review has lapsed."
        )
    dates = [each.line.on for part in parts for each in part.reviewed.lapsed]
    shown = "; ".join(_told(one) for one in list(moved.values())[:MOST_SHOWN])
    things = "1 thing" if len(moved) == 1 else f"{len(moved)} things"
    return f"NOT REVIEWED. Review of {_day(max(dates))} has lapsed: {things} changed ({shown})."


def _told(moved: Moved) -> str:
    return (
        f"{moved.what} {moved.before or 'not seen'} to {moved.after or 'gone'}"
        if moved.is_value
        else moved.what
    )


def _last(parts: list[Part]) -> date:
    return max(each.line.on for part in parts for each in _held(part))


def _day(day: date) -> str:
    """A day in words, the same under every locale."""
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"
