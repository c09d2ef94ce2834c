"""A golden case: a few files, and every diagnostic of one code that they give. No programming needed.

A case is `tests/golden/<rule-code>/<behaviour>.yml` with `says`, `files` and `finds`. Files that a case
does not bring (handbook.yml, people.yml, sources.yml) are taken from BASE.
"""

from dataclasses import dataclass
from pathlib import Path

import yaml

FOLDER = Path(__file__).parent / "golden"

BASE = {
    "handbook.yml": """\
vessel: Skerry Light
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {SA: starting-air, BG: bilge-fire, DC: dc-power}
edition: {life: 12 months}
site: {atmosphere: "1013 mbar(a) [LOGBOOK]", T_engine_room: "25 degC [LOGBOOK]"}
instruments: {G-07: {what: test gauge 0-100 bar, calibrated: 2031-01-12, due: 2032-01-12}}
as_of: 2031-10-01
""",
    "people.yml": """\
lead: {role: lead builder, may: [author, doer, in charge]}
reviewer-1: {role: remote reviewer, may: [author, checker, approver], class: A}
volunteer-1: {role: volunteer, may: [author, doer, verifier]}
surveyor-1: {role: surveyor, may: [named party, witness]}
""",
    "sources.yml": """\
LOGBOOK: {title: ship's log, edition: 2031, seen: original, by: lead}
plate-R1: {title: plate of receiver 1, edition: 1961, seen: original, by: lead}
BOYLE: {title: Boyle's law, edition: any, seen: secondary, by: lead}
OLD-BOOK: {title: a book somebody remembered, edition: 1950, seen: remembered, by: lead}
""",
}


@dataclass(frozen=True)
class Case:
    """One behaviour of one rule."""

    code: str
    name: str
    says: str
    files: dict[str, str]
    finds: str

    def __str__(self) -> str:
        return f"{self.code}/{self.name}"

    def write(self, folder: Path) -> Path:
        """Lay the case's files over the base, in a folder."""
        for path, text in (BASE | self.files).items():
            target = folder / path
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(text.encode("utf-8"))
        return folder


def cases() -> list[Case]:
    """Every golden case, in order."""
    found = []
    for path in sorted(FOLDER.glob("*/*.yml")):
        data = yaml.safe_load(path.read_text("utf-8"))
        found.append(
            Case(path.parent.name, path.stem, data["says"], data["files"], data.get("finds") or "")
        )
    return found
