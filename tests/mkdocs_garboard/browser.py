"""A headless Chromium for the tests: it opens pages from the folder, as a reader without a network does."""

import atexit
import re
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
MISSING = (
    "No Chromium was found. The page tests need one: install the Debian package chromium"
    " (apt-get install chromium), or any Chromium under one of the names " + ", ".join(NAMES)
)
QUIET = (
    "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--host-resolver-rules=MAP * ~NOTFOUND",
)  # fmt: skip
SECONDS = 90
ITS_OWN = (
    "update.googleapis.com/", "clients2.google.com/", "accounts.google.com/", "android.clients.google.com/",
    "optimizationguide-pa.googleapis.com/", "content-autofill.googleapis.com/", "safebrowsing.googleapis.com/",
)  # fmt: skip
"""What this browser asks for by itself, on a blank page too: newer parts, the time, an account."""


def program() -> str:
    for name in NAMES:
        if found := shutil.which(name):
            return found
    pytest.fail(MISSING)


def _run(*arguments: str) -> str:
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        done = subprocess.run(
            [program(), *QUIET, f"--user-data-dir={profile}", *arguments],
            capture_output=True, text=True, timeout=SECONDS, check=False,
        )  # fmt: skip
    return done.stdout


def address(page: Path, mark: str = "") -> str:
    return page.resolve().as_uri() + (f"#{mark}" if mark else "")


def opened(page: Path, mark: str = "", size: tuple[int, int] = (1280, 900)) -> str:
    """The page as it stands after its scripts have run."""
    width, height = size
    return _run(
        "--virtual-time-budget=8000",
        f"--window-size={width},{height}",
        "--dump-dom",
        address(page, mark),
    )


@cache
def chromium() -> Browser:
    """The browser of this process, started when it is first asked for."""
    started = sync_playwright().start()
    browser = started.chromium.launch(executable_path=program(), args=list(QUIET[1:]))
    atexit.register(started.stop)
    return browser


@contextmanager
def reader(page: Path, size: tuple[int, int], mark: str = "") -> Iterator[Page]:
    """A page opened by a reader without a network, who has never opened one before."""
    context = chromium().new_context(offline=True, viewport={"width": size[0], "height": size[1]})
    try:
        opened_page = context.new_page()
        opened_page.goto(address(page, mark))
        yield opened_page
    finally:
        context.close()


def asked(page: Path, script: str, size: tuple[int, int] = (1280, 900)) -> Any:
    """What a script says about a page of a given size, as data."""
    with reader(page, size) as opened_page:
        return opened_page.evaluate(f"() => {{{script}}}")


def picture(page: Path, to: Path, size: tuple[int, int], mark: str = "") -> Path:
    """A screenshot."""
    with reader(page, size, mark) as opened_page:
        opened_page.screenshot(path=to)
    return to


def sheets(page: Path, to: Path) -> Path:
    """The page printed, as a PDF."""
    _run("--no-pdf-header-footer", f"--print-to-pdf={to}", address(page))
    return to


def requests(page: str, log: Path) -> set[str]:
    """Every address off the machine that was asked for while a page was open, but for the browser's own."""
    _run("--virtual-time-budget=4000", f"--log-net-log={log}", "--dump-dom", page)
    asked = re.findall(r'"url":"(?:https?|wss?|ftp)://([^"?]*)', log.read_text("utf-8"))
    return {one for one in asked if not one.startswith(ITS_OWN)}
