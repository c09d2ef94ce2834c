"""Forms filled at random, and what mail programs do to them on the way."""

import quopri
import random
import re
import textwrap
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import date, timedelta

from garboard.records.reply import SCOPES

VERDICTS = ("no findings", "comments", "finding", "object")
DANGERS = ("none", "possible", "immediate")
VOCABULARY = (
    "the valve shut and sensing line where: there is no start left at 12 bar(g) — don't open it"
    " \u201cREF\u201d it's 5 % \u00b0C pr\u00fcfen \u00e9tanch\u00e9it\u00e9 \u043a\u043b\u0430\u043f\u0430\u043d"
    " \u03b2\u03b1\u03bb\u03b2\u03af\u03b4\u03b1 \u5f01 \u0635\u0645\u0627\u0645 p=3 a = b danger: none? (date: soon)"
    " - 1. # {{ x }} <b> !!python *anchor &amp; [x] ''' --- ... | http://example.invalid/x checked"
).split()


@dataclass
class Filled:
    """What somebody fills in."""

    by: str
    on: date
    capacity: str
    verdict: str
    checked: tuple[str, ...]
    not_checked: tuple[str, ...]
    words: str
    points: list[tuple[str, str, str]] = field(default_factory=list)
    """Where, what is seen, danger."""


def filled_at_random(chance: random.Random) -> Filled:
    def words(most: int) -> str:
        return " ".join(chance.choices(VOCABULARY, k=chance.randint(1, most)))

    def part() -> str:
        return " ".join(chance.choices("wiring labels the tee aft spare".split(), k=2))

    return Filled(
        "reviewer-1",
        date(2031, 1, 1) + timedelta(chance.randrange(270)),
        chance.choice(("checker", "approver")),
        chance.choice(VERDICTS),
        tuple(one for one in SCOPES if chance.random() < 0.4),
        tuple(dict.fromkeys(part() for _ in range(chance.randrange(4)))),
        words(40) if chance.random() < 0.8 else "",
        [("SA-PS-001", words(60), chance.choice(DANGERS)) for _ in range(chance.randrange(6))],
    )


def fill(form: Iterable[str], what: Filled) -> list[str]:
    """The lines of a form, filled in as a reviewer would."""
    lines: list[str] = []
    points = iter(what.points)
    point = None
    for line in form:
        label = line.partition(":")[0]
        if line == "FINDING":
            point = next(points, None)
        answers = {
            "NAME KEY": what.by,
            "DATE": what.on.isoformat(),
            "NOT CHECKED": ", ".join(what.not_checked),
            "WORDS": what.words,
            "WHERE": point[0] if point else "",
            "SEEN": point[1] if point else "",
        }
        if label in answers:
            lines.append(f"{line} {answers[label]}".rstrip())
            continue
        ticks = {
            "AS": (what.capacity,),
            "VERDICT": (what.verdict,),
            "DANGER": (point[2],) if point else (),
        }
        wanted = ticks.get(label, what.checked if "[ ]" in line else ())
        if line.startswith("SAW"):
            for where, seen, danger in points:
                boxes = "  ".join(f"[{'x' if one == danger else ' '}] {one}" for one in DANGERS)
                lines += ["FINDING", f"WHERE: {where}", f"SEEN: {seen}", f"DANGER: {boxes}", ""]
        lines.append(ticked(line, wanted))
    return lines


def ticked(line: str, wanted: Iterable[str]) -> str:
    """A row of boxes with an x in those that are wanted."""
    for one in wanted:
        line = re.sub(rf"\[ \] {one}(?=  |$)", f"[x] {one}", line)
    return line


def folded(lines: list[str], chance: random.Random) -> list[str]:
    width = chance.randint(44, 76)
    return [
        part
        for line in lines
        for part in (
            textwrap.wrap(line, width, break_long_words=False, break_on_hyphens=False) or [""]
        )
    ]


def quoted(lines: list[str], chance: random.Random) -> list[str]:
    mark = chance.choice(("> ", ">", "> > ", ">> ", "> > > ", "| "))
    return [f"{mark}{line}".rstrip() for line in lines]


def quoted_then_folded(lines: list[str], chance: random.Random) -> list[str]:
    """As by a program that folds what another had quoted: the rest of a line stands unquoted."""
    return folded(quoted(lines, chance), chance)


def listed(lines: list[str], chance: random.Random) -> list[str]:
    bullet = chance.choice((" * ", "- ", "  \u2022 ", "\u00b7 "))
    return [f"{bullet}{line}" if re.match(r"[A-Z ]+:", line) else line for line in lines]


def bold(lines: list[str], _: random.Random) -> list[str]:
    return [re.sub(r"^([A-Z]+(?: [A-Z]+)?):", r"*\1:*", line) for line in lines]


def hard_spaces(lines: list[str], chance: random.Random) -> list[str]:
    sign = chance.choice("\u00a0\u202f\u2007")
    return [
        "".join(sign if one == " " and chance.random() < 0.3 else one for one in line)
        for line in lines
    ]


def unseen_signs(lines: list[str], chance: random.Random) -> list[str]:
    return [
        line.replace(":", chance.choice((":\u200b", "\u00ad:", ":", ":\ufeff")), 1)
        for line in lines
    ]


def curly(lines: list[str], _: random.Random) -> list[str]:
    return [line.replace("'", "\u2019").replace('"', "\u201d") for line in lines]


def wide_spaced(lines: list[str], _: random.Random) -> list[str]:
    return [part for line in lines for part in (line, "")]


def other_ticks(lines: list[str], chance: random.Random) -> list[str]:
    tick = chance.choice(("[X]", "[ x ]", "[\u2713]", "\u2611", "[\u00a0x]", "[x ]"))
    return [
        line.replace("[x] ", f"{tick} ")
        if re.match(r"(AS|VERDICT|CHECKED|DANGER|\[)", line)
        else line
        for line in lines
    ]


Mangle = Callable[[list[str], random.Random], list[str]]
LAYERS: tuple[tuple[Mangle, ...], ...] = (
    (other_ticks,),
    (curly,),
    (bold, listed),
    (folded, quoted, quoted_then_folded, wide_spaced),
    (hard_spaces, unseen_signs),
)
"""In the order in which they can befall a mail; of each row at most one."""


def mailed(lines: list[str], chance: random.Random) -> str:
    """A form after its way through several programs."""
    for row in LAYERS:
        if chance.random() < 0.6:
            lines = chance.choice(row)(lines, chance)
    before = ["Dear lead builder,", "see below; I looked at it twice.", ""]
    opening = chance.choice(
        (["On Thu, 2 Oct 2031 at 10:00, somebody", "<a@example.invalid> wrote:"], [])
    )
    after = ["", "-- ", "from the phone"]
    text = "\n".join([*(before if chance.random() < 0.5 else []), *opening, *lines, *after])
    if chance.random() < 0.25:
        text = quopri.encodestring(text.encode("utf-8")).decode("ascii")
    return text


def plain(text: str) -> str:
    """Words without what a mail program may change in them: spaces and the shape of quotes."""
    return " ".join(
        text.replace("\u2019", "'").replace("\u201d", '"').replace("\u201c", '"').split()
    )
