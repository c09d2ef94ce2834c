"""The fields of one form: boxes, dates, names and words as they were filled in.

A box that is ticked twice, or a date that could be two days, is not guessed at: it stays unread and
is said with its line.
"""

import re
from collections.abc import Sequence
from datetime import date
from enum import StrEnum
from typing import TypeVar

from garboard.records.finding import Danger
from garboard.records.reply import SCOPES, Label, Point, Remark, Reply, Seal
from garboard.records.signoff import Capacity, Verdict

__all__ = ["Entry", "read_fields"]

BOX = re.compile(r"\[[ ]*(?P<mark>[^\[\]]{0,3}?)[ ]*\]|\([ ]*(?P<round>[xX\u2713\u2714]?)[ ]*\)")
ISO = re.compile(r"(?<!\d)(\d{4})-(\d{1,2})-(\d{1,2})(?!\d)")
NAMED = re.compile(r"(?<!\d)(\d{1,2})(?:st|nd|rd|th|\.)? +([A-Za-z]{3,9})\.?,? +(\d{4})(?!\d)")
NAMED_FIRST = re.compile(r"\b([A-Za-z]{3,9})\.? +(\d{1,2})(?:st|nd|rd|th)?,? +(\d{4})(?!\d)")
MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split()
SEALED = re.compile(
    r"(?P<key>.+?) (?P<own>[0-9a-f]{16}) (?P<pack>[0-9a-f]{16}) (?P<check>[0-9a-f]{4})"
)
UNTICKED = ("", "_", ".", "-", "..", "__", "...", "___")

W = TypeVar("W", bound=StrEnum)


class Entry:
    """One label with what stands behind and below it."""

    def __init__(self, label: Label | None, first: int, text: str) -> None:
        """Start an entry; without a label it starts a block for one more finding."""
        self.label = label
        self.first = self.last = first
        self.rows = [text] if text else []

    @property
    def text(self) -> str:
        """All of it in one line."""
        return " ".join(" ".join(self.rows).split())

    def add(self, number: int, text: str) -> None:
        """One more line of it."""
        if text:
            self.rows.append(text)
            self.last = number


class _Reader:
    """Reads entries, and notes what it could not read."""

    def __init__(self, entries: Sequence[Entry]) -> None:
        self.entries = entries
        self.remarks: list[Remark] = []

    def note(self, entry: Entry, text: str) -> None:
        self.remarks.append(Remark(entry.first, entry.last, text))

    def one(self, label: Label) -> Entry | None:
        """The entry of a label; of several the first that is filled, and the others are noted."""
        them = [each for each in self.entries if each.label is label]
        filled = [each for each in them if each.text]
        for other in filled[1:]:
            if other.text != filled[0].text:
                self.note(other, f"{label} stands here once more, not read: {_short(other.text)}")
        return next(iter(filled or them), None)

    def words(self, label: Label) -> str:
        entry = self.one(label)
        return _words(entry.text) if entry else ""

    def parts(self, label: Label) -> tuple[str, ...]:
        return tuple(
            filter(None, (part.strip(" .") for part in re.split("[,;]", self.words(label))))
        )

    def choice(self, entry: Entry | None, kind: type[W]) -> W | None:
        """The one option of a row of boxes."""
        if entry is None or not entry.text:
            return None
        ticked, rest = _boxes(entry.text, tuple(map(str, kind)))
        if not ticked and rest:
            ticked = tuple(one for one in map(str, kind) if rest.casefold().strip(" .") == one)
            rest = "" if ticked else rest
        if len(ticked) > 1:
            self.note(entry, f"{entry.label} is ticked {len(ticked)} times: {', '.join(ticked)}")
            return None
        if rest:
            self.note(entry, f"behind {entry.label} stands what is no box: {_short(rest)}")
        return kind(ticked[0]) if ticked else None

    def scopes(self) -> tuple[str, ...]:
        entry = self.one(Label.CHECKED)
        ticked, rest = _boxes(entry.text, SCOPES) if entry else ((), "")
        if entry and rest:
            more = tuple(part.strip(" .") for part in re.split("[,;]", rest))
            ticked += tuple(part for part in more if part)
        return tuple(dict.fromkeys((*ticked, *self.parts(Label.ALSO))))

    def day(self) -> date | None:
        entry = self.one(Label.DATE)
        if entry is None or not entry.text:
            return None
        found, rest = _date(entry.text)
        if found is None:
            cure = "write it as 2031-10-02"
            self.note(entry, f"{_short(entry.text)} is no day that can be read; {cure}")
        elif rest:
            self.note(entry, f"behind DATE stands more than a day: {_short(rest)}")
        return found

    def seal(self) -> Seal | None:
        entry = self.one(Label.REF)
        if entry is None:
            return None
        found = SEALED.match(" ".join(entry.text.split()))
        if found is None:
            self.note(entry, f"the REF line is not whole: {_short(entry.text) or 'nothing in it'}")
            return None
        seal = Seal(found["key"], found["own"], found["pack"])
        if seal.check != found["check"]:
            self.note(entry, "the REF line is not as it was sent: its last four signs do not fit")
            return None
        rest = " ".join(entry.text.split())[found.end() :].strip()
        if rest:
            self.note(entry, f"behind REF stands more than was sent: {_short(rest)}")
        return seal

    def points(self) -> tuple[Point, ...]:
        """The findings: a block starts with its heading, or where a label stands a second time."""
        blocks: list[dict[Label, Entry]] = [{}]
        for entry in self.entries:
            if entry.label is None:
                blocks.append({})
            elif entry.label in (Label.WHERE, Label.SEEN, Label.DANGER):
                if entry.label in blocks[-1]:
                    blocks.append({})
                blocks[-1][entry.label] = entry
        return tuple(filter(None, map(self._point, blocks)))

    def _point(self, block: dict[Label, Entry]) -> Point | None:
        where, seen = (
            _words(block[one].text) if one in block else "" for one in (Label.WHERE, Label.SEEN)
        )
        before = len(self.remarks)
        danger = self.choice(block.get(Label.DANGER), Danger)
        if not (where or seen or danger or len(self.remarks) > before):
            return None
        first = min(entry.first for entry in block.values())
        if not seen:
            self.remarks.append(Remark(first, first, "a finding without its words behind SEEN"))
        return Point(where, seen, danger, first)

    def saw(self) -> dict[str, str]:
        pairs = (each.text.partition(" = ") for each in self.entries if each.label is Label.SAW)
        return {name.strip(): text.strip() for name, sign, text in pairs if sign}


