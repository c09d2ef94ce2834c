"""Serve a handbook while it is written: a build must not set off the next one.

The generator watches the content folder, hidden files included, and what was worked out is kept
there.
"""

from pathlib import Path

from mkdocs.livereload import LiveReloadServer
from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers.api import ObservedWatch

__all__ = ["KEPT", "watch_content"]

KEPT = ".garboard"
"""The folder in which the core keeps what it has worked out."""


class Deaf(FileSystemEventHandler):
    """Passes on every event but those of what was kept."""

    def __init__(self, inner: FileSystemEventHandler) -> None:
        self.inner = inner

    def dispatch(self, event: FileSystemEvent) -> None:
        """Pass an event on, unless a file that it names was kept by a build."""
        named = [str(path) for path in (event.src_path, event.dest_path) if path]
        if not all(KEPT in Path(path).parts for path in named):
            self.inner.dispatch(event)


def watch_content(server: LiveReloadServer, folder: str) -> None:
    """Watch the content folder anew, deaf to what builds keep in it.

    Args:
        server: The generator's server, which watches the folder already.
        folder: The content folder.
    """
    schedule = server.observer.schedule

    def deaf(
        event_handler: FileSystemEventHandler, path: str, *, recursive: bool = False
    ) -> ObservedWatch:
        return schedule(Deaf(event_handler), path, recursive=recursive)

    server.unwatch(folder)
    server.observer.schedule = deaf  # type: ignore[method-assign, assignment]
    try:
        server.watch(folder)
    finally:
        server.observer.schedule = schedule  # type: ignore[method-assign]
