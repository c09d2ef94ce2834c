"""The key of a block: everything that what it comes to depends on, to the last bit.

Its own text; each name that it uses from outside, with what stands there now; and, where a
tolerance reaches it, the key of the block that it comes from, because ranges are worked out over the
corners of all inputs upstream. The atmosphere is told apart: only a block that uses it depends on it.
"""

import json
from collections.abc import Iterable, Mapping, Sequence

from garboard.calc.engine import digest
from garboard.calc.part import same_type, same_unit
from garboard.calc.sheet import Fence
from garboard.calc.units import Unit
from garboard.calc.value import Given, Value

__all__ = ["BlockKeys", "text_key"]

SITE_ATMOSPHERE = "site.atmosphere"


def text_key(engine: str, fence: Fence) -> str:
    """The digest of a fence as written, wherever it stands, and of the engine that reads it."""
    return digest(engine, fence.name, fence.owner, fence.options_text, *fence.lines)


class BlockKeys:
    """Makes the keys of one handbook, block after block."""

    def __init__(self, texts: Mapping[str, str], givens: Mapping[str, Given]) -> None:
        self.texts = texts
        """By block: the key of its text."""
        self.givens = givens
        self.values: dict[str, Value] = {}
        """Of the blocks so far, by address."""
        self.uncertain: dict[str, str] = {}
        """Address of what rests on a tolerance, with the full key of its block."""
        self.units: dict[int, tuple[Unit, str]] = {}
        stated = givens.get(SITE_ATMOSPHERE)
        self.air = digest(json.dumps(self.given_facts(stated) if stated else []))

    def key_of(self, blocks: Sequence[str], asked: Mapping[str, Iterable[tuple[str, str]]]) -> str:
        """The key of some blocks that need each other.

        Args:
            blocks: Their names.
            asked: By block, the names it uses from outside with the addresses they stand for.
        """
        told: list[object] = []
        for block in sorted(blocks):
            told.append([self.texts[block], len(blocks)])
            told += ([text, address, self.facts(address)] for text, address in asked[block])
        return digest(json.dumps(told))

    def full_key(self, key: str, *, air: bool) -> str:
        """The key with the atmosphere, where the block uses it."""
        return digest(key, self.air if air else "")

    def facts(self, address: str) -> list[object] | None:
        """What stands at an address; None for nothing, and within the group itself."""
        value = self.values.get(address)
        if value is None:
            given = self.givens.get(address)
            return self.given_facts(given) if given else None
        if value.si is None:
            return ["broken"]
        unit = self.unit_facts(value.unit)
        own = ["line", value.si.hex(), value.text, value.whole, unit, same_type(value.type)]
        return [*own, self.uncertain.get(address, "")]

    def given_facts(self, given: Given) -> list[object]:
        """All of a given value but its place."""
        ends = [number.hex() for number in (given.si, given.low, given.high)]
        said = [given.shown, given.tolerance, given.label]
        return ["given", given.address, *ends, *said, same_unit(given.unit), same_type(given.type)]

    def unit_facts(self, unit: Unit) -> str:
        """All of a unit, told once."""
        known = self.units.get(id(unit))
        if known is None or known[0] is not unit:
            known = self.units[id(unit)] = (unit, json.dumps(same_unit(unit)))
        return known[1]
