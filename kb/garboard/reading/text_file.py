"""Read the bytes of a file as text, or say which byte stands in the way.

A byte order mark and the line ends of other machines make no difference to what is read.
"""

import hashlib
from dataclasses import dataclass

from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.strict_yaml import CODE

__all__ = ["LARGEST", "LARGEST_LOG", "TextFile", "digest_of", "read_text"]

LARGEST = 1_000_000
"""Bytes; no record comes near it."""
LARGEST_LOG = 8_000_000
"""Bytes of a file of logged readings."""
MARK = b"\xef\xbb\xbf"


@dataclass(frozen=True, slots=True)
class TextFile:
    """A file as text with plain line feeds."""

    text: str
    digest: str
    fault: Diagnostic | None = None
    """Why it could not be read; the text then holds what could."""


def digest_of(data: bytes) -> str:
    """The digest by which a file is known to be unchanged.

    >>> digest_of(b"")[:8]
    'e3b0c442'
    """
    return hashlib.sha256(data).hexdigest()


def read_text(data: bytes, path: str, largest: int = LARGEST) -> TextFile:
    """Read the bytes of a file.

    Args:
        data: All of them.
        path: Of the file in the content folder.
        largest: Bytes that it may have.
    """
    digest = digest_of(data)
    if len(data) > largest:
        text = f"{len(data)} bytes, more than {largest}"
        fault = Diagnostic(Where(path), Severity.STOP, text, "split the file", CODE, path)
        return TextFile("", digest, fault)
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        text = "the file is saved as UTF-16"
        fault = Diagnostic(Where(path), Severity.STOP, text, "save it as UTF-8", CODE, path)
        return TextFile(data.decode("utf-16", "replace"), digest, fault)
    bare = data.removeprefix(MARK)
    try:
        return TextFile(plain_lines(bare.decode("utf-8")), digest)
    except UnicodeDecodeError as stop:
        return TextFile(
            plain_lines(bare.decode("utf-8", "replace")), digest, _located(bare, stop, path)
        )


def plain_lines(text: str) -> str:
    r"""Text with plain line feeds.

    >>> plain_lines("a\r\nb\rc")
    'a\nb\nc'
    """
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _located(data: bytes, stop: UnicodeDecodeError, path: str) -> Diagnostic:
    before = plain_lines(data[: stop.start].decode("utf-8", "replace"))
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    start = max(data.rfind(b"\n", 0, stop.start), data.rfind(b"\r", 0, stop.start)) + 1
    nth = stop.start - start + 1
    text = f"byte 0x{data[stop.start]:02X}, number {nth} of its line, is no UTF-8"
    cure = "save the file as UTF-8, and retype the letter"
    return Diagnostic(Where(path, line, column), Severity.STOP, text, cure, CODE, path)
