"""Whether a signature was made with the key of its person, over the very line that stands there.

A line that anybody can type says who signed; a proof shows it. What is signed with the key is the
statement: of which record it is, and every field of the line with its digest and what it saw. One
sign changed in the line, or the line put under another record, and the proof fits no longer.
"""

import json
from collections.abc import Mapping
from dataclasses import fields
from datetime import date
from enum import Enum, StrEnum
from typing import Any

from garboard.reading.allowed_signers import Signers
from garboard.reading.ssh_signatures import Answer, verify_text
from garboard.records.signoff import SignOff

__all__ = ["Proof", "proof_of", "statement"]

FORM = "garboard signature, form 1"


class Proof(StrEnum):
    """How far a line is proved."""

    NOT_ASKED = "no key, no proof"
    FITS = "proved"
    FORGED = "does not fit"
    OWED = "has a key and no proof"
    UNKNOWN = "cannot be looked at here"

    @property
    def believed(self) -> bool:
        """Whether the line may count."""
        return self in (Proof.NOT_ASKED, Proof.FITS)


def statement(key: str, line: SignOff) -> str:
    """What is signed with a key: the record, and every field of the line but the proof itself.

    Args:
        key: Id of the record, or path of the written page.
        line: With its digest and what it saw.

    >>> from garboard.records.signoff import Capacity
    >>> line = SignOff(capacity=Capacity.WITNESS, by="surveyor-1", on=date(2031, 2, 14))
    >>> statement("SA-TR-002", line).splitlines()[0]
    'garboard signature, form 1'
    """
    said = {item.name: _plain(getattr(line, item.name)) for item in fields(line)}
    del said["proof"]
    whole = {"of": key, "line": {name: value for name, value in said.items() if value}}
    text = json.dumps(whole, sort_keys=True, ensure_ascii=False, separators=(",", ":"))
    return f"{FORM}\n{text}\n"


def _plain(value: Any) -> Any:  # noqa: ANN401 - what a field of a line holds
    match value:
        case Enum():
            return str(value.value)
        case date():
            return value.isoformat()
        case Mapping():
            return {str(name): str(each) for name, each in value.items()}
        case tuple():
            return [str(each) for each in value]
        case _:
            return value


def proof_of(key: str, line: SignOff, signers: Signers) -> Proof:
    """How far one line is proved.

    Args:
        key: Id of the record, or path of the written page.
        line: As it stands in the file.
        signers: Which key speaks for whom.
    """
    keys = signers.of(line.by, line.on)
    if not line.proof:
        return Proof.OWED if keys else Proof.NOT_ASKED
    answer = verify_text(statement(key, line), line.proof, keys)
    return {
        Answer.FITS: Proof.FITS,
        Answer.FITS_NOT: Proof.FORGED,
        Answer.NOBODY_TO_ASK: Proof.UNKNOWN,
    }[answer]
