"""A handbook of thirty fences that rest on each other, and what an author does to it in a week."""

import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

from garboard.calc.method import Alarm, Method, Parameter, Result
from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence
from garboard.calc.store import Store
from garboard.calc.value import Given
from garboard.errors import Where
from garboard.methods import METHODS as BUNDLED
from tests.calc.desk import given
from tests.calc.sample_methods import RATIO, STARTS, formula

WATCHED = formula(
    "watched_pressure",
    (Parameter("p", "reading", "bar(g)"),),
    (Result("twice", "twice the reading", "bar(g)"), Result("warm", "room above freezing", "K(d)")),
    "twice = 2 * p  # twice\nwarm = site.T_room - 0 degC  # room above freezing\n",
    alarms=(Alarm("absolute(p) > 31 bar(a)", "high as counted from nothing"),),
)
"""Its alarm uses the atmosphere and its body a condition of the vessel, unseen by the caller."""
METHODS: dict[str, Method] = {
    **BUNDLED,
    **{method.name: method for method in (STARTS, RATIO, WATCHED)},
}
CELLS = 6
LINES = {
    "tank": """
V = {litres} L +/- 1 %  # one receiver [plate-R{k}]
both = 2 * V  # both receivers
p = SA-RV-00{k}.set  # lifts here
a = 5  # asked for
clipped = min(a, 3)  # no more than three
require both >= 400 L  # enough [rule-{k}]""",
    "air": """
held = free_air(tank-{k}.both, tank-{k}.p, site.T_room)  # all of it
n = floor(held / each)  # starts
each = 0.{k}9 m3(n) +/- 10 %  # one start [SA-TR-00{k}]
before = air-{j}.n + 1  # of the cell before
require n >= 2  # two at least""",
    "pair": """
x = tank-{k}.clipped * 2 m  # out
y = twin-{k}.back + 1 m  # and back
z = y / 3 m""",
    "twin": """
slack = 10 cm +/- 1 cm  # of the rope
back = pair-{k}.x + slack  # there and back
far = old-{k}.z * pair-{k}.z  # by its old name
p_abs = absolute(tank-{k}.p)  # counted from nothing
require p_abs > absolute(tank-{j}.p) - 40 bar(d)""",
    "call": """
s = starts_left(V = tank-{k}.both, p_now = tank-{k}.p, p_min = 10 bar(g), v_start = 0.8 m3(n))
w = watched_pressure(p = tank-{k}.p)
high = 4 bar(a) +/- 0.{k} bar  # at the outlet
r = pressure_ratio(p_1 = 1 bar(a), p_2 = high)
left = s.starts - 1 + r
asked = tank-{j}.clipped + tank-{k}.clipped""",
}


@dataclass
class Block:
    """One fence, as its author has it."""

    name: str
    lines: list[str]
    path: str
    line: int
    column: int = 1
    options: str = ""
    owner: str = "SA-CL-001"

    @property
    def fence(self) -> Fence:
        where = Where(self.path, self.line, self.column)
        return Fence(self.name, self.options, tuple(self.lines), where, self.owner)


@dataclass
class Handbook:
    """Everything that an author can change."""

    blocks: list[Block] = field(default_factory=list)
    givens: dict[str, str] = field(default_factory=dict)
    labels: dict[str, str] = field(default_factory=dict)
    aliases: dict[str, str] = field(default_factory=dict)
    broken: list[tuple[Block, int, str]] = field(default_factory=list)
    """What was broken on purpose: block, line, and the line as it was."""

    def build(self, store: Store | None = None) -> Network:
        known: dict[str, Given] = {}
        for address, text in self.givens.items():
            known[address] = replace(given(address, text), label=self.labels.get(address, ""))
        return evaluate([each.fence for each in self.blocks], known, METHODS, self.aliases, store)

    def block(self, name: str) -> Block:
        return next(each for each in self.blocks if each.name == name)


def handbook() -> Handbook:
    """The handbook before anybody edits it: thirty fences in six cells, each resting on the last."""
    book = Handbook()
    book.givens = {"site.T_room": "20 degC +/- 5 K", "site.atmosphere": "1013 mbar(a) +/- 20 mbar"}
    for k in range(1, CELLS + 1):
        book.givens[f"SA-RV-00{k}.set"] = f"{24 + k} bar(g) +/- 0.5 bar"
        book.aliases[f"old-{k}"] = f"pair-{k}"
        for at, (sort, text) in enumerate(LINES.items()):
            filled = text.strip().format(k=k, j=max(1, k - 1), litres=240 + k)
            if k == 1:
                filled = filled.replace("air-1.n + 1", "each / (1 m3(n))")
            lines = filled.split("\n")
            book.blocks.append(Block(f"{sort}-{k}", lines, f"cell-{k}.md", 10 + 20 * at))
    return book


Edit = Callable[[Handbook, random.Random], None]


def some_line(book: Handbook, chance: random.Random, having: str) -> tuple[Block, int]:
    """A line that holds a text; any at all where none does."""
    found = [
        (block, at)
        for block in book.blocks
        for at, text in enumerate(block.lines)
        if having in text
    ]
    every = [(block, at) for block in book.blocks for at in range(len(block.lines))]
    return chance.choice(found or every)


def swap(having: str, *others: str) -> Edit:
    """Change a part of some line."""

    def edit(book: Handbook, chance: random.Random) -> None:
        block, at = some_line(book, chance, having)
        block.lines[at] = block.lines[at].replace(having, chance.choice(others), 1)

    return edit


def change_litres(book: Handbook, chance: random.Random) -> None:
    block, at = some_line(book, chance, " L +/- ")
    text = block.lines[at]
    block.lines[at] = f"V = {chance.randrange(200, 300)} L +/- {text.partition('+/- ')[2]}"