def read_fields(entries: Sequence[Entry], line: int) -> Reply:
    """Read the fields of one form.

    Args:
        entries: In the order of the text.
        line: On which the form starts.
    """
    reader = _Reader(entries)
    return Reply(
        seal=reader.seal(),
        by=reader.words(Label.NAME),
        on=reader.day(),
        capacity=reader.choice(reader.one(Label.AS), Capacity),
        verdict=reader.choice(reader.one(Label.VERDICT), Verdict),
        checked=reader.scopes(),
        not_checked=reader.parts(Label.NOT_CHECKED),
        words=reader.words(Label.WORDS),
        points=reader.points(),
        saw=reader.saw(),
        line=line,
        remarks=tuple(reader.remarks),
    )


def _words(text: str) -> str:
    return " ".join(text.split())


def _short(text: str) -> str:
    return repr(text if len(text) <= 60 else f"{text[:57]}...")


def _boxes(text: str, options: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """Which options are ticked, and what else stands there."""
    boxes = list(BOX.finditer(text))
    if not boxes:
        return (), text.strip()
    rest = [text[: boxes[0].start()]]
    ticked = []
    ends = [box.start() for box in boxes[1:]] + [len(text)]
    for box, end in zip(boxes, ends, strict=True):
        words = " ".join(text[box.end() : end].split())
        known = max((one for one in options if _begins(words, one)), key=len, default="")
        more = words[len(known) :].strip(" .,;")
        mark = box["mark"] if box["mark"] is not None else box["round"]
        if (mark or "") not in UNTICKED:
            ticked.append(known or more)
            more = more if known else ""
        rest.append(more)
    return tuple(filter(None, ticked)), " ".join(filter(None, (one.strip() for one in rest)))


def _begins(words: str, option: str) -> bool:
    return re.match(rf"{re.escape(option)}(?!\w)", words.casefold()) is not None


def _date(text: str) -> tuple[date | None, str]:
    """A day, and what else stands beside it; days with slashes can be two, and are not read."""
    for pattern, order in ((ISO, (1, 2, 3)), (NAMED, (3, 2, 1)), (NAMED_FIRST, (3, 1, 2))):
        found = pattern.search(text)
        if found:
            year, month, day = (found[one] for one in order)
            rest = (text[: found.start()] + text[found.end() :]).strip(" .,")
            name = month[:3].casefold()
            number = (
                MONTHS.index(name) + 1 if name in MONTHS else int(month) if month.isdigit() else 0
            )
            try:
                return date(int(year), number, int(day)), rest
            except ValueError:
                return None, ""
    return None, ""
