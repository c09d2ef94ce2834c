"""One hazard before and after: its signal word, how grave, its controls, its message."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.sequences import pair_up
from garboard.changes.telling import Told, present, ranked, worded
from garboard.changes.wording import spoken
from garboard.records.hazard import Control, Gravity, Hazard, IfIgnored, Likelihood, Message, Rank
from garboard.records.signal_word import SIGNAL_WORDS, signal_word

__all__ = ["hazard_cautions"]


def hazard_cautions(old: Book, new: Book, before: Hazard, after: Hazard) -> Iterator[Told]:
    """Everything about a hazard that warns otherwise than before."""
    words = signal_word(before), signal_word(after)
    fell = SIGNAL_WORDS.index(words[0]) - SIGNAL_WORDS.index(words[1])
    yield from ranked("signal word", *words, fell)
    yield from _gravity("severity", before.severity, after.severity)
    yield from _likelihood("likelihood", before.likelihood, after.likelihood)
    left = before.residual, after.residual
    grave = (one.severity if one else None for one in left)
    often = (one.likelihood if one else None for one in left)
    yield from _gravity("severity that is left", *grave)
    yield from _likelihood("likelihood that is left", *often)
    yield from _ignored(before.if_ignored, after.if_ignored)
    yield from _controls(old, new, before.controls, after.controls)
    yield from _message(old, new, before.message, after.message)


def _gravity(what: str, before: Gravity | None, after: Gravity | None) -> Iterator[Told]:
    """What nobody has stated counts as the gravest."""
    rank = int(before or Gravity.CATASTROPHIC) - int(after or Gravity.CATASTROPHIC)
    texts = [str(int(one)) if one else "" for one in (before, after)]
    yield from ranked(what, texts[0], texts[1], rank)


def _likelihood(what: str, before: Likelihood | None, after: Likelihood | None) -> Iterator[Told]:
    order = list(Likelihood)
    rank = order.index(before or Likelihood.A) - order.index(after or Likelihood.A)
    yield from ranked(what, str(before or ""), str(after or ""), rank)


def _ignored(before: IfIgnored | None, after: IfIgnored | None) -> Iterator[Told]:
    rank = (after is not IfIgnored.COULD) - (before is not IfIgnored.COULD)
    yield from ranked("whether it will hurt if ignored", str(before or ""), str(after or ""), rank)


def _controls(
    old: Book, new: Book, before: tuple[Control, ...], after: tuple[Control, ...]
) -> Iterator[Told]:
    order = list(Rank)
    rows = [spoken(old, one.what) for one in before], [spoken(new, one.what) for one in after]
    for pair in pair_up(*rows):
        one = before[pair.before] if pair.before is not None else None
        other = after[pair.after] if pair.after is not None else None
        texts = (
            f"{one.rank}: {spoken(old, one.what)}" if one else "",
            f"{other.rank}: {spoken(new, other.what)}" if other else "",
        )
        if one is None or other is None:
            yield from present("control", *texts)
        elif one.rank is not other.rank:
            rank = order.index(one.rank) - order.index(other.rank)
            yield from ranked("rank of a control", *texts, rank)
        else:
            yield from worded("control", *texts)
        if one and other:
            proofs = str(one.verified or ""), str(other.verified or "")
            yield from worded("proof that a control works", *proofs)


def _message(old: Book, new: Book, before: Message | None, after: Message | None) -> Iterator[Told]:
    for name in ("hazard", "harm", "avoid"):
        told = (
            spoken(old, getattr(before, name)) if before else "",
            spoken(new, getattr(after, name)) if after else "",
        )
        yield from worded(f"message, what it says of {SAYS[name]}", *told)


SAYS = {"hazard": "the hazard", "harm": "the harm", "avoid": "how to avoid it"}
