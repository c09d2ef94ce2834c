"""Random small handbooks, random edits of them after an issue, and a plain count of what was lost.

Nothing here asks the code under test what is kept: a handbook is kept as plain words and lists, and
what stands there now is compared with what stood there as it was put in.
"""

import copy
import random
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field

START = {"DD": "drafted", "FN": "raised", "CN": "proposed", "TR": "open", "HZ": "identified", "MT": "drafted", "PR": "drafted", "IT": "planned", "CL": "drafted"}  # fmt: skip
BEYOND = {"DD": "checked", "FN": "accepted", "CN": "checked", "TR": "complete", "HZ": "assessed", "MT": "checked", "PR": "checked", "IT": "called", "CL": "checked"}  # fmt: skip
MOVER = {"DD": "checker", "FN": "in charge", "CN": "checker", "TR": "doer", "MT": "checker", "PR": "checker", "IT": "doer", "CL": "checker"}  # fmt: skip
"""Who signs that a record moved on; a hazard its author moves."""
ALWAYS = {"FN": ["words"], "DD": ["objections"], "CN": ["installed"], "TR": ["readings", "failure"], "MT": ["done"]}  # fmt: skip
ONCE_MOVED = {"DD": ["options"], "CN": ["before"], "HZ": ["controls"]}
LATER = {"FN": "cause", "TR": "made_good", "CN": "installed", "MT": "done"}
"""Of each kind a field that is filled in later and is no text of the revision."""
WORDS = "drain shut open slow valve before after watch joint cold".split()
STATUSES = ["sketch", "building", "in test", "in service"]


@dataclass
class Signed:
    """A line: a name for it, by whom, what it says, and the words it was given for."""

    by: str
    day: int
    verdict: str
    saw: object = None
    digest: str = ""
    rests: str = ""
    capacity: str = "checker"
    to: str = ""

    def line(self) -> str:
        rest = f", digest: {self.digest}" if self.digest else ""
        told = ", words: too tight" if self.verdict == "object" else ""
        rest += f", saw: {self.rests}" if self.rests else ""
        judged = f", verdict: {self.verdict}" if self.capacity == "checker" else ""
        to = f", to: {self.to}" if self.to else ""
        who = f"capacity: {self.capacity}, by: {self.by}, on: 2031-04-{self.day:02}"
        return f"{{{who}{to}{judged}{told}{rest}}}"


@dataclass
class Thing:
    """One record."""

    key: str
    state: str
    title: str
    path: str
    revision: int = 0
    parts: dict[str, list[str]] = field(default_factory=dict)
    """Its lists and words, each thing in a few words."""
    answered: set[str] = field(default_factory=set)
    """Objections that have an answer."""
    later: str = ""
    point: str = ""
    signed: list[Signed] = field(default_factory=list)
    comment: str = ""
    wide: bool = False

    @property
    def letters(self) -> str:
        return self.key[3:5]

    def text(self) -> object:
        """What its revision says."""
        own = {name: them for name, them in self.parts.items() if name != LATER.get(self.letters)}
        return self.title, self.point, own, sorted(self.answered)

    def moved(self) -> bool:
        return self.state != START[self.letters]

    def write(self) -> str:
        keys = [f"id: {self.key}", f"title: {self.title}", "system: SA", "class: B", f"state: {self.state}", f"revision: {self.revision}", "author: lead", "drafted: 2031-03-10"]  # fmt: skip
        keys += [line for name, them in self.parts.items() if (line := self.part(name, them))]
        keys += [f"point: {self.point}"] if self.point else []
        keys += [f"{LATER[self.letters]}: {self.later}"] if self.later else []
        if self.wide:
            keys = [keys[0], "# laid out anew", *reversed(keys[1:])]
        if self.signed:
            keys.append("\n".join(("signed:", *(f"  - {one.line()}" for one in self.signed))))
        gap = "\n\n\n" if self.wide else "\n"
        body = f"As{gap if self.wide else ' '}it is.".replace("\n\n\n", "\n")
        comment = f"\n\n<!-- {self.comment} -->" if self.comment else ""
        return "---\n" + gap.join(keys) + f"\n---\n{body}{comment}\n"

    def part(self, name: str, them: list[str]) -> str:
        """One field of a file."""
        match name:
            case "words":
                return f"words: {them[0]}" if them else ""
            case "failure":
                return f"result: {'fail' if them else 'pass'}"
            case "installed":
                return f"installed: {them[0]}" if them else ""
            case "before":
                shifts = (f"SA-AR-00{number}.volume: {{before: {one}, after: 3 L}}" for number, one in enumerate(them, 1))  # fmt: skip
                return f"values: {{{', '.join(shifts)}}}"
            case "objections":
                made = (f"{{by: lead, words: {one}{', answer: so be it' if one in self.answered else ''}}}" for one in them)  # fmt: skip
            case "options":
                made = (f"{{option: {one}, why_not: no room}}" for one in them)
            case "readings":
                made = (f"{{of: {one}, value: 3 L}}" for one in them)
            case "controls":
                made = (f"{{rank: guard, what: {one}}}" for one in them)
            case _:
                made = (f"{{on: 2031-03-{number:02}, by: lead, as_found: {one}}}" for number, one in _dated(them))  # fmt: skip
        return f"{name}: [{', '.join(made)}]" if them else ""


