"""The store of worked blocks: what each came to last time, and under which key.

A block is read back only under the very key it was kept under. It stands on two lines, its values
and its sheet, so that what has not changed is handed on as it was and a sheet that nobody asks for
is not opened. Whatever is not as it was written here is a reason to work the block out again, never
a fault.
"""

import json
from collections.abc import Collection

from garboard.calc.directory import Card
from garboard.calc.part import Part, Worked
from garboard.calc.plain_data import Desk, NotKept, new_pool, read_plain, write_plain
from garboard.calc.plain_fields import Plain
from garboard.calc.sheet import Fence, Sheet
from garboard.calc.value import Requirement, Value
from garboard.errors import Where

__all__ = ["SHEET", "Store"]

NOWHERE = Where("")
CUT = (",", ":")
POOL, BLOCKS, END = '{"pool":', '"blocks":{', '"":[]}}'
"""How the first line, the second and the last begin."""
SHEET = " sheet"
"""Behind the name of a block, where its sheet stands."""
BROKEN = (NotKept, ValueError, TypeError, LookupError, RecursionError, OverflowError)
"""What comes of a store that somebody else wrote."""
Row = list[Plain]
"""Text, card, key, air, places of the uncertain values, values, requirements."""


def open_line(name: str, line: str) -> Plain:
    """What stands on a line behind its name.

    Raises:
        ValueError: It is no JSON.
    """
    return json.loads(line[len(name) + 3 :].removesuffix(","))


class Store:
    """Worked blocks by name."""

    def __init__(self) -> None:
        self.pool = new_pool([])
        self.lines: dict[str, str] = {}
        """As written, by block, and by block for its sheet."""
        self.rows: dict[str, Row] = {}
        """Those that were opened."""
        self.changed = False

    @classmethod
    def read(cls, text: str) -> "Store":
        """The store as it was written; an empty one where the text is something else."""
        store = cls()
        try:
            store.take(text)
        except BROKEN:
            return cls()
        return store

    def take(self, text: str) -> None:
        """Take in what was written.

        Raises:
            NotKept: The text is something else.
            ValueError: It is no JSON.
            TypeError: A part is of another sort.
            RecursionError: It is nested too deeply.
        """
        first, second, *lines = text.split("\n")
        if not first.startswith(POOL) or second != BLOCKS or lines.pop() != END:
            raise NotKept("another layout")
        pool = json.loads(first.removeprefix(POOL).removesuffix(","))
        if not isinstance(pool, list):
            raise NotKept("no pool")
        self.pool = new_pool(pool)
        self.lines = {line[1 : line.index('"', 1)]: line for line in lines}

    def write(self) -> str:
        """Everything as text; JSON, two lines a block."""
        pool = json.dumps(self.pool.rows, separators=CUT)
        return "\n".join([f"{POOL}{pool},", BLOCKS, *self.lines.values(), END])

    def row(self, name: str) -> Row | None:
        """The values of a block, opened once."""
        found = self.rows.get(name)
        if found is None:
            try:
                found = open_line(name, self.lines[name])
            except BROKEN:
                return None
            if not isinstance(found, list) or len(found) != 7:
                return None
            self.rows[name] = found
        return found

    def card(self, name: str, text: str) -> Card | None:
        """The card of a fence whose text is still the same.

        Args:
            name: Of the block.
            text: Digest of its text.
        """
        row = self.row(name)
        if row is None or row[0] != text:
            return None
        try:
            found = read_plain(Card, row[1], Desk(NOWHERE, 0, self.pool))
        except BROKEN:
            return None
        return found if isinstance(found, Card) else None

    def block(self, fence: Fence, key: str, air: str) -> Worked | None:
        """A block as it was worked out under the same key.

        Args:
            fence: Where it stands now.
            key: Of everything it uses.
            air: The atmosphere, for a block that uses it.
        """
        row = self.row(fence.name)
        if row is None or row[2] != key or row[3] not in ("", air):
            return None
        desk = Desk(fence.where, len(fence.lines), self.pool)
        try:
            values = tuple([read_plain(Value, data, desk) for data in row[5]])
            requirements = tuple([read_plain(Requirement, data, desk) for data in row[6]])
            uncertain = tuple([values[at].address for at in row[4]])
        except BROKEN:
            return None
        if fence.name + SHEET not in self.lines:
            return None
        del self.rows[fence.name]  # read once in a run; a large handbook would hold it twice
        return Worked(Part(None, values, requirements), uncertain, bool(row[3]))

    def sheet(self, fence: Fence, part: Part, line: str) -> Sheet | None:
        """The sheet of a block that was taken from here.

        Args:
            fence: Where it stands now.
            part: The block.
            line: The line of its sheet when it was taken; another may have been kept since.
        """
        pointed = [*part.values, *part.requirements]
        desk = Desk(fence.where, len(fence.lines), self.pool, pointed)
        try:
            found = read_plain(Sheet, open_line(fence.name + SHEET, line), desk)
        except BROKEN:
            return None
        return found if isinstance(found, Sheet) and found.name == fence.name else None

    def keep(
        self, fence: Fence, text: str, card: Card, keys: tuple[str, str], found: Worked
    ) -> None:
        """Keep a block.

        Args:
            fence: As it stands.
            text: Digest of its text.
            card: What it sets and asks for.
            keys: Of everything it uses, and of the atmosphere.
            found: What it came to.
        """
        part = found.part
        desk = Desk(fence.where, len(fence.lines), self.pool)
        try:
            row: Row = [text, write_plain(card, desk), keys[0], keys[1] if found.air else ""]
            addresses = [value.address for value in part.values]
            row.append([addresses.index(address) for address in found.uncertain])
            row.append([write_plain(value, desk) for value in part.values])
            row.append([write_plain(each, desk) for each in part.requirements])
            desk.pointed += [*part.values, *part.requirements]
            sheet = write_plain(part.sheet, desk)
            self.set_line(fence.name, row)
            self.set_line(fence.name + SHEET, sheet)
        except (NotKept, ValueError, TypeError):
            self.drop(fence.name)

    def set_line(self, name: str, what: Plain) -> None:
        """Write one line.

        Raises:
            ValueError: A number in it is none.
        """
        text = json.dumps(what, separators=CUT, allow_nan=False)
        line = f'"{name}":{text},'
        self.changed |= self.lines.get(name) != line
        self.lines[name] = line
        self.rows.pop(name, None)

    def drop(self, name: str) -> None:
        """Forget a block."""
        for line in (name, name + SHEET):
            self.changed |= self.lines.pop(line, None) is not None
        self.rows.pop(name, None)

    def keep_only(self, names: Collection[str]) -> None:
        """Forget blocks that are gone."""
        for name in [each for each in self.lines if each.removesuffix(SHEET) not in names]:
            self.drop(name.removesuffix(SHEET))
