"""Each changed input replayed alone: the old book with that one thing exchanged, worked out again.

What is worked out is the old calculations themselves, by the engine that works out every page, so
that a result alone is to the last bit what a handbook with that one edit would say. Only the blocks
that the input reaches are worked out, with those they rest on.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from garboard.book import Book, Calculations, calculations_of
from garboard.calc.directory import card_of
from garboard.calc.draft import read_draft
from garboard.calc.method import Method, terms_of
from garboard.calc.network import Network, evaluate
from garboard.calc.value import Requirement, Value
from garboard.calc.workings import Layout
from garboard.changes.inputs import Exchange, find_exchanges

__all__ = ["Trial", "replayed"]

ATMOSPHERE = "site.atmosphere"
"""Every step between gauge and absolute uses it, whether or not a line names it."""
MOST_TRIED = 200
"""Inputs that are tried alone; past this a comparison would take longer than it is worth."""
TOO_MANY = f"more than {MOST_TRIED} inputs differ, and this one was not tried"


@dataclass(frozen=True, slots=True)
class Trial:
    """One input, and what it comes to alone."""

    exchange: Exchange
    not_tried: str = ""
    """Why not; empty where it was."""
    values: Mapping[str, Value] = field(default_factory=dict)
    """Of the blocks that it reaches."""
    requirements: tuple[Requirement, ...] = ()
    """Of the same blocks."""


def replayed(old: Book, new: Book, methods: Mapping[str, Method]) -> tuple[Trial, ...]:
    """Replay every changed input alone.

    Args:
        old: The older book, which is worked out again.
        new: The newer one, of which the inputs are taken.
        methods: The bundled methods by name.
    """
    before = calculations_of(old.content)
    found = find_exchanges(before, calculations_of(new.content), methods)
    trials, tried = [], 0
    for exchange in found:
        if exchange.with_it is None:
            trials.append(Trial(exchange, exchange.not_tried))
        elif tried == MOST_TRIED:
            trials.append(Trial(exchange, TOO_MANY))
        else:
            tried += 1
            trials.append(_trial(old, new, exchange, exchange.with_it, methods))
    return tuple(trials)


def _trial(
    old: Book,
    new: Book,
    exchange: Exchange,
    asked: Calculations,
    methods: Mapping[str, Method],
) -> Trial:
    layout = old.network.workings.layout
    reached = _reached(layout, exchange)
    needed = _upstream(layout, [*reached, *_named(layout, exchange, asked, methods)])
    fences = [fence for fence in asked.fences if fence.name in needed]
    network = evaluate(fences, asked.givens, methods, asked.aliases)
    why = _refused(old, new, exchange, network)
    if why:
        return Trial(exchange, why)
    values = {
        address: value
        for address, value in network.values.items()
        if address.partition(".")[0] in reached
    }
    for address, source in asked.aliases.items():
        drawn = network.values.get(source)
        if drawn and (source in values or address == exchange.address):
            values[address] = replace(drawn, address=address, given=False)
    judged = tuple(one for one in network.requirements if one.block in reached)
    return Trial(exchange, "", values, judged)


def _reached(layout: Layout, exchange: Exchange) -> set[str]:
    """The blocks that an input reaches: its own, and all that rest on it, near and far."""
    if exchange.address == ATMOSPHERE:
        return set(layout.shelf.fences)
    owner = exchange.address.partition(".")[0]
    found = {owner} & layout.shelf.fences.keys()
    if not exchange.requires and not found:
        found |= {
            block
            for block, asked in layout.asked.items()
            if any(exchange.address in pair for pair in asked)
        }
    grown = True
    while grown and not exchange.requires:
        users = {
            block
            for block, asked in layout.asked.items()
            if block not in found
            and any(layout.directory.block_of(address) in found for _, address in asked)
        }
        grown = bool(users)
        found |= users
    return found


def _upstream(layout: Layout, blocks: Iterable[str]) -> set[str]:
    """Some blocks, and all that they rest on."""
    found: set[str] = set()
    waiting = [block for block in blocks if block in layout.asked]
    while waiting:
        block = waiting.pop()
        if block in found:
            continue
        found.add(block)
        needs = (layout.directory.block_of(address) for _, address in layout.asked[block])
        waiting += [need for need in needs if need]
    return found


def _named(
    layout: Layout, exchange: Exchange, asked: Calculations, methods: Mapping[str, Method]
) -> list[str]:
    """Blocks that the exchanged thing itself names, which its forerunner may not have named."""
    if exchange.address in asked.aliases:
        return [asked.aliases[exchange.address].partition(".")[0]]
    owner = exchange.address.partition(".")[0]
    fence = next((one for one in asked.fences if one.name == owner), None)
    if fence is None:
        return []
    names = tuple((name, terms_of(method)) for name, method in methods.items())
    card = card_of(read_draft(fence, names), methods)
    found = (layout.directory.address_of(owner, text) for text in card.asks)
    return [block for address in found if (block := layout.directory.block_of(address))]


def _refused(old: Book, new: Book, exchange: Exchange, network: Network) -> str:
    """Why an input cannot be tried alone: with it the old book cannot be worked out, the new one can."""
    if exchange.requires:
        judged = {one.text: one for one in network.requirements if one.block == exchange.address}
        asked = exchange.after.removeprefix("require").strip()
        return "" if asked in judged else "the older book has not all that it names"
    for address, value in network.values.items():
        was, known = old.values.get(address), new.values.get(address)
        if value.fault is None or known is None or known.si is None:
            continue
        if address == exchange.address or address.startswith(f"{exchange.address}."):
            return value.fault.text
        if was is not None and was.si is not None:
            return f"with it alone {address} cannot be worked out: {value.fault.text}"
    return ""
