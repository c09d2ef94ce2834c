"""`mkdocs serve` builds again after an edit, and not after what a build itself keeps."""

import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer

from garboard.handbook import read_book
from mkdocs_garboard.plugin import GarboardPlugin
from tests.golden_case import BASE

PATIENCE = 20.0
"""Seconds; a loaded machine looks at its files late."""


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """A content folder in which nothing is kept yet."""
    folder = tmp_path / "content"
    folder.mkdir()
    for name, text in BASE.items():
        (folder / name).write_text(text, "utf-8")
    (folder / "page.md").write_text("# Tank\n\n```calc tank\nV = 2 * 250 L\n```\n", "utf-8")
    return folder


@pytest.fixture
def serve(content: Path, tmp_path: Path) -> Iterator[Callable[[bool], LiveReloadServer]]:
    """Start the generator's server on the folder, with or without our plugin's word in it."""
    started = []

    def start(ours: bool) -> LiveReloadServer:  # noqa: FBT001 - with and without
        server = LiveReloadServer(lambda: None, "127.0.0.1", 0, str(tmp_path), polling_interval=0.1)
        server.watch(str(content))
        if ours:
            config = MkDocsConfig()
            config.docs_dir = str(content)
            assert GarboardPlugin().on_serve(server, config=config) is server
        started.append(server)
        server.observer.start()
        return server

    yield start
    for server in started:
        server.observer.stop()
        server.observer.join()
        server.server_close()


def wants_build(server: LiveReloadServer, seconds: float) -> bool:
    """Whether the server has been told of an edit, within some seconds."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if server._want_rebuild:
            server._want_rebuild = False
            return True
        time.sleep(0.02)
    return False


def test_what_a_build_keeps_does_not_set_off_the_next_build(
    content: Path, serve: Callable[[bool], LiveReloadServer]
) -> None:
    server = serve(True)

    read_book(content)

    assert (content / ".garboard" / "values.json").is_file()
    assert not wants_build(server, 1.5)


def test_an_edit_still_sets_off_a_build(
    content: Path, serve: Callable[[bool], LiveReloadServer]
) -> None:
    server = serve(True)
    read_book(content)

    (content / "page.md").write_text("# Tank\n\n```calc tank\nV = 3 * 250 L\n```\n", "utf-8")
    assert wants_build(server, PATIENCE)

    (content / "new.md").write_text("# New\n", "utf-8")
    assert wants_build(server, PATIENCE)


def test_without_our_word_the_generator_would_build_again(
    content: Path, serve: Callable[[bool], LiveReloadServer]
) -> None:
    server = serve(False)

    read_book(content)

    assert wants_build(server, PATIENCE)
