"""The table of moves: from a state to a state, and in what capacity somebody may move it.

Where a capacity stands alone it moves every class; else it stands with the classes it moves (plan
lines: the points).
"""

from collections.abc import Mapping
from dataclasses import dataclass

from garboard.records.signoff import Capacity

__all__ = ["LEAVING", "TABLE", "Row", "Who"]

AUTHOR, CHECKER, APPROVER = Capacity.AUTHOR, Capacity.CHECKER, Capacity.APPROVER
DOER, VERIFIER, PARTY = Capacity.DOER, Capacity.VERIFIER, Capacity.NAMED_PARTY
CHARGE, HAND, MACHINE = Capacity.IN_CHARGE, Capacity.ANY_HAND, Capacity.MACHINE

Who = Capacity | Mapping[Capacity, str]
Moves = Mapping[str, Mapping[str, Who]]

LEAVING = ("superseded", "withdrawn", "void")
"""Ends of a record; an approver may move it there at any time."""


@dataclass(frozen=True, slots=True)
class Row:
    """The states of one kind, as the table has them."""

    start: str
    rest: str
    """States in which nothing more is owed, parted by commas."""
    moves: Moves
    lapses: str = ""
    """States from which the machine may move it to `lapsed`."""
    ends: tuple[str, ...] = LEAVING
    """Which ways of leaving are open to it."""


VOID = ("void",)

ISSUED_TEXT: Moves = {
    "drafted": {"checked": CHECKER},
    "checked": {"drafted": CHECKER, "approved": APPROVER},
    "approved": {"issued": CHARGE},
    "lapsed": {"drafted": AUTHOR, "checked": CHECKER},
}
"""Of alarms, faults and maintenance tasks."""

