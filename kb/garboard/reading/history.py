"""Other programs, asked without a shell: ssh-keygen, and git for what its log says of the content.

The only place where another program is run. Each is optional: where it is not on the machine, less is
said. Of git nothing is run that a repository could bring along: no pager, alias, hook, external diff,
text conversion, watcher, signature check or fetch, and nothing of the surroundings that steers it.
"""

import os
import secrets
import shutil
import subprocess
import tempfile
import threading
from dataclasses import dataclass
from pathlib import Path

__all__ = ["Answered", "History", "ask", "find_program", "read_history"]

GIT = "git"
MOST = 32_000_000
"""Bytes of a log that are read; what is older is unknown."""
LONGEST = 120.0
"""Seconds that git may take."""
SAID = 4_000
"""Bytes of what a program complains of."""
CHUNK = 1 << 16
ALONE = ("--no-pager", "--no-optional-locks", "--no-replace-objects")
SETTINGS = {
    "core.fsmonitor": "false",
    "core.hooksPath": os.devnull,
    "core.quotePath": "false",
    "core.untrackedCache": "false",
    "diff.orderFile": os.devnull,
    "diff.suppressBlankEmpty": "false",
    "log.follow": "false",
    "log.showRoot": "true",
    "log.showSignature": "false",
    "protocol.allow": "never",
}
SHOWN = (
    "--full-history",
    "--patch",
    "--unified=1000000",
    "--text",
    "--relative",
    "--diff-merges=first-parent",
    "--no-renames",
    "--no-ext-diff",
    "--no-textconv",
    "--no-color",
    "--no-notes",
    "--no-show-signature",
    "--no-mailmap",
    "--ignore-submodules=all",
    "--src-prefix=a/",
    "--dst-prefix=b/",
)
"""Whole files before and after each commit, because a line alone does not say of which field it is."""


@dataclass(frozen=True, slots=True)
class Answered:
    """What a program gave back."""

    status: int | None
    """Its exit status; None where it could not be run or was stopped."""
    out: bytes = b""
    said: str = ""
    """The beginning of what it complained of."""
    whole: bool = True
    """Whether all of what it wrote was read."""


@dataclass(frozen=True, slots=True)
class History:
    """What git says of a folder."""

    text: bytes = b""
    mark: str = ""
    """Begins the line of each commit; drawn by lot, so that no file can hold it."""
    shallow: bool = False
    """The clone begins somewhere in the middle."""
    whole: bool = True
    """Whether all of it was read."""
    why_not: str = ""
    """Why there is none; empty where there is one."""


def find_program(name: str) -> str | None:
    """Where a program lies on this machine, or None."""
    return shutil.which(name)


def ask(
    words: list[str],
    *,
    given: bytes = b"",
    patience: float | None = None,
    most: int = MOST,
    surroundings: dict[str, str] | None = None,
) -> Answered:
    """Run a program and read what it writes.

    Args:
        words: The program by its path, and its arguments.
        given: What it reads.
        patience: Seconds that it may take; as long as it likes where left out.
        most: Bytes that are read of it; it is stopped after that many.
        surroundings: Its environment; that of this process where left out.
    """
    with tempfile.TemporaryFile() as asked, tempfile.TemporaryFile() as said:
        asked.write(given)
        asked.seek(0)
        try:
            running = subprocess.Popen(  # noqa: S603 - no shell, and no word of a record is in it
                words, stdin=asked, stdout=subprocess.PIPE, stderr=said, env=surroundings
            )
        except OSError as stop:
            return Answered(None, said=str(stop.strerror))
        timer = threading.Timer(patience or 0.0, running.kill)
        if patience is not None:
            timer.start()
        with running:
            out, whole = _read(running, most)
            if not whole:
                running.kill()
            running.wait()
        timer.cancel()
        said.seek(0)
        complaint = said.read(SAID).decode("utf-8", "replace")
    stopped = running.returncode < 0
    return Answered(None if stopped else running.returncode, out, complaint, whole and not stopped)


def _read(running: "subprocess.Popen[bytes]", most: int) -> tuple[bytes, bool]:
    """What a program writes, up to so many bytes, and whether that was all."""
    read = bytearray()
    while running.stdout and (chunk := running.stdout.read(CHUNK)):
        read += chunk
        if len(read) > most:
            return bytes(read[:most]), False
    return bytes(read), True


def read_history(folder: Path, most: int = MOST) -> History:
    """The history of a content folder, newest first, with each Markdown file before and after.

    Args:
        folder: The content folder, in a repository whose root may lie elsewhere.
        most: Bytes that are read of it.
    """
    tool = find_program(GIT)
    if tool is None:
        return History(why_not="git is not on this machine")
    steer = [one for name, value in SETTINGS.items() for one in ("-c", f"{name}={value}")]
    git = [tool, "-C", str(folder.resolve()), *ALONE, *steer]
    where = ask(
        [*git, "rev-parse", "--is-shallow-repository"], patience=LONGEST, surroundings=_own()
    )
    if where.status != 0:
        return History(why_not=_why(where))
    mark = secrets.token_hex(16)
    # Commits are told by hash and days alone: names and messages are anybody's words.
    form = f"--format=tformat:{mark} %H %aI %cI %P"
    words = [*git, "log", *SHOWN, form, "HEAD", "--", "*.md"]
    done = ask(words, patience=LONGEST, most=most, surroundings=_own())
    if done.status not in (0, None) or (done.status is None and not done.out):
        return History(why_not=_why(done))
    shallow = where.out.strip() == b"true"
    return History(done.out, mark, shallow, done.whole)


def _why(done: Answered) -> str:
    """Why git says nothing, in one line."""
    lines = [line for line in done.said.splitlines() if line.strip()]
    if any("not a git repository" in line for line in lines):
        return "the folder is in no git repository"
    if any("unknown revision" in line or "bad revision" in line for line in lines):
        return "nothing was ever committed"
    plain = "".join(one if one.isprintable() else " " for one in lines[0])[:200] if lines else ""
    return f"git cannot read the repository: {plain or 'it was stopped'}"


def _own() -> dict[str, str]:
    """The surroundings of git: nothing that steers it, English, and no way to fetch or to ask."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("GIT_")}
    steered = ("PAGER", "EDITOR", "VISUAL", "SSH_ASKPASS", "LANGUAGE", "LC_ALL")
    plain = {name: value for name, value in kept.items() if name not in steered}
    return {
        **plain,
        "LC_ALL": "C",
        "GIT_ALLOW_PROTOCOL": "none",
        "GIT_NO_LAZY_FETCH": "1",
        "GIT_TERMINAL_PROMPT": "0",
    }
