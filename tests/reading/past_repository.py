"""A small handbook in a real git repository, one commit after the other."""

import os
import subprocess
from pathlib import Path

from tests.golden_case import Case

FINDING = """\
---
id: SA-FN-012
title: Low-air switch behind the stop valves
system: SA
class: A
author: reviewer-1
drafted: 2031-03-09
words: Shut either stop and this reads the header.
signed:
  - {capacity: any hand, by: volunteer-1, on: 2031-03-09}
---
As seen.
"""
FOUND = "log/2031/2031-03-09-switch.md"
AUTHOR = {
    "GIT_AUTHOR_NAME": "somebody",
    "GIT_AUTHOR_EMAIL": "somebody@garboard.invalid",
    "GIT_COMMITTER_NAME": "somebody",
    "GIT_COMMITTER_EMAIL": "somebody@garboard.invalid",
    "GIT_CONFIG_GLOBAL": os.devnull,
}


class Repository:
    """A repository whose content folder lies below its root."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.folder = root / "content"
        Case("", "", "", {FOUND: FINDING}, "").write(self.folder)
        self.git("init", "-q", "-b", "main")

    def git(self, *words: str, on: str = "2031-03-10") -> str:
        """Run git as somebody, on a day."""
        day = f"{on}T12:00:00+00:00"
        surroundings = {**os.environ, **AUTHOR, "GIT_AUTHOR_DATE": day, "GIT_COMMITTER_DATE": day}
        done = subprocess.run(
            ["git", "-C", str(self.root), *words],
            env=surroundings,
            capture_output=True,
            check=True,
        )
        return done.stdout.decode("utf-8", "replace")

    def commit(self, on: str = "2031-03-10", message: str = "as it stands") -> None:
        """Commit everything as it stands."""
        self.git("add", "-A")
        self.git("commit", "-q", "--allow-empty", "-m", message, on=on)

    def seal(self) -> None:
        """Make the last commit one that somebody seems to have signed."""
        bare = self.git("cat-file", "commit", "HEAD")
        head, _, message = bare.partition("\n\n")
        sealed = (
            f"{head}\ngpgsig -----BEGIN PGP SIGNATURE-----\n \n x\n -----END PGP SIGNATURE-----"
        )
        path = self.root / ".git" / "sealed"
        path.write_text(f"{sealed}\n\n{message}", "utf-8")
        name = self.git("hash-object", "-t", "commit", "-w", str(path)).strip()
        self.git("update-ref", "HEAD", name)

    def write(self, path: str, text: str) -> None:
        """Write one file of the content."""
        target = self.folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, "utf-8")

    def without_own_day(self) -> None:
        """Let the vessel keep the day of the calendar."""
        path = self.folder / "handbook.yml"
        path.write_text(path.read_text("utf-8").replace("as_of: 2031-10-01\n", ""), "utf-8")
