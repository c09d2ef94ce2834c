"""Print a binder: of a working copy, or of an issued edition laid out from its own texts.

Whoever draws it is handed in: the core knows that there is somebody who can, and no more.
"""

from dataclasses import replace
from pathlib import Path
from typing import Protocol

from garboard.editions.publish import laid_out, look_at
from garboard.errors import GarboardError
from garboard.handbook import Handbook, read
from garboard.names import nearest
from garboard.views.binder_plan import BinderOrder

__all__ = ["Binder", "bind"]


class Binder(Protocol):
    """Draws a binder."""

    def __call__(
        self, handbook: Handbook, content: Path, to: Path, order: BinderOrder
    ) -> tuple[str, ...]:
        """Draw it.

        Args:
            handbook: What is drawn.
            content: The folder it was read from, with its photographs.
            to: An empty folder for it.
            order: What is wanted; the system by its code.

        Returns:
            What was written, a line a file.
        """


def bind(
    folder: Path, order: BinderOrder, to: Path, binder: Binder, edition: int | None = None
) -> tuple[str, ...]:
    """Write a binder.

    Args:
        folder: The content folder.
        order: What is wanted.
        to: A folder that is empty or not there yet, outside the content.
        binder: Who draws it.
        edition: Number of the issued edition; None for a working copy.

    Returns:
        What was written, a line a file.

    Raises:
        GarboardError: There is no such system or edition, the folder cannot be used, or it cannot be
            drawn.
    """
    look_at(to, folder)
    if edition is None:
        return _bound(read(folder), folder, to, binder, order)
    with laid_out(folder, edition) as (handbook, content, _):
        return _bound(handbook, content, to, binder, order)


def _bound(
    handbook: Handbook, content: Path, to: Path, binder: Binder, order: BinderOrder
) -> tuple[str, ...]:
    known = replace(order, system=_system(handbook, order.system))
    try:
        to.mkdir(parents=True, exist_ok=True)
        return binder(handbook, content, to, known)
    except OSError as error:
        raise GarboardError(f"{to} cannot be written: {error.strerror or error}") from error


def _system(handbook: Handbook, asked: str) -> str:
    """The code of a system named by its code or by its folder.

    Raises:
        GarboardError: There is none.
    """
    names = {
        system.folder.rsplit("/", 1)[-1]: code for code, system in handbook.book.systems.items()
    }
    if not asked or asked in handbook.book.systems:
        return asked
    if found := names.get(asked) or next(
        (code for code in handbook.book.systems if code.casefold() == asked.casefold()), None
    ):
        return found
    near = nearest(asked, (*handbook.book.systems, *names))
    listed = ", ".join(f"{code} ({name})" for name, code in names.items())
    raise GarboardError(
        f"there is no system {asked!r}; "
        + (f"did you mean {near}? " if near else "")
        + f"known: {listed}"
    )
