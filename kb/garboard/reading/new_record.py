"""Start a record: the next free id, the right folder, every question as a comment."""

from datetime import date
from pathlib import Path

from garboard.errors import GarboardError
from garboard.names import nearest
from garboard.reading.blank import blank, next_id, path_for
from garboard.reading.content import Content
from garboard.reading.edits import create_file
from garboard.records.kinds import Kind

__all__ = ["new_record"]


def new_record(folder: Path, content: Content, kind: Kind, system: str, title: str) -> Path:
    """Write a started record into the content.

    Args:
        folder: The content folder.
        content: What was read from it.
        kind: Of which kind.
        system: Code of the system, such as SA.
        title: A noun phrase; empty: the name of the kind.

    Returns:
        The new file.

    Raises:
        GarboardError: There is no such system, or the file cannot be made.
    """
    known = content.systems.get(system)
    if known is None:
        codes = ", ".join(f"{code} {one.title}" for code, one in content.systems.items())
        near = nearest(system, content.systems) if system else None
        meant = f"; did you mean {near}?" if near else f"; name one of: {codes}"
        raise GarboardError(
            f"there is no system {system!r}{meant}" if system else f"name the system: {codes}"
        )
    taken = [*content.retired, *(one.name for one in content.declared)]
    ident = next_id(taken, system, kind.letters)
    words = title or f"New {kind.name}"
    today = date.today()  # noqa: DTZ011 - a vessel keeps its own day
    path = path_for(kind, known.folder, ident, words, today)
    stated = today if path.startswith(known.folder) else None
    return create_file(folder, path, blank(kind, system, ident, words, drafted=stated))
