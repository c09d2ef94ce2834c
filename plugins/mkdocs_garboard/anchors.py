"""Ids of one page, so that every link lands on one place and no two places share a name."""

import re
from collections.abc import Iterable

from garboard.views.page import (
    Block,
    Calculation,
    Fold,
    Heading,
    Listing,
    Looks,
    Page,
    Prose,
    Schematic,
    Steps,
    Table,
)

__all__ = ["Anchors", "prose_of"]


class Anchors:
    """Ids of one page: those that links name come first, the rest step aside."""

    def __init__(self, page: Page) -> None:
        self._taken = set(_named_anchors(page.blocks)) | {
            "sheet",
            "sources",
            "standing",
            "used-on",
            "against",
        }

    def name(self, text: str) -> str:
        """An id made from words, unlike any other on the page."""
        plain = re.sub(r"[^\w]+", "-", text.casefold()).strip("-") or "part"
        unlike, number = plain, 1
        while unlike in self._taken:
            number += 1
            unlike = f"{plain}-{number}"
        self._taken.add(unlike)
        return unlike


def _named_anchors(blocks: Iterable[Block]) -> Iterable[str]:
    for block in blocks:
        if isinstance(block, Heading) and block.anchor:
            yield block.anchor
        elif isinstance(block, Table):
            yield from (row.anchor for row in block.rows if row.anchor)
        elif isinstance(block, Listing):
            yield from (item.anchor for item in block.items if item.anchor)
        elif isinstance(block, Calculation):
            yield block.name
            yield from (line.anchor for line in block.lines if line.anchor)
            yield from _named_anchors(block.tables)
        elif isinstance(block, Schematic):
            yield from block.ids
        elif isinstance(block, Looks):
            yield from (look.anchor for look in block.looks)
        elif isinstance(block, Steps):
            yield from (step.anchor for step in block.steps if step.anchor)
        elif isinstance(block, Fold):
            yield from _named_anchors(block.blocks)


def prose_of(blocks: Iterable[Block]) -> Iterable[str]:
    """Every piece of prose among blocks."""
    for block in blocks:
        if isinstance(block, Prose):
            yield block.text
        elif isinstance(block, Fold):
            yield from prose_of(block.blocks)
