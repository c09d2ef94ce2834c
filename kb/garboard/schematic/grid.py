"""The grid that pipes are drawn on: what is taken, and the cheapest way from one end to a pipe."""

from collections.abc import Iterable
from heapq import heappop, heappush
from itertools import pairwise

from garboard.schematic.sheet import Heading, Point

__all__ = ["Grid", "Window"]

BEND, CROSSING, BESIDE_ANOTHER, WORDS, IN_FRONT = 7, 16, 2, 3, 9
"""What a way costs beside its length; in front of a port nothing but its own pipe should pass."""
WAYS = (Heading.RIGHT, Heading.DOWN, Heading.LEFT, Heading.UP)
Window = tuple[int, int, int, int]
"""Left, top, right, bottom, in steps."""


class Grid:
    """The cells of one sheet, and which net runs through them.

    Args:
        window: The sheet.
    """

    def __init__(self, window: Window) -> None:
        self.left, self.top = window[0], window[1]
        self.wide, self.high = window[2] - window[0] + 1, window[3] - window[1] + 1
        size = self.wide * self.high
        self.blocked = bytearray(size)
        for row in range(self.high):
            self.blocked[row * self.wide] = self.blocked[(row + 1) * self.wide - 1] = 1
        self.dear = bytearray(size)
        self.across = [0] * size
        """Which net runs across a cell; 0: none."""
        self.along = [0] * size
        """Which net runs up or down through it."""
        self.solid = bytearray(size)
        """A pipe bends, ends or is joined here: no other may cross."""
        self.moves = (1, self.wide, -1, -self.wide)

    def cell(self, point: Point) -> int:
        """The number of a cell."""
        return (point[1] - self.top) * self.wide + point[0] - self.left

    def point(self, cell: int) -> Point:
        """The point of a cell."""
        return cell % self.wide + self.left, cell // self.wide + self.top

    def block(self, window: Window) -> None:
        """Let no pipe through a symbol."""
        for y in range(window[1], window[3] + 1):
            start = self.cell((window[0], y))
            self.blocked[start : start + window[2] - window[0] + 1] = b"\1" * (
                window[2] - window[0] + 1
            )

    def make_dear(self, window: Window, cost: int = WORDS) -> None:
        """Keep pipes out of some room if they can go round."""
        for y in range(max(window[1], self.top), min(window[3] + 1, self.top + self.high)):
            for x in range(max(window[0], self.left), min(window[2] + 1, self.left + self.wide)):
                cell = self.cell((x, y))
                self.dear[cell] = min(255, self.dear[cell] + cost)

    def keep_front_clear(self, port: Point, way: Heading) -> None:
        """Keep other pipes from running straight in front of a port."""
        cell = self.cell(port) + self.moves[WAYS.index(way)]
        self.dear[cell] = min(255, self.dear[cell] + IN_FRONT)

    def lay(self, net: int, cells: list[int]) -> None:
        """Lay a pipe of a net."""
        for one, other in pairwise(cells):
            runs = self.across if abs(one - other) == 1 else self.along
            runs[one] = runs[other] = net
        for before, here, after in zip(cells, cells[1:], cells[2:], strict=False):
            if here - before != after - here:
                self.solid[here] = 1
        self.solid[cells[0]] = self.solid[cells[-1]] = 1

    def straight(self, net: int, start: int, way: Heading, goals: dict[int, int]) -> list[int]:
        """The way straight ahead to a goal; empty where something stands in it."""
        step = self.moves[WAYS.index(way)]
        number = WAYS.index(way)
        runs, crossed = (self.across, self.along) if number % 2 == 0 else (self.along, self.across)
        cells = [start]
        here = start
        while True:
            here += step
            if not 0 <= here < len(self.blocked):
                return []
            cells.append(here)
            if here in goals:
                free = runs[here] in (0, net) and crossed[here] in (0, net)
                return cells if free and goals[here] >> ((number + 2) % 4) & 1 else []
            if self.blocked[here] or runs[here] or crossed[here]:
                return []

    def search(
        self, net: int, start: int, way: Heading, goals: dict[int, int], window: Window
    ) -> list[int]:
        """The cheapest way from an end to any of some goals; empty where there is none.

        Args:
            net: Its number.
            start: The cell of the end.
            way: How a pipe leaves it.
            goals: Cells, each with the sides it may be met from, a bit a side.
            window: Where to look.
        """
        inside = [goal for goal in goals if self._within(goal, window)]
        if not inside:
            return []
        wide = self.wide
        near_left, near_right = min(g % wide for g in inside), max(g % wide for g in inside)
        near_top, near_bottom = min(inside) // wide, max(inside) // wide
        left, right = window[0] - self.left, window[2] - self.left
        top, bottom = window[1] - self.top, window[3] - self.top
        across, along, moves, step_into = self.across, self.along, self.moves, self._step
        first = start * 4 + WAYS.index(way)
        best = {first: 0}
        came: dict[int, int] = {}
        heap = [(0, 0, first)]
        while heap:
            _, cost, state = heappop(heap)
            if best[state] < cost:
                continue
            here, heads = state >> 2, state & 3
            if here in goals and state != first:
                return self._traced(state, came)
            straight_only = state == first or across[here] or along[here]
            for turn in (heads,) if straight_only else (heads, (heads + 1) & 3, (heads + 3) & 3):
                there = here + moves[turn]
                y, x = divmod(there, wide)
                seen = left <= x <= right and top <= y <= bottom
                step = step_into(net, there, turn, goals) if seen else 0
                if not step:
                    continue
                more = cost + step + (BEND if turn != heads else 0)
                following = there * 4 + turn
                if more < best.get(following, 1 << 30):
                    best[following] = more
                    came[following] = state
                    far = max(near_left - x, 0, x - near_right) + max(
                        near_top - y, 0, y - near_bottom
                    )
                    heappush(heap, (more + far, more, following))
        return []

    def _within(self, cell: int, window: Window) -> bool:
        x, y = cell % self.wide + self.left, cell // self.wide + self.top
        return window[0] <= x <= window[2] and window[1] <= y <= window[3]

    def _step(self, net: int, there: int, turn: int, goals: dict[int, int]) -> int:
        """What a step into a cell costs; 0 where no pipe may go there."""
        goal = goals.get(there, 0)
        level = turn % 2 == 0
        runs, crossed = (self.across, self.along) if level else (self.along, self.across)
        if goal:
            free = runs[there] in (0, net) and crossed[there] in (0, net)
            return 1 if free and goal >> ((turn + 2) & 3) & 1 else 0
        if self.blocked[there] or runs[there]:
            return 0
        other = crossed[there]
        if other and (self.solid[there] or other == net):
            return 0
        cost = 1 + self.dear[there] + (CROSSING if other else 0)
        side = self.wide if level else 1
        near = runs[there - side] if there >= side else 0
        far = runs[there + side] if there + side < len(runs) else 0
        return cost + BESIDE_ANOTHER * ((near not in (0, net)) + (far not in (0, net)))

    def _traced(self, state: int, came: dict[int, int]) -> list[int]:
        cells = [state >> 2]
        while state in came:
            state = came[state]
            cells.append(state >> 2)
        return cells[::-1]

    def crossings(self) -> Iterable[int]:
        """The cells where one pipe crosses another."""
        for cell, net in enumerate(self.across):
            if net and self.along[cell] and self.along[cell] != net:
                yield cell
