"""Put quoted numbers right where the value they quote has moved.

A record at rest that tells what happened keeps the day's number for ever; only what describes the
vessel as it is follows the value.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path

from garboard.calc.quoting import agrees, requoted
from garboard.calc.value import Value
from garboard.reading.content import Content
from garboard.reading.edits import Edit, replace_spans
from garboard.reading.references import ValueLink
from garboard.records.standing import is_history

__all__ = ["find_changes", "find_stale", "write_changes"]

Show = Callable[[str, str], str | None]
"""A value as shown, by address and unit."""


def find_stale(
    content: Content, show: Show, values: Mapping[str, Value]
) -> Iterator[tuple[ValueLink, str, str]]:
    """Every quotation that no longer says what its value says.

    Args:
        content: What was read.
        show: A value as shown, by address and unit.
        values: By address.

    Yields:
        The link, the value as shown, and the link's text put right.
    """
    for written in content.texts:
        owner = content.records.get(written.owner)
        if owner is not None and is_history(owner):
            continue
        for link in written.links:
            value = values.get(link.address)
            shown = show(link.address, link.unit)
            if value is None or shown is None or value.si is None:
                continue
            has_unit = bool(link.unit or value.unit.text)
            if not agrees(link.text, shown, has_unit=has_unit):
                yield link, shown, requoted(link.text, shown, has_unit=has_unit)


def find_changes(content: Content, show: Show, values: Mapping[str, Value]) -> tuple[Edit, ...]:
    """The edits that put every stale quotation right."""
    return tuple(
        Edit(link.text_where, link.text, better)
        for link, _, better in find_stale(content, show, values)
    )


def write_changes(folder: Path, content: Content, changes: Iterable[Edit]) -> None:
    """Write edits into the content, file by file.

    Raises:
        GarboardError: A file has changed since it was read; files before it are already written.
    """
    files: dict[str, list[Edit]] = defaultdict(list)
    for change in changes:
        files[change.where.path].append(change)
    for path, edits in files.items():
        replace_spans(folder, path, edits, content.digests[path])
