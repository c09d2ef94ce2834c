"""Replies that wait: what reviewers wrote back and nobody has confirmed yet.

A reply signs nothing. It waits at what it is about, until a signature names its file as evidence.
"""

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping

from garboard.reading.content import Content
from garboard.reading.walk_folder import REPLIES
from garboard.records.reply import Reply, Waiting
from garboard.review.covers import Signed, name_of

__all__ = ["person_meant", "reply_path", "waiting_replies"]

NUMBERED = re.compile(r"(?:-\d+)?\.txt")


def waiting_replies(content: Content) -> Mapping[str, tuple[Waiting, ...]]:
    """The replies that wait, by id of the record or path of the written page, the oldest first."""
    things: dict[str, Signed] = {name_of(one): one for one in content.records.values()}
    things |= {name_of(one): one for one in content.pages}
    found: dict[str, list[Waiting]] = defaultdict(list)
    for path, forms in content.replies.items():
        for reply in forms.replies:
            key = reply.seal.key if reply.seal else ""
            thing = things.get(key)
            if thing is None or not _is_of(path, reply):
                continue
            if all(line.evidence != path for line in thing.signed):
                found[key].append(Waiting(path, reply, person_meant(reply.by, content.people)))
    return {key: tuple(them) for key, them in found.items()}


def person_meant(text: str, people: Iterable[str]) -> str:
    """The key of people.yml that somebody wrote, whatever its case; empty where it is none.

    >>> person_meant("Reviewer-1 (by phone)", ["reviewer-1", "reviewer-2"])
    'reviewer-1'
    """
    known = {key.casefold(): key for key in people}
    words = text.casefold().strip(" .,;")
    if words in known:
        return known[words]
    named = {known[one] for one in re.split(r"[\s,;()<>]+", words) if one in known}
    return named.pop() if len(named) == 1 else ""


def reply_path(reply: Reply, number: int = 1) -> str:
    """Where a reply is kept, under a name that is safe on every machine.

    Args:
        reply: With its day, its seal and the key of its writer.
        number: Of several of one day by one person about one thing.

    >>> from datetime import date
    >>> from garboard.records.reply import Seal
    >>> reply_path(Reply(seal=Seal("SA-CN-002", "", ""), by="reviewer-1", on=date(2031, 9, 28)))
    'replies/2031-09-28-sa-cn-002-reviewer-1.txt'
    """
    day = reply.on.isoformat() if reply.on else "undated"
    about = reply.seal.key if reply.seal else ""
    more = f"-{number}" if number > 1 else ""
    return f"{REPLIES}/{day}-{_plain(about)}-{_plain(reply.by)}{more}.txt"


def _plain(name: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", name.casefold())[:60].strip("-") or "unnamed"


def _is_of(path: str, reply: Reply) -> bool:
    """Whether a kept file was named after this reply; a mail may hold the forms of several."""
    stem = reply_path(reply).removesuffix(".txt")
    return path.startswith(stem) and NUMBERED.fullmatch(path[len(stem) :]) is not None
