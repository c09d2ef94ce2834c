"""What each changed input does to each result alone, and what the changes only do together."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from garboard.book import Book
from garboard.calc.show import show_range
from garboard.calc.value import Requirement, Value
from garboard.changes.behind import Behind
from garboard.changes.comparison import Alone, Input, Limit, Number, Sort
from garboard.changes.differences import change_of, show_change
from garboard.changes.numbers import bits_of, number_of
from garboard.changes.replay import Trial
from garboard.changes.requirements import margin_words

__all__ = ["balanced_numbers", "inputs_of", "traced_limits", "traced_numbers"]

HAIR = 1e-9
"""Relative: the last figures of a float are no remainder."""
NOT_TRIED = ", or what could not be tried alone,"


def inputs_of(trials: Iterable[Trial], behind: Behind) -> tuple[Input, ...]:
    """The changed inputs, each with who is behind it."""
    return tuple(
        Input(
            address=one.exchange.address,
            before=one.exchange.before,
            after=one.exchange.after,
            not_tried=one.not_tried,
            behind=behind.of(one.exchange.address),
        )
        for one in trials
    )


def traced_numbers(
    numbers: Iterable[Number], old: Book, new: Book, trials: Sequence[Trial], behind: Behind
) -> Iterator[Number]:
    """The numbers that moved, each worked one with what did it."""
    for one in numbers:
        told = replace(one, behind=behind.of(one.address))
        if one.sort is not Sort.MOVED or one.given:
            yield told
            continue
        yield _traced(told, old, new, trials)


def balanced_numbers(old: Book, new: Book, trials: Sequence[Trial]) -> Iterator[Number]:
    """Worked values that are the same, although some changed input alone would have moved them."""
    moved = dict.fromkeys(
        address
        for trial in trials
        for address, value in trial.values.items()
        if not value.given and address in old.values and _differs(old.values[address], value)
    )
    for address in moved:
        before, after = old.values[address], new.values.get(address)
        if after is None or number_of(address, before, after):
            continue
        number = Number(
            address=address,
            label=after.label,
            sort=Sort.BALANCED,
            given=False,
            before=before.text,
            after=after.text,
        )
        yield _traced(number, old, new, trials)


def traced_limits(limits: Iterable[Limit], old: Book, trials: Sequence[Trial]) -> Iterator[Limit]:
    """The requirements that moved, each with what did it."""
    known = {(one.block, one.text): one for one in old.network.requirements}
    for limit in limits:
        before = known.get((limit.block, limit.before))
        if before is None or not limit.after:
            yield limit
            continue
        yield replace(limit, alone=tuple(_judged_alone(limit, before, trials)))


def _judged_alone(limit: Limit, before: Requirement, trials: Sequence[Trial]) -> Iterator[Alone]:
    for at, trial in enumerate(trials):
        texts = (limit.after, limit.before) if trial.exchange.requires else (limit.before,)
        judged = {one.text: one for one in trial.requirements if one.block == limit.block}
        found = next((judged[text] for text in texts if text in judged), None)
        if found is None:
            continue
        words, was = margin_words(found), margin_words(before)
        if words != was or found.text != before.text:
            yield Alone(input=at, text=words, change="" if words == was else words)


def _traced(number: Number, old: Book, new: Book, trials: Sequence[Trial]) -> Number:
    before, after = old.values[number.address], new.values[number.address]
    upstream = {
        *old.network.upstream(number.address),
        *new.network.upstream(number.address),
        number.address,
    }
    alone, shares, untried = [], [], False
    for at, trial in enumerate(trials):
        reaches = _among(trial.exchange.address, upstream)
        if trial.not_tried:
            untried |= reaches
            continue
        value = trial.values.get(number.address, before)
        if not reaches and not _differs(before, value):
            continue
        alone.append(Alone(input=at, text=value.text, change=_change(before, value)))
        shares.append(value)
    rest = _rest(before, after, shares)
    if rest and untried:
        rest += NOT_TRIED
    return replace(number, alone=tuple(alone), rest=rest)


def _among(address: str, upstream: set[str]) -> bool:
    """Whether an input, or a result of the method that it calls, is one of some addresses."""
    return address in upstream or any(each.startswith(f"{address}.") for each in upstream)


def _differs(before: Value, value: Value) -> bool:
    return bits_of(before) != bits_of(value)


def _change(before: Value, value: Value) -> str:
    if not _differs(before, value):
        return ""
    if before.text == value.text and show_range(before) != show_range(value):
        return f"only its range: {show_range(value)}"
    return change_of(before, value) or value.text


def _rest(before: Value, after: Value, alone: Sequence[Value]) -> str:
    """What the sum of the changes alone leaves over; empty where it leaves nothing."""
    if before.si is None or after.si is None or before.type.kind is not after.type.kind:
        return ""
    shares = [value.si - before.si for value in alone if value.si is not None]
    if len(shares) != len(alone):
        return ""
    rest = after.si - before.si - sum(shares)
    scale = max(abs(before.si), abs(after.si), *(abs(one) for one in shares), 0.0)
    if abs(rest) <= HAIR * scale:
        return ""
    whole = before.whole and after.whole and not after.unit.text
    return show_change(rest, after.unit, whole=whole)