TABLE: Mapping[str, Row] = {
    "decision": Row(
        "drafted",
        "confirmed, not adopted",
        {
            "drafted": {"in check": AUTHOR},
            "in check": {
                "drafted": CHECKER,
                "checked": CHECKER,
                "approved": {CHECKER: "BC"},
                "not adopted": APPROVER,
            },
            "checked": {"approved": APPROVER, "not adopted": APPROVER},
            "approved": {"implemented": DOER},
            "implemented": {"confirmed": VERIFIER},
            "lapsed": {"in check": AUTHOR},
        },
        lapses="checked, approved, implemented, confirmed",
    ),
    "change": Row(
        "proposed",
        "closed, refused, cancelled",
        {
            "proposed": {
                "checked": CHECKER,
                "closed": {DOER: "C"},
                "emergency": CHARGE,
                "cancelled": AUTHOR,
            },
            "checked": {
                "authorised": {APPROVER: "ABC", CHARGE: "BC"},
                "refused": APPROVER,
                "cancelled": AUTHOR,
            },
            "authorised": {"in work": DOER, "cancelled": AUTHOR},
            "emergency": {"checked": CHECKER},  # emergency authority, reviewed after
            "in work": {"installed": DOER},
            "installed": {"proved": VERIFIER},
            "proved": {"closed": CHARGE},
            "lapsed": {"checked": CHECKER, "cancelled": AUTHOR},
        },
        lapses="checked, authorised",
        ends=VOID,
    ),
    "finding": Row(
        "raised",
        "closed, not accepted",
        {
            "raised": {"accepted": CHARGE, "not accepted": APPROVER},
            "not accepted": {"raised": HAND},
            "accepted": {"contained": DOER, "evaluated": APPROVER},
            "contained": {"evaluated": APPROVER},
            "evaluated": {"action agreed": CHARGE, "closed": {APPROVER: "C"}},
            "action agreed": {"action done": DOER},
            "action done": {"verified": VERIFIER, "action agreed": VERIFIER},
            "verified": {"closed": APPROVER},
            "closed": {"reopened": {HAND: "ABC", MACHINE: "ABC"}},
            "reopened": {"evaluated": APPROVER},
        },
        ends=(),
    ),
    "action": Row(
        "agreed",
        "effective, not effective",
        {
            "agreed": {"in hand": DOER, "done": DOER},
            "in hand": {"done": DOER},
            "done": {"verified": VERIFIER, "agreed": VERIFIER},
            "verified": {"effective": APPROVER, "not effective": APPROVER},
        },
        ends=VOID,
    ),
    "calculation": Row(
        "drafted",
        "approved",
        {
            "drafted": {"checked": CHECKER, "approved": {CHECKER: "BC"}},
            "checked": {"drafted": CHECKER, "approved": APPROVER},
            "lapsed": {"drafted": AUTHOR, "checked": CHECKER},
        },
        lapses="checked, approved",
    ),
    "plan line": Row(
        "planned",
        "released, waived, not attended",
        {
            "planned": {"called": DOER, "released": {PARTY: "RS"}},
            "called": {"at hold": DOER, "waived": {PARTY: "W"}, "not attended": {DOER: "W"}},
            "at hold": {"released": PARTY, "rejected": PARTY},
            "rejected": {"planned": CHARGE},
            "lapsed": {"planned": CHARGE},
        },
        lapses="released, waived, not attended",
    ),
    "test": Row(
        "open",
        "accepted, rejected",
        {
            "open": {"complete": DOER},
            "complete": {"open": CHECKER, "checked": CHECKER, "accepted": {CHECKER: "C"}},
            "checked": {"accepted": APPROVER, "rejected": APPROVER},
            "lapsed": {"accepted": {APPROVER: "BC"}},  # class A: a new test
        },
        lapses="accepted",
        ends=VOID,
    ),
    "procedure": Row(
        "drafted",
        "issued",
        {
            "drafted": {"checked": CHECKER},
            "checked": {"drafted": CHECKER, "walked through": VERIFIER},
            "walked through": {"drafted": VERIFIER, "approved": APPROVER},
            "approved": {"issued": CHARGE},
            "lapsed": {"drafted": AUTHOR, "checked": CHECKER},
        },
        lapses="checked, walked through, approved, issued",
    ),
    "hazard": Row(
        "identified",
        "accepted, closed",
        {
            "identified": {"assessed": AUTHOR},
            "assessed": {"controls agreed": CHECKER},
            "controls agreed": {"controls verified": VERIFIER, "assessed": MACHINE},
            "controls verified": {"accepted": APPROVER, "assessed": MACHINE},
            "accepted": {"closed": APPROVER, "assessed": MACHINE},
        },
        ends=VOID,
    ),
    "alarm": Row("drafted", "issued", ISSUED_TEXT, lapses="checked, approved, issued"),
    "fault": Row("drafted", "issued", ISSUED_TEXT, lapses="checked, approved, issued"),
    "maintenance task": Row("drafted", "issued", ISSUED_TEXT, lapses="checked, approved, issued"),
    "lesson": Row(
        "drafted",
        "effective",
        {
            "drafted": {"validated": CHECKER},
            "validated": {"incorporated": DOER},
            "incorporated": {"effective": VERIFIER},
            "effective": {"incorporated": MACHINE},
        },
        ends=VOID,
    ),
    "open item": Row(
        "open",
        "closed, raised as finding",
        {
            "open": {"in hand": DOER, "cleared": DOER, "raised as finding": HAND},
            "in hand": {"cleared": DOER, "raised as finding": HAND},
            "cleared": {"open": VERIFIER, "verified": VERIFIER, "closed": {CHARGE: "C"}},
            "verified": {"closed": CHARGE},
        },
        ends=VOID,
    ),
    "concession": Row(
        "asked",
        "closed, refused",
        {
            "asked": {"granted": APPROVER, "refused": APPROVER},
            "granted": {"closed": APPROVER, "expired": MACHINE},
            "expired": {"asked": AUTHOR, "closed": APPROVER},
            "lapsed": {"asked": AUTHOR, "closed": APPROVER},
        },
        lapses="granted",
        ends=VOID,
    ),
    "temporary modification": Row(
        "proposed",
        "restored, refused",
        {
            "proposed": {
                "authorised": {APPROVER: "AB", CHARGE: "B"},
                "refused": APPROVER,
                "emergency": CHARGE,
            },
            "authorised": {"fitted": DOER},
            "emergency": {"fitted": APPROVER, "removed": DOER, "expired": MACHINE},
            "fitted": {"removed": DOER, "expired": MACHINE},
            "expired": {"fitted": APPROVER, "removed": DOER},
            "removed": {"fitted": VERIFIER, "restored": VERIFIER},
            "lapsed": {"authorised": APPROVER, "refused": APPROVER},
        },
        lapses="authorised",
        ends=VOID,
    ),
    "work package": Row(
        "outlined",
        "verified, dropped",
        {
            "outlined": {"defined": AUTHOR, "dropped": CHARGE},
            "defined": {"ready": CHARGE, "dropped": CHARGE},
            "ready": {"in hand": DOER, "defined": MACHINE},
            "in hand": {"at hold": DOER, "complete": DOER},
            "at hold": {"in hand": PARTY},
            "complete": {"in hand": VERIFIER, "verified": VERIFIER},
        },
    ),
    "review": Row(
        "called",
        "passed, limited, failed",
        {
            "called": {"walked": VERIFIER},
            "walked": {"passed": APPROVER, "limited": APPROVER, "failed": APPROVER},
            "lapsed": {"called": CHARGE},
        },
        lapses="passed, limited",
        ends=VOID,
    ),
    "service status": Row(
        "sketch",
        "",
        {
            "sketch": {"building": CHARGE},
            "building": {"in test": CHARGE, "sketch": CHARGE},
            "in test": {"in service": CHARGE, "building": CHARGE},
            "in service": {"in test": CHARGE, "building": CHARGE},
        },
        ends=(),
    ),
}
"""By the name of a kind; `service status` is that of a system."""
