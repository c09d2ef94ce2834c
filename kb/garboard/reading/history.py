"""The answers of ssh-keygen: a text signed with somebody's key, and whether a signature fits.

The only place where another program is run. It is optional: where it is not on the machine, nothing
is said to be proved. No shell is used, and no word of a record reaches the command line.
"""

import base64
import binascii
import shutil
import subprocess
import tempfile
import textwrap
from enum import StrEnum
from functools import cache
from pathlib import Path

from garboard.errors import GarboardError
from garboard.reading.allowed_signers import NAMESPACE, SigningKey

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
    tool = shutil.which(TOOL)
    if tool is None:
        raise GarboardError(f"{TOOL} is not on this machine, so nothing can be signed with a key")
    if not key.is_file():
        raise GarboardError(f"there is no key file {key}")
    words = [tool, "-Y", "sign", "-n", NAMESPACE, "-f", str(key.resolve())]
    done = subprocess.run(words, input=text.encode(), capture_output=True, check=False)  # noqa: S603 - no word of a record is in it
    made = "".join(
        done.stdout.decode("ascii", "replace").replace(BEGIN, "").replace(END, "").split()
    )
    if done.returncode or not made:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
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
    tool = shutil.which(TOOL)
    if tool is None:
        return Answer.NOBODY_TO_ASK
    with tempfile.TemporaryDirectory() as folder:
        armoured, allowed = Path(folder) / "proof", Path(folder) / "allowed"
        wrapped = "\n".join(textwrap.wrap(proof, WIDTH))
        armoured.write_text(f"{BEGIN}\n{wrapped}\n{END}\n", "ascii")
        allowed.write_text("".join(f"{one.line}\n" for one in keys), "ascii")
        words = [tool, "-Y", "verify", "-n", NAMESPACE, "-I", keys[0].person]
        words += ["-f", str(allowed), "-s", str(armoured)]
        try:
            done = subprocess.run(  # noqa: S603 - no word of a record is in it but a key of people.yml
                words, input=text.encode(), capture_output=True, check=False, timeout=PATIENCE
            )
        except (OSError, subprocess.TimeoutExpired):
            return Answer.NOBODY_TO_ASK
    return Answer.FITS if done.returncode == 0 else Answer.FITS_NOT


def _is_base64(text: str) -> bool:
    try:
        return len(text) <= LONGEST and bool(base64.b64decode(text, validate=True))
    except (binascii.Error, ValueError):
        return False
