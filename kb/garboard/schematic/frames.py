"""Dotted frames round what stands on a mount that moves, with the reason."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from garboard.records.system import Moves
from garboard.schematic.labels import Labelling, words_wide
from garboard.schematic.nets import Piece
from garboard.schematic.sheet import STEP, Box, Frame
from garboard.systems.plant import Plant

__all__ = ["framed"]

AIR = STEP // 2
LINE = 16


def framed(plant: Plant, labelling: Labelling) -> Iterator[Frame]:
    """A frame a mount; one a part where a common one would go round others too.

    Args:
        plant: The system.
        labelling: The sheet, with the room that is taken.
    """
    pieces = labelling.place.circuit.pieces
    for mount, recorded in (plant.system.mounts or {}).items():
        if recorded.moves is not Moves.ALWAYS:
            continue
        on_it = [p for p in pieces if p.part and plant.components[p.name].mount == mount]
        if not on_it:
            continue
        words = f"moves: {recorded.why}" if recorded.why else f"moves: {mount}"
        together = _apart(_round(on_it, labelling), on_it, labelling)
        for group in [on_it] if together else [[piece] for piece in on_it]:
            names = {piece.name for piece in group}
            close = _round(group, labelling)
            words_too = _round(
                group, labelling, [one.box for one in labelling.labels if one.of in names]
            )
            box = close
            for side in ("left", "top", "right", "bottom"):
                wider = replace(box, **{side: getattr(words_too, side)})
                box = wider if _apart(wider, group, labelling) else box
            yield _frame(mount, words, box, labelling)


def _round(group: list[Piece], labelling: Labelling, more: Iterable[Box] = ()) -> Box:
    boxes = [*(labelling.box_of(piece) for piece in group), *more]
    return Box(
        min(box.left for box in boxes) - AIR,
        min(box.top for box in boxes) - AIR,
        max(box.right for box in boxes) + AIR,
        max(box.bottom for box in boxes) + AIR,
    )


def _apart(frame: Box, group: list[Piece], labelling: Labelling) -> bool:
    """Whether a frame goes round nothing but some parts and their words."""
    names = {piece.name for piece in group}
    others = [piece for piece in labelling.place.circuit.pieces if piece not in group]
    words = [one.box for one in labelling.labels if one.of not in names]
    return not any(_meet(frame, box) for box in [*map(labelling.box_of, others), *words])


def _meet(one: Box, other: Box) -> bool:
    across = one.left < other.right and other.left < one.right
    return across and one.top < other.bottom and other.top < one.bottom


def _frame(mount: str, words: str, box: Box, labelling: Labelling) -> Frame:
    """The frame, and its words at the first of its edges that has room."""
    wide = words_wide((words,), bold=False)
    edges = (box.bottom + 2, box.top - 2 - LINE)
    starts = (box.left, box.right - wide, (box.left + box.right - wide) // 2)
    for further in range(0, 8 * STEP, STEP // 2):
        for start in starts:
            for top, way in zip(edges, (1, -1), strict=True):
                room = Box(start, top + way * further, start + wide, top + way * further + LINE)
                if labelling.taken.free(room):
                    labelling.taken.add(room)
                    return Frame(mount, words, box, (room.left, room.bottom - 4))
    labelling.missed += 1
    return Frame(mount, words, box, (box.left, box.bottom + LINE))
