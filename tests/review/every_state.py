"""One record of every kind in every state, sound or with everything against it.

What must come of each is written out here, from the description of the records and not from the code.
"""

from dataclasses import dataclass

from garboard.records.kinds import KINDS, Kind
from garboard.records.states import LEAVING

LAPSES = {
    "decision": "checked, approved, implemented, confirmed",
    "change": "checked, authorised",
    "calculation": "checked, approved",
    "plan line": "released, waived, not attended",
    "test": "accepted",
    "procedure": "checked, walked through, approved, issued",
    "alarm": "checked, approved, issued",
    "fault": "checked, approved, issued",
    "maintenance task": "checked, approved, issued",
    "temporary modification": "authorised",
    "review": "passed, limited",
}
OTHERS = {
    ("finding", "closed"): "reopened",
    ("hazard", "controls agreed"): "assessed",
    ("hazard", "controls verified"): "assessed",
    ("hazard", "accepted"): "assessed",
    ("lesson", "effective"): "incorporated",
    ("concession", "granted"): "expired",
    ("temporary modification", "emergency"): "expired",
    ("temporary modification", "fitted"): "expired",
    ("work package", "ready"): "defined",
}
EXPECTED = OTHERS | {
    (kind, state): "lapsed" for kind, states in LAPSES.items() for state in states.split(", ")
}
"""Where the machine moves a record that has everything against it."""

STALE = 'signed: [{capacity: approver, by: reviewer-1, on: 2031-05-01, digest: "0123456789abcdef"}]'
AGAINST = {
    "finding": "actions: [SA-CA-901]",
    "hazard": "controls: [{rank: guard, what: SA-RV-001, verified: SA-TR-901}]",
    "lesson": "into: [SA-PR-901]",
    "concession": "until: 2031-09-30",
    "temporary modification": "until: 2031-09-30",
    "work package": "needs: [SA-DD-901]",
}
SOUND = {
    "finding": "actions: [SA-CA-902]",
    "hazard": "controls: [{rank: guard, what: SA-RV-001, verified: SA-TR-902}]",
    "lesson": "into: [SA-PR-902]",
    "concession": "until: 2031-10-01",
    "temporary modification": "until: the elbow is aboard",
    "work package": "needs: [SA-DD-902]",
}
BESIDE = {
    "SA-CA-901": "state: void",
    "SA-CA-902": "state: effective",
    "SA-TR-901": "state: rejected\nresult: pass\non: 2031-05-01",
    "SA-TR-902": "state: complete\nresult: pass\non: 2031-05-01",
    "SA-PR-901": "state: withdrawn",
    "SA-PR-902": "state: drafted",
    "SA-DD-901": "state: in check",
    "SA-DD-902": "state: approved",
}
"""What they lean on: that which has gone, and that which stands."""


@dataclass(frozen=True)
class Entry:
    """One record."""

    key: str
    kind: Kind
    state: str
    broken: bool

    @property
    def expected(self) -> str:
        """The state that it must count as."""
        return EXPECTED.get((self.kind.name, self.state), self.state) if self.broken else self.state

    @property
    def text(self) -> str:
        """Its file."""
        more = (AGAINST if self.broken else SOUND).get(self.kind.name, "")
        if self.broken:
            more = f"{more}\n{STALE}".strip()
        return _record(self.key, f"state: {self.state}\n{more}".strip())


def every_entry(broken: "frozenset[int] | None" = None) -> list[Entry]:
    """A record for each state of each kind.

    Args:
        broken: The numbers of those that have everything against them; all where left out.
    """
    pairs = [
        (kind, number, state)
        for kind in KINDS
        for number, state in enumerate((*kind.machine.states, *LEAVING), 1)
        if state in kind.machine.states
    ]
    return [
        Entry(f"SA-{kind.letters}-{number:03}", kind, state, broken is None or place in broken)
        for place, (kind, number, state) in enumerate(dict.fromkeys(pairs))
    ]


def files_of(entries: list[Entry]) -> dict[str, str]:
    """As files, with what they lean on."""
    texts = {entry.key: entry.text for entry in entries}
    texts |= {key: _record(key, more) for key, more in BESIDE.items()}
    return {f"systems/starting-air/{key.lower()}.md": text for key, text in texts.items()}


def _record(key: str, more: str) -> str:
    return f"---\nid: {key}\ntitle: Thing {key[6:]}\nsystem: SA\nclass: B\n{more}\n---\nAs seen.\n"
