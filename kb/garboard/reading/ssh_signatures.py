"""The answers of ssh-keygen: a text signed with somebody's key, and whether a signature fits.

It is optional: where it is not on the machine, nothing is said to be proved. No word of a record but a
key of people.yml reaches the command line.
"""

import base64
import binascii
import tempfile
import textwrap
from enum import StrEnum
from functools import cache
from pathlib import Path

from garboard.errors import GarboardError
from garboard.reading.allowed_signers import NAMESPACE, SigningKey
from garboard.reading.history import ask, find_program

__all__ = ["Answer", "sign_text", "verify_text"]

TOOL = "ssh-keygen"
PATIENCE = 20
"""Seconds that one answer may take."""
BEGIN, END = "-----BEGIN SSH SIGNATURE-----", "-----END SSH SIGNATURE-----"
WIDTH = 70
LONGEST = 8_000
"""Signs of a signature; the longest key in use makes some 1 500."""


class Answer(StrEnum):
    """What ssh-keygen says of a signature."""

    FITS = "fits"
    FITS_NOT = "does not fit"
    NOBODY_TO_ASK = "ssh-keygen is not on this machine"


def sign_text(text: str, key: Path) -> str:
    """Sign a text.

    Args:
        text: What is signed.
        key: File of a private key, or of a public one whose other half an agent holds.

    Returns:
        The signature as one run of base64.

    Raises:
        GarboardError: There is no ssh-keygen or no key, or it will not sign.
    """
    tool = find_program(TOOL)
    if tool is None:
        raise GarboardError(f"{TOOL} is not on this machine, so nothing can be signed with a key")
    if not key.is_file():
        raise GarboardError(f"there is no key file {key}")
    words = [tool, "-Y", "sign", "-n", NAMESPACE, "-f", str(key.resolve())]
    done = ask(words, given=text.encode())
    made = "".join(done.out.decode("ascii", "replace").replace(BEGIN, "").replace(END, "").split())
    if done.status or not made:
        said = done.said.strip().splitlines()
        raise GarboardError(f"{TOOL} did not sign with {key}: {said[-1] if said else 'no reason'}")
    return made


@cache
def verify_text(text: str, proof: str, keys: tuple[SigningKey, ...]) -> Answer:
    """Whether a signature over a text was made with one of some keys; each asked once a process.

    Args:
        text: What was signed.
        proof: The signature, as base64.
        keys: Keys of one person that spoke for them on the day; with none, nothing fits.
    """
    if not keys or not _is_base64(proof):
        return Answer.FITS_NOT
    tool = find_program(TOOL)
    if tool is None:
        return Answer.NOBODY_TO_ASK
    with tempfile.TemporaryDirectory() as folder:
        armoured, allowed = Path(folder) / "proof", Path(folder) / "allowed"
        wrapped = "\n".join(textwrap.wrap(proof, WIDTH))
        armoured.write_text(f"{BEGIN}\n{wrapped}\n{END}\n", "ascii")
        allowed.write_text("".join(f"{one.line}\n" for one in keys), "ascii")
        words = [tool, "-Y", "verify", "-n", NAMESPACE, "-I", keys[0].person]
        words += ["-f", str(allowed), "-s", str(armoured)]
        done = ask(words, given=text.encode(), patience=PATIENCE)
    if done.status is None:
        return Answer.NOBODY_TO_ASK
    return Answer.FITS if done.status == 0 else Answer.FITS_NOT


def _is_base64(text: str) -> bool:
    try:
        return len(text) <= LONGEST and bool(base64.b64decode(text, validate=True))
    except (binascii.Error, ValueError):
        return False
