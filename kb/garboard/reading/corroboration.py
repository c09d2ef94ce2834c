"""What the history of the files says of the records: corroboration, and never more.

Nothing else looks at it and no page shows it, so that one commit gives one handbook, however little of
the history a clone holds. What a clone does not hold is called unknown.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta

from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.content import Content, Stub
from garboard.reading.history import History
from garboard.reading.kept_facts import Fact, facts_of, now_said, plain
from garboard.reading.past import Commit, read_past
from garboard.reading.record_file import read_markdown
from garboard.reading.text_file import read_text
from garboard.records.base import Record

__all__ = ["CODE", "Corroboration", "corroborate"]

CODE = "history-of-files"
LATE = timedelta(days=14)
"""How long after its day a signature may be entered before that is said."""
DATE_LINE = timedelta(days=1)
"""How far the day of a signer and that of a committer may lie apart at one time."""
MOST = 200
"""Lines that are said of one history."""
NAMED = 3


@dataclass(frozen=True, slots=True)
class Corroboration:
    """What the history of the files says."""

    reach: str
    """How far back it is known, or why it is not."""
    found: tuple[Diagnostic, ...] = ()


@dataclass(frozen=True, slots=True)
class Held:
    """The newest commit that held something, and whether it was the one that took it out."""

    commit: Commit
    path: str
    taken_out: bool

    def __str__(self) -> str:
        return f"{'until' if self.taken_out else 'in'} {self.commit}"


@dataclass(slots=True)
class _Gathered:
    """What the commits held, newest first."""

    ids: dict[str, Held] = field(default_factory=dict)
    facts: dict[tuple[str, Fact], Held] = field(default_factory=dict)
    arrived: dict[tuple[str, Fact], Commit] = field(default_factory=dict)
    """The earliest commit that is known to have brought a signature."""
    read: dict[tuple[str, bytes], Record | None] = field(default_factory=dict)
    days: list[tuple[date, ...]] = field(default_factory=list)
    """Of each commit."""


def corroborate(content: Content, history: History) -> Corroboration:
    """Hold the records against the history of their files.

    Args:
        content: As it was read, committed or not.
        history: What git says.

    Returns:
        How far back the history is known; then what it held and the content no longer says, a vanished
        record as a HOLD, and signatures whose day does not fit that of their commit.
    """
    if history.why_not:
        return Corroboration(f"unknown: {history.why_not}")
    gathered = _Gathered()
    for commit in read_past(history):
        gathered.days.append(commit.days)
        _gather(gathered, commit)
    found = [*_vanished(content, gathered), *_lost(content, gathered)]
    if content.vessel.as_of is None:
        found += _days(content, gathered, history)
    left = len(found) - MOST
    if left > 0:
        text = f"{left} more of the same"
        more = Diagnostic(Where("handbook.yml"), Severity.NOTE, text, "mend the first", CODE)
        found = [*found[:MOST], more]
    return Corroboration(_reach(gathered, history), tuple(found))


def _reach(gathered: _Gathered, history: History) -> str:
    """From which day on the history is known."""
    read = gathered.days if history.whole else gathered.days[:-1]  # the last one was cut off
    since = min((day for days in read for day in days), default=None)
    if since is None:
        nothing = "nothing of the content was ever committed"
        return f"unknown: {nothing if history.whole else 'there is too much of it'}"
    if history.shallow:
        return f"known from {since} on; the clone is shallow, what was before is unknown"
    if not history.whole:
        return f"known from {since} on; there is too much of it, what was before is unknown"
    return f"known from {since} on, when the first of these files was committed"


def _gather(gathered: _Gathered, commit: Commit) -> None:
    """Note what one commit took out and brought, all its files together: a file may be renamed."""
    before: dict[str, tuple[str, Record]] = {}
    after: dict[str, tuple[str, Record]] = {}
    for touched in commit.files:
        for side, data in ((before, touched.before), (after, touched.after)):
            record = _record(gathered, touched.path, data)
            if record is not None:
                side[str(record.id)] = (touched.path, record)
    old = {name: dict.fromkeys(facts_of(record)) for name, (_, record) in before.items()}
    new = {name: dict.fromkeys(facts_of(record)) for name, (_, record) in after.items()}
    for side, taken_out in ((after, False), (before, True)):
        for name, (path, _) in side.items():
            held = Held(commit, path, taken_out)
            gathered.ids.setdefault(name, held)
            for fact in (new if side is after else old)[name]:
                gathered.facts.setdefault((name, fact), held)
    for name, facts in new.items():
        for fact in facts:
            known = gathered.arrived.get((name, fact))
            brought = fact.line is not None and fact not in old.get(name, {})
            if brought and (known is None or commit.last_day <= known.last_day):
                gathered.arrived[name, fact] = commit


def _record(gathered: _Gathered, path: str, data: bytes | None) -> Record | None:
    """The filed record in one version of a file; each version is read once."""
    if data is None:
        return None
    key = (path, data)
    if key not in gathered.read:
        read = read_text(data, path)
        thing = None if read.fault else read_markdown(read.text, path).thing
        if isinstance(thing, Stub):
            thing = Record(id=thing.id, where=thing.where) if thing.id else None  # type: ignore[arg-type]
        gathered.read[key] = thing if isinstance(thing, Record) and thing.id else None
    return gathered.read[key]


def _vanished(content: Content, gathered: _Gathered) -> Iterator[Diagnostic]:
    """Ids that were committed once and that nothing has any more."""
    known = {*content.records, *content.retired, *(one.name for one in content.declared)}
    known |= {stub.id for stub in content.stubs}
    unread = {stub.where.path for stub in content.stubs}
    for name, held in sorted(gathered.ids.items()):
        if name not in known and held.path not in unread:
            text = f"{name} stood here {held}, and no file has it now"
            cure = "restore the file, or enter the id in retired.yml with the reason"
            yield Diagnostic(Where(plain(held.path)), Severity.HOLD, text, cure, CODE, name)


def _lost(content: Content, gathered: _Gathered) -> Iterator[Diagnostic]:
    """What a record said once and must not lose, and does not say now."""
    for (name, fact), held in sorted(gathered.facts.items(), key=lambda one: _order(*one[0])):
        record = content.records.get(name)
        if record is None or fact in _facts(record) or not _readable(content, record):
            continue
        text = f"{name}: {fact.what} {now_said(record, fact)}; it stood so {held}"
        cure = "restore it; what has changed since goes into a field or line of its own"
        where = record.place(fact.path)
        yield Diagnostic(where, Severity.WARN, text, cure, CODE, name)


def _facts(record: Record) -> frozenset[Fact]:
    return frozenset(facts_of(record))


def _readable(content: Content, record: Record) -> bool:
    """Whether the record was read whole: what could not be read is not lost."""
    return not record.unread and record.where.path not in {one.where.path for one in content.stubs}


def _days(content: Content, gathered: _Gathered, history: History) -> Iterator[Diagnostic]:
    """Signatures that came before their day, or long after it."""
    late: dict[str, list[tuple[str, Fact]]] = {}
    commits: dict[str, Commit] = {}
    told_all = history.whole and not history.shallow
    for (name, fact), commit in sorted(gathered.arrived.items(), key=lambda one: _order(*one[0])):
        record, line = content.records.get(name), fact.line
        if record is None or line is None or fact not in _facts(record):
            continue
        if commit.first and history.shallow:
            continue
        if line.on - commit.last_day > DATE_LINE:
            text = f"{name}: {fact.what} came with {commit}, before its day"
            cure = "correct the day, or say in the record how it came to be written ahead"
            where = record.place("signed")
            yield Diagnostic(where, Severity.WARN, text, cure, CODE, name)
        elif told_all and commit.days and commit.first_day - line.on > LATE:
            commits[commit.name] = commit
            late.setdefault(commit.name, []).append((name, fact))
    for key, them in late.items():
        listed = ", ".join(f"{name} ({fact.what})" for name, fact in them[:NAMED])
        more = f" and {len(them) - NAMED} more" if len(them) > NAMED else ""
        text = f"{commits[key]} brought signatures more than {LATE.days} days after their day: "
        where = content.records[them[0][0]].place("signed")
        cure = "keep the signed sheets with the record, under `evidence`"
        yield Diagnostic(where, Severity.NOTE, f"{text}{listed}{more}", cure, CODE, them[0][0])


def _order(name: str, fact: Fact) -> tuple[str, str, str]:
    return name, fact.what, fact.said
