"""A signature from a kept reply: what the reviewer wrote becomes the words of the line.

Nothing is guessed: a reply that does not say in what capacity, on which day or with what verdict, or
that was written to another state of the record, makes no signature.
"""

import argparse
from pathlib import Path

from garboard.book import Book
from garboard.errors import GarboardError
from garboard.names import nearest
from garboard.records.reply import Waiting
from garboard.records.signoff import Verdict
from garboard.review.covers import Covers
from garboard.review.seals import moved_since

__all__ = ["confirmed"]

WRITTEN = ("id", "capacity", "by", "verdict", "scope", "not_checked", "words", "evidence")
"""Arguments that the reply fills; typed beside it they would say something else."""


def confirmed(book: Book, args: argparse.Namespace, folder: Path) -> argparse.Namespace:
    """The arguments of a signature, filled from a kept reply.

    Args:
        book: As it stands.
        args: With `reply`, and who enters it.
        folder: The content folder.

    Raises:
        GarboardError: The reply does not carry a signature, or not any more.
    """
    typed = [name for name in WRITTEN if getattr(args, name)]
    if typed:
        named = ", ".join("--as" if one == "capacity" else f"--{one}" for one in typed)
        raise GarboardError(
            f"the reply says {named.replace('_', '-')}; leave that out, or sign without it"
        )
    if not args.entered_by:
        raise GarboardError("say who confirms it: add --entered-by PERSON")
    waiting = _waiting(book, args.reply, folder)
    reply = waiting.reply
    for what, known in (
        ("in what capacity", reply.capacity),
        ("with what verdict", reply.verdict),
        ("on which day", reply.on or args.on),
    ):
        if not known:
            ask = "ask the reviewer" + ("; or add --on DATE" if what == "on which day" else "")
            raise GarboardError(f"{waiting.path} does not say {what} it is signed; {ask}")
    key = reply.seal.key if reply.seal else ""
    thing = book.records.get(key) or next(
        page for page in book.content.pages if page.where.path == key
    )
    moved = "; ".join(moved_since(reply, Covers(book.content, book.network).of(thing)))
    if moved:
        raise GarboardError(
            f"{key} is not as the reviewer saw it: {moved}; send a new pack: garboard pack {key}"
        )
    filled = {
        "id": key,
        "capacity": str(reply.capacity),
        "by": waiting.by,
        "on": reply.on.isoformat() if reply.on else args.on,
        "verdict": str(reply.verdict),
        "scope": ", ".join(reply.checked),
        "not_checked": ", ".join(reply.not_checked),
        "words": reply.words or _words(waiting),
        "evidence": waiting.path,
    }
    return argparse.Namespace(**{**vars(args), **filled})


def _waiting(book: Book, name: str, folder: Path) -> Waiting:
    path = name
    if name not in book.content.replies and Path(name).resolve().is_relative_to(folder.resolve()):
        path = Path(name).resolve().relative_to(folder.resolve()).as_posix()
    them = [one for waiting in book.waiting.values() for one in waiting]
    found = next((one for one in them if one.path == path), None)
    if found is None and path in book.content.replies:
        line = next((key for key, one in book.records.items() if _names(one.signed, path)), "")
        said = f"{line} is signed with it already" if line else "it is about nothing that is here"
        raise GarboardError(f"{path} does not wait: {said}")
    if found is None:
        near = nearest(path, (one.path for one in them))
        raise GarboardError(
            f"there is no reply {path!r}" + (f"; did you mean {near}?" if near else "")
        )
    if not found.by:
        raise GarboardError(f"people.yml knows nobody by the key {found.reply.by!r}")
    return found


def _names(signed: tuple[object, ...], path: str) -> bool:
    return any(getattr(line, "evidence", None) == path for line in signed)


def _words(waiting: Waiting) -> str | None:
    """Where the verdict is a finding and nothing more is said, what was seen."""
    reply = waiting.reply
    if reply.verdict not in (Verdict.FINDING, Verdict.OBJECT):
        return None
    return "; ".join(point.seen for point in reply.points if point.seen) or None