def _dated(them: Iterable[str]) -> Iterable[tuple[int, str]]:
    return ((int(one[-2:]), one) for one in them)


@dataclass
class Past:
    """A small handbook."""

    things: dict[str, Thing]
    status: str = "in test"
    lines: list[tuple[str, str]] = field(default_factory=list)
    """Day, and the status moved to, signed in charge."""
    parts: list[str] = field(default_factory=lambda: ["SA-AR-001", "SA-AR-002"])
    retired: list[str] = field(default_factory=list)

    def files(self) -> dict[str, str]:
        tags = "".join(f"  {tag}: {{kind: receiver, volume: 250 L}}\n" for tag in self.parts)
        signed = "".join(f"  - {{capacity: in charge, by: lead, on: {day}, to: {to}}}\n" for day, to in self.lines)  # fmt: skip
        files = {
            "systems/starting-air/system.yml": f"components:\n{tags}",
            "systems/bilge-fire/system.yml": f"status: {self.status}\nsigned:\n{signed}",
            "people.yml": "lead: {role: lead builder, may: [author, doer, in charge]}\nreviewer-1: {role: remote reviewer, may: [checker, approver], class: A}\nreviewer-2: {role: remote reviewer, may: [checker, approver], class: A}\n",
        }
        if self.retired:
            files["retired.yml"] = "".join(f"{tag}: {{on: 2031-06-01}}\n" for tag in self.retired)
        return files | {one.path: one.write() for one in self.things.values()}


def random_past(chance: random.Random) -> Past:
    """A handbook with a record or two of each kind, some of them drafts."""
    things = {}
    for letters in START:
        for number in range(1, chance.randint(2, 3)):
            key = f"SA-{letters}-00{number}"
            things[key] = random_thing(chance, key)
    lines = [("2031-01-10", "building"), ("2031-02-10", "in test")]
    return Past(things, lines=lines)


def random_thing(chance: random.Random, key: str) -> Thing:
    """A record with its lists filled."""
    letters = key[3:5]
    state = chance.choice((START[letters], BEYOND[letters], BEYOND[letters]))
    one = Thing(key, state, f"Thing {key[6:]}", f"systems/starting-air/{key.lower()}.md")
    for name in (*ALWAYS.get(letters, ()), *ONCE_MOVED.get(letters, ())):
        one.parts[name] = some(chance, name)
    one.point = "H" if letters == "IT" else ""
    if one.moved() and letters in MOVER:
        by = "reviewer-1" if MOVER[letters] == "checker" else "lead"
        one.signed.append(Signed(by, 9, "no findings", capacity=MOVER[letters], to=state))
    for number in range(chance.randint(0, 2)):
        verdict = chance.choice(("no findings", "no findings", "object"))
        one.signed.append(Signed(f"reviewer-{number + 1}", 10 + number, verdict))
    return one


def some(chance: random.Random, name: str) -> list[str]:
    """A few things of a list."""
    if name == "installed":
        return chance.choice(([], ["2031-03-20"]))
    if name == "failure":
        return chance.choice(([], ["fail"]))
    if name == "before":
        return [f"{chance.randint(4, 90)} L" for _ in range(chance.randint(1, 2))]
    most = 1 if name == "words" else chance.randint(1, 3)
    made = [" ".join(chance.choices(WORDS, k=3)) for _ in range(most)]
    return [f"{one} {number:02}" for number, one in enumerate(made, 1)]


HARMLESS = ("comment", "layout", "later", "new record", "move file", "new part", "answer")
OTHER = ("delete", "title", "drop", "change", "grow", "turn round", "signature gone", "signature altered", "state back", "raise", "raise twice", "lower revision", "weaken point", "part gone", "part retired", "status back", "status signed back")  # fmt: skip


def edit(chance: random.Random, past: Past, what: str) -> None:
    """Change one thing."""
    one = chance.choice(list(past.things.values()) or [random_thing(chance, "SA-CL-090")])
    if what == "weaken point":
        one = next((each for each in past.things.values() if each.point == "H"), one)
    elif what == "answer":
        one = next((each for each in past.things.values() if each.letters == "DD"), one)
    name = chance.choice(list(one.parts) or [""])
    if what == "new record":
        key = f"SA-CL-{50 + len(past.things):03}"
        past.things[key] = Thing(key, "drafted", "New", f"systems/starting-air/{key}.md")
    elif what == "delete":
        past.things.pop(one.key, None)
    elif what in ("answer", "drop", "change", "grow", "turn round"):
        if name:
            edit_list(chance, one, name, what)
    elif what.startswith(("part", "new part", "status")):
        edit_beside(chance, past, what)
    elif what.startswith("signature"):
        edit_signature(chance, one, what)
    else:
        edit_words(chance, one, what)


