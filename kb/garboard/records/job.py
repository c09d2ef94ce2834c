"""What a job touches: the components a work package or a maintenance task is about, near and far."""

from collections.abc import Iterator, Mapping

from garboard.names import IDENTIFIER, is_tag
from garboard.records.base import Record, bare_id
from garboard.records.change import Change, TemporaryModification
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.holds import is_tied, parts_of
from garboard.records.inspection import PlanLine, Test
from garboard.records.procedure import Procedure
from garboard.records.work import MaintenanceTask, OpenItem, WorkPackage

__all__ = ["Job", "hazards_of", "lines_of", "procedures_of", "tags_of"]

Job = WorkPackage | MaintenanceTask

Records = Mapping[str, Record]


def procedures_of(job: Job, records: Records) -> tuple[Procedure, ...]:
    """The procedures a job is done by, its isolation first; those its plan lines are tested by, last."""
    names: list[str] = []
    if isinstance(job, WorkPackage):
        methods = (str(line.method or "") for line in lines_of(job, records))
        names += [str(job.isolation or ""), *job.needs, str(job.competence or ""), *methods]
    else:
        by = records.get(bare_id(job.procedure or ""))
        isolation = by.isolation if isinstance(by, Procedure) else None
        names += [str(isolation or ""), str(job.procedure or ""), str(job.competence or "")]
    found: dict[str, Procedure] = {}
    for one in (records.get(key) for name in names for key in IDENTIFIER.findall(name)):
        if isinstance(one, Procedure):
            found[str(one.id)] = one
    return tuple(found.values())


def lines_of(job: Job, records: Records) -> tuple[PlanLine, ...]:
    """The lines of the inspection plan that stop a work package."""
    if not isinstance(job, WorkPackage):
        return ()
    lines = (one for one in records.values() if isinstance(one, PlanLine))
    return tuple(line for line in lines if is_tied(job, line))


def tags_of(job: Job, records: Records) -> frozenset[str]:
    """The components a job touches: those it names, those of what it needs, of its holds and isolation."""
    own = [*map(str, job.affects), *map(str, job.parts), str(job.competence or "")]
    if isinstance(job, WorkPackage):
        own += [*map(str, job.hides), *map(str, job.needs), str(job.makes_true or "")]
        own += [str(job.done_means or "")]
    else:
        own += [str(job.tag or ""), str(job.task or "")]
    named = [one for text in own for one in IDENTIFIER.findall(text)]
    found = set(named)
    for name in named:
        found |= set(_parts_named(records.get(name)))
    tests = [one for one in records.values() if isinstance(one, Test)]
    for line in lines_of(job, records):
        found |= parts_of(line, tests)
    for procedure in procedures_of(job, records):
        found |= {str(tag) for tag in procedure.isolates}
    return frozenset(name for name in found if is_tag(name))


def _parts_named(record: Record | None) -> Iterator[str]:
    """The components of something a job needs done."""
    if isinstance(record, Change):
        yield from IDENTIFIER.findall(" ".join((*record.affects, *record.values)))
    elif isinstance(record, Finding | OpenItem | TemporaryModification):
        yield from map(str, record.where_)


def hazards_of(job: Job, records: Records) -> tuple[Hazard, ...]:
    """The hazards at what a job touches, and those its procedures warn of."""
    tags = tags_of(job, records)
    warned = {
        bare_id(step.message)
        for procedure in procedures_of(job, records)
        for step in procedure.steps
        if step.message
    }
    return tuple(
        one
        for one in records.values()
        if isinstance(one, Hazard) and (str(one.id) in warned or tags & set(map(str, one.where_)))
    )
