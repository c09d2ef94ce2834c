"""Which sheet everything stands on: cut at headers and at long pipes, where the fewest pipes are cut.

Two orders are tried for a cut: from left to right, and by branches in the order of the file. What is cut
is cut again until nothing is too large.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from garboard.schematic.columns import columns_of
from garboard.schematic.nets import Circuit, Net, Piece
from garboard.schematic.sheet import MOST_PARTS
from garboard.schematic.stand import Captions
from garboard.schematic.trunk import Trunk, trunk_of

__all__ = ["sheets_of"]

UNNAMED = 1.5
"""What it costs to cut a pipe that has no name; one with a name costs 1."""
TOO_LARGE = 8.0
"""What it costs that a side must be cut again."""
UNEVEN = 2.0
"""What it costs to leave a side nearly empty."""
FOR_ENDS = 12
"""Steps that named ends and their words take on a sheet that was cut."""
FEWEST = 3
"""Parts on a sheet, less is not worth one."""


def sheets_of(circuit: Circuit, captions: Captions, wide: int) -> Mapping[Piece, int]:
    """Number of the sheet of each piece, from 1.

    Args:
        circuit: The whole system.
        captions: The words beside each piece.
        wide: Steps across that a sheet may have.
    """
    sheets: dict[Piece, int] = dict.fromkeys(circuit.pieces, 1)
    if any(piece.pin for piece in circuit.pieces):
        wide = max(wide, 1000)
    done = 0
    count = 1
    while done < count:
        done += 1
        own = [piece for piece in circuit.pieces if sheets[piece] == done]
        moved = _to_move(circuit, sheets, done, captions, wide) if len(own) > FEWEST else set()
        if not moved:
            continue
        for piece, number in sheets.items():
            if number > done:
                sheets[piece] = number + 1
        for piece in moved:
            sheets[piece] = done + 1
        count += 1
        done -= 1
    return sheets


@dataclass(frozen=True, slots=True)
class _Cut:
    """A way to cut a sheet in two."""

    cost: float
    left: frozenset[Piece]


def _to_move(
    circuit: Circuit, sheets: Mapping[Piece, int], number: int, captions: Captions, wide: int
) -> set[Piece]:
    """What must leave a sheet that is too large; empty where it is not."""
    own = Circuit(
        tuple(piece for piece in circuit.pieces if sheets[piece] == number),
        tuple(_within(circuit, sheets, number)),
    )
    trunk = trunk_of(own)
    x = columns_of(trunk, captions, -1).x
    across = {piece: x[piece] for piece in own.pieces if piece in x}
    left = min(at - piece.shape.half_width for piece, at in across.items())
    right = max(at + piece.shape.half_width for piece, at in across.items())
    if right - left <= wide and sum(piece.part for piece in own.pieces) <= MOST_PARTS:
        return set()
    with_it = _companions(trunk)
    row_of = {piece: at for at, strand in enumerate(trunk.strands) for piece in strand.pieces}
    orders = (
        sorted(across, key=lambda piece: across[piece]),
        sorted(across, key=lambda piece: row_of.get(piece, -1)),
    )
    cuts = [cut for order in orders for cut in _cuts(own, order, with_it, across, wide)]
    if not cuts:
        return set()
    left_side = set(min(cuts, key=lambda cut: cut.cost).left)
    for strand in trunk.strands:
        row = [one for piece in strand.pieces for one in (piece, *with_it.get(piece, ()))]
        _move_if_better(own, row, left_side)
    return {piece for piece in own.pieces if piece not in left_side}


def _move_if_better(circuit: Circuit, row: list[Piece], left: set[Piece]) -> None:
    """Move a row to the other sheet where fewer pipes are cut then, or as many and the sheets are more even."""
    if len({piece in left for piece in row}) > 1:
        return
    other = left.difference(row) if row[0] in left else left.union(row)
    if min(len(other), len(circuit.pieces) - len(other)) < FEWEST:
        return
    cost, uneven = _cost(circuit, left)
    if (cost, uneven) > _cost(circuit, other):
        left.symmetric_difference_update(row)


def _cost(circuit: Circuit, left: set[Piece]) -> tuple[float, int]:
    """What a cut costs, and how uneven it is."""
    cost = 0.0
    for net in circuit.nets:
        sides = {end.piece in left for end in net.ends}
        cost += (1.0 if net.headers else UNNAMED) if len(sides) > 1 else 0.0
    return cost, abs(len(circuit.pieces) - 2 * len(left))


def _within(circuit: Circuit, sheets: Mapping[Piece, int], number: int) -> Iterator[Net]:
    """The nets of a sheet, less what they join elsewhere."""
    for net in circuit.nets:
        ends = [end for end in net.ends if sheets[end.piece] == number]
        if ends:
            yield Net(net.node, net.service, ends, net.headers)


def _companions(trunk: Trunk) -> dict[Piece, list[Piece]]:
    """What stands on each piece, and goes where it goes."""
    found: dict[Piece, list[Piece]] = {}
    for tower in trunk.towers:
        own = trunk.trunk_ends[tower.net]
        if own:
            found.setdefault(own[0].piece, []).extend(tower.pieces)
    return found


def _cuts(
    circuit: Circuit,
    order: Sequence[Piece],
    with_it: Mapping[Piece, list[Piece]],
    across: Mapping[Piece, int],
    wide: int,
) -> Iterator[_Cut]:
    """Every cut of an order, with what it costs."""
    place: dict[Piece, int] = {}
    for at, piece in enumerate(order):
        for one in (piece, *with_it.get(piece, ())):
            place[one] = at
    changes = [0.0] * (len(order) + 1)
    for net in circuit.nets:
        at_ends = [place[end.piece] for end in net.ends if end.piece in place]
        if at_ends:
            cost = 1.0 if net.headers else UNNAMED
            changes[min(at_ends)] += cost
            changes[max(at_ends)] -= cost
    parts = [1 + len(with_it.get(piece, ())) for piece in order]
    whole = sum(parts)
    cost, before = 0.0, 0
    spans = _spans(order, across)
    best: tuple[float, int] | None = None
    for at in range(len(order) - 1):
        cost += changes[at]
        before += parts[at]
        sides = (before, whole - before)
        large = sum(max(0, -(-side // MOST_PARTS) - 1) for side in sides)
        large += sum(max(0, -(-span // (wide - FOR_ENDS)) - 1) for span in spans[at])
        uneven = 1 - min(sides) / max(sides)
        weighed = cost + TOO_LARGE * large + UNEVEN * uneven**2
        if min(sides) >= FEWEST and (best is None or weighed < best[0]):
            best = (weighed, at)
    if best is not None:
        left = {one for piece in order[: best[1] + 1] for one in (piece, *with_it.get(piece, ()))}
        yield _Cut(best[0], frozenset(left))


def _spans(order: Sequence[Piece], across: Mapping[Piece, int]) -> list[tuple[int, int]]:
    """How wide both sides of each cut are."""
    before: list[int] = []
    low, high = 10**6, -(10**6)
    for piece in order:
        low = min(low, across[piece] - piece.shape.half_width)
        high = max(high, across[piece] + piece.shape.half_width)
        before.append(high - low)
    after: list[int] = []
    low, high = 10**6, -(10**6)
    for piece in reversed(order):
        after.append(max(0, high - low))
        low = min(low, across[piece] - piece.shape.half_width)
        high = max(high, across[piece] + piece.shape.half_width)
    return list(zip(before, reversed(after), strict=True))