def edit_words(chance: random.Random, one: Thing, what: str) -> None:
    """Change what is one word or number of a record, or how it is laid out."""
    match what:
        case "comment":
            one.comment = " ".join(chance.choices(WORDS, k=3))
        case "layout":
            one.wide = not one.wide
        case "later":
            one.later = {"FN": "a short run", "TR": "[drained]"}.get(one.letters, "")
        case "move file":
            one.path = f"systems/starting-air/moved/{chance.randint(1, 99)}-{one.key}.md"
        case "title":
            one.title = f"Thing {chance.choice(WORDS)}"
        case "state back":
            one.state = START[one.letters]
        case "weaken point":
            one.point = chance.choice("WRS") if one.point else ""
        case _:
            one.revision = max(0, one.revision + {"raise": 1, "raise twice": 2}.get(what, -1))


def edit_signature(chance: random.Random, one: Thing, what: str) -> None:
    """Take out a signature, or write it otherwise."""
    if one.signed and what == "signature gone":
        one.signed.pop(chance.randrange(len(one.signed)))
    elif one.signed:
        chance.choice(one.signed).day += 1


def edit_list(chance: random.Random, one: Thing, name: str, what: str) -> None:
    """Change one list of a record."""
    them = one.parts[name]
    match what:
        case "answer":
            # an answer is text of the revision: harmless for what is kept, and said by a new one
            if one.letters == "DD" and one.parts["objections"]:
                one.answered.add(one.parts["objections"][0])
                one.revision += one.moved() and one.revision == 0
        case "drop":
            if them and name not in ("words", "before"):
                them.pop(chance.randrange(len(them)))
        case "change":
            if them and name not in ("failure", "installed"):
                number = chance.randrange(len(them))
                them[number] = f"{chance.randint(91, 99)} L" if name == "before" else f"{chance.choice(WORDS)} {chance.choice(WORDS)} {number + 1:02}"  # fmt: skip
        case "grow":
            if name not in ("failure", "installed", "words", "before"):
                them.append(f"{chance.choice(WORDS)} more {chance.randint(10, 28)}")
        case _:
            if name != "before":
                them.reverse()


def edit_beside(chance: random.Random, past: Past, what: str) -> None:
    """Change a part, or the status of the other system."""
    match what:
        case "new part":
            past.parts.append(f"SA-AR-{10 + len(past.parts) + len(past.retired):03}")
        case "part gone" | "part retired":
            if past.parts:
                gone = past.parts.pop(chance.randrange(len(past.parts)))
                past.retired += [gone] if what == "part retired" else []
        case "status back" | "status signed back":
            past.status = chance.choice(STATUSES)
            if what == "status signed back":
                past.lines.append(("2031-06-10", past.status))


def what_is_lost(was: Past, now: Past) -> set[tuple[str, str]]:
    """Every code and id that must be reported: what stood there is compared with what stands there."""
    found = {("record-vanished", key) for key in was.things if key not in now.things}
    found |= {
        ("record-vanished", tag)
        for tag in was.parts
        if tag not in now.parts and tag not in now.retired
    }
    for key, before in was.things.items():
        if after := now.things.get(key):
            found |= {(code, key) for code in _of_thing(before, after)}
    back = STATUSES.index(now.status) < STATUSES.index(was.status)
    since = [to for day, to in now.lines if (day, to) not in was.lines]
    if back and not _signed_back(was.status, since, now.status):
        found.add(("status-lowered", "BG"))
    return found


def _signed_back(start: str, since: list[str], now: str) -> bool:
    """Whether the lines that came since are steps that are made, and end where it is written."""
    ways = {"sketch": ["building"], "building": ["in test", "sketch"], "in test": ["in service", "building"], "in service": ["in test", "building"]}  # fmt: skip
    for to in since:
        if to not in ways[start]:
            return False
        start = to
    return bool(since) and start == now


def _of_thing(before: Thing, after: Thing) -> set[str]:
    found = set()
    same, other = before.revision == after.revision, before.text() != after.text()
    if (same and other and before.moved()) or after.revision not in (before.revision, before.revision + 1):  # fmt: skip
        found.add("issued-text-altered")
    names = [*ALWAYS.get(before.letters, ()), *(ONCE_MOVED.get(before.letters, ()) if before.moved() else ())]  # fmt: skip
    for name in names:
        kept = after.parts[name]
        lost = before.parts[name] != kept if name == "before" else Counter(before.parts[name]) - Counter(kept)  # fmt: skip
        if lost:
            found.add("kept-words-lost")
    unanswered = before.answered - after.answered
    if unanswered & set(before.parts.get("objections", [])):
        found.add("kept-words-lost")
    if Counter(one.line() for one in before.signed) - Counter(one.line() for one in after.signed):
        found.add("kept-words-lost")
    if before.point == "H" and before.moved() and after.point != "H":
        found.add("hold-point-passed")
    return found


def snapshot(past: Past) -> Past:
    """A copy that stays as it is."""
    return copy.deepcopy(past)
