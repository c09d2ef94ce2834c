"""What moved a number or a margin, in lines that stand on a page, on a screen and in a mail alike."""

from collections.abc import Iterator

from garboard.changes.comparison import Alone, Comparison, Input, Limit, Number, Side
from garboard.changes.inputs import NEW_LINE

__all__ = ["causes_of", "input_line", "inputs_apart", "side_words", "verdict_line"]

SAME = "no change"


def inputs_apart(found: Comparison) -> tuple[tuple[Input, ...], tuple[Input, ...]]:
    """The inputs that have something to tell, and the new ones that nothing used and no record names.

    Of the second sort a new calculation brings dozens: they are named, and not told one by one.
    """
    plain = [one for one in found.inputs if one.not_tried == NEW_LINE and not one.behind]
    told = (one for one in found.inputs if one not in plain)
    return tuple(told), tuple(plain)


def input_line(one: Input) -> str:
    """An input with what it was and is: `receiver-sizing.p_max 30 bar(g) -> 28 bar(g)`."""
    if not one.before:
        return f"{one.address} {one.after} (new)"
    if not one.after:
        return f"{one.address} {one.before} (gone)"
    return f"{one.address} {one.before} -> {one.after}"


def causes_of(found: Comparison, thing: Number | Limit, *, brief: bool = False) -> Iterator[str]:
    """What each changed input does alone, what all do together, and what only together.

    Args:
        found: The comparison it is of.
        thing: A number or a limit of it.
        brief: Name the inputs, and leave it to another list what they were and are.
    """
    for alone in thing.alone:
        one = found.inputs[alone.input]
        yield f"{one.address if brief else input_line(one)}, alone: {_did(alone)}"
    if isinstance(thing, Limit) or not thing.alone:
        return
    if len(thing.alone) > 1:
        yield f"together: {thing.before} -> {thing.after}"
    if thing.rest:
        yield f"{thing.rest} comes only from changes together"


def _did(alone: Alone) -> str:
    if not alone.change:
        return f"{alone.text}, {SAME}"
    return alone.text if alone.change == alone.text else f"{alone.text} ({alone.change})"


def verdict_line(limit: Limit) -> str:
    """How a requirement stood and stands, with its margin.

    >>> from garboard.changes.comparison import Limit
    >>> verdict_line(Limit(block="a", before="n >= 6", after="n >= 6", stood="fails", stands="fails",
    ...     margin_before="-1", margin_after="-2", lost="1"))
    'fails; margin -1 -> -2, lost 1'
    """
    if not limit.before:
        return f"new: {limit.stands}, margin {limit.margin_after}"
    if not limit.after:
        return f"nobody asks it any more; it stood: {limit.stood}, margin {limit.margin_before}"
    same = limit.stood == limit.stands
    verdict = limit.stands if same else f"{limit.stood} -> {limit.stands}"
    margin = f"margin {limit.margin_before}"
    if limit.margin_before != limit.margin_after:
        margin += f" -> {limit.margin_after}"
    gained = limit.lost.startswith("-")
    lost = f"gained {limit.lost[1:]}" if gained else f"lost {limit.lost}"
    return f"{verdict}; {margin}{f', {lost}' if limit.lost else ''}"


def side_words(side: Side, at_hand: str) -> str:
    """One of the two books: `edition 3 of 2031-10-01`.

    Args:
        side: Which.
        at_hand: What the book at hand is called.
    """
    name = f"edition {side.edition}" if side.edition else at_hand
    return f"{name} of {side.on.isoformat()}"
