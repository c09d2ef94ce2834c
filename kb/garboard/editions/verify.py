"""Whether the editions of a content folder are as they were issued."""

from collections.abc import Iterator
from pathlib import Path

from garboard.errors import GarboardError
from garboard.reading.allowed_signers import ALLOWED_SIGNERS, Signers, read_signers
from garboard.reading.edition_file import Editions, statement
from garboard.reading.edition_folder import editions_in
from garboard.reading.ssh_signatures import Answer, verify_text
from garboard.records.edition import Edition

__all__ = ["faults_of", "known_edition", "proof_words"]


def known_edition(editions: Editions, number: int) -> Edition:
    """The edition of a number.

    Raises:
        GarboardError: There is none.
    """
    found = editions.numbered(number)
    if found is None:
        have = ", ".join(str(one.number) for one in editions.issued) or "none"
        raise GarboardError(f"there is no edition {number}; issued so far: {have}")
    return found


def faults_of(folder: Path, number: int | None = None) -> tuple[str, ...]:
    """Everything that is wrong with the editions of a folder.

    Args:
        folder: The content folder.
        number: One edition alone; left out, all.

    Raises:
        GarboardError: There is no such folder or edition.
    """
    editions = editions_in(folder)
    if number is not None:
        named = [one for one in editions.diagnostics if f"editions/{number}.json" in one.where.path]
        if named:
            return tuple(one.text for one in named)
        known_edition(editions, number)
    issued = [one for one in editions.issued if number in (None, one.number)]
    found = [one.text for one in editions.diagnostics if number is None]
    for edition in issued:
        found += [*_unkept(editions, edition), *_unproved(folder, edition)]
    return tuple(dict.fromkeys(found))


def _unkept(editions: Editions, edition: Edition) -> Iterator[str]:
    """Files whose text no edition holds; photographs are kept by digest alone, beside the content."""
    photos = {path for path in edition.files if editions.text_of(edition.files[path]) is None}
    for path in sorted(photos):
        if path.endswith((".md", ".yml", ".csv", ".json")):
            yield f"no edition holds the text of {path} as edition {edition.number} was issued"


def _unproved(folder: Path, edition: Edition) -> Iterator[str]:
    """Why the proof of an edition is not believed; an issuer without a key owes none."""
    keys = _signers(folder, edition).of(edition.by, edition.issued)
    if not edition.proof:
        if keys:
            role = edition.people.get(edition.by, "issuer")
            yield f"edition {edition.number} has no proof, though its {role} has a key"
        return
    if verify_text(statement(edition), edition.proof, keys) is Answer.FITS_NOT:
        yield f"the proof of edition {edition.number} does not fit it, or not the issuer's key"


def proof_words(folder: Path, edition: Edition) -> str:
    """How far an edition is proved, in words."""
    if not edition.proof:
        return "no key was used"
    keys = _signers(folder, edition).of(edition.by, edition.issued)
    return {
        Answer.FITS: "proved by the issuer's key",
        Answer.FITS_NOT: "its proof does not fit",
        Answer.NOBODY_TO_ASK: "its proof cannot be looked at: ssh-keygen is not on this machine",
    }[verify_text(statement(edition), edition.proof, keys)]


def _signers(folder: Path, edition: Edition) -> Signers:
    file = folder / ALLOWED_SIGNERS
    if file.is_symlink() or not file.is_file():
        return Signers()
    text = file.read_bytes().decode("utf-8", "replace").replace("\r\n", "\n")
    return read_signers(text, frozenset(edition.people))
