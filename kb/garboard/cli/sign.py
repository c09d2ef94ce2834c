"""The command that signs: it shows what a signature covers, asks the rules, and only then writes.

The line is first put into the book in memory. Where a rule about signatures would then speak that
did not speak before, nothing is written: a line that should not stand is never in the file.
"""

import argparse
import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

from garboard.book import Book, with_signed
from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.cli.confirm import confirmed
from garboard.cli.refusal import newly_found, say_refused
from garboard.cli.sign_status import sign_status
from garboard.cli.signable import find_signable
from garboard.cli.signed_words import day_of, one_of, person_of
from garboard.errors import Diagnostic, GarboardError
from garboard.handbook import read_book
from garboard.names import nearest
from garboard.reading.ssh_signatures import sign_text
from garboard.records.base import Record
from garboard.records.kinds import kind_of
from garboard.records.signoff import Capacity, SignOff, Verdict
from garboard.records.standing import state_of
from garboard.review.band import BAND
from garboard.review.covers import Cover, Covers, Signed, name_of
from garboard.review.proof import statement
from garboard.review.signing import as_signed, reads_back, signed_by, write_signature
from garboard.rules import (
    dates_out_of_order,
    illegal_state_move,
    lesson_built_nowhere,
    signature_forged,
    signed_by_proxy,
    signer_lacks_authority,
    signer_not_independent,
)

__all__ = ["add_sign", "sign"]

ASKED = (
    signer_not_independent,
    signer_lacks_authority,
    signed_by_proxy,
    illegal_state_move,
    signature_forged,
    lesson_built_nowhere,
    dates_out_of_order,
)
"""The rules that a new signature must not break."""
PERSONS = tuple(one for one in Capacity if one is not Capacity.MACHINE)
"""The capacities in which a person can sign."""


