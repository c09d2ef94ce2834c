"""The file of an issued edition: how it is written and sealed, and how it is read back.

It has exactly one form: what is read is written again and must give the same bytes. So one flipped
byte anywhere in it is seen, be it in a space.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

import msgspec

from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.text_file import digest_of
from garboard.records.edition import FORM, Edition

__all__ = [
    "CODE",
    "FOLDER",
    "Editions",
    "edition_path",
    "is_edition",
    "read_editions",
    "sealed",
    "statement",
    "write_edition",
]

CODE = "edition-altered"
FOLDER = "editions"
PROOF_FORM = "garboard edition proof, form 1"
NAMED = re.compile(rf"{FOLDER}/(?P<number>[1-9]\d{{0,5}})\.json")


@dataclass(frozen=True, slots=True)
class Editions:
    """Every issued edition that could be read, the oldest first."""

    issued: tuple[Edition, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()

    @property
    def last(self) -> Edition | None:
        """The newest; None where none was issued."""
        return self.issued[-1] if self.issued else None

    def numbered(self, number: int) -> Edition | None:
        """The edition of a number."""
        return next((one for one in self.issued if one.number == number), None)

    def text_of(self, digest: str) -> str | None:
        """A file of an edition, by the SHA-256 of its bytes, from whichever edition keeps it."""
        kept = next((one.texts[digest] for one in self.issued if digest in one.texts), None)
        return None if kept is None else "\n".join(kept)


def edition_path(number: int) -> str:
    """Where an edition is kept in the content folder.

    >>> edition_path(7)
    'editions/7.json'
    """
    return f"{FOLDER}/{number}.json"


def is_edition(path: str) -> bool:
    """Whether a file of the content folder is named as an edition.

    >>> is_edition("editions/7.json"), is_edition("editions/07.json")
    (True, False)
    """
    return bool(NAMED.fullmatch(path))


def statement(edition: Edition) -> str:
    """What an issuer signs with a key: which edition, and the digest of everything in it.

    The seal is made after the proof and covers it, so that neither can be exchanged unseen.
    """
    bare = digest_of(write_edition(replace(edition, proof="", seal="")).encode("utf-8"))
    lines = (
        PROOF_FORM,
        f"vessel: {edition.vessel}",
        f"edition: {edition.number}",
        f"issued: {edition.issued}",
        f"by: {edition.by}",
        f"sha256: {bare}",
    )
    return "".join(f"{line}\n" for line in lines)


def sealed(edition: Edition) -> Edition:
    """An edition with the seal that fits it."""
    return replace(edition, seal=_seal(edition))


def write_edition(edition: Edition) -> str:
    """An edition as the text of its file."""
    made = msgspec.json.format(msgspec.json.encode(edition, order="sorted"), indent=1)
    return made.decode("utf-8") + "\n"


def _seal(edition: Edition) -> str:
    return digest_of(write_edition(replace(edition, seal="")).encode("utf-8"))


def read_editions(texts: Mapping[str, str]) -> Editions:
    """Read every edition file of a content folder.

    Args:
        texts: Text of each JSON file, by path.

    Returns:
        The editions in order, and what is wrong with any of them: one that was altered, does not
        follow from the one before, or is missing in the row.
    """
    faults: list[Diagnostic] = []
    issued: list[Edition] = []
    for path, number in sorted(_numbered(texts), key=lambda one: one[1]):
        edition = _read(texts[path], path, faults)
        if edition is None:
            continue
        before = issued[-1] if issued else None
        if edition.number != number:
            said = f"{path} is edition {edition.number}"
            faults.append(_fault(path, said, f"name it {edition_path(edition.number)}"))
        elif number != (before.number if before else 0) + 1:
            said = f"edition {number} is here, edition {number - 1} is not"
            faults.append(_fault(path, said, "put back the file that is missing"))
        elif edition.previous != (before.seal if before else ""):
            said = (
                f"edition {number} follows another edition {number - 1} than the one that is here"
            )
            faults.append(_fault(path, said, "put back the file that was issued"))
        issued.append(edition)
    return Editions(tuple(issued), tuple(faults))


def _numbered(texts: Iterable[str]) -> list[tuple[str, int]]:
    found = ((path, NAMED.fullmatch(path)) for path in texts)
    return [(path, int(match["number"])) for path, match in found if match]


def _read(text: str, path: str, faults: list[Diagnostic]) -> Edition | None:
    try:
        edition = msgspec.json.decode(text, type=Edition)
    except msgspec.MsgspecError as stop:
        said = f"{path} cannot be read as an edition: {stop}"
        faults.append(_fault(path, said, "put back the file that was issued"))
        return None
    if edition.form != FORM:
        said = f"{path} is written in another form: {edition.form[:40]}"
        faults.append(_fault(path, said, "read it with the version that wrote it"))
        return None
    broken = next(
        (
            kept
            for kept, rows in edition.texts.items()
            if digest_of("\n".join(rows).encode("utf-8")) != kept
        ),
        "",
    )
    if broken or write_edition(edition) != text or edition.seal != _seal(edition):
        where = f"the text {broken[:16]} in it" if broken else "it"
        said = f"edition {edition.number} is not as it was issued: {where} does not fit its seal"
        faults.append(_fault(path, said, "put back the file that was issued"))
    return edition


def _fault(path: str, text: str, cure: str) -> Diagnostic:
    return Diagnostic(Where(path), Severity.STOP, text, cure, CODE, path)
