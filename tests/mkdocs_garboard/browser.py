"""A headless Chromium for the tests: it opens pages from the folder, as a reader without a network does."""

import json
import re
import shutil
import subprocess
import tempfile
from html import unescape
from pathlib import Path
from typing import Any

import pytest

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


def asked(page: Path, script: str, size: tuple[int, int] = (1280, 900)) -> Any:
    """What a script says about a page of a given size, as data.

    A window of the browser is never narrower than 500 pixels, so the page stands in a frame.
    """
    width, height = size
    text = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page.read_text("utf-8"))
    ask = f"var said;try{{said=(function(){{{script}}})()}}catch(e){{said=String(e)}}"
    tell = f"window.onload=function(){{{ask}parent.postMessage(JSON.stringify(said),'*')}}"
    probe, frame = page.with_name(f"probe-{page.name}"), page.with_name(f"frame-{page.name}")
    probe.write_text(f"{text}<script>{tell}</script>", "utf-8")
    frame.write_text(
        "<!doctype html><meta charset=utf-8><script>onmessage=function(e){var p=document.createElement('pre');"
        "p.id='said';p.textContent=e.data;document.body.appendChild(p)}</script><body>"
        f"<iframe src='{probe.name}' width={width} height={height} style='border:0'></iframe>",
        "utf-8",
    )
    try:
        found = re.search(r'<pre id="said">(.*?)</pre>', opened(frame), re.DOTALL)
    finally:
        probe.unlink()
        frame.unlink()
    assert found, "the page did not answer"
    return json.loads(unescape(found[1]))


def picture(page: Path, to: Path, size: tuple[int, int], mark: str = "") -> Path:
    """A screenshot."""
    width, height = size
    _run(f"--window-size={width},{height}", f"--screenshot={to}", address(page, mark))
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
