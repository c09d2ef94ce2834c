"""What is taken in from a reply: findings as drafts, the reply itself as it came, and nothing signed.

A reply may only make things worse: a finding is raised and an objection shown at once. That something
was checked counts only when somebody has confirmed it. A reply that names what is not here, or
somebody who may not judge, is not taken in at all; the file it came in stays where it is.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from garboard.book import Book
from garboard.correspondence.drafted_finding import DraftedFinding, Raised, drafted_finding
from garboard.errors import Diagnostic, GarboardError, Severity, Where
from garboard.names import nearest
from garboard.reading.blank import next_id
from garboard.reading.reply_form import read_forms
from garboard.records.base import Record
from garboard.records.people import PersonEntry
from garboard.records.reply import Reply
from garboard.records.signoff import Capacity
from garboard.review.covers import Covers, Signed
from garboard.review.replies import person_meant, reply_path
from garboard.review.seals import moved_since
from garboard.views.inline import day, person

__all__ = ["CODE", "Intake", "Taken"]

CODE = "reply-refused"


@dataclass(slots=True)
class Taken:
    """What one text gives."""

    kept: dict[str, str] = field(default_factory=dict)
    """Files to be made: the reply as it came, by path in the content."""
    findings: list[DraftedFinding] = field(default_factory=list)
    told: list[str] = field(default_factory=list)
    """What to say to whoever took it in."""
    faults: list[Diagnostic] = field(default_factory=list)
    """Why a form was not taken in."""
    forms: int = 0
    """Filled forms that were found."""


class Intake:
    """Takes replies in, one after another; ids and file names are given once."""

    def __init__(self, book: Book, entered_by: str) -> None:
        self.book = book
        self.entered_by = entered_by
        self.covers = Covers(book.content, book.network)
        content = book.content
        self.names = {*content.retired, *(one.name for one in content.declared)}
        self.paths = set(content.replies)
        self.known = [reply for forms in content.replies.values() for reply in forms.replies]

    def take(self, text: str, file: str) -> Taken:
        """Take in one text.

        Args:
            text: As it came, with plain line feeds.
            file: Its name, for what is said of it.
        """
        taken, forms = Taken(), read_forms(text)
        taken.forms = len(forms.replies)
        for reply in forms.replies:
            faults = tuple(self._faults(reply, file))
            if faults:
                taken.faults += faults
            elif reply in self.known:
                taken.told.append(f"{file}:{reply.line}: this reply came before; nothing new in it")
            else:
                self._keep(reply, text, taken)
                self.known.append(reply)
            taken.told += [f"{file}:{one.first}: {one.text}" for one in reply.remarks]
        if forms.empty and forms.replies:
            taken.told.append(f"{file}: {forms.empty} form(s) came back empty and were passed over")
        taken.told += [f"{file}: {one}" for one in forms.unread]
        return taken

    def _faults(self, reply: Reply, file: str) -> Iterator[Diagnostic]:
        """Why a reply cannot be taken in."""
        where = Where(file, reply.line)
        if reply.seal is None:
            remark = next((one for one in reply.remarks if "REF" in one.text), None)
            text = remark.text if remark else "the REF line of the form is missing"
            cure = "put the REF line in as it was sent, or send a new pack and ask again"
            yield _fault(Where(file, remark.first if remark else reply.line), text, cure)
            return
        thing = self._thing(reply.seal.key)
        if thing is None:
            near = nearest(reply.seal.key, (*self.book.records, *self._pages()))
            text = f"the reply is about {reply.seal.key}, and there is no such record or page"
            cure = "look for it under its new id" + (f"; is {near} meant?" if near else "")
            yield _fault(where, text, f"{cure}, or ask with a new pack")
            return
        who = person_meant(reply.by, self.book.content.people)
        if not who:
            text = f"people.yml knows nobody by the key {reply.by!r}" if reply.by else "no name key"
            yield _fault(where, text, "ask who wrote it, or add this person there by key and role")
            return
        lack = _lack(self.book.content.people[who], reply, thing)
        if lack:
            cure = "let somebody judge who may, or widen people.yml by a decision"
            yield _fault(where, f"{who} may not {lack}", cure)
        if reply.on and reply.on > self.book.today:
            text = f"the reply is of {reply.on}, after today, {self.book.today}"
            yield _fault(where, text, "ask for the day, and correct it in the text")

    def _thing(self, key: str) -> Signed | None:
        return self.book.records.get(key) or self._pages().get(key)

    def _pages(self) -> dict[str, Signed]:
        return {page.where.path: page for page in self.book.content.pages}

    def _keep(self, reply: Reply, text: str, taken: Taken) -> None:
        thing = self._thing(reply.seal.key) if reply.seal else None
        if thing is None or reply.seal is None:
            return
        key, who = reply.seal.key, person_meant(reply.by, self.book.content.people)
        path = self._free(reply)
        on = reply.on or self.book.today
        raised = self._raised(thing, key, who, replace(reply, on=on), path)
        drafts: list[DraftedFinding] = []
        for point in reply.points:
            ident = next_id(self.names, thing.system, "FN")
            draft = drafted_finding(point, ident, raised)
            if draft is None:
                said = f"cannot be read back as they are; they stand in {path} from line {point.line} on"
                taken.told.append(f"the words of finding {ident} {said}")
                elsewhere = replace(point, where="", seen=f"The words {said}.")
                draft = drafted_finding(elsewhere, ident, raised)
            if draft is None:
                raise GarboardError(
                    f"finding {ident} cannot be drafted; keep the reply, write it by hand"
                )
            self.names.add(ident)
            drafts.append(draft)
        self.paths.add(path)
        taken.kept[path] = text
        taken.findings += drafts
        taken.told += self._told(reply, thing, key, path, drafts)

    def _free(self, reply: Reply) -> str:
        number = 1
        while reply_path(reply, number) in self.paths:
            number += 1
        return reply_path(reply, number)

    def _raised(self, thing: Signed, key: str, who: str, reply: Reply, path: str) -> Raised:
        book = self.book
        system = book.systems.get(thing.system)
        entered = f", entered by the {person(book, self.entered_by)}" if self.entered_by else ""
        came = f"It came by a reply of the {person(book, who)} of {day(reply.on)}{entered}."
        return Raised(
            key,
            thing.system,
            system.folder if system else "",
            who,
            reply.on or book.today,
            frozenset((*book.records, *book.components)),
            f"{came} The reply is kept as `{path}`.",
        )

    def _told(
        self, reply: Reply, thing: Signed, key: str, path: str, drafts: list[DraftedFinding]
    ) -> Iterator[str]:
        verdict = reply.verdict or "none that can be read"
        yield f"reply about {key}, {thing.title}: verdict {verdict}; kept as {path}"
        for draft in drafts:
            yield f"finding {draft.ident} drafted: {draft.path}"
            yield from (f"  {one}" for one in draft.left)
        moved = tuple(moved_since(reply, self.covers.of(thing)))
        if moved:
            yield f"{key} is not as the reviewer saw it, so this cannot be confirmed any more:"
            yield from (f"  {one}" for one in moved)
            yield f"Send a new pack: garboard pack {key}"
        else:
            yield "Nothing is signed yet. To confirm what was checked:"
            yield f"  garboard sign --reply {path} --entered-by {self.entered_by or 'PERSON'}"


def _lack(who: PersonEntry, reply: Reply, thing: Signed) -> str:
    """What somebody may not do; raising a finding anybody may."""
    capacity = reply.capacity
    if capacity is None and not (reply.verdict or reply.checked):
        return ""
    wanted = (capacity,) if capacity else (Capacity.CHECKER, Capacity.APPROVER)
    if not any(one in who.may for one in wanted):
        may = ", ".join(who.may) or "sign nothing"
        return f"act as {capacity or 'checker or approver'} (may: {may})"
    if who.class_ and isinstance(thing, Record) and thing.weight < who.class_:
        return f"judge class {thing.weight} (up to class {who.class_})"
    if who.systems and thing.system not in who.systems:
        return f"judge in {thing.system} (in {', '.join(who.systems)})"
    return ""


def _fault(where: Where, text: str, cure: str) -> Diagnostic:
    return Diagnostic(where, Severity.STOP, text, cure, CODE)
