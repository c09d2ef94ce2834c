"""The core: `garboard.read("content")` reads a handbook and gives its numbers.

Importing this loads nothing else: a name is fetched when it is first asked for.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from garboard.errors import Diagnostic, GarboardError, Severity
    from garboard.reader import Number, Numbers, OpenBook, read

__all__ = ["Diagnostic", "GarboardError", "Number", "Numbers", "OpenBook", "Severity", "read"]


def __getattr__(name: str) -> object:
    """A public name, from the module that owns it."""
    if name not in __all__:
        raise AttributeError(f"garboard has no {name!r}; it has {', '.join(__all__)}")
    from garboard import errors, reader  # noqa: PLC0415 - importing garboard stays cheap

    return getattr(errors if name in errors.__all__ else reader, name)


def __dir__() -> list[str]:
    return __all__
