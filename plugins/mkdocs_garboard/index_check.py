"""A look at the finished site for whoever looks something up: nothing is looked for in vain.

Each tag, id, wording, symptom, part number, name, place and crew word has to be a name in the list of
the Find box as it was written, and has to stand on the page from A to Z as it was written.
"""

import json
import re
from collections.abc import Iterable, Iterator
from html import unescape
from pathlib import Path
from typing import Any

from mkdocs_garboard.search import INDEX

__all__ = ["in_vain"]

A_TO_Z = "registers/a-to-z.html"
NAME = re.compile(r"<li[^>]*><a[^>]*>(.*?)</a>", re.DOTALL)
LISTS = re.compile(r'<ul class="listing".*?</ul>', re.DOTALL)
TAG = re.compile(r"<[^>]*>")
KEYS = 6
"""Where the names of an entry stand in its record."""


def in_vain(site: Path, wanted: Iterable[tuple[str, str]]) -> Iterator[str]:
    """What is looked for in vain in a finished site.

    Args:
        site: The folder of the site. Where there is no list for the Find box, as under a theme of
            another make, only the page from A to Z is looked at.
        wanted: Names that have to be found, each after what sort of name it is.
    """
    wanted = tuple(wanted)
    if (site / INDEX).is_file():
        known = _keys((site / INDEX).read_text("utf-8"))
        yield from (
            f"Find: {sort} {name} is not in the list [not-in-index]"
            for sort, name in wanted
            if _even(name) not in known
        )
    if (site / A_TO_Z).is_file():
        listed = _listed((site / A_TO_Z).read_text("utf-8"))
        yield from (
            f"{A_TO_Z}: {sort} {name} does not stand there [not-in-index]"
            for sort, name in wanted
            if _even(name) not in listed
        )


def _even(name: str) -> str:
    """A name whatever its white space."""
    return "".join(name.split())


def _keys(script: str) -> set[str]:
    """The names that entries of the list own."""
    told = json.loads(script.partition("=")[2].rstrip().rstrip(";"))
    return {_even(name) for record in told["list"] for name in _names(record)}


def _names(record: list[Any]) -> list[str]:
    """The names of one record; empty ends of a record are left out."""
    return record[KEYS] if len(record) > KEYS else []


def _listed(page: str) -> set[str]:
    """The names that stand on the page from A to Z."""
    return {
        _even(unescape(TAG.sub("", name)))
        for part in LISTS.findall(page)
        for name in NAME.findall(part)
    }
