"""Read the forms that come back in a mail: what was filled in, and what could not be read.

A form starts at its REF line and ends where it says so; a field runs to the next label. Labels are
known by their capitals; typed otherwise they count only where no free words are being read, so that
a sentence that goes on with `where: ...` stays a sentence.
"""

import re
from bisect import bisect
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from garboard.reading.mail_text import MailLine, read_mail
from garboard.reading.reply_fields import Entry, read_fields
from garboard.records.reply import Label, Remark, Reply

__all__ = ["END", "HOW", "TITLE", "Forms", "read_forms"]

TITLE = "Reply form"
HOW = (
    "Write behind the colons, and put an x between the brackets: [x]. Quote the form as your mail"
    " program does it. Copy a FINDING block for each further thing. Leave the lines REF and SAW as they"
    " are. Sign with your name key, no name and no address. An objection needs your words. Nothing"
    " counts as signed until somebody on board has confirmed your reply."
)
"""What stands above the form as it goes out; where it comes back it is nobody's words."""
END = "END OF REPLY"
DECOR = r"[\s*_\u2022\u00b7\u2013\u2014-]*"
"""What stands before a label where a mail program made a list of it, or set it bold."""
LABEL = re.compile(
    rf"{DECOR}(?P<label>{'|'.join(sorted(map(str, Label), key=len, reverse=True))})"
    r"[*_]*\s*[:\uff1a][*_]*\s*(?P<rest>.*)",
    re.IGNORECASE,
)
LAST = re.compile(rf"{DECOR}{END}\b", re.IGNORECASE)
BLOCK = re.compile(rf"{DECOR}FINDING(?: \d+)?[\s:*_]*")
AFTER = re.compile(
    r"On\b.{4,200}\bwrote:\s*|-{2,} ?Original Message ?-{2,}.*|-- ?|_{10,}|-{4,} ?Forwarded .*"
)
"""Where the mail goes on with something that is not the form."""
HEADED = re.compile(rf"(?:\d+\. *)?{TITLE}[\s:]*|-+", re.IGNORECASE)
"""The heading over the form, and the rule under it."""
WRITES = re.compile(r"On\b.{4,}")
FREE = (Label.WORDS, Label.SEEN, Label.WHERE, Label.NOT_CHECKED, Label.ALSO)
MOST = 50
"""Forms of one text; what stands in more of them is kept and not read."""
MOST_RUNS = 12
"""Remarks on what stands outside the forms; of more nobody reads any."""
STARTS = (Label.REF, Label.NAME, Label.VERDICT)
"""Labels that start a form, where its first line is missing."""


@dataclass(frozen=True, slots=True)
class Forms:
    """What was found in one text."""

    replies: tuple[Reply, ...]
    """Filled forms, in order."""
    empty: int
    """How many forms came back as they were sent."""
    unread: tuple[Remark, ...]
    """Everything else in the text, with its lines."""


@dataclass(slots=True)
class _Form:
    """A form while it is being read."""

    first: MailLine
    entries: list[Entry] = field(default_factory=list)
    whole: bool = False
    last: int = 0

    def add(self, line: MailLine) -> None:
        """A line that goes on with the field before it."""
        self.entries[-1].add(line.number, line.beyond(self.first.marks))


def read_forms(text: str) -> Forms:
    """Find and read every form of a text.

    Args:
        text: As it came, with plain line feeds.
    """
    mailed = read_mail(text)
    forms: list[_Form] = []
    loose: list[MailLine] = []
    form: _Form | None = None
    ends = [number for number, line in enumerate(mailed.lines) if LAST.match(line.text)]
    starts = [number for number, line in enumerate(mailed.lines) if _is_ref(line)]
    for number, line in enumerate(mailed.lines):
        found = _label(line, form)
        if found and (form is None or found[0] is Label.REF):
            if (form is None and found[0] not in STARTS) or len(forms) >= MOST:
                loose.append(line)
                form = None
                continue
            form = _Form(line)
            forms.append(form)
        if form is None:
            loose.append(line)
        elif found:
            form.entries.append(Entry(found[0], line.number, found[1]))
        elif LAST.match(line.text):
            form.whole, form.last, form = True, line.number, None
        elif BLOCK.fullmatch(line.text):
            form.entries.append(Entry(None, line.number, ""))
        elif _goes_on(mailed.lines, number, ends, starts):
            form = None
            loose.append(line)
        else:
            form.add(line)
    read = [(each, read_fields(each.entries, each.first.number)) for each in forms]
    filled = [_ended(each, reply) for each, reply in read if _is_filled(reply)]
    unread = (*mailed.remarks, *_grouped(_without_head(loose)))
    return Forms(tuple(filled), len(read) - len(filled), unread)


