"""How a pack is kept small enough to be mailed: shortened in a stated order, never in silence.

What is left out is said where it is missing and at the head. The class, the questions of the form and
what a reply is bound to are never left out; where even that does not fit, nothing is written.
"""

from collections.abc import Callable
from dataclasses import replace

from garboard.correspondence.pack import Pack, Part
from garboard.errors import GarboardError

__all__ = ["LARGEST", "MORE", "fitted"]

LARGEST = 200_000
"""Bytes; what still goes through a slow link and a full mailbox."""
MORE = "Left out here to keep the file small: {} more lines. They stand in the handbook."
KEPT = (200, 60, 20, 5)
"""Lines that are kept of a part, from one round to the next."""


def fitted(pack: Pack, write: Callable[[Pack], str], largest: int = LARGEST) -> str:
    """Write a pack, shortened until it fits.

    Args:
        pack: In full.
        write: How it is written.
        largest: Bytes that it may have.

    Raises:
        GarboardError: What must not be left out is too large by itself.
    """
    text = write(pack)
    for keep in KEPT:
        for turn in sorted({part.cut for part in pack.parts if part.cut}):
            if len(text.encode("utf-8")) <= largest:
                return text
            parts = tuple(_turned(part, turn, keep) for part in pack.parts)
            if parts != pack.parts:
                pack = replace(pack, parts=parts, left_out=_said(parts))
                text = write(pack)
    size = len(text.encode("utf-8"))
    if size <= largest:
        return text
    biggest = max(pack.parts, key=lambda part: sum(len(line.text) for line in part.lines))
    raise GarboardError(
        f"the pack has {size} bytes when all that may be left out is, more than {largest}; most of it "
        f"is in `{biggest.title}`: shorten that in the record, or pack what it rests on by itself"
    )


def _turned(part: Part, turn: int, keep: int) -> Part:
    return part.shortened(keep) if part.cut == turn else part


def _said(parts: tuple[Part, ...]) -> tuple[str, ...]:
    out = sorted((part for part in parts if part.left_out), key=lambda part: part.cut)
    told = "; ".join(f"{part.title}: {part.left_out} lines" for part in out)
    order = ", ".join(part.title for part in sorted(parts, key=lambda one: one.cut) if part.cut)
    return (f"SHORTENED to fit a mail. Left out: {told}.", f"Shortened in this order: {order}.")
