"""The file allowed_signers of the content folder: which key speaks for which person, and when.

Its form is that of the secure shell's own tool (ALLOWED SIGNERS in its manual page of ssh-keygen), of
which the strict part is read: one person a line, by the key of people.yml, without patterns. A line
that cannot be read is told, because it may hold the key that somebody's signatures are owed to.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from garboard.errors import Where

__all__ = ["ALLOWED_SIGNERS", "Signers", "SigningKey", "read_signers"]

ALLOWED_SIGNERS = "allowed_signers"
LINE = re.compile(
    r"(?P<principal>[A-Za-z0-9][A-Za-z0-9_.-]*)[ \t]+"
    r"(?:(?P<options>[a-z-]+=\"[^\"]*\"(?:,[a-z-]+=\"[^\"]*\")*)[ \t]+)?"
    r"(?P<kind>(?:sk-)?(?:ssh|ecdsa)-[A-Za-z0-9@.-]+)[ \t]+(?P<key>[A-Za-z0-9+/]+={0,2})"
    r"(?:[ \t]+.*)?"
)
OPTION = re.compile(r"([a-z-]+)=\"([^\"]*)\"")
MOMENT = re.compile(r"(?P<day>\d{8})(?P<time>\d{4}(?:\d{2})?)?Z?")
NAMESPACE = "garboard"
NOON = "120000"
MOST_TOLD = 20
"""Unreadable lines that are told; who has mended these meets the rest."""


@dataclass(frozen=True, slots=True)
class SigningKey:
    """One key of one person."""

    person: str
    kind: str
    key: str
    after: str = ""
    """From when, as year to second; empty: from the first."""
    before: str = ""
    """Until when; empty: for ever."""

    def speaks_on(self, day: date) -> bool:
        """Whether it was good at noon of a day."""
        noon = f"{day:%Y%m%d}{NOON}"
        return self.after <= noon and (not self.before or noon < self.before)

    @property
    def line(self) -> str:
        """The key alone, as ssh-keygen reads it: the days have been weighed."""
        return f'{self.person} namespaces="{NAMESPACE}" {self.kind} {self.key}'


@dataclass(frozen=True, slots=True)
class Signers:
    """Every key, and what could not be read."""

    keys: tuple[SigningKey, ...] = ()
    unread: tuple[tuple[Where, str], ...] = ()
    """A place, and what is wrong there."""

    def of(self, person: str, day: date) -> tuple[SigningKey, ...]:
        """The keys that speak for a person on a day."""
        return tuple(one for one in self.keys if one.person == person and one.speaks_on(day))


def read_signers(text: str, people: frozenset[str] | set[str]) -> Signers:
    """Read the file.

    Args:
        text: The whole file.
        people: The keys of people.yml.

    >>> found = read_signers('lead valid-before="20320101" ssh-ed25519 AAAA', {"lead"})
    >>> found.keys[0].speaks_on(date(2031, 12, 31)), found.keys[0].speaks_on(date(2032, 1, 1))
    (True, False)
    """
    keys: list[SigningKey] = []
    unread: list[tuple[Where, str]] = []
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        found = LINE.fullmatch(line.strip())
        wrong = _wrong(found, people)
        if wrong or not found:
            unread.append((Where(ALLOWED_SIGNERS, number), wrong))
        else:
            options = dict(OPTION.findall(found["options"] or ""))
            days = (_moment(options.get(name, "")) for name in ("valid-after", "valid-before"))
            keys.append(SigningKey(found["principal"], found["kind"], found["key"], *days))
    return Signers(tuple(keys), tuple(unread[:MOST_TOLD]))


def _wrong(found: re.Match[str] | None, people: frozenset[str] | set[str]) -> str:
    """What is wrong with a line; empty where nothing is."""
    if found is None:
        return "this line is no person, key sort and key"
    if found["principal"] not in people:
        return f"people.yml knows nobody by the key {found['principal']}"
    return next(_wrong_options(found["options"] or ""), "")


def _wrong_options(text: str) -> Iterator[str]:
    for name, said in OPTION.findall(text):
        if name in ("valid-after", "valid-before"):
            if not MOMENT.fullmatch(said):
                yield f'{name}="{said}" is no day; write it as 20310312'
        elif name != "namespaces" or NAMESPACE not in said.split(","):
            yield f'{name}="{said}" is not honoured here'


def _moment(text: str) -> str:
    """A moment as fourteen figures; a day begins at midnight."""
    found = MOMENT.fullmatch(text)
    return f"{found['day']}{found['time'] or '':0<6}" if found else ""
