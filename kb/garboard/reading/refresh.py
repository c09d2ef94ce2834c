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
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.calculation import Calculation
from garboard.records.hazard import Hazard
from garboard.records.kinds import kind_of
from garboard.records.procedure import Procedure
from garboard.records.states import at_rest, start_state
from garboard.records.work import MaintenanceTask

__all__ = ["find_changes", "find_stale", "keeps_its_numbers", "write_changes"]

DESCRIBES = (Calculation, Procedure, Hazard, Alarm, Fault, MaintenanceTask)
"""Kinds that say how things are, not what happened."""

Show = Callable[[str, str], str | None]
"""A value as shown, by address and unit."""


def keeps_its_numbers(record: Record | None) -> bool:
    """Whether the numbers of a record are those of its day: at rest, and telling what happened."""
    kind = kind_of(record) if record else None
    if record is None or kind is None or isinstance(record, DESCRIBES):
        return False
    return at_rest(kind.name, record.state or start_state(kind.name))


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
        if keeps_its_numbers(content.records.get(written.owner)):
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
