"""The folder `.garboard` beside the content: what was worked out before, and can be thrown away.

Every file in it is sealed with the engine that wrote it and with what only this folder on this
machine has. A file that is cut short or changed, that came with a copy or a pull request, or that
another version wrote is passed over in silence. A folder that cannot be written keeps nothing.
"""

import contextlib
import os
import platform
import stat
import tempfile
from hashlib import blake2b
from pathlib import Path

__all__ = ["StoreFolder"]

NAME = ".garboard"
MOST = 400_000_000
"""Bytes of a file that is opened."""
HEAD = b'{"seal":"%s",\n"kept":\n'
TAIL = b"\n}\n"
SEALED = 64


class StoreFolder:
    """The store of one content folder."""

    def __init__(self, content: Path, engine: str) -> None:
        self.folder = content / NAME
        self.engine = engine

    def read(self, name: str) -> str | None:
        """What was kept under a name; None where it is not exactly what this engine wrote here."""
        seal = self.seal()
        if not self.engine or seal is None:
            return None
        try:
            raw = read_file(self.folder / name)
            head, text = len(HEAD) - 2 + SEALED, raw[: -len(TAIL)]
            body = text[head:]
            if raw[head:] != body + TAIL or text[:head] != HEAD % sealed(seal, name, body):
                return None
            return body.decode("utf-8")
        except (OSError, ValueError):
            return None

    def write(self, name: str, text: str) -> None:
        """Keep a text: whole, or not at all."""
        if not self.engine:
            return
        with contextlib.suppress(OSError, ValueError):
            self.folder.mkdir(exist_ok=True)
            seal = self.seal()
            if seal is None:
                return
            with (
                contextlib.suppress(FileExistsError),
                (self.folder / ".gitignore").open("x") as file,
            ):
                file.write("*\n")
            body = text.encode("utf-8")
            replace_file(self.folder / name, HEAD % sealed(seal, name, body) + body + TAIL)

    def seal(self) -> bytes | None:
        """What only this folder on this machine has; None where there is none, or it is a link."""
        try:
            facts = self.folder.lstat()
        except OSError:
            return None
        if not stat.S_ISDIR(facts.st_mode):
            return None
        told = f"{self.engine} {platform.node()} {facts.st_ino}"
        return blake2b(told.encode(), digest_size=32).digest()


def sealed(seal: bytes, name: str, body: bytes) -> bytes:
    """The digest that a file must bear."""
    digest = blake2b(name.encode(), digest_size=SEALED // 2, key=seal)
    digest.update(b"\n")
    digest.update(body)
    return digest.hexdigest().encode()


def read_file(path: Path) -> bytes:
    """A plain file; no link is followed.

    Raises:
        OSError: There is none, or it cannot be opened.
        ValueError: It is too large.
    """
    flags = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0)
    handle = os.open(path, flags | getattr(os, "O_BINARY", 0))
    with os.fdopen(handle, "rb") as file:
        facts = os.fstat(handle)
        if not stat.S_ISREG(facts.st_mode) or facts.st_size > MOST:
            raise ValueError(path)
        return file.read()


def replace_file(path: Path, raw: bytes) -> None:
    """Write beside a file and take its place, so that a reader meets the old one or the new one.

    Raises:
        OSError: The folder cannot be written.
    """
    handle, name = tempfile.mkstemp(prefix=f"{path.name}.", suffix=".new", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(raw)
        Path(name).replace(path)
    except OSError:
        Path(name).unlink(missing_ok=True)
        raise
