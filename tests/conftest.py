"""What tests share: the demo's site, built once for all of them, and a browser that reads as the crew does."""

import fcntl
import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.demo_site import DEMO, HOUSE, Built, build, publish
from tests.mkdocs_garboard import browser

PHONE = (360, 640)
"""Width and height of the smallest screen that everything is asked of."""

Open = Callable[..., Page]


SLOW_FIRST = ("site", "browser")
"""Marks of files that take long, in the order in which they are begun."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Begin with the files that take long, so that no core is left alone with one at the end."""
    items.sort(
        key=lambda item: next(
            (at for at, mark in enumerate(SLOW_FIRST) if item.get_closest_marker(mark)),
            len(SLOW_FIRST),
        )
    )


def _once(factory: pytest.TempPathFactory, name: str, make: Callable[[Path], Built]) -> Built:
    """Make a site in the folder that all workers of a run share; the first to come makes it."""
    base = factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base
    site, said = shared / name, shared / f"{name}.said"
    with (shared / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not said.exists():
            made = make(site)
            said.write_text(f"{made.status}\n{made.said}", "utf-8")
    status, _, text = said.read_text("utf-8").partition("\n")
    return Built(site, int(status), text)


@pytest.fixture(scope="session")
def demo_built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The demo's site as `make handbook` builds it, a working copy. Read it; write nothing into it."""
    return _once(tmp_path_factory, "demo-built", lambda site: build(HOUSE, site, "--strict"))


@pytest.fixture(scope="session")
def demo_issued(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The last issued edition of the demo, as it is published. Read it; write nothing into it."""
    return _once(tmp_path_factory, "demo-issued", lambda site: publish(DEMO, 2, site))


@pytest.fixture(scope="session")
def chromium() -> Browser:
    """The headless browser of this process."""
    return browser.chromium()


@pytest.fixture
def opened(chromium: Browser) -> Iterator[Open]:
    """Open a page from its folder, as a reader without a network does: `opened(page, size, scripts=False)`.

    All pages of one test share a device, so that what one keeps the next one finds.
    """
    contexts = {}

    def open_page(page: Path, size: tuple[int, int] = PHONE, *, scripts: bool = True) -> Page:
        if scripts not in contexts:
            contexts[scripts] = chromium.new_context(java_script_enabled=scripts, offline=True)
        made = contexts[scripts].new_page()
        made.set_viewport_size({"width": size[0], "height": size[1]})
        made.goto(page.resolve().as_uri())
        return made

    yield open_page
    for context in contexts.values():
        context.close()
