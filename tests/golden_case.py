"""A golden case: a few files, and every diagnostic of one code that they give. No programming needed.

A case is `tests/golden/<rule-code>/<behaviour>.yml` with `says`, `files` and `finds`. Files that a case
does not bring (handbook.yml, people.yml, sources.yml) are taken from BASE. With `issued`, a list of
`{day, files}`, each is issued as an edition on its day before `files` take their place. With
`at_issue: true` the rules are asked that speak only when an edition is issued.
"""

import shutil
from dataclasses import dataclass, field
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import yaml

from garboard.editions.freeze import freeze
from garboard.errors import Diagnostic
from garboard.handbook import read, read_book
from garboard.reading.edition_file import edition_path, write_edition
from garboard.reading.whole_folder import read_files
from garboard.rules import ISSUE_RULES, RULES
from garboard.rules.judge import judge

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
    issued: list[dict[str, Any]] = field(default_factory=list)
    at_issue: bool = False

    def __str__(self) -> str:
        return f"{self.code}/{self.name}"

    def found(self, folder: Path) -> list[str]:
        """What is found under the case's own code in a folder it was written to."""
        asked = judge(read_book(folder), ISSUE_RULES) if self.at_issue else found_in(folder)
        return [str(item) for item in asked if item.code == self.code]

    def write(self, folder: Path) -> Path:
        """Lay the case's files over the base, in a folder, beside the editions issued before."""
        editions: dict[str, str] = {}
        for one in self.issued:
            editions |= issue(folder, one["files"] | editions, one["day"])
        lay_out(folder, editions | self.files)
        return folder


def found_in(folder: Path) -> tuple[Diagnostic, ...]:
    """What all rules say of a folder: as `read` does, without laying out pages that nobody looks at."""
    return judge(read_book(folder), RULES)


def lay_out(folder: Path, files: dict[str, str]) -> None:
    """Write files over the base, and nothing else."""
    for old in folder.iterdir() if folder.exists() else ():
        shutil.rmtree(old) if old.is_dir() else old.unlink()
    for path, text in (BASE | files).items():
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(text.encode("utf-8"))


def issue(folder: Path, files: dict[str, str], on: date) -> dict[str, str]:
    """Issue an edition of some files on a day, whatever stands against it; its file by path."""
    lay_out(folder, files)
    edition = freeze_folder(folder, on)
    return {edition: (folder / edition).read_text("utf-8")}


def freeze_folder(folder: Path, on: date) -> str:
    """Issue an edition of a folder as it stands, on a day, and put it there; its path."""
    handbook = folder / "handbook.yml"
    text = handbook.read_text("utf-8")
    handbook.write_text(text.replace("as_of: 2031-10-01", f"as_of: {on}"), "utf-8")
    book = read(folder)
    kept = read_files(folder, book.book.content.digests)
    edition = freeze(book, kept, "lead", on + timedelta(days=365), "life of 12 months")
    handbook.write_text(text, "utf-8")
    target = folder / edition_path(edition.number)
    target.parent.mkdir(exist_ok=True)
    target.write_text(write_edition(edition), "utf-8")
    return edition_path(edition.number)


def cases() -> list[Case]:
    """Every golden case, in order."""
    found = []
    for path in sorted(FOLDER.glob("*/*.yml")):
        data = yaml.safe_load(path.read_text("utf-8"))
        found.append(
            Case(
                path.parent.name,
                path.stem,
                data["says"],
                data["files"],
                data.get("finds") or "",
                data.get("issued") or [],
                data.get("at_issue", False),
            )
        )
    return found