def _label(line: MailLine, form: _Form | None) -> tuple[Label, str] | None:
    """The label that a line starts with, and what stands behind it."""
    found = LABEL.fullmatch(line.text)
    if not found:
        return None
    written = found["label"]
    label = Label(written.upper())
    in_words = form is not None and form.entries and _free(form.entries[-1])
    if written != label and (in_words or form is None):
        return None
    return label, found["rest"].strip()


def _is_ref(line: MailLine) -> bool:
    found = LABEL.fullmatch(line.text)
    return found is not None and found["label"] == Label.REF


def _free(entry: Entry) -> bool:
    return entry.label in FREE and bool(entry.rows)


def _goes_on(lines: tuple[MailLine, ...], number: int, ends: list[int], starts: list[int]) -> bool:
    """Whether the mail that was answered starts here; its opening may be folded over two lines.

    Where the form's own end is still to come, it is a line of somebody's words.
    """
    text = lines[number].text.strip()
    following = lines[number + 1].text.strip() if number + 1 < len(lines) else ""
    folded = WRITES.fullmatch(text) and following.endswith("wrote:")
    if not (AFTER.fullmatch(text) or (folded and AFTER.fullmatch(f"{text} {following}"))):
        return False
    end, new = (next(iter(them[bisect(them, number) :]), len(lines)) for them in (ends, starts))
    return end == len(lines) or new < end


def _is_filled(reply: Reply) -> bool:
    said = (reply.by, reply.on, reply.verdict, reply.checked, reply.not_checked, reply.words)
    return any(said) or bool(reply.points) or bool(reply.remarks)


def _ended(form: _Form, reply: Reply) -> Reply:
    """A reply whose end is missing says so: more may have been written."""
    if form.whole:
        return reply
    last = max((entry.last for entry in form.entries), default=form.first.number)
    cut = Remark(last, last, f"the form stops here without `{END}`; it may have been cut off")
    return Reply(
        **{name: getattr(reply, name) for name in Reply.__dataclass_fields__ if name != "remarks"},
        remarks=(*reply.remarks, cut),
    )


def _without_head(lines: list[MailLine]) -> list[MailLine]:
    """Lines without what stood above the form as it was sent, however a mail program folded it."""
    words = [(word, at) for at, line in enumerate(lines) for word in line.text.split()]
    sent = HOW.split()
    own: set[int] = set()
    for start in (at for at, (word, _) in enumerate(words) if word == sent[0]):
        if [word for word, _ in words[start : start + len(sent)]] != sent:
            continue
        first, last = words[start][1], words[start + len(sent) - 1][1]
        while first and HEADED.fullmatch(lines[first - 1].text.strip()):
            first -= 1
        own |= set(range(first, last + 1))
    return [line for at, line in enumerate(lines) if at not in own]


def _grouped(lines: list[MailLine]) -> Iterator[Remark]:
    """What stands outside the forms, in runs of lines that are quoted alike.

    Where a mail program folded what it quotes, every other line would be a run of its own: then they are
    told by where they stand alone.
    """
    runs = list(_runs(lines, alike=True))
    for run in runs if len(runs) <= MOST_RUNS else _runs(lines, alike=False):
        yield from _outside(run)


def _runs(lines: Iterable[MailLine], *, alike: bool) -> Iterator[list[MailLine]]:
    run: list[MailLine] = []
    for line in lines:
        if run and (line.number > run[-1].number + 1 or (alike and line.marks != run[-1].marks)):
            yield run
            run = []
        run.append(line)
    if run:
        yield run


def _outside(run: list[MailLine]) -> Iterator[Remark]:
    said = [line for line in run if line.text.strip()]
    if said:
        first = said[0].text.strip()
        words = first if len(first) <= 50 else f"{first[:47]}..."
        text = f"not in a form, kept: {words!r}"
        if any(map(_tells, said)):
            text = f"a FINDING outside the form was not taken in; write it by hand: {words!r}"
        yield Remark(said[0].number, said[-1].number, text)


def _tells(line: MailLine) -> bool:
    """Whether a line says what somebody saw."""
    found = LABEL.fullmatch(line.text)
    return bool(found and found["label"] == Label.SEEN and found["rest"].strip())
