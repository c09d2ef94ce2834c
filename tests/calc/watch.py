"""Watch what the interpreter does beside reckoning: code run, files opened, modules loaded."""

import sys
from collections.abc import Iterable
from types import TracebackType
from typing import Final

__all__ = ["Watch"]

_TELLING: Final = (
    "compile", "exec", "import", "open", "os.", "pickle.", "shutil.", "socket.", "subprocess.",
    "ctypes.", "code.__new__", "glob.", "urllib.", "webbrowser.", "sqlite3.", "marshal.",
)  # fmt: skip
_PASSED_OVER: Final = ("os.fspath", "os.stat")


class Watch:
    """Notes such events while it is entered. An audit hook stays for the life of a process."""

    def __init__(self) -> None:
        self.seen: list[str] = []
        self.on = False
        sys.addaudithook(self.note)

    def note(self, event: str, _arguments: Iterable[object]) -> None:
        """Note one event."""
        if self.on and event.startswith(_TELLING) and not event.startswith(_PASSED_OVER):
            self.seen.append(event)

    def __enter__(self) -> None:
        self.seen.clear()
        self.on = True

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        at: TracebackType | None,
    ) -> None:
        self.on = False
