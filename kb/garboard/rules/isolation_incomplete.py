"""With every point of an isolation procedure in its place, something live is still joined to the work.

Question: with the listed points locked where the steps leave them, and every other valve standing anyhow, can
anything that makes or keeps pressure, a head or a voltage get to the part that is made safe?

Why: 29 CFR 1915.89(a)(2) and 1915.80(b) on vessels, 29 CFR 1910.147(d) elsewhere, ask for every source to be
shut off before hands go in. A check valve, a solenoid valve or a reducing valve is no isolation (HSE HSG253,
verify before citing); a valve that is not among the points is opened by whoever needs it.

Bad: points SA-CP-001 and SA-HV-002, where SA-HV-006 leads to a start header that receiver 2 feeds.

Good: points SA-CP-001, SA-HV-002 and SA-HV-006, each with a step that locks it.

Fix: add the point that the message names, with a step that locks it. Where nothing can be locked between, the
part cannot be isolated: fit a valve, or say in the record how it is taken out of use first.
"""

from collections import defaultdict
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import system_of
from garboard.records.procedure import Procedure, Use
from garboard.rules.isolations import Written, in_words, written_isolations
from garboard.rules.steps import live_procedures
from garboard.systems.blocks import Joined, still_joined

CODE = "isolation-incomplete"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

NEAR = 4
"""So many parts on the way are named."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold the points of every isolation against the layout."""
    for procedure in live_procedures(book):
        if procedure.use is Use.ISOLATION:
            yield from _held_against_nothing(book, procedure)
    for written in written_isolations(book):
        yield from _joined(book, written)


def _held_against_nothing(book: Book, procedure: Procedure) -> Iterator[Diagnostic]:
    """What a procedure says it makes safe and the layout does not know; all of it, where it says nothing."""
    about = str(procedure.id)
    if not procedure.isolates and _is_drawn(book, procedure.system):
        text = "it names no part that it makes safe, so its points are held against nothing"
        cure = "name the parts in `isolates`, or give it another use"
        yield Diagnostic(procedure.place("use"), SEVERITY, text, cure, CODE, about)
    for tag in procedure.isolates:
        code = system_of(tag)
        if _is_drawn(book, code) and tag not in book.surveys[code].plant.numbers:
            text = (
                f"{tag} is no part that a connection names, so its points are held against nothing"
            )
            cure = f"name the parts that are joined there, or put {tag} into a connection"
            where = procedure.place("isolates")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, about)


def _is_drawn(book: Book, code: str) -> bool:
    system = book.systems.get(code)
    return system is not None and bool(system.runs)


def _joined(book: Book, written: Written) -> Iterator[Diagnostic]:
    procedure, work = written.procedure, written.worked.section.work
    by_cure: dict[str, list[Joined]] = defaultdict(list)
    for one in still_joined(written.leaks, work, written.held, written.leaks.stores):
        if written.is_live(book, one.store):
            by_cure[_cure(written, one)].append(one)
    for cure, them in by_cure.items():
        stores = [one.store.tag for one in them if one.store.tag not in written.worked.tags]
        if not stores:
            text = f"{in_words([one.store.tag for one in them])} itself is left live"
        else:
            way = min((one.way for one in them), key=len)
            through = f" through {in_words(way[-NEAR:])}" if way else ""
            is_joined = "is" if len(stores) == 1 else "are"
            text = f"{in_words(stores)} {is_joined} still joined to {in_words(written.worked.tags)}{through}"
        if written.unmoved:
            text += f"; no step leaves {in_words(written.unmoved)} locked"
        where = procedure.place("points" if procedure.points else "isolates")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))


def _cure(written: Written, joined: Joined) -> str:
    """The cheapest cut, or why there is none."""
    tag, worked = joined.store.tag, written.worked
    last = ", or take the part out of `isolates`"
    if tag in worked.stop:
        return f"add {tag} to the points with a step that stops and locks it{last}"
    parts = written.plant.parts
    done = {(parts[number].tag, parts[number].names[at]) for number, at in written.held.items()}
    against = [one for one in worked.points if tag in one.against]
    points = [one for one in against if (one.tag, one.position) not in done]
    if points:
        said = in_words([f"{one.tag} ({one.position})" for one in points])
        return f"add {said} to the points with steps that lock them{last}"
    if tag in worked.emptied:
        bleeds = [b for side in worked.sides if tag in side.vessels for b in side.bleeds]
        way = f" through {in_words(bleeds[0].valves)}" if bleeds else ""
        return f"let {tag} out{way} in a step and see it at zero on a gauge of its own{last}"
    fault = next((one for one in worked.faults if one.about == tag), None)
    return fault.help if fault else f"add a point towards {tag}{last}"
