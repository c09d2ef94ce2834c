"""The manifest of a published edition: every file by its digest, so that a damaged copy is found out.

It guards against accident: a bad memory stick, a half copied folder, a page that somebody changed and
forgot. It is no proof against somebody who rewrites it as well; for that stands the issuer's proof
over the edition, and publishing it anew, which gives the same bytes.
"""

import hashlib
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from garboard.errors import GarboardError
from garboard.records.edition import Edition

__all__ = ["MANIFEST", "check_site", "write_manifest"]

MANIFEST = "manifest.txt"
FORM = "garboard manifest, form 1"
LINE = re.compile(r"(?P<digest>[0-9a-f]{64}) +(?P<size>\d+)  (?P<path>\S(?:.*\S)?)")
END = re.compile(r"(?P<above>.*\n)end: (?P<digest>[0-9a-f]{64})\n", re.DOTALL)
WORKING = "WORKING COPY"


@dataclass(frozen=True, slots=True)
class Kept:
    """What a manifest says of one file."""

    digest: str
    size: int


def write_manifest(site: Path, edition: Edition) -> str:
    """Write the manifest of a site, and give back its text.

    Args:
        site: The finished site; nothing may be added to it afterwards.
        edition: The edition that it is of.
    """
    files = {name: _kept(site / name) for name in _names(site)}
    width = max(len(str(one.size)) for one in files.values())
    head = (
        FORM,
        f"vessel: {edition.vessel}",
        f"edition: {edition.number}",
        f"issued: {edition.issued}",
        f"valid until: {edition.valid_until}",
        f"seal of the edition: {edition.seal}",
        f"files: {len(files)}",
        "",
    )
    lines = (f"{one.digest} {one.size:>{width}}  {name}" for name, one in files.items())
    above = "".join(f"{line}\n" for line in (*head, *lines))
    text = f"{above}end: {_digest(above.encode())}\n"
    (site / MANIFEST).write_bytes(text.encode())
    return text


def check_site(site: Path) -> tuple[str, ...]:
    """What is wrong with a copy of a published edition: each file by name; nothing where all is well.

    Args:
        site: The folder of the copy.

    Raises:
        GarboardError: It is no site, or a working copy, which has no manifest.
    """
    if not (site / MANIFEST).is_file():
        raise GarboardError(_without(site))
    text = (site / MANIFEST).read_bytes().decode("utf-8", "replace")
    whole = END.fullmatch(text)
    if whole is None or _digest(whole["above"].encode()) != whole["digest"]:
        damaged = f"{MANIFEST} is damaged: what stands in it does not fit its last line"
        return (damaged, *(f"{one}, or its line is damaged" for one in _differing(site, text)))
    return tuple(_differing(site, text))


def _without(site: Path) -> str:
    """Why there is no manifest."""
    front = site / "index.html"
    if not front.is_file():
        return f"{site} is no folder of a published handbook: it holds no index.html"
    if WORKING in front.read_bytes().decode("utf-8", "replace"):
        return (
            f"{site} is a working copy and no edition: it has no {MANIFEST}, nothing can be proved"
        )
    return f"{site} has lost its {MANIFEST}, so nothing can be proved; ask for a whole copy"


def _differing(site: Path, text: str) -> Iterator[str]:
    said = _read(text)
    there = _names(site)
    for name in sorted({*said, *there}):
        if name not in said:
            yield f"{name} was added"
        elif name not in there:
            yield f"{name} is missing"
        elif (now := _kept(site / name)) != said[name]:
            yield f"{name} was altered: {now.size} bytes, {said[name].size} when it was published"


def _read(text: str) -> Mapping[str, Kept]:
    found = (LINE.fullmatch(line) for line in text.split("\n"))
    return {one["path"]: Kept(one["digest"], int(one["size"])) for one in found if one}


def _names(site: Path) -> list[str]:
    """Every file but the manifest, in order; a link counts as a file, wherever it leads."""
    found = (path for path in site.rglob("*") if path.is_symlink() or path.is_file())
    names = (path.relative_to(site).as_posix() for path in found)
    return sorted(name for name in names if name != MANIFEST)


def _kept(file: Path) -> Kept:
    """A file as it stands; what cannot be opened, or is a link, fits no line."""
    try:
        data = b"" if file.is_symlink() else file.read_bytes()
    except OSError:
        data = b""
    return Kept(_digest(data), len(data))


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