def add_sign(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command and its arguments."""
    one = add_command(
        commands, "sign", sign, "add a signature to a record: what it covers, as it stands today"
    )
    one.add_argument(
        "id",
        nargs="?",
        default="",
        help="id of the record, path of a written page, or code of a system",
    )
    one.add_argument(
        "--reply", metavar="FILE", help="a kept reply: it says all but who confirms it"
    )
    one.add_argument("--as", dest="capacity", default="", help=f"one of {', '.join(PERSONS)}")
    one.add_argument("--by", default="", metavar="PERSON", help="a key of people.yml")
    one.add_argument("--on", metavar="DATE", help="such as 2031-03-12; left out: today")
    one.add_argument("--to", metavar="STATE", help="the state that this signature moves it to")
    one.add_argument("--verdict", help=f"one of {', '.join(Verdict)}")
    one.add_argument("--scope", default="", help="what was checked, parted by commas")
    one.add_argument("--not-checked", default="", help="what was not, parted by commas")
    one.add_argument("--band", help='how far a value may move before this lapses: "1 %%"')
    one.add_argument("--evidence", metavar="FILE", help="photograph of the signed sheet")
    one.add_argument("--entered-by", metavar="PERSON", help="who types it, if not the signer")
    one.add_argument("--words", help="an objection or comment in the signer's own words")
    one.add_argument(
        "--key", type=Path, metavar="FILE", help="prove it with this key, by ssh-keygen"
    )
    one.add_argument("--dry-run", action="store_true", help="show all and write nothing")
    add_folder(one)


def sign(args: argparse.Namespace) -> int:
    """Show what a signature covers, and add it; 2 where it should not stand."""
    folder = content_folder(args.folder)
    book = read_book(folder)
    if args.reply:
        args = confirmed(book, args, folder)
    elif not (args.id and args.capacity and args.by):
        raise GarboardError("say what is signed, --as what and --by whom; or name a kept --reply")
    if args.id in book.systems:
        return sign_status(book, book.systems[args.id], args, folder)
    thing = find_signable(book, args.id, folder)
    cover = Covers(book.content, book.network).of(thing)
    line = signed_by(_line(book, thing, args), cover)
    if args.key:
        line = _proved(name_of(thing), replace(line, digest=cover.whole), args.key)
    if not reads_back(line):
        raise GarboardError("the words hold signs that cannot be written; leave them out")
    key, signed = name_of(thing), with_signed(book, as_signed(thing, line))
    if against := list(newly_found(_asked(book, key), _asked(signed, key))):
        return say_refused(key, against)
    for said in _told(thing, line, cover):
        print(said)
    if args.dry_run:
        print("Nothing was written.")
    else:
        write_signature(folder, book.content, thing, line)
        print(f"Written to {thing.where.path}.")
    return 0


def _line(book: Book, thing: Signed, args: argparse.Namespace) -> SignOff:
    """The signature that the arguments ask for, without what it covers."""
    line = SignOff(
        capacity=one_of(PERSONS, args.capacity, "capacity"),
        by=person_of(book, args.by),
        on=_day(book, thing, args.on),
        to=_state(thing, args.to),
        scope=_parts(args.scope),
        not_checked=_parts(args.not_checked),
        verdict=one_of(tuple(Verdict), args.verdict, "verdict") if args.verdict else None,
        band=_band(args.band),
        entered_by=person_of(book, args.entered_by) if args.entered_by else None,
        evidence=_plain(args.evidence),
        words=_plain(args.words),
    )
    if line.verdict is Verdict.OBJECT:
        _look_at_objection(thing, line)
    return line


def _proved(name: str, line: SignOff, key: Path) -> SignOff:
    """The line with a proof: the digest in full, and a signature over all of it."""
    return replace(line, proof=sign_text(statement(name, line), key))


def _look_at_objection(thing: Signed, line: SignOff) -> None:
    """Refuse an objection that says nothing, or that moves the record on all the same.

    Raises:
        GarboardError: It does.
    """
    if not line.words:
        raise GarboardError('an objection needs its words: add --words "..."')
    kind = kind_of(thing) if isinstance(thing, Record) else None
    if kind and line.to and kind.machine.may_lapse(line.to):
        raise GarboardError(
            f"an objection cannot move {name_of(thing)} on to {line.to}; leave --to out"
        )


def _day(book: Book, thing: Signed, text: str | None) -> date:
    """The day of the signature: not after today, not before the record was written."""
    day = day_of(book, text)
    drafted = thing.drafted if isinstance(thing, Record) else None
    if text is not None and drafted and day < drafted:
        raise GarboardError(f"{day} is before {name_of(thing)} was written, on {drafted}")
    return day


def _state(thing: Signed, word: str | None) -> str | None:
    if word is None:
        return None
    kind = kind_of(thing) if isinstance(thing, Record) else None
    if kind is None:
        raise GarboardError("a written page has no states to be moved to; leave --to out")
    if word in kind.machine.states:
        return word
    near = nearest(word, kind.machine.states)
    cure = f"did you mean {near!r}?" if near else f"one of {', '.join(kind.machine.states)}"
    raise GarboardError(f"{word!r} is no state of a {kind.name}; {cure}")


def _band(text: str | None) -> str | None:
    if text is not None and not BAND.fullmatch(text.strip()):
        raise GarboardError(f'{text!r} is no band; write it as "1 %"')
    return _plain(text)


def _parts(text: str) -> tuple[str, ...]:
    return tuple(filter(None, (" ".join(one.split()) for one in text.split(","))))


def _plain(text: str | None) -> str | None:
    return re.sub(r"\s+", " ", text).strip() or None if text else None


def _asked(book: Book, key: str) -> Iterator[Diagnostic]:
    for rule in ASKED:
        yield from (one for one in rule.check(book) if one.about == key)


def _told(thing: Signed, line: SignOff, cover: Cover) -> Iterator[str]:
    """What the signature covers, and what it says."""
    yield f"{name_of(thing)}: {thing.title}"
    yield "This signature covers, as it stands today:"
    yield f"  its own words, digest {cover.own}"
    for title, group, sign_ in (
        ("values", cover.values, " ="),
        ("requirements", cover.answers, ":"),
        ("what it rests on, by its digest", cover.records, ":"),
    ):
        yield f"  {title}{':' if group else ': none'}"
        yield from (f"    {name}{sign_} {now}" for name, now in group.items())
    yield f"Signed as {line.capacity} by {line.by} on {line.on}"
    for label, words in (
        ("verdict", line.verdict or "none stated"),
        ("checked", ", ".join(line.scope)),
        ("not checked", ", ".join(line.not_checked)),
        ("a value may move by", line.band),
        ("words", line.words),
        ("entered by", line.entered_by),
        ("evidence", line.evidence),
        ("proof", "made with the signer's key" if line.proof else ""),
    ):
        if words:
            yield f"  {label}: {words}"
    if line.to and isinstance(thing, Record):
        yield f"  state: {state_of(thing)} -> {line.to}"
