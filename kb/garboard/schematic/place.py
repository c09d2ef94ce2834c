"""Where everything of one sheet stands, in steps, while it is being placed."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from garboard.schematic.nets import Circuit, End, Net, Piece
from garboard.schematic.sheet import Heading, Point
from garboard.schematic.stand import Captions, Span, Standing, half_size, lifted
from garboard.schematic.trunk import Trunk

__all__ = ["Pins", "Place"]

Pins = Mapping[str, tuple[tuple[float, float], tuple[float, float]]]
"""By header: column and row of both ends of its bar, where its author gave them."""


BUCKET = 8
"""Steps across a bucket of room."""


@dataclass(slots=True)
class Place:
    """Everything of one sheet at its place, in steps."""

    circuit: Circuit
    trunk: Trunk
    captions: Captions
    at: dict[Piece, Point] = field(default_factory=dict)
    headings: dict[Piece, Heading] = field(default_factory=dict)
    boxes: dict[Piece, Span] = field(default_factory=dict)
    ports: dict[End, tuple[Point, Heading]] = field(default_factory=dict)
    """Where each end is, and which way a pipe leaves it."""
    bars: dict[Net, tuple[Point, Point]] = field(default_factory=dict)
    feet: dict[Net, list[End]] = field(default_factory=dict)
    """Ends of towers, which nothing else may tap."""
    words: list[Span] = field(default_factory=list)
    """Room kept for words over symbols."""
    taken: dict[tuple[int, int], list[Span]] = field(default_factory=dict)
    """All room that is taken, for what is still to be placed, by the buckets it reaches into."""

    def put(self, piece: Piece, at: Point, heading: Heading) -> None:
        """Put a piece at its place."""
        wide, high = half_size(piece, heading)
        self.at[piece] = at
        self.headings[piece] = heading
        self.boxes[piece] = (at[0] - wide, at[1] - high, at[0] + wide, at[1] + high)
        self.take(self.boxes[piece])

    def put_tower(self, stands: Standing, foot: Point) -> None:
        """Put a tower on its foot."""
        for stood in stands.stood:
            self.put(stood.piece, (foot[0] + stood.at[0], foot[1] + stood.at[1]), stood.heading)
        self.take(*lifted(stands, foot))
        self.feet.setdefault(stands.tower.net, []).append(stands.tower.foot)

    def take(self, *spans: Span) -> None:
        """Let nothing else stand in some room."""
        for span in spans:
            for bucket in _buckets(span):
                self.taken.setdefault(bucket, []).append(span)

    def is_free(self, span: Span) -> bool:
        """Whether nothing stands in some room yet."""
        left, top, right, bottom = span
        return not any(
            left < other[2] and other[0] < right and top < other[3] and other[1] < bottom
            for bucket in _buckets(span)
            for other in self.taken.get(bucket, ())
        )


def _buckets(span: Span) -> list[tuple[int, int]]:
    return [
        (x, y)
        for x in range(span[0] // BUCKET, span[2] // BUCKET + 1)
        for y in range(span[1] // BUCKET, span[3] // BUCKET + 1)
    ]
