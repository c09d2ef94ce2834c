"""What stands on a quick card, section by section.

A card is made of a procedure, an alarm or a fault; of an isolation it is made of the written procedure
that governs it, because a sheet that a program worked out was reviewed by nobody. Nothing that one does
or sees is left out: where it does not fit, the task is parted over several cards, each with its steps.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from garboard.records.alarm import Alarm, Check, Fault
from garboard.records.base import bare_id
from garboard.records.procedure import Procedure, Second, See, Step
from garboard.records.vessel import Card

__all__ = [
    "MOST_FIRST",
    "MOST_THEN",
    "CardPlan",
    "CardRow",
    "Carded",
    "missing_steps",
    "plan_of",
]

MOST_FIRST: Final = 5
MOST_THEN: Final = 7
SAYS: Final = {"Shut": "shut", "Open": "open", "Start": "running", "Stop": "stopped"}
"""What a verb says already of where a part stands afterwards."""
COMMON: Final = 3
"""So many alike *if not* are said once, before the rows."""
SECOND_WORDS: Final = {
    Second.CONCURRENT: "A second person looks on.",
    Second.INDEPENDENT: "A second person checks it alone.",
}

Carded = Procedure | Alarm | Fault
"""What a card can be made of."""


@dataclass(frozen=True, slots=True)
class CardRow:
    """One thing that is done."""

    number: int
    do: str
    tag: str = ""
    to: str = ""
    place: str = ""
    see: See | None = None
    if_not: str = ""
    second: str = ""
    hold: str = ""

    @property
    def on(self) -> str:
        """The part that the state is seen on, where it is not the one that is worked."""
        return self.see.tag if self.see and self.see.tag and self.see.tag != self.tag else ""


@dataclass(frozen=True, slots=True)
class CardPlan:
    """What stands on one card; texts as written in the record."""

    before: tuple[str, ...] = ()
    """What it means, or what is needed."""
    common_if_not: str = ""
    """What is done wherever a row does not say otherwise."""
    first: tuple[CardRow, ...] = ()
    then: tuple[CardRow, ...] = ()
    text: str = ""
    """What the record says in its text: it stands under *Then*."""
    seen: tuple[tuple[str, str], ...] = ()
    """Tag, which may be empty, and what it shows."""
    stop: tuple[str, ...] = ()
    messages: tuple[str, ...] = ()
    """Ids of hazards."""
    part: int = 1
    parts: int = 1
    of: str = ""
    """Id of the record."""
    task: str = ""
    place: str = ""
    names: bool = True
    """Whether the names of parts stand beside their tags."""

    @property
    def rows(self) -> tuple[CardRow, ...]:
        """Everything that is done."""
        return (*self.first, *self.then)


def plan_of(card: Card, record: Carded, cards: Iterable[Card]) -> CardPlan:
    """Sort what a record says into the sections of a card.

    Args:
        card: The card.
        record: What it is of.
        cards: All cards, to tell which part of its task it is.
    """
    if isinstance(record, Procedure):
        return _of_procedure(card, record, _parts(card, cards))
    if isinstance(record, Alarm):
        rows = tuple(CardRow(at, do) for at, do in enumerate(record.first, 1))
        return CardPlan(
            before=tuple(_alarm_means(record)),
            first=rows,
            text=record.text,
            seen=tuple(_alarm_seen(record)),
            stop=tuple(_alarm_stop(record)),
            of=str(record.id),
            task=record.wording or record.title,
            place=card.place,
        )
    first = (CardRow(1, record.safe_first),) if record.safe_first else ()
    return CardPlan(
        first=first,
        then=tuple(_check(at, one) for at, one in enumerate(record.checks, len(first) + 1)),
        text=record.text,
        stop=(record.stop_when,) if record.stop_when else (),
        of=str(record.id),
        task=record.title,
        place=card.place,
    )


def _steps_of(card: Card, count: int) -> range:
    """The numbers of the steps that stand on a card."""
    if card.steps is None:
        return range(1, count + 1)
    start, _, end = card.steps.partition("-")
    return range(int(start), min(int(end), count) + 1)


def _parts(card: Card, cards: Iterable[Card]) -> tuple[int, int]:
    """Which part of its task a card is, and of how many."""
    alike = {
        one.steps or ""
        for one in cards
        if one.removed is None and bare_id(one.of) == bare_id(card.of)
    }
    parts = sorted(alike - {""}, key=lambda text: int(text.partition("-")[0]))
    return (parts.index(card.steps) + 1, len(parts)) if card.steps in parts else (1, 1)


def _of_procedure(card: Card, record: Procedure, parts: tuple[int, int]) -> CardPlan:
    numbers = _steps_of(card, len(record.steps))
    steps = [(number, record.steps[number - 1]) for number in numbers]
    often = Counter(step.if_not for _, step in steps if step.if_not).most_common(1)
    common = often[0][0] if often and often[0][1] >= COMMON else ""
    rows = tuple(_row(number, step, str(common)) for number, step in steps)
    first = card.first if card.first is not None else _at_first_place(steps)
    part, count = parts
    return CardPlan(
        before=tuple(_needed(record)) if part == 1 else (),
        common_if_not=str(common),
        first=rows[:first],
        then=rows[first:],
        text=record.text if part == count else "",
        seen=tuple(_readings(steps)),
        stop=(record.stop_if,) if record.stop_if else (),
        messages=tuple(dict.fromkeys(str(step.message) for _, step in steps if step.message)),
        part=part,
        parts=count,
        of=str(record.id),
        task=record.title,
        place=card.place,
    )


def _row(number: int, step: Step, common: str) -> CardRow:
    return CardRow(
        number,
        step.do,
        step.tag or "",
        "" if not step.to or SAYS.get(step.do) == step.to else step.to,
        step.at or "",
        step.see,
        "" if step.if_not == common else step.if_not or "",
        SECOND_WORDS.get(step.second, "") if step.second else "",
        step.hold or "",
    )


def _at_first_place(steps: list[tuple[int, Step]]) -> int:
    """How many steps are done where one stands first; five at most."""
    left = next((at for at, (_, step) in enumerate(steps) if at and step.at), len(steps))
    return min(left, MOST_FIRST)


def _needed(record: Procedure) -> Iterator[str]:
    """What must be there before the first step, in one line."""
    listed = ", ".join((*record.ppe, *record.tools, *record.parts))
    people = f"people: {record.people}" if record.people else ""
    force = f"in force: {record.isolation}" if record.isolation else ""
    words = "; ".join(one for one in (people, listed, force) if one)
    if words:
        yield f"{words[0].upper()}{words[1:]}."


def _readings(steps: list[tuple[int, Step]]) -> Iterator[tuple[str, str]]:
    """The last reading on each gauge; where nothing is read, what is seen at the end."""
    found: dict[str, str] = {}
    for number, step in steps:
        if step.see and step.see.tag and step.see.value:
            within = f" within {step.see.within}" if step.see.within else ""
            found[step.see.tag] = f"{step.see.value}{within}, step {number}"
    if not found and steps and steps[-1][1].see and steps[-1][1].see.value:
        found[""] = f"{steps[-1][1].see.value}, step {steps[-1][0]}"
    yield from found.items()


def _alarm_means(record: Alarm) -> Iterator[str]:
    if record.means:
        yield f"It means: {record.means}."
    if record.consequence:
        yield f"If nobody acts: {record.consequence}."
    if record.automatic:
        yield f"By itself: {record.automatic}."


def _alarm_seen(record: Alarm) -> Iterator[tuple[str, str]]:
    if record.tag and record.set:
        side = "below" if record.direction == "low" else "above"
        yield record.tag, f"alarm {side} [](value:{record.set})"
    if record.confirm:
        yield "", record.confirm


def _alarm_stop(record: Alarm) -> Iterator[str]:
    if record.time_to_act:
        yield f"it still stands after {record.time_to_act}"
    yield "one of these lines cannot be done"


def _check(number: int, one: Check) -> CardRow:
    see = See(value=one.see) if one.see else None  # type: ignore[arg-type]  # words as well
    said = [f"If so: {one.yes}" if one.yes else "", f"If not: {one.no}" if one.no else ""]
    return CardRow(number, one.do, one.tag or "", see=see, hold="; ".join(filter(None, said)))


def missing_steps(record: Procedure, cards: Iterable[Card]) -> tuple[int, ...]:
    """The steps of a procedure that stand on none of its cards that hang."""
    of = [one for one in cards if one.removed is None and bare_id(one.of) == str(record.id)]
    shown = {number for one in of for number in _steps_of(one, len(record.steps))}
    return tuple(number for number in range(1, len(record.steps) + 1) if number not in shown)
