"""Walk a content folder: which files there are, and which of them nobody can read.

No link is followed, so that nothing from outside can get into the book; hidden files are passed
over. What is left unread is said, file by file.
"""

import os
import stat
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath

from garboard.errors import Diagnostic, Severity, Where
from garboard.names import nearest
from garboard.reading.allowed_signers import ALLOWED_SIGNERS
from garboard.reading.strict_yaml import CODE

__all__ = ["LISTED", "PHOTOS", "REPLIES", "Found", "Tree", "is_reply", "walk_folder"]

PHOTOS = (".jpg", ".jpeg", ".png", ".webp", ".avif", ".heic", ".heif", ".gif", ".tif", ".tiff")
LISTED = ("handbook.yml", "people.yml", "sources.yml", "glossary.yml", "spares.yml", "retired.yml")
READ = (".md", ".yml", ".csv", ".json")
REPLIES = "replies"
"""The folder of what reviewers wrote back, each as it came."""
NEARLY = {
    ".yaml": ".yml",
    ".markdown": ".md",
    ".mdown": ".md",
    ".mkd": ".md",
    ".md~": ".md",
    ".yml~": ".yml",
}
SYSTEM = "system.yml"
DEEPEST = 12
MOST = 20_000


@dataclass(frozen=True, slots=True)
class Found:
    """A file of the content folder."""

    path: str
    """Relative, with forward slashes."""
    file: Path
    size: int

    @property
    def suffix(self) -> str:
        """Its ending, in small letters."""
        return PurePosixPath(self.path).suffix.casefold()

    @property
    def name(self) -> str:
        """Its name without folders."""
        return PurePosixPath(self.path).name


@dataclass(slots=True)
class Tree:
    """What the walk met."""

    files: list[Found] = field(default_factory=list)
    """In order of path."""
    faults: list[Diagnostic] = field(default_factory=list)

    def note(self, path: str, text: str, cure: str, severity: Severity = Severity.STOP) -> None:
        """Note a fault of a whole file."""
        self.faults.append(Diagnostic(Where(path), severity, text, cure, CODE, path))


def walk_folder(folder: Path) -> Tree:
    """Find every file.

    Args:
        folder: The content folder.
    """
    tree = Tree()
    waiting = [(folder, "")]
    while waiting:
        where, prefix = waiting.pop()
        for entry, path in _entries(where, prefix, tree):
            if _is_folder(entry, path, tree):
                if path.count("/") >= DEEPEST:
                    tree.note(path, f"more than {DEEPEST} folders within each other", "move it up")
                else:
                    waiting.append((Path(entry.path), f"{path}/"))
        if len(tree.files) > MOST:
            tree.note(prefix.rstrip("/") or ".", f"more than {MOST} files", "take some out")
            break
    tree.files.sort(key=lambda found: found.path)
    return tree


def _entries(where: Path, prefix: str, tree: Tree) -> Iterator[tuple[os.DirEntry[str], str]]:
    """What lies in one folder; two names that some machines cannot tell apart are refused."""
    try:
        with os.scandir(where) as scan:
            entries = sorted(scan, key=lambda entry: entry.name)
    except OSError as stop:
        tree.note(
            prefix.rstrip("/") or ".",
            f"the folder cannot be opened: {stop.strerror}",
            "see its rights",
        )
        return
    seen: dict[str, str] = {}
    for entry in entries:
        if entry.name.startswith("."):
            continue
        shown = _typable(entry.name)
        path = f"{prefix}{shown}"
        if shown != entry.name or "\\" in shown:
            tree.note(path, "a name with signs that cannot be typed", "rename the file")
            continue
        folded = unicodedata.normalize("NFC", entry.name).casefold()
        if folded in seen:
            text = f"{entry.name} and {seen[folded]} are one name to some machines"
            tree.note(path, text, "rename one of them")
            continue
        seen[folded] = entry.name
        yield entry, path


def _typable(name: str) -> str:
    """A name as it can be printed anywhere: what cannot be typed is spelt out."""
    text = os.fsencode(name).decode("utf-8", "backslashreplace")
    return "".join(sign if sign.isprintable() else f"\\x{ord(sign):02x}" for sign in text)


def _is_folder(entry: os.DirEntry[str], path: str, tree: Tree) -> bool:
    """Whether it is a folder; a file is noted as found, and everything else refused."""
    try:
        facts = entry.stat(follow_symlinks=False)
    except OSError as stop:
        tree.note(path, f"cannot be looked at: {stop.strerror}", "see its rights")
        return False
    if stat.S_ISDIR(facts.st_mode):
        return True
    if stat.S_ISLNK(facts.st_mode):
        text = "a link to another place is not followed"
        tree.note(path, text, "copy the file in, or delete the link")
    elif not stat.S_ISREG(facts.st_mode):
        tree.note(path, "this is no file that can be read", "delete it")
    else:
        found = Found(path, Path(entry.path), facts.st_size)
        _look(found, tree)
    return False


def _look(found: Found, tree: Tree) -> None:
    """Keep a file that is read; say of any other that it is not."""
    suffix = PurePosixPath(found.path).suffix
    right = NEARLY.get(suffix.casefold())
    if right or (found.suffix in READ and suffix != found.suffix):
        name = PurePosixPath(found.path).with_suffix(right or found.suffix).name
        tree.note(found.path, f"a file ending in {suffix} is not read", f"rename it to {name}")
    elif found.suffix == ".yml" and not _is_known(found.path):
        near = nearest(found.name, (*LISTED, SYSTEM))
        cure = (
            f"rename it to {near}, or delete it" if near else "put it into a record, or delete it"
        )
        tree.note(found.path, f"{found.name} is no file of the handbook in this place", cure)
    elif (
        found.suffix in READ
        or found.suffix in PHOTOS
        or found.path == ALLOWED_SIGNERS
        or is_reply(found.path)
    ):
        tree.files.append(found)
    else:
        ending = suffix or "no ending"
        text = f"a file with {ending} is not read"
        tree.note(found.path, text, "move it out, if it is of no use here", Severity.NOTE)


def is_reply(path: str) -> bool:
    """Whether a file of the content folder is a kept reply.

    >>> is_reply("replies/2031-09-28-sa-cn-002-reviewer-1.txt"), is_reply("notes.txt")
    (True, False)
    """
    folder, _, name = path.rpartition("/")
    return folder == REPLIES and name.endswith(".txt")


def _is_known(path: str) -> bool:
    parts = path.split("/")
    of_system = len(parts) == 3 and parts[0] == "systems" and parts[2] == SYSTEM
    return path in LISTED or of_system
