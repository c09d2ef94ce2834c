"""Which service status binds a system: the one that is written, or the one that it had when it was issued.

A status that is set back switches rules off. So it is believed only where whoever is in charge has
signed it since; until then what the last edition says goes on binding.
"""

from collections.abc import Iterable, Mapping
from datetime import date

from garboard.records.edition import Edition, IssuedSystem
from garboard.records.people import PersonEntry
from garboard.records.signoff import SignOff
from garboard.records.states import MACHINES
from garboard.records.system import ServiceStatus, System
from garboard.review.kept import signed_line
from garboard.review.walk import walk

__all__ = ["MACHINE", "held_statuses", "lines_since"]

MACHINE = MACHINES["service status"]


def held_statuses(
    systems: Mapping[str, System], edition: Edition | None, people: Mapping[str, PersonEntry]
) -> Mapping[str, ServiceStatus]:
    """The systems whose status was set back unsigned, with the status that goes on binding.

    Args:
        systems: As they are written, by code.
        edition: The last one that was issued, if any.
        people: Who may act in charge, by key.
    """
    if edition is None:
        return {}
    both = (
        (code, one, edition.systems[code])
        for code, one in systems.items()
        if code in edition.systems
    )
    return {
        code: ServiceStatus(was.status)
        for code, one, was in both
        if _earlier(one.status, was.status) and not _signed(one, was, edition.issued, people)
    }


def _earlier(now: ServiceStatus, was: str) -> bool:
    known = was in list(ServiceStatus)
    return known and now.order < ServiceStatus(was).order


def _signed(
    system: System, issued: IssuedSystem, day: date, people: Mapping[str, PersonEntry]
) -> bool:
    """Whether signatures that came since lead from what was issued to what is written."""
    since = [
        line
        for line in lines_since(system.signed, issued.signed)
        if line.on >= day
        and line.by in people
        and not people[line.by].lacks(line.capacity, system.code)
    ]
    return walk(MACHINE, since, str(system.status), "A", issued.status).leads


def lines_since(signed: Iterable[SignOff], issued: Iterable[str]) -> list[SignOff]:
    """The signatures that an edition does not hold, in the order in which they are written.

    Args:
        signed: Every line of today.
        issued: Those of the edition, each in its canonical form.
    """
    known = list(issued)
    since = []
    for line in signed:
        if signed_line(line) in known:
            known.remove(signed_line(line))
        else:
            since.append(line)
    return since