def change_label(book: Handbook, chance: random.Random) -> None:
    block, at = some_line(book, chance, "  # ")
    block.lines[at] = f"{block.lines[at].partition('  # ')[0]}  # in other words {chance.random()}"


def change_options(book: Handbook, chance: random.Random) -> None:
    chance.choice(book.blocks).options = chance.choice(
        ["", "; digits 5", "; hide working; digits 2"]
    )


def change_owner(book: Handbook, chance: random.Random) -> None:
    chance.choice(book.blocks).owner = f"SA-CL-00{chance.randrange(1, 9)}"


def add_line(book: Handbook, chance: random.Random) -> None:
    block = chance.choice(book.blocks)
    name = f"more{chance.randrange(10**6)}"
    text = chance.choice(["= 3 m +/- 1 mm", "= tank-1.both + tank-2.V", "= air-3.n", "= 1 bar(g)"])
    block.lines.insert(chance.randrange(len(block.lines) + 1), f"{name} {text}  # more")


def remove_line(book: Handbook, chance: random.Random) -> None:
    block = chance.choice(book.blocks)
    if len(block.lines) > 2:
        text = block.lines.pop(at := chance.randrange(len(block.lines)))
        book.broken.append((block, -1 - at, text))


def break_line(book: Handbook, chance: random.Random) -> None:
    block, at = some_line(book, chance, " = ")
    text = block.lines[at]
    book.broken.append((block, at, text))
    wrong = ["= 3 x", "= 1 / 0", "= nowhere.y", "= 1 m + 1 s", "== 2", "= ((("]
    block.lines[at] = text.partition("=")[0] + chance.choice(wrong)


def mend(book: Handbook, chance: random.Random) -> None:
    chance.shuffle(book.broken)
    for block, at, text in book.broken[:2]:
        if at < 0:
            block.lines.insert(-1 - at, text)
        elif at < len(block.lines):
            block.lines[at] = text
    del book.broken[:2]


def rename(book: Handbook, chance: random.Random) -> None:
    """Rename a block, and mostly what refers to it."""
    block = chance.choice(book.blocks)
    old, new = block.name, f"named{chance.randrange(10**6)}"
    block.name = new
    if chance.random() < 0.7:
        for each in book.blocks:
            each.lines = [text.replace(f"{old}.", f"{new}.") for text in each.lines]
        book.aliases = {one: new if to == old else to for one, to in book.aliases.items()}
    else:
        book.aliases[old] = new


def move_down(book: Handbook, chance: random.Random) -> None:
    path, by = chance.choice(book.blocks).path, chance.randrange(1, 9)
    for each in book.blocks:
        if each.path == path:
            each.line += by


def move_away(book: Handbook, chance: random.Random) -> None:
    block = chance.choice(book.blocks)
    block.path, block.column = f"moved-{chance.randrange(10**6)}.md", chance.randrange(1, 5)


def change_component(book: Handbook, chance: random.Random) -> None:
    address = f"SA-RV-00{chance.randrange(1, CELLS + 1)}.set"
    text = ["29 bar(g) +/- 0.5 bar", "2900 kPa(g)", "30 bar(g) +/- 1 bar", "29.0 bar(g)"]
    book.givens[address] = chance.choice(text)
    book.labels[address] = chance.choice(["", "set pressure"])


def change_atmosphere(book: Handbook, chance: random.Random) -> None:
    text = chance.choice(["", "990 mbar(a)", "1013 mbar(a) +/- 40 mbar", "1 bar(a)", "0 bar(g)"])
    if text:
        book.givens["site.atmosphere"] = text
    else:
        book.givens.pop("site.atmosphere", None)


def change_room(book: Handbook, chance: random.Random) -> None:
    book.givens["site.T_room"] = chance.choice(["20 degC +/- 5 K", "25 degC", "68 degF +/- 9 K"])


def change_alias(book: Handbook, chance: random.Random) -> None:
    own = [name for name in book.aliases if name.startswith("old-")]
    book.aliases[chance.choice(own)] = f"pair-{chance.randrange(1, CELLS + 1)}"


def make_ring(book: Handbook, chance: random.Random) -> None:
    first, second = chance.sample(book.blocks, 2)
    for one, other in ((first, second), (second, first)):
        book.broken.append((one, len(one.lines), "round = 1"))
        one.lines.append(f"round = {other.name}.round + 1")


def double(book: Handbook, chance: random.Random) -> None:
    block = chance.choice(book.blocks)
    book.blocks.append(Block(block.name, ["d = 1", "e = 3 x"], "zz.md", 10))


EDITS: Mapping[str, Edit] = {
    "number": change_litres,
    "clipped": swap("a = 5", "a = 7", "a = 9"),
    "tolerance": swap("+/- 1 %", "+/- 2 %", "", "+/- 10 %"),
    "second tolerance": swap("+/- 1 cm", "+/- 2 cm", ""),
    "unit": swap("2 * V", "2 * V in m3", "V + V"),
    "another unit": swap("10 cm", "0.1 m", "100 mm"),
    "label": change_label,
    "options": change_options,
    "owner": change_owner,
    "line added": add_line,
    "line removed": remove_line,
    "line broken": break_line,
    "line mended": mend,
    "renamed": rename,
    "moved down": move_down,
    "moved away": move_away,
    "component": change_component,
    "atmosphere": change_atmosphere,
    "room": change_room,
    "alias": change_alias,
    "argument": swap("10 bar(g)", "11 bar(g)", "26 bar(g)"),
    "limit": swap("400 L", "600 L", "1 m3"),
    "ring": make_ring,
    "double": double,
}
