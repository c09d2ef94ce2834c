"""Words where there is room for them: each label tries its places in a fixed order until one is free."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.schematic.captions import BOLD, LINE, PLAIN
from garboard.schematic.nets import Piece
from garboard.schematic.place import Place
from garboard.schematic.sheet import STEP, TEXT, Box, Label, Line, Point
from garboard.schematic.towers import RELIEFS

__all__ = ["Labelling", "Taken", "words_wide"]

BUCKET = 8 * STEP
CLEAR = 3
"""Drawing units between words and what they stand beside."""
PIPE = 3
"""Half of what a pipe takes, with some air."""
RINGS = (0, STEP // 2, STEP, 2 * STEP, 3 * STEP, 4 * STEP, 6 * STEP)
"""How much further away a label is tried, where it has no room close by."""
BUS = 6
"""Half of what the stroke of a bus takes, with some air."""
UNDER_LEVEL = 8
"""How far the words of a tank are moved down, under the line of its level."""
DESCENT = 4
"""From the base line of a line of words to its foot."""


def words_wide(lines: tuple[str, ...], *, bold: bool = True) -> int:
    """Width of some lines, the first bold, in drawing units."""
    wide = [
        len(line) * (PLAIN if number or not bold else BOLD) for number, line in enumerate(lines)
    ]
    return int(max(wide, default=0) * TEXT) + 1


class Taken:
    """Boxes that are taken, in buckets, so that a question looks only at its neighbourhood."""

    def __init__(self) -> None:
        self.buckets: dict[tuple[int, int], list[Box]] = {}

    def add(self, box: Box) -> None:
        """Take some room."""
        for bucket in _buckets(box):
            self.buckets.setdefault(bucket, []).append(box)

    def free(self, box: Box) -> bool:
        """Whether nothing stands in some room."""
        return not any(
            box.left < other.right
            and other.left < box.right
            and box.top < other.bottom
            and other.top < box.bottom
            for bucket in _buckets(box)
            for other in self.buckets.get(bucket, ())
        )


def _buckets(box: Box) -> Iterator[tuple[int, int]]:
    for x in range(box.left // BUCKET, box.right // BUCKET + 1):
        for y in range(box.top // BUCKET, box.bottom // BUCKET + 1):
            yield x, y


@dataclass(frozen=True, slots=True)
class _Spot:
    """One place for a label: a corner or side of a box, and how the words are anchored there."""

    anchor: str
    x: int
    top: int


class Labelling:
    """The labels of one sheet on their way to their places.

    Args:
        place: Everything at its place.
        lines: All pipes, in drawing units.
    """

    def __init__(self, place: Place, lines: tuple[Line, ...]) -> None:
        self.place = place
        self.lines = lines
        self.taken = Taken()
        self.labels: list[Label] = []
        self.missed = 0
        self.below = {
            piece for tower in place.trunk.towers if not tower.above for piece in tower.pieces
        }
        for piece in place.circuit.pieces:
            self.taken.add(self.covered_by(piece))
            if piece.kind in RELIEFS:
                x, y = (number * STEP for number in place.at[piece])
                self.taken.add(Box(x, y - STEP, x + 3 * STEP, y + STEP))
        for line in lines:
            for (x, y), (x_2, y_2) in zip(line.points, line.points[1:], strict=False):
                self.taken.add(_round(x, y, x_2, y_2, PIPE))
            if line.arrow:
                (x, y), _ = line.arrow
                self.taken.add(_round(x, y, x, y, 7))
        for (x, y), (x_2, y_2) in place.bars.values():
            self.taken.add(_round(x * STEP, y * STEP, x_2 * STEP, y_2 * STEP, 4))

    def box_of(self, piece: Piece) -> Box:
        """What a piece covers, in drawing units."""
        left, top, right, bottom = self.place.boxes[piece]
        return Box(left * STEP, top * STEP, right * STEP, bottom * STEP)

    def covered_by(self, piece: Piece) -> Box:
        """What a piece covers; a bus is drawn with a broad stroke."""
        box = self.box_of(piece)
        wide = BUS if piece.kind == "bus" else 0
        return Box(box.left - wide, box.top, box.right + wide, box.bottom)

    def inside(self, piece: Piece, lines: tuple[str, ...]) -> None:
        """Words in the middle of a vessel."""
        box = self.box_of(piece)
        x = (box.left + box.right) // 2
        middle = (box.top + box.bottom) // 2
        top = middle - len(lines) * LINE // 2 + (UNDER_LEVEL if piece.kind == "tank" else 0)
        self.put(piece.name, lines, _Spot("middle", x, top))

    def beside(self, piece: Piece, lines: tuple[str, ...]) -> None:
        """Words beside a symbol."""
        box = self.covered_by(piece)
        wide, high = words_wide(lines), len(lines) * LINE
        for ring in RINGS:
            for spot in self.spots(piece, box, high, CLEAR + ring):
                if self.taken.free(_covered(spot, wide, high)):
                    self.put(piece.name, lines, spot)
                    return
        self.missed += 1
        self.put(piece.name, lines, next(self.spots(piece, box, high, CLEAR)))

    def spots(self, piece: Piece, box: Box, high: int, gap: int) -> Iterator[_Spot]:
        """The eight places round a symbol, the best first."""
        middle = (box.left + box.right) // 2
        centre = (box.top + box.bottom - high) // 2
        over, under = box.top - gap - high, box.bottom + gap
        above = _Spot("middle", middle, over)
        right, left = _Spot("start", box.right + gap, centre), _Spot("end", box.left - gap, centre)
        below = _Spot("middle", middle, under)
        narrow = box.bottom - box.top > box.right - box.left and piece in self.below
        yield from (right, left) if narrow or not piece.part else (above, below)
        yield from (below, above) if narrow or not piece.part else (right, left)
        yield _Spot("start", middle + 2 * CLEAR, over)
        yield _Spot("end", middle - 2 * CLEAR, over)
        yield _Spot("start", middle + 2 * CLEAR, under)
        yield _Spot("end", middle - 2 * CLEAR, under)
        yield _Spot("start", box.right + gap, over)
        yield _Spot("end", box.left - gap, over)
        yield _Spot("start", box.right + gap, under)
        yield _Spot("end", box.left - gap, under)

    def put(self, of: str, lines: tuple[str, ...], spot: _Spot, *, slanted: bool = False) -> None:
        """Write a label."""
        box = _covered(spot, words_wide(lines, bold=not slanted), len(lines) * LINE)
        at = (spot.x, spot.top + LINE - DESCENT)
        self.labels.append(Label(of, at, spot.anchor, lines, box, slanted=slanted))
        self.taken.add(box)

    def along_bar(self, name: str, words: str, start: Point, end: Point) -> None:
        """The name of a header along its bar; upright where the bar stands."""
        (x, y), (x_2, y_2) = ((number * STEP for number in point) for point in (start, end))
        if y == y_2:
            self.along_pipe(name, words, [(min(x, x_2), max(x, x_2), y)])
            return
        long = words_wide((words,), bold=False)
        inside = range(y + 4, y_2 - long, STEP // 2)
        if self.upright(name, words, x, [*inside]):
            return
        for top in range(y, y_2 - LINE, STEP // 2):
            for spot in (_Spot("start", x + 6, top), _Spot("end", x - 6, top)):
                if self.taken.free(_covered(spot, long, LINE)):
                    self.put(name, (words,), spot, slanted=True)
                    return
        if not self.upright(name, words, x, [y - long - 4, y_2 + 4]):
            self.along_pipe(name, words, [(x, x + long, y), (x, x + long, y_2), (x - long, x, y)])

    def upright(self, name: str, words: str, x: int, tops: list[int]) -> bool:
        """Words that run upwards beside a bar; whether they have room at one of some heights."""
        long = words_wide((words,), bold=False)
        for left in (x - 5 - LINE, x + 5, x - 5 - STEP - LINE, x + 5 + STEP):
            for top in tops:
                box = Box(left, top, left + LINE, top + long)
                if self.taken.free(box):
                    at = (left + LINE - DESCENT, top + long)
                    label = Label(name, at, "start", (words,), box, upright=True, slanted=True)
                    self.labels.append(label)
                    self.taken.add(box)
                    return True
        return False

    def along_pipe(self, name: str, words: str, runs: list[tuple[int, int, int]]) -> None:
        """The name of a header over or under a pipe that runs across, on two lines if need be."""
        best = sorted(runs, key=lambda run: run[0] - run[1])
        first, _, rest = words.partition(f"{name} ")
        texts = ((words,), (name, rest)) if rest and not first else ((words,),)
        for ring in RINGS:
            for lines in texts:
                wide, high = words_wide(lines, bold=False), len(lines) * LINE
                for spot in _along(best, wide, high, ring):
                    if self.taken.free(_covered(spot, wide, high)):
                        self.put(name, lines, spot, slanted=True)
                        return
        self.missed += 1
        left, right, y = best[0]
        self.put(name, (words,), _Spot("middle", (left + right) // 2, y + 5), slanted=True)


def _along(runs: list[tuple[int, int, int]], wide: int, high: int, ring: int) -> Iterator[_Spot]:
    """Places over, under and at the ends of pipes that run across, the longest pipe first."""
    for left, right, y in runs:
        over = wide // 4
        tops = (y - 5 - ring - high, y + 5 + ring)
        for x in [(left + right) // 2, *range(left - over, right + over + STEP, STEP // 2)]:
            yield from (_Spot("middle", x, top) for top in tops)
        for top in (*tops, y - high // 2):
            yield _Spot("start", right + 5 + ring, top)
            yield _Spot("end", left - 5 - ring, top)


def _round(x: int, y: int, x_2: int, y_2: int, air: int) -> Box:
    return Box(min(x, x_2) - air, min(y, y_2) - air, max(x, x_2) + air, max(y, y_2) + air)


def _covered(spot: _Spot, wide: int, high: int) -> Box:
    left = {"start": spot.x, "middle": spot.x - wide // 2, "end": spot.x - wide}[spot.anchor]
    return Box(left, spot.top, left + wide, spot.top + high)
