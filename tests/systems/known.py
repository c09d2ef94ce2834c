"""Systems with a known right answer, and what a survey says otherwise."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from garboard.systems.finding import Level, PathFinding
from tests.systems.pieces import short

FILE = Path(__file__).parent / "known_systems.yml"
Key = tuple[str, str, str]
"""Code, short tag or name of a header, level; an aside is a note."""


@dataclass(frozen=True)
class Known:
    """One system and its answer."""

    name: str
    text: str
    answer: Mapping[Key, Mapping[str, Any]]
    """What each finding has to name."""
    left_out: frozenset[str]

    @property
    def code(self) -> str:
        """Of the system."""
        return self.text.split(maxsplit=2)[1]


def known_systems(text: str) -> list[Known]:
    """Every system of such a file."""
    data = yaml.safe_load(text)
    left_out = frozenset(data["left_out"])
    return [
        Known(
            one["name"],
            one["text"],
            {
                (said["code"], said["about"], said["level"]): said.get("must_name", {})
                for said in one["answer"]
            },
            left_out,
        )
        for one in data["systems"]
    ]


def key_of(found: PathFinding) -> Key:
    """By what a finding is compared."""
    level = Level.NOTE if found.level is Level.ASIDE else found.level
    return found.code, short(found.about), str(level)


def differences(known: Known, findings: Sequence[PathFinding]) -> list[str]:
    """What is missing, what is too much, and what a sentence does not name."""
    by_key: dict[Key, list[PathFinding]] = {}
    for found in findings:
        if found.code not in known.left_out:
            by_key.setdefault(key_of(found), []).append(found)
    said = [f"missing: {' '.join(key)}" for key in known.answer if key not in by_key]
    said += [
        f"too much: {' '.join(key)}: {found[0].text}"
        for key, found in by_key.items()
        if key not in known.answer
    ]
    for key, wanted in known.answer.items():
        if key in by_key:
            said += [f"{' '.join(key)}: {lack}" for lack in unnamed(wanted, by_key[key])]
    return sorted(said)


def unnamed(wanted: Mapping[str, Any], findings: Iterable[PathFinding]) -> list[str]:
    """What the findings of one code and part do not name, in their fields or in their words."""
    said = list(findings)
    words = {word.strip(",;:.()") for found in said for word in found.text.split()}
    fields: dict[str, set[Any]] = {
        "shut": {short(tag) for found in said for tag in found.line.shut},
        "open": {short(tag) for found in said for tag in found.line.open},
        "turned": {(short(tag), to) for found in said for tag, to in found.line.turned},
        "locks": {short(tag) for found in said for tag in found.locks},
    }
    fields["name"] = {short(tag) for found in said for tag in (*found.at_fault, *found.endangers)}
    fields["name"] |= {short(word) for word in words}
    lacking = []
    for form, named in wanted.items():
        each = list(named.items()) if isinstance(named, Mapping) else list(named)
        lacking += [f"does not say {form}: {one}" for one in each if one not in fields[form]]
        tags = [one[0] if isinstance(one, tuple) else one for one in each]
        spoken = {short(word) for word in words}
        lacking += [f"the sentence has no word of {tag}" for tag in tags if tag not in spoken]
    return lacking
