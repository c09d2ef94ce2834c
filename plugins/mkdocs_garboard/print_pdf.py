"""A document printed to PDF by a headless browser, where one is found, and a look into what came out."""

import os
import shutil
import subprocess
import tempfile
from pathlib import Path

from pypdf import PdfReader
from pypdf.errors import PyPdfError

from garboard.errors import GarboardError

__all__ = ["browser", "print_pdf", "sheets_of"]

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
QUIET = (
    "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--disable-extensions", "--disable-default-apps",
    "--host-resolver-rules=MAP * ~NOTFOUND", "--no-pdf-header-footer", "--generate-pdf-document-outline",
)  # fmt: skip
"""No host has an address: nothing can be fetched or told, whatever a document or the browser asks for."""
SECONDS = 300
"""A book of 700 sheets takes half a minute on a busy machine."""


def browser() -> str | None:
    """The program that prints; None where none is installed."""
    return next((found for name in NAMES if (found := shutil.which(name))), None)


def print_pdf(document: Path, to: Path) -> None:
    """Print a document: tagged, with its headings as an outline.

    Args:
        document: An HTML file.
        to: The PDF to write.

    Raises:
        GarboardError: No browser is installed, or it did not print.
    """
    program = browser()
    if program is None:
        raise GarboardError(
            f"{document} is written, but not the PDF: no Chromium was found under any of the names"
            f" {', '.join(NAMES)}. Install one (Debian: apt-get install chromium), or open the file in"
            " any browser and print it"
        )
    root = ("--no-sandbox",) if hasattr(os, "geteuid") and os.geteuid() == 0 else ()
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        command = [
            program,
            *QUIET,
            *root,
            f"--user-data-dir={profile}",
            f"--print-to-pdf={to.resolve()}",
        ]
        try:
            done = subprocess.run(  # noqa: S603 - our own file, no shell
                [*command, document.resolve().as_uri()],
                capture_output=True, text=True, timeout=SECONDS, check=False,
            )  # fmt: skip
        except (OSError, subprocess.TimeoutExpired) as error:
            raise GarboardError(
                f"{document} is written, but {program} did not print it: {error}"
            ) from error
    if done.returncode or not to.is_file():
        last = done.stderr.strip().splitlines()[-1:] or ["it said nothing"]
        raise GarboardError(f"{document} is written, but {program} did not print it: {last[0]}")


def sheets_of(pdf: Path) -> tuple[int, dict[str, int]]:
    """How many sheets a PDF has, and on which of them each place of the document stands.

    Raises:
        GarboardError: It cannot be read.
    """
    try:
        reader = PdfReader(pdf)
        on = {
            name.removeprefix("/"): number + 1
            for name, place in reader.named_destinations.items()
            if (number := reader.get_destination_page_number(place)) is not None
        }
        return len(reader.pages), on
    except (PyPdfError, OSError, ValueError) as error:
        raise GarboardError(f"{pdf} cannot be read: {error}") from error
